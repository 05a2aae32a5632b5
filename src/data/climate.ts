/**
 * What equipment of road vehicles meets: ambient codes of ISO 16750-4, supply and cranking of ISO 16750-2, 12 V.
 */
import { fromMemory, QUOTED } from '../basis/sources.ts';
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
  note: 'In profile I the dip lasts 15 ms.',
  columns: {
    profile: { unit: 'text', label: 'Profile' },
    dip: { unit: 'V', label: 'First dip' },
    plateau: { unit: 'V', label: 'Plateau' },
  },
  rows: [
    ['I', 8, 9.5, QUOTED],
    ['II', 4.5, 6.5],
    ['III', 3, 5],
    ['IV', 6, 6.5],
  ],
  check: { rows: 4, sums: { dip: 21.5, plateau: 27.5 } },
});

export const LOWEST_DIPS = table({
  title: 'Lowest first dip while cranking',
  source: QUOTED,
  note: 'The lowest of several standards for vehicles.',
  columns: {
    system: { unit: 'V', label: 'System' },
    dip: { unit: 'V', label: 'Lowest supply' },
  },
  rows: [
    [12, 5],
    [24, 8],
  ],
  check: { rows: 2, sums: { system: 36, dip: 13 } },
});

export const RESTING = table({
  title: 'Voltage of a resting 12 V battery by its state of charge',
  source: QUOTED,
  columns: {
    charge: { unit: '%', label: 'State of charge' },
    voltage: { unit: 'V', label: 'Voltage at rest' },
  },
  rows: [
    [100, 12.66],
    [75, 12.45],
    [50, 12.3],
    [25, 12.15],
  ],
  check: { rows: 4, sums: { charge: 250, voltage: 49.56 } },
});
