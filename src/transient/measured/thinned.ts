/**
 * A recording in as many samples as its charges need, without spikes. Samples far closer than a charge is long tell nothing
 * more, and mislead whoever looks for a fall from one sample to the next: the noise of each is as large, the step small.
 */

export interface Samples {
  /** [s]; not falling. */
  readonly time: Float64Array;
  /** [A] */
  readonly current: Float64Array;
}

/** Samples of a charge as long as the dwell of the design, at least, where there are as many; the least where noise is large. Arbitrary. */
const ENOUGH = 200;
const LEAST = 60;
/** Noise of more than this share of the range is large. Arbitrary. */
const LARGE = 0.01;

/** How many samples can be averaged to one with every charge still seen well: 1 in most recordings. */
export function groupOf({ time, current }: Samples, dwell: number, noise: number): number {
  const step = ((time.at(-1) as number) - (time[0] as number)) / (time.length - 1);
  const [low, high] = endsOf(current);
  const enough =
    noise / Math.sqrt(Math.max(1, dwell / step / ENOUGH)) > LARGE * (high - low) ? LEAST : ENOUGH;
  return Math.max(1, Math.min(Math.floor(time.length / enough), Math.floor(dwell / step / enough)));
}

/** The means of each so many samples; the last few that make no whole group are left out. */
export function thinned({ time, current }: Samples, group: number): Samples {
  return group === 1 ? { time, current } : { time: means(time, group), current: means(current, group) };
}

function means(values: Float64Array, group: number): Float64Array {
  return Float64Array.from({ length: Math.floor(values.length / group) }, (_, i) => {
    let sum = 0;
    for (let k = i * group; k < (i + 1) * group; k++) sum += values[k] as number;
    return sum / group;
  });
}

/** What differs from its neighbours by this share of the range is a spike, where noise alone does not explain it. Arbitrary. */
const APART = 0.03;

/** Spikes of one or two samples, as other coils make them when they fire, become the median of five. Edges stay. */
export function despiked(values: Float64Array, noise: number): Float64Array {
  const smooth = values.map((value, i) =>
    i < 2 || i > values.length - 3 ? value : medianOfFive(values, i - 2),
  );
  const [low, high] = endsOf(smooth);
  const most = Math.max(6 * noise, APART * (high - low));
  return values.map((value, i) =>
    Math.abs(value - (smooth[i] as number)) > most ? (smooth[i] as number) : value,
  );
}

function medianOfFive(values: Float64Array, from: number): number {
  let [a, b, c, d, e] = values.subarray(from, from + 5) as unknown as [
    number,
    number,
    number,
    number,
    number,
  ];
  // The least and the largest of the first four cannot be the median; of the rest it is the middle.
  if (a > b) [a, b] = [b, a];
  if (c > d) [c, d] = [d, c];
  if (a > c) [a, b, c, d] = [c, d, a, b];
  if (b > e) [b, e] = [e, b];
  return b < c ? Math.min(c, e) : Math.min(b, d);
}

export function endsOf(values: Float64Array): [number, number] {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const value of values) {
    if (value < low) low = value;
    if (value > high) high = value;
  }
  return [low, high];
}
