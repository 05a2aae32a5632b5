/** The method by itself: points, distributions, quantiles, and shares against published and analytic values. */
import { expect, test } from 'vitest';
import { placeOf } from '../../src/spread/distribution.ts';
import { Quantiles } from '../../src/spread/quantiles.ts';
import { Sequence } from '../../src/spread/sequence.ts';
import { Shares } from '../../src/spread/shares.ts';

const points = (dimensions: number, seed: number, count: number): number[][] => {
  const sequence = new Sequence(dimensions, seed);
  return Array.from({ length: count }, (_, i) => {
    const point = new Float64Array(dimensions);
    sequence.point(i, point);
    return [...point];
  });
};

test('each of as many cells as a power of the base holds one point: 2 and 3 are the first bases', () => {
  const cells = (dimension: number, count: number): number =>
    new Set(points(2, 7, count).map((point) => Math.floor((point[dimension] as number) * count))).size;
  expect([cells(0, 1024), cells(1, 729)]).toEqual([1024, 729]);
  // In the plane as well: 2^5 by 3^3 cells.
  const plane = points(2, 7, 32 * 27).map(([x = 0, y = 0]) => `${Math.floor(x * 32)} ${Math.floor(y * 27)}`);
  expect(new Set(plane).size).toBe(32 * 27);
});

test('a point depends on its number and the seed alone, and lies inside of the cube', () => {
  expect(points(90, 3, 50)).toEqual(points(90, 3, 50));
  expect(points(90, 3, 50)).not.toEqual(points(90, 4, 50));
  expect(
    points(90, 3, 500)
      .flat()
      .every((place) => place > 0 && place < 1),
  ).toBe(true);
});

test('high dimensions are not correlated, as those of an unpermuted sequence are', () => {
  // Without permutations bases 401 and 409 run in step for 400 points: a correlation near 1. By chance it is 0.05 for 400.
  const [a, b] = [78, 79].map((d) => points(80, 1, 400).map((point) => (point[d] as number) - 0.5));
  const sum = (of: (i: number) => number): number =>
    Array.from({ length: 400 }, (_, i) => of(i)).reduce((x, y) => x + y);
  const [x, y] = [a as number[], b as number[]];
  const along = sum((i) => (x[i] as number) * (y[i] as number));
  const size = Math.sqrt(sum((i) => (x[i] as number) ** 2) * sum((i) => (y[i] as number) ** 2));
  expect(Math.abs(along / size)).toBeLessThan(0.2);
});

test('a normal distribution is cut at three standard deviations', () => {
  // Tables: 68.27 % lie within one, 95.45 % within two, 99.73 % within three, which here are all.
  expect(placeOf(0.5 + 0.682689 / 0.9973 / 2, 'normal')).toBeCloseTo(1 / 3, 4);
  expect(placeOf(0.5 - 0.9545 / 0.9973 / 2, 'normal')).toBeCloseTo(-2 / 3, 4);
  expect([placeOf(0.5, 'normal'), placeOf(0.25, 'uniform')]).toEqual([expect.closeTo(0, 9), -0.5]);
  expect(placeOf(1e-12, 'normal')).toBeGreaterThanOrEqual(-1);
});

test('quantiles are those of the sorted values, to a ten thousandth; least and largest are exact', () => {
  const values = points(1, 5, 5001).map(([place = 0]) => Math.exp(6 * place - 3) - 1);
  const quantiles = new Quantiles();
  for (const value of values) quantiles.add(value);
  quantiles.add(Number.NaN);
  const sorted = values.toSorted((a, b) => a - b);
  for (const share of [0.05, 0.3, 0.5, 0.95]) {
    const true_ = sorted[Math.floor(share * 5001)] as number;
    expect(Math.abs((quantiles.at(share) as number) - true_)).toBeLessThanOrEqual(1.01e-4 * Math.abs(true_));
  }
  expect([quantiles.least, quantiles.most, quantiles.count]).toEqual([sorted[0], sorted.at(-1), 5001]);
  expect(new Quantiles().at(0.5)).toBeNull();
});

const shares = (inputs: number, value: (places: number[]) => number, count = 10_000): number[] => {
  const found = new Shares(inputs, count);
  for (const places of points(inputs, 1, count)) found.add(places, value(places));
  return found.shares();
};

test('a linear sum: shares go with the squares of the factors', () => {
  // Var(3x + 2y + z) = (9 + 4 + 1)/12 for uniform inputs.
  const found = shares(4, ([x = 0, y = 0, z = 0]) => 3 * x + 2 * y + z);
  // Classes hold 312 values each: shares scatter by about 0.005.
  for (const [i, share] of [9 / 14, 4 / 14, 1 / 14, 0].entries())
    expect(Math.abs((found[i] as number) - share)).toBeLessThan(0.015);
});

test('the function of Ishigami and Homma (1990), a = 7, b = 0.1: published shares 0.3139, 0.4424 and 0', () => {
  const angle = (place = 0): number => Math.PI * (2 * place - 1);
  const found = shares(
    3,
    ([x, y, z]) => Math.sin(angle(x)) * (1 + 0.1 * angle(z) ** 4) + 7 * Math.sin(angle(y)) ** 2,
  );
  // By its closed form: V₁ = (1 + bπ⁴/5)²/2, V₂ = a²/8, V = V₁ + V₂ + 8b²π⁸/225.
  const [v1, v2] = [(1 + (0.1 * Math.PI ** 4) / 5) ** 2 / 2, 49 / 8];
  const all = v1 + v2 + (8 * 0.01 * Math.PI ** 8) / 225;
  expect([v1 / all, v2 / all]).toEqual([expect.closeTo(0.3139, 4), expect.closeTo(0.4424, 4)]);
  for (const [i, share] of [v1 / all, v2 / all, 0].entries())
    expect(Math.abs((found[i] as number) - share)).toBeLessThan(0.02);
});

test('what does not vary has no shares', () => {
  expect(shares(2, () => 0.3, 200)).toEqual([0, 0]);
});
