/**
 * Sizes and short circuits: a candidate must endure a short at the begin and at the far end of its run until the fuse
 * opens. Between the two the fuse gains on the conductor, its gates being steeper than I²t, then loses, being flat.
 *
 * The fault current hangs on the sizes nearer to the battery, thinner ones sparing the runs behind them. When a run takes
 * its last size these already have theirs; before that they are guessed (`sizing.ts`).
 */
import type { Formula, Quantities } from '../basis/quantity.ts';
import { enduring, gateBelow, type Heated, opening, timeConstant } from './curve-formulas.ts';

const CANDIDATE: Heated = { amps: 'candidate_amps', load_T: 'candidate_T', theta: 'candidate_theta' };

/** 1 where the fuse opens within the time that the candidate endures, or where nothing is known of the short. */
const endures = (fault: string, opens: string): string =>
  `IF(ISNUMBER(run_fuse_type), IF(ISNUMBER(${fault}), IF(ISNUMBER(candidate_T), ` +
  `IF(${opens}<=${enduring(fault, CANDIDATE)}, 1, 0), 0), 1), 1)`;

type GuessName =
  | 'guess_ohm'
  | 'guess_fault'
  | 'guess_start'
  | 'guess_gate'
  | 'guess_opening'
  | 'guess_endures'
  | 'by_short';

/** Least candidates that endure a short at the begin of their runs, the runs before them at the candidates `before`. */
const guess = <Suffix extends string>(
  suffix: Suffix,
  label: string,
  before: string,
): Readonly<Record<`${GuessName}${Suffix}`, Formula>> => {
  const kind = 'formula';
  const of = (name: GuessName): string => `${name}${suffix}`;
  const all: Record<string, Formula> = {
    [of('guess_ohm')]: {
      kind,
      symbol: 'R_20,0',
      label: `${label}: cold resistance with joints, fuse and relay contact`,
      unit: 'ohm',
      shown: 'mohm',
      per: ['wire'],
      formula: `INDEX(size_ohm[size], INDEX(candidate_size[candidate], 1, ${before}), 1)*wire_length+fixed_ohm`,
    },
    [of('guess_fault')]: {
      kind,
      symbol: 'I_k,0',
      label: `${label}: fault current at the begin of the run`,
      unit: 'A',
      per: ['wire'],
      formula: `IF(ISNUMBER(source_ohm), IF(fed=1, highest_supply/(source_least+SUM(${of('guess_ohm')}[wire ahead])+fuse_ohm+chassis_ohm), ""), "")`,
    },
    [of('guess_start')]: {
      kind,
      symbol: 'I_k,0',
      label: `${label}: largest fault current of a conductor of the run`,
      unit: 'A',
      per: ['feed'],
      formula: `IF(COUNT(${of('guess_fault')}[wire of run])>0, MAX(${of('guess_fault')}[wire of run]), "")`,
    },
    [of('guess_gate')]: {
      kind,
      symbol: 'g',
      label: `${label}: gate of the fuse at or below that short`,
      unit: '1',
      per: ['feed'],
      formula: `IF(ISNUMBER(run_fuse_type), IF(ISNUMBER(${of('guess_start')}), ${gateBelow(of('guess_start'))}, 0), 0)`,
    },
    [of('guess_opening')]: {
      kind,
      symbol: 't_0',
      label: `${label}: latest opening on it`,
      unit: 's',
      shown: 's',
      per: ['feed'],
      formula: `IF(ISNUMBER(run_fuse_type), IF(ISNUMBER(${of('guess_start')}), ${opening(of('guess_start'), of('guess_gate'))}, ""), "")`,
    },
    [of('guess_endures')]: {
      kind,
      symbol: 'ok_0',
      label: `${label}: candidate carries its load and endures that short (1) or not (0)`,
      unit: '1',
      per: ['feed'],
      across: 'candidate',
      formula: `IF(fits_load=1, ${endures(of('guess_start'), of('guess_opening'))}, 0)`,
    },
    [of('by_short')]: {
      kind,
      symbol: 'c_k',
      label: `${label}: least candidate that does`,
      unit: '1',
      per: ['run'],
      formula: `IF(fed=1, IFERROR(MATCH(1, ${of('guess_endures')}[feed of run,candidate], 0), series_count), MIN(series_count, least))`,
    },
  };
  return all as Readonly<Record<`${GuessName}${Suffix}`, Formula>>;
};

export const survival = {
  ...guess('', 'First guess', 'by_load'),
  ...guess('_again', 'Second guess', 'first_size'),
  ...guess('_thin', 'Third guess', 'thin_size'),
  candidate_theta: {
    kind: 'formula',
    symbol: 'θ',
    label: 'Thermal time constant of the candidate',
    unit: 's',
    shown: 's',
    per: ['feed'],
    across: 'candidate',
    formula:
      'IF(ISNUMBER(candidate_T), ' +
      `${timeConstant('INDEX(size_area[size], candidate_size, 1)', 'candidate_amps', 'INDEX(size_ohm[size], candidate_size, 1)')}, "")`,
  },
  start_gate: {
    kind: 'formula',
    symbol: 'g',
    label: 'Gate of the fuse at or below the short at the begin of the run',
    unit: '1',
    per: ['feed'],
    formula: `IF(ISNUMBER(run_fuse_type), IF(ISNUMBER(start_fault), ${gateBelow('start_fault')}, 0), 0)`,
  },
  start_opening: {
    kind: 'formula',
    symbol: 't_k',
    label: 'Latest opening on a short at the begin of the run',
    unit: 's',
    shown: 's',
    per: ['feed'],
    formula: `IF(ISNUMBER(run_fuse_type), IF(ISNUMBER(start_fault), ${opening('start_fault', 'start_gate')}, ""), "")`,
  },
  longest_wire: {
    kind: 'formula',
    symbol: 'ℓ_max',
    label: 'Longest conductor of the run',
    unit: 'm',
    per: ['run'],
    formula: 'MAX(wire_length[wire of run])',
  },
  warm_ahead: {
    kind: 'formula',
    symbol: 'R_v',
    label: 'Warm resistance of the conductors between the battery and this one',
    unit: 'ohm',
    shown: 'mohm',
    per: ['wire'],
    formula: 'SUM(wire_ohm[wire ahead])',
  },
  candidate_end: {
    kind: 'formula',
    symbol: 'I_k,c',
    label: 'Fault current at the far end of the longest conductor, of this candidate, warm',
    unit: 'A',
    per: ['feed'],
    across: 'candidate',
    formula:
      'IF(ISNUMBER(source_ohm), IF(ISNUMBER(candidate_ohm), lowest_supply/(source_ohm+MAX(warm_ahead[wire of run])+' +
      'candidate_ohm*longest_wire+fixed_ohm+chassis_ohm), ""), "")',
  },
  candidate_gate: {
    kind: 'formula',
    symbol: 'g',
    label: 'Gate of the fuse at or below the short at the far end of the candidate',
    unit: '1',
    per: ['feed'],
    across: 'candidate',
    formula: `IF(ISNUMBER(run_fuse_type), IF(ISNUMBER(candidate_end), ${gateBelow('candidate_end')}, 0), 0)`,
  },
  candidate_opening: {
    kind: 'formula',
    symbol: 't_k',
    label: 'Latest opening on it',
    unit: 's',
    shown: 's',
    per: ['feed'],
    across: 'candidate',
    formula: `IF(ISNUMBER(run_fuse_type), IF(ISNUMBER(candidate_end), ${opening('candidate_end', 'candidate_gate')}, ""), "")`,
  },
  endures_start: {
    kind: 'formula',
    symbol: 'ok_a',
    label: 'Candidate endures a short at the begin of the run (1) or not (0)',
    unit: '1',
    per: ['feed'],
    across: 'candidate',
    formula: endures('start_fault', 'start_opening'),
  },
  endures_end: {
    kind: 'formula',
    symbol: 'ok_e',
    label: 'Candidate endures a short at its far end, and the fuse opens on it in time (1), or not (0)',
    unit: '1',
    per: ['feed'],
    across: 'candidate',
    formula:
      'IF(ISNUMBER(candidate_opening), IF(candidate_opening<=open_limit, ' +
      `${endures('candidate_end', 'candidate_opening')}, 0), 1)`,
  },
} as const satisfies Quantities;
