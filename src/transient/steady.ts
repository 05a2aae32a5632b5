/**
 * The periodic steady state: the currents of one working cycle that repeats.
 *
 * Why going round the cycle finds it, and only one: the difference d of two solutions obeys L·dd/dt = −M·d between
 * switchings, so that Σ L·d² falls at least with the rate 2R/L of the slowest coil; a limit only brings two currents
 * closer together; and a firing sets the difference of its coil to 0. So each cycle shrinks the difference to at most
 * e^(−R·cycle/L) of what it was, from any beginning. Where no coil is charged at the end of the cycle, which starts at
 * crank angle 0, the first one is the steady state; where charges overlap all the time, what is left of the beginning
 * passes from coil to coil by the shared resistance alone, and is gone after two or three cycles. Cycles are gone
 * through until one ends as it began, to `SETTLED`.
 */
import { alsoDrops, type Circuit, sharedOhm } from './circuit.ts';
import { advance, type Segment, type State } from './interval.ts';
import { modesOf } from './modes.ts';
import { type Switching, switchings } from './switching.ts';

/** Currents that differ by less are the same [A]. */
const SETTLED = 1e-10;

/** Cycles after which a circuit has settled whatever its values: even L/R of a hundred cycles would have. */
const MOST_CYCLES = 5000;

/** One working cycle of the steady state. */
export interface Course {
  readonly circuit: Circuit;
  /** coils × coils [ohm]. */
  readonly shared: readonly (readonly number[])[];
  /** Supply of each coil while no coil is charged: that at the posts less what other loads drop on its path [V]. */
  readonly supplies: readonly number[];
  /** Without gaps from 0 to the end of the cycle. */
  readonly segments: readonly Segment[];
  /** For each firing of the circuit: current of every coil at the instant before it [A]. */
  readonly atFiring: readonly (readonly number[])[];
}

/** Computes the steady state of a circuit. */
export function steady(circuit: Circuit): Course {
  const shared = sharedOhm(circuit);
  const drops = alsoDrops(circuit);
  const feed = { shared, drives: drops.map((volts) => Math.max(0, circuit.drive - volts)) };
  const solve = modesOf(circuit, shared);
  const { instants, overlapping } = switchings(circuit);
  const state: State = { amperes: Array.from({ length: circuit.coils }, () => 0), held: new Set() };
  for (let cycles = 0; cycles < MOST_CYCLES; cycles++) {
    const before = [...state.amperes];
    const on = new Set(overlapping);
    const atFiring: (readonly number[])[] = circuit.firings.map(() => before.map(() => 0));
    const segments = instants.flatMap((instant, i) => {
      switchAt(instant, circuit, state, on, atFiring);
      const to = instants[i + 1]?.at ?? circuit.cycle;
      return advance(
        circuit,
        feed,
        solve,
        state,
        [...on].sort((a, b) => a - b),
        instant.at,
        to,
      );
    });
    // Nothing is charged at the end of a cycle: no other one can differ.
    const settled =
      overlapping.length === 0 ||
      state.amperes.every((now, coil) => Math.abs(now - (before[coil] as number)) <= SETTLED);
    if (settled)
      return { circuit, shared, supplies: drops.map((volts) => circuit.supply - volts), segments, atFiring };
  }
  throw new Error('the currents do not settle');
}

/** Notes the currents at the firings of this instant, then switches off who fires and on whose charge starts. */
function switchAt(
  { fires, starts }: Switching,
  { firings }: Circuit,
  { amperes, held }: State,
  on: Set<number>,
  atFiring: (readonly number[])[],
): void {
  const now = [...amperes];
  for (const firing of fires) {
    const coil = firings[firing]?.coil as number;
    atFiring[firing] = now;
    amperes[coil] = 0;
    held.delete(coil);
    on.delete(coil);
  }
  for (const coil of starts) on.add(coil);
}
