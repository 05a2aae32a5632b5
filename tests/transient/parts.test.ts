/** The mathematics below the currents: eigenvalues, crossings, largest values. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { firstRise, largest } from '../../src/transient/crossing.ts';
import { eigen } from '../../src/transient/eigen.ts';
import { type Exponentials, scaleOf, valueAt } from '../../src/transient/exponentials.ts';

const number = fc.double({ min: -10, max: 10, noNaN: true });

test('eigenvectors are at right angles, and the matrix only stretches them', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 16 }),
      fc.array(number, { minLength: 256, maxLength: 256 }),
      (n, x) => {
        const matrix = Array.from({ length: n }, (_, i) =>
          Array.from({ length: n }, (__, j) => x[Math.min(i, j) * 16 + Math.max(i, j)] as number),
        );
        const { values, vectors } = eigen(matrix);
        vectors.forEach((v, k) => {
          matrix.forEach((row, i) => {
            const product = row.reduce((sum, m, j) => sum + m * (v[j] as number), 0);
            // Rounding of sums of sixteen products of at most 10.
            expect(Math.abs(product - (values[k] as number) * (v[i] as number))).toBeLessThan(1e-12 * 160);
          });
          vectors.forEach((w, l) => {
            const product = v.reduce((sum, a, i) => sum + a * (w[i] as number), 0);
            expect(Math.abs(product - (k === l ? 1 : 0))).toBeLessThan(1e-13);
          });
        });
      },
    ),
    { numRuns: 100, seed: 4 },
  );
});

test('a matrix that is no matrix of numbers is refused', () => {
  expect(() => eigen([[Number.NaN]])).toThrow('not finite');
});

const exponentials: fc.Arbitrary<Exponentials> = fc
  .array(fc.tuple(number, fc.double({ min: 0.1, max: 50, noNaN: true })), { minLength: 1, maxLength: 8 })
  .chain((terms) =>
    number.map((level) => ({ level, amounts: terms.map(([a]) => a), rates: terms.map(([, r]) => r) })),
  );

const STEPS = 2000;
const samples = (f: Exponentials): number[] =>
  Array.from({ length: STEPS + 1 }, (_, i) => valueAt(f, i / STEPS));

test('the first rise to a level is found, and it is the first', () => {
  let found = 0;
  fc.assert(
    fc.property(exponentials, fc.double({ min: 0, max: 1, noNaN: true }), (f, share) => {
      const values = samples(f);
      const most = Math.max(...values);
      const level = valueAt(f, 0) + share * (most - valueAt(f, 0)) + 1e-9 * scaleOf(f);
      const at = firstRise(f, level, 1);
      const first = values.findIndex((value) => value >= level);
      // Between two samples it may rise and fall again; a rise that a sample shows must be there, and not later.
      if (first > 0) {
        found++;
        expect(at).not.toBeNull();
        expect(at as number).toBeLessThanOrEqual(first / STEPS + 1e-12);
      }
      if (at !== null) {
        // Slopes are up to 4000/s here, and the instant is found to 1e-12 s.
        expect(Math.abs(valueAt(f, at) - level)).toBeLessThan(1e-8);
        expect(values.slice(0, Math.floor(at * STEPS)).every((value) => value < level)).toBe(true);
      }
    }),
    { numRuns: 500, seed: 4 },
  );
  expect(found).toBeGreaterThan(100);
});

test('what stands at the level and falls does not rise to it', () => {
  // e^(−t) from 1; and 1 − t²/2 + …: level, slope 0, then falling.
  expect(firstRise({ level: 0, amounts: [1], rates: [1] }, 1, 5)).toBeNull();
  expect(firstRise({ level: 0, amounts: [2, -1], rates: [1, 2] }, 1, 5)).toBeNull();
});

test('the largest value is not below any sample, and is reached', () => {
  fc.assert(
    fc.property(exponentials, (f) => {
      const most = Math.max(...samples(f));
      const found = largest(f, 1);
      // Searched for to 1e-13 of the terms; between samples 1/2000 apart a curve rises by less than a hundredth of them.
      expect(found).toBeGreaterThanOrEqual(most - 1e-12 * scaleOf(f));
      expect(found).toBeLessThanOrEqual(most + 0.01 * scaleOf(f));
    }),
    { numRuns: 300, seed: 4 },
  );
});

test('a largest value inside: 2e^(−t) − 2e^(−2t) has ½ at ln 2', () => {
  expect(largest({ level: 0, amounts: [2, -2], rates: [1, 2] }, 3)).toBeCloseTo(0.5, 12);
});
