/**
 * Ways to reduce rounded-up sizes under the drop limit.
 *
 * A way goes through the runs in one direction. Each run takes the smallest size, not below what its load and its shorts
 * ask for, that keeps every firing within the limit, the runs passed already at their new size, the others still at the
 * old one. First every run is reduced by one size at most, so that none uses up what the others need as well.
 */
import type { Formula, Quantities } from '../basis/quantity.ts';

/** Drop that a run may make: what all runs at `start` leave, less what the runs passed have changed. */
export const roomFormula = (room: string, start: string, taken: string, passed: '-1' | '+1'): string =>
  `IF(ISNUMBER(${room}[run${passed}]), ${room}[run${passed}]-ampere_metres[run${passed}]*${taken}[run${passed}], ` +
  `drop_limit-fixed_drop-SUMPRODUCT(MMULT(ampere_metres[run], ${start}[run])))+ampere_metres*${start}`;

/** Largest resistance of one metre that uses that room up at no firing; empty for a run that carries nothing. */
export const mostFormula = (room: string): string =>
  'IF(MAX(ampere_metres[point,event])>0, ' +
  `IF(SUMPRODUCT((ampere_metres[point,event]>0)*(${room}[point,event]<=0))>0, 0, ` +
  `1/SUMPRODUCT(MAX(ampere_metres[point,event]/(${room}[point,event]+(${room}[point,event]=0)*drop_limit)))), "")`;

interface Way {
  readonly name: string;
  readonly label: string;
  /** Candidate and its resistance from which it starts. */
  readonly from: { size: string; ohm: string };
  readonly passed: '-1' | '+1';
  /** Never below this candidate. */
  readonly floor: string;
}

const ROUNDED = { size: 'rounded', ohm: 'rounded_ohm' };
const STEPPED = { size: 'step_size', ohm: 'step_ohm' };
const FLOOR = 'MAX(least, by_short)';
const ALL: readonly Way[] = [
  {
    name: 'step',
    label: 'by one size at most',
    from: ROUNDED,
    passed: '-1',
    floor: `MAX(${FLOOR}, rounded-1)`,
  },
  {
    name: 'step_forth',
    label: 'by one size at most, then in order',
    from: STEPPED,
    passed: '-1',
    floor: FLOOR,
  },
  {
    name: 'step_back',
    label: 'by one size at most, then against order',
    from: STEPPED,
    passed: '+1',
    floor: FLOOR,
  },
];

/** The ways among which the cheapest is taken. */
export const WAYS = ['step_forth', 'step_back'] as const;

type Suffix = 'room' | 'most' | 'size' | 'ohm' | 'copper';
type TrimName = `${(typeof WAYS)[number] | 'step'}_${Suffix}`;

function quantitiesOf({ name, label, from, passed, floor }: Way): [string, Formula][] {
  const kind = 'formula';
  return [
    [
      `${name}_room`,
      {
        kind,
        symbol: 'ΔV_i',
        label: `Reduced ${label}: drop that the run may make`,
        unit: 'V',
        per: ['point', 'event'],
        across: 'run',
        formula: roomFormula(`${name}_room`, from.ohm, `${name}_ohm`, passed),
      },
    ],
    [
      `${name}_most`,
      {
        kind,
        symbol: 'r_max',
        label: `Reduced ${label}: largest resistance of one metre`,
        unit: 'ohm/m',
        shown: 'mohm/m',
        per: ['run'],
        formula: mostFormula(`${name}_room`),
      },
    ],
    [
      `${name}_size`,
      {
        kind,
        symbol: 'c',
        label: `Reduced ${label}: candidate`,
        unit: '1',
        per: ['run'],
        formula:
          `IF(auto=1, MIN(series_count, MAX(${floor}, IF(ISNUMBER(${name}_most), ` +
          `SUMPRODUCT(ISNUMBER(candidate_ohm[candidate])*(candidate_ohm[candidate]>${name}_most))+1, 1))), ${from.size})`,
      },
    ],
    [
      `${name}_ohm`,
      {
        kind,
        symbol: 'r',
        label: `Reduced ${label}: warm resistance of one metre`,
        unit: 'ohm/m',
        shown: 'mohm/m',
        per: ['run'],
        formula: `INDEX(candidate_ohm[candidate], 1, ${name}_size)`,
      },
    ],
    [
      `${name}_volume`,
      {
        kind,
        symbol: 'V_Cu',
        label: `Reduced ${label}: copper of the run, by volume`,
        unit: 'mm^2*m',
        per: ['run'],
        formula: `INDEX(size_area[size], INDEX(candidate_size[candidate], 1, ${name}_size), 1)*run_length`,
      },
    ],
    [
      `${name}_copper`,
      {
        kind,
        symbol: 'ΣV_Cu',
        label: `Reduced ${label}: copper of all runs, by volume`,
        unit: 'mm^2*m',
        formula: `SUM(${name}_volume[run])`,
      },
    ],
  ];
}

/** The quantities of every way; the single step is not a way of its own and needs no copper. */
export const trims = Object.fromEntries(
  ALL.flatMap(quantitiesOf).filter(([name]) => name !== 'step_volume' && name !== 'step_copper'),
) as Readonly<Record<TrimName, Formula>> satisfies Quantities;
