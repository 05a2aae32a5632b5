/**
 * SAE J1128 (primary cable) and SAE J1127 (battery cable): the smallest conductor that an SAE number may hold.
 */
import type { Quantities } from '../basis/quantity.ts';
import { cite, PHYSICS } from '../basis/sources.ts';
import { table } from '../basis/table.ts';

export const sae = {
  circular_mil: {
    symbol: 'cmil₁',
    label: 'Area of a circle of one thousandth of an inch across',
    unit: 'mm^2',
    // Exact: the inch is 25.4 mm by definition.
    value: (Math.PI / 4) * 0.0254 ** 2,
    source: PHYSICS,
  },
} as const satisfies Quantities;

export const SAE_SIZES = table({
  title: 'Minimum conductor area of SAE sizes',
  source: cite('SAE-J1128', 'quoted', 'and SAE J1127 for battery cable'),
  note: 'An SAE number holds 5 to 12 % less copper than the same AWG number.',
  columns: {
    gauge: { unit: 'text', label: 'SAE number' },
    metric_size: { unit: 'mm^2', label: 'Metric size, a name more than an area' },
    area: { unit: 'cmil', label: 'Minimum area' },
  },
  rows: [
    ['18', 0.8, 1537],
    ['16', 1, 2336],
    ['14', 2, 3702],
    ['12', 3, 5833],
    ['10', 5, 9343],
    ['8', 8, 14810],
    ['6', 13, 24538],
    ['4', 19, 37360],
    ['2', 32, 62450],
    ['1/0', 50, 98980],
    ['2/0', 62, 125100],
  ],
  check: { rows: 11, sums: { metric_size: 195.8, area: 385989 } },
});
