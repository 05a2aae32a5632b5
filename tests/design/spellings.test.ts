/** What people write, and what it means. */
import { describe, expect, test } from 'vitest';
import { readValue } from '../../src/basis/read-value.ts';
import {
  fuseTaken,
  insulationTaken,
  readFuseType,
  readInsulation,
  readOrder,
  readSize,
  readWord,
  sizeTaken,
} from '../../src/design/spellings.ts';
import { base, design } from './helpers.ts';

describe('values', () => {
  // 1 in = 25.4 mm, 1 ft = 12 in; 55 in = 4 ft 7 in = 1.397 m.
  test.each([
    ['1,4 m', 'm', 1.4],
    ['0,400 m', 'm', 0.4],
    ['1,40 m', 'm', 1.4],
    ['1,400.5 m', 'm', 1400.5],
    ['1.400,5 m', 'm', 1400.5],
    ['1,234,567 m', 'm', 1234567],
    [',5 m', 'm', 0.5],
    ['4 ft 7 in', 'm', 1.397],
    ['4\' 7"', 'm', 1.397],
    ['4\'7"', 'm', 1.397],
    ['4′ 7″', 'm', 1.397],
    ['4 feet 7 inches', 'm', 1.397],
    ['4 FT 7 IN', 'm', 1.397],
    ['55"', 'm', 1.397],
    ["55''", 'm', 1.397],
    ["4'", 'm', 1.2192],
    ['1 1/2 in', 'mm', 38.1],
    ['1/4"', 'mm', 6.35],
    ['1.5 meters', 'm', 1.5],
    ['6400 RPM', 'rpm', 6400],
    ['6400 r/min', 'rpm', 6400],
    ['20 amp', 'A', 20],
    ['20 amps', 'A', 20],
    ['20 Amps', 'A', 20],
    ['20a', 'A', 20],
    ['500 mA', 'A', 0.5],
    ['13.8 volts', 'V', 13.8],
    ['13.8v', 'V', 13.8],
    ['0.32R', 'ohm', 0.32],
    ['0.32 Ohm', 'ohm', 0.32],
    ['0.32 OHMS', 'ohm', 0.32],
    ['0.32Ω', 'ohm', 0.32],
    ['0.32 \u2126', 'ohm', 0.32],
    ['320 mOhm', 'ohm', 0.32],
    ['3.2 MS', 's', null],
    ['3 MH', 'H', null],
    ['3 mh', 'H', 0.003],
    ['2.8 msec', 's', 0.0028],
    ['60 deg C', 'degC', 60],
    ['60 °c', 'degC', 60],
    ['140 deg F', 'degC', 60],
    ['−40 °C', 'degC', -40],
    ['80 percent', '%', 80],
    ['\u00a03.2\u00a0ms\u00a0', 's', 0.0032],
    ['150 A²s', 'A2s', 150],
    ['150 A^2s', 'A2s', 150],
  ])('%j', (text, unit, value) => {
    const read = readValue(text, unit);
    expect(read.ok ? read.value : null).toBe(value);
  });

  test.each([
    ['1,400 m', 'm', ['1.4 m', '1400 m']],
    ['6,400 RPM', 'rpm', ['6.4 RPM', '6400 RPM']],
    ['-1,400 m', 'm', ['-1.4 m', '-1400 m']],
  ])('%j can be read in two ways', (text, unit, readings) => {
    expect(readValue(text, unit)).toEqual({ ok: false, why: 'two meanings', readings });
  });

  test.each([
    '1,4,5 m',
    '1.4.5 m',
    '1..4 m',
    '1,,4 m',
    '4 ft 7',
    '4 ft 7 m',
    '1/0 in',
    'm',
    '',
    '1,40,000 m',
  ])('%j is no length', (text) => {
    expect(readValue(text, 'm').ok).toBe(false);
  });
});

describe('sizes', () => {
  test.each([
    ['AWG 18', '18 AWG'],
    ['AWG18', '18 AWG'],
    ['18ga', '18 AWG'],
    ['18 ga', '18 AWG'],
    ['18 ga.', '18 AWG'],
    ['18 gauge', '18 AWG'],
    ['#18', '18 AWG'],
    ['# 18', '18 AWG'],
    ['18AWG', '18 AWG'],
    ['14 AWG ', '14 AWG'],
    ['14 awg', '14 AWG'],
    ['2/0', null],
    ['2/0 AWG', '2/0 AWG'],
    ['00 AWG', '2/0 AWG'],
    ['0 ga', '1/0 AWG'],
    ['SAE 14', '14 SAE'],
    ['14 sae', '14 SAE'],
    ['4 mm²', '4 mm2'],
    ['4mm2', '4 mm2'],
    ['4 mm^2', '4 mm2'],
    ['4 sq mm', '4 mm2'],
    ['4 sqmm', '4 mm2'],
    ['4 sq. mm', '4 mm2'],
    ['2,5 mm²', '2.5 mm2'],
    ['2.50 mm2', '2.5 mm2'],
    ['13 AWG', null],
    ['14', null],
    ['4 mm', null],
    ['', null],
    ['AWG', null],
  ])('%j', (text, size) => {
    expect(readSize(text)).toBe(size);
  });

  test('a bare number is answered with the sizes that there are', () => {
    expect(sizeTaken(14)).toBe('add its series: 14 AWG or 14 SAE?');
    expect(sizeTaken('16')).toBe('add its series: 16 AWG or 16 SAE or 16 mm2?');
    expect(sizeTaken('2.5')).toBe('add its series: 2.5 mm2?');
    expect(sizeTaken(13)).toMatch(/^takes a size: 22 20 18 16 .* AWG; 18 16 .* SAE; 0\.5 .* mm2$/);
  });
});

describe('words', () => {
  test('capitals do not matter, nor what joins the parts', () => {
    expect(readWord('Auto', ['auto'])).toBe('auto');
    expect(readWord(' AUTO ', ['auto'])).toBe('auto');
    expect(readWord('Resistor', ['none', 'resistor'])).toBe('resistor');
    expect(readWord('Diode Zener', ['diode_zener'])).toBe('diode_zener');
    expect(readWord('diode-zener', ['diode_zener'])).toBe('diode_zener');
    expect(readWord('automatic', ['auto'])).toBeNull();
    expect(readInsulation('c')).toBe('C');
    expect(readInsulation('txl ')).toBe('TXL');
    expect(readFuseType('sf 30')).toBe('SF30');
    expect(readFuseType('e')).toBe('E');
  });

  test('an insulation by its temperature, or for a building', () => {
    // Class C is one of 125 °C (ISO 6722-1), as are the cross-linked types of SAE J1128 and J1127.
    for (const text of ['125 degC', '125 °C', '125C', '125', 125])
      expect(insulationTaken(text)).toBe('takes the class or the type: C, SXL, GXL, TXL, SGX, STX?');
    for (const text of ['THHN', 'nm', 'NM-B', 'thwn-2', 'UF', 'H07V-K', 'THHN/THWN-2'])
      expect(insulationTaken(text), text).toMatch(
        /^that is building wire\. Takes a class or a type: A 85 °C, /,
      );
    expect(insulationTaken('SXXL')).toMatch(/^takes a class or a type: A 85 °C, .* GPT 80 °C, /);
  });

  test.each([
    ['small blade', 'F'],
    ['mini', 'F'],
    ['large blade', 'E'],
    ['bolted', 'SF30'],
    ['bolt-on strip', 'SF30'],
    ['blade', 'C'],
    ['medium', 'C'],
  ])('a fuse that is called %j', (text, type) => {
    expect(fuseTaken(text)).toMatch(
      new RegExp(`^did you mean ${type}\\? Takes C \\(blade, medium, 1 to 40 A\\), F`),
    );
  });

  test.each([
    ['1-5-6-3-7-2-4-8', [1, 5, 6, 3, 7, 2, 4, 8]],
    ['1 – 3 – 4 – 2', [1, 3, 4, 2]],
    ['1 3 4 2', [1, 3, 4, 2]],
    ['1,3,4,2', [1, 3, 4, 2]],
    ['1, 3, 4, 2', [1, 3, 4, 2]],
    ['1-12-5-8', [1, 12, 5, 8]],
    ['1342', null],
    ['1-3-x', null],
    ['-1-3', null],
  ])('a firing order of %j', (text, order) => {
    expect(readOrder(text)).toEqual(order);
  });
});

test('a whole design in the words of a shop', () => {
  const shop = base(
    ['firing_order: [1, 3, 4, 2]', 'firing_order: 1-3-4-2'],
    ['layout: coil_per_cylinder', 'layout: Coil per cylinder'],
    ['dwell: 3.0 ms', 'dwell: 3,0 msec'],
    ['resistance: 0.5 ohm', 'resistance: 0.5R'],
    ['rpm: 900 rpm', 'rpm: 900 RPM'],
    ['carries: all', 'carries: All'],
    ['length: 1.5 m', 'length: 4\' 11 1/16"'.replace(' 1/16', '.055')],
    ['insulation: C', 'insulation: c'],
    ['gauge: auto', 'gauge: Auto'],
    ['rating: auto', 'rating: AUTO'],
    ['rating: 40 A', 'rating: 40 amps'],
    ['insulation: TXL', 'insulation: txl'],
    ['gauge: 14 AWG', 'gauge: "14ga "'],
    ['gauge: 4 AWG', 'gauge: AWG 4'],
  );
  const plain = base(['length: 1.5 m', 'length: 1.499997 m']);
  // 4 ft 11.055 in are 59.055 in: 1.499997 m.
  expect({ ...design(shop), text: '' }).toEqual({ ...design(plain), text: '' });
});
