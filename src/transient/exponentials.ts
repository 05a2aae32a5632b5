/**
 * A current or a voltage between two switchings: a level and a sum of decaying exponentials.
 *
 * Every branch current of a linear circuit with constant sources has this form, and so has every sum of them.
 */

/** f(t) = level + Σ amounts[k]·e^(−rates[k]·t), t ≥ 0 [s]; rates > 0 [1/s]; level and amounts in A or V. */
export interface Exponentials {
  readonly level: number;
  readonly amounts: readonly number[];
  readonly rates: readonly number[];
}

const sum = (f: Exponentials, term: (amount: number, rate: number) => number): number => {
  let total = 0;
  for (let k = 0; k < f.rates.length; k++) total += term(f.amounts[k] as number, f.rates[k] as number);
  return total;
};

/** f(t). */
export const valueAt = (f: Exponentials, t: number): number =>
  f.level + sum(f, (amount, rate) => amount * Math.exp(-rate * t));

/** df/dt as exponentials again. */
export const slopeOf = (f: Exponentials): Exponentials => ({
  level: 0,
  amounts: f.amounts.map((amount, k) => -amount * (f.rates[k] as number)),
  rates: f.rates,
});

/**
 * No value of f on [a, b] is above this. Each term is monotone, so that its largest value stands at one of the ends;
 * the bound is exact when all amounts have the same sign.
 */
export const atMost = (f: Exponentials, a: number, b: number): number =>
  f.level + sum(f, (amount, rate) => amount * Math.exp(-rate * (amount > 0 ? a : b)));

/** No value of f on [a, b] is below this. */
export const atLeast = (f: Exponentials, a: number, b: number): number =>
  f.level + sum(f, (amount, rate) => amount * Math.exp(-rate * (amount > 0 ? b : a)));

/** Size of the terms: what rounding errors are measured against. */
export const scaleOf = (f: Exponentials): number => Math.abs(f.level) + sum(f, Math.abs);

/** ∫₀^h e^(−rate·t) dt. */
const decayed = (rate: number, h: number): number => -Math.expm1(-rate * h) / rate;

/** ∫₀^h f dt. */
export const integralOf = (f: Exponentials, h: number): number =>
  f.level * h + sum(f, (amount, rate) => amount * decayed(rate, h));

/** ∫₀^h f² dt. */
export const squareIntegralOf = (f: Exponentials, h: number): number =>
  f.level ** 2 * h +
  sum(
    f,
    (a, r) => a * (2 * f.level * decayed(r, h) + sum(f, (amount, rate) => amount * decayed(r + rate, h))),
  );

/** base + Σ weights[i]·parts[i]; all parts have the same rates. */
export function combined(
  base: number,
  weights: readonly number[],
  parts: readonly Exponentials[],
): Exponentials {
  const rates = parts[0]?.rates ?? [];
  const amounts = rates.map(() => 0);
  let level = base;
  parts.forEach((part, i) => {
    const weight = weights[i] as number;
    if (weight === 0) return;
    level += weight * part.level;
    part.amounts.forEach((amount, k) => {
      amounts[k] = (amounts[k] as number) + weight * amount;
    });
  });
  return { level, amounts, rates };
}
