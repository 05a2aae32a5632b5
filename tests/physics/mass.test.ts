/** Copper of the conductors, through designs, against printed weights of wire and a sum by hand. */
import { expect, test } from 'vitest';
import { expectOfAll } from '../offenders.ts';
import { known, modelOf } from './harness.ts';
import { feedOf } from './one-wire.ts';

/**
 * Copper wire tables, solid conductors, pounds per thousand feet (from memory, high confidence: NBS Handbook 100 and the
 * handbooks that copy it), four figures each.
 */
const POUNDS: readonly (readonly [gauge: string, pounds: number])[] = [
  ['18 AWG', 4.917],
  ['16 AWG', 7.818],
  ['14 AWG', 12.43],
  ['12 AWG', 19.77],
  ['10 AWG', 31.43],
  ['8 AWG', 49.98],
  ['6 AWG', 79.46],
  ['4 AWG', 126.4],
];
/** By definition, grams of a pound and metres of a foot. */
const [GRAMS, FOOT] = [453.59237, 0.3048];

test('copper wire tables: weight of ten feet', () => {
  const e = feedOf(POUNDS.map(([gauge]) => ({ gauge, ambient: 20, length: 10 * FOOT })));
  expectOfAll(
    POUNDS,
    ([gauge]) => gauge,
    ([, pounds], wire) => {
      const grams = known(e, 'wire_copper', { wire }) * 1000;
      // Figures printed with four digits, and one unit more, since sizes above 10 AWG are printed both rounded and cut.
      expect(Math.abs(grams / (pounds * (GRAMS / 100)) - 1)).toBeLessThan(0.0005);
    },
  );
});

test('metric sizes: area by length by 8.89 g/cm³', () => {
  const e = feedOf([
    { gauge: '2.5 mm2', ambient: 20, length: 2 },
    { gauge: '0.75 mm2', ambient: 20, length: 10 },
  ]);
  // 2.5 mm² × 2 m are 5 cm³; 0.75 mm² × 10 m are 7.5 cm³.
  expect(known(e, 'wire_copper', { wire: 0 }) * 1000).toBeCloseTo(5 * 8.89, 9);
  expect(known(e, 'wire_copper', { wire: 1 }) * 1000).toBeCloseTo(7.5 * 8.89, 9);
  // Together 12.5 cm³.
  expect(known(e, 'copper_total') * 1000).toBeCloseTo(111.125, 9);
});

test('a run that goes to each coil counts once for each of them, feed and return', () => {
  const run = { ambient: '40 degC', insulation: 'C', joints: 0 };
  const e = modelOf({
    coilfeed: 1,
    title: 'Copper of four coils',
    engine: { cylinders: 4, stroke: 4, firing_order: [1, 3, 4, 2] },
    ignition: { layout: 'coil_per_cylinder', dwell: '2 ms' },
    coil: { resistance: '0.6 ohm', inductance: '4 mH' },
    points: [{ name: 'fast', rpm: '6000 rpm', supply: '14 V' }],
    feed: [
      { ...run, run: 'main', carries: 'all', length: '1.5 m', gauge: '4 mm2' },
      { ...run, run: 'drop', carries: 'each', length: '0.4 m', gauge: '1.5 mm2' },
    ],
    return: [{ ...run, run: 'strap', carries: 'all', length: '0.5 m', gauge: '10 mm2' }],
  });
  // 4·1.5 + 4 × 1.5·0.4 + 10·0.5 = 6 + 2.4 + 5 = 13.4 cm³, of 8.89 g each: 119.126 g.
  expect(known(e, 'copper_total') * 1000).toBeCloseTo(119.126, 9);
});
