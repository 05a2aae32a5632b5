/** Arithmetic and comparison, of single values and of ranges. */

import { blockOf, fault, type Node, numeric, type Range, rangeOf, type Scalar, type Values } from './node.ts';
import type { Comparison, Operator } from './parse.ts';

/**
 * Numbers that differ by less are the same, as in LibreOffice, where it is a fixed rule; the other programs are held to
 * it by their settings. A sum that small against its first term is 0.
 */
const ALIKE = 2 ** -48;

/** The sign of the difference of two values, NaN being a text, which is larger than any number. */
export function compare(left: number, right: number): number {
  if (left === right) return 0;
  if (Number.isNaN(left)) return Number.isNaN(right) ? 0 : 1;
  if (Number.isNaN(right)) return -1;
  const near = 1 + ALIKE;
  if (right >= 0 && left * near >= right && left <= right * near) return 0;
  if (right <= 0 && left * near <= right && left >= right * near) return 0;
  return left > right ? 1 : -1;
}

/** Words are equal whatever their capitals. */
export const alike = (a: string, b: string): boolean =>
  a === b || (a.length === b.length && a.toLowerCase() === b.toLowerCase());

type Two = (left: number, right: number) => number;

const truth = (yes: boolean): number => (yes ? 1 : 0);
export const COMPARED: Readonly<Record<Comparison, Two>> = {
  '=': (a, b) => truth(compare(a, b) === 0),
  '<>': (a, b) => truth(compare(a, b) !== 0),
  '<': (a, b) => truth(compare(a, b) < 0),
  '>': (a, b) => truth(compare(a, b) > 0),
  '<=': (a, b) => truth(compare(a, b) <= 0),
  '>=': (a, b) => truth(compare(a, b) >= 0),
};

/** A result must be a finite number: NaN here comes of an unknown value, or of arithmetic that has no result. */
export const sound = (value: number): number =>
  Number.isFinite(value) ? value : fault('no number comes of this');

export const ARITHMETIC: Readonly<Record<Exclude<Operator, Comparison>, Two>> = {
  '+': (a, b) => {
    const sum = sound(a + b);
    return Math.abs(sum) < ALIKE * Math.abs(a) ? 0 : sum;
  },
  '-': (a, b) => {
    const rest = sound(a - b);
    return Math.abs(rest) < ALIKE * Math.abs(a) ? 0 : rest;
  },
  '*': (a, b) => sound(a * b),
  '/': (a, b) => (b === 0 ? fault('division by 0') : sound(a / b)),
  '^': (a, b) => sound(a ** b),
};

export const isComparison = (sign: Operator): sign is Comparison => Object.hasOwn(COMPARED, sign);

export function operation(sign: Operator, left: Node, right: Node): Node {
  if (isComparison(sign) && (isWord(left) || isWord(right))) return wordComparison(sign, left, right);
  const two = isComparison(sign) ? COMPARED[sign] : ARITHMETIC[sign];
  if (left.kind === 'range' || right.kind === 'range') return each(two, left, right);
  const [a, b] = [left.number, right.number];
  return numeric((at) => two(a(at), b(at)));
}

/** A word, or the empty text, with which a value is compared that may be a word. */
const isWord = (node: Node): boolean => node.type !== 'number';

function wordComparison(sign: Comparison, left: Node, right: Node): Node {
  if (left.kind === 'scalar' && right.kind === 'scalar') {
    const same = sameWord(sign);
    const compared = COMPARED[sign];
    return numeric((at) => {
      const [a, b] = [left.word(at), right.word(at)];
      if (a !== null && b !== null) return same(a, b);
      // A number and a word, or two numbers: a word is larger.
      return compared(a === null ? left.number(at) : Number.NaN, b === null ? right.number(at) : Number.NaN);
    });
  }
  return left.kind === 'range'
    ? wordsAgainst(sign, left, right as Scalar)
    : wordsAgainst(sign, right as Range, left);
}

const sameWord = (sign: Comparison): ((a: string, b: string) => number) => {
  if (sign === '=') return (a, b) => truth(alike(a, b));
  if (sign === '<>') return (a, b) => truth(!alike(a, b));
  // What is known is larger than the empty text; other words have no order here.
  return (a, b) =>
    a === '' || b === '' ? COMPARED[sign](truth(a !== ''), truth(b !== '')) : fault('words have no order');
};

function wordsAgainst(sign: Comparison, range: Range, other: Scalar): Range {
  const { words } = range;
  if (other.kind !== 'scalar') throw new Error('only one word is compared with a range');
  const same = sameWord(sign);
  return rangeOf((at) => {
    const { rows, columns, data } = range.block(at);
    const word = other.word(at);
    const found: number[] = [];
    const own = words?.(at);
    for (let i = 0; i < rows * columns; i++) {
      const value = data[i] as number;
      if (!Number.isNaN(value))
        found.push(COMPARED[sign](value, word === null ? other.number(at) : Number.NaN));
      else found.push(word === null ? COMPARED[sign](Number.NaN, 0) : same(own?.[i] ?? '', word));
    }
    return { rows, columns, data: found };
  });
}

/** Value by value; a single one goes with all. */
function each(two: Two, left: Node, right: Node): Range {
  const [first, second] = [blockOf(left), blockOf(right)];
  // A single value stays where it is.
  const [a, b] = [left.kind === 'range' ? 1 : 0, right.kind === 'range' ? 1 : 0];
  return rangeOf((at) => {
    const [l, r] = [first(at), second(at)];
    if (a === 1 && b === 1 && (l.rows !== r.rows || l.columns !== r.columns))
      return fault('ranges of different shape');
    const { rows, columns } = a === 1 ? l : r;
    const data = new Array<number>(rows * columns);
    for (let i = 0; i < data.length; i++) data[i] = two(l.data[i * a] as number, r.data[i * b] as number);
    return { rows, columns, data };
  });
}

export function negative(of: Node): Node {
  if (of.kind === 'range')
    return rangeOf((at: Values) => {
      const { rows, columns, data } = of.block(at);
      return { rows, columns, data: Array.from(data, (value) => sound(-value)) };
    });
  const { number } = of;
  return numeric((at) => sound(-number(at)));
}
