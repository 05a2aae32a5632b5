/**
 * IEC 60228, class 5: greatest resistance of flexible plain copper conductors at 20 °C.
 */
import { cite } from '../basis/sources.ts';
import { table } from '../basis/table.ts';

export const IEC_60228_CLASS_5 = table({
  title: 'Resistance of flexible conductors, class 5, plain copper',
  source: cite('IEC-60228', 'quoted', 'class 5'),
  note:
    'The lay of the strands is inside these figures. The limits of ISO 6722-1 for the same sizes are 1 to 5 % lower ' +
    '(from memory); the higher ones are taken, which errs towards more drop.',
  columns: {
    size: { unit: 'mm^2', label: 'Nominal area' },
    resistance: { unit: 'mohm/m', label: 'Greatest resistance at 20 °C' },
  },
  rows: [
    [0.5, 39.0],
    [0.75, 26.0],
    [1, 19.5],
    [1.5, 13.3],
    [2.5, 7.98],
    [4, 4.95],
    [6, 3.3],
    [10, 1.91],
    [16, 1.21],
    [25, 0.78],
    [35, 0.554],
  ],
  check: { rows: 11, sums: { size: 102.25, resistance: 118.484 } },
});
