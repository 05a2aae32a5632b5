/**
 * What instruments show, by the exact currents, for any resistances of the conductors: the other way round from the
 * expected readings, which are formulas, this is asked many times while a diagnosis looks for what explains readings.
 */
import type { Evaluation } from '../engine/evaluate.ts';
import { type Circuit, circuitAt } from '../transient/circuit.ts';
import { supplyBefore, wireFigures } from '../transient/figures.ts';
import { type Course, steady } from '../transient/steady.ts';
import { atPosts, type Where } from './expected.ts';

/**
 * The circuit of a point with two kinds of conductor added that change nothing: one before everything, for the source's
 * own resistance, and one without resistance for each coil, at which its current can be read.
 */
export interface Bench {
  readonly circuit: Circuit;
  /** Index of the source among the conductors; those of the design come before it, those of the coils after. */
  readonly source: number;
}

/** `supply` is that of the battery posts [V], where it was measured. */
export function benchAt(e: Evaluation, point: number, supply?: number): Bench {
  const circuit = circuitAt(e, point);
  const volts = supply ?? circuit.supply;
  const coils = Array.from({ length: circuit.coils }, (_, coil) => coil);
  return {
    source: circuit.wires.length,
    circuit: {
      ...circuit,
      supply: volts,
      drive: volts - (circuit.supply - circuit.drive),
      wires: [
        ...circuit.wires,
        { coils, ohm: 0, also: 0 },
        ...coils.map((coil) => ({ coils: [coil], ohm: 0, also: 0 })),
      ],
    },
  };
}

/** Currents with `more` added to the resistance of each conductor, by index [ohm]. No resistance falls below 0. */
export const courseWith = ({ circuit }: Bench, more: ReadonlyMap<number, number>): Course =>
  steady({
    ...circuit,
    wires: circuit.wires.map((wire, i) => ({ ...wire, ohm: Math.max(0, wire.ohm + (more.get(i) ?? 0)) })),
  });

/** What an instrument shows of a course, [V] or [A]. */
export function showsOf(course: Course, { source }: Bench, where: Where): number {
  const { circuit } = course;
  const { what, instrument, wire, coil } = where;
  const ohm = (i: number): number => circuit.wires[i]?.ohm ?? 0;
  const averages = instrument === 'meter' || instrument === 'clamp_average';
  const amps = (i: number): number => {
    const { average, effective, peak } = wireFigures(course, i);
    return averages ? average : instrument === 'clamp_effective' ? effective : peak;
  };
  if (what === 'drop') return ohm(wire as number) * amps(wire as number);
  if (what === 'current') return amps(wire ?? source + 1 + (coil as number));
  if (atPosts(where)) return circuit.supply - ohm(source) * amps(source);
  const own = circuit.wires.flatMap(({ coils }, i) =>
    i <= source && coils.includes(coil as number) ? [i] : [],
  );
  if (averages) return own.reduce((volts, i) => volts - ohm(i) * amps(i), circuit.supply);
  const firings = circuit.firings.flatMap((firing, i) => (firing.coil === coil ? [i] : []));
  return Math.min(...firings.map((firing) => supplyBefore(course, firing)));
}
