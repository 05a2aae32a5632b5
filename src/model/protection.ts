/** Which fuse protects which conductor, what its opening-time limits are, and when it opens on a short. */
import type { Layout, Quantities } from '../basis/quantity.ts';
import { AS_STATED, cite, DEFINITION, PHYSICS } from '../basis/sources.ts';
import { FUSE_PULSES } from '../data/fuses.ts';
import { ends, RANGES } from '../design/ranges.ts';
import { rowOf, timeConstant } from './curve-formulas.ts';
import { curveOf, protectorOf } from './route.ts';

/** The fewest pulses for which a share is printed. */
const FEW_PULSES = FUSE_PULSES.rows[0] as (typeof FUSE_PULSES.rows)[number];

/** Slope to the next limit in the logarithms; beyond the last one I²t stays. Empty where a time is not known. */
const slope = (time: string): string =>
  `IF(ISNUMBER(${time}), IF(opening_no<COUNT(opening_no[opening]), LN(${time}[opening+1]/${time})/LN(opening_current[opening+1]/opening_current), -2), "")`;

/** A point of the own curve of the fuse that protects the run, the first one behind its rating. */
const pointOf = (at: { run: number; opening: number }, layout: Layout) => {
  const wire = layout.wires.findIndex((w) => w.run === at.run);
  return layout.runs[curveOf(wire, layout) - 1]?.fuse?.curve?.[at.opening - 1];
};

export const protection = {
  protector: {
    symbol: 'F',
    label: 'Number of the conductor whose fuse protects this one, 0 for none',
    unit: '1',
    per: ['wire'],
    value: (at, layout) => protectorOf(at.wire, layout) + 1,
    note: 'Its own fuse, or the nearest before it among the feed runs that carry all of its coils.',
  },
  own_fuse: {
    symbol: 'I_n',
    label: 'Rating of the fuse in the run of this conductor',
    unit: 'A',
    per: ['wire'],
    exact: true,
    formula: 'fuse_rating',
    source: DEFINITION,
  },
  own_type: {
    symbol: 'type',
    label: 'Type of that fuse',
    unit: 'text',
    per: ['wire'],
    formula: 'IF(fused=1, fuse_type, "")',
    source: DEFINITION,
  },
  nearest_fuse: {
    symbol: 'I_n,F',
    label: 'Rating of the fuse that protects this conductor',
    unit: 'A',
    per: ['wire'],
    exact: true,
    formula: 'IF(protector>0, INDEX(own_fuse[wire], protector, 1), "")',
    source: DEFINITION,
  },
  run_fuse: {
    symbol: 'I_n,r',
    short: 'Fuse before it',
    label: 'Rating of the fuse that protects the run, the largest if there are several',
    unit: 'A',
    per: ['run'],
    exact: true,
    formula: 'IF(COUNT(nearest_fuse[wire of run])>0, MAX(nearest_fuse[wire of run]), "")',
    source: DEFINITION,
  },
  nearest_type: {
    symbol: 'n_t',
    label: 'Row of its type in the list of types',
    unit: '1',
    per: ['wire'],
    formula: 'IF(protector>0, MATCH(INDEX(own_type[wire], protector, 1), type_name[fuse_type], 0), "")',
    source: DEFINITION,
  },
  own_curve: {
    symbol: 'n_cv',
    label: 'Number of the run whose fuse protects this conductor by its maker’s curve, 0 for none',
    unit: '1',
    per: ['wire'],
    value: (at, layout) => curveOf(at.wire, layout),
  },
  curve_point: {
    symbol: 'I_cv',
    label: 'Maker’s curve of the fuse that protects the run: current',
    unit: 'A',
    per: ['run'],
    across: 'opening',
    value: (at, layout) => pointOf(at, layout)?.current ?? '',
    source: AS_STATED,
    note: 'Empty without one. It is changed in the design, not in the workbook.',
  },
  curve_within: {
    symbol: 't_cv',
    label: 'Maker’s curve: longest total clearing time',
    unit: 's',
    shown: 's',
    per: ['run'],
    across: 'opening',
    value: (at, layout) => pointOf(at, layout)?.within ?? '',
    source: AS_STATED,
  },
  curved: {
    symbol: 'cv',
    label: 'Fuse is read from its maker’s curve (1) or from the limits of its type (0)',
    unit: '1',
    per: ['run'],
    formula: 'IF(COUNT(curve_point[opening])>0, 1, 0)',
    source: DEFINITION,
  },
  mixed: {
    symbol: 'mix',
    label: 'The run lies behind fuses of different kinds (1) or not (0)',
    unit: '1',
    per: ['run'],
    formula:
      'IF((MIN(nearest_fuse[wire of run])<MAX(nearest_fuse[wire of run]))+' +
      '(MIN(nearest_type[wire of run])<MAX(nearest_type[wire of run]))+' +
      '(MIN(own_curve[wire of run])<MAX(own_curve[wire of run]))>0, 1, 0)',
    source: DEFINITION,
    note: 'Which of them is the slower one changes with the current: divide such a run, one for each fuse.',
  },
  run_fuse_type: {
    symbol: 'n_t,r',
    label: 'Row of the type of that fuse in the list of types, empty behind fuses of different kinds',
    unit: '1',
    per: ['run'],
    formula: 'IF(ISNUMBER(run_fuse), IF(mixed=0, MAX(nearest_type[wire of run]), ""), "")',
    source: DEFINITION,
  },
  unfused: {
    symbol: 'n_0',
    label: 'Conductors of the run that no fuse protects',
    unit: '1',
    per: ['run'],
    formula: 'COUNT(wire_length[wire of run])-COUNT(nearest_fuse[wire of run])',
    source: DEFINITION,
  },
  breaking: {
    symbol: 'I_b',
    label: 'Breaking capacity of the fuse',
    unit: 'A',
    per: ['run'],
    exact: true,
    formula: 'IF(fused=1, INDEX(type_breaking[fuse_type], MATCH(fuse_type, type_name[fuse_type], 0), 1), "")',
    source: cite('ISO-8820-3', 'printed'),
  },
  type_current: {
    symbol: 'I_g,t',
    label: 'Opening-time limit of the type of that fuse: current',
    unit: 'A',
    per: ['run'],
    across: 'opening',
    formula:
      'IF(ISNUMBER(run_fuse_type), run_fuse*INDEX(type_multiple[fuse_type,opening], run_fuse_type, opening_no), "")',
    source: DEFINITION,
  },
  type_longest: {
    symbol: 't_g,t',
    label: 'Opening-time limit of the type of that fuse: opens at the latest after',
    unit: 's',
    shown: 's',
    per: ['run'],
    across: 'opening',
    formula:
      'IF(ISNUMBER(run_fuse_type), IF(opening_no=1, no_end, INDEX(type_slowest[fuse_type,opening], run_fuse_type, opening_no)), "")',
    source: DEFINITION,
  },
  opening_current: {
    symbol: 'I_g',
    label: 'Opening-time limit of the fuse that protects the run: current',
    unit: 'A',
    per: ['run'],
    across: 'opening',
    formula:
      'IF(ISNUMBER(run_fuse_type), IF(curved=0, type_current, ' +
      'IF(ISNUMBER(curve_point), curve_point, IF(opening_no=1, run_fuse, opening_current[opening-1]*opening_further))), "")',
    source: DEFINITION,
    note: 'Of a maker’s curve the first row is the rating: there the fuse need never open.',
  },
  opening_slowest: {
    symbol: 't_max',
    label: 'Opening-time limit: opens at the latest after',
    unit: 's',
    shown: 's',
    per: ['run'],
    across: 'opening',
    formula:
      'IF(ISNUMBER(run_fuse_type), IF(opening_no=1, no_end, IF(curved=0, type_longest, ' +
      'IF(ISNUMBER(curve_within), curve_within, opening_slowest[opening-1]/opening_further^2))), "")',
    source: PHYSICS,
    note: 'At the first limit the fuse must hold: it need never open. Beyond the last one I²t stays.',
  },
  opening_fastest: {
    symbol: 't_min',
    label: 'Opening-time limit: opens not before',
    unit: 's',
    shown: 's',
    per: ['run'],
    across: 'opening',
    formula:
      'IF(ISNUMBER(run_fuse_type), IF(curved=0, INDEX(type_fastest[fuse_type,opening], run_fuse_type, opening_no), ""), "")',
    source: DEFINITION,
    note: 'A curve of longest times says nothing of the shortest.',
  },
  slowest_slope: {
    symbol: 'n_max',
    label: 'Slope of the latest opening beyond the limit, in the logarithms',
    unit: '1',
    per: ['run'],
    across: 'opening',
    formula: slope('opening_slowest'),
    source: PHYSICS,
    note:
      'Straight in the logarithms between two limits. Beyond the last one the melting energy I²t stays, since no heat is gained by ' +
      'going faster: t = t_g·(I_g/I)². The arc is neglected: at vehicle voltages, below the rated voltage of the fuse, it is short.',
  },
  fastest_slope: {
    symbol: 'n_min',
    label: 'Slope of the earliest opening beyond the limit, in the logarithms',
    unit: '1',
    per: ['run'],
    across: 'opening',
    formula: slope('opening_fastest'),
    source: PHYSICS,
  },
  fuse_holds: {
    symbol: 'I_g2',
    label: 'Current up to which the fuse that protects the run need never open',
    unit: 'A',
    per: ['run'],
    formula: 'INDEX(opening_current[opening], 1, 2)',
    source: DEFINITION,
    note: 'The second limit is the first one with a longest time.',
  },
  overload_limit: {
    symbol: 'T_6h',
    label: 'Temperature limit of a 6 h overload',
    unit: 'degC',
    per: ['run'],
    formula:
      'INDEX(insulation_overload[insulation], MATCH(run_insulation, insulation_name[insulation], 0), 1)',
    source: cite('ISO-6722-1', 'quoted'),
  },
  short_limit: {
    symbol: 'T_5s',
    label: 'Temperature limit of a short circuit up to 5 s',
    unit: 'degC',
    per: ['run'],
    formula:
      'IF(run_material="cross-linked", MAX(overload_limit, linked_limit), ' +
      'INDEX(insulation_short[insulation], MATCH(run_insulation, insulation_name[insulation], 0), 1))',
    source: cite('IEC-60364-5-54', 'quoted'),
  },
  cable: {
    symbol: 'cbl',
    label: 'Primary cable (1), battery cable (2), or a class that is no cable (0)',
    unit: '1',
    per: ['run'],
    formula: 'INDEX(insulation_cable[insulation], MATCH(run_insulation, insulation_name[insulation], 0), 1)',
    source: DEFINITION,
  },
  made: {
    symbol: 'made',
    label: 'The type of cable is customarily made in this size (1) or not (0)',
    unit: '1',
    per: ['run'],
    formula:
      'IF(cable=1, IF(area<=primary_most*(1+alike), 1, 0), IF(cable=2, IF(area>=battery_least*(1-alike), 1, 0), 1))',
    source: DEFINITION,
  },
  material_known: {
    symbol: 'mat',
    label: 'Material of the insulation is known (1) or taken as PVC (0)',
    unit: '1',
    per: ['run'],
    formula:
      'IF(run_material="", INDEX(insulation_typed[insulation], MATCH(run_insulation, insulation_name[insulation], 0), 1), 1)',
    source: DEFINITION,
  },
  load_T: {
    symbol: 'T_0',
    label: 'Conductor temperature from which a fault heats on',
    unit: 'degC',
    per: ['run'],
    formula: 'IF(COUNT(wire_T[wire of run])>0, MAX(wire_T[wire of run]), run_ambient)',
    source: DEFINITION,
  },
  theta: {
    symbol: 'θ',
    label: 'Thermal time constant of the conductor',
    unit: 's',
    shown: 's',
    per: ['run'],
    formula: `IF(ISNUMBER(ampacity), IF(ampacity>0, ${timeConstant('area', 'ampacity', 'run_metre')}, 0), 0)`,
    source: PHYSICS,
    note: 'One time constant, with the resistance at the rating of the insulation.',
  },
  heating: {
    symbol: 'h',
    label: 'Rise of a conductor above ambient in the end, for each square of its current',
    unit: 'K/A^2',
    per: ['run'],
    formula: 'IF(ISNUMBER(ampacity), IF(ampacity>0, (rating-run_ambient)/ampacity^2, 0), "")',
    source: PHYSICS,
    note: 'At its ampacity a conductor is as warm as its insulation may be.',
  },
  load_rise: {
    symbol: 'ΔT_0',
    label: 'Rise of the conductor above ambient under load',
    unit: 'K',
    per: ['run'],
    formula: 'load_T-run_ambient',
    source: DEFINITION,
  },
  short_room: {
    symbol: 'ΔT_5s',
    label: 'From its temperature under load to the limit of a short circuit',
    unit: 'K',
    per: ['run'],
    formula: 'short_limit-load_T',
    source: DEFINITION,
  },
  overload_room: {
    symbol: 'ΔT_6h',
    label: 'From its temperature under load to the limit of an overload',
    unit: 'K',
    per: ['run'],
    formula: 'overload_limit-load_T',
    source: DEFINITION,
  },
  end_opening: {
    symbol: 't_k',
    short: 'Opens at the latest after',
    label: 'Latest opening on a short at the far end of the run, at its worst conductor',
    unit: 's',
    shown: 's',
    per: ['run'],
    formula:
      'IF(mixed*auto=0, IF(COUNT(wire_opening[wire of run])=COUNT(wire_length[wire of run]), MAX(wire_opening[wire of run]), ""), "")',
    source: PHYSICS,
    note: 'Not known for a size to be chosen behind fuses of different kinds: none is chosen for such shorts.',
  },
  wire_row: {
    symbol: 'g',
    label:
      'Opening-time limit of the fuse at or below the short at its far end; 0 where the fuse need never open',
    unit: '1',
    per: ['wire'],
    formula: `IF(ISNUMBER(nearest_fuse), IF(ISNUMBER(fault_min), ${rowOf('fault_min', 'opening_current[run guard,opening]', 'fuse_holds[run guard]')}, ""), "")`,
    source: DEFINITION,
  },
  wire_row_amps: {
    symbol: 'I_g,k',
    label: 'Current of that limit',
    unit: 'A',
    per: ['wire'],
    formula:
      'IF(ISNUMBER(wire_row), IF(wire_row>0, INDEX(opening_current[run guard,opening], 1, wire_row), ""), "")',
    source: DEFINITION,
  },
  wire_opening: {
    symbol: 't_k,w',
    label: 'Latest opening of its fuse on a short at its far end',
    unit: 's',
    shown: 's',
    per: ['wire'],
    formula:
      'IF(ISNUMBER(wire_row), IF(wire_row=0, no_end, INDEX(opening_slowest[run guard,opening], 1, wire_row)*' +
      '(fault_min/wire_row_amps)^INDEX(slowest_slope[run guard,opening], 1, wire_row)), "")',
    source: PHYSICS,
  },
  melting: {
    symbol: 'I²t_m',
    label: 'Fuse: melting energy I²t (empty: pulses are not judged)',
    unit: 'A^2*s',
    shown: 'A2s',
    per: ['run'],
    path: 'runs.{run}.fuse.melting',
    range: ends(RANGES.melting, 'A^2*s'),
  },
  pulse_share: {
    symbol: 's_P',
    label: 'Share of the melting I²t that a pulse may have which comes a hundred times',
    unit: '1',
    shown: '%',
    value: FEW_PULSES.share / 100,
    source: FUSE_PULSES.source,
    note:
      'The printed shares hold for pulses with ten seconds between them, and coils fire closer: a pulse above this share is too much ' +
      'in any case, one below it is not thereby shown to be harmless for good.',
  },
  pulse_energy: {
    symbol: 'I²t',
    label: 'I²t of one firing in the conductor, its share of the overlap included',
    unit: 'A^2*s',
    shown: 'A2s',
    per: ['wire', 'point'],
    formula: 'coils_square*cycle_time/wire_firings',
    source: PHYSICS,
  },
  run_pulse: {
    symbol: 'I²t_P',
    label: 'Largest I²t of one firing in the run',
    unit: 'A^2*s',
    shown: 'A2s',
    per: ['run'],
    formula: 'MAX(pulse_energy[wire of run,point])',
    source: DEFINITION,
  },
  pulse_allowed: {
    symbol: 'I²t_P,max',
    label: 'I²t allowed for one firing',
    unit: 'A^2*s',
    shown: 'A2s',
    per: ['run'],
    formula: 'IF(ISNUMBER(melting), melting*pulse_share, "")',
    source: FUSE_PULSES.source,
  },
  fuse_opens: {
    symbol: 't_k,F',
    short: 'Opens at the latest after',
    label: 'Latest opening of the fuse on the smallest fault current of everything behind it',
    unit: 's',
    shown: 's',
    per: ['wire'],
    formula:
      'IF(fused=1, IF(SUMPRODUCT((protector[wire]=wire_no)*1)>SUMPRODUCT((protector[wire]=wire_no)*(opening_known[wire])), "", ' +
      'SUMPRODUCT(MAX((protector[wire]=wire_no)*opening_or_0[wire]))), "")',
    source: PHYSICS,
  },
  wire_no: {
    symbol: 'w',
    label: 'Number of the conductor',
    unit: '1',
    per: ['wire'],
    value: (at) => at.wire + 1,
  },
  opening_known: {
    symbol: 'kn',
    label: 'Its opening time is known (1) or not (0)',
    unit: '1',
    per: ['wire'],
    formula: 'IF(ISNUMBER(wire_opening), 1, 0)',
    source: DEFINITION,
  },
  opening_or_0: {
    symbol: 't_k,0',
    label: 'Its opening time, 0 when it is not known',
    unit: 's',
    shown: 's',
    per: ['wire'],
    formula: 'IF(ISNUMBER(wire_opening), wire_opening, 0)',
    source: DEFINITION,
  },
} as const satisfies Quantities;
