/** Derating factors that are printed against the law sqrt((TR − T′a)/(TR − Ta)), written out here once more. */
import { expect, test } from 'vitest';
import { ampacity, ENGINE_SPACE } from '../../src/data/ampacity.ts';
import { NEC_AMBIENT } from '../../src/data/nec-ambient.ts';
import { expectOfAll } from '../offenders.ts';

const law = (rating: number, base: number, ambient: number) =>
  Math.sqrt((rating - ambient) / (rating - base));

test('NEC 310.15: wire at another temperature than 40 °C', () => {
  expectOfAll(
    NEC_AMBIENT.rows,
    (row) => `${row.rating} °C wire at ${row.ambient} °C`,
    ({ rating, ambient, factor }) => {
      // Two printed decimals.
      expect(Math.abs(law(rating, 40, ambient) - factor)).toBeLessThanOrEqual(0.005);
    },
  );
});

test('33 CFR 183.425 note 1: wire in an engine space of 50 °C', () => {
  expectOfAll(
    ENGINE_SPACE.rows.filter((row) => row.rating !== 200),
    ({ rating }) => `${rating} °C`,
    ({ rating, factor }) => {
      // Two printed decimals, some of them cut and not rounded (.856 stands as .85): one whole unit.
      expect(Math.abs(law(rating, ampacity.ampacity_ambient.value, 50) - factor)).toBeLessThan(0.01);
    },
  );
});

test('33 CFR 183.425 note 1: no reduction at 200 °C, where the law makes one', () => {
  const row = ENGINE_SPACE.rows.find((r) => r.rating === 200);
  expect(row?.factor).toBe(1);
  expect(law(200, ampacity.ampacity_ambient.value, 50)).toBeCloseTo(0.939, 3);
});
