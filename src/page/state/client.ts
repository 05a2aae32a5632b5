/** Asks a worker and waits for its answers. */
import type { Calls, Kind, LateKind, Reply, Tell } from '../protocol.ts';
import { type Program, startWorker } from './parts.ts';

interface Waiting {
  readonly tell: Tell;
  readonly done: (reply: never) => void;
  readonly failed: (error: Error) => void;
}

export class Client {
  private readonly worker: Promise<Worker>;
  private readonly waiting = new Map<number, Waiting>();
  private count = 0;

  constructor(program: Program) {
    this.worker = startWorker(program).then((worker) => {
      worker.onmessage = ({ data }: MessageEvent<Reply>) => this.take(data);
      worker.onerror = (event) => this.fail(event.message);
      return worker;
    });
  }

  /** Throws what the tool could not do. */
  call<K extends Kind>(kind: K, ask: Calls[K]['ask'], tell: Tell = () => {}): Promise<Calls[K]['reply']> {
    this.count += 1;
    const id = this.count;
    return new Promise((done, failed) => {
      this.waiting.set(id, { tell, done, failed });
      this.worker.then((worker) => worker.postMessage({ id, kind, ask }), failed);
    });
  }

  /** What still waits for an answer ends as stopped. */
  end(): void {
    for (const { failed } of this.waiting.values()) failed(new Stopped('stopped'));
    this.waiting.clear();
    this.worker.then(
      (worker) => worker.terminate(),
      () => {},
    );
  }

  private take(reply: Reply): void {
    const waiting = this.waiting.get(reply.id);
    if ('stage' in reply) {
      waiting?.tell(reply.stage);
      return;
    }
    this.waiting.delete(reply.id);
    if ('failed' in reply) waiting?.failed(new Error(reply.failed));
    else waiting?.done(reply.reply as never);
  }

  private fail(why: string): void {
    for (const { failed } of this.waiting.values()) failed(new Error(why || 'the worker did not start'));
    this.waiting.clear();
  }
}

/** A long job: its reply, and a way to give it up. */
export interface Job<T> {
  readonly reply: Promise<T>;
  readonly stop: () => void;
}

/** What a job that was given up ends with. */
export class Stopped extends Error {}

/** One long job in a worker of its own, so that the numbers go on following meanwhile. */
export function askOnce<K extends LateKind>(
  kind: K,
  ask: Calls[K]['ask'],
  tell?: Tell,
): Job<Calls[K]['reply']> {
  const client = new Client(kind === 'workbook' || kind === 'kitbook' ? 'sheets' : 'late');
  let stop = (): void => {};
  const stopped = new Promise<never>((_, failed) => {
    stop = () => failed(new Stopped('stopped'));
  });
  const reply = Promise.race([client.call(kind, ask, tell), stopped]).finally(() => client.end());
  return { reply, stop };
}
