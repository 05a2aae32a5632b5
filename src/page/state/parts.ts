/** The compressed parts that the page carries, as programs for workers. */

/** Text of a part. The elements stand in index.html. */
async function partText(id: string): Promise<string> {
  const packed = document.getElementById(id)?.textContent ?? '';
  const bytes = Uint8Array.from(atob(packed), (letter) => letter.charCodeAt(0));
  const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('gzip'));
  return new Response(stream).text();
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
