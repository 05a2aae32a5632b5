/** Values read in one unit and shown in another. */
import { describe, expect, test } from 'vitest';
import { readValue } from '../../src/basis/read-value.ts';
import { inUnit, readIn, shownIn, unitIn } from '../../src/basis/shown.ts';
import { base, design } from './helpers.ts';

const read = (text: string, unit: string): number => {
  const reading = readValue(text, unit);
  if (!reading.ok) throw new Error(`${text}: ${reading.why}`);
  return reading.value;
};

// By definition: 1 in = 25.4 mm, 1 ft = 12 in, 1 lb = 453.59237 g = 16 oz; water freezes at 32 °F and boils at 212 °F.
describe('shown in the units of the reader', () => {
  test.each([
    [1.397, 'm', '1.40 m', '55 in'],
    // 17 ft are 17 · 0.3048 m.
    [5.1816, 'm', '5.18 m', '17 ft 0 in'],
    // 4 ft 7 in are 55 in; from 6 ft on, feet.
    [1.8288, 'm', '1.83 m', '6 ft 0 in'],
    // 71.97 in: 6 ft when rounded, never 5 ft 12 in.
    [1.828, 'm', '1.83 m', '6 ft 0 in'],
    // 107.6 in, rounded to 108: 9 ft 0 in and not 8 ft 12 in.
    [2.733, 'm', '2.73 m', '9 ft 0 in'],
    [0.15, 'm', '0.150 m', '5.91 in'],
    // A tab of a quarter inch is sold as 6.3 mm.
    [6.35, 'mm', '6.35 mm', '0.25 in'],
    [0, 'm', '0 m', '0 in'],
    [-2.54, 'm', '−2.54 m', '−8 ft 4 in'],
    [60, 'degC', '60.0 °C', '140 °F'],
    [100, 'degC', '100 °C', '212 °F'],
    [0, 'degC', '0 °C', '32 °F'],
    [-40, 'degC', '−40.0 °C', '−40 °F'],
    [37.77, 'degC', '37.8 °C', '100 °F'],
    // A difference has no zero: 20 K are 36 steps of a Fahrenheit scale.
    [20, 'K', '20.0 K', '36.0 Δ°F'],
    [340.194, 'g', '340 g', '12.0 oz'],
    [5.443108, 'kg', '5.44 kg', '12.0 lb'],
  ])('%f %s', (value, unit, metric, us) => {
    expect(shownIn(value, unit, 'metric')).toBe(metric);
    expect(shownIn(value, unit, 'us')).toBe(us);
    expect(shownIn(value, unit, 'both')).toBe(`${metric} (${us})`);
  });

  test('grams of a mass in kilograms become ounces, and pounds from 16 of them', () => {
    expect(shownIn(0.306, 'kg', 'us', 'g')).toBe('10.8 oz');
    expect(shownIn(0.45359237, 'kg', 'both', 'g')).toBe('454 g (1.00 lb)');
  });

  test.each([
    [13.75, 'V', '13.8 V'],
    [0.0042, 'ohm', '4.20 mΩ'],
    [0.0028, 's', '2.80 ms'],
    [5.261, 'mm^2', '5.26 mm²'],
    [null, 'm', 'not known'],
  ])('%f %s is the same in both', (value, unit, text) => {
    for (const units of ['metric', 'us', 'both'] as const) expect(shownIn(value, unit, units)).toBe(text);
  });

  test('ratings go without zeros, text and unit apart', () => {
    expect(readIn(7.5, 'A', 'us', undefined, true)).toEqual(['7.5', 'A']);
    expect(readIn(60, 'degC', 'metric', undefined, true)).toEqual(['60', '°C']);
  });

  test('a column or an entry has one unit', () => {
    expect(['m', 'mm', 'degC', 'kg', 'A', 'K'].map((unit) => unitIn(unit, 'us'))).toEqual([
      'ft',
      'in',
      'degF',
      'lb',
      'A',
      'K',
    ]);
    expect(unitIn('m', 'metric')).toBe('m');
    expect(inUnit(60, 'degC', 'degF')).toBe(140);
    expect(inUnit(140, 'degF', 'degC')).toBe(60);
    expect(inUnit(20, 'K', 'degF')).toBe(36);
    expect(inUnit(36, 'degF', 'K')).toBe(20);
  });
});

describe('read without noise in the last digits', () => {
  // 5/9 · (140 − 32) = 60 and so on, by hand.
  test.each([
    ['140 degF', 'degC', 60],
    ['212 °F', 'degC', 100],
    ['-40 F', 'degC', -40],
    ['113 degF', 'degC', 45],
    ['55 in', 'm', 1.397],
    ['17 ft', 'm', 5.1816],
    ['3.3 ms', 's', 0.0033],
    ['0.3 mohm', 'ohm', 0.0003],
    ['6.3 mm', 'mm', 6.3],
    ['80 %', '%', 80],
  ])('%s', (text, unit, value) => {
    expect(read(text, unit)).toBe(value);
  });

  test('every whole degree Fahrenheit prints as it was read', () => {
    for (let f = -76; f <= 572; f++) {
      const celsius = read(`${f} degF`, 'degC');
      expect(shownIn(celsius, 'degC', 'us')).toBe(`${String(f).replace('-', '−')} °F`);
    }
  });
});

describe('units of a design', () => {
  test('metric when nothing is said; the papers of a kit then have both', () => {
    expect(design(base()).units).toBe('metric');
    expect(design(base()).kit.units).toBe('both');
  });

  test('papers follow the design, unless they say otherwise', () => {
    const us = design(base(['title: Base', 'title: Base\nunits: us']));
    expect([us.units, us.kit.units]).toEqual(['us', 'us']);
    const kit = design(base(['title: Base', 'title: Base\nunits: us\nkit: { units: both }']));
    expect([kit.units, kit.kit.units]).toEqual(['us', 'both']);
  });
});
