/** The compressed parts that the page carries, as programs for workers. */

/** Letters that are unpacked before the page may do something else: some milliseconds of work; whole groups of base64. */
const SLICE = 1 << 16;

const pause = (): Promise<void> => new Promise((done) => setTimeout(done));

/** Text of a part, unpacked by and by. The elements stand in index.html. */
async function partText(id: string): Promise<string> {
  const packed = document.getElementById(id)?.textContent ?? '';
  const { readable, writable } = new DecompressionStream('gzip');
  const text = new Response(readable).text();
  const writer = writable.getWriter();
  for (let at = 0; at < packed.length; at += SLICE) {
    await writer.write(bytesOf(packed.slice(at, at + SLICE)));
    await pause();
  }
  await writer.close();
  return text;
}

function bytesOf(packed: string): Uint8Array<ArrayBuffer> {
  const letters = atob(packed);
  const bytes = new Uint8Array(letters.length);
  for (let i = 0; i < bytes.length; i++) bytes[i] = letters.charCodeAt(i);
  return bytes;
}

/** A worker that runs the pipeline; with `sheets` one that can also evaluate the cells of a workbook. */
export async function startWorker(sheets: boolean): Promise<Worker> {
  const own = partText('part-worker');
  const parts = [sheets ? await partText('part-sheets') : '', '\n', await own];
  const url = URL.createObjectURL(new Blob(parts, { type: 'text/javascript' }));
  try {
    return new Worker(url);
  } finally {
    // The worker has taken its program by the time it starts; not before, so the address stays a little longer.
    setTimeout(() => URL.revokeObjectURL(url), 60_000);
  }
}
