/**
 * Currents between two switchings, with coils that reach their limit and leave it.
 *
 * A driver in limitation holds its coil's current at the limit by taking up the voltage that is left over. It does so
 * as long as there is any: as long as the circuit alone would drive the current further up. When others load the feed
 * so far that nothing is left over, the current falls below the limit as that of a driver that is fully on, and is held
 * again when it comes back. A coil at its limit goes on loading the conductors that it shares.
 */
import { type Circuit, primaryOf } from './circuit.ts';
import { firstRise } from './crossing.ts';
import { combined, type Exponentials, valueAt } from './exponentials.ts';
import type { Solve } from './modes.ts';

/** A time in which nothing switches and no limit is reached or left. */
export interface Segment {
  /** Begin and end within the cycle [s]. */
  readonly from: number;
  readonly to: number;
  /** Coils in charge. */
  readonly on: readonly number[];
  /** Current of every coil [A] over the time since `from`; all with the same rates. */
  readonly currents: readonly Exponentials[];
}

/** What goes on from one interval to the next, and is changed by it: current of every coil, and who is at the limit. */
export interface State {
  readonly amperes: number[];
  readonly held: Set<number>;
}

/** What the feed makes of the coils. */
export interface Feed {
  /** coils × coils [ohm]. */
  readonly shared: readonly (readonly number[])[];
  /** Drive of each coil, less the drop of other loads on its path [V]. */
  readonly drives: readonly number[];
}

/** Far more changes than sixteen coils can go through between two switchings. */
const MOST_CHANGES = 1000;

/** The segments from `from` to `to`, with `on` in charge; moves `state` to the end of them. */
export function advance(
  circuit: Circuit,
  { shared, drives }: Feed,
  solve: Solve,
  state: State,
  on: readonly number[],
  from: number,
  to: number,
): Segment[] {
  const { limit } = circuit;
  const segments: Segment[] = [];
  let start = from;
  for (let changes = 0; start < to; changes++) {
    if (changes > MOST_CHANGES) throw new Error('currents at their limit do not come to rest');
    const currents = currentsFrom(limit, { shared, drives }, solve, state, on);
    const change = firstChange(circuit, { shared, drives }, state, on, currents, to - start);
    const end = change === null ? to : Math.min(to, start + change.after);
    if (end > start) {
      segments.push({ from: start, to: end, on, currents });
      for (const coil of on) state.amperes[coil] = valueAt(currents[coil] as Exponentials, end - start);
    }
    if (change !== null) {
      if (state.held.delete(change.coil) === false) state.held.add(change.coil);
      state.amperes[change.coil] = limit;
    }
    start = end;
  }
  return segments;
}

/** Currents of all coils from now on, as long as nothing changes. */
function currentsFrom(
  limit: number,
  { shared, drives }: Feed,
  solve: Solve,
  { amperes, held }: State,
  on: readonly number[],
): Exponentials[] {
  const free = on.filter((coil) => !held.has(coil));
  const push = free.map((a) => {
    let volts = drives[a] as number;
    for (const b of held) volts -= (shared[a]?.[b] as number) * limit;
    return volts;
  });
  const solved = solve(
    free,
    free.map((coil) => amperes[coil] as number),
    push,
  );
  const rates = solved[0]?.rates ?? [];
  const none = rates.map(() => 0);
  return amperes.map((_, coil) => {
    const place = free.indexOf(coil);
    if (place >= 0) return solved[place] as Exponentials;
    return { level: held.has(coil) ? limit : 0, amounts: none, rates };
  });
}

/** The first coil that reaches or leaves its limit, and how long after now; null when none does within `time`. */
function firstChange(
  circuit: Circuit,
  { shared, drives }: Feed,
  { held }: State,
  on: readonly number[],
  currents: readonly Exponentials[],
  time: number,
): { coil: number; after: number } | null {
  const { limit } = circuit;
  if (limit === Number.POSITIVE_INFINITY) return null;
  let first: { coil: number; after: number } | null = null;
  for (const coil of on) {
    const within: number = first?.after ?? time;
    // What the feed lacks to hold the limit: drops and limit times resistance, less the drive.
    const after: number | null = held.has(coil)
      ? firstRise(
          combined(
            primaryOf(circuit, coil).ohm * limit - (drives[coil] as number),
            shared[coil] as number[],
            currents,
          ),
          0,
          within,
        )
      : firstRise(currents[coil] as Exponentials, limit, within);
    if (after !== null && (first === null || after < first.after)) first = { coil, after };
  }
  return first;
}
