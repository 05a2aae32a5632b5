/**
 * Where the charges are in a recording: resting level, noise, polarity, and start and end of every charge.
 *
 * A charge rises over milliseconds and falls at once when the coil fires. That tells the polarity of the clamp.
 */

import { droopOf, undrooped } from './droop.ts';
import { type Read, refused } from './lines.ts';
import { median, noiseOf, stepOf } from './noise.ts';
import { despiked, endsOf, groupOf, type Samples, thinned } from './thinned.ts';
import { type ChargeSpan, pausesOf, rests, roughZero, zeroOf } from './zero.ts';

export interface Found {
  /** [s]; currents as recorded, with resting level 0, rising charges positive. */
  readonly time: Float64Array;
  readonly current: Float64Array;
  /** So many samples of the recording were averaged to one of these. */
  readonly group: number;
  /** Standard deviation of a sample of the recording at rest. */
  readonly noise: number;
  /** Step of the converter where noise does not blur it; 0 else. */
  readonly step: number;
  /** What the clamp showed at rest, and by how much that wandered. */
  readonly offset: number;
  readonly drift: number;
  /** The clamp passes no direct current: its droop was undone. */
  readonly droops: boolean;
  readonly turned: boolean;
  /** From here up a value belongs to a charge. */
  readonly threshold: number;
  readonly spans: readonly ChargeSpan[];
  /** Pulses far shorter than the charges, which were left out. */
  readonly short: number;
}

/** A charge stands out of the noise by this many standard deviations, and is this share of the range at least. */
const CLEAR = 6;
const SHARE = 0.04;

/** Samples that make a charge: fewer cannot be told from a spike. */
const LEAST = 10;

/** A firing takes the current down by this share of the range within a few samples. */
const FALL = 0.3;

/** Shorter than this share of the others is no charge; a gap of this share of a charge does not end it. Arbitrary. */
const SHORT = 0.25;
const GAP = 0.08;

/** Noise below this share of the converter's step leaves the values between two steps unknown. Standard deviation. */
const BLURS = 0.3;

/** Finds the charges of one coil in samples in order of time; `dwell` is about how long a charge lasts [s]. */
export function findCharges(recorded: Samples, dwell: number): Read<Found> {
  const noise = noiseOf(recorded.current);
  const step = stepOf(recorded.current);
  const group = groupOf(recorded, dwell, noise);
  const { time, current: means } = thinned(recorded, group);
  const fine = noise > BLURS * step;
  // The values between two steps are anywhere: as noise, that is the step over √12.
  const left = Math.max(noise / Math.sqrt(group), noiseOf(means), fine ? 0 : step / Math.sqrt(12));
  const raw = despiked(means, left);
  const [low, high] = endsOf(raw);
  const range = high - low;
  if (range === 0 || range < 2 * CLEAR * noiseOf(raw) || !(range > 4 * step)) return refused(NOTHING);
  const often = ((time.at(-1) as number) - (time[0] as number)) / (time.length - 1);
  const length = Math.max(LEAST, Math.round(dwell / often));
  const steps = stepsOf(raw, Math.max(1, Math.round(length / 25)));
  // The falls are by far the largest steps; in the third power nothing else counts.
  const turned = steps.reduce((sum, one) => sum + (one / range) ** 3, 0) > 0;
  const upright = turned ? raw.map((value) => -value) : raw;
  if (!steps.some((one) => (turned ? one : -one) > FALL * range))
    return refused(
      'The current never falls at once, as it does when a coil fires: record at least one whole charge.',
    );

  const plain = levelled(upright, length, left);
  const droop = plain === null ? 0 : droopOf(upright, plain.zero, plain.spans, plain.pauses);
  const undone = droop === 0 ? plain : levelled(undrooped(upright, droop), length, left);
  if (undone === null || !atRest(undone, Math.max(CLEAR * left, SHARE * undone.tall, 3 * step)))
    return refused(
      'The current never comes to rest in it: clamp the wire of one coil alone, with a pause to be seen.',
    );
  const { current, zero, spans, short, tall, threshold } = undone;
  if (spans.length === 0) return refused('No charge is long enough to be seen: sample more often.');
  if (spans.some((span) => span.ends && !fallsToRest(current, span, tall)))
    return refused(
      'When a charge ends in it, current goes on flowing: several coils overlap. Clamp the wire of one coil alone.',
    );
  const levels = endsOf(zero);
  const offset = median(zero);
  const value = {
    time,
    current,
    group,
    noise,
    step: fine ? 0 : step,
    offset: turned ? -offset : offset,
    drift: levels[1] - levels[0],
    turned,
    droops: droop > 0,
    threshold,
    spans,
    short,
  };
  return { ok: true, value };
}

interface Levelled {
  /** With resting level 0, and that level. */
  readonly current: Float64Array;
  readonly zero: Float64Array;
  readonly pauses: readonly [number, number][];
  readonly spans: readonly ChargeSpan[];
  readonly short: number;
  /** Height of the tallest charge; from here up a value belongs to a charge. */
  readonly tall: number;
  readonly threshold: number;
}

/** Twice: the first look takes the lowest of every few milliseconds for rest, the second what lies outside the charges. */
function levelled(upright: Float64Array, length: number, noise: number): Levelled | null {
  const rough = less(upright, roughZero(upright, 2 * length));
  const tall = endsOf(rough)[1];
  const threshold = Math.max(CLEAR * noise, SHARE * tall);
  const first = spansOf(rough, threshold, noise);
  const pauses = pausesOf(upright.length, first.spans, threshold / tall);
  if (pauses.length === 0) return null;
  const zero = zeroOf(upright, pauses);
  const current = less(upright, zero);
  return { current, zero, pauses, ...spansOf(current, threshold, noise), tall, threshold };
}

function atRest({ current, zero, pauses, spans, tall }: Levelled, most: number): boolean {
  const rest = gathered(current, pauses);
  const slope = tall / Math.max(LEAST, weighted(spans.map(({ first, last }) => last - first + 1)));
  return (
    rest.length >= LEAST &&
    spread(rest) <= most &&
    rests(
      current.map((value, i) => value + (zero[i] as number)),
      pauses,
      slope,
    )
  );
}

/** The values of several stretches. */
function gathered(values: Float64Array, stretches: readonly [number, number][]): Float64Array {
  const all = new Float64Array(stretches.reduce((sum, [from, to]) => sum + to - from, 0));
  let at = 0;
  for (const [from, to] of stretches) {
    all.set(values.subarray(from, to), at);
    at += to - from;
  }
  return all;
}

const NOTHING = 'No charge stands out of the noise: is the clamp on, and on the right wire?';

const less = (values: Float64Array, level: Float64Array): Float64Array =>
  values.map((value, i) => value - (level[i] as number));

/** Differences over a few samples, so that the fall of a slow clamp counts as one step. */
const stepsOf = (values: Float64Array, lag: number): Float64Array =>
  Float64Array.from(
    { length: Math.max(0, values.length - lag) },
    (_, i) => (values[i + lag] as number) - (values[i] as number),
  );

/** From the tenth to the ninetieth part in a hundred. */
function spread(values: Float64Array): number {
  const sorted = values.toSorted();
  const at = (share: number): number => sorted[Math.floor(share * (sorted.length - 1))] as number;
  return at(0.9) - at(0.1);
}

/** Charges among values with resting level 0; those that noise splits as one, and without pulses that are far shorter. */
function spansOf(
  values: Float64Array,
  threshold: number,
  noise: number,
): { spans: ChargeSpan[]; short: number } {
  const regions: [number, number][] = [];
  for (let i = 0; i < values.length; i++) {
    if ((values[i] as number) < threshold) continue;
    const first = i;
    while (i < values.length && (values[i] as number) >= threshold / 2) i++;
    regions.push([first, i]);
  }
  const all = joined(values, regions, threshold).flatMap(([first, end]) => spanOf(values, first, end, noise));
  const lengths = all.map(({ first, last }) => last - first + 1);
  // Of all samples in charges, half are in charges at least as long.
  const typical = weighted(lengths);
  const spans = all.filter(
    ({ starts, ends }, i) => !starts || !ends || (lengths[i] as number) >= Math.max(LEAST, SHORT * typical),
  );
  return { spans, short: all.length - spans.length };
}

function weighted(lengths: readonly number[]): number {
  const sorted = lengths.toSorted((a, b) => a - b);
  const half = sorted.reduce((a, b) => a + b, 0) / 2;
  let sum = 0;
  for (const length of sorted) {
    sum += length;
    if (sum >= half) return length;
  }
  return 0;
}

/** A charge that drops out for a moment and goes on at the same height is one. */
function joined(
  values: Float64Array,
  regions: readonly [number, number][],
  threshold: number,
): [number, number][] {
  const most = GAP * weighted(regions.map(([from, to]) => to - from));
  const found: [number, number][] = [];
  for (const [from, to] of regions) {
    const before = found.at(-1);
    const [height, again] = before
      ? [heightOf(values, before[1] - 4, before[1]), heightOf(values, from, from + 4)]
      : [0, 0];
    if (before && from - before[1] <= most && height > 3 * threshold && again > 0.7 * height) {
      // What is missing lies straight between both ends.
      for (let i = before[1]; i < from; i++)
        values[i] = height + ((again - height) * (i - before[1] + 1)) / (from - before[1] + 1);
      before[1] = to;
    } else found.push([from, to]);
  }
  return found;
}

const heightOf = (values: Float64Array, from: number, to: number): number =>
  endsOf(values.subarray(Math.max(0, from), to))[1];

function spanOf(values: Float64Array, first: number, end: number, noise: number): ChargeSpan[] {
  const region = values.subarray(first, end);
  // The fall takes a few samples: the charge ends at the last one near the top of what comes before.
  const top = endsOf(region)[1];
  const ends = end < values.length;
  const near = top - Math.max(0.15 * top, CLEAR * noise);
  const last = ends ? first + region.findLastIndex((value) => value >= near) : end - 1;
  return last - first + 1 >= 3 ? [{ first, last, starts: first > LEAST, ends }] : [];
}

/** Shortly after a charge the current is near 0: only one coil flows here. */
function fallsToRest(current: Float64Array, { first, last }: ChargeSpan, range: number): boolean {
  const length = last - first + 1;
  const after = current.subarray(last + 1, last + 2 + Math.max(3, Math.ceil(length / 10)));
  return after.some((value) => value < 0.15 * range);
}
