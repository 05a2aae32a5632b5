/** From a share between 0 and 1 to a place between −1 and 1, the limits of a tolerance. */
import type { Distribution } from '../design/design.ts';

/** A tolerance has its limits at so many standard deviations. Common practice. */
const DEVIATIONS = 3;
/** Steps of the table of the normal distribution: its values are then good to seven digits. */
const STEPS = 4096;

/** Shares of a normal distribution, cut at its limits, below each of the places that divide it evenly. */
const BELOW: Float64Array = (() => {
  const density = (place: number): number => Math.exp(-((DEVIATIONS * place) ** 2) / 2);
  const sums = new Float64Array(STEPS + 1);
  const place = (i: number): number => -1 + (2 * i) / STEPS;
  for (let i = 0; i < STEPS; i++) {
    // Simpson.
    const area = density(place(i)) + 4 * density(place(i + 0.5)) + density(place(i + 1));
    sums[i + 1] = (sums[i] as number) + area;
  }
  return sums.map((sum) => sum / (sums[STEPS] as number));
})();

/** The place within the limits below which this share of all parts lies. */
export function placeOf(share: number, distribution: Distribution): number {
  if (distribution === 'uniform') return 2 * share - 1;
  let [low, high] = [0, STEPS];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((BELOW[middle] as number) <= share) low = middle;
    else high = middle;
  }
  const [a, b] = [BELOW[low] as number, BELOW[high] as number];
  return -1 + (2 * (low + (share - a) / (b - a))) / STEPS;
}
