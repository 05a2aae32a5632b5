/** Each reading by itself: within what tolerances and the error of the instrument allow, or what would have to be so that it is. */
import type { Instrument, Measured } from '../design/design.ts';
import type { Evaluation } from '../engine/evaluate.ts';
import { atPosts, currentBehind, type Expected, expectedAt, type Where } from './expected.ts';
import { errorOf, statedAt } from './instruments.ts';
import { otherInstruments } from './mixed-up.ts';

export type Stands = 'within' | 'low' | 'high' | 'unknown';

export interface Judged {
  readonly reading: Measured;
  /** Its ends are what the instrument may show: tolerances, supply and its own error together. */
  readonly expected: Expected;
  readonly stands: Stands;
  /** Reading over what is expected; null where that is nothing. */
  readonly ratio: number | null;
  /** Resistance that the run would have too much [ohm]; negative: too little. Null where a reading does not tell. */
  readonly excess: number | null;
  /** An instrument with which the reading would be within its range. */
  readonly wouldBe: Instrument | null;
}

/** Judges one reading. The evaluation must hold the subject `readings`. */
export function judge(e: Evaluation, reading: Measured): Judged {
  const expected = acceptable(e, reading);
  const { low, high } = expected;
  const stands: Stands =
    low === null || high === null
      ? 'unknown'
      : reading.value < low
        ? 'low'
        : reading.value > high
          ? 'high'
          : 'within';
  const outside = stands === 'low' || stands === 'high';
  const wouldBe = outside
    ? otherInstruments(reading).find((instrument) => {
        const other = acceptable(e, { ...reading, instrument });
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

/**
 * What the instrument may show there when nothing is wrong: the range of the tolerances, with the supply as it was read at
 * the posts, else as far as it may be off, and beyond that by as much as the instrument errs.
 */
export function acceptable(e: Evaluation, where: Where): Expected {
  const plain = expectedAt(e, where);
  if (plain.expected === null || plain.low === null || plain.high === null) return plain;
  if (where.what === 'temperature' || where.what === 'resting') {
    const error = errorOf(e.design, where, plain.expected);
    return { ...plain, low: plain.low - error, high: plain.high + error };
  }
  const [low, high] = atPosts(where)
    ? ends(plain.expected, e.design.tolerance.supply)
    : supplied(e, where, plain.low, plain.high);
  const { design } = e;
  return {
    ...plain,
    expected: atPosts(where)
      ? plain.expected
      : (supplied(e, where, plain.expected, plain.expected, 0)[0] as number),
    low: Math.max(0, low - errorOf(design, where, plain.expected)),
    high: high + errorOf(design, where, plain.expected),
  };
}

/** What a meter holds while the starter turns differs so much from one start to the next [V]. Arbitrary. */
const AGAIN = 0.2;

const ends = (value: number, share: number): [number, number] => [value * (1 - share), value * (1 + share)];

/** The ends of a range with another supply: what is left at a coil moves with it, what a current drives in proportion. */
function supplied(
  { design }: Evaluation,
  where: Where,
  low: number,
  high: number,
  tolerance = design.tolerance.supply,
): [number, number] {
  const { point } = where;
  if (point === null || where.what === 'dwell') return [low, high];
  const own = where.instrument === 'least' ? 'least' : 'meter';
  const at = design.points[point];
  const stated = at === undefined ? 0 : statedAt(at, own);
  const read = design.measured.find((m) => atPosts(m) && m.instrument === own && m.point === point);
  const error =
    read === undefined ? tolerance * stated : tolerance === 0 ? 0 : errorOf(design, read, read.value);
  // Two starts of the engine are never the same.
  const again = own === 'least' && read !== undefined ? AGAIN : 0;
  const [least, most] = [(read?.value ?? stated) - error - again, (read?.value ?? stated) + error + again];
  if (where.what === 'supply' || where.what === 'trigger')
    return [low + least - stated, high + most - stated];
  const drive = stated - design.coil.driver_drop;
  return [low * Math.max(0, 1 + (least - stated) / drive), high * (1 + (most - stated) / drive)];
}

/** What the drop or the resistance says of the run alone, the current as expected. */
function excessOf(e: Evaluation, reading: Measured, { expected }: Expected): number | null {
  const { what, wire } = reading;
  if (wire === null || expected === null) return null;
  if (what === 'resistance') return reading.value - expected;
  if (what !== 'drop') return null;
  const amps = expectedAt(e, currentBehind(reading)).expected;
  return amps ? (reading.value - expected) / amps : null;
}
