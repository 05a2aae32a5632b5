/** From one design to another of the same shape: only the entries that differ need to be written. */
import type { At, Axis } from '../basis/quantity.ts';
import type { Design } from '../design/design.ts';
import { QUANTITIES, type QuantityName } from '../model/model.ts';
import { members as axesOf } from './axes.ts';
import { inputValue, members } from './cells.ts';
import type { Evaluation, Value } from './evaluate.ts';

/** An input for some members, in the unit of its entry. */
export interface Entry {
  readonly name: QuantityName;
  readonly at: At;
  readonly value: Value;
}

/** Who carries whom and what stands behind which fuse: what formulas are compiled from, besides the axes. */
const shape = ({ engine, wires, events, runs }: Design): unknown => [
  engine.stroke,
  wires.map(({ run, coils }) => [run, coils]),
  events.map(({ coil }) => coil),
  runs.map(({ side, fuse, relay }) => [side, fuse !== null, relay !== null]),
];

const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

/**
 * What must be written into the cells of `e` so that they become those of `design`. Null when other cells would be
 * needed, or the same cells with other contents than entries: then `design` has to be evaluated anew.
 */
export function moved(e: Evaluation, design: Design): Entry[] | null {
  const { axes, placement } = e.grid;
  if (!same(axes, axesOf(design)) || !same(shape(e.design), shape(design))) return null;
  const entries: Entry[] = [];
  for (const name of Object.keys(QUANTITIES) as QuantityName[]) {
    const q = QUANTITIES[name];
    if (q.kind !== 'input' && q.kind !== 'structure') continue;
    // What is laid out on request only has no place otherwise.
    if (!(q.kind === 'input' ? placement.entries : placement.places).has(name)) continue;
    const along: Axis[] = [...(q.per ?? []), ...(q.across === undefined ? [] : [q.across])];
    for (const at of members(axes, along)) {
      if (q.kind === 'structure') {
        const whole = at as Required<At>;
        if (q.value(whole, e.design) !== q.value(whole, design)) return null;
      } else {
        const value = inputValue(design, q, at);
        if (value !== inputValue(e.design, q, at)) entries.push({ name, at, value });
      }
    }
  }
  return entries;
}
