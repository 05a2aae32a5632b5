/**
 * FAA AC 43.13-1B (a US Government work), chapter 11: wires, fuses and drop. Check values and a second opinion.
 */
import { cite, fromMemory } from '../basis/sources.ts';
import { table } from '../basis/table.ts';

export const FAA_FUSES = table({
  title: 'Fuse that protects a copper wire',
  source: cite('FAA-AC-43.13-1B', 'printed', 'table 11-3'),
  columns: {
    gauge: { unit: 'text', label: 'AWG' },
    fuse: { unit: 'A', label: 'Fuse' },
  },
  rows: [
    ['22', 5],
    ['20', 5],
    ['18', 10],
    ['16', 10],
    ['14', 15],
    ['12', 20],
    ['10', 30],
    ['8', 50],
    ['6', 70],
    ['4', 70],
    ['2', 100],
  ],
  check: { rows: 11, sums: { fuse: 385 } },
});

export const FAA_RESISTANCE = table({
  title: 'Wire resistance behind the drop tables, tin-plated copper',
  source: cite('FAA-AC-43.13-1B', 'printed'),
  columns: {
    gauge: { unit: 'text', label: 'AWG' },
    // Printed in ohms per thousand feet, which is the same number.
    resistance: { unit: 'mohm/ft', label: 'Resistance' },
  },
  rows: [
    ['24', 28.4],
    ['22', 16.2],
    ['20', 9.88],
    ['18', 6.23],
    ['16', 4.81],
    ['14', 3.06],
    ['12', 2.02],
    ['10', 1.26],
    ['8', 0.7],
    ['6', 0.44],
    ['4', 0.28],
    ['2', 0.18],
  ],
  check: { rows: 12, sums: { resistance: 73.46 } },
});

export const FAA_WIRE_FOR_DROP = table({
  title: 'Wire that keeps an allowed drop at 20 A',
  source: cite('FAA-AC-43.13-1B', 'printed', 'table 11-7'),
  note: 'The third row prints 3.60 V where its own figures give 3.555 V.',
  columns: {
    permitted: { unit: 'V', label: 'Allowed drop' },
    length: { unit: 'ft', label: 'Length of the run' },
    gauge: { unit: 'text', label: 'AWG taken' },
    drop: { unit: 'V', label: 'Drop calculated there' },
  },
  rows: [
    [1, 107, '6', 0.942],
    [0.5, 90, '4', 0.504],
    [4, 88, '12', 3.6],
    [7, 100, '14', 6.12],
  ],
  check: { rows: 4, sums: { permitted: 12.5, length: 385, drop: 11.166 } },
});

export const FAA_LENGTH_FOR_DROP = table({
  title: 'Longest run of 10 AWG that keeps an allowed drop at 20 A',
  source: cite('FAA-AC-43.13-1B', 'printed', 'table 11-8'),
  note: 'The second row prints .366 V; its own figures give .491 V: taken for a misprint.',
  columns: {
    permitted: { unit: 'V', label: 'Allowed drop' },
    length: { unit: 'ft', label: 'Longest run' },
    drop: { unit: 'V', label: 'Drop printed for it, where it was noted', empty: true },
  },
  rows: [
    [1, 39, null],
    [0.5, 19.5, 0.366],
    [4, 156, null],
    [7, 273, null],
  ],
  check: { rows: 4, sums: { permitted: 12.5, length: 487.5, drop: 0.366 } },
});

const REMEMBERED = fromMemory('high', 'FAA-AC-43.13-1B', 'fig. 11-4a');

export const FAA_FREE_AIR = table({
  title: 'Current of a single wire in free air',
  source: REMEMBERED,
  key: ['gauge', 'rise'],
  columns: {
    gauge: { unit: 'text', label: 'AWG' },
    rise: { unit: 'K', label: 'Rise of the conductor above its ambient' },
    current: { unit: 'A', label: 'Current' },
  },
  rows: [
    ['14', 150, 47, cite('FAA-AC-43.13-1B', 'printed', 'fig. 11-4a, example 2 on p. 11-27')],
    ['20', 140, 21.5],
    ['22', 140, 16.2],
    ['12', 175, 68],
    ['12', 140, 61],
  ],
  check: { rows: 5, sums: { rise: 745, current: 213.7 } },
});
