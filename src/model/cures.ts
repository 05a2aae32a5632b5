/** What would cover a conductor that its fuse does not: another fuse, another size, a lower current limit. */
import type { Quantities } from '../basis/quantity.ts';
import { ARBITRARY } from '../basis/sources.ts';
import { enduring, gateBelow, opening, RUN } from './curve-formulas.ts';

export const cures = {
  stuck_gate: {
    kind: 'formula',
    symbol: 'g',
    label: 'Gate of the fuse at or below the current of a driver stuck on',
    unit: '1',
    per: ['run'],
    formula: `IF(ISNUMBER(run_fuse_type), IF(ISNUMBER(stuck_current), ${gateBelow('stuck_current')}, 0), 0)`,
  },
  stuck_opening: {
    kind: 'formula',
    symbol: 't_st',
    label: 'Latest opening of the fuse on the current of a driver stuck on',
    unit: 's',
    shown: 's',
    per: ['run'],
    formula: `IF(ISNUMBER(run_fuse_type), ${opening('stuck_current', 'stuck_gate')}, for_ever)`,
  },
  stuck_endured: {
    kind: 'formula',
    symbol: 't_st,w',
    label: 'Time for which the conductor endures it',
    unit: 's',
    shown: 's',
    per: ['run'],
    formula: `IF(ISNUMBER(ampacity), ${enduring('stuck_current', RUN)}, "")`,
  },
  stuck_allowed: {
    kind: 'formula',
    symbol: 'I_st,max',
    label: 'Current of one coil that the run endures without end, or that its fuse ends in time',
    unit: 'A',
    per: ['run'],
    formula:
      'IF(ISNUMBER(stuck_endured), IF(stuck_opening<=stuck_endured, MAX(stuck_current, overload_begins), overload_begins), "")',
  },
  cure_need: {
    kind: 'formula',
    symbol: 'I_n,c',
    label: 'Cure: least rating of a fuse at the head of this run',
    unit: 'A',
    per: ['feed'],
    formula: 'run_effective/(fuse_load_limit*(1-fuse_rerating*(run_ambient-fuse_T_ref)))',
  },
  cure_type: {
    kind: 'constant',
    symbol: 'type',
    label: 'Cure: type of fuse from which the rating is taken',
    unit: 'text',
    value: 'C',
    source: ARBITRARY,
    note: 'Its list begins low enough for the branch of one coil.',
  },
  cure_fuse: {
    kind: 'formula',
    symbol: 'I_n,c',
    label: 'Cure: fuse at the head of this run that covers its conductor',
    unit: 'A',
    per: ['feed'],
    exact: true,
    formula:
      'IF(ISNUMBER(ampacity), IF(INDEX(fuse_size_rating[fuse_size], MATCH(cure_type, fuse_size_type[fuse_size], 0)+' +
      'MIN(cure_smaller, cure_choices-1), 1)>=cure_need, ' +
      'IF(INDEX(fuse_size_rating[fuse_size], MATCH(cure_type, fuse_size_type[fuse_size], 0)+MIN(cure_smaller, cure_choices-1), 1)<=ampacity, ' +
      'INDEX(fuse_size_rating[fuse_size], MATCH(cure_type, fuse_size_type[fuse_size], 0)+MIN(cure_smaller, cure_choices-1), 1), ""), ""), "")',
    note: 'Empty when none carries the load and stays within the ampacity.',
  },
  cure_smaller: {
    kind: 'formula',
    symbol: 'n_<',
    label: 'Cure: listed ratings that are too small',
    unit: '1',
    per: ['feed'],
    formula:
      'SUMPRODUCT((fuse_size_type[fuse_size]=cure_type)*fuse_size_listed[fuse_size]*(fuse_size_rating[fuse_size]<cure_need))',
  },
  cure_choices: {
    kind: 'formula',
    symbol: 'n_F',
    label: 'Cure: listed ratings of the type',
    unit: '1',
    formula: 'SUMPRODUCT((fuse_size_type[fuse_size]=cure_type)*fuse_size_listed[fuse_size])',
  },
  cure_count: {
    kind: 'formula',
    symbol: 'n_≥',
    label: 'Cure: sizes of the series whose ampacity is not below the fuse and that endure their shorts',
    unit: '1',
    per: ['feed'],
    formula:
      'IF(ISNUMBER(run_fuse), SUMPRODUCT(ISNUMBER(candidate_amps[candidate])*(candidate_amps[candidate]>=run_fuse)*' +
      'endures_start[candidate]*endures_end[candidate])-IF(auto=1, 0, IF(ISNUMBER(ampacity), IF(ampacity>=run_fuse, ' +
      'INDEX(endures_start[candidate], 1, COUNT(candidate_no[candidate]))*' +
      'INDEX(endures_end[candidate], 1, COUNT(candidate_no[candidate])), 0), 0)), 0)',
    note: 'All of them from the smallest such size on: what endures is not less for a larger one.',
  },
  cure_gauge: {
    kind: 'formula',
    symbol: 'size',
    label: 'Cure: smallest size whose ampacity is not below the fuse and that endures its shorts',
    unit: 'text',
    per: ['feed'],
    formula: 'IF(cure_count>0, INDEX(size_name[size], series_first+series_count-cure_count, 1), "")',
  },
  cure_limit: {
    kind: 'formula',
    symbol: 'I_lim,c',
    label: 'Cure: current limit of the driver below which a driver stuck on does no harm to this run',
    unit: 'A',
    per: ['feed'],
    formula:
      'IF(ISNUMBER(overload_begins), IF(COUNT(window_from[window])>0, MIN(MIN(window_from[window]), overload_begins), overload_begins), "")',
  },
} as const satisfies Quantities;
