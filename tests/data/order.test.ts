/** Order that the physics asks of the tables, whatever their digits: a swapped pair of cells keeps every sum. */
import { describe, expect, test } from 'vitest';
import { AMPACITY, AMPACITY_RATINGS, BUNDLE, ENGINE_SPACE } from '../../src/data/ampacity.ts';
import { AWG_SIZES } from '../../src/data/awg.ts';
import { PULL_OUT_MIL, PULL_OUT_UL } from '../../src/data/crimps.ts';
import { FAA_RESISTANCE } from '../../src/data/faa.ts';
import { FAA_BUNDLE } from '../../src/data/faa-bundle.ts';
import { FUSE_LIMITS } from '../../src/data/fuse-limits.ts';
import { FUSE_COLOURS, FUSE_RATINGS } from '../../src/data/fuse-ratings.ts';
import { FUSE_DROP, FUSE_PULSES, FUSE_TYPES } from '../../src/data/fuses.ts';
import { SOLID_AWG } from '../../src/data/handbook.ts';
import { IEC_60228_CLASS_5 } from '../../src/data/iec60228.ts';
import { CONDUCTOR_TYPES, INSULATION_CLASSES, INSULATIONS } from '../../src/data/insulation.ts';
import { NEC_TABLE_8 } from '../../src/data/nec.ts';
import { FLAT_TABS, RELAY_RATINGS } from '../../src/data/relays.ts';
import { SAE_SIZES } from '../../src/data/sae.ts';
import { expectOfAll } from '../offenders.ts';

/** Every value above the one before it; `fall` the other way round. */
const steps = (values: readonly number[]) => values.slice(1).map((v, i) => v - (values[i] as number));
const expectRise = (values: readonly number[]) => {
  expect(values.length).toBeGreaterThan(1);
  expect(Math.min(...steps(values))).toBeGreaterThan(0);
};
const expectFall = (values: readonly number[]) => expectRise(values.map((v) => -v));

describe('ampacity', () => {
  test('rises with size in the column of each rating', () => {
    expectOfAll(
      AMPACITY_RATINGS,
      ({ rating }) => `${rating} °C`,
      ({ column }) => expectRise(AMPACITY.rows.map((row) => row[column])),
    );
  });

  test('of no size falls with the rating', () => {
    expectOfAll(
      AMPACITY.rows,
      ({ gauge }) => `${gauge} AWG`,
      (row) => {
        // Neighbouring columns may print the same figure: the regulation rounds to 5 A.
        expect(Math.min(...steps(AMPACITY_RATINGS.map(({ column }) => row[column])))).toBeGreaterThanOrEqual(
          0,
        );
        expect(row.at_200).toBeGreaterThan(row.at_60);
      },
    );
  });

  test('the list of ratings names the columns of the table in their order', () => {
    expect(['gauge', ...AMPACITY_RATINGS.map((r) => r.column)]).toEqual(Object.keys(AMPACITY.columns));
    for (const { rating, column } of AMPACITY_RATINGS) {
      expect(AMPACITY.columns[column].label).toBe(`Insulation rated ${rating} °C`);
    }
    expectRise(AMPACITY_RATINGS.map((r) => r.rating));
  });

  test('engine-space factors rise with the rating, bundle factors fall with the count', () => {
    expectRise(ENGINE_SPACE.rows.map((row) => row.factor));
    expectFall(BUNDLE.rows.map((row) => row.factor));
  });

  test('bundle rows follow each other without gap or overlap', () => {
    const rows = BUNDLE.rows;
    for (const [i, row] of rows.slice(1).entries()) expect(row.from).toBe((rows[i]?.to ?? Number.NaN) + 1);
    expect(rows.at(-1)?.to).toBeNull();
  });
});

test('gauges run from thin to thick in every table that lists them', () => {
  const number = new Map(AWG_SIZES.rows.map((row) => [row.gauge, row.number]));
  number.set('24', 24); // The advisory circular begins one size below our list.
  const listed = [
    AWG_SIZES,
    AMPACITY,
    SAE_SIZES,
    SOLID_AWG,
    NEC_TABLE_8,
    FAA_RESISTANCE,
    PULL_OUT_UL,
    PULL_OUT_MIL,
  ];
  for (const table of listed) expectFall(table.rows.map((row) => number.get(row.gauge) ?? Number.NaN));
});

test('gauge names are their numbers; a count of noughts is one less than its number below zero', () => {
  for (const { gauge, number } of AWG_SIZES.rows) {
    const noughts = /^(\d)\/0$/.exec(gauge);
    expect(number).toBe(noughts ? 1 - Number(noughts[1]) : Number(gauge));
  }
});

test('conductor tables: resistance falls and copper rises with size', () => {
  expectRise(IEC_60228_CLASS_5.rows.map((row) => row.size));
  for (const table of [IEC_60228_CLASS_5, SOLID_AWG, NEC_TABLE_8, FAA_RESISTANCE]) {
    expectFall(table.rows.map((row) => row.resistance));
  }
  expectRise(SAE_SIZES.rows.map((row) => row.metric_size));
  expectRise(SAE_SIZES.rows.map((row) => row.area));
  for (const table of [PULL_OUT_UL, PULL_OUT_MIL]) expectRise(table.rows.map((row) => row.force));
});

test('insulation: each class stands above the one before, each shorter time above the longer', () => {
  expectRise(INSULATION_CLASSES.rows.map((row) => row.continuous));
  for (const row of INSULATION_CLASSES.rows) {
    // The classes are spaced by 25 K in every column but between A and B, where the first one is 85 °C, not 75.
    expect(row.hours_6 - row.hours_240).toBe(25);
    expect(row.hours_240 - row.continuous).toBe(25);
  }
});

test('insulation: the one list has all names, and null where the source is silent', () => {
  const classes = INSULATION_CLASSES.rows.map((row) => row.name);
  const types = CONDUCTOR_TYPES.rows.map((row) => row.name);
  expect(INSULATIONS.map((i) => i.name)).toEqual([...classes, ...types]);
  const named = (name: string) => INSULATIONS.find((i) => i.name === name);
  expect(named('C')).toMatchObject({ continuous: 125, hours_6: 175, short_circuit: null });
  expect(named('GPT')).toMatchObject({ continuous: 80, hours_6: null, short_circuit: 160 });
  expect(named('SGX')).toMatchObject({
    continuous: 125,
    hours_6: null,
    short_circuit: 250,
    source: { key: 'SAE-J1127' },
  });
  // A type's short-circuit limit is found by its material: a misspelt material would lose it.
  for (const type of types)
    expect(named(type)?.short_circuit).toBeGreaterThan(named(type)?.continuous as number);
});

describe('every fuse type', () => {
  const ofTypes = (look: (type: string) => void): void =>
    expectOfAll(
      FUSE_TYPES.rows,
      ({ type }) => type,
      ({ type }) => look(type),
    );
  const ratingsOf = (type: string): number[] =>
    FUSE_RATINGS.rows.filter((row) => row.type === type).map((row) => row.rating);

  test('limits: opening times fall with the multiple, the earliest below the latest', () => {
    ofTypes((type) => {
      const limits = FUSE_LIMITS.rows.filter((row) => row.type === type);
      expectRise(limits.map((limit) => limit.multiple));
      expectFall(limits.map((limit) => limit.min));
      expectFall(limits.slice(1).map((limit) => limit.max ?? Number.NaN));
      for (const limit of limits.slice(1)) expect(limit.min).toBeLessThan(limit.max as number);
      // Below the first maximum the fuse need never open.
      expect(limits[0]).toMatchObject({ multiple: 1.1, max: null });
    });
  });

  test('ratings rise, and each has exactly one permitted drop', () => {
    ofTypes((type) => {
      const ratings = ratingsOf(type);
      const drops = FUSE_DROP.rows.filter((row) => row.type === type);
      expectRise(ratings);
      for (const r of ratings) expect(drops.filter((d) => d.from <= r && r <= d.to)).toHaveLength(1);
    });
  });

  test('colours belong to ratings of the type', () => {
    ofTypes((type) => {
      for (const row of FUSE_COLOURS.rows)
        if (row.type === type) expect(ratingsOf(type)).toContain(row.rating);
    });
  });
});

test('more pulses, less of the melting I²t', () => {
  expectRise(FUSE_PULSES.rows.map((row) => row.pulses));
  expectFall(FUSE_PULSES.rows.map((row) => row.share));
});

test('relay ratings and tabs rise', () => {
  expectRise(RELAY_RATINGS.rows.map((row) => row.rating));
  expectRise(FLAT_TABS.rows.map((row) => row.width));
  expectRise(FLAT_TABS.rows.map((row) => row.to));
  for (const tab of FLAT_TABS.rows) expect(tab.from).toBeLessThanOrEqual(tab.to);
});

test('FAA bundle factors fall with the wires and with the use of the bundle', () => {
  const columns = ['used_20', 'used_40', 'used_60', 'used_80', 'used_100'] as const;
  for (const column of columns)
    expectFall(FAA_BUNDLE.rows.map((row) => row[column]).filter((f) => f !== null));
  // A single wire is no bundle: 1 throughout. The last row was read in its first column only.
  for (const row of FAA_BUNDLE.rows.slice(1, -1))
    expectFall(columns.map((column) => row[column] ?? Number.NaN));
});
