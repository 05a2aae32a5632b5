/**
 * Insulation: temperature classes of ISO 6722-1 / ISO 19642, conductor types of SAE J1128 and SAE J1127, and the
 * short-circuit limits of IEC 60364-5-54.
 */
import { type Citation, cite, fromMemory } from '../basis/sources.ts';
import { table } from '../basis/table.ts';

const ISO_CLASSES = 'and ISO 19642, temperature classes';
const REMEMBERED = fromMemory('high', 'ISO-6722-1', ISO_CLASSES);

export const INSULATION_CLASSES = table({
  title: 'Temperature classes of insulation',
  source: cite('ISO-6722-1', 'quoted', ISO_CLASSES),
  columns: {
    name: { unit: 'text', label: 'Class' },
    continuous: { unit: 'degC', label: 'Continuous' },
    hours_240: { unit: 'degC', label: '240 hours', source: REMEMBERED },
    hours_6: { unit: 'degC', label: '6 hours, overload', source: REMEMBERED },
  },
  rows: [
    ['A', 85, 110, 135],
    ['B', 100, 125, 150],
    ['C', 125, 150, 175],
    ['D', 150, 175, 200],
    ['E', 175, 200, 225],
    ['F', 200, 225, 250],
    ['G', 225, 250, 275],
    ['H', 250, 275, 300],
  ],
  check: { rows: 8, sums: { continuous: 1310, hours_240: 1510, hours_6: 1710 } },
});

const J1127 = cite('SAE-J1127', 'quoted');

export const CONDUCTOR_TYPES = table({
  title: 'Conductor types: primary cable and battery cable',
  source: cite('SAE-J1128', 'quoted'),
  columns: {
    name: { unit: 'text', label: 'Type' },
    continuous: { unit: 'degC', label: 'Continuous' },
    material: { unit: 'text', label: 'Insulation' },
  },
  rows: [
    ['GPT', 80, 'PVC'],
    ['SXL', 125, 'cross-linked'],
    ['GXL', 125, 'cross-linked'],
    ['TXL', 125, 'cross-linked'],
    ['SGT', 80, 'PVC', J1127],
    ['SGX', 125, 'cross-linked', J1127],
    ['STX', 125, 'cross-linked', J1127],
  ],
  // 2 × 80 and 5 × 125.
  check: { rows: 7, sums: { continuous: 785 } },
});

export const SHORT_CIRCUIT_LIMITS = table({
  title: 'Short-circuit limit of insulation, up to 5 s',
  source: cite('IEC-60364-5-54', 'quoted'),
  columns: {
    material: { unit: 'text', label: 'Insulation' },
    limit: { unit: 'degC', label: 'Limit' },
  },
  rows: [
    ['PVC', 160],
    ['cross-linked', 250],
  ],
  check: { rows: 2, sums: { limit: 410 } },
});

const PRIMARY = fromMemory('medium', 'SAE-J1128');
const BATTERY = fromMemory('medium', 'SAE-J1127');

/** What cable of a standard is customarily made in; beyond it the other one goes on. */
export const CABLE_SIZES = table({
  title: 'SAE numbers in which cable is customarily made',
  source: PRIMARY,
  note: 'Battery cable goes on where primary cable ends.',
  columns: {
    cable: { unit: 'text', label: 'Cable' },
    from: { unit: 'cmil', label: 'Least area', empty: true },
    to: { unit: 'cmil', label: 'Largest area', empty: true },
  },
  rows: [
    // 8 SAE.
    ['primary', null, 14810],
    // 6 SAE.
    ['battery', 24538, null, BATTERY],
  ],
  check: { rows: 2, sums: { from: 24538, to: 14810 } },
});

/** Types of SAE J1127. */
export const BATTERY_TYPES: readonly string[] = ['SGT', 'SGX', 'STX'];

/** One insulation that a design can name; what its source does not state is null. Temperatures in degC. */
export interface Insulation {
  readonly name: string;
  readonly continuous: number;
  readonly hours_6: number | null;
  readonly short_circuit: number | null;
  readonly source: Citation;
}

/** Classes first, then conductor types. A class says nothing of its material, a type nothing of 6 hours. */
export const INSULATIONS: readonly Insulation[] = [
  ...INSULATION_CLASSES.rows.map((row) => ({
    name: row.name,
    continuous: row.continuous,
    hours_6: row.hours_6,
    short_circuit: null,
    source: INSULATION_CLASSES.source,
  })),
  ...CONDUCTOR_TYPES.rows.map((row) => ({
    name: row.name,
    continuous: row.continuous,
    hours_6: null,
    short_circuit: SHORT_CIRCUIT_LIMITS.rows.find((limit) => limit.material === row.material)?.limit ?? null,
    source: row.source ?? CONDUCTOR_TYPES.source,
  })),
];
