/**
 * Fuse-links: voltage, breaking capacity, permitted drop, load and pulses. ISO 8820-3 (blade types), ISO 8820-5.
 */
import type { Quantities } from '../basis/quantity.ts';
import { ARBITRARY, cite, fromMemory, PHYSICS, QUOTED } from '../basis/sources.ts';
import { table } from '../basis/table.ts';

export const FUSE_TYPES = table({
  title: 'Types of fuse-link',
  source: cite('ISO-8820-3', 'printed'),
  columns: {
    type: { unit: 'text', label: 'Type' },
    form: { unit: 'text', label: 'Form' },
    voltage: { unit: 'V', label: 'Rated voltage' },
    voltage_high: { unit: 'V', label: 'Rated voltage of the higher kind', empty: true },
    breaking: { unit: 'A', label: 'Breaking capacity' },
  },
  rows: [
    ['C', 'blade, medium', 32, 58, 1000],
    ['F', 'blade, miniature', 32, 58, 1000],
    ['E', 'blade, high current', 32, 58, 1000],
    ['SF30', 'strip', 32, null, 2000, fromMemory('low', 'ISO-8820-5')],
  ],
  check: { rows: 4, sums: { voltage: 128, voltage_high: 174, breaking: 5000 } },
});

const SMALL_BLADE = fromMemory('low', 'ISO-8820-3');

export const FUSE_DROP = table({
  title: 'Greatest drop of a fuse-link at its rated current',
  source: cite('ISO-8820-3', 'quoted'),
  note:
    'Types C and F: about 200 mV at 1 A, falling to 100 mV at 30 to 40 A; 100 mV is taken for all, which is too low ' +
    'for the smallest. Type E beyond the list of the standard is taken as the largest one on it.',
  key: ['type', 'from'],
  columns: {
    type: { unit: 'text', label: 'Type' },
    from: { unit: 'A', label: 'Rated current from' },
    to: { unit: 'A', label: 'to' },
    drop: { unit: 'V', label: 'Greatest drop' },
  },
  rows: [
    ['C', 1, 40, 0.1, SMALL_BLADE],
    ['F', 1, 40, 0.1, SMALL_BLADE],
    ['E', 20, 20, 0.125],
    ['E', 30, 80, 0.1],
    ['E', 100, 120, 0.1, ARBITRARY],
    ['SF30', 30, 200, 0.1, fromMemory('low', 'ISO-8820-5')],
  ],
  check: { rows: 6, sums: { from: 182, to: 500, drop: 0.625 } },
});

export const FUSE_PULSES = table({
  title: 'Share of the melting I²t that a repeated pulse may have',
  source: QUOTED,
  note: 'Its chart asks for 10 s between two pulses, so that the fuse has cooled: it does not hold for coils.',
  columns: {
    pulses: { unit: '1', label: 'Number of pulses' },
    share: { unit: '%', label: 'Share of the melting I²t' },
  },
  rows: [
    [100, 48],
    [1_000, 38],
    [10_000, 29],
    [100_000, 22],
  ],
  check: { rows: 4, sums: { pulses: 111_100, share: 137 } },
});

export const FUSE_RERATING = table({
  title: 'Continuous current of a fuse of type E, 40 A, by its temperature',
  source: QUOTED,
  note: 'From the table of a maker. 15 to 45 % less than the rating, 0.38 to 0.45 % per kelvin above 25 °C.',
  columns: {
    at: { unit: 'degC', label: 'Ambient temperature' },
    current: { unit: 'A', label: 'Continuous current' },
  },
  rows: [
    [65, 34],
    [85, 30],
    [110, 25],
    [125, 22],
  ],
  check: { rows: 4, sums: { at: 385, current: 111 } },
});

export const fuse = {
  fuse_share: {
    symbol: 's_F',
    label: 'Continuous load of a fuse at its reference temperature, share of its rating',
    unit: '1',
    shown: '%',
    value: 0.75,
    source: QUOTED,
    note: 'Practice is 70 to 80 % (from memory).',
  },
  fuse_T_ref: {
    symbol: 'T_F0',
    label: 'Ambient temperature at which a fuse has its rating',
    unit: 'degC',
    value: 25,
    source: QUOTED,
  },
  fuse_rerating: {
    symbol: 'c_F',
    label: 'Loss of rating for each kelvin above the reference temperature',
    unit: '1/K',
    shown: '%/K',
    value: 0.0045,
    source: QUOTED,
    note: 'The steepest of a maker’s table for type E, 40 A: 0.38 to 0.45 % per kelvin. Taken for every type; the data sheet of the fuse takes precedence.',
  },
  fuse_least_share: {
    symbol: 's_F,0',
    label: 'Least share of a fuse’s rating that is reckoned with, however hot its place',
    unit: '1',
    shown: '%',
    value: 0.01,
    source: ARBITRARY,
    note: 'So that a needed rating stays a number where nothing is left.',
  },
  ramp_factor: {
    symbol: 'k_ramp',
    label: 'I²t of a straight ramp over that of a steady pulse of its peak',
    unit: '1',
    // The integral of x² from 0 to 1.
    value: 1 / 3,
    source: PHYSICS,
  },
} as const satisfies Quantities;
