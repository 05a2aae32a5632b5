/** What is read off the steady state: average, effective and peak currents, supplies, delivered peaks and energies. */
import { type Circuit, primaryOf } from './circuit.ts';
import { largest, least } from './crossing.ts';
import { combined, type Exponentials, integralOf, squareIntegralOf, valueAt } from './exponentials.ts';
import type { Segment } from './interval.ts';
import type { Course } from './steady.ts';

export interface WireFigures {
  /** [A] over the whole cycle. */
  readonly average: number;
  readonly effective: number;
  readonly peak: number;
}

export interface CoilFigures {
  /** Supply at the coil at the instant before its firing, the lowest of its firings [V]; null when it never charges. */
  readonly supplyAtFiring: number | null;
  /** Lowest supply at the coil while it charges [V]; null when it never does. */
  readonly lowestSupply: number | null;
  /** Current that the coil reaches, the lowest of its firings [A]. */
  readonly peak: number;
  /** Energy in the coil at that firing [J]. */
  readonly energy: number;
}

/** Current of conductor `wire` within a segment [A]. */
export function currentOf({ circuit }: Course, wire: number, { currents }: Segment): Exponentials {
  const { coils: carried, also } = circuit.wires[wire] as Circuit['wires'][number];
  return combined(
    also,
    currents.map((_, coil) => (carried.includes(coil) ? 1 : 0)),
    currents,
  );
}

/** Supply between the terminals of coil and driver within a segment [V]: that at the posts less the drops of its path. */
export function supplyOf({ supplies, shared }: Course, coil: number, { currents }: Segment): Exponentials {
  return combined(
    supplies[coil] as number,
    (shared[coil] ?? []).map((ohm) => -ohm),
    currents,
  );
}

/** Integrals in closed form, not sums of samples. */
export function wireFigures(course: Course, wire: number): WireFigures {
  let [charge, square, peak] = [0, 0, 0];
  for (const segment of course.segments) {
    const current = currentOf(course, wire, segment);
    const time = segment.to - segment.from;
    charge += integralOf(current, time);
    square += squareIntegralOf(current, time);
    peak = Math.max(peak, largest(current, time));
  }
  const { cycle } = course.circuit;
  return { average: charge / cycle, effective: Math.sqrt(Math.max(0, square) / cycle), peak };
}

/** Supply of the firing coil at the instant before firing number `firing` [V]. */
export function supplyBefore({ circuit, shared, supplies, atFiring }: Course, firing: number): number {
  const coil = circuit.firings[firing]?.coil ?? 0;
  const row = shared[coil] ?? [];
  const currents = atFiring[firing] ?? [];
  return currents.reduce(
    (volts, current, other) => volts - (row[other] as number) * current,
    supplies[coil] as number,
  );
}

/** Current of the firing coil at the instant before firing number `firing` [A]. */
export const peakAt = ({ circuit, atFiring }: Course, firing: number): number =>
  atFiring[firing]?.[circuit.firings[firing]?.coil ?? -1] ?? 0;

export function coilFigures(course: Course, coil: number): CoilFigures {
  const { firings } = course.circuit;
  const own = firings.flatMap((firing, i) => (firing.coil === coil && !firing.further ? [i] : []));
  const charging = course.segments.filter(({ on }) => on.includes(coil));
  const peak = Math.min(...own.map((firing) => peakAt(course, firing)));
  return {
    supplyAtFiring:
      charging.length > 0 ? Math.min(...own.map((firing) => supplyBefore(course, firing))) : null,
    lowestSupply:
      charging.length > 0
        ? Math.min(...charging.map((s) => least(supplyOf(course, coil, s), s.to - s.from)))
        : null,
    peak,
    energy: (primaryOf(course.circuit, coil).henry * peak ** 2) / 2,
  };
}

/** Current of a coil [A] by the time since the start of its first charge [s]; 0 outside of it. */
export function currentFrom({ circuit, segments }: Course, coil: number): (after: number) => number {
  const { cycle, dwell, firings } = circuit;
  const fires = firings.find((firing) => firing.coil === coil)?.at ?? 0;
  return (after) => {
    if (after < 0 || after > dwell) return 0;
    const at = (((fires - dwell + after) % cycle) + cycle) % cycle;
    // Of the two segments that meet at the very end of the charge, the one in which it still flows.
    const segment = segments.find(({ on, from, to }) => on.includes(coil) && at >= from && at <= to);
    const current = segment?.currents[coil];
    return segment && current ? valueAt(current, at - segment.from) : 0;
  };
}
