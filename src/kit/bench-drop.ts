/** The largest drop of a wire on the bench: one formula, worked out for the paper and written into the sheet's cells. */
import { tokens } from '../basis/formula.ts';
import type { At } from '../basis/quantity.ts';
import type { Design } from '../design/design.ts';
import { compile } from '../engine/compile.ts';
import { numeric, scalar, type Values } from '../engine/node.ts';
import type { Job } from './job.ts';

/**
 * Ohm’s law over the wire as it is cut, at 20 °C: in V times `scale`. The empty text where a resistance is not known, or where
 * the test current is more than the wire or its fuse may carry.
 */
const FORMULA =
  'IF(ISNUMBER(cold)*ISNUMBER(fixed)=0, "", ' +
  'IF(IF(ISNUMBER(ampacity), current>ampacity, 0)+IF(ISNUMBER(fuse), current>fuse, 0)>0, "", ' +
  'scale*current*(fixed+(cold-fixed)*(1+slack+2*end*pieces/length))))';

type Wire = Design['wires'][number];
type Read = 'cold_ohm' | 'wire_fixed_ohm' | 'ampacity' | 'nearest_fuse' | 'wire_length';

/** What `read` gives for each quantity of the model in it: wire from end to end, its joints, limits and length. */
export const ofModel = <T>({ result }: Job, wire: number, read: (name: Read, at: At) => T) => {
  const own = result.evaluation.design.wires[wire] as Wire;
  const at = { wire };
  return {
    cold: read('cold_ohm', at),
    fixed: read('wire_fixed_ohm', at),
    ampacity: read('ampacity', { run: own.run }),
    fuse: read('nearest_fuse', at),
    length: read('wire_length', at),
  };
};

/** What the kit says of it: test current [A], slack as a share, allowance of an end [m], pieces of the wire. */
export function ofKit({ result, harness }: Job, wire: number) {
  const { allowance, end_allowance, test_current } = result.evaluation.design.kit;
  const pieces = harness.pieces.filter((piece) => piece.wire === wire).length;
  return { current: test_current, slack: allowance, end: end_allowance, pieces };
}

type Name = keyof ReturnType<typeof ofModel> | keyof ReturnType<typeof ofKit> | 'scale';

/** Formulas read values through what stands for their names here; they need no store. */
const NOWHERE: Values = Object.create(null);

/** Largest drop of a wire on the bench [V]; null when it is not known or the test current is too much for it. */
export function dropLimit(job: Job, wire: number): number | null {
  const values: Record<Name, number | null> = {
    ...ofModel(job, wire, (name, at) => job.result.evaluation.number(name, at)),
    ...ofKit(job, wire),
    scale: 1,
  };
  const node = compile(FORMULA, ({ name }) => numeric(() => values[name as Name] ?? Number.NaN));
  const found = scalar(node).number(NOWHERE);
  return Number.isNaN(found) ? null : found;
}

/** The same as the formula of a cell, with a cell or a number for each name. */
export const dropFormula = (texts: Record<Name, string | number>): string =>
  tokens(FORMULA)
    .map((token) => (token.kind === 'reference' ? String(texts[token.reference.name as Name]) : token.text))
    .join('');
