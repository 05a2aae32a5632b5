/** FAA AC 43.13-1B, chapter 11: its drop tables against its own wire resistances, misprint included. */
import { describe, expect, test } from 'vitest';
import {
  FAA_FREE_AIR,
  FAA_FUSES,
  FAA_LENGTH_FOR_DROP,
  FAA_RESISTANCE,
  FAA_WIRE_FOR_DROP,
} from '../../src/data/faa.ts';
import { FAA_BUNDLE } from '../../src/data/faa-bundle.ts';
import { expectOfAll } from '../offenders.ts';

const CURRENT = 20;
/** Drop [V] of a run of `length` ft at 20 A. */
const drop = (gauge: string, length: number) => {
  const row = FAA_RESISTANCE.rows.find((r) => r.gauge === gauge);
  return (CURRENT * length * (row?.resistance ?? Number.NaN)) / 1000;
};

describe('table 11-7', () => {
  test('every row but that of No. 12', () => {
    expectOfAll(
      FAA_WIRE_FOR_DROP.rows.filter((row) => row.gauge !== '12'),
      (row) => `No. ${row.gauge}`,
      ({ gauge, length, drop: printed }) => {
        // Printed to the millivolt.
        expect(Math.abs(drop(gauge, length) - printed)).toBeLessThanOrEqual(0.0005);
      },
    );
  });

  test('No. 12: printed 3.60 V, its own figures give 3.555 V', () => {
    expect(FAA_WIRE_FOR_DROP.rows.find((row) => row.gauge === '12')?.drop).toBe(3.6);
    expect(drop('12', 88)).toBeCloseTo(3.555, 3);
  });
});

describe('table 11-8', () => {
  test('No. 10 keeps the drop over the length', () => {
    expectOfAll(
      FAA_LENGTH_FOR_DROP.rows,
      (row) => `${row.permitted} V`,
      ({ permitted, length }) => {
        expect(drop('10', length)).toBeLessThanOrEqual(permitted);
        // The length for 1 V is cut from 39.68 to 39 ft, and the others are multiples of it: up to 1/39 below.
        expect(drop('10', length)).toBeGreaterThan(permitted * (1 - 1 / 39));
      },
    );
  });

  test('.366 V is a misprint: the arithmetic gives .491 V', () => {
    const row = FAA_LENGTH_FOR_DROP.rows.find((r) => r.drop !== null);
    expect(row).toMatchObject({ length: 19.5, drop: 0.366 });
    expect(drop('10', 19.5)).toBeCloseTo(0.491, 3);
  });
});

test('worked example 2, p. 11-27: 47 A × 0.91 for altitude × 0.6 for 8 wires at 60 % is 26 A', () => {
  const free = FAA_FREE_AIR.rows.find((row) => row.gauge === '14')?.current ?? Number.NaN;
  const bundle = FAA_BUNDLE.rows.find((row) => row.wires === 8)?.used_60 ?? Number.NaN;
  // The example reads the curve to one decimal, and gives whole amperes.
  expect(Math.abs(bundle - 0.6)).toBeLessThanOrEqual(0.05);
  expect(Math.abs(free * 0.91 * 0.6 - 26)).toBeLessThanOrEqual(0.5);
});

test('free air: a smaller rise or a thinner wire carries less', () => {
  const at = (gauge: string, rise: number) =>
    FAA_FREE_AIR.rows.find((row) => row.gauge === gauge && row.rise === rise)?.current ?? Number.NaN;
  expect(at('12', 140)).toBeLessThan(at('12', 175));
  expect(at('22', 140)).toBeLessThan(at('20', 140));
  expect(at('20', 140)).toBeLessThan(at('14', 150));
});

test('table 11-3: a thicker wire never has a smaller fuse', () => {
  const fuses = FAA_FUSES.rows.map((row) => row.fuse);
  // No. 6 and No. 4 share 70 A, so that equal neighbours are right.
  expect(fuses).toEqual([...fuses].sort((a, b) => a - b));
});
