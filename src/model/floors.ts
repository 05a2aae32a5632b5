/** What a run must take by itself: load, own fuse, smallest and largest size, stock, shorts, a driver that stays on. */
import type { Formula, Quantities } from '../basis/quantity.ts';
import { DEFINITION, PHYSICS } from '../basis/sources.ts';
import { ending } from './stuck.ts';
import { SIZES } from './tables.ts';

const PER_CANDIDATE = { per: ['run'], across: 'candidate' } as const;

type RunFormula = Formula & { readonly per: readonly ['run'] };

const square = (of: string, which: string, mark: string): RunFormula => ({
  symbol: `I_st,${mark}²`,
  label: `Square of the effective current of the run with the ${which} of these currents`,
  unit: 'A^2',
  per: ['run'],
  formula: `IF(ISNUMBER(${of}), ${of}^2+2*${of}*others_average+others_square, "")`,
  source: PHYSICS,
});

const lasts = (of: string, which: string, mark: string): RunFormula => ({
  symbol: `t_st,${mark}`,
  label: `Time until the first fuse on the path opens on the ${which} of these currents`,
  unit: 's',
  shown: 's',
  per: ['run'],
  formula: `SUMPRODUCT(MAX((path_length[event]>0)*${of}_ends[event]))`,
  source: PHYSICS,
});

/** Temperature of a candidate after a time at an effective current: one time constant, from its temperature under load. */
const heated = (of: string, time: string): string => {
  const end = `run_ambient+size_heating*${of}`;
  return (
    `IF(ISNUMBER(${of}), IF(ISNUMBER(candidate_T), ${end}-` +
    `(${end}-candidate_T)*EXP(-${time}/candidate_theta), ""), "")`
  );
};

export const floors = {
  needed_amps: {
    symbol: 'I_a,req',
    label: 'Least ampacity: load and own fuse',
    unit: 'A',
    per: ['run'],
    formula: 'MAX(run_effective/wire_load_limit, IF(fused=1, fuse_rating, 0))',
    source: DEFINITION,
    note: 'A chosen conductor carries its own fuse; up to 1.5 times its ampacity is allowed, and is advice.',
  },
  pinned: {
    symbol: 'n_pin',
    label:
      'Row of the size that was found for the least price, 0 where the size is chosen for the least copper',
    unit: '1',
    per: ['run'],
    value: (at, { pins }) => SIZES.findIndex(({ name }) => name === pins?.[at.run]) + 1,
    note: 'It is found when the workbook is made, and does not follow its inputs: what fails then says so.',
  },
  reachable: {
    symbol: 'ok_R',
    label: 'Candidate is in stock, and the one that was found where one was (1), or not (0)',
    unit: '1',
    ...PER_CANDIDATE,
    formula:
      'IF(ISNUMBER(candidate_size), IF(pinned=0, INDEX(in_stock[size,insulation], candidate_size, insulation_row), IF(pinned=candidate_size, 1, 0)), 0)',
    source: DEFINITION,
  },
  offered: {
    symbol: 'ok_S',
    label: 'Candidate lies between the smallest and the largest size, and is in stock (1), or not (0)',
    unit: '1',
    ...PER_CANDIDATE,
    formula:
      'IF(ISNUMBER(candidate_area), IF(candidate_area>=smallest_area, IF(candidate_area<=highest_area*(1+alike), ' +
      'reachable, 0), 0), 0)',
    source: DEFINITION,
  },
  fits_load: {
    symbol: 'ok_L',
    label:
      'Candidate carries load and fuse, lies between the smallest and the largest size, and is in stock (1), or not (0)',
    unit: '1',
    ...PER_CANDIDATE,
    formula:
      'IF(candidate_no=COUNT(candidate_no[candidate]), 1-auto, ' +
      'IF(ISNUMBER(candidate_amps), IF(parallel*candidate_amps>=needed_amps, offered, 0), 0))',
    source: DEFINITION,
  },
  by_load: {
    symbol: 'c_0',
    label: 'Least candidate that does; the last one of the series when none does',
    unit: '1',
    per: ['run'],
    formula:
      'IF(auto=1, IFERROR(MATCH(1, fits_load[candidate], 0), series_count), COUNT(candidate_no[candidate]))',
    source: DEFINITION,
  },
  bare_ohm: {
    symbol: 'r_s',
    label: 'Cold resistance of one metre of a stated size, 0 for a size to be chosen',
    unit: 'ohm/m',
    shown: 'mohm/m',
    per: ['run'],
    formula: 'IF(auto=1, 0, INDEX(candidate_cold[candidate], 1, COUNT(candidate_no[candidate])))',
    source: DEFINITION,
  },
  floor_ohm: {
    symbol: 'r_0',
    label: 'Cold resistance of one metre, as thin as load and fuse allow',
    unit: 'ohm/m',
    shown: 'mohm/m',
    per: ['run'],
    formula: 'INDEX(candidate_cold[candidate], 1, by_load)',
    source: DEFINITION,
  },
  path_fixed: {
    symbol: 'R_fix',
    label: 'Resistance of joints, fuses and relays on the coil’s path',
    unit: 'ohm',
    shown: 'mohm',
    per: ['event'],
    formula: 'SUMPRODUCT(MMULT(carried[wire], wire_fixed_ohm[wire]))',
    source: DEFINITION,
  },
  ceiling_amps: {
    symbol: 'I_st,hi',
    label: 'Driver stuck on: current of the coil when the copper to be chosen is left out',
    unit: 'A',
    per: ['event'],
    formula:
      'IF(ISNUMBER(stuck_ohm), MIN(driver_limit, stuck_volts/(stuck_ohm+path_fixed+' +
      'SUMPRODUCT(MMULT(path_length[run], bare_ohm[run])))), "")',
    source: PHYSICS,
    note: 'No choice of sizes draws more.',
  },
  floor_amps: {
    symbol: 'I_st,lo',
    label: 'Driver stuck on: current of the coil with every size as thin as load and fuse allow',
    unit: 'A',
    per: ['event'],
    formula:
      'IF(ISNUMBER(stuck_ohm), MIN(driver_limit, stuck_volts/(stuck_ohm+path_fixed+' +
      'SUMPRODUCT(MMULT(path_length[run], floor_ohm[run])))), "")',
    source: PHYSICS,
    note: 'No choice of sizes draws less.',
  },
  ...ending('floor', 'Least current of a driver stuck on', 'lo'),
  ...ending('ceiling', 'Largest current of a driver stuck on', 'hi'),
  ceiling: {
    symbol: 'I_st,hi,r',
    label: 'Largest current of one coil whose driver stays on, whatever the sizes',
    unit: 'A',
    per: ['run'],
    formula: 'IF(ISNUMBER(stuck_ohm), SUMPRODUCT(MAX((path_length[event]>0)*ceiling_amps[event])), "")',
    source: PHYSICS,
  },
  floor: {
    symbol: 'I_st,lo,r',
    label: 'Least current of one coil whose driver stays on, whatever the sizes',
    unit: 'A',
    per: ['run'],
    formula:
      'IF(ISNUMBER(stuck_ohm), ceiling-SUMPRODUCT(MAX((path_length[event]>0)*(ceiling-floor_amps[event]))), "")',
    source: PHYSICS,
  },
  ceiling_square: square('ceiling', 'largest', 'hi'),
  floor_square: square('floor', 'least', 'lo'),
  ceiling_lasts: lasts('ceiling', 'largest', 'hi'),
  floor_lasts: lasts('floor', 'least', 'lo'),
  size_heating: {
    symbol: 'h_c',
    label: 'Rise of the candidate above ambient in the end, for each square of the current of the run',
    unit: 'K/A^2',
    ...PER_CANDIDATE,
    formula: 'IF(ISNUMBER(candidate_T), (rating-run_ambient)/(parallel*candidate_amps)^2, "")',
    source: PHYSICS,
  },
  worst_T: {
    symbol: 'T_st',
    label:
      'Temperature of the candidate at the largest of these currents and after the longest of these times',
    unit: 'degC',
    ...PER_CANDIDATE,
    formula: heated('ceiling_square', 'floor_lasts'),
    source: PHYSICS,
    note: 'No choice of sizes makes it hotter.',
  },
  ceiling_T: {
    symbol: 'T_hi',
    label: 'Temperature of the candidate when the first fuse has opened on the largest of these currents',
    unit: 'degC',
    ...PER_CANDIDATE,
    formula: heated('ceiling_square', 'ceiling_lasts'),
    source: PHYSICS,
  },
  floor_T: {
    symbol: 'T_lo',
    label: 'Temperature of the candidate when the first fuse has opened on the least of these currents',
    unit: 'degC',
    ...PER_CANDIDATE,
    formula: heated('floor_square', 'floor_lasts'),
    source: PHYSICS,
  },
  stuck_limit: {
    symbol: 'T_st,max',
    label: 'Temperature limit for the longest of these times',
    unit: 'degC',
    per: ['run'],
    formula: 'IF(floor_lasts<=open_limit, short_limit, overload_limit)',
    source: DEFINITION,
  },
  bend_T: {
    symbol: 'ΔT_b',
    label: 'By how much the candidate may be hotter between both ends of the range of currents',
    unit: 'K',
    ...PER_CANDIDATE,
    formula: 'IF(ISNUMBER(worst_T), (worst_T-run_ambient)*LN(floor_lasts/ceiling_lasts)^2/(2*3*4), "")',
    source: PHYSICS,
    note:
      'With a time t ∝ I⁻ⁿ the temperature bends down by n²·x·(x−1)·e⁻ˣ of the rise, x = t/θ, at most a third of n²; between the ends of ' +
      'a range of width w in the logarithm it stands above them by an eighth of that times w², and n·w is the logarithm of both times.',
  },
  between_T: {
    symbol: 'T_st,b',
    label: 'Temperature of the candidate at any current of the range, at most',
    unit: 'degC',
    ...PER_CANDIDATE,
    formula: 'IF(ISNUMBER(worst_T), MIN(worst_T, MAX(floor_T, ceiling_T)+bend_T), "")',
    source: PHYSICS,
  },
  stuck_to: {
    symbol: 'I_st,to',
    label: 'Current of one coil up to which a slow fuse ends it in time for the candidate; 0 when none does',
    unit: 'A',
    ...PER_CANDIDATE,
    formula:
      'IF(ISNUMBER(worst_T), IF(floor_T+bend_T>stuck_limit, 0, IF(ceiling_T+bend_T<=stuck_limit, ceiling, ' +
      'floor*(ceiling/floor)^((stuck_limit-floor_T-bend_T)/(ceiling_T-floor_T)))), 0)',
    source: PHYSICS,
    note: 'Where the fuse takes far longer than the conductor needs to warm up a smaller current is the cooler one.',
  },
  stuck_ended: {
    symbol: 'ok_F',
    label:
      'A fuse ends the current of a driver stuck on in time for the candidate, whatever the sizes (1), or not (0)',
    unit: '1',
    ...PER_CANDIDATE,
    formula: 'IF(ISNUMBER(between_T), IF(between_T<=stuck_limit, 1, 0), 0)',
    source: DEFINITION,
  },
  stuck_from: {
    symbol: 'I_st,F',
    label: 'Current of one coil from which a fuse ends it in time for the candidate; empty when none does',
    unit: 'A',
    ...PER_CANDIDATE,
    formula:
      'IF(stuck_ended=1, floor, IF(ISNUMBER(worst_T), IF(ceiling_T>stuck_limit, "", IF(floor_T>stuck_limit, ' +
      'floor*(ceiling/floor)^((floor_T-stuck_limit)/(floor_T-ceiling_T)), ceiling)), ""))',
    source: PHYSICS,
    note: 'Straight between both ends of a narrow range, where the temperature falls ever more slowly: on the safe side.',
  },
  stuck_room: {
    symbol: 'R_st,max',
    label: 'Cold resistance of the path up to which a fuse ends a driver stuck on in time for the candidate',
    unit: 'ohm',
    shown: 'mohm',
    ...PER_CANDIDATE,
    formula:
      'IF(stuck_ended=1, unlimited, IF(ISNUMBER(stuck_from), stuck_volts/(stuck_from*(1+alike))-stuck_ohm, 0))',
    source: PHYSICS,
  },
  stuck_carried: {
    symbol: 'I_st,c',
    label: 'Current of one coil that the candidate carries continuously, beside the other coils and loads',
    unit: 'A',
    ...PER_CANDIDATE,
    formula:
      'IF(ISNUMBER(candidate_T), SQRT(MAX(0, others_average^2-others_square+(parallel*candidate_amps)^2*' +
      '(overload_limit-run_ambient)/(rating-run_ambient)))*(1-alike)-others_average, "")',
    source: PHYSICS,
    note: 'I² + 2·I·I_o + I_o² is the square that heats it to its overload limit.',
  },
  suits: {
    symbol: 'ok',
    label:
      'Candidate carries its load, is covered against shorts, and withstands a driver stuck on whatever the other sizes (1), or not (0)',
    unit: '1',
    ...PER_CANDIDATE,
    formula:
      'IF(fits_load=1, IF(loop_most>0, IF(ISNUMBER(ceiling), IF(stuck_carried>=ceiling, 1, stuck_ended), 1), 0), 0)',
    source: DEFINITION,
  },
} as const satisfies Quantities;
