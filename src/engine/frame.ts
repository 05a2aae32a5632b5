/** What is the same for a quantity in all designs, worked out once: its axes, by number, and how it is read. */
import type { Axis, Quantity } from '../basis/quantity.ts';
import { convert } from '../basis/units.ts';
import { QUANTITIES, type QuantityName } from '../model/model.ts';
import { AXIS_NO } from './choose.ts';

export interface Frame {
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
}

const frames = new Map<QuantityName, Frame>();

export function frame(name: QuantityName): Frame {
  let found = frames.get(name);
  if (found === undefined) {
    found = made(name, frames.size);
    frames.set(name, found);
  }
  return found;
}

function made(name: QuantityName, no: number): Frame {
  const q: Quantity = QUANTITIES[name];
  const { per = [], across } = q;
  const axes = across === undefined ? per : [...per, across];
  const own = q.kind === 'formula' ? new RegExp(`\\b${name}\\[(\\w+)-1\\]`).exec(q.formula)?.[1] : undefined;
  return {
    name,
    no,
    q,
    axes,
    across: across !== undefined,
    nos: axes.map((axis) => AXIS_NO[axis]),
    text: q.unit === 'text',
    chain: axes.indexOf(own as Axis),
    factor: q.kind === 'input' && q.shown !== undefined ? convert(q.shown, q.unit) : 1,
  };
}
