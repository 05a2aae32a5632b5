/**
 * A line on the terminal while something takes more than a second. The work blocks the program, so that another thread
 * writes the line. Where standard error is no terminal nothing is written.
 */
import { writeSync } from 'node:fs';
import { Worker } from 'node:worker_threads';

/** The line appears after this time, and counts on in such steps [ms]. */
const STEP = 1000;

/** Runs in the thread: `busy[0]` is 1 as long as the work goes on. */
const THREAD = `
  const { workerData: { what, busy, step } } = require('node:worker_threads');
  const start = Date.now();
  while (Atomics.wait(busy, 0, 1, step) === 'timed-out')
    require('node:fs').writeSync(2, '\\r\\x1b[K' + what + ', ' + Math.round((Date.now() - start) / 1000) + ' s');
`;

/** Does the work; `what` says in a few words what it is. */
export async function working<T>(what: string, work: () => T | Promise<T>): Promise<T> {
  if (process.stderr.isTTY !== true || process.env.TERM === 'dumb') return work();
  const busy = new Int32Array(new SharedArrayBuffer(4));
  busy[0] = 1;
  const thread = new Worker(THREAD, { eval: true, workerData: { what, busy, step: STEP } });
  thread.unref();
  try {
    return await work();
  } finally {
    Atomics.store(busy, 0, 0);
    Atomics.notify(busy, 0);
    writeSync(2, '\r\x1b[K');
  }
}
