/**
 * Where a sum of exponentials first rises to a level, and its largest value.
 *
 * Such a sum need not be monotone: the current of a coil falls again when others start to load the feed. So the
 * interval is halved until bounds that hold for every instant in it decide. No crossing can slip through.
 */
import { atLeast, atMost, type Exponentials, scaleOf, slopeOf, valueAt } from './exponentials.ts';

/** Where f hardly moves, instants are told apart to this [s]; where it rises, to the second value. */
const INSTANT = 1e-12;
const FINEST = 1e-18;

/** Rounding of a sum of a few terms, as a share of their size. */
const ROUNDING = 1e-13;

/**
 * First instant in [0, end] at which f rises to `level`; null when it does not.
 * f(0) must not be above `level`; standing at it and falling is no rise.
 */
export function firstRise(f: Exponentials, level: number, end: number): number | null {
  const slope = slopeOf(f);
  const rounding = scaleOf(f) * ROUNDING;
  const search = (a: number, b: number): number | null => {
    if (atMost(f, a, b) < level || atMost(slope, a, b) <= 0) return null;
    if (atLeast(slope, a, b) >= 0) return valueAt(f, b) < level ? null : bisected(f, level, a, b);
    if (b - a < INSTANT) return valueAt(f, b) > level + rounding ? b : null;
    const middle = (a + b) / 2;
    return search(a, middle) ?? search(middle, b);
  };
  return search(0, end);
}

/** f rises on [a, b] and has reached `level` at b. */
function bisected(f: Exponentials, level: number, a: number, b: number): number {
  let [low, high] = [a, b];
  while (high - low > FINEST) {
    const middle = (low + high) / 2;
    // No number lies between the two.
    if (middle <= low || middle >= high) break;
    if (valueAt(f, middle) < level) low = middle;
    else high = middle;
  }
  return high;
}

/** Largest value of f on [0, end]. */
export function largest(f: Exponentials, end: number): number {
  const slope = slopeOf(f);
  const rounding = scaleOf(f) * ROUNDING;
  let best = Math.max(valueAt(f, 0), valueAt(f, end));
  const search = (a: number, b: number): void => {
    if (atMost(f, a, b) <= best + rounding || b - a < INSTANT) return;
    // Monotone: the larger end has been looked at already.
    if (atLeast(slope, a, b) >= 0 || atMost(slope, a, b) <= 0) return;
    const middle = (a + b) / 2;
    best = Math.max(best, valueAt(f, middle));
    search(a, middle);
    search(middle, b);
  };
  search(0, end);
  return best;
}

/** Least value of f on [0, end]. */
export const least = (f: Exponentials, end: number): number =>
  -largest({ level: -f.level, amounts: f.amounts.map((a) => -a), rates: f.rates }, end);
