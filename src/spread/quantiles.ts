/**
 * Quantiles of any number of values in little memory: values are counted in classes that are as wide as a share of the value
 * (Masson, Rim and Lee 2019, "DDSketch"). The order of the values does not matter, and least and largest are exact.
 */

/** A quantile is off by this share of itself at most. */
const EXACT = 1e-4;
const WIDTH = Math.log((1 + EXACT) / (1 - EXACT));
/** Values nearer to 0 than this are 0. */
const NOTHING = 1e-12;

export class Quantiles {
  private readonly counts = new Map<number, number>();
  count = 0;
  least = Number.POSITIVE_INFINITY;
  most = Number.NEGATIVE_INFINITY;

  /** What is not known, NaN, is not counted. */
  add(value: number): void {
    if (Number.isNaN(value)) return;
    this.count += 1;
    this.least = Math.min(this.least, value);
    this.most = Math.max(this.most, value);
    const key = classOf(value);
    this.counts.set(key, (this.counts.get(key) ?? 0) + 1);
  }

  /** The value below which this share of all lies; null where nothing is known. */
  at(share: number): number | null {
    if (this.count === 0) return null;
    const rank = Math.min(this.count - 1, Math.floor(share * this.count));
    let before = 0;
    for (const key of [...this.counts.keys()].sort((a, b) => a - b)) {
      before += this.counts.get(key) as number;
      if (before > rank) return Math.min(this.most, Math.max(this.least, middleOf(key)));
    }
    return this.most;
  }
}

/** Classes of both signs around that of 0; far enough from 0 that those of small values do not meet. */
const FAR = Math.ceil(-Math.log(NOTHING) / WIDTH) + 2;

function classOf(value: number): number {
  if (Math.abs(value) < NOTHING) return 0;
  return Math.sign(value) * (FAR + Math.ceil(Math.log(Math.abs(value)) / WIDTH));
}

function middleOf(key: number): number {
  if (key === 0) return 0;
  const upper = Math.exp((Math.abs(key) - FAR) * WIDTH);
  return Math.sign(key) * upper * (1 - EXACT);
}
