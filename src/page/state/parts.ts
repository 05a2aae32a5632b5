/** The compressed parts that the page carries, as programs for workers. */

/** Letters that are unpacked before the page may do something else: some milliseconds of work; whole groups of base64. */
const SLICE = 1 << 16;

const pause = (): Promise<void> => new Promise((done) => setTimeout(done));

/** Text of a part, unpacked by and by. */
async function partText(id: string): Promise<string> {
  const packed = document.getElementById(id)?.textContent ?? '';
  const { readable, writable } = new DecompressionStream('gzip');
  const text = new Response(readable).text();
  // What cannot be unpacked is told by whoever writes first.
  text.catch(() => {});
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

/** Programs of workers: what answers at once, the same with what takes long, and with the spreadsheet engine. */
export type Program = 'live' | 'late' | 'sheets';

/** The parts of each, in the order in which they run. The elements stand in index.html. */
const PARTS: Readonly<Record<Program, readonly string[]>> = {
  live: ['part-worker'],
  late: ['part-worker', 'part-late'],
  sheets: ['part-sheets', 'part-worker', 'part-late'],
};

export async function startWorker(program: Program): Promise<Worker> {
  const parts: string[] = [];
  for (const id of PARTS[program]) parts.push(await partText(id), '\n');
  const url = URL.createObjectURL(new Blob(parts, { type: 'text/javascript' }));
  try {
    return new Worker(url);
  } finally {
    // The worker has taken its program by the time it starts; not before, so the address stays a little longer.
    setTimeout(() => URL.revokeObjectURL(url), 60_000);
  }
}
