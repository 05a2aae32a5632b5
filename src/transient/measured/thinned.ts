/**
 * A recording in as many samples as its charges need. Samples far closer than a charge is long tell nothing more, and mislead
 * whoever looks for a fall from one sample to the next: the noise of each is as large, the step of the current small.
 */

export interface Samples {
  /** In the unit of the recording; not falling. */
  readonly time: Float64Array;
  /** [A] */
  readonly current: Float64Array;
}

/** Samples of a charge above half of its height, at least. Arbitrary. */
const ENOUGH = 100;
/** A charge was there when the current came from beyond the one to beyond the other share of its range. Arbitrary. */
const [LOW, HIGH] = [0.3, 0.7];

/** How many samples can be averaged to one with every charge still seen well: 1 in most recordings. */
export function groupOf({ current }: Samples, low: number, high: number): number {
  const at = (share: number): number => low + share * (high - low);
  const [floor, middle, ceiling] = [at(LOW), at(0.5), at(HIGH)];
  let [up, times, above] = [false, 0, 0];
  for (const value of current) {
    if (value > middle) above += 1;
    if (up ? value >= floor : value <= ceiling) continue;
    up = !up;
    if (up) times += 1;
  }
  // Turned round, a charge is what lies below. A charge takes less time than the pause after it.
  const beyond = Math.min(above, current.length - above);
  return Math.max(1, Math.floor(beyond / Math.max(1, times) / ENOUGH));
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
