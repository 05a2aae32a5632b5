/** What is varied, and over which values: `feed.main.length=1 m..6 m/0.5 m`, `feed.main.gauge=10 AWG, 8 AWG, 6 AWG`. */
import { printUnit, SYMBOLS } from '../basis/units.ts';

/** A place in the design and the values that it is to have, as they are written. */
export interface Vary {
  readonly path: string;
  readonly values: readonly string[];
  /** The values as numbers and their unit, where all of them are in the same; else null. */
  readonly scale: { readonly numbers: readonly number[]; readonly unit: string } | null;
}

/** Points of a grid, at most. Arbitrary: some minutes. */
export const MOST_POINTS = 10_000;

const END = String.raw`([+\-−]?\d+(?:\.\d+)?)\s*([^\d.,/][^/]*?)?`;
const RANGE = new RegExp(String.raw`^${END}\s*\.\.\s*${END}\s*/\s*${END}$`);
const VALUE = new RegExp(`^${END}$`);

/** Reads `PATH=VALUES`; a sentence that says what is wrong when it cannot be used. */
export function readVary(text: string): Vary | string {
  const at = text.indexOf('=');
  const [path, list] = [text.slice(0, Math.max(0, at)).trim(), text.slice(at + 1).trim()];
  if (at < 1 || list === '')
    return `--vary takes PATH=VALUES, such as "feed.main.length=1 m..6 m/0.5 m", not "${text}".`;
  const values = list.includes('..') ? rangeOf(list) : list.split(',').map((one) => one.trim());
  if (typeof values === 'string') return `${path}: ${values}`;
  if (values.includes('')) return `${path}: a value is missing between two commas.`;
  return { path, values, scale: scaleOf(values) };
}

const number = (text = ''): number => Number(text.replace('−', '-'));

function rangeOf(text: string): string[] | string {
  const [, a, unitA = '', b, unitB = '', step, unitS = ''] = RANGE.exec(text) ?? [];
  if (a === undefined)
    return `a range is written as first..last/step, each with its unit, such as "1 m..6 m/0.5 m", not "${text}".`;
  const units = [...new Set([unitA, unitB, unitS].filter((unit) => unit !== ''))];
  if (units.length > 1) return `the range "${text}" mixes units; write all of it in one.`;
  const [from, to, by] = [number(a), number(b), number(step)];
  if (!(by > 0) || !(to >= from)) return `the range "${text}" must rise, in steps above 0.`;
  // Half a billionth of a step: what a sum of decimal steps is off by at most.
  const count = Math.floor((to - from) / by + 1e-9) + 1;
  if (count > MOST_POINTS)
    return `the range "${text}" has ${count} values; ${MOST_POINTS} points are the most.`;
  return Array.from({ length: count }, (_, i) =>
    `${Number((from + i * by).toPrecision(12))} ${units[0] ?? ''}`.trim(),
  );
}

function scaleOf(values: readonly string[]): Vary['scale'] {
  const read = values.map((value) => VALUE.exec(value));
  const unit = read[0]?.[2] ?? '';
  if (values.length < 2 || read.some((one) => one === null || (one[2] ?? '') !== unit)) return null;
  if (unit !== '' && !Object.hasOwn(SYMBOLS, unit)) return null;
  const numbers = read.map((one) => number(one?.[1]));
  return numbers.every((one, i) => i === 0 || one > (numbers[i - 1] as number))
    ? { numbers, unit: printUnit(unit === '' ? '1' : unit) }
    : null;
}
