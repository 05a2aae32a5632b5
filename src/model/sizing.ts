/**
 * Sizes that the model chooses itself, for the runs whose size is `auto`, each rule known that a size can keep.
 *
 * 1. Least copper under the drop: S_i = (ρ_i/B′)·√(I_i/n_i)·Σ L_j·√(I_j·n_j), warm, for every firing of every point; the
 *    greatest need of each run is rounded up, and is never below what the run must take by itself (`floors.ts`).
 * 2. Shorts allow a loop so much resistance (`survival.ts`): that is shared for the least copper in the same way.
 * 3. One pass, the run with most copper first (`reduction.ts`): each takes the smallest size with which every rule is
 *    kept, those before it at their last size, those behind it at their first. After that no run can be one size smaller.
 *
 * Runs that take one size are sized together.
 */
import type { Quantities } from '../basis/quantity.ts';
import { DEFINITION, PHYSICS } from '../basis/sources.ts';
import { conductorIn, leaderOf } from './route.ts';

export const sizing = {
  lead: {
    symbol: 'n_L',
    label: 'Number of the first run that takes one size with this one, its own number when none does',
    unit: '1',
    per: ['run'],
    value: (at, layout) => leaderOf(at.run, layout) + 1,
    note:
      'As `like` says; else runs side by side with as many coils, the same insulation and lengths within a third take one size. ' +
      'It is fixed when the workbook is made.',
  },
  run_no: {
    symbol: 'n_r',
    label: 'Number of the run',
    unit: '1',
    per: ['run'],
    value: (at) => at.run + 1,
  },
  wire_run: {
    symbol: 'r_w',
    label: 'Number of the run of the conductor',
    unit: '1',
    per: ['wire'],
    value: (at, layout) => (layout.wires[at.wire]?.run ?? 0) + 1,
  },
  on_the_way: {
    symbol: 'w_r',
    label:
      'Number of the conductor of the run between the battery and the far end of this one, itself included; 0 for none',
    unit: '1',
    per: ['wire'],
    across: 'run',
    value: (at, layout) => conductorIn(at.run, at.wire, layout) + 1,
  },
  run_length: {
    symbol: 'Σℓ',
    short: 'All together',
    label: 'Length of all conductors of the run side by side',
    unit: 'm',
    per: ['run'],
    formula: 'SUM(wire_length[wire of run])',
    source: DEFINITION,
  },
  group_length: {
    symbol: 'Σℓ_L',
    label: 'Length of all conductors of the runs that take one size',
    unit: 'm',
    per: ['run'],
    formula: 'SUMPRODUCT((lead[run]=lead)*run_length[run])',
    source: DEFINITION,
  },
  hot_T: {
    symbol: 'T_h',
    label: 'Temperature of a conductor at the largest load allowed',
    unit: 'degC',
    per: ['run'],
    formula: 'IF(run_ambient<rating, run_ambient+(rating-run_ambient)*wire_load_limit^2, run_ambient)',
    source: PHYSICS,
  },
  hot_rho: {
    symbol: 'ρ_h',
    label: 'Resistivity at that temperature, with lay',
    unit: 'ohm*mm^2/m',
    per: ['run'],
    formula: 'rho_20*lay*(1+alpha_20*(hot_T-T_ref))',
    source: PHYSICS,
  },
  ampere_metres: {
    symbol: 'Iℓ',
    label: 'Current times length in the run, on the path of this coil at its firing',
    unit: 'A*m',
    per: ['point', 'event'],
    across: 'run',
    formula:
      'SUMPRODUCT(MMULT((MMULT(flowing_at[event2], carried[event,wire of run])+run_also)*carried[wire of run], ' +
      'wire_length[wire of run]))',
    source: PHYSICS,
  },
  event_no: {
    symbol: 'k',
    label: 'Number of the firing in the cycle',
    unit: '1',
    per: ['event'],
    value: (at) => at.event + 1,
  },
  wire_fixed_ohm: {
    symbol: 'R_fix',
    label: 'Resistance of joints, fuse and relay contact',
    unit: 'ohm',
    shown: 'mohm',
    per: ['wire'],
    formula: 'fixed_ohm',
    source: DEFINITION,
  },
  also_fixed_drop: {
    symbol: 'ΔV_also',
    label: 'Drop that another steady load makes in joints, fuse and relay contact',
    unit: 'V',
    per: ['wire'],
    formula: 'fixed_ohm*run_also',
    source: PHYSICS,
  },
  common_fixed_ohm: {
    symbol: 'R_fix,jk',
    label: 'Resistance of joints, fuses and relays that the paths of the two coils have in common',
    unit: 'ohm',
    shown: 'mohm',
    per: ['event'],
    across: 'event2',
    formula: 'SUMPRODUCT(carries[wire], carries[wire,event=event2], wire_fixed_ohm[wire])',
    source: DEFINITION,
  },
  fixed_drop: {
    symbol: 'ΔV_fix',
    label: 'Drop of joints, fuses and relays on the path of this coil at its firing',
    unit: 'V',
    per: ['point', 'event'],
    formula:
      'SUMPRODUCT(common_fixed_ohm[event2], flowing_at[event2])+SUMPRODUCT(MMULT(carried[wire], also_fixed_drop[wire]))',
    source: PHYSICS,
  },
  drop_allowed: {
    symbol: 'B_p',
    label:
      'Drop allowed at the point: by the limit, and by the least supply of the coil where the battery has more',
    unit: 'V',
    per: ['point'],
    formula:
      'IF(ISNUMBER(min_supply), IF(supply>min_supply, MIN(drop_limit, supply-min_supply), drop_limit), drop_limit)',
    source: DEFINITION,
  },
  stated_ohm: {
    symbol: 'r_s',
    label: 'Warm resistance of one metre of the size stated, 0 for a size to be chosen',
    unit: 'ohm/m',
    shown: 'mohm/m',
    per: ['run'],
    formula: 'IF(auto=1, 0, INDEX(candidate_ohm[candidate], 1, COUNT(candidate_no[candidate])))',
    source: DEFINITION,
  },
  budget: {
    symbol: 'B′',
    label: 'Drop that is left to the runs whose size is chosen',
    unit: 'V',
    per: ['point', 'event'],
    formula: 'drop_allowed-fixed_drop-SUMPRODUCT(MMULT(ampere_metres[run], stated_ohm[run]))',
    source: DEFINITION,
  },
  root: {
    symbol: '√',
    label: 'Root of resistivity, current times length and total length, of a run whose size is chosen',
    unit: 'V^0.5*mm*m^0.5',
    per: ['point', 'event'],
    across: 'run',
    formula: 'auto*SQRT(hot_rho*ampere_metres*group_length)',
    source: PHYSICS,
  },
  share: {
    symbol: 'Σ√/B′',
    label: 'Sum of the roots over the drop that is left, 0 when nothing is left',
    unit: 'V^-0.5*mm*m^0.5',
    per: ['point', 'event'],
    formula: 'IF(budget>0, SUM(root[run])/budget, 0)',
    source: PHYSICS,
  },
  share_area: {
    symbol: 'S_i',
    label: 'Area by the share of the drop with the least copper, all conductors in parallel',
    unit: 'mm^2',
    per: ['run'],
    formula: 'SUMPRODUCT(MAX(root[point,event]*share[point,event]))/group_length',
    source: PHYSICS,
    note: 'By minimising the copper Σ n·L·S under the drop Σ ρ·L·I/S = B′.',
  },
  by_share: {
    symbol: 'c_1',
    label: 'Least candidate that suits and has this area',
    unit: '1',
    per: ['run'],
    formula:
      'IF(auto=1, IFERROR(MATCH(1, enough_area[candidate], 0), last_suiting), COUNT(candidate_no[candidate]))',
    source: DEFINITION,
  },
  enough_area: {
    symbol: 'ok',
    label: 'Candidate suits and has the area of its share (1) or not (0)',
    unit: '1',
    per: ['run'],
    across: 'candidate',
    formula: 'IF(suits=1, IF(parallel*candidate_area>=share_area, 1, 0), 0)',
    source: DEFINITION,
  },
  last_suiting: {
    symbol: 'c_max',
    label: 'Largest candidate that suits; the one by load when none does',
    unit: '1',
    per: ['run'],
    formula:
      'IF(auto=1, IF(SUM(suits[candidate])>0, SUMPRODUCT(MAX(suits[candidate]*candidate_index[candidate])), by_load), ' +
      'COUNT(candidate_no[candidate]))',
    source: DEFINITION,
  },
  candidate_index: {
    symbol: 'c',
    label: 'Number of the candidate',
    unit: '1',
    per: ['run'],
    across: 'candidate',
    value: (at) => at.candidate + 1,
  },
  way_length: {
    symbol: 'ℓ_w',
    label: 'Length of the run on the path of a short at the far end of this conductor',
    unit: 'm',
    per: ['wire'],
    across: 'run',
    formula: 'IF(on_the_way>0, INDEX(wire_length[wire], on_the_way, 1), 0)',
    source: DEFINITION,
  },
  way_fixed: {
    symbol: 'R_w,fix',
    label: 'Resistance of that path without copper: source, chassis, joints, fuses, relays',
    unit: 'ohm',
    shown: 'mohm',
    per: ['wire'],
    formula:
      'IF(ISNUMBER(source_ohm), source_ohm, 0)+chassis_ohm+SUM(wire_fixed_ohm[wire ahead])+wire_fixed_ohm',
    source: DEFINITION,
  },
  way_most: {
    symbol: 'R_w,max',
    label: 'Largest resistance of that path with which the candidate is covered',
    unit: 'ohm',
    shown: 'mohm',
    per: ['wire'],
    across: 'candidate',
    formula: 'IF(fed=1, IF(auto=1, loop_most, IF(loop_most>=way_least, loop_most, unlimited)), unlimited)',
    source: DEFINITION,
    note: 'A stated size that is not covered whatever the others are asks nothing of them.',
  },
  way_budget: {
    symbol: 'R_w′',
    label: 'Resistance that is left on that path to the runs whose size is chosen',
    unit: 'ohm',
    shown: 'mohm',
    per: ['wire'],
    formula:
      'INDEX(way_most[candidate], 1, by_share)-way_fixed-SUMPRODUCT(MMULT(way_length[run], stated_ohm[run]))',
    source: DEFINITION,
  },
  way_root: {
    symbol: '√_w',
    label: 'Root of resistivity, length and total length, of a run whose size is chosen',
    unit: 'ohm^0.5*mm*m^0.5',
    per: ['wire'],
    across: 'run',
    formula: 'auto*SQRT(hot_rho*way_length*group_length)',
    source: PHYSICS,
  },
  way_share: {
    symbol: 'Σ√/R′',
    label: 'Sum of the roots over the resistance that is left, 0 when nothing is left',
    unit: 'ohm^-0.5*mm*m^0.5',
    per: ['wire'],
    formula: 'IF(way_budget>0, SUM(way_root[run])/way_budget, 0)',
    source: PHYSICS,
  },
  short_area: {
    symbol: 'S_k',
    label: 'Area by the share of the resistance of a short with the least copper',
    unit: 'mm^2',
    per: ['run'],
    formula: 'SUMPRODUCT(MAX(way_root[wire]*way_share[wire]))/group_length',
    source: PHYSICS,
  },
  enough_both: {
    symbol: 'ok_2',
    label: 'Candidate suits and has the area of both shares (1) or not (0)',
    unit: '1',
    per: ['run'],
    across: 'candidate',
    formula: 'IF(enough_area=1, IF(parallel*candidate_area>=short_area, 1, 0), 0)',
    source: DEFINITION,
  },
  by_shares: {
    symbol: 'c_2',
    label: 'Least candidate that suits and has the area of both shares',
    unit: '1',
    per: ['run'],
    formula:
      'IF(auto=1, IFERROR(MATCH(1, enough_both[candidate], 0), last_suiting), COUNT(candidate_no[candidate]))',
    source: DEFINITION,
  },
  group_start: {
    symbol: 'c_L',
    label: 'The same, the largest of all runs that take one size, as far as each can take it',
    unit: '1',
    per: ['run'],
    formula: 'IF(auto=1, SUMPRODUCT(MAX((lead[run]=lead)*by_shares[run])), by_shares)',
    source: DEFINITION,
  },
  group_last: {
    symbol: 'c_L,max',
    label: 'Largest candidate that suits every run that takes this size',
    unit: '1',
    per: ['run'],
    formula: 'IF(auto=1, last_common, COUNT(candidate_no[candidate]))',
    source: DEFINITION,
  },
  last_common: {
    symbol: 'c_L,com',
    label: 'Least of the largest suiting candidates of the runs that take one size',
    unit: '1',
    per: ['run'],
    formula:
      'COUNT(candidate_no[candidate])-SUMPRODUCT(MAX((lead[run]=lead)*(COUNT(candidate_no[candidate])-last_suiting[run])))',
    source: DEFINITION,
  },
} as const satisfies Quantities;
