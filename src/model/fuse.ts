/** Fuse: rating from the load at the fuse's own temperature, and what it adds to the resistance. */
import type { At, Layout, Quantities } from '../basis/quantity.ts';
import { COMMON_PRACTICE, cite, DEFINITION, PHYSICS, QUOTED } from '../basis/sources.ts';
import { ends, RANGES } from '../design/ranges.ts';
import { heatRow } from './by-heat.ts';

const rerated = ({ runs }: Layout, at: At) => {
  const rows = runs[at.run as number]?.fuse?.rerating;
  return rows
    ? heatRow(
        rows.map((row) => ({ at: row.at, value: row.share })),
        at.hot as number,
      )
    : undefined;
};

export const fuses = {
  fuse_load_limit: {
    symbol: 's_F',
    label: 'Largest continuous load of a fuse, share of its rating at 25 °C',
    unit: '1',
    shown: '%',
    path: 'limits.fuse_load',
    range: ends(RANGES.share, '1'),
    source: QUOTED,
  },
  fuse_type: {
    symbol: 'type',
    short: 'Fuse type',
    label: 'Fuse: type (empty: no fuse in this run)',
    unit: 'text',
    per: ['run'],
    path: 'runs.{run}.fuse.type',
  },
  fuse_given: {
    symbol: 'I_n,g',
    label: 'Fuse: rating, or auto',
    unit: 'A',
    per: ['run'],
    path: 'runs.{run}.fuse.rating',
    range: ends(RANGES.rating, 'A'),
  },
  fuse_ambient: {
    symbol: 'T_F',
    short: 'Ambient',
    label: 'Fuse: ambient temperature',
    unit: 'degC',
    per: ['run'],
    path: 'runs.{run}.fuse.ambient',
    range: ends(RANGES.temperature, 'degC'),
  },
  fuse_distance_given: {
    symbol: 'ℓ_F',
    label: 'Fuse: length of conductor between the source and the fuse (empty: not judged)',
    unit: 'm',
    shown: 'mm',
    per: ['run'],
    path: 'runs.{run}.fuse.from_source',
    range: ends(RANGES.place, 'm'),
  },
  fuse_voltage: {
    symbol: 'V_F',
    label: 'Fuse: rated voltage (empty: the lower one of its type)',
    unit: 'V',
    per: ['run'],
    path: 'runs.{run}.fuse.voltage',
    range: ends(RANGES.supply, 'V'),
  },
  fuse_volts: {
    symbol: 'V_F,n',
    label: 'Rated voltage of the fuse',
    unit: 'V',
    per: ['run'],
    exact: true,
    formula:
      'IF(fused=1, IF(ISNUMBER(fuse_voltage), fuse_voltage, INDEX(type_voltage[fuse_type], MATCH(fuse_type, type_name[fuse_type], 0), 1)), "")',
    source: cite('ISO-8820-3', 'printed'),
  },
  fuse_own_table: {
    symbol: 'tab_F',
    label: 'The design has the rating by temperature of the maker (1) or not (0)',
    unit: '1',
    per: ['run'],
    value: (at, { runs }) => (runs[at.run]?.fuse?.rerating ? 1 : 0),
  },
  fuse_hot_T: {
    symbol: 'T_F,i',
    label: 'Fuse: temperatures of the maker’s table',
    unit: 'degC',
    per: ['run'],
    across: 'hot',
    value: (at, layout) => rerated(layout, at)?.at ?? '',
  },
  fuse_hot_share: {
    symbol: 'k_F,i',
    label: 'Fuse: share of the rating at these temperatures',
    unit: '1',
    per: ['run'],
    across: 'hot',
    value: (at, layout) => rerated(layout, at)?.value ?? '',
  },
  fuse_hot_row: {
    symbol: 'i_F',
    label: 'Fuse: row of the maker’s table at or below the ambient, the first one below it',
    unit: '1',
    per: ['run'],
    formula:
      'IF(fuse_own_table=1, IF(fuse_ambient<INDEX(fuse_hot_T[hot], 1, 1), 1, MATCH(fuse_ambient, fuse_hot_T[hot], 1)), "")',
    source: DEFINITION,
  },
  fuse_hot_part: {
    symbol: 'x_F,T',
    label: 'Fuse: way from that row to the next',
    unit: '1',
    per: ['run'],
    formula:
      'IF(fuse_own_table=1, MAX(0, (fuse_ambient-INDEX(fuse_hot_T[hot], 1, fuse_hot_row))/' +
      '(INDEX(fuse_hot_T[hot], 1, fuse_hot_row+1)-INDEX(fuse_hot_T[hot], 1, fuse_hot_row))), "")',
    source: PHYSICS,
  },
  fuse_table_share: {
    symbol: 'k_F,tab',
    label: 'Share of the rating at the ambient by the maker’s table, straight between its rows',
    unit: '1',
    per: ['run'],
    formula:
      'IF(fuse_own_table=1, (1-fuse_hot_part)*INDEX(fuse_hot_share[hot], 1, fuse_hot_row)+' +
      'fuse_hot_part*INDEX(fuse_hot_share[hot], 1, fuse_hot_row+1), "")',
    source: PHYSICS,
    note: 'Beyond the last row nothing is carried.',
  },
  fused: {
    symbol: 'fuse',
    label: 'Has a fuse (1) or none (0)',
    unit: '1',
    per: ['run'],
    formula: 'IF(ISNUMBER(fuse_ambient), 1, 0)',
    source: DEFINITION,
  },
  fuse_derating: {
    symbol: 'k_F',
    label: 'Factor on the fuse’s rating at its temperature',
    unit: '1',
    per: ['run'],
    formula:
      'IF(fused=1, MAX(fuse_least_share, IF(fuse_own_table=1, fuse_table_share, 1-fuse_rerating*(fuse_ambient-fuse_T_ref))), "")',
    source: QUOTED,
    note: 'By the maker’s table where the design has it.',
  },
  fuse_needed: {
    symbol: 'I_n,req',
    label: 'Least rating that carries the load',
    unit: 'A',
    per: ['run'],
    formula: 'IF(fused=1, run_effective/(fuse_load_limit*fuse_derating), "")',
    source: PHYSICS,
  },
  fuse_largest: {
    symbol: 'I_n,hi',
    label: 'Largest rating of the type that may be chosen',
    unit: 'A',
    per: ['run'],
    formula:
      'IF(fused=1, SUMPRODUCT(MAX((fuse_size_type[fuse_size]=fuse_type)*fuse_size_offered[fuse_size]*fuse_size_rating[fuse_size])), "")',
    source: DEFINITION,
  },
  fuse_below: {
    symbol: 'ΔI_n',
    label: 'By how much the smallest rating that may be chosen and carries the load is below the largest',
    unit: 'A',
    per: ['run'],
    formula:
      'IF(fused=1, SUMPRODUCT(MAX((fuse_size_type[fuse_size]=fuse_type)*fuse_size_offered[fuse_size]*' +
      '(fuse_size_rating[fuse_size]>=fuse_needed)*(fuse_largest-fuse_size_rating[fuse_size]))), "")',
    source: DEFINITION,
  },
  fuse_rating: {
    symbol: 'I_n',
    short: 'Fuse rating',
    label: 'Rating of the fuse',
    unit: 'A',
    per: ['run'],
    exact: true,
    formula: 'IF(fused=1, IF(ISNUMBER(fuse_given), fuse_given, fuse_largest-fuse_below), "")',
    source: DEFINITION,
    note: 'The smallest rating that may be chosen and carries the load; the largest one, which then fails, when none does.',
  },
  fuse_row: {
    symbol: 'n_F',
    label: 'Row of the fuse in the list, 0 when it is not there',
    unit: '1',
    per: ['run'],
    formula:
      'IF(fused=1, SUMPRODUCT((fuse_size_type[fuse_size]=fuse_type)*(fuse_size_rating[fuse_size]=fuse_rating)*fuse_size_no[fuse_size]), 0)',
    source: DEFINITION,
  },
  fuse_on_list: {
    symbol: 'std_F',
    label: 'Rating of the fuse is on the list of its type (1) or not (0)',
    unit: '1',
    per: ['run'],
    formula:
      'IF(fused=1, MIN(1, SUMPRODUCT((fuse_size_type[fuse_size]=fuse_type)*(fuse_size_rating[fuse_size]=fuse_rating)*fuse_size_listed[fuse_size])), "")',
    source: DEFINITION,
  },
  fuse_size_no: {
    symbol: 'n',
    label: 'Number of the row',
    unit: '1',
    per: ['fuse_size'],
    value: (at) => at.fuse_size + 1,
  },
  fuse_drop_other: {
    symbol: 'U_n',
    label: 'Drop at rated current of a fuse that is not on the list',
    unit: 'V',
    shown: 'mV',
    value: 0.1,
    source: COMMON_PRACTICE,
  },
  fuse_ohm: {
    symbol: 'R_F',
    label: 'Resistance of the fuse: allowed drop at rated current over rating',
    unit: 'ohm',
    shown: 'mohm',
    per: ['run'],
    formula:
      'IF(fused=1, IF(fuse_row>0, INDEX(fuse_size_drop[fuse_size], fuse_row, 1), fuse_drop_other)/fuse_rating, 0)',
    source: PHYSICS,
  },
  fuse_load: {
    symbol: 'x_F',
    short: 'Load of the rating',
    label: 'Load of the fuse, share of its rating at its temperature',
    unit: '1',
    shown: '%',
    per: ['wire'],
    formula: 'IF(fused=1, worst_effective/(fuse_rating*fuse_derating), "")',
    source: DEFINITION,
  },
} as const satisfies Quantities;
