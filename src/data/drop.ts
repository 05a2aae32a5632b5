/**
 * Voltage drop that is held for acceptable: FAA AC 43.13-1B table 11-6, ABYC E-11.
 */
import type { Quantities } from '../basis/quantity.ts';
import { cite, fromMemory, QUOTED } from '../basis/sources.ts';
import { table } from '../basis/table.ts';

export const DROP_VOLTS = table({
  title: 'Allowed drop between source and load',
  source: cite('FAA-AC-43.13-1B', 'quoted', 'table 11-6'),
  key: ['system', 'operation'],
  columns: {
    system: { unit: 'V', label: 'System' },
    operation: { unit: 'text', label: 'Operation' },
    drop: { unit: 'V', label: 'Allowed drop' },
  },
  rows: [
    [14, 'continuous', 0.5],
    [14, 'intermittent', 1, fromMemory('high', 'FAA-AC-43.13-1B', 'table 11-6')],
    [28, 'continuous', 1],
  ],
  check: { rows: 3, sums: { system: 56, drop: 2.5 } },
});

export const DROP_TEST = table({
  title: 'Drop that a test under load may show',
  source: QUOTED,
  note: 'Quoted as common practice of workshops.',
  columns: {
    part: { unit: 'text', label: 'Part' },
    drop: { unit: 'V', label: 'Drop, at most' },
  },
  rows: [
    ['connection that carries a high current', 0.1],
    ['cable', 0.2],
    ['switch', 0.3],
    ['all together', 0.5],
  ],
  check: { rows: 4, sums: { drop: 1.1 } },
});

export const DROP_SHARES = table({
  title: 'Allowed drop as a share of the supply',
  source: cite('ABYC-E-11', 'quoted'),
  columns: {
    circuit: { unit: 'text', label: 'Circuit' },
    share: { unit: '%', label: 'Allowed drop' },
  },
  rows: [
    ['main feeder', 2, cite('FAA-handbook', 'quoted')],
    ['critical', 3],
    ['other', 10],
  ],
  check: { rows: 3, sums: { share: 15 } },
});

export const dropPractice = {
  ground_resistance: {
    symbol: 'R_gnd',
    label: 'Resistance of the return path to the ground of the source that counts as satisfactory',
    unit: 'ohm',
    shown: 'mohm',
    value: 0.005,
    source: cite('FAA-handbook', 'quoted'),
  },
} as const satisfies Quantities;
