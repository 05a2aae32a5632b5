/**
 * Work in blocks on several processors. Results are taken in the order of the blocks, so that what comes of them does not
 * depend on how many threads there are; not many are kept, so that memory stays flat.
 */
import { realpathSync, writeSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { parentPort, Worker, workerData } from 'node:worker_threads';
import { Refusal } from './files.ts';
import { type Done, type Job, workerOf } from './jobs.ts';

/** Threads at most, and blocks that may be under way for each of them. */
const MOST_THREADS = 16;
const AHEAD = 4;
/** Fewer blocks are worked out here: another thread has to read the whole model first. */
const FEW = 4;

export interface Work<J extends Job> {
  readonly what: string;
  readonly job: J;
  readonly blocks: number;
  /** Null: as many as there are processors. */
  readonly threads: number | null;
  readonly take: (done: Done<J>) => void;
}

/** `--threads N`. */
export function threadsOf(text: string | undefined): number | null {
  if (text === undefined) return null;
  if (/^\d{1,2}$/.test(text) && Number(text) >= 1 && Number(text) <= MOST_THREADS) return Number(text);
  throw new Refusal(`--threads takes a number from 1 to ${MOST_THREADS}, not "${text}".`);
}

/** Does all blocks, or as many as were done when the user pressed Ctrl-C; gives how many that are. */
export async function inBlocks<J extends Job>(work: Work<J>): Promise<number> {
  const threads = Math.min(work.threads ?? availableParallelism(), MOST_THREADS, work.blocks);
  const progress = new Progress(work.what, work.blocks);
  let stopped = false;
  const stop = (): void => {
    stopped = true;
  };
  process.once('SIGINT', stop);
  try {
    const asked = { ...work, progress, stopped: () => stopped };
    return await (threads < 2 || (work.threads === null && work.blocks <= FEW)
      ? here(asked)
      : elsewhere(asked, threads));
  } finally {
    process.removeListener('SIGINT', stop);
    progress.end();
  }
}

type Asked<J extends Job> = Work<J> & { readonly progress: Progress; readonly stopped: () => boolean };

async function here<J extends Job>({ job, blocks, take, progress, stopped }: Asked<J>): Promise<number> {
  const work = workerOf(job);
  for (let block = 0; block < blocks; block++) {
    take(work(block) as Done<J>);
    progress.at(block + 1);
    // So that Ctrl-C is heard.
    await new Promise((next) => setImmediate(next));
    if (stopped()) return block + 1;
  }
  return blocks;
}

function elsewhere<J extends Job>(asked: Asked<J>, threads: number): Promise<number> {
  const { job, blocks, take, progress, stopped } = asked;
  return new Promise((done, fail) => {
    const waiting = new Map<number, Done<J>>();
    let [given, taken] = [0, 0];
    // The program itself, which knows in a thread that it is there to work.
    const program = realpathSync(process.argv[1] as string);
    const workers = Array.from({ length: threads }, () => new Worker(program, { workerData: job }));
    const end = (error?: unknown): void => {
      for (const worker of workers) void worker.terminate();
      if (error === undefined) done(taken);
      else fail(error);
    };
    const give = (worker: Worker): void => {
      if (given < blocks && given < taken + AHEAD * threads) worker.postMessage(given++);
      else idle.push(worker);
    };
    const idle: Worker[] = [];
    for (const worker of workers) {
      worker.on('error', end);
      worker.on('message', ([block, result]: [number, Done<J>]) => {
        waiting.set(block, result);
        for (let next = waiting.get(taken); next !== undefined; next = waiting.get(taken)) {
          waiting.delete(taken);
          take(next);
          taken += 1;
        }
        progress.at(taken);
        if (taken === blocks || stopped()) end();
        else for (const one of [worker, ...idle.splice(0)]) give(one);
      });
      give(worker);
    }
  });
}

/** In a thread: answers each number of a block with its result. */
export function serve(): void {
  const work = workerOf(workerData as Job);
  parentPort?.on('message', (block: number) => parentPort?.postMessage([block, work(block)]));
}

/** A line on the terminal, from the first second on. */
class Progress {
  private readonly shown = process.stderr.isTTY === true && process.env.TERM !== 'dumb';
  private last = Date.now();
  private readonly what: string;
  private readonly of: number;

  constructor(what: string, of: number) {
    this.what = what;
    this.of = of;
  }

  at(done: number): void {
    if (!this.shown || Date.now() - this.last < 1000) return;
    this.last = Date.now();
    writeSync(2, `\r\x1b[K${this.what}, ${Math.floor((100 * done) / this.of)} %`);
  }

  end(): void {
    if (this.shown) writeSync(2, '\r\x1b[K');
  }
}
