/** Terminals that meet on one stud: where a run divides, or where runs join on their way back. */
import type { Layout } from '../basis/quantity.ts';
import { before } from './route.ts';

/** Conductors of later return runs that carry all the coils of conductor `wire`, from the coil onward. */
function behind(wire: number, { wires, runs }: Layout): number[] {
  const own = wires[wire];
  if (own === undefined || runs[own.run]?.side !== 'return') return [];
  return wires.flatMap((other, i) =>
    other.run > own.run && own.coils.every((coil) => other.coils.includes(coil)) ? [i] : [],
  );
}

/**
 * Terminals on the stud at that end of conductor `wire` which the coils are on: its own, those of the conductors that
 * meet it there, and those of coils connected to it directly.
 */
function terminalsAt(wire: number, layout: Layout): number {
  const own = layout.wires[wire];
  if (own === undefined) return 0;
  const feed = layout.runs[own.run]?.side === 'feed';
  const meeting = layout.wires.filter(
    (_, i) => (feed ? before(i, layout).at(-1) : behind(i, layout)[0]) === wire,
  );
  const direct = own.coils.filter((coil) => !meeting.some(({ coils }) => coils.includes(coil)));
  return 1 + meeting.length + direct.length;
}

/** The most of any conductor of a run. */
export const studTerminals = (run: number, layout: Layout): number =>
  Math.max(...layout.wires.map((wire, i) => (wire.run === run ? terminalsAt(i, layout) : 0)));
