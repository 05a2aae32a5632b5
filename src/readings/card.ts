/**
 * The test card: what to measure, where, and what is acceptable, ready to print. Only what is worth taking is on it: the
 * supply first, by which all the rest is judged, then drops and currents at the fastest point, where both are largest; with
 * the meter before the scope, which costs more to connect. An engine of eight has one page.
 */
import { asRead } from '../basis/print.ts';
import type { Design } from '../design/design.ts';
import type { Evaluation } from '../engine/evaluate.ts';
import type { Expected, Where } from './expected.ts';
import { digitOf, senseOf } from './instruments.ts';
import { acceptable } from './judge.ts';
import { instrumentWords, probesOf, subjectOf } from './places.ts';

/** A row of the card. Texts are printed as they stand; numbers behind them are in `of`. */
export interface CardRow {
  /** Name of the operating point; empty where nothing runs. */
  readonly point: string;
  /** Run, coil or battery. */
  readonly subject: string;
  readonly probes: string;
  readonly instrument: string;
  readonly expected: string;
  readonly low: string;
  readonly high: string;
  /** As it is printed, `mV`. */
  readonly unit: string;
  readonly of: Expected;
}

/** A reading is worth taking from so many digits of its instrument on. Arbitrary: below, its error is half of it. */
const DIGITS = 5;

/** Rows of the card that an instrument can show. The evaluation must hold the subject `readings`. */
export function cardRows(e: Evaluation): CardRow[] {
  return cardPlaces(e.design)
    .map((where) => acceptable(e, where))
    .filter((row) => isWorth(e.design, row))
    .map((row) => printed(e.design, row));
}

/** Whether an instrument shows enough of it; what is not known is asked for. */
export const isWorth = ({ instruments }: Design, { expected, what, instrument }: Expected): boolean =>
  expected === null || expected >= DIGITS * digitOf(instruments[senseOf(instrument)], expected, what);

/** Places of the card, the most telling first; then those at which the design has readings besides. */
export function cardPlaces(design: Design): Where[] {
  const { points, wires, coils, measured } = design;
  const bySpeed = [...points.keys()].sort((a, b) => (points[a]?.rpm ?? 0) - (points[b]?.rpm ?? 0));
  const fast = bySpeed.at(-1) as number;
  const slow = bySpeed[0] as number;
  // While the starter turns a meter holds the least; the next point is idle.
  const starting = bySpeed.length > 2 && (points[slow]?.rpm ?? 0) < STARTER;
  const idle = starting ? (bySpeed[1] as number) : slow;
  const nowhere = { wire: null, coil: null };
  const shared = wires.flatMap(({ coils: carried }, wire) => (carried.length > 1 ? [wire] : []));
  const own = wires.flatMap(({ coils: carried }, wire) => (carried.length > 1 ? [] : [wire]));
  const first = shared[0] ?? 0;
  const at = (wire: number, point: number) => ({ wire, coil: null, point });
  const places: Where[] = [
    { ...nowhere, what: 'resting', instrument: 'meter', point: null },
    ...(starting ? [{ ...nowhere, what: 'supply', instrument: 'least', point: slow } as const] : []),
    ...[...new Set([fast, idle])].map(
      (point): Where => ({ ...nowhere, what: 'supply', instrument: 'meter', point }),
    ),
    { ...at(first, fast), what: 'current', instrument: 'clamp_average' },
    ...shared.map((wire): Where => ({ ...at(wire, fast), what: 'drop', instrument: 'meter' })),
    ...own.map((wire): Where => ({ ...at(wire, fast), what: 'drop', instrument: 'meter' })),
    ...coils.map(
      (_, coil): Where => ({ wire: null, coil, point: fast, what: 'current', instrument: 'clamp_average' }),
    ),
    ...(idle === fast ? [] : [{ ...at(first, idle), what: 'drop', instrument: 'meter' } as const]),
    { ...at(first, fast), what: 'temperature', instrument: 'camera' },
    { ...at(first, fast), what: 'current', instrument: 'clamp_peak' },
    { ...at(first, fast), what: 'drop', instrument: 'scope' },
    ...measured.filter(hasRow),
  ];
  const seen = new Set<string>();
  return places.flatMap((where) => {
    const key = placeKey(where);
    if (seen.has(key)) return [];
    seen.add(key);
    const { what, instrument, wire, coil, point, between = null } = where;
    return [{ what, instrument, wire, coil, point, between }];
  });
}

/** Slower than this only the starter turns the engine [rpm]. Arbitrary. */
const STARTER = 500;

/**
 * A voltage between two places, across one within a run, at a relay, or held at a coil has no row; nor has a temperature in
 * degrees: its row takes the rise above the air around.
 */
export const hasRow = ({ what, between, across, ambient, instrument, coil }: Where): boolean =>
  !between && !across && what !== 'trigger' && ambient == null && !(instrument === 'least' && coil !== null);

const placeKey = ({ what, instrument, wire, coil, point, between, across }: Where): string =>
  [what, instrument, wire, coil, point, between?.join('+'), across].join();

/** Whether two readings are of one place, with one instrument. */
export const samePlace = (a: Where, b: Where): boolean => placeKey(a) === placeKey(b);

export function printed(design: Design, row: Expected): CardRow {
  const say = (value: number | null): string => asRead(value, row.unit, row.shown)[0];
  return {
    point: row.point === null ? '' : (design.points[row.point]?.name ?? ''),
    subject: subjectOf(design, row),
    probes: probesOf(design, row),
    instrument: instrumentWords(row),
    expected: say(row.expected),
    low: say(row.low),
    high: say(row.high),
    unit: asRead(row.expected, row.unit, row.shown)[1],
    of: row,
  };
}
