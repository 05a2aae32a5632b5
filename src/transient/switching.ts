/** When drivers switch: starts and ends of charges within one working cycle. */
import type { Circuit } from './circuit.ts';

export interface Switching {
  /** Time within the cycle, in [0, cycle) [s]. */
  readonly at: number;
  /** Indices of the firings that end a charge here. */
  readonly fires: readonly number[];
  /** Coils whose charge starts here. */
  readonly starts: readonly number[];
}

/** Two instants this close, as a share of the cycle, are one: written angles and times differ by far more. */
const SAME_INSTANT = 1e-12;

/**
 * The instants at which something switches, in order; one at 0 is always there, it starts the cycle. And the coils
 * that are charged at the end of the cycle. None are ever charged when the dwell is 0.
 */
export function switchings(circuit: Circuit): { instants: Switching[]; overlapping: number[] } {
  const { cycle } = circuit;
  const firings = circuit.firings.map((firing) => ({ ...firing, dwell: firing.dwell ?? circuit.dwell }));
  const same = SAME_INSTANT * cycle;
  const within = (t: number): number => {
    const at = t < 0 ? t + cycle : t;
    return cycle - at < same || at < same ? 0 : at;
  };
  const events = [
    { at: 0, fires: -1, starts: -1 },
    ...firings.flatMap(({ coil, at, dwell }, firing) =>
      dwell > 0
        ? [
            { at: within(at), fires: firing, starts: -1 },
            { at: within(at - dwell), fires: -1, starts: coil },
          ]
        : [],
    ),
  ].sort((a, b) => a.at - b.at);
  const instants: { at: number; fires: number[]; starts: number[] }[] = [];
  for (const { at, fires, starts } of events) {
    const last = instants.at(-1);
    // A charge may start in the very instant in which the one before it ends: rounding must not reverse the two.
    const here = last && at - last.at < same ? last : { at, fires: [], starts: [] };
    if (here !== last) instants.push(here);
    if (fires >= 0) here.fires.push(fires);
    if (starts >= 0) here.starts.push(starts);
  }
  // A charge that starts later in the cycle than it ends began in the cycle before.
  const overlapping = firings
    .filter(({ at, dwell }) => dwell > 0 && within(at) < within(at - dwell) + same)
    .map(({ coil }) => coil);
  return { instants, overlapping };
}
