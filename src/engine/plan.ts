/** What is worked out once for each quantity, for all designs: its axes, and its formula as functions. */
import type { Axis, Quantity } from '../basis/quantity.ts';
import { convert } from '../basis/units.ts';
import { QUANTITIES, type QuantityName } from '../model/model.ts';
import { AXIS_NO } from './choose.ts';
import { compile } from './compile.ts';
import type { Scalar } from './node.ts';
import { referred } from './reference.ts';

export interface Plan {
  readonly name: QuantityName;
  readonly no: number;
  readonly q: Quantity;
  /** The rows' axes, then that across. */
  readonly axes: readonly Axis[];
  readonly across: boolean;
  readonly nos: readonly number[];
  readonly text: boolean;
  /** Which of the axes each value follows along from the one before it; −1 for none. */
  readonly chain: number;
  /** From the unit of an entry to that of the model. */
  readonly factor: number;
  /** Null for what no formula works out. Throws when the formula makes no sense: formulas are written by us. */
  readonly node: Scalar | null;
}

const plans = new Map<QuantityName, Plan>();

export function plan(name: QuantityName): Plan {
  let found = plans.get(name);
  if (found === undefined) {
    found = made(name, plans.size);
    plans.set(name, found);
  }
  return found;
}

function made(name: QuantityName, no: number): Plan {
  const q: Quantity = QUANTITIES[name];
  const { per = [], across } = q;
  const axes = across === undefined ? per : [...per, across];
  const own = q.kind === 'formula' ? new RegExp(`\\b${name}\\[(\\w+)-1\\]`).exec(q.formula)?.[1] : undefined;
  let node: Scalar | null | undefined;
  return {
    name,
    no,
    q,
    axes,
    across: across !== undefined,
    nos: axes.map((axis) => AXIS_NO[axis]),
    text: q.unit === 'text',
    chain: axes.indexOf(own as Axis),
    factor: q.kind === 'input' ? convert(q.shown ?? q.unit, q.unit) : 1,
    // When it is first needed: a formula may name what names it in turn.
    get node() {
      if (node === undefined) node = q.kind === 'formula' ? nodeOf(name, q.formula, axes, q.unit) : null;
      return node;
    },
  };
}

function nodeOf(name: QuantityName, formula: string, home: readonly Axis[], unit: string): Scalar {
  try {
    const node = compile(formula, (reference) => referred(reference, home));
    if (node.kind === 'range') throw new Error('it comes to a range');
    if (node.type === 'text' && unit !== 'text') throw new Error('it comes to a word and has a unit');
    return node;
  } catch (error) {
    throw new Error(`${name}: ${(error as Error).message}`);
  }
}
