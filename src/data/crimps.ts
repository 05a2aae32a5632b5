/**
 * Crimped joints: pull-out force of UL 486A and MIL-T-7928, held for one minute; NASA-STD-8739.4 for other sizes.
 */
import type { Quantities } from '../basis/quantity.ts';
import { cite, fromMemory } from '../basis/sources.ts';
import { table } from '../basis/table.ts';

const columns = {
  gauge: { unit: 'text', label: 'AWG' },
  force: { unit: 'lbf', label: 'Pull-out force' },
} as const;

export const PULL_OUT_UL = table({
  title: 'Pull-out force of crimped connectors, UL',
  source: cite('UL-486A', 'quoted'),
  columns,
  rows: [
    ['22', 8],
    ['20', 13],
    ['18', 20],
    ['16', 30],
    ['14', 50],
    ['12', 70],
    ['10', 80],
    ['8', 90],
    ['6', 100],
    ['4', 140],
    ['2', 180],
  ],
  check: { rows: 11, sums: { force: 781 } },
});

const REMEMBERED = fromMemory('medium', 'MIL-T-7928');

export const PULL_OUT_MIL = table({
  title: 'Pull-out force of crimped terminals, military',
  source: cite('MIL-T-7928', 'quoted'),
  columns,
  rows: [
    ['22', 15],
    ['20', 19],
    ['18', 38],
    ['16', 50],
    ['14', 70],
    ['12', 110],
    ['10', 150],
    ['8', 225, REMEMBERED],
    ['6', 300, REMEMBERED],
    ['4', 400, REMEMBERED],
    ['2', 550, REMEMBERED],
  ],
  check: { rows: 11, sums: { force: 1927 } },
});

export const crimp = {
  crimp_share: {
    symbol: 's_crimp',
    label:
      'Pull-out force of a crimp over the tensile strength of its wire, where no value is listed, at least',
    unit: '1',
    shown: '%',
    value: 0.6,
    source: cite('NASA-STD-8739.4', 'printed'),
  },
} as const satisfies Quantities;
