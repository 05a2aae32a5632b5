/**
 * What equipment of road vehicles meets: ambient codes of ISO 16750-4, supply and cranking of ISO 16750-2, 12 V.
 */
import { fromMemory } from '../basis/sources.ts';
import { table } from '../basis/table.ts';

export const AMBIENT_CODES = table({
  title: 'Highest ambient temperature by code',
  source: fromMemory('medium', 'ISO-16750-4'),
  columns: {
    code: { unit: 'text', label: 'Code' },
    highest: { unit: 'degC', label: 'Highest ambient temperature' },
  },
  rows: [
    ['G', 85],
    ['H', 90],
    ['J', 100],
    ['K', 105],
    ['L', 110],
    ['N', 120],
    ['O', 125],
    ['Q', 140],
  ],
  check: { rows: 8, sums: { highest: 875 } },
});

export const SUPPLY_RANGES = table({
  title: 'Supply voltage ranges of 12 V equipment',
  source: fromMemory('high', 'ISO-16750-2'),
  columns: {
    from: { unit: 'V', label: 'Lowest supply' },
    to: { unit: 'V', label: 'Highest supply' },
  },
  rows: [
    [6, 16],
    [8, 16],
    [9, 16],
    [10.5, 16],
  ],
  check: { rows: 4, sums: { from: 33.5, to: 64 } },
});

export const CRANKING = table({
  title: 'Supply while cranking, 12 V',
  source: fromMemory('high', 'ISO-16750-2'),
  columns: {
    profile: { unit: 'text', label: 'Profile' },
    dip: { unit: 'V', label: 'First dip' },
    plateau: { unit: 'V', label: 'Plateau' },
  },
  rows: [
    ['I', 8, 9.5],
    ['II', 4.5, 6.5],
    ['III', 3, 5],
    ['IV', 6, 6.5],
  ],
  check: { rows: 4, sums: { dip: 21.5, plateau: 27.5 } },
});
