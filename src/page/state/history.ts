/** The design and how it came to be: what undo and redo go through. A file that is opened is a step as any other. */
import type { Given } from '../protocol.ts';

/** Its `shop` is the shop's file that came with it. */
export interface Step extends Given {
  /** Counts the files that were opened: what was answered of one says nothing of another. */
  readonly origin: number;
}

export interface History {
  readonly now: Step;
  readonly past: readonly Step[];
  readonly future: readonly Step[];
  /** What the last change was made to; further changes to the same place are one step. */
  readonly place: string | null;
}

/** Steps that are kept. Arbitrary: more than a person remembers. */
const MOST = 200;

export const begin = (given: Given): History => ({
  now: { ...given, origin: 0 },
  past: [],
  future: [],
  place: null,
});

/** Lines end as they did: what is typed in a browser, and what is laid out anew, ends them without a return. */
const endedAs = (before: string, text: string): string =>
  before.includes('\r\n') && !/(?<!\r)\n/.test(before) ? text.replace(/\r?\n/g, '\r\n') : text;

export function changed(history: History, given: string, place: string | null): History {
  const text = endedAs(history.now.text, given);
  if (text === history.now.text) return history;
  const same = place !== null && place === history.place && history.past.length > 0;
  const past = same ? history.past : [...history.past, history.now].slice(-MOST);
  return { now: { ...history.now, text }, past, future: [], place };
}

/** Another file in the place of this one. */
export function opened({ now, past, future }: History, given: Given): History {
  const most = Math.max(...[now, ...past, ...future].map(({ origin }) => origin));
  return {
    now: { ...given, origin: most + 1 },
    past: [...past, now].slice(-MOST),
    future: [],
    place: null,
  };
}

/** The person has left the place: the next change is a step of its own. */
export const settled = (history: History): History => ({ ...history, place: null });

export function undone(history: History): History {
  const now = history.past.at(-1);
  if (now === undefined) return history;
  return { now, past: history.past.slice(0, -1), future: [history.now, ...history.future], place: null };
}

export function redone(history: History): History {
  const [now, ...future] = history.future;
  if (now === undefined) return history;
  return { now, past: [...history.past, history.now], future, place: null };
}
