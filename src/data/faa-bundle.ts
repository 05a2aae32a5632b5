/**
 * FAA AC 43.13-1B (the same curves as MIL-W-5088L): what wires in a bundle may carry. A second opinion.
 */
import { cite } from '../basis/sources.ts';
import { table } from '../basis/table.ts';

export const FAA_BUNDLE = table({
  title: 'Factor on the current of a wire in free air, by wires in the bundle and use of the bundle',
  source: cite('FAA-AC-43.13-1B', 'quoted', 'the same curves as in MIL-W-5088L'),
  columns: {
    wires: { unit: '1', label: 'Wires in the bundle' },
    used_20: { unit: '1', label: '20 % of the capacity of the bundle in use' },
    used_40: { unit: '1', label: '40 % in use', empty: true },
    used_60: { unit: '1', label: '60 % in use', empty: true },
    used_80: { unit: '1', label: '80 % in use', empty: true },
    used_100: { unit: '1', label: '100 % in use', empty: true },
  },
  rows: [
    [1, 1, 1, 1, 1, 1],
    [2, 0.9675, 0.92, 0.91, 0.87, 0.825],
    [3, 0.935, 0.855, 0.815, 0.77, 0.725],
    [4, 0.9075, 0.805, 0.75, 0.705, 0.66],
    [5, 0.875, 0.76, 0.695, 0.65, 0.61],
    [6, 0.85, 0.725, 0.655, 0.605, 0.5725],
    [8, 0.795, 0.6675, 0.595, 0.5425, 0.5125],
    [10, 0.755, 0.6225, 0.55, 0.5, 0.465],
    [12, 0.715, 0.585, 0.515, 0.465, 0.43],
    [15, 0.67, 0.54, 0.465, 0.42, 0.385],
    [20, 0.615, null, null, null, null],
  ],
  check: {
    rows: 11,
    sums: { wires: 86, used_20: 9.085, used_40: 7.48, used_60: 6.95, used_80: 6.5275, used_100: 6.185 },
  },
});
