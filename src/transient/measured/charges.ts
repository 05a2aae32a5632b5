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

/** A firing takes the current down by this share of the range within a few samples. */
const FALL = 0.3;

/** Typed arrays below: a recording may have a million samples, and they are sorted without being boxed. */
const median = (values: ArrayLike<number>): number => {
  const sorted = Float64Array.from(values).sort();
  return sorted[sorted.length >> 1] ?? Number.NaN;
};

/** Standard deviation of white noise by the differences of neighbours: slow changes do not count. 1.4826: MAD to σ. */
const noiseOf = (values: readonly number[]): number =>
  (1.4826 / Math.SQRT2) * median(stepsOf(values, 1).map(Math.abs));

/** Finds the charges of one coil in samples of current [A], in order of time. */
export function findCharges(raw: readonly number[]): Read<Found> {
  const steps = stepsOf(raw, lagOf(raw));
  // The falls are by far the largest steps; in the third power nothing else counts.
  const turned = steps.reduce((sum, step) => sum + step ** 3, 0) > 0;
  const upright = turned ? raw.map((value) => -value) : raw;
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const value of upright) [low, high] = [Math.min(low, value), Math.max(high, value)];
  const noise = noiseOf(upright);
  const range = high - low;
  if (range < 2 * CLEAR * noise || range === 0)
    return refused('No charge stands out of the noise: is the clamp on, and on the right wire?');
  if (!steps.some((step) => (turned ? step : -step) > FALL * range))
    return refused(
      'The current never falls at once, as it does when a coil fires: record at least one whole charge.',
    );

  // Twice: the first look takes the lowest sixth for rest, the second what lies outside the charges.
  const lowest = upright.filter((value) => value <= low + Math.max(range / 6, 4 * noise));
  const rest = restOf(upright, spansOf(upright, median(lowest), range, noise));
  if (rest.length < LEAST || spread(rest) > Math.max(CLEAR * noise, SHARE * range))
    return refused(
      'The current never comes to rest in it: clamp the wire of one coil alone, with a pause to be seen.',
    );
  const offset = median(rest);
  const spans = spansOf(upright, offset, range, noise);
  if (spans.length === 0) return refused('No charge is long enough to be seen: sample more often.');
  const current = upright.map((value) => value - offset);
  if (spans.some((span) => span.ends && !fallsToRest(current, span, range)))
    return refused(
      'When a charge ends in it, current goes on flowing: several coils overlap. Clamp the wire of one coil alone.',
    );
  return { ok: true, value: { current, noise, offset: turned ? -offset : offset, turned, spans } };
}

/** Differences over a few samples, so that the fall of a slow clamp counts as one step. */
const lagOf = ({ length }: readonly number[]): number => Math.min(20, Math.max(1, Math.floor(length / 500)));

function stepsOf(values: readonly number[], lag: number): Float64Array {
  const steps = new Float64Array(Math.max(0, values.length - lag));
  for (let i = 0; i < steps.length; i++) steps[i] = (values[i + lag] as number) - (values[i] as number);
  return steps;
}

/** Samples outside the charges, and outside the begin of their rise, which the threshold does not see. */
function restOf(values: readonly number[], spans: readonly ChargeSpan[]): number[] {
  const charged = new Uint8Array(values.length);
  for (const { first, last } of spans) {
    const margin = Math.ceil((last - first + 1) * 0.06) + 2;
    charged.fill(1, Math.max(0, first - margin), last + margin + 1);
  }
  return values.filter((_, i) => charged[i] === 0);
}

/** From the tenth to the ninetieth part in a hundred. */
function spread(values: readonly number[]): number {
  const sorted = Float64Array.from(values).sort();
  const at = (share: number): number => sorted[Math.floor(share * (sorted.length - 1))] as number;
  return at(0.9) - at(0.1);
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
