/**
 * Sizes that the model chooses itself, for the runs whose size is `auto`.
 *
 * 1. What a run must carry by itself gives its least size: ampacity against load and against its own fuse.
 * 2. The drop budget is shared so that the copper is least: S_i = (ρ_i/B′)·sqrt(I_i/n_i)·Σ L_j·sqrt(I_j·n_j), with the
 *    resistivity warm, for every firing, each run as at its worst point; the greatest need of each run is rounded up.
 * 3. A feed run takes at least the size that endures a short at its begin until its fuse opens. That hangs on the runs
 *    before it, so that there are three guesses: these as their share of the drop has them, as the cheapest of the first
 *    ways has them, and as thin as their load allows (see `survival.ts`).
 * 4. Rounding up leaves drop to spare, and in which order the runs are reduced decides how well it is used: several ways
 *    are gone from each guess, and from a start with the heaviest run thinner and the others thicker; the one with the
 *    least copper is taken among those that endure (see `trim.ts`).
 * 5. Run after run, in the order of the feed, each takes the smallest size that keeps every firing of every point within
 *    the drop limit and endures its shorts, the runs before it already at their last size. After that no run can be one
 *    size smaller.
 */
import type { Quantities } from '../basis/quantity.ts';
import { ARBITRARY, PHYSICS } from '../basis/sources.ts';
import { EVERY, FIRST_WAYS, mostFormula, roomFormula, WAYS } from './trim.ts';

/** Size that the cheapest of these ways has arrived at. */
const cheapest = (ways: readonly string[]): string =>
  ways.reduceRight(
    (otherwise, way) =>
      `IF(${way}_cost<=MIN(${ways.map((w) => `${w}_cost`).join(',')}), ${way}_size, ${otherwise})`,
    'rounded',
  );

export const sizing = {
  needed_amps: {
    kind: 'formula',
    symbol: 'I_a,req',
    label: 'Least ampacity: load and own fuse',
    unit: 'A',
    per: ['run'],
    formula: 'MAX(run_effective/wire_load_limit, IF(fused=1, fuse_rating, 0))',
  },
  fits_load: {
    kind: 'formula',
    symbol: 'ok',
    label: 'Candidate carries load and fuse and is not below the smallest size (1), or not (0)',
    unit: '1',
    per: ['run'],
    across: 'candidate',
    formula:
      'IF(candidate_no=COUNT(candidate_no[candidate]), 1-auto, IF(ISNUMBER(candidate_amps), ' +
      'IF(candidate_amps>=needed_amps, IF(INDEX(size_area[size], candidate_size, 1)>=smallest_area, 1, 0), 0), 0))',
  },
  run_length: {
    kind: 'formula',
    symbol: 'Σℓ',
    short: 'All together',
    label: 'Length of all conductors of the run together',
    unit: 'm',
    per: ['run'],
    formula: 'SUM(wire_length[wire of run])',
  },
  hot_T: {
    kind: 'formula',
    symbol: 'T_h',
    label: 'Temperature of a conductor at the largest load allowed',
    unit: 'degC',
    per: ['run'],
    formula: 'IF(run_ambient<rating, run_ambient+(rating-run_ambient)*wire_load_limit^2, run_ambient)',
    source: PHYSICS,
  },
  hot_rho: {
    kind: 'formula',
    symbol: 'ρ_h',
    label: 'Resistivity at that temperature, with lay',
    unit: 'ohm*mm^2/m',
    per: ['run'],
    formula: 'rho_20*lay*(1+alpha_20*(hot_T-T_ref))',
  },
  ampere_metres: {
    kind: 'formula',
    symbol: 'Iℓ',
    label: 'Current times length in the run, on the path of this coil at its firing',
    unit: 'A*m',
    per: ['point', 'event'],
    across: 'run',
    formula:
      'SUMPRODUCT(MMULT(MMULT(flowing_at[event2], carried[event,wire of run])*carried[wire of run], wire_length[wire of run]))',
  },
  event_no: {
    kind: 'structure',
    symbol: 'k',
    label: 'Number of the firing in the cycle',
    unit: '1',
    per: ['event'],
    value: (at) => at.event + 1,
  },
  worst_metres: {
    kind: 'formula',
    symbol: 'Iℓ',
    label: 'Current times length in the run, at this firing, at the point where it is largest',
    unit: 'A*m',
    per: ['event'],
    across: 'run',
    formula: 'SUMPRODUCT(MAX((firing_event[point,event]=event_no)*ampere_metres[point,event]))',
  },
  worst_fixed_drop: {
    kind: 'formula',
    symbol: 'ΔV_fix',
    label: 'Drop of joints, fuses and relays at this firing, at the point where it is largest',
    unit: 'V',
    per: ['event'],
    formula: 'SUMPRODUCT(MAX((firing_event[point,event]=event_no)*fixed_drop[point,event]))',
  },
  common_fixed_ohm: {
    kind: 'formula',
    symbol: 'R_fix,jk',
    label: 'Resistance of joints, fuses and relays that the paths of the two coils have in common',
    unit: 'ohm',
    shown: 'mohm',
    per: ['event'],
    across: 'event2',
    formula: 'SUMPRODUCT(carries[wire], carries[wire,event=event2], wire_fixed_ohm[wire])',
  },
  fixed_drop: {
    kind: 'formula',
    symbol: 'ΔV_fix',
    label: 'Drop of joints, fuses and relays on the path of this coil at its firing',
    unit: 'V',
    per: ['point', 'event'],
    formula: 'SUMPRODUCT(common_fixed_ohm[event2], flowing_at[event2])',
  },
  wire_fixed_ohm: {
    kind: 'formula',
    symbol: 'R_fix',
    label: 'Resistance of joints, fuse and relay contact',
    unit: 'ohm',
    shown: 'mohm',
    per: ['wire'],
    formula: 'fixed_ohm',
  },
  stated_ohm: {
    kind: 'formula',
    symbol: 'r_s',
    label: 'Warm resistance of one metre of the size stated, 0 for a size to be chosen',
    unit: 'ohm/m',
    shown: 'mohm/m',
    per: ['run'],
    formula: 'IF(auto=1, 0, INDEX(candidate_ohm[candidate], 1, COUNT(candidate_no[candidate])))',
  },
  budget: {
    kind: 'formula',
    symbol: 'B′',
    label: 'Drop that is left to the runs whose size is chosen',
    unit: 'V',
    per: ['point', 'event'],
    formula: 'drop_limit-fixed_drop-SUMPRODUCT(MMULT(ampere_metres[run], stated_ohm[run]))',
  },
  worst_budget: {
    kind: 'formula',
    symbol: 'B′',
    label: 'Drop that is left to the runs whose size is chosen, each run as at its worst point',
    unit: 'V',
    per: ['event'],
    formula: 'drop_limit-worst_fixed_drop-SUMPRODUCT(MMULT(worst_metres[run], stated_ohm[run]))',
  },
  root: {
    kind: 'formula',
    symbol: '√',
    label: 'Root of resistivity, current times length and total length, of a run whose size is chosen',
    unit: 'V^0.5*mm*m^0.5',
    per: ['event'],
    across: 'run',
    formula: 'auto*SQRT(hot_rho*worst_metres*run_length)',
  },
  share: {
    kind: 'formula',
    symbol: 'Σ√/B′',
    label: 'Sum of the roots over the drop that is left, 0 when nothing is left',
    unit: 'V^-0.5*mm*m^0.5',
    per: ['event'],
    formula: 'IF(worst_budget>0, SUM(root[run])/worst_budget, 0)',
  },
  share_area: {
    kind: 'formula',
    symbol: 'S_i',
    label: 'Area by the share of the drop with the least copper',
    unit: 'mm^2',
    per: ['run'],
    formula: 'SUMPRODUCT(MAX(root[event]*share[event]))/run_length',
    source: PHYSICS,
    note: 'By minimising the copper Σ n·L·S under the drop Σ ρ·L·I/S = B′.',
  },
  rounded: {
    kind: 'formula',
    symbol: 'c₁',
    label: 'First guess of the candidate: load, share of the drop, short',
    unit: '1',
    per: ['run'],
    formula: 'IF(auto=1, MAX(by_load, by_short), by_load)',
  },
  by_load: {
    kind: 'formula',
    symbol: 'c₀',
    label: 'Candidate that carries the load and has this area, rounded up',
    unit: '1',
    per: ['run'],
    formula:
      'IF(auto=1, MIN(series_count, MAX(least, SUMPRODUCT((size_series[size]=series)*(size_area[size]<share_area))+1)), ' +
      'COUNT(candidate_no[candidate]))',
  },
  least: {
    kind: 'formula',
    symbol: 'c_min',
    label: 'Least candidate that carries load and fuse; one beyond the series when none does',
    unit: '1',
    per: ['run'],
    formula: 'IFERROR(MATCH(1, fits_load[candidate], 0), series_count+1)',
  },
  rounded_ohm: {
    kind: 'formula',
    symbol: 'r₀',
    label: 'Warm resistance of one metre of the first guess',
    unit: 'ohm/m',
    shown: 'mohm/m',
    per: ['run'],
    formula: 'INDEX(candidate_ohm[candidate], 1, rounded)',
  },
  first_size: {
    kind: 'formula',
    symbol: 'c₂',
    label: 'Candidate of the cheapest of the first ways',
    unit: '1',
    per: ['run'],
    formula: cheapest(FIRST_WAYS),
  },
  rounded_again: {
    kind: 'formula',
    symbol: 'c₃',
    label: 'Second guess of the candidate: load, share of the drop, short',
    unit: '1',
    per: ['run'],
    formula: 'IF(auto=1, MAX(by_load, by_short_again), by_load)',
  },
  rounded_again_ohm: {
    kind: 'formula',
    symbol: 'r₃',
    label: 'Warm resistance of one metre of the second guess',
    unit: 'ohm/m',
    shown: 'mohm/m',
    per: ['run'],
    formula: 'INDEX(candidate_ohm[candidate], 1, rounded_again)',
  },
  thin_size: {
    kind: 'formula',
    symbol: 'c_min',
    label: 'Third guess: the runs before, as thin as their load allows',
    unit: '1',
    per: ['run'],
    formula: 'IF(auto=1, MIN(series_count, least), by_load)',
  },
  rounded_thin: {
    kind: 'formula',
    symbol: 'c₁″',
    label: 'Third guess of the candidate: load, share of the drop, short',
    unit: '1',
    per: ['run'],
    formula: 'IF(auto=1, MAX(by_load, by_short_thin), by_load)',
  },
  rounded_thin_ohm: {
    kind: 'formula',
    symbol: 'r₁″',
    label: 'Warm resistance of one metre of the third guess',
    unit: 'ohm/m',
    shown: 'mohm/m',
    per: ['run'],
    formula: 'INDEX(candidate_ohm[candidate], 1, rounded_thin)',
  },
  weight: {
    kind: 'formula',
    symbol: 'V_Cu',
    label: 'Copper of the run by its share of the drop, 0 for a stated size',
    unit: 'mm^2*m',
    per: ['run'],
    formula: 'auto*share_area*run_length',
  },
  lean_start: {
    kind: 'formula',
    symbol: 'c₁‴',
    label: 'Candidate to start from: the heaviest run one size smaller than rounded, the others one larger',
    unit: '1',
    per: ['run'],
    formula:
      'IF(auto=1, MIN(series_count, MAX(least, by_short_again, ' +
      'IF(weight>=MAX(weight[run]), rounded_again-1, rounded_again+1))), by_load)',
  },
  lean_start_ohm: {
    kind: 'formula',
    symbol: 'r₁‴',
    label: 'Warm resistance of one metre of that start',
    unit: 'ohm/m',
    shown: 'mohm/m',
    per: ['run'],
    formula: 'INDEX(candidate_ohm[candidate], 1, lean_start)',
  },
  no_way: {
    kind: 'constant',
    symbol: '∞',
    label: 'Added to the copper of a way that does not end well',
    unit: 'mm^2*m',
    value: 1e9,
    source: ARBITRARY,
    note: 'More than any feed weighs.',
  },
  guess_size: {
    kind: 'formula',
    symbol: 'c₄',
    label: 'Candidate from which the runs are reduced a last time: the cheapest way',
    unit: '1',
    per: ['run'],
    formula: cheapest(WAYS),
  },
  guess_ohm_m: {
    kind: 'formula',
    symbol: 'r₂',
    label: 'Warm resistance of one metre of the candidate of the cheapest way',
    unit: 'ohm/m',
    shown: 'mohm/m',
    per: ['run'],
    formula: 'INDEX(candidate_ohm[candidate], 1, guess_size)',
  },
  room: {
    kind: 'formula',
    symbol: 'ΔV_i',
    label: 'Drop that the run may make, the runs before it at their last size',
    unit: 'V',
    per: ['point', 'event'],
    across: 'run',
    formula: roomFormula(EVERY, 'room', 'guess_ohm_m', 'chosen_ohm', '-1'),
  },
  largest_ohm: {
    kind: 'formula',
    symbol: 'r_max',
    label: 'Largest resistance of one metre that keeps every firing within the drop limit',
    unit: 'ohm/m',
    shown: 'mohm/m',
    per: ['run'],
    formula: mostFormula(EVERY, 'room'),
  },
  fits: {
    kind: 'formula',
    symbol: 'fit',
    label: 'Candidate carries load and fuse, keeps the drop limit and endures shorts (1), or not (0)',
    unit: '1',
    per: ['run'],
    across: 'candidate',
    formula:
      'IF(fits_load=1, IF(IF(fed=1, endures_start[feed of run]*endures_end[feed of run], 1)=1, ' +
      'IF(ISNUMBER(largest_ohm), IF(candidate_ohm<=largest_ohm, 1, 0), 1), 0), 0)',
  },
  chosen: {
    kind: 'formula',
    symbol: 'c',
    label: 'Candidate taken',
    unit: '1',
    per: ['run'],
    formula: 'IF(auto=1, IFERROR(MATCH(1, fits[candidate], 0), guess_size), COUNT(candidate_no[candidate]))',
    note: 'When no candidate keeps every rule the guess stays, and a finding says what would be needed.',
  },
  chosen_ohm: {
    kind: 'formula',
    symbol: 'r_c',
    label: 'Warm resistance of one metre of the candidate taken',
    unit: 'ohm/m',
    shown: 'mohm/m',
    per: ['run'],
    formula: 'INDEX(candidate_ohm[candidate], 1, chosen)',
  },
} as const satisfies Quantities;
