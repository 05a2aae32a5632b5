/**
 * Ways to reduce rounded-up sizes under the drop limit.
 *
 * A way goes through the runs in one direction. Each run takes the smallest size, not below what its load and its shorts
 * ask for, that keeps every firing within the limit, the runs passed already at their new size, the others still at the
 * old one. From the first guess every run is reduced by one size at most before that, so that none uses up what the
 * others need as well. A way that ends in sizes which do not endure their shorts (`sound.ts`) counts as dearer than any
 * that does.
 */
import type { Formula, Quantities } from '../basis/quantity.ts';
import { type SoundName, soundness } from './sound.ts';

/** The firings over which the drop is watched: what flows times how far, what is lost in joints, and their axes. */
interface Firings {
  readonly metres: string;
  readonly fixed: string;
  readonly axes: string;
}
/** Every firing of every point. */
export const EVERY: Firings = { metres: 'ampere_metres', fixed: 'fixed_drop', axes: 'point,event' };
/** Every firing once, each run as at its worst point: enough for the ways, since the last reduction watches all points. */
const WORST: Firings = { metres: 'worst_metres', fixed: 'worst_fixed_drop', axes: 'event' };

/** Drop that a run may make: what all runs at `start` leave, less what the runs passed have changed. */
export const roomFormula = (
  { metres, fixed }: Firings,
  room: string,
  start: string,
  taken: string,
  passed: '-1' | '+1',
): string =>
  `IF(ISNUMBER(${room}[run${passed}]), ${room}[run${passed}]-${metres}[run${passed}]*${taken}[run${passed}], ` +
  `drop_limit-${fixed}-SUMPRODUCT(MMULT(${metres}[run], ${start}[run])))+${metres}*${start}`;

/** Largest resistance of one metre that uses that room up at no firing; empty for a run that carries nothing. */
export const mostFormula = ({ metres, axes }: Firings, room: string): string =>
  `IF(MAX(${metres}[${axes}])>0, ` +
  `IF(SUMPRODUCT((${metres}[${axes}]>0)*(${room}[${axes}]<=0))>0, 0, ` +
  `1/SUMPRODUCT(MAX(${metres}[${axes}]/(${room}[${axes}]+(${room}[${axes}]=0)*drop_limit)))), "")`;

interface Way {
  readonly name: string;
  readonly label: string;
  /** Candidate and its resistance from which it starts. */
  readonly from: { size: string; ohm: string };
  readonly passed: '-1' | '+1';
  /** Never below this candidate. */
  readonly floor: string;
}

const guessed = (suffix: string): Pick<Way, 'from' | 'floor'> => ({
  from: { size: `rounded${suffix}`, ohm: `rounded${suffix}_ohm` },
  floor: `MAX(least, by_short${suffix})`,
});
const STEPPED = { ...guessed(''), from: { size: 'step_size', ohm: 'step_ohm' } };
const LEAN = { ...guessed('_again'), from: { size: 'lean_start', ohm: 'lean_start_ohm' } };
const STEP: Way = {
  ...guessed(''),
  name: 'step',
  label: 'Reduced by one size at most',
  passed: '-1',
  floor: 'MAX(least, by_short, rounded-1)',
};

/** Ways from the first guess, and those from the guesses that follow it. */
const FIRST = [
  { ...STEPPED, name: 'step_forth', label: 'Reduced by one size at most, then in order', passed: '-1' },
  { ...STEPPED, name: 'step_back', label: 'Reduced by one size at most, then against order', passed: '+1' },
] as const satisfies Way[];
const LATER = [
  { ...guessed('_again'), name: 'forth', label: 'Second guess, reduced in order', passed: '-1' },
  { ...guessed('_again'), name: 'back', label: 'Second guess, reduced against order', passed: '+1' },
  // Against the order it never ends cheaper than another way does.
  { ...guessed('_thin'), name: 'thinned', label: 'Third guess, reduced in order', passed: '-1' },
  { ...LEAN, name: 'lean_forth', label: 'Heaviest run thinner, reduced in order', passed: '-1' },
  { ...LEAN, name: 'lean_back', label: 'Heaviest run thinner, reduced against order', passed: '+1' },
] as const satisfies Way[];

const namesOf = <N extends string>(ways: readonly { name: N }[]): N[] => ways.map(({ name }) => name);
export const FIRST_WAYS = namesOf(FIRST);
/** The ways among which the cheapest sound one is taken. */
export const WAYS = [...FIRST_WAYS, ...namesOf(LATER)];

type Suffix = 'room' | 'most' | 'size' | 'ohm' | 'copper' | 'cost';
type TrimName = `${(typeof WAYS)[number] | 'step'}_${Suffix | SoundName}`;

function quantitiesOf({ name, label, from, passed, floor }: Way): [string, Formula][] {
  const kind = 'formula';
  return [
    [
      `${name}_room`,
      {
        kind,
        symbol: 'ΔV_i',
        label: `${label}: drop that the run may make`,
        unit: 'V',
        per: ['event'],
        across: 'run',
        formula: roomFormula(WORST, `${name}_room`, from.ohm, `${name}_ohm`, passed),
      },
    ],
    [
      `${name}_most`,
      {
        kind,
        symbol: 'r_max',
        label: `${label}: largest resistance of one metre`,
        unit: 'ohm/m',
        shown: 'mohm/m',
        per: ['run'],
        formula: mostFormula(WORST, `${name}_room`),
      },
    ],
    [
      `${name}_size`,
      {
        kind,
        symbol: 'c',
        label: `${label}: candidate`,
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
        label: `${label}: warm resistance of one metre`,
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
        label: `${label}: copper of the run, by volume`,
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
        label: `${label}: copper of all runs, by volume`,
        unit: 'mm^2*m',
        formula: `SUM(${name}_volume[run])`,
      },
    ],
    ...soundness(name, label),
    [
      `${name}_cost`,
      {
        kind,
        symbol: 'ΣV_Cu',
        label: `${label}: copper, without end when a run would not endure its shorts`,
        unit: 'mm^2*m',
        formula: `IF(${name}_sound=1, ${name}_copper, ${name}_copper+no_way)`,
      },
    ],
  ];
}

const ONLY_WAYS = new Set([
  'step_volume',
  'step_copper',
  'step_cost',
  ...soundness('step', '').map(([name]) => name),
]);

/** The quantities of every way; the single step is not a way of its own and needs neither copper nor soundness. */
export const trims = Object.fromEntries(
  [STEP, ...FIRST, ...LATER].flatMap(quantitiesOf).filter(([name]) => !ONLY_WAYS.has(name)),
) as Readonly<Record<TrimName, Formula>> satisfies Quantities;
