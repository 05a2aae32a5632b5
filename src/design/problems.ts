/** What is wrong with a design file, with the place of it, and how that is said. */

/** One step into the file: a key of a map or an index of a list. */
export type Path = readonly (string | number)[];

export interface Problem {
  file: string;
  /** Both from 1. */
  line: number;
  column: number;
  /** In a workbook: the cell in place of line and column, `Inputs!C7`; empty for the file as a whole. */
  cell?: string;
  /** Path of the key, `feed[0].fuse.type`; empty for the file as a whole. */
  key: string;
  /** What stands there, as a phrase: `found "2.4 kg"`. */
  found: string;
  /** What may stand there, as a phrase: `takes a value with a unit: H, mH, uH`. */
  taken: string;
}

/** Notes down one problem. `on` is the part of a pair that the place points to; the value when left out. */
export type Report = (path: Path, found: string, taken: string, on?: 'key' | 'value') => void;

/**
 * `design.yaml:7:15 coil.inductance: found "2.4 kg"; takes a value with a unit: H, mH, uH`; in a workbook
 * `edited.xlsx:Inputs!E15 coil.inductance: …`
 */
export function printProblem(p: Problem): string {
  const key = p.key === '' ? '' : ` ${p.key}`;
  const place = p.cell ?? `${p.line}:${p.column}`;
  return `${p.file}${place === '' ? '' : `:${place}`}${key}: ${p.found}; ${p.taken}`;
}

/**
 * In the order of the file, another file behind the first. What is said twice of one place and key is kept once, as it
 * was said first.
 */
export function sortProblems(problems: readonly Problem[], first?: string): Problem[] {
  const once = new Map(
    problems.toReversed().map((p) => [JSON.stringify([p.file, p.line, p.column, p.key, p.found]), p]),
  );
  const later = ({ file }: Problem): number => (first === undefined || file === first ? 0 : 1);
  return [...once.values()].sort(
    (a, b) =>
      later(a) - later(b) ||
      a.line - b.line ||
      a.column - b.column ||
      (a.key < b.key ? -1 : a.key > b.key ? 1 : 0),
  );
}

/** Text in quotes, shortened, with every control character escaped: it may end up on a terminal. */
export function quote(text: string): string {
  const short = text.length > 60 ? `${text.slice(0, 60)}…` : text;
  return JSON.stringify(short).replace(
    /[\u007f-\u009f\u061c\u200b-\u200f\u2028-\u202e\u2066-\u2069\ufeff]/g,
    (c) => `\\u${c.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
}

/** A value of the file as it is named in a message. */
export function show(value: unknown): string {
  if (value === null || value === undefined) return 'nothing';
  if (typeof value === 'string') return quote(value);
  if (Array.isArray(value)) return value.length === 0 ? 'an empty list' : 'a list';
  return typeof value === 'object' ? 'a map' : String(value);
}

/** A path as text: `feed[0].length["1"]`. */
export function keyText(path: Path): string {
  let text = '';
  for (const step of path) {
    if (typeof step === 'number') text += `[${step}]`;
    else if (/^[A-Za-z_]\w*$/.test(step)) text += text === '' ? step : `.${step}`;
    else text += `[${quote(step)}]`;
  }
  return text;
}

/** `a, b and c` */
export const listed = (words: readonly (string | number)[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words[words.length - 1]}`;
