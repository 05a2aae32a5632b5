/** Fuse against conductor: the gates of the fuse against the time that each conductor endures. */
import type { Quantities } from '../basis/quantity.ts';
import { ARBITRARY, PHYSICS } from '../basis/sources.ts';
import { enduring, type Heated, opening, timeConstant } from './curve-formulas.ts';
import { protectorOf } from './route.ts';

const RUN: Heated = { amps: 'ampacity', load_T: 'load_T', theta: 'theta' };
const known = (formula: string): string =>
  `IF(ISNUMBER(run_fuse), IF(ISNUMBER(ampacity), IF(ISNUMBER(start_fault), ${formula}, ""), ""), "")`;

export const protection = {
  protector: {
    kind: 'structure',
    symbol: 'F',
    label: 'Number of the conductor whose fuse protects this one, 0 for none',
    unit: '1',
    per: ['wire'],
    value: (at, layout) => protectorOf(at.wire, layout) + 1,
    note: 'Its own fuse, or the nearest before it among the feed runs that carry all of its coils.',
  },
  own_fuse: {
    kind: 'formula',
    symbol: 'I_n',
    label: 'Rating of the fuse in the run of this conductor',
    unit: 'A',
    per: ['wire'],
    formula: 'fuse_rating',
  },
  own_type: {
    kind: 'formula',
    symbol: 'type',
    label: 'Type of that fuse',
    unit: 'text',
    per: ['wire'],
    formula: 'IF(fused=1, fuse_type, "")',
  },
  nearest_fuse: {
    kind: 'formula',
    symbol: 'I_n,F',
    label: 'Rating of the fuse that protects this conductor',
    unit: 'A',
    per: ['wire'],
    formula: 'IF(protector>0, INDEX(own_fuse[wire], protector, 1), "")',
  },
  run_fuse: {
    kind: 'formula',
    symbol: 'I_n,F',
    label: 'Rating of the fuse that protects the run, the largest if there are several',
    unit: 'A',
    per: ['run'],
    formula: 'IF(COUNT(nearest_fuse[wire of run])>0, MAX(nearest_fuse[wire of run]), "")',
  },
  run_fuse_type: {
    kind: 'formula',
    symbol: 'n_t',
    label: 'Row of its type in the list of types',
    unit: '1',
    per: ['run'],
    formula:
      'IF(ISNUMBER(run_fuse), MATCH(INDEX(own_type[wire], INDEX(protector[wire of run], ' +
      'MATCH(run_fuse, nearest_fuse[wire of run], 0), 1), 1), type_name[fuse_type], 0), "")',
  },
  unfused: {
    kind: 'formula',
    symbol: 'n_0',
    label: 'Conductors of the run that no fuse protects',
    unit: '1',
    per: ['run'],
    formula: 'COUNT(wire_length[wire of run])-COUNT(nearest_fuse[wire of run])',
  },
  breaking: {
    kind: 'formula',
    symbol: 'I_b',
    label: 'Breaking capacity of the fuse',
    unit: 'A',
    per: ['run'],
    formula: 'IF(fused=1, INDEX(type_breaking[fuse_type], MATCH(fuse_type, type_name[fuse_type], 0), 1), "")',
  },
  gate_current: {
    kind: 'formula',
    symbol: 'I_g',
    label: 'Gate of the fuse that protects the run: current',
    unit: 'A',
    per: ['run'],
    across: 'gate',
    formula:
      'IF(ISNUMBER(run_fuse), run_fuse*INDEX(type_multiple[fuse_type,gate], run_fuse_type, gate_no), "")',
  },
  gate_slowest: {
    kind: 'formula',
    symbol: 't_max',
    label: 'Gate: opens at the latest after',
    unit: 's',
    shown: 's',
    per: ['run'],
    across: 'gate',
    formula:
      'IF(ISNUMBER(run_fuse), IF(gate_no=1, for_ever, INDEX(type_slowest[fuse_type,gate], run_fuse_type, gate_no)), "")',
    note: 'At the first gate the fuse must hold: it need never open.',
  },
  gate_fastest: {
    kind: 'formula',
    symbol: 't_min',
    label: 'Gate: opens not before',
    unit: 's',
    shown: 's',
    per: ['run'],
    across: 'gate',
    formula: 'IF(ISNUMBER(run_fuse), INDEX(type_fastest[fuse_type,gate], run_fuse_type, gate_no), "")',
  },
  overload_limit: {
    kind: 'formula',
    symbol: 'T_6h',
    label: 'Temperature limit of a 6 h overload',
    unit: 'degC',
    per: ['run'],
    formula:
      'INDEX(insulation_overload[insulation], MATCH(run_insulation, insulation_name[insulation], 0), 1)',
  },
  short_limit: {
    kind: 'formula',
    symbol: 'T_5s',
    label: 'Temperature limit of a short circuit up to 5 s',
    unit: 'degC',
    per: ['run'],
    formula: 'INDEX(insulation_short[insulation], MATCH(run_insulation, insulation_name[insulation], 0), 1)',
  },
  load_T: {
    kind: 'formula',
    symbol: 'T_0',
    label: 'Conductor temperature from which a fault heats on',
    unit: 'degC',
    per: ['run'],
    formula: 'IF(COUNT(wire_T[wire of run])>0, MAX(wire_T[wire of run]), run_ambient)',
  },
  theta: {
    kind: 'formula',
    symbol: 'θ',
    label: 'Thermal time constant of the conductor',
    unit: 's',
    shown: 's',
    per: ['run'],
    formula: `IF(ISNUMBER(ampacity), IF(ampacity>0, ${timeConstant('area', 'ampacity', 'INDEX(size_ohm[size], gauge_row, 1)')}, 0), 0)`,
    source: PHYSICS,
    note: 'One time constant, with the resistance at the rating of the insulation.',
  },
  end_opening: {
    kind: 'formula',
    symbol: 't_k',
    label: 'Latest opening on a short at the far end of the run',
    unit: 's',
    shown: 's',
    per: ['run'],
    formula: `IF(ISNUMBER(run_fuse), IF(ISNUMBER(end_fault), ${opening('end_fault', 'gate_slowest[gate]')}, ""), "")`,
  },
  wire_opening: {
    kind: 'formula',
    symbol: 't_k',
    label: 'Latest opening of its fuse on a short at its far end',
    unit: 's',
    shown: 's',
    per: ['wire'],
    formula: `IF(ISNUMBER(nearest_fuse), IF(ISNUMBER(fault_min), ${opening('fault_min', 'gate_slowest[gate]')}, ""), "")`,
    note: 'By the gates of the largest fuse that protects a conductor of the run.',
  },
  fuse_opens: {
    kind: 'formula',
    symbol: 't_k',
    label: 'Latest opening of the fuse on the smallest fault current of everything behind it',
    unit: 's',
    shown: 's',
    per: ['wire'],
    formula:
      'IF(fused=1, IF(SUMPRODUCT((protector[wire]=wire_no)*1)>SUMPRODUCT((protector[wire]=wire_no)*(opening_known[wire])), "", ' +
      'SUMPRODUCT(MAX((protector[wire]=wire_no)*opening_or_0[wire]))), "")',
  },
  wire_no: {
    kind: 'structure',
    symbol: 'w',
    label: 'Number of the conductor',
    unit: '1',
    per: ['wire'],
    value: (at) => at.wire + 1,
  },
  opening_known: {
    kind: 'formula',
    symbol: 'kn',
    label: 'Its opening time is known (1) or not (0)',
    unit: '1',
    per: ['wire'],
    formula: 'IF(ISNUMBER(wire_opening), 1, 0)',
  },
  opening_or_0: {
    kind: 'formula',
    symbol: 't_k',
    label: 'Its opening time, 0 when it is not known',
    unit: 's',
    shown: 's',
    per: ['wire'],
    formula: 'IF(ISNUMBER(wire_opening), wire_opening, 0)',
  },
  stuck_current: {
    kind: 'formula',
    symbol: 'I_st',
    label: 'Current of one coil whose driver stays on, at the highest supply',
    unit: 'A',
    formula:
      'IF(ISNUMBER(current_limit), MIN(current_limit, (highest_supply-driver_drop)/coil_ohm), (highest_supply-driver_drop)/coil_ohm)',
    source: PHYSICS,
    note: 'It flows without end, through the branch of one coil and everything before it.',
  },
  sweep_low: {
    kind: 'formula',
    symbol: 'I_lo',
    label: 'The curves are compared from this current on',
    unit: 'A',
    per: ['feed'],
    formula: 'IF(ISNUMBER(run_fuse), INDEX(gate_current[gate], 1, 1), "")',
    note: 'The first gate, 1.1 times the rating.',
  },
  sweep_high: {
    kind: 'formula',
    symbol: 'I_hi',
    label: 'and up to this one',
    unit: 'A',
    per: ['feed'],
    formula: known('MAX(start_fault, sweep_low)'),
    note: 'The largest fault current.',
  },
  overload_begins: {
    kind: 'formula',
    symbol: 'I_6h',
    label: 'Current from which the conductor passes its overload limit in the end',
    unit: 'A',
    per: ['run'],
    formula:
      'IF(ISNUMBER(ampacity), IF(ampacity>0, ampacity*SQRT((overload_limit-run_ambient)/(rating-run_ambient)), 0), "")',
    source: PHYSICS,
  },
  short_begins: {
    kind: 'formula',
    symbol: 'I_5s',
    label: 'Current from which the conductor passes its short-circuit limit in the end',
    unit: 'A',
    per: ['run'],
    formula:
      'IF(ISNUMBER(ampacity), IF(ampacity>0, ampacity*SQRT((short_limit-run_ambient)/(rating-run_ambient)), 0), "")',
    source: PHYSICS,
  },
  step: {
    kind: 'formula',
    symbol: 'I_k',
    label: 'Steps, gates and limits, not yet in order',
    unit: 'A',
    per: ['feed', 'grid'],
    formula:
      'IF(ISNUMBER(sweep_high), MIN(sweep_high, MAX(sweep_low, IF(grid_no<=grid_steps, ' +
      'sweep_low*(sweep_high/sweep_low)^((grid_no-1)/(grid_steps-1)), IF(grid_no<=grid_steps+COUNT(gate_no[gate]), ' +
      'INDEX(gate_current[gate], 1, grid_no-grid_steps), IF(grid_no-grid_steps-COUNT(gate_no[gate])<=3, ' +
      'overload_begins*(1+above_limit*(grid_no-grid_steps-COUNT(gate_no[gate])-1)), ' +
      'short_begins*(1+above_limit*(grid_no-grid_steps-COUNT(gate_no[gate])-4))))))), "")',
  },
  above_limit: {
    kind: 'constant',
    symbol: 'ε_I',
    label: 'Steps above the current at which a limit begins to matter, share of it',
    unit: '1',
    value: 0.004,
    source: PHYSICS,
    note: 'There the time that a conductor endures falls from infinity: two narrow steps keep the ends of a window sharp.',
  },
  curve_current: {
    kind: 'formula',
    symbol: 'I',
    label: 'Current',
    unit: 'A',
    per: ['feed', 'grid'],
    formula: 'IF(ISNUMBER(sweep_high), SMALL(step[grid], grid_no), "")',
  },
  curve_slowest: {
    kind: 'formula',
    symbol: 't_F,max',
    label: 'Fuse opens at the latest after (just above the current)',
    unit: 's',
    shown: 's',
    per: ['feed', 'grid'],
    formula: `IF(ISNUMBER(curve_current), ${opening('curve_current', 'gate_slowest[gate]', '<')}, "")`,
  },
  curve_fastest: {
    kind: 'formula',
    symbol: 't_F,min',
    label: 'Fuse opens not before',
    unit: 's',
    shown: 's',
    per: ['feed', 'grid'],
    formula:
      'IF(ISNUMBER(curve_current), IF(curve_current>=INDEX(gate_current[gate],1,COUNT(gate_current[gate])), ' +
      'INDEX(gate_fastest[gate],1,COUNT(gate_current[gate])), ' +
      'INDEX(gate_fastest[gate],1,MATCH(curve_current,gate_current[gate],1))*' +
      '(curve_current/INDEX(gate_current[gate],1,MATCH(curve_current,gate_current[gate],1)))^' +
      '(LN(INDEX(gate_fastest[gate],1,MATCH(curve_current,gate_current[gate],1)+1)/INDEX(gate_fastest[gate],1,MATCH(curve_current,gate_current[gate],1)))/' +
      'LN(INDEX(gate_current[gate],1,MATCH(curve_current,gate_current[gate],1)+1)/INDEX(gate_current[gate],1,MATCH(curve_current,gate_current[gate],1))))), "")',
  },
  curve_wire: {
    kind: 'formula',
    symbol: 't_w',
    label: 'Conductor endures it for',
    unit: 's',
    shown: 's',
    per: ['feed', 'grid'],
    formula: `IF(ISNUMBER(curve_current), ${enduring('curve_current', RUN)}, "")`,
    source: PHYSICS,
  },
  in_danger: {
    kind: 'formula',
    symbol: 'dgr',
    label: 'Conductor is not protected just above this current (1) or is (0)',
    unit: '1',
    per: ['feed', 'grid'],
    formula: 'IF(ISNUMBER(curve_current), IF(curve_slowest>curve_wire, 1, 0), "")',
  },
  danger_begins: {
    kind: 'formula',
    symbol: 'I_a',
    label: 'A window begins at this current',
    unit: 'A',
    per: ['feed', 'grid'],
    formula:
      'IF(ISNUMBER(curve_current), IF(in_danger=1, IF(ISNUMBER(in_danger[grid-1]), IF(in_danger[grid-1]=0, ' +
      'IF(curve_wire[grid-1]>=for_ever, curve_current[grid-1], IF(curve_wire>0, ' +
      'curve_current[grid-1]*(curve_current/curve_current[grid-1])^(LN(curve_slowest[grid-1]/curve_wire[grid-1])/' +
      '(LN(curve_slowest[grid-1]/curve_wire[grid-1])-LN(curve_slowest/curve_wire))), curve_current)), ""), curve_current), ""), "")',
    note: 'Between two steps straight in the logarithms.',
  },
  danger_ends: {
    kind: 'formula',
    symbol: 'I_e',
    label: 'A window ends at this current',
    unit: 'A',
    per: ['feed', 'grid'],
    formula:
      'IF(ISNUMBER(curve_current), IF(ISNUMBER(in_danger[grid-1]), IF(in_danger[grid-1]=1, IF(in_danger=0, ' +
      'IF(curve_slowest[grid-1]>=for_ever, curve_current, ' +
      'curve_current[grid-1]*(curve_current/curve_current[grid-1])^(LN(curve_slowest[grid-1]/curve_wire[grid-1])/' +
      '(LN(curve_slowest[grid-1]/curve_wire[grid-1])-LN(curve_slowest/curve_wire)))), ' +
      'IF(grid_no=COUNT(grid_no[grid]), curve_current, "")), ""), ""), "")',
  },
  window_from: {
    kind: 'formula',
    symbol: 'I_from',
    label: 'Window without protection: from',
    unit: 'A',
    per: ['feed'],
    across: 'window',
    formula: 'IF(COUNT(danger_ends[grid])>=window_no, SMALL(danger_begins[grid], window_no), "")',
  },
  window_to: {
    kind: 'formula',
    symbol: 'I_to',
    label: 'Window without protection: to',
    unit: 'A',
    per: ['feed'],
    across: 'window',
    formula: 'IF(COUNT(danger_ends[grid])>=window_no, SMALL(danger_ends[grid], window_no), "")',
  },
  window_stuck: {
    kind: 'formula',
    symbol: 'st',
    label: 'A driver stuck on lies in the window (1) or not (0)',
    unit: '1',
    per: ['feed'],
    across: 'window',
    formula:
      'IF(ISNUMBER(window_from), IF(stuck_current>=window_from, IF(stuck_current<=window_to, 1, 0), 0), 0)',
  },
  window_short: {
    kind: 'formula',
    symbol: 'sh',
    label: 'A short along the run lies in the window (1) or not (0)',
    unit: '1',
    per: ['feed'],
    across: 'window',
    formula: 'IF(ISNUMBER(window_from), IF(start_fault>=window_from, IF(end_fault<=window_to, 1, 0), 0), 0)',
    note: 'A short draws between the smallest and the largest fault current of the run.',
  },
  stuck_opening: {
    kind: 'formula',
    symbol: 't_st',
    label: 'Latest opening of the fuse on the current of a driver stuck on',
    unit: 's',
    shown: 's',
    per: ['run'],
    formula: `IF(ISNUMBER(run_fuse), ${opening('stuck_current', 'gate_slowest[gate]')}, for_ever)`,
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
    label: 'Cure: sizes of the series whose ampacity is not below the fuse',
    unit: '1',
    per: ['feed'],
    formula:
      'IF(ISNUMBER(run_fuse), SUMPRODUCT(ISNUMBER(candidate_amps[candidate])*(candidate_amps[candidate]>=run_fuse))-' +
      'IF(auto=1, 0, IF(ISNUMBER(ampacity), IF(ampacity>=run_fuse, 1, 0), 0)), 0)',
  },
  cure_gauge: {
    kind: 'formula',
    symbol: 'size',
    label: 'Cure: smallest size whose ampacity is not below the fuse',
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
  causes: {
    kind: 'formula',
    symbol: 'n_c',
    label: 'Credible causes of a current at which the conductor is not protected',
    unit: '1',
    per: ['feed'],
    formula: 'IF(ISNUMBER(sweep_high), SUM(window_stuck[window])+SUM(window_short[window]), "")',
  },
} as const satisfies Quantities;
