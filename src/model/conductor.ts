/**
 * Conductors: which sizes a run may take, what each would carry at its place, and how warm it would be.
 *
 * Every run has a row of candidates: the sizes of the design's series in order, and in the last place the size that
 * the design states, if it does. What is worked out for a candidate is worked out once, for chosen and stated sizes.
 */
import type { Quantities } from '../basis/quantity.ts';
import { ARBITRARY, cite, PHYSICS, QUOTED } from '../basis/sources.ts';
import { ends, RANGES } from '../design/ranges.ts';

const TABLE_5 = cite('33-CFR-183.425', 'printed', 'table 5');

export const conductor = {
  series: {
    kind: 'input',
    symbol: 'series',
    label: 'Series from which sizes are chosen: AWG, SAE or mm2',
    unit: 'text',
    path: 'sizes.series',
  },
  smallest: {
    kind: 'input',
    symbol: 'S_min',
    label: 'Smallest size that may be chosen',
    unit: 'text',
    path: 'sizes.smallest',
  },
  run_gauge: {
    kind: 'input',
    symbol: 'size',
    label: 'Conductor size, or auto',
    unit: 'text',
    per: ['run'],
    path: 'runs.{run}.gauge',
  },
  run_insulation: {
    kind: 'input',
    symbol: 'class',
    label: 'Insulation: class letter or conductor type',
    unit: 'text',
    per: ['run'],
    path: 'runs.{run}.insulation',
  },
  run_ambient: {
    kind: 'input',
    symbol: 'T_a',
    label: 'Ambient temperature',
    unit: 'degC',
    per: ['run'],
    path: 'runs.{run}.ambient',
    range: ends(RANGES.temperature, 'degC'),
  },
  run_bundle: {
    kind: 'input',
    symbol: 'n_b',
    label: 'Current-carrying conductors laid together, itself counted',
    unit: '1',
    per: ['run'],
    path: 'runs.{run}.bundle',
    range: ends(RANGES.bundle, '1'),
  },
  run_joints: {
    kind: 'input',
    symbol: 'n_j',
    label: 'Crimps in series',
    unit: '1',
    per: ['run'],
    path: 'runs.{run}.joints',
    range: ends(RANGES.joints, '1'),
  },
  wire_length: {
    kind: 'input',
    symbol: 'ℓ',
    label: 'Length',
    unit: 'm',
    per: ['wire'],
    path: 'wires.{wire}.length',
    range: ends(RANGES.length, 'm'),
  },
  wire_load_limit: {
    kind: 'input',
    symbol: 's_w',
    label: 'Largest load of a conductor, share of its ampacity',
    unit: '1',
    shown: '%',
    path: 'limits.wire_load',
    range: ends(RANGES.share, '1'),
    source: ARBITRARY,
  },
  joint_ohm: {
    kind: 'input',
    symbol: 'R_j',
    label: 'Resistance of one crimp',
    unit: 'ohm',
    shown: 'mohm',
    path: 'limits.joint_resistance',
    range: ends(RANGES.joint, 'ohm'),
    source: ARBITRARY,
  },
  run_contacts: {
    kind: 'input',
    symbol: 'n_p',
    label: 'Pairs of plug contacts in series',
    unit: '1',
    per: ['run'],
    path: 'runs.{run}.contacts',
    range: ends(RANGES.joints, '1'),
  },
  plug_ohm: {
    kind: 'input',
    symbol: 'R_p',
    label: 'Resistance of one pair of plug contacts',
    unit: 'ohm',
    shown: 'mohm',
    path: 'limits.contact_resistance',
    range: ends(RANGES.joint, 'ohm'),
    source: QUOTED,
  },
  area_least: {
    kind: 'constant',
    symbol: 'S_a,min',
    label: 'Below 18 AWG the ampacity goes with the area, down to',
    unit: 'mm^2',
    value: 0.75,
    source: ARBITRARY,
    note: 'The table ends at 18 AWG; for anything thinner than this there is no figure.',
  },
  hottest_column: {
    kind: 'constant',
    symbol: 'TR_max',
    label: 'Insulation rating from which the last column of the table holds',
    unit: 'degC',
    value: 200,
    source: TABLE_5,
  },
  auto: {
    kind: 'formula',
    symbol: 'auto',
    label: 'Size is chosen (1) or stated (0)',
    unit: '1',
    per: ['run'],
    formula: 'IF(run_gauge="auto", 1, 0)',
  },
  rating: {
    kind: 'formula',
    symbol: 'TR',
    label: 'Temperature rating of the insulation',
    unit: 'degC',
    per: ['run'],
    exact: true,
    formula: 'INDEX(insulation_rating[insulation], MATCH(run_insulation, insulation_name[insulation], 0), 1)',
  },
  rating_column: {
    kind: 'formula',
    symbol: 'col',
    label: 'Column of the ampacity table: the largest rating not above that of the insulation',
    unit: '1',
    per: ['run'],
    formula: 'MATCH(rating, amps_rating[amps_column], 1)',
  },
  rating_factor: {
    kind: 'formula',
    symbol: 'k_TR',
    label: 'From that column to the insulation at hand',
    unit: '1',
    per: ['run'],
    formula:
      'IF(rating>=hottest_column, 1, ' +
      'SQRT((rating-ampacity_ambient)/(INDEX(amps_rating[amps_column],rating_column,1)-ampacity_ambient)*' +
      '(copper_zero+INDEX(amps_rating[amps_column],rating_column,1))/(copper_zero+rating)))',
    source: PHYSICS,
    note:
      'Same heat path: the rise goes with current squared times resistance. The regulation stays up to 20 % below this ' +
      'law at 200 °C, so that the next column to the right is never exceeded.',
  },
  bundle_factor: {
    kind: 'formula',
    symbol: 'k_b',
    label: 'Factor for conductors laid together',
    unit: '1',
    per: ['run'],
    formula: 'INDEX(bundle_share[bundle_row], MATCH(run_bundle, bundle_from[bundle_row], 1), 1)',
  },
  ambient_factor: {
    kind: 'formula',
    symbol: 'k_Ta',
    label: 'Factor for the ambient temperature',
    unit: '1',
    per: ['run'],
    formula: 'IF(run_ambient<rating, SQRT((rating-run_ambient)/(rating-ampacity_ambient)), 0)',
    source: cite('NEC', 'quoted', '310.15'),
    note: '0 where the place is as hot as the insulation may be: nothing can be carried.',
  },
  size_row: {
    kind: 'formula',
    symbol: 'row',
    label: 'Row of the ampacity table at or below the area',
    unit: '1',
    per: ['size'],
    formula: 'IF(size_area<INDEX(amps_area[amps_row],1,1), 0, MATCH(size_area, amps_area[amps_row], 1))',
  },
  size_scale: {
    kind: 'formula',
    symbol: 'k_S',
    label:
      'Factor on the first row of the table for an area below it, else 1; empty where there is no figure',
    unit: '1',
    per: ['size'],
    formula:
      'IF(size_area<area_least, "", IF(size_area>MAX(amps_area[amps_row]), "", ' +
      'IF(size_row=0, size_area/INDEX(amps_area[amps_row],1,1), 1)))',
    source: TABLE_5,
  },
  size_share: {
    kind: 'formula',
    symbol: 'x_S',
    label: 'How far the area stands from that row to the next, share of the logarithm',
    unit: '1',
    per: ['size'],
    formula:
      'IF(size_row=0, 0, IF(size_row=COUNT(amps_area[amps_row]), 0, LN(size_area/INDEX(amps_area[amps_row],size_row,1))/' +
      'LN(INDEX(amps_area[amps_row],size_row+1,1)/INDEX(amps_area[amps_row],size_row,1))))',
  },
  size_amps: {
    kind: 'formula',
    symbol: 'I₃₀',
    label: 'Ampacity at 30 °C by insulation rating',
    unit: 'A',
    per: ['size'],
    across: 'amps_column',
    formula:
      'IF(ISNUMBER(size_scale), IF(size_share>0, INDEX(amps_table[amps_row],size_row,1)*' +
      '(INDEX(amps_table[amps_row],size_row+1,1)/INDEX(amps_table[amps_row],size_row,1))^size_share, ' +
      'INDEX(amps_table[amps_row],MAX(size_row,1),1)*size_scale), "")',
    source: TABLE_5,
    note: 'Between the AWG areas of the table straight in the logarithms of area and current.',
  },
  series_first: {
    kind: 'formula',
    symbol: 'n₁',
    label: 'First size of the series',
    unit: '1',
    formula: 'MATCH(series, size_series[size], 0)',
  },
  series_count: {
    kind: 'formula',
    symbol: 'n_s',
    label: 'Sizes in the series',
    unit: '1',
    formula: 'SUMPRODUCT((size_series[size]=series)*1)',
  },
  smallest_area: {
    kind: 'formula',
    symbol: 'S_min',
    label: 'Area of the smallest size that may be chosen',
    unit: 'mm^2',
    formula: 'INDEX(size_area[size], MATCH(smallest, size_name[size], 0), 1)',
  },
  largest_area: {
    kind: 'formula',
    symbol: 'S_max',
    label: 'Area of the largest size of the series',
    unit: 'mm^2',
    formula: 'INDEX(size_area[size], series_first+series_count-1, 1)',
  },
  candidate_size: {
    kind: 'formula',
    symbol: 'n',
    label: 'Row of the candidate in the list of sizes',
    unit: '1',
    per: ['run'],
    across: 'candidate',
    formula:
      'IF(candidate_no=COUNT(candidate_no[candidate]), IF(auto=1, "", MATCH(run_gauge, size_name[size], 0)), ' +
      'IF(candidate_no<=series_count, series_first+candidate_no-1, ""))',
  },
  candidate_amps: {
    kind: 'formula',
    symbol: 'I_a',
    label: 'Ampacity of the candidate at its place',
    unit: 'A',
    per: ['run'],
    across: 'candidate',
    formula:
      'IF(ISNUMBER(candidate_size), IF(ISNUMBER(INDEX(size_amps[size,amps_column], candidate_size, rating_column)), ' +
      'MIN(INDEX(size_amps[size,amps_column], candidate_size, rating_column)*rating_factor, ' +
      'INDEX(size_amps[size,amps_column], candidate_size, MIN(rating_column+1, COUNT(amps_rating[amps_column]))))' +
      '*ambient_factor*bundle_factor, ""), "")',
    note: 'Empty where the table has no figure.',
  },
  candidate_T: {
    kind: 'formula',
    symbol: 'T_w',
    label: 'Temperature of the candidate under the run’s effective current',
    unit: 'degC',
    per: ['run'],
    across: 'candidate',
    formula:
      'IF(ISNUMBER(candidate_amps), IF(candidate_amps>0, ' +
      'run_ambient+(rating-run_ambient)*(run_effective/candidate_amps)^2, ""), "")',
    source: PHYSICS,
  },
  candidate_ohm: {
    kind: 'formula',
    symbol: 'r_T',
    label: 'Resistance of one metre of the candidate, warm',
    unit: 'ohm/m',
    shown: 'mohm/m',
    per: ['run'],
    across: 'candidate',
    formula:
      'IF(ISNUMBER(candidate_size), INDEX(size_ohm[size], candidate_size, 1)*' +
      '(1+alpha_20*(IF(ISNUMBER(candidate_T), candidate_T, run_ambient)-T_ref)), "")',
    note: 'Without a conductor temperature it is taken at the ambient temperature.',
  },
  gauge_row: {
    kind: 'formula',
    symbol: 'n',
    label: 'Row of the size in the list of sizes',
    unit: '1',
    per: ['run'],
    formula: 'INDEX(candidate_size[candidate], 1, chosen)',
  },
  gauge: {
    kind: 'formula',
    symbol: 'size',
    label: 'Conductor size',
    unit: 'text',
    per: ['run'],
    formula: 'INDEX(size_name[size], gauge_row, 1)',
  },
  area: {
    kind: 'formula',
    symbol: 'S',
    label: 'Conductor area',
    unit: 'mm^2',
    per: ['run'],
    formula: 'INDEX(size_area[size], gauge_row, 1)',
  },
  ampacity: {
    kind: 'formula',
    symbol: 'I_a',
    label: 'Ampacity at its place',
    unit: 'A',
    per: ['run'],
    formula: 'INDEX(candidate_amps[candidate], 1, chosen)',
    note: 'Empty where the table has no figure for this size.',
  },
  wire_T: {
    kind: 'formula',
    symbol: 'T_w',
    label: 'Conductor temperature at the worst point',
    unit: 'degC',
    per: ['wire'],
    formula:
      'IF(ISNUMBER(ampacity), IF(ampacity>0, run_ambient+(rating-run_ambient)*(worst_effective/ampacity)^2, ""), "")',
    source: PHYSICS,
  },
  wire_copper_ohm: {
    kind: 'formula',
    symbol: 'R_Cu',
    label: 'Resistance of the conductor itself, warm',
    unit: 'ohm',
    shown: 'mohm',
    per: ['wire'],
    formula:
      'INDEX(size_ohm[size], gauge_row, 1)*wire_length*(1+alpha_20*(IF(ISNUMBER(wire_T), wire_T, run_ambient)-T_ref))',
    source: PHYSICS,
  },
  wire_ohm: {
    kind: 'formula',
    symbol: 'R_w',
    label: 'Resistance of the conductor with its joints, fuse and relay contact',
    unit: 'ohm',
    shown: 'mohm',
    per: ['wire'],
    formula: 'wire_copper_ohm+fixed_ohm',
  },
  wire_copper: {
    kind: 'formula',
    symbol: 'm',
    label: 'Copper',
    unit: 'kg',
    shown: 'g',
    per: ['wire'],
    formula: 'area*wire_length*copper_density',
  },
  copper_total: {
    kind: 'formula',
    symbol: 'Σm',
    label: 'Copper of all conductors',
    unit: 'kg',
    shown: 'g',
    formula: 'SUM(wire_copper[wire])',
  },
} as const satisfies Quantities;
