/** The compressed parts that the page carries, as programs for workers. */

/** Text of a part. The elements stand in index.html. */
async function partText(id: string): Promise<string> {
  const packed = document.getElementById(id)?.textContent ?? '';
  const bytes = Uint8Array.from(atob(packed), (letter) => letter.charCodeAt(0));
  const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('gzip'));
  return new Response(stream).text();
}

/**
 * The library of the diagram would take the worker for its own when it finds no document, and listen in the place of
 * ours.
 */
const LAYOUT_HEAD = 'self.document={};\n';
const LAYOUT_END = '\n;delete self.document;\n';

/** What only one kind of job needs: what lays out the wiring diagram, and what evaluates the cells of a workbook. */
export type Extra = 'layout' | 'sheets';

/** A worker that runs the pipeline; with `extra` one that can do that job as well. */
export async function startWorker(extra?: Extra): Promise<Worker> {
  const own = partText('part-worker');
  const before = extra === undefined ? '' : await partText(`part-${extra}`);
  const parts = extra === 'layout' ? [LAYOUT_HEAD, before, LAYOUT_END, await own] : [before, '\n', await own];
  const url = URL.createObjectURL(new Blob(parts, { type: 'text/javascript' }));
  try {
    return new Worker(url);
  } finally {
    // The worker has taken its program by the time it starts; not before, so the address stays a little longer.
    setTimeout(() => URL.revokeObjectURL(url), 60_000);
  }
}
