/**
 * What one recorded charge tells: how steeply the current starts to rise, how soon it bends, and whether it has a knee.
 *
 * i(t) = s·(1 − e^(−k·(t−t₀)))/k, which is I∞·(1 − e^(−(t−t₀)/τ)) with s = I∞/τ and k = 1/τ: s and k are found almost
 * independently of each other, and k may be 0. A limit cuts it off at a height; a core that saturates bends it upward.
 */
import { type Fit, leastSquares, type Model } from './least-squares.ts';

export interface Knee {
  /** "limit": flat end. "clipped": flat and without noise, the end of the instrument's range. "saturation": bends up. */
  readonly kind: 'limit' | 'clipped' | 'saturation';
  /** Current at which it starts [A]. */
  readonly current: number;
  /** Time since the start of the charge [s]. */
  readonly after: number;
}

export interface ChargeFit {
  /** Slope at the start [A/s] and its variance; rate of bending [1/s] and its variance; covariance of the two. */
  readonly slope: number;
  readonly rate: number;
  readonly variances: { readonly slope: number; readonly rate: number; readonly both: number };
  /** Begin of the charge [s]. */
  readonly start: number;
  /** The fitted curve [A] at a time [s]. */
  readonly curve: (t: number) => number;
  readonly knee: Knee | null;
}

const rising: Model = (t, [s = 0, k = 0, t0 = 0]) => {
  const x = t - t0;
  if (x <= 0) return 0;
  // Near k = 0 the quotient loses its digits; the next term of the series is below 1e-12 there.
  return Math.abs(k * x) < 1e-6 ? s * x * (1 - (k * x) / 2) : (-s * Math.expm1(-k * x)) / k;
};
const limited: Model = (t, p) => Math.min(rising(t, p), p[3] as number);
/** `p[3]` is the surplus over the time after the bend at `from`: a sharp bend has power 1, a round one 2. */
const bending =
  (from: number, power: number): Model =>
  (t, p) =>
    rising(t, p) + (p[3] as number) * Math.max(0, t - from) ** power;

/** A further parameter has to earn this much in the information criterion n·ln(sum) + parameters·ln n. Arbitrary. */
const EARNS = 20;
/** A limit counts when it cuts off this share of the peak, an upward bend when it adds this share. Arbitrary. */
const CUT = 0.01;
const BEND = 0.03;

/** Differences below this share of the peak are those of the instrument, not of the coil. Arbitrary. */
const RESOLVED = 1e-3;

/** The steps of a converter are errors, too: uniform over a step, and alike for all samples of the same step. */
function criterion(found: Fit, n: number, parameters: number, peak: number, step: number): number {
  const resolved = (RESOLVED * peak) ** 2 + step ** 2 / 12;
  const apart = step > 0 ? Math.min(n, (2 * peak) / step) : n;
  return apart * Math.log(found.sum / n + resolved) + parameters * Math.log(apart);
}

/** A flat end with less than this share of the noise is that of the instrument. Arbitrary. */
const STILL = 0.3;

/** A curve that misses the samples by more than this share of the peak is none. Root mean square. Arbitrary. */
const MISSES = 0.06;

/**
 * Fits one charge: samples from somewhat before its start to its last one, resting level 0. `start` is a first guess,
 * `noise` the standard deviation of a sample, and `step` that of a converter that noise does not blur. Null when the samples do not determine a curve.
 */
export function fitCharge(
  time: readonly number[],
  current: readonly number[],
  start: number,
  noise: number,
  step: number,
): ChargeFit | null {
  const n = time.length;
  const end = time[n - 1] as number;
  const dwell = end - start;
  const peak = current.slice(-Math.max(1, n >> 4)).reduce((a, b) => Math.max(a, b), 0);
  const size = [peak / dwell, 1 / dwell, dwell / 10];
  const guess = [(1.3 * peak) / dwell, 0.5 / dwell, start];
  const free = leastSquares(rising, time, current, guess, size);
  const simple = criterion(free, n, 3, peak, step);

  const told = (found: Fit, model: Model, knee: Knee | null): ChargeFit | null =>
    Math.sqrt(found.sum / n) > Math.max(MISSES * peak, 3 * noise) ? null : result(found, model, knee);
  const flat = flatEnd(time, current, guess, size, peak);
  const bent = upwardEnd(time, current, free, size, start, peak);
  const gain = (other: Fit | null, parameters: number): number =>
    other === null ? 0 : simple - criterion(other, n, parameters, peak, step);
  const [flatGain, bentGain] = [gain(flat, 4), gain(bent?.fit ?? null, 5)];
  const limit = flat?.p[3] as number;
  const kneeAt = flat ? whenAt(flat.p, limit, end) : end;
  const cuts = flat !== null && rising(end, flat.p) - limit > CUT * peak;
  if (
    flat &&
    cuts &&
    flatGain > EARNS &&
    flatGain >= bentGain &&
    time.filter((t) => t > kneeAt).length >= 4
  ) {
    const top = current.filter((_, i) => (time[i] as number) > kneeAt);
    const mean = top.reduce((a, b) => a + b, 0) / top.length;
    const spread = Math.sqrt(top.reduce((sum, value) => sum + (value - mean) ** 2, 0) / top.length);
    const still = step === 0 && spread < STILL * noise;
    return told(flat, limited, {
      kind: still ? 'clipped' : 'limit',
      current: limit,
      after: kneeAt - (flat.p[2] as number),
    });
  }
  if (bent && bentGain > EARNS) {
    const after = bent.from - (bent.fit.p[2] as number);
    return told(bent.fit, bent.model, {
      kind: 'saturation',
      current: rising(bent.from, bent.fit.p),
      after,
    });
  }
  return told(free, rising, null);
}

function result({ p, covariance }: Fit, model: Model, knee: Knee | null): ChargeFit | null {
  const [slope, rate, start] = p as [number, number, number];
  if (covariance === null || !(slope > 0)) return null;
  return {
    slope,
    rate,
    start,
    knee,
    curve: (t) => model(t, p),
    variances: {
      slope: covariance[0]?.[0] as number,
      rate: covariance[1]?.[1] as number,
      both: covariance[0]?.[1] as number,
    },
  };
}

/** The best curve that is cut off at a height, when the end is flat enough to try. */
function flatEnd(
  time: readonly number[],
  current: readonly number[],
  guess: readonly number[],
  size: readonly number[],
  peak: number,
): Fit | null {
  const n = time.length;
  const tail = current.slice(-Math.max(4, n >> 4));
  const level = tail.reduce((a, b) => a + b, 0) / tail.length;
  // A first guess at the slope from where the current passes half of the level.
  const half = current.findIndex((value) => value >= level / 2);
  const steep = level / 2 / Math.max((time[half] ?? 0) - (guess[2] as number), 1e-9);
  return leastSquares(
    limited,
    time,
    current,
    [steep * 1.1, guess[1] as number, guess[2] as number, level],
    [...size, peak],
  );
}

interface Bent {
  readonly power: number;
  readonly fit: Fit;
  readonly model: Model;
  readonly from: number;
}

/** The best curve with an upward bend, over several instants at which it may start; null when none bends enough. */
function upwardEnd(
  time: readonly number[],
  current: readonly number[],
  free: Fit,
  size: readonly number[],
  start: number,
  peak: number,
): Bent | null {
  const end = time[time.length - 1] as number;
  let best: Bent | null = null;
  for (const power of [1, 2])
    for (let share = 0.4; share < 0.95; share += 0.05) {
      const from = start + share * (end - start);
      const model = bending(from, power);
      const scale = peak / (end - from) ** power;
      const found = leastSquares(model, time, current, [...free.p, 0], [...size, scale]);
      const surplus = (found.p[3] as number) * (end - from) ** power;
      // A curve that bends up all along belongs to no coil whose inductance falls at its end.
      if (surplus < BEND * peak || (found.p[1] as number) < 0) continue;
      if (best === null || found.sum < best.fit.sum) best = { fit: found, model, from, power };
    }
  return best && refined(time, current, best, size);
}

/** The same curve with the instant of its bend moved to where it fits best. */
function refined(
  time: readonly number[],
  current: readonly number[],
  bent: Bent,
  size: readonly number[],
): Bent {
  const { fit, from, power } = bent;
  const moving: Model = (t, p) => bending(p[4] as number, power)(t, p);
  const steps = [...size, Math.abs(fit.p[3] as number), size[2] as number];
  const found = leastSquares(moving, time, current, [...fit.p, from], steps);
  return found.covariance === null ? bent : { fit: found, model: moving, from: found.p[4] as number, power };
}

/** When the free curve reaches a height; `end` when it does not before. */
function whenAt(p: readonly number[], height: number, end: number): number {
  let [low, high] = [p[2] as number, end];
  if (rising(high, p) < height) return end;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (rising(middle, p) < height) low = middle;
    else high = middle;
  }
  return high;
}
