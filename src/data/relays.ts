/**
 * Relays: customary ratings, load factors of FAA AC 43.13-1B table 11-4, coil and contact of a 12 V relay.
 */
import type { Quantities } from '../basis/quantity.ts';
import { COMMON_PRACTICE, cite, fromMemory, QUOTED } from '../basis/sources.ts';
import { table } from '../basis/table.ts';

export const RELAY_RATINGS = table({
  title: 'Customary ratings of 12 V relays, make contact',
  source: COMMON_PRACTICE,
  note: 'The data sheet states the temperature at which the rating holds; a hotter place allows less.',
  columns: { rating: { unit: 'A', label: 'Rated current' } },
  rows: [[20], [30], [40], [50], [60], [70], [80], [100]],
  check: { rows: 8, sums: { rating: 450 } },
});

export const RELAY_LOAD_FACTORS = table({
  title: 'Contact rating over continuous current, 12 V direct current',
  source: cite('FAA-AC-43.13-1B', 'printed', 'table 11-4'),
  columns: {
    load: { unit: 'text', label: 'Kind of load' },
    factor: { unit: '1', label: 'Factor' },
  },
  rows: [
    ['inductive', 2],
    ['resistive', 1],
    ['lamp', 5],
    ['motor', 2],
  ],
  check: { rows: 4, sums: { factor: 10 } },
});

export const FLAT_TABS = table({
  title: 'Customary continuous current of flat tabs',
  source: fromMemory('medium'),
  note: 'No standard gives a figure: it depends on receptacle, wire and temperature. The data sheet goes first.',
  columns: {
    width: { unit: 'mm', label: 'Width of the tab' },
    from: { unit: 'A', label: 'Current from' },
    to: { unit: 'A', label: 'to' },
  },
  rows: [
    [2.8, 10, 10],
    [4.8, 16, 20],
    [6.3, 25, 30],
    [9.5, 40, 60],
  ],
  check: { rows: 4, sums: { width: 23.4, from: 91, to: 120 } },
});

export const SUPPRESSION = table({
  title: 'What the suppression of a relay coil does',
  source: QUOTED,
  columns: {
    suppression: { unit: 'text', label: 'Suppression' },
    effect: { unit: 'text', label: 'Effect' },
  },
  rows: [
    ['none', 'the coil of a 12 V relay spikes to 1000 V and more when it is switched off'],
    ['diode', 'no spike, but the release is slow and the contacts can tack-weld'],
    ['resistor', 'of 6 to 8 times the coil resistance: kinder to the contacts than a bare diode'],
    ['diode_zener', 'diode and zener diode: kinder to the contacts than a bare diode'],
  ],
  check: { rows: 4, sums: {} },
});

const REMEMBERED = fromMemory('high', 'DIN-72552');

export const TERMINALS = table({
  title: 'Terminal numbers',
  source: cite('DIN-72552', 'printed'),
  columns: {
    terminal: { unit: 'text', label: 'Terminal' },
    meaning: { unit: 'text', label: 'Meaning' },
  },
  rows: [
    ['15', 'switched supply'],
    ['30', 'direct supply'],
    ['31', 'ground'],
    ['85', 'relay coil', REMEMBERED],
    ['86', 'relay coil', REMEMBERED],
    ['87', 'make contact', REMEMBERED],
    ['87a', 'break contact', REMEMBERED],
  ],
  check: { rows: 7, sums: {} },
});

/** A 12 V relay whose data sheet is not at hand. Coil values at 20 °C. */
export const relay = {
  relay_pull_in: {
    kind: 'constant',
    symbol: 'V_pi',
    label: 'Pull-in voltage of a 12 V relay at 20 °C, at most',
    unit: 'V',
    value: 7.2,
    source: QUOTED,
  },
  relay_drop_out: {
    kind: 'constant',
    symbol: 'V_do',
    label: 'Drop-out voltage of a 12 V relay at 20 °C, at least',
    unit: 'V',
    value: 1.2,
    source: QUOTED,
  },
  relay_coil_low: {
    kind: 'constant',
    symbol: 'R_c,min',
    label: 'Coil resistance of a 12 V relay at 20 °C, low end: draws most',
    unit: 'ohm',
    value: 75,
    source: QUOTED,
  },
  relay_coil_high: {
    kind: 'constant',
    symbol: 'R_c,max',
    label: 'Coil resistance of a 12 V relay at 20 °C, high end',
    unit: 'ohm',
    value: 100,
    source: QUOTED,
  },
  relay_contact: {
    kind: 'constant',
    symbol: 'R_k',
    label: 'Resistance of a new contact, at most',
    unit: 'ohm',
    shown: 'mohm',
    value: 0.01,
    source: QUOTED,
    note: 'Stated as 100 mV at 10 A. Better types have 3 to 5 mΩ.',
  },
  suppression_low: {
    kind: 'constant',
    symbol: 'k_s,min',
    label: 'Suppression resistor over coil resistance, from',
    unit: '1',
    value: 6,
    source: QUOTED,
  },
  suppression_high: {
    kind: 'constant',
    symbol: 'k_s,max',
    label: 'Suppression resistor over coil resistance, to',
    unit: '1',
    value: 8,
    source: QUOTED,
  },
} as const satisfies Quantities;
