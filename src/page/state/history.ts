/** The text of the design and how it came to be: what undo and redo go through. */

export interface History {
  readonly text: string;
  readonly past: readonly string[];
  readonly future: readonly string[];
  /** What the last change was made to; further changes to the same place are one step. */
  readonly place: string | null;
}

/** Steps that are kept. Arbitrary: more than a person remembers. */
const MOST = 200;

export const begin = (text: string): History => ({ text, past: [], future: [], place: null });

export function changed(history: History, text: string, place: string | null): History {
  if (text === history.text) return history;
  const same = place !== null && place === history.place && history.past.length > 0;
  const past = same ? history.past : [...history.past, history.text].slice(-MOST);
  return { text, past, future: [], place };
}

/** The person has left the place: the next change is a step of its own. */
export const settled = (history: History): History => ({ ...history, place: null });

export function undone(history: History): History {
  const text = history.past.at(-1);
  if (text === undefined) return history;
  return {
    text,
    past: history.past.slice(0, -1),
    future: [history.text, ...history.future],
    place: null,
  };
}

export function redone(history: History): History {
  const [text, ...future] = history.future;
  if (text === undefined) return history;
  return { text, past: [...history.past, history.text], future, place: null };
}
