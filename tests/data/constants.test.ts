/**
 * Constants against the publication's own words: in the unit, and where it can be as the ratio, that stands there,
 * which is not the way they are written in the source files.
 */
import { describe, expect, test } from 'vitest';
import type { Constant } from '../../src/basis/quantity.ts';
import { convert } from '../../src/basis/units.ts';
import { copper } from '../../src/data/copper.ts';
import { crimp } from '../../src/data/crimps.ts';
import { dropPractice } from '../../src/data/drop.ts';
import { fuseDistance } from '../../src/data/fuse-distance.ts';
import { FUSE_COLOURS } from '../../src/data/fuse-ratings.ts';
import { FUSE_PULSES, FUSE_RERATING, fuse } from '../../src/data/fuses.ts';
import { relay } from '../../src/data/relays.ts';
import { protection } from '../../src/model/protection.ts';

const inUnit = (constant: Constant, unit: string) => Number(constant.value) * convert(constant.unit, unit);

test.each<[string, Constant, number, string]>([
  ['copper weighs 8.89 g/cm³', copper.copper_density, 8.89, 'g/cm^3'],
  ['a fuse carries 75 % of its rating', fuse.fuse_share, 75, '%'],
  ['a fuse loses 0.45 % for each kelvin', fuse.fuse_rerating, 0.45, '%/K'],
  ['counted from 25 °C', fuse.fuse_T_ref, 25, 'degC'],
  ['33 CFR 183.455: 7 in', fuseDistance.fuse_distance, 7, 'in'],
  ['33 CFR 183.455: 40 in in a sheath', fuseDistance.fuse_distance_sheathed, 40, 'in'],
  ['pull-in at 8.0 V, two thirds of 12 V', relay.relay_pull_in, (12 * 2) / 3, 'V'],
  ['drop-out at 10 % of 12 V', relay.relay_drop_out, 0.1 * 12, 'V'],
  ['relay coil from 75 Ω', relay.relay_coil_low, 75, 'ohm'],
  ['relay coil to 100 Ω', relay.relay_coil_high, 100, 'ohm'],
  ['contact in use: 20 mV at 10 A', relay.relay_contact, 20 / 10, 'mohm'],
  ['contact at most: 300 mV at 10 A', relay.relay_contact_limit, 300 / 10, 'mohm'],
  ['suppression resistor from 6 coils', relay.suppression_low, 6, '1'],
  ['suppression resistor to 8 coils', relay.suppression_high, 8, '1'],
  ['return path to ground: 5 mΩ', dropPractice.ground_resistance, 5, 'mohm'],
  ['NASA-STD-8739.4: 60 % of the strength of the wire', crimp.crimp_share, 60, '%'],
])('%s', (_words, constant, printed, unit) => {
  // Exact decimal figures: only the dust of the unit's factor may differ.
  expect(inUnit(constant, unit) / printed).toBeCloseTo(1, 12);
});

test('IEC 60364-5-54: heat capacity, resistivity and zero give the published 226 A·s^½/mm²', () => {
  const heat = inUnit(copper.copper_heat, 'J/K/mm^3');
  const resistivity = inUnit(copper.rho_20, 'ohm*mm');
  const k = Math.sqrt((heat * (copper.copper_zero.value + 20)) / resistivity);
  // 225.67, printed in whole numbers as 226.
  expect(Math.abs(k - 226)).toBeLessThanOrEqual(0.5);
});

test('share of the melting I²t: the one constant is the row of 100 pulses', () => {
  const row = FUSE_PULSES.rows.find((r) => r.pulses === 100);
  expect(inUnit(protection.pulse_share, '%')).toBeCloseTo(row?.share ?? Number.NaN, 12);
});

test('a maker’s table of type E: 22 of 40 A at 125 °C are the 0.45 % for each kelvin above 25 °C', () => {
  // By hand: (1 − 22/40)/(125 − 25) = 0.0045; the cooler rows lose less for each kelvin.
  const losses = FUSE_RERATING.rows.map(({ at, current }) => (1 - current / 40) / (at - 25));
  expect(Math.max(...losses)).toBeCloseTo(0.0045, 12);
  expect(Math.max(...losses)).toBeCloseTo(Number(fuse.fuse_rerating.value), 12);
});

describe('ISO 8820-3, body colours', () => {
  // Words have no sums: a second reading of them stands here.
  const BLADE = '5 tan, 7.5 brown, 10 red, 15 blue, 20 yellow, 25 clear, 30 green, 40 orange';
  const HIGH_CURRENT = '20 yellow, 30 green, 40 orange, 50 red, 60 blue, 70 brown, 80 clear';

  test.each([
    ['C', BLADE],
    ['F', BLADE],
    ['E', HIGH_CURRENT],
  ])('type %s', (type, words) => {
    const rows = FUSE_COLOURS.rows.filter((row) => row.type === type);
    expect(rows.map((row) => `${row.rating} ${row.colour}`).join(', ')).toBe(words);
  });
});
