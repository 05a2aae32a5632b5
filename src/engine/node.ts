/**
 * What a piece of a formula becomes: a function of a design’s values and the members at hand.
 *
 * A value is a number or a word. Numbers go through the functions as they are, NaN standing for the empty text, which is
 * what the dialect has for "not known". Arithmetic with it, or with a result that is no number, is thrown as a `Fault`, as a
 * spreadsheet program would show an error in the cell.
 */
import type { Here } from './choose.ts';
import type { Frame } from './frame.ts';

/** The values of a quantity, by index. */
export interface Column {
  readonly counts: readonly number[];
  readonly columns: number;
  /** NaN where it is no number. Throws a `Fault` where the formula comes to an error. */
  number(i: number): number;
  /** Null for a number, empty where it is not known. */
  word(i: number): string | null;
}

/** The values of a design, and the members at hand. */
export interface Values extends Here {
  store(of: Frame): Column;
}

/** An error in a cell; it passes through everything that depends on it, up to `IFERROR` or `ISNUMBER`. */
export class Fault {
  /** The quantity where it arose. */
  place = '';
  readonly what: string;

  constructor(what: string) {
    this.what = what;
  }
}

export const fault = (what: string): never => {
  throw new Fault(what);
};

/** Numbers in rows, NaN for what is none. */
export interface Block {
  readonly rows: number;
  readonly columns: number;
  readonly data: ArrayLike<number>;
}

export interface Scalar {
  readonly kind: 'scalar';
  /** `blank` is the empty text, which goes with both. */
  readonly type: 'number' | 'text' | 'blank';
  /** NaN for whatever is no number. */
  readonly number: (at: Values) => number;
  /** The word, empty when it is not known; null for a number. */
  readonly word: (at: Values) => string | null;
}

export interface Range {
  readonly kind: 'range';
  readonly type: 'number' | 'text';
  readonly block: (at: Values) => Block;
  /** Only of a reference: its words, and one of its values without the others. */
  readonly words?: (at: Values) => ArrayLike<string>;
  readonly pick?: (at: Values, row: number, column: number) => number;
  readonly pickWord?: (at: Values, row: number, column: number) => string | null;
}

export type Node = Scalar | Range;

const wordOfNumber = (number: (at: Values) => number) => (at: Values) => {
  const value = number(at);
  return Number.isNaN(value) ? '' : null;
};

export const numeric = (number: Scalar['number']): Scalar => ({
  kind: 'scalar',
  type: 'number',
  number,
  word: wordOfNumber(number),
});

export const literal = (value: string): Scalar => ({
  kind: 'scalar',
  type: value === '' ? 'blank' : 'text',
  number: () => Number.NaN,
  word: () => value,
});

export const rangeOf = (block: Range['block']): Range => ({ kind: 'range', type: 'number', block });

export function scalar(node: Node | undefined): Scalar {
  if (node?.kind !== 'scalar') throw new Error('a range stands where one value is needed');
  return node;
}

/** The value, which must be a number. */
export const need = (value: number): number =>
  Number.isNaN(value) ? fault('a number is needed, and there is none') : value;

/** A number that must be one. */
export function needed(node: Node | undefined): (at: Values) => number {
  const { number } = scalar(node);
  return (at) => need(number(at));
}

/** One thing, or another one where that comes to an error. */
export function either<T>(first: (at: Values) => T, second: (at: Values) => T, at: Values): T {
  try {
    return first(at);
  } catch (error) {
    if (!(error instanceof Fault)) throw error;
    return second(at);
  }
}

/** As a block, a single value as one of one row and column. */
export const blockOf = (node: Node): ((at: Values) => Block) =>
  node.kind === 'range' ? node.block : (at) => ({ rows: 1, columns: 1, data: [node.number(at)] });
