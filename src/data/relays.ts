/**
 * Relays: customary ratings, load factors of FAA AC 43.13-1B table 11-4, coil and contact of a 12 V relay.
 */
import type { Quantities } from '../basis/quantity.ts';
import { ARBITRARY, COMMON_PRACTICE, cite, fromMemory, QUOTED } from '../basis/sources.ts';
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

export const RELAY_DERATING = table({
  title: 'Contact rating of relays by ambient temperature',
  source: QUOTED,
  note: 'From three data sheets. At 85 °C 0.67 to 0.71 of the rating at 23 °C are left, at 125 °C 0.28 to 0.43.',
  columns: {
    at: { unit: 'degC', label: 'Ambient temperature' },
    first: { unit: 'A', label: 'One of 50 A' },
    second: { unit: 'A', label: 'One of 60 A' },
    third: { unit: 'A', label: 'One of 70 A' },
  },
  rows: [
    [23, 50, 60, 70],
    [85, 35, 40, 50],
    [125, 15, 17, 30],
  ],
  check: { rows: 3, sums: { at: 233, first: 100, second: 117, third: 150 } },
});

export const RELAY_SHARES = table({
  title: 'Usual contact rating by ambient temperature, share of that at 23 °C',
  source: QUOTED,
  note: 'That of the 50 A relay in the table before. Used where a design gives no table of the maker.',
  columns: {
    at: { unit: 'degC', label: 'Ambient temperature' },
    share: { unit: '1', label: 'Share' },
  },
  rows: [
    [23, 1],
    [85, 0.7],
    [125, 0.3],
  ],
  check: { rows: 3, sums: { at: 233, share: 2 } },
});

export const RELAY_CLASSES = table({
  title: 'Relays by the voltage of their coil',
  source: fromMemory('medium'),
  note: 'A relay belongs to the first class whose pull-in voltage at 20 °C is above its own.',
  columns: {
    rated: { unit: 'V', label: 'Rated voltage' },
    pull_in: { unit: 'V', label: 'Pull-in voltage below' },
    greatest: { unit: 'V', label: 'Continuous voltage of the coil, at most' },
    system: { unit: 'V', label: 'For a supply of at most', source: ARBITRARY },
  },
  rows: [
    [12, 9, 16, 16],
    [24, 18, 32, 32],
  ],
  check: { rows: 2, sums: { rated: 36, pull_in: 27, greatest: 48, system: 48 } },
});

export const FLAT_TABS = table({
  title: 'Customary continuous current of flat tabs',
  source: fromMemory('medium'),
  note: 'No standard gives a figure: it depends on receptacle, wire and temperature. The data sheet takes precedence.',
  columns: {
    width: { unit: 'mm', label: 'Width of the tab' },
    from: { unit: 'A', label: 'Current from' },
    to: { unit: 'A', label: 'to' },
    wire: { unit: 'mm^2', label: 'Largest wire', source: cite('IEC-61210', 'quoted') },
  },
  rows: [
    [2.8, 10, 10, 0.5],
    [4.8, 16, 20, 2.5],
    [6.3, 25, 30, 4],
    [9.5, 40, 60, 10],
  ],
  check: { rows: 4, sums: { width: 23.4, from: 91, to: 120, wire: 17 } },
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

const PINS = fromMemory('high', 'ISO-7588-1');

export const TERMINALS = table({
  title: 'Terminal numbers',
  source: cite('DIN-72552', 'quoted'),
  columns: {
    terminal: { unit: 'text', label: 'Terminal' },
    meaning: { unit: 'text', label: 'Meaning' },
  },
  rows: [
    ['15', 'switched supply'],
    ['30', 'direct supply'],
    ['31', 'ground'],
    ['85', 'relay coil', PINS],
    ['86', 'relay coil', PINS],
    ['87', 'make contact', PINS],
    ['87a', 'break contact', PINS],
  ],
  check: { rows: 7, sums: {} },
});

/** A 12 V relay whose data sheet is not at hand. Coil values at 20 °C. */
export const relay = {
  relay_pull_in: {
    symbol: 'V_pi',
    label: 'Pull-in voltage of a 12 V relay at 20 °C, at most',
    unit: 'V',
    value: 8,
    source: QUOTED,
    note: 'Sheets of small relays have 6.9, 7.2 and 8.0 V.',
  },
  relay_drop_out: {
    symbol: 'V_do',
    label: 'Drop-out voltage of a 12 V relay at 20 °C, at least',
    unit: 'V',
    value: 1.2,
    source: QUOTED,
    note: '10 % of the rated voltage. The lowest at which a relay releases: sheets have 1.0 to 1.6 V, and one may drop out earlier.',
  },
  relay_coil_low: {
    symbol: 'R_c,min',
    label: 'Coil resistance of a 12 V relay at 20 °C, low end: draws most',
    unit: 'ohm',
    value: 75,
    source: QUOTED,
  },
  relay_coil_high: {
    symbol: 'R_c,max',
    label: 'Coil resistance of a 12 V relay at 20 °C, high end',
    unit: 'ohm',
    value: 100,
    source: QUOTED,
  },
  relay_contact: {
    symbol: 'R_k',
    label: 'Resistance of a contact in use, usual',
    unit: 'ohm',
    shown: 'mohm',
    value: 0.002,
    source: QUOTED,
    note: 'Sheets have 1.5 to 2 mΩ. Used for the drop where a design states nothing.',
  },
  relay_contact_limit: {
    symbol: 'R_k,max',
    label: 'Resistance of a contact, at most',
    unit: 'ohm',
    shown: 'mohm',
    value: 0.03,
    source: QUOTED,
    note: 'Sheets have 20 to 30 mΩ. A contact that is stated or read above it is worn.',
  },
  relay_rise_usual: {
    symbol: 'ΔT_rc',
    label: 'Rise of a coil that is energised, above its ambient',
    unit: 'K',
    value: 39,
    source: QUOTED,
    note: 'On one sheet; 40 K is used where a design states nothing.',
  },
  relay_long_share: {
    symbol: 's_rc',
    label: 'Voltage of a relay coil in continuous service, share of its rated voltage',
    unit: '1',
    shown: '%',
    value: 1.2,
    source: QUOTED,
    note: 'More, up to 130 %, only with the consent of the maker.',
  },
  suppression_low: {
    symbol: 'k_s,min',
    label: 'Suppression resistor over coil resistance, from',
    unit: '1',
    value: 6,
    source: QUOTED,
  },
  suppression_high: {
    symbol: 'k_s,max',
    label: 'Suppression resistor over coil resistance, to',
    unit: '1',
    value: 8,
    source: QUOTED,
  },
} as const satisfies Quantities;
