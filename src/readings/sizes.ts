/** Which conductor a reading would fit: the size that has as much resistance. */
import { printSize } from '../basis/print.ts';
import type { Evaluation } from '../engine/evaluate.ts';

/** How far the resistance of a size may be from what was read and still be taken for it. Arbitrary. */
const ALIKE = 0.12;

/** Nobody takes a wire with that much more resistance for the other one. Arbitrary. */
const MISTAKEN = 10;

/** Resistance of a conductor of every size that the tool knows, warm as this one is, by size [ohm]. */
export function copperBySize(e: Evaluation, wire: number): { readonly size: string; readonly ohm: number }[] {
  const { run } = e.design.wires[wire] as (typeof e.design.wires)[number];
  const row = (e.number('gauge_row', { run }) ?? 1) - 1;
  const own = e.number('wire_copper_ohm', { wire });
  const metre = e.number('run_metre', { run });
  if (own === null || metre === null) return [];
  const series = e.value('size_series', { size: row });
  return e.grid.axes.size.flatMap((_, size) => {
    const ohm = size === row ? metre : e.number('size_ohm', { size });
    return e.value('size_series', { size }) === series && ohm !== null
      ? [{ size: String(e.value('size_name', { size })), ohm: (own * ohm) / metre }]
      : [];
  });
}

/** The thinner size whose conductor has the excess and its own resistance together; null when there is none near. */
export function alikeSize(e: Evaluation, wire: number, excess: number): string | null {
  const own = e.number('wire_copper_ohm', { wire });
  if (own === null) return null;
  const wanted = own + excess;
  const near = copperBySize(e, wire)
    .filter(({ ohm }) => ohm > own && ohm < MISTAKEN * own)
    .map(({ size, ohm }) => ({ size, off: Math.abs(ohm / wanted - 1) }))
    .sort((a, b) => a.off - b.off)[0];
  return near !== undefined && near.off <= ALIKE ? printSize(near.size) : null;
}
