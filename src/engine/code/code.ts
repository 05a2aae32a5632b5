/**
 * A formula as JavaScript, for what is evaluated so often that the functions of `compile.ts` cost too much: the same
 * operations in the same order, so that every value is the same to the last bit. What is not written as code here calls
 * those functions.
 */

import { matched, multiplied } from '../calls.ts';
import { chosen } from '../choose.ts';
import { compileTree } from '../compile.ts';
import type { Frame } from '../frame.ts';
import { either, fault, type Node, need, type Values } from '../node.ts';
import { ARITHMETIC, COMPARED, isComparison, sound } from '../operators.ts';
import { type Operator, parse, type Tree } from '../parse.ts';
import { picked, referred } from '../reference.ts';
import { HANDS, NAMES, Writer } from './writer.ts';

/** A formula of one number, given the values and the members along the first three axes of its quantity. */
export interface Code {
  readonly run: (all: Values, h0: number, h1: number, h2: number) => number;
  /** Whether it calls functions that take the members at hand from the values. */
  readonly hands: boolean;
}

/** Axes whose members code can be given. */
const MOST_AXES = 3;

/** Null where the formula is left to the functions: one that comes to a word, or goes along more axes. */
export function codeOf({ axes }: Frame, formula: string): Code | null {
  if (axes.length > MOST_AXES) return null;
  const nodes = new Map<Tree, Node>();
  const tree = parse(formula);
  const whole = compileTree(
    tree,
    (reference) => referred(reference, axes),
    (part, node) => nodes.set(part, node),
  );
  if (whole.kind === 'range' || whole.type !== 'number') return null;
  const writer = new Writer(nodes, (reference) => chosen(reference, axes));
  const text = writer.number(tree);
  const { kept, functions } = writer;
  const make = new Function(
    'o',
    'k',
    `const {${Object.keys(OPERATIONS).join()}}=o;const [${kept.map((_, i) => `k${i}`).join()}]=k;${functions.join('')}` +
      `return (${HANDS})=>{const shape=all.shape;return ${text}}`,
  );
  return { run: make(OPERATIONS, kept), hands: writer.hands };
}

/** What the code calls. */
const OPERATIONS = {
  ...Object.fromEntries(
    (Object.keys(NAMES) as Operator[]).map((sign) => [
      NAMES[sign],
      isComparison(sign) ? COMPARED[sign] : ARITHMETIC[sign],
    ]),
  ),
  fault,
  sound,
  need,
  either,
  picked,
  matched,
  multiplied,
  negative: (value: number): number => sound(-value),
};
