/**
 * Fuse-links: the limits of the opening time, ISO 8820-3 (blade types) and ISO 8820-5 (strip type SF 30).
 */
import { cite, fromMemory } from '../basis/sources.ts';
import { table } from '../basis/table.ts';

const SMALL_BLADE = fromMemory('medium', 'ISO-8820-3');
const STRIP = fromMemory('low', 'ISO-8820-5');

export const FUSE_LIMITS = table({
  title: 'Opening-time limits of fuse-links',
  source: cite('ISO-8820-3', 'quoted'),
  note:
    'At the lowest multiple there is no maximum: the fuse must hold, and need never open. Type E has them quoted but ' +
    'for the last; those of C, F and SF 30 are remembered. Type C: for 1.35 times 600 s and 1800 s are both quoted, ' +
    'the safe one is taken; for 6 times a sheet has 0.15 s for 35 A and 40 A, which is taken for all ratings. Where much depends on one, take the curve of the maker.',
  key: ['type', 'multiple'],
  columns: {
    type: { unit: 'text', label: 'Type' },
    multiple: { unit: '1', label: 'Current over rated current' },
    min: { unit: 's', label: 'Opens not before' },
    max: { unit: 's', label: 'Opens at the latest after', empty: true },
  },
  rows: [
    ['E', 1.1, 360_000, null],
    ['E', 1.35, 60, 1800],
    ['E', 2, 2, 60],
    ['E', 3.5, 0.2, 7],
    ['E', 6, 0.04, 1, fromMemory('high', 'ISO-8820-3')],
    ['C', 1.1, 360_000, null, fromMemory('high', 'ISO-8820-3')],
    ['C', 1.35, 0.75, 1800, SMALL_BLADE],
    ['C', 1.6, 0.25, 50, SMALL_BLADE],
    ['C', 2, 0.15, 5, SMALL_BLADE],
    ['C', 3.5, 0.04, 0.5, SMALL_BLADE],
    ['C', 6, 0.02, 0.15, SMALL_BLADE],
    ['F', 1.1, 360_000, null, fromMemory('high', 'ISO-8820-3')],
    ['F', 1.35, 0.75, 600, SMALL_BLADE],
    ['F', 1.6, 0.25, 50, SMALL_BLADE],
    ['F', 2, 0.15, 5, SMALL_BLADE],
    ['F', 3.5, 0.04, 0.5, SMALL_BLADE],
    ['F', 6, 0.02, 0.1, SMALL_BLADE],
    ['SF30', 1.1, 14_400, null, STRIP],
    ['SF30', 1.35, 120, 1800, STRIP],
    ['SF30', 2, 1, 100, STRIP],
    ['SF30', 3.5, 0.3, 15, STRIP],
    ['SF30', 6, 0.1, 1, STRIP],
  ],
  check: { rows: 22, sums: { multiple: 59, min: 1_094_586.06, max: 6295.25 } },
});
