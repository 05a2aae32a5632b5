/** Each reading by itself: within its range, or what would have to be so that it is. */
import type { Instrument, Measured, What } from '../design/design.ts';
import type { Evaluation } from '../engine/evaluate.ts';
import { atPosts, type Expected, expectedAt } from './expected.ts';
import { otherInstruments } from './mixed-up.ts';

export type Stands = 'within' | 'low' | 'high' | 'unknown';

export interface Judged {
  readonly reading: Measured;
  readonly expected: Expected;
  readonly stands: Stands;
  /** Reading over what is expected; null where that is nothing. */
  readonly ratio: number | null;
  /** Resistance that the run would have too much [ohm]; negative: too little. Null where a reading does not tell. */
  readonly excess: number | null;
  /** An instrument with which the reading would be within its range. */
  readonly wouldBe: Instrument | null;
}

/** A supply at the posts this far from the one of its point moves everything else that is read there. Arbitrary. */
const POSTS = 0.02;

/** What instruments of a workshop still tell apart [V], [A], [ohm]: no range is narrower. Common practice. */
export const FINEST: Readonly<Record<What, number>> = { drop: 2e-4, supply: 0, current: 0, resistance: 0 };

/** Judges one reading. The evaluation must hold the subject `readings`. */
export function judge(e: Evaluation, reading: Measured): Judged {
  const expected = expectedAt(e, reading);
  const { low, high } = expected;
  const slack = atPosts(reading) ? POSTS * (expected.expected ?? 0) : FINEST[reading.what];
  const stands: Stands =
    low === null || high === null
      ? 'unknown'
      : reading.value < low - slack
        ? 'low'
        : reading.value > high + slack
          ? 'high'
          : 'within';
  const outside = stands === 'low' || stands === 'high';
  const wouldBe = outside
    ? otherInstruments(reading).find((instrument) => {
        const other = expectedAt(e, { ...reading, instrument });
        return (
          other.low !== null &&
          other.high !== null &&
          reading.value >= other.low &&
          reading.value <= other.high
        );
      })
    : undefined;
  return {
    reading,
    expected,
    stands,
    ratio: expected.expected ? reading.value / expected.expected : null,
    excess: excessOf(e, reading, expected),
    wouldBe: wouldBe ?? null,
  };
}

/** What the drop or the resistance says of the run alone, the current as expected. */
function excessOf(e: Evaluation, reading: Measured, { expected }: Expected): number | null {
  const { what, instrument, wire } = reading;
  if (wire === null || expected === null) return null;
  if (what === 'resistance') return reading.value - expected;
  if (what !== 'drop') return null;
  const amps = expectedAt(e, {
    ...reading,
    what: 'current',
    instrument: instrument === 'meter' ? 'clamp_average' : 'clamp_peak',
  }).expected;
  return amps ? (reading.value - expected) / amps : null;
}
