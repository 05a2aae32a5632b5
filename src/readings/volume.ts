/** What the sizes that a cause could have had make of its probability, and how well readings fit. */
import { type Hypothesis, lnDensity } from './causes.ts';
import { HALF } from './parts.ts';

/** Nodes of an integral over sizes. */
const NODES = 80;

/** ln ∫ density · likelihood over its best value, over the sizes that there can be; the likelihood as normal around `size`. */
export function lnVolume(cause: Hypothesis, size: number, variance: number, pull: number): number {
  const { from, to, log } = cause;
  const deviation = Math.sqrt(variance);
  const [low, high] = [Math.max(from, size - 6 * deviation), Math.min(to, size + 6 * deviation)];
  const [a, b] = log ? [Math.log(low), Math.log(high)] : [low, high];
  if (!(b > a)) return -Infinity;
  let sum = 0;
  for (let i = 0; i < NODES; i++) {
    const u = a + ((b - a) * (i + 0.5)) / NODES;
    const x = log ? Math.exp(u) : u;
    const rise = pull * (x - size) - (x - size) ** 2 / variance / 2;
    // A fit that has not settled is taken for one that has.
    sum += Math.exp(Math.min(rise, 0) + lnDensity(cause, x)) * (log ? x : 1);
  }
  return Math.log((sum * (b - a)) / NODES);
}

/** No tolerance is as hard as that a part beyond it could not be sound at all [ln]. Arbitrary. */
const HARD = -12;

/**
 * ln of how much likelier readings are when a part is anywhere within ±√3 of its own deviations than when it is normally
 * distributed, where those left it at `mean` with `variance`.
 */
export function lnBounded(mean: number, variance: number): number {
  const deviation = Math.sqrt(variance);
  const [low, high] = [Math.max(-HALF, mean - 6 * deviation), Math.min(HALF, mean + 6 * deviation)];
  if (!(high > low)) return HARD;
  let sum = 0;
  for (let i = 0; i < NODES; i++) {
    const x = low + ((high - low) * (i + 0.5)) / NODES;
    // Both densities lack the same 1/√2π.
    sum += Math.exp((x * x - (x - mean) ** 2 / variance) / 2);
  }
  return Math.max(HARD, Math.log((sum * (high - low)) / NODES / (2 * HALF) / deviation));
}

/** Probability that a sum of n squares of normal deviations is larger: Wilson and Hilferty's cube root (from memory). */
export function beyond(left: number, n: number): number {
  const z = (Math.cbrt(left / n) - (1 - 2 / (9 * n))) / Math.sqrt(2 / (9 * n));
  return normalTail(z);
}

/** 1 − Φ(z), by the logistic curve: within 0.01 of it, and of the right size in the tail. From memory. */
const normalTail = (z: number): number => 1 / (1 + Math.exp(1.5976 * z + 0.070565 * z ** 3));
