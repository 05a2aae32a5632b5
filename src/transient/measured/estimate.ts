/** Estimates from several charges: means with a range of confidence, and charges that are none of their kind. */
import type { ChargeFit } from './charge-fit.ts';
import { median } from './noise.ts';

/** A value and the half width of its range of 95 % confidence. */
export interface Estimate {
  readonly value: number;
  readonly within: number;
}

/** Two-sided 95 % of the normal distribution. */
const SURE = 1.96;

/** Mean over the charges, each counted by how sure it is; wider where they disagree by more than that. */
export function estimates(
  fits: readonly ChargeFit[],
  drive: number,
): { resistance: Estimate; inductance: Estimate } {
  const each = fits.map(({ slope: s, rate: k, variances: v }) => ({
    inductance: { value: drive / s, variance: (drive / s ** 2) ** 2 * v.slope },
    resistance: {
      value: (drive * k) / s,
      variance: (drive / s) ** 2 * (v.rate + (k / s) ** 2 * v.slope - ((2 * k) / s) * v.both),
    },
  }));
  const mean = (values: readonly { value: number; variance: number }[]): Estimate => {
    // A recording without any noise has variances of 0: all count alike.
    const weights = values.map(({ value, variance }) => 1 / Math.max(variance, 1e-24 * value ** 2 + 1e-300));
    const total = weights.reduce((a, b) => a + b, 0);
    const value = values.reduce((sum, one, i) => sum + one.value * (weights[i] as number), 0) / total;
    const spread = values.reduce((sum, one, i) => sum + (one.value - value) ** 2 * (weights[i] as number), 0);
    const wider = values.length > 1 ? Math.max(1, spread / (values.length - 1)) : 1;
    return { value, within: SURE * Math.sqrt(wider / total) };
  };
  return {
    resistance: mean(each.map((one) => one.resistance)),
    inductance: mean(each.map((one) => one.inductance)),
  };
}

export function meanOf(values: readonly (number | null)[]): number | null {
  const there = values.filter((value) => value !== null);
  return there.length === 0 ? null : there.reduce((a, b) => a + b, 0) / there.length;
}

/** Off by less than this share of the median is no other charge, and by less than so many standard deviations. Arbitrary. */
const OFF = 0.1;
const SIGMAS = 6;

/** Which of several rows lies far from the median of its column, in any of them; 1.4826: MAD to σ. */
export function farFromMedian(rows: readonly (readonly (number | null)[])[]): boolean[] {
  if (rows.length < 3) return rows.map(() => false);
  const limits = (rows[0] ?? []).map((_, column) => {
    const values = rows.flatMap((row) => row[column] ?? []);
    const middle = median(values);
    const sigma = 1.4826 * median(values.map((value) => Math.abs(value - middle)));
    return { middle, most: Math.max(OFF * Math.abs(middle), SIGMAS * sigma) };
  });
  return rows.map((row) =>
    row.some((value, column) => {
      const limit = limits[column];
      return value !== null && limit !== undefined && Math.abs(value - limit.middle) > limit.most;
    }),
  );
}
