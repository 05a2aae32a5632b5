/**
 * Handbook table of solid copper wire: resistance of AWG sizes at 20 °C. Check values for resistivity and gauge.
 */
import { cite } from '../basis/sources.ts';
import { table } from '../basis/table.ts';

export const SOLID_AWG = table({
  title: 'Resistance of solid copper wire at 20 °C, handbook table',
  source: cite('AWG-handbook', 'quoted'),
  columns: {
    gauge: { unit: 'text', label: 'AWG' },
    // Printed in ohms per thousand feet, which is the same number.
    resistance: { unit: 'mohm/ft', label: 'Resistance' },
  },
  rows: [
    ['22', 16.14],
    ['20', 10.15],
    ['18', 6.385],
    ['16', 4.016],
    ['14', 2.525],
    ['12', 1.588],
    ['10', 0.9989],
    ['8', 0.6282],
    ['6', 0.3951],
    ['4', 0.2485],
    ['2', 0.1563],
    ['1/0', 0.0983],
  ],
  check: { rows: 12, sums: { resistance: 43.3293 } },
});
