/**
 * Voltage drop that is held for acceptable: FAA AC 43.13-1B table 11-6, ABYC E-11.
 */
import type { Quantities } from '../basis/quantity.ts';
import { cite, fromMemory } from '../basis/sources.ts';
import { table } from '../basis/table.ts';

export const DROP_VOLTS = table({
  title: 'Permitted drop of a 14 V system',
  source: cite('FAA-AC-43.13-1B', 'printed', 'table 11-6, read through table 11-7'),
  columns: {
    operation: { unit: 'text', label: 'Operation' },
    drop: { unit: 'V', label: 'Permitted drop' },
  },
  rows: [
    ['continuous', 0.5],
    ['intermittent', 1, fromMemory('high', 'FAA-AC-43.13-1B', 'table 11-6')],
  ],
  check: { rows: 2, sums: { drop: 1.5 } },
});

export const DROP_SHARES = table({
  title: 'Permitted drop as a share of the supply',
  source: cite('ABYC-E-11', 'quoted'),
  columns: {
    circuit: { unit: 'text', label: 'Circuit' },
    share: { unit: '%', label: 'Permitted drop' },
  },
  rows: [
    ['main feeder', 2, cite('FAA-AC-43.13-1B', 'quoted')],
    ['critical', 3],
    ['other', 10],
  ],
  check: { rows: 3, sums: { share: 15 } },
});

export const dropPractice = {
  ground_resistance: {
    kind: 'constant',
    symbol: 'R_gnd',
    label: 'Resistance of the return path to the ground of the source that is held for satisfactory',
    unit: 'ohm',
    shown: 'mohm',
    value: 0.005,
    source: cite('FAA-handbook', 'quoted'),
  },
} as const satisfies Quantities;
