/** Currents at which a conductor is not protected: both curves over a grid of currents, and what lies in the gaps. */
import type { Quantities } from '../basis/quantity.ts';
import { ARBITRARY, DEFINITION, PHYSICS } from '../basis/sources.ts';
import { atGate, FASTEST, gateBelow, opening, RUN, withstanding } from './curve-formulas.ts';

const known = (formula: string): string =>
  `IF(ISNUMBER(run_fuse_type), IF(ISNUMBER(ampacity), IF(ISNUMBER(start_fault), ${formula}, ""), ""), "")`;

export const windows = {
  sweep_low: {
    kind: 'formula',
    symbol: 'I_lo',
    label: 'The curves are compared from this current on',
    unit: 'A',
    per: ['feed'],
    formula: 'IF(ISNUMBER(run_fuse_type), INDEX(gate_current[gate], 1, 1), "")',
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
    per: ['grid'],
    across: 'feed',
    formula:
      'IF(ISNUMBER(sweep_high), MIN(sweep_high, MAX(sweep_low, IF(grid_no<=grid_steps, ' +
      'sweep_low*(sweep_high/sweep_low)^((grid_no-1)/(grid_steps-1)), IF(grid_no<=grid_steps+COUNT(gate_no[gate]), ' +
      'INDEX(gate_current[gate], 1, grid_no-grid_steps), IF(grid_no-grid_steps-COUNT(gate_no[gate])<=near_steps, ' +
      'overload_begins*(1+above_limit*(grid_no-grid_steps-COUNT(gate_no[gate])-1)^2), ' +
      'short_begins*(1+above_limit*(grid_no-grid_steps-COUNT(gate_no[gate])-near_steps-1)^2)))))), "")',
  },
  above_limit: {
    kind: 'constant',
    symbol: 'ε_I',
    label: 'First step above the current at which a limit begins to matter, share of it',
    unit: '1',
    value: 0.003,
    source: ARBITRARY,
    note: 'There the time that a conductor endures falls from infinity: steps that widen with their square keep the ends of a window sharp.',
  },
  curve_current: {
    kind: 'formula',
    symbol: 'I',
    label: 'Current',
    unit: 'A',
    per: ['grid'],
    across: 'feed',
    formula: 'IF(ISNUMBER(sweep_high), SMALL(step[grid], grid_no), "")',
  },
  curve_gate: {
    kind: 'formula',
    symbol: 'g',
    label: 'Gate at or below it',
    unit: '1',
    per: ['grid'],
    across: 'feed',
    formula: `IF(ISNUMBER(curve_current), ${gateBelow('curve_current')}, "")`,
  },
  curve_slowest: {
    kind: 'formula',
    symbol: 't_F,max',
    label: 'Fuse opens at the latest after (just above the current)',
    unit: 's',
    shown: 's',
    per: ['grid'],
    across: 'feed',
    formula: `IF(ISNUMBER(curve_current), ${opening('curve_current', 'curve_gate', '<')}, "")`,
  },
  curve_fastest: {
    kind: 'formula',
    symbol: 't_F,min',
    label: 'Fuse opens not before',
    unit: 's',
    shown: 's',
    per: ['grid'],
    across: 'feed',
    formula: `IF(ISNUMBER(curve_current), IF(curved=0, ${atGate('curve_current', 'curve_gate', FASTEST)}, ""), "")`,
    source: PHYSICS,
    note: 'Empty for a fuse that is read from a curve of longest times.',
  },
  curve_wire: {
    kind: 'formula',
    symbol: 't_w',
    label: 'Conductor endures it for',
    unit: 's',
    shown: 's',
    per: ['grid'],
    across: 'feed',
    formula: `IF(ISNUMBER(curve_current), ${withstanding('curve_current', RUN)}, "")`,
    source: PHYSICS,
  },
  in_danger: {
    kind: 'formula',
    symbol: 'dgr',
    label: 'Conductor is not protected just above this current (1) or is (0)',
    unit: '1',
    per: ['grid'],
    across: 'feed',
    formula: 'IF(ISNUMBER(curve_current), IF(curve_slowest>curve_wire, 1, 0), "")',
  },
  danger_begins: {
    kind: 'formula',
    symbol: 'I_a',
    label: 'A window begins at this current',
    unit: 'A',
    per: ['grid'],
    across: 'feed',
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
    per: ['grid'],
    across: 'feed',
    formula:
      'IF(ISNUMBER(curve_current), IF(in_danger=1, IF(grid_no=COUNT(grid_no[grid]), curve_current, ""), ' +
      'IF(ISNUMBER(in_danger[grid-1]), IF(in_danger[grid-1]=1, IF(curve_slowest[grid-1]>=for_ever, curve_current, ' +
      'IF(curve_wire[grid-1]>0, ' +
      'curve_current[grid-1]*(curve_current/curve_current[grid-1])^(LN(curve_slowest[grid-1]/curve_wire[grid-1])/' +
      '(LN(curve_slowest[grid-1]/curve_wire[grid-1])-LN(curve_slowest/curve_wire))), curve_current)), ""), "")), "")',
    note: 'A window that is still open at the largest fault current ends there.',
  },
  window_from: {
    kind: 'formula',
    symbol: 'I_from',
    short: 'Not protected from',
    label: 'Window without protection: from',
    unit: 'A',
    per: ['feed'],
    across: 'window',
    formula: 'IF(COUNT(danger_ends[grid])>=window_no, SMALL(danger_begins[grid], window_no), "")',
  },
  window_to: {
    kind: 'formula',
    symbol: 'I_to',
    short: 'to',
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
      'IF(ISNUMBER(window_from), IF(ISNUMBER(stuck_current), IF(stuck_current>=window_from, ' +
      'IF(stuck_current<=window_to, 1, 0), 0), 0), 0)',
    source: DEFINITION,
    note: 'For the pictures: the rule on a driver stuck on counts what else flows in the run, and every fuse on the path.',
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
  end_withstood: {
    kind: 'formula',
    symbol: 't_e',
    label: 'A conductor of the run withstands a short at its far end for',
    unit: 's',
    shown: 's',
    per: ['feed'],
    formula: known(withstanding('end_fault', RUN)),
    source: PHYSICS,
  },
  start_gate: {
    kind: 'formula',
    symbol: 'g',
    label: 'Opening-time limit of the fuse at or below the short at the start of the run',
    unit: '1',
    per: ['feed'],
    formula: `IF(ISNUMBER(run_fuse_type), IF(ISNUMBER(start_fault), ${gateBelow('start_fault')}, 0), 0)`,
    source: DEFINITION,
  },
  start_opening: {
    kind: 'formula',
    symbol: 't_s',
    label: 'Latest opening on a short at the start of the run',
    unit: 's',
    shown: 's',
    per: ['feed'],
    formula: `IF(ISNUMBER(run_fuse_type), IF(ISNUMBER(start_fault), ${opening('start_fault', 'start_gate')}, ""), "")`,
    source: PHYSICS,
  },
  start_withstood: {
    kind: 'formula',
    symbol: 't_e',
    label: 'A conductor of the run withstands a short at its start for',
    unit: 's',
    shown: 's',
    per: ['feed'],
    formula: known(withstanding('start_fault', RUN)),
    source: PHYSICS,
  },
  gate_withstood: {
    kind: 'formula',
    symbol: 't_e',
    label: 'A conductor of the run withstands the current of this opening-time limit for',
    unit: 's',
    shown: 's',
    per: ['feed'],
    across: 'gate',
    formula: known(withstanding('gate_current', RUN)),
    source: PHYSICS,
  },
  gate_fails: {
    kind: 'formula',
    symbol: 'x',
    label: 'A short may draw this current, and the fuse is slower than the conductor (1), or not (0)',
    unit: '1',
    per: ['feed'],
    across: 'gate',
    formula: known(
      'IF(gate_current>MAX(end_fault, INDEX(gate_current[gate],1,2)), IF(gate_current<start_fault, ' +
        'IF(gate_slowest>gate_withstood, 1, 0), 0), 0)',
    ),
    source: DEFINITION,
    note: 'Between two limits both curves are nearly straight in the logarithms, and the worst stands at an end.',
  },
  causes: {
    kind: 'formula',
    symbol: 'n_x',
    label: 'Currents of a short, of those that are tried, at which the fuse is slower than the conductor',
    unit: '1',
    per: ['feed'],
    formula: known(
      'SUM(gate_fails[gate])+IF(ISNUMBER(end_opening), IF(end_opening>end_withstood, 1, 0), 1)+IF(start_opening>start_withstood, 1, 0)',
    ),
    source: DEFINITION,
    note: 'Tried are the smallest, the largest, and every opening-time limit of the fuse between them.',
  },
} as const satisfies Quantities;
