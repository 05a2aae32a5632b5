/** Values of cells as an author writes them in a design: a number with its unit, a count, a word. */
import type { OfKind } from '../basis/quantity.ts';
import type { System } from '../basis/shown.ts';
import { listOf, wordFor } from '../design/spelled.ts';
import { entryUnit } from '../engine/cell.ts';

/** Two numbers that are one: a spreadsheet program keeps 15 digits. */
const SAME = 1e-14;

/** Whether two contents of a cell are the same; a number that another program saved may differ in its last digit. */
export const same = (a: number | string | null, b: number | string | null, within = SAME): boolean =>
  typeof a === 'number' && typeof b === 'number'
    ? Math.abs(a - b) <= within * Math.max(Math.abs(a), Math.abs(b))
    : a === b;

/** A sum that a program made is off by its last bits; what a person types has 15 digits at most. */
const NOISE = 1e-15;

/** The shortest decimal that is the number: `1.5` for 1.4999999999999998. Without an exponent where that is short. */
export function shortest(value: number): string {
  let text = String(value);
  for (let digits = 1; digits <= 15; digits++) {
    const rounded = Number(value.toPrecision(digits));
    if (!same(rounded, value, NOISE)) continue;
    text = String(rounded);
    break;
  }
  const exponent = /e-(\d+)$/.exec(text)?.[1];
  if (exponent === undefined || Number(exponent) > 9) return text;
  return Number(text).toFixed(20).replace(/0+$/, '');
}

/** Whose value it is, and in whose units it is entered. */
export interface Entered {
  readonly q: OfKind<'input'>;
  readonly system: System;
}

/** Unit in which a person writes it; empty for counts, crank angles and words. */
export const unitOf = ({ q, system }: Entered): string => {
  const of = entryUnit(q, system);
  return of === '1' || of === 'deg' || of === 'text' ? '' : of;
};

/** What stands for the content of a cell in a design file: text with its unit, a plain number, a word. */
export const asWritten = (value: number | string, entered: Entered): number | string => {
  const unit = unitOf(entered);
  return typeof value === 'string' || unit === '' ? value : `${shortest(value)} ${unit}`;
};

/** The same for a person to read. */
export const asSaid = (value: number | string | null, entered: Entered): string =>
  value === null
    ? 'nothing'
    : typeof value === 'number' && unitOf(entered) === ''
      ? shortest(value)
      : String(asWritten(value, entered));

/** A word as the design holds it, in whatever spelling it was entered; what is not known stays as it is. */
export function wordIn({ path }: OfKind<'input'>, text: string): string {
  const list = listOf(path);
  return (list === null ? null : wordFor(list, text)) ?? text;
}

/** Whether two words of an input stand for the same; a type that is sold by SAE number turns a gauge into one. */
export const sameWord = (q: OfKind<'input'>, entered: string, held: string): boolean => {
  const word = wordIn(q, entered);
  return word === held || (/ AWG$/.test(word) && word.replace(/AWG$/, 'SAE') === held);
};
