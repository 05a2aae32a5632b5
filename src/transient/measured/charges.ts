/**
 * Where the charges are in a recording: resting level, noise, polarity, and begin and end of every charge.
 *
 * A charge rises over milliseconds and falls at once when the coil fires. That tells the polarity of the clamp.
 */
import { type Read, refused } from './table.ts';
import { groupOf, type Samples, thinned } from './thinned.ts';

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
  /** As written; currents [A] with resting level 0, rising charges positive. */
  readonly time: Float64Array;
  readonly current: Float64Array;
  /** So many samples of the recording were averaged to one of these. */
  readonly group: number;
  /** Standard deviation of a sample of the recording at rest [A]. */
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

const median = (values: Float64Array): number => values.toSorted()[values.length >> 1] ?? Number.NaN;

/** So many samples tell how large the noise is. Arbitrary. */
const ENOUGH = 65536;

/** Standard deviation of white noise by the differences of neighbours: slow changes do not count. 1.4826: MAD to σ. */
const noiseOf = (values: Float64Array): number =>
  (1.4826 / Math.SQRT2) * median(stepsOf(values, 1, Math.ceil(values.length / ENOUGH)).map(Math.abs));

function endsOf(values: Float64Array): [number, number] {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const value of values) {
    if (value < low) low = value;
    if (value > high) high = value;
  }
  return [low, high];
}

/** Finds the charges of one coil in samples in order of time. */
export function findCharges(recorded: Samples): Read<Found> {
  const ends = endsOf(recorded.current);
  const recordedNoise = noiseOf(recorded.current);
  if (ends[1] - ends[0] < 2 * CLEAR * recordedNoise || ends[0] === ends[1])
    return refused('No charge stands out of the noise: is the clamp on, and on the right wire?');
  const group = groupOf(recorded, ...ends);
  const { time, current: raw } = thinned(recorded, group);
  const steps = stepsOf(raw, lagOf(raw));
  // The falls are by far the largest steps; in the third power nothing else counts.
  const turned = steps.reduce((sum, step) => sum + step ** 3, 0) > 0;
  const upright = turned ? raw.map((value) => -value) : raw;
  const [low, high] = endsOf(upright);
  const noise = noiseOf(upright);
  const range = high - low;
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
  const value = {
    time,
    current,
    group,
    noise: recordedNoise,
    offset: turned ? -offset : offset,
    turned,
    spans,
  };
  return { ok: true, value };
}

/** Differences over a few samples, so that the fall of a slow clamp counts as one step. */
const lagOf = ({ length }: Float64Array): number => Math.min(20, Math.max(1, Math.floor(length / 500)));

/** `every` leaves out what lies between. */
function stepsOf(values: Float64Array, lag: number, every = 1): Float64Array {
  const steps = new Float64Array(Math.max(0, Math.ceil((values.length - lag) / every)));
  for (let i = 0; i < steps.length; i++)
    steps[i] = (values[i * every + lag] as number) - (values[i * every] as number);
  return steps;
}

/** Samples outside the charges, and outside the begin of their rise, which the threshold does not see. */
function restOf(values: Float64Array, spans: readonly ChargeSpan[]): Float64Array {
  const charged = new Uint8Array(values.length);
  for (const { first, last } of spans) {
    const margin = Math.ceil((last - first + 1) * 0.06) + 2;
    charged.fill(1, Math.max(0, first - margin), last + margin + 1);
  }
  return values.filter((_, i) => charged[i] === 0);
}

/** From the tenth to the ninetieth part in a hundred. */
function spread(values: Float64Array): number {
  const sorted = values.toSorted();
  const at = (share: number): number => sorted[Math.floor(share * (sorted.length - 1))] as number;
  return at(0.9) - at(0.1);
}

function spansOf(values: Float64Array, offset: number, range: number, noise: number): ChargeSpan[] {
  const threshold = offset + Math.max(CLEAR * noise, SHARE * range);
  const back = offset + Math.max(CLEAR * noise, SHARE * range) / 2;
  const spans: ChargeSpan[] = [];
  for (let i = 0; i < values.length; i++) {
    if ((values[i] as number) < threshold) continue;
    const first = i;
    while (i < values.length && (values[i] as number) >= back) i++;
    const region = values.subarray(first, i);
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
function fallsToRest(current: Float64Array, { first, last }: ChargeSpan, range: number): boolean {
  const length = last - first + 1;
  const after = current.subarray(last + 1, last + 2 + Math.max(3, Math.ceil(length / 10)));
  return after.some((value) => value < 0.15 * range);
}
