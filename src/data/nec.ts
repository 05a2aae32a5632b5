/**
 * NEC (NFPA 70) chapter 9 table 8: direct-current resistance of stranded uncoated copper at 75 °C. Check values.
 */
import { cite } from '../basis/sources.ts';
import { table } from '../basis/table.ts';

export const NEC_TABLE_8 = table({
  title: 'Direct-current resistance of stranded uncoated copper conductors at 75 °C',
  source: cite('NEC', 'quoted', 'ch. 9 table 8'),
  columns: {
    gauge: { unit: 'text', label: 'AWG' },
    // Printed in ohms per thousand feet, which is the same number.
    resistance: { unit: 'mohm/ft', label: 'Resistance' },
  },
  rows: [
    ['18', 7.95],
    ['16', 4.99],
    ['14', 3.14],
    ['12', 1.98],
    ['10', 1.24],
    ['8', 0.778],
    ['6', 0.491],
    ['4', 0.308],
    ['2', 0.194],
  ],
  check: { rows: 9, sums: { resistance: 21.071 } },
});
