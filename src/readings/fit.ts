/**
 * One model fitted: the sizes of its causes sought with slopes of the model itself, the tolerances of all parts as straight
 * lines drawn anew where the parts are thought to be.
 */
import { type Hypothesis, lnDensity, ODDS, TOGETHER } from './causes.ts';
import { dot, type Gauss, gaussOf, inverse } from './gauss.ts';
import type { Knob } from './parts.ts';
import type { Seen, Shown } from './seen.ts';
import { type Slope, scaled, slopesOf } from './slopes.ts';
import { lnBounded, lnVolume } from './volume.ts';

export interface Model {
  readonly causes: readonly Hypothesis[];
  readonly sizes: readonly number[];
  /** Covariance of the sizes that are free. */
  readonly spread: readonly (readonly number[])[];
  /** ln of odds times probability of the readings; shares are made of it. */
  readonly worth: number;
  /** Sum of squares that is left, each in its own deviation: about as many as there are readings. */
  readonly left: number;
  readonly share: number;
}

/** Rounds in which sizes settle, and the gain below which they have [ln]. */
const ROUNDS = 5;
const SETTLED = 0.02;
/** A misread value may be anything up to so many times of what it should be. Arbitrary. */
const ANYTHING = 3;

export interface Tried {
  readonly causes: readonly Hypothesis[];
  readonly sizes: readonly number[];
  readonly around: readonly number[];
  readonly shown: readonly number[];
  /** Of each reading the current behind it, over the expected one. */
  readonly driven: readonly number[];
  readonly apart: readonly number[];
  readonly gauss: Gauss;
  readonly lnLikely: number;
  readonly left: number;
  /** What the parts most likely are, each in its own deviation. */
  readonly parts: readonly number[];
  /** Their knobs, in the order of the columns. */
  readonly active: readonly number[];
  /** Slopes of the free sizes, where they were worked out. */
  readonly columns?: readonly (readonly number[])[];
}

export class Fits {
  readonly seen: Seen;
  readonly #expected: Shown;
  readonly #slopes: readonly Slope[];

  constructor(seen: Seen) {
    this.seen = seen;
    this.#expected = seen.with([], []);
    this.#slopes = slopesOf(seen, this.#expected);
  }

  get expected(): readonly number[] {
    return this.#expected.shown;
  }

  #suppliesOf(causes: readonly Hypothesis[], sizes: readonly number[]): Map<number, number> {
    const found = new Map<number, number>();
    causes.forEach(({ moves }, k) => {
      for (const [index, by] of moves) {
        const knob = this.seen.parts.knobs[index] as Knob;
        if (knob.of === 'supply')
          found.set(knob.point, (found.get(knob.point) ?? 0) + by * (sizes[k] as number));
      }
    });
    return found;
  }

  #scaled(
    knob: Knob,
    slope: readonly number[],
    at: Pick<Tried, 'shown' | 'driven' | 'causes'>,
    supplies: ReadonlyMap<number, number>,
  ): number[] {
    return scaled(this.seen, knob, slope, this.expected, at, supplies);
  }

  /** The readings by a straight line through the model in which the parts are as `around` says. */
  tried(causes: readonly Hypothesis[], sizes: readonly number[], around: readonly number[] = []): Tried {
    const { shown, amps } =
      causes.length === 0 && around.length === 0 ? this.#expected : this.seen.with(causes, sizes, around);
    const driven = amps.map((now, i) => {
      const before = this.#expected.amps[i] as number;
      return before > 0 ? now / before : 1;
    });
    const apart = this.seen.values.map((value, i) => value - (shown[i] as number));
    const supplies = this.#suppliesOf(causes, sizes);
    const active = this.#slopes.flatMap((slope, k) =>
      slope === null || this.seen.parts.spread[k] === 0
        ? []
        : [{ slope, k, knob: this.seen.parts.knobs[k] as Knob }],
    );
    const columns = active.map(({ slope, k, knob }) => {
      const column = this.#scaled(knob, slope, { shown, driven, causes }, supplies);
      const deviation = this.seen.parts.spread[k] as number;
      for (let i = 0; i < column.length; i++) column[i] = (column[i] as number) * deviation;
      return column;
    });
    active.forEach(({ k }, p) => {
      const back = around[k] ?? 0;
      if (back !== 0)
        (columns[p] as number[]).forEach((value, i) => {
          apart[i] = (apart[i] as number) + value * back;
        });
    });
    const own = [...this.seen.own];
    for (const { how, reading } of causes)
      if (how === 'misread' && reading !== undefined) {
        const i = reading.index;
        own[i] =
          (ANYTHING *
            Math.max(Math.abs(this.seen.values[i] as number), Math.abs(shown[i] as number), 1e-3)) **
          2;
      }
    const gauss = gaussOf(own, columns);
    const left = dot(apart, gauss.weigh(apart));
    const likely = gauss.likely(apart);
    const parts = this.#slopes.map(() => 0);
    active.forEach(({ k }, p) => {
      parts[k] = likely[p] as number;
    });
    return {
      ...{ causes, sizes, around, shown, driven, apart, gauss, left, parts },
      active: active.map(({ k }) => k),
      lnLikely: -(left + gauss.lnDet) / 2,
    };
  }

  /** By how much each reading moves for a size of 1, by the slopes of the expected install; null when none does. */
  direction({ moves, reading, how }: Hypothesis, at: Tried): number[] | null {
    if (how === 'misread' && reading !== undefined)
      return this.seen.values.map((_, i) => (i === reading.index ? 1 : 0));
    let sum: number[] | null = null;
    const supplies = this.#suppliesOf(at.causes, at.sizes);
    for (const [index, by] of moves) {
      const slope = this.#slopes[index];
      if (!slope) continue;
      const moved = this.#scaled(this.seen.parts.knobs[index] as Knob, slope, at, supplies);
      sum = moved.map((value, i) => value * by + (sum?.[i] ?? 0));
    }
    return sum;
  }

  /** Steps of Gauss and Newton, each halved until it is one to the better. */
  settled(start: Tried): Tried {
    let now = this.tried(start.causes, start.sizes, start.parts);
    let columns: number[][] = [];
    for (let round = 0; round < ROUNDS; round++) {
      const free = freeOf(now.causes);
      if (free.length === 0) {
        const next = this.tried(now.causes, now.sizes, now.parts);
        const still = Math.abs(next.lnLikely - now.lnLikely) < SETTLED;
        now = next;
        if (still) return now;
        continue;
      }
      // Slopes hardly change once the size is about right.
      if (round < 2) columns = free.map((k) => this.#slopeAt(now, k));
      const weighed = columns.map((column) => now.gauss.weigh(column));
      const covariance = inverse(weighed.map((w) => columns.map((c) => dot(w, c))));
      if (covariance === null) return { ...now, columns };
      const pull = weighed.map((w) => dot(w, now.apart));
      const step = covariance.map((row) => dot(row, pull));
      let better: Tried | null = null;
      for (let part = 1; part > 0.1 && better === null; part /= 2) {
        const sizes = [...now.sizes];
        free.forEach((k, i) => {
          sizes[k] = limited(
            now.causes[k] as Hypothesis,
            (now.sizes[k] as number) + part * (step[i] as number),
          );
        });
        const tried = this.tried(now.causes, sizes, now.parts);
        if (tried.lnLikely > now.lnLikely) better = tried;
      }
      if (better === null) return { ...now, columns };
      const gain = better.lnLikely - now.lnLikely;
      now = better;
      if (gain < SETTLED && round > 0) return { ...now, columns };
    }
    return { ...now, columns };
  }

  #slopeAt(at: Tried, k: number): number[] {
    const cause = at.causes[k] as Hypothesis;
    const size = at.sizes[k] as number;
    const step = cause.log ? Math.max(1e-3 * cause.from, 0.01 * size) : 0.01;
    const sizes = at.sizes.map((s, i) => (i === k ? s + step : s));
    return this.seen
      .with(at.causes, sizes, at.around)
      .shown.map((value, i) => (value - (at.shown[i] as number)) / step);
  }

  /** What a cause is worth that explains little: by the straight line from a model without it, no currents worked out. */
  near(from: Tried, cause: Hypothesis, column: readonly number[], found: number): Model {
    const size = limited(cause, found);
    const apart = from.apart.map((value, i) => value - size * (column[i] as number));
    const left = dot(apart, from.gauss.weigh(apart));
    const parts = from.parts.map(() => 0);
    from.gauss.likely(apart).forEach((value, p) => {
      parts[from.active[p] as number] = value;
    });
    return this.model({
      ...from,
      parts,
      causes: [...from.causes, cause],
      sizes: [...from.sizes, size],
      ...{ apart, left, lnLikely: from.lnLikely + (from.left - left) / 2 },
      columns: [...(from.columns ?? []), column],
    });
  }

  /** What it takes off that no sound coil is beyond its tolerance: a range with ends, not the normal distribution in its place. */
  #bounded({ active, parts, gauss }: Tried): number {
    return active.reduce((sum, k, p) => {
      const { of } = this.seen.parts.knobs[k] as Knob;
      return of === 'ohm' || of === 'henry' ? sum + lnBounded(parts[k] as number, gauss.variance(p)) : sum;
    }, 0);
  }

  /** What a fit is worth. */
  model(tried: Tried): Model {
    const { causes, sizes, gauss, lnLikely, left } = tried;
    const odds = causes.reduce((sum, cause) => sum + Math.log(cause.odds * TOGETHER), 0);
    const free = freeOf(causes);
    const columns = tried.columns ?? free.map((k) => this.#slopeAt(tried, k));
    const weighed = columns.map((column) => gauss.weigh(column));
    const spread = inverse(weighed.map((w) => columns.map((c) => dot(w, c)))) ?? [];
    let volume = 0;
    if (free.length === 1) {
      const pull = dot(weighed[0] as number[], tried.apart);
      const variance = spread[0]?.[0] ?? Number.POSITIVE_INFINITY;
      volume = lnVolume(
        causes[free[0] as number] as Hypothesis,
        sizes[free[0] as number] as number,
        variance,
        pull,
      );
    } else if (free.length > 1)
      // Bands that reach beyond the sizes that there can be count as far as those.
      free.forEach((k, i) => {
        const cause = causes[k] as Hypothesis;
        const deviation = Math.min(
          Math.sqrt(spread[i]?.[i] ?? Number.POSITIVE_INFINITY),
          cause.to - cause.from,
        );
        volume += lnDensity(cause, sizes[k] as number) + Math.log(deviation) + Math.log(2 * Math.PI) / 2;
      });
    return {
      causes,
      sizes,
      spread,
      left,
      worth: lnLikely + volume + this.#bounded(tried) + (causes.length === 0 ? Math.log(ODDS.sound) : odds),
      share: 0,
    };
  }
}

/** The causes whose size is sought. */
const freeOf = (causes: readonly Hypothesis[]): number[] =>
  causes.flatMap(({ from, to }, k) => (from < to ? [k] : []));

export const limited = ({ from, to }: Hypothesis, size: number): number => Math.max(from, Math.min(to, size));
