/**
 * Where the charges are in a recording: resting level, noise, polarity, and begin and end of every charge.
 *
 * A charge rises over milliseconds and falls at once when the coil fires. That tells the polarity of the clamp.
 */
import { type Read, refused } from './table.ts';

/** Samples of one charge. */
export interface ChargeSpan {
  /** First sample above the threshold, and the last one before the fall. */
  readonly first: number;
  readonly last: number;
  /** Whether the recording holds its begin, and its end. */
  readonly begins: boolean;
  readonly ends: boolean;
}

export interface Found {
  /** [A], resting level 0, rising charges positive. */
  readonly current: readonly number[];
  /** Standard deviation of a sample at rest [A]. */
  readonly noise: number;
  /** What the clamp showed at rest [A]. */
  readonly offset: number;
  readonly turned: boolean;
  readonly spans: readonly ChargeSpan[];
}

/** A charge stands out of the noise by this many standard deviations, and is this share of the range at least. */
const CLEAR = 6;
const SHARE = 0.04;

/** Samples that make a charge: fewer cannot be told from a spike. */
const LEAST = 10;

const median = (values: readonly number[]): number => {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[sorted.length >> 1] ?? Number.NaN;
};

/** Standard deviation of white noise by the differences of neighbours: slow changes do not count. 1.4826: MAD to σ. */
const noiseOf = (values: readonly number[]): number =>
  (1.4826 / Math.SQRT2) * median(values.slice(1).map((value, i) => Math.abs(value - (values[i] as number))));

/** Finds the charges of one coil in samples of current [A], in order of time. */
export function findCharges(raw: readonly number[]): Read<Found> {
  // The falls are by far the largest steps; in the third power nothing else counts.
  const turned = raw.slice(1).reduce((sum, value, i) => sum + (value - (raw[i] as number)) ** 3, 0) > 0;
  const upright = turned ? raw.map((value) => -value) : raw;
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const value of upright) [low, high] = [Math.min(low, value), Math.max(high, value)];
  const noise = noiseOf(upright);
  const range = high - low;
  if (range < 2 * CLEAR * noise || range === 0)
    return refused('No charge stands out of the noise: is the clamp on, and on the right wire?');

  // Twice: the first look takes the lowest sixth for rest, the second what lies outside the charges.
  const lowest = upright.filter((value) => value <= low + Math.max(range / 6, 4 * noise));
  let offset = median(lowest);
  let spans = spansOf(upright, offset, range, noise);
  const rest = upright.filter((_, i) => !spans.some((s) => i >= s.first - LEAST && i <= s.last + LEAST));
  if (rest.length >= LEAST) {
    offset = median(rest);
    spans = spansOf(upright, offset, range, noise);
  }
  if (spans.length === 0) return refused('No charge is long enough to be seen: sample more often.');
  const current = upright.map((value) => value - offset);
  const overlap = spans.find((s) => s.ends && !fallsToRest(current, s, range));
  if (overlap)
    return refused(
      'When a charge ends in it, current goes on flowing: several coils overlap. Clamp the wire of one coil alone.',
    );
  return { ok: true, value: { current, noise, offset: turned ? -offset : offset, turned, spans } };
}

function spansOf(values: readonly number[], offset: number, range: number, noise: number): ChargeSpan[] {
  const threshold = offset + Math.max(CLEAR * noise, SHARE * range);
  const back = offset + Math.max(CLEAR * noise, SHARE * range) / 2;
  const spans: ChargeSpan[] = [];
  for (let i = 0; i < values.length; i++) {
    if ((values[i] as number) < threshold) continue;
    const first = i;
    while (i < values.length && (values[i] as number) >= back) i++;
    const region = values.slice(first, i);
    // The fall takes a few samples: the charge ends at the last one near the top of what comes before.
    const top = region.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
    const ends = i < values.length;
    const near = top - Math.max(0.15 * (top - offset), CLEAR * noise);
    const last = ends ? first + region.findLastIndex((value) => value >= near) : i - 1;
    if (last - first + 1 >= LEAST) spans.push({ first, last, begins: first > LEAST, ends });
  }
  return spans;
}

/** Shortly after a charge the current is near 0: only one coil flows here. */
function fallsToRest(current: readonly number[], { first, last }: ChargeSpan, range: number): boolean {
  const length = last - first + 1;
  const after = current.slice(last + 1, last + 2 + Math.max(3, Math.ceil(length / 10)));
  return after.some((value) => value < 0.15 * range);
}
