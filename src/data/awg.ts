/**
 * American wire gauge, ASTM B258: diameter = 0.127 mm · 92^((36 − n)/39), with n = 0 for 1/0, −1 for 2/0 and so on.
 */
import type { Quantities } from '../basis/quantity.ts';
import { COMMON_PRACTICE, cite } from '../basis/sources.ts';
import { table } from '../basis/table.ts';

const definition = cite('ASTM-B258', 'quoted');

export const awg = {
  awg_diameter: {
    symbol: 'd₃₆',
    label: 'Diameter of a solid 36 AWG wire',
    unit: 'mm',
    value: 0.127,
    source: definition,
  },
  awg_number: {
    symbol: 'n₃₆',
    label: 'Gauge number at which the diameter is defined',
    unit: '1',
    value: 36,
    source: definition,
  },
  awg_ratio: {
    symbol: 'q',
    label: 'Diameter of 4/0 AWG over that of 36 AWG',
    unit: '1',
    value: 92,
    source: definition,
  },
  awg_steps: {
    symbol: 'm_a',
    label: 'Gauge steps between 36 AWG and 4/0 AWG',
    unit: '1',
    value: 39,
    source: definition,
  },
} as const satisfies Quantities;

export const AWG_SIZES = table({
  title: 'AWG sizes from 22 to 4/0',
  source: definition,
  note: 'Areas are not listed: they follow from the definition. Even numbers are what the trade stocks for vehicles.',
  columns: {
    gauge: { unit: 'text', label: 'AWG' },
    number: { unit: '1', label: 'Gauge number n in the definition' },
    custom: { unit: 'text', label: 'How customary the size is', source: COMMON_PRACTICE },
  },
  rows: [
    ['22', 22, 'customary'],
    ['20', 20, 'customary'],
    ['18', 18, 'customary'],
    ['16', 16, 'customary'],
    ['14', 14, 'customary'],
    ['12', 12, 'customary'],
    ['10', 10, 'customary'],
    ['8', 8, 'customary'],
    ['6', 6, 'customary'],
    ['4', 4, 'customary'],
    ['3', 3, 'less customary'],
    ['2', 2, 'customary'],
    ['1', 1, 'less customary'],
    ['1/0', 0, 'customary'],
    ['2/0', -1, 'customary'],
    ['3/0', -2, 'customary'],
    ['4/0', -3, 'customary'],
  ],
  // Even numbers 22 down to 2 add up to 132, the two odd ones to 4, the noughts to −6.
  check: { rows: 17, sums: { number: 130 } },
});
