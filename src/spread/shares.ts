/**
 * What matters most: first-order shares of the variance (Sobol' indices), from the installs that were drawn anyway. For each
 * input they fall into classes of equal probability, and the share is the variance of the class means over that of all
 * values (Plischke, Borgonovo and Smith 2013, "Global sensitivity measures from given data"), less what the means of that
 * many values scatter by chance (the correction of the correlation ratio, ω², of the analysis of variance).
 */

/** Classes of an input, at most: within one of them a straight line keeps a thousandth of its variance. */
const MOST_CLASSES = 32;
/** Values that a class should have at least. */
const EACH = 20;

export class Shares {
  private readonly classes: number;
  private readonly sums: Float64Array;
  private readonly counts: Float64Array;
  private count = 0;
  private mean = 0;
  private squares = 0;
  private readonly inputs: number;

  /** `expected` is how many values there will be. */
  constructor(inputs: number, expected: number) {
    this.inputs = inputs;
    this.classes = Math.max(2, Math.min(MOST_CLASSES, Math.floor(expected / EACH)));
    this.sums = new Float64Array(inputs * this.classes);
    this.counts = new Float64Array(inputs * this.classes);
  }

  /** `places` are those of the inputs, between 0 and 1. */
  add(places: ArrayLike<number>, value: number): void {
    if (!Number.isFinite(value)) return;
    this.count += 1;
    const off = value - this.mean;
    this.mean += off / this.count;
    this.squares += off * (value - this.mean);
    for (let input = 0; input < this.inputs; input++) {
      const own = Math.min(this.classes - 1, Math.floor((places[input] as number) * this.classes));
      const i = input * this.classes + own;
      this.sums[i] = (this.sums[i] as number) + value;
      this.counts[i] = (this.counts[i] as number) + 1;
    }
  }

  /** Variance of all values; 0 where there are not two. */
  get variance(): number {
    return this.count < 2 ? 0 : this.squares / (this.count - 1);
  }

  /** Share of each input, about 0 to 1; by chance a little below 0. All 0 where nothing varies. */
  shares(): number[] {
    const { count, classes, squares, mean } = this;
    return Array.from({ length: this.inputs }, (_, input) => {
      // Rounding alone makes no variance.
      if (count <= classes || squares <= count * (1e-12 * mean) ** 2) return 0;
      let between = 0;
      for (let own = 0; own < classes; own++) {
        const i = input * classes + own;
        const n = this.counts[i] as number;
        if (n > 0) between += n * ((this.sums[i] as number) / n - mean) ** 2;
      }
      const within = (squares - between) / (count - classes);
      return (between - (classes - 1) * within) / (squares + within);
    });
  }
}
