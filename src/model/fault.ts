/** Fault currents: a short to the chassis at the begin and at the end of every feed run, and what the fuse makes of it. */
import type { Quantities } from '../basis/quantity.ts';
import { ARBITRARY, cite, PHYSICS } from '../basis/sources.ts';
import { ends, RANGES } from '../design/ranges.ts';

export const fault = {
  source_ohm: {
    kind: 'input',
    symbol: 'R_s',
    label: 'Resistance of the source: battery and its posts (empty: faults are not judged)',
    unit: 'ohm',
    shown: 'mohm',
    path: 'supply.source_resistance',
    range: ends(RANGES.source, 'ohm'),
  },
  chassis_ohm: {
    kind: 'constant',
    symbol: 'R_ch',
    label: 'Way back of a short through the chassis',
    unit: 'ohm',
    shown: 'mohm',
    value: 0.005,
    source: cite('FAA-handbook', 'quoted', 'return path to the ground of the source'),
    note: 'That much is satisfactory for a good ground.',
  },
  highest_supply: {
    kind: 'formula',
    symbol: 'V_max',
    label: 'Highest supply of all points',
    unit: 'V',
    formula: 'MAX(point_supply[point])',
  },
  lowest_supply: {
    kind: 'formula',
    symbol: 'V_min',
    label: 'Lowest supply of all points',
    unit: 'V',
    formula: 'MIN(point_supply[point])',
  },
  cold_ohm: {
    kind: 'formula',
    symbol: 'R_20',
    label: 'Resistance at 20 °C with joints, fuse and relay contact',
    unit: 'ohm',
    shown: 'mohm',
    per: ['wire'],
    formula: 'INDEX(size_ohm[size], gauge_row, 1)*wire_length+fixed_ohm',
  },
  fault_max: {
    kind: 'formula',
    symbol: 'I_k,max',
    label:
      'Largest fault current: a short at the begin of the run, right behind its own fuse, everything cold',
    unit: 'A',
    per: ['wire'],
    formula:
      'IF(ISNUMBER(source_ohm), IF(fed=1, highest_supply/(source_ohm+SUM(cold_ohm[wire ahead])+fuse_ohm+chassis_ohm), ""), "")',
    source: PHYSICS,
  },
  fault_min: {
    kind: 'formula',
    symbol: 'I_k,min',
    label: 'Smallest fault current: a short at the far end of the run, everything warm',
    unit: 'A',
    per: ['wire'],
    formula:
      'IF(ISNUMBER(source_ohm), IF(fed=1, lowest_supply/(source_ohm+SUM(wire_ohm[wire ahead])+wire_ohm+chassis_ohm), ""), "")',
    source: PHYSICS,
  },
  fed: {
    kind: 'structure',
    symbol: 'feed',
    label: 'Feed run (1) or return run (0)',
    unit: '1',
    per: ['run'],
    value: (at, layout) => (layout.runs[at.run]?.side === 'feed' ? 1 : 0),
  },
  start_fault: {
    kind: 'formula',
    symbol: 'I_k,max',
    label: 'Largest fault current of a conductor of the run',
    unit: 'A',
    per: ['run'],
    formula: 'IF(COUNT(fault_max[wire of run])>0, MAX(fault_max[wire of run]), "")',
  },
  end_fault: {
    kind: 'formula',
    symbol: 'I_k,min',
    label: 'Smallest fault current of a conductor of the run',
    unit: 'A',
    per: ['run'],
    formula: 'IF(COUNT(fault_min[wire of run])>0, MIN(fault_min[wire of run]), "")',
  },
  open_limit: {
    kind: 'constant',
    symbol: 't_open',
    label: 'Longest time until the fuse opens on a short',
    unit: 's',
    shown: 's',
    value: 5,
    source: cite('IEC-60364-5-54', 'quoted', 'up to which the short-circuit limits of conductors hold'),
  },
  for_ever: {
    kind: 'constant',
    symbol: '∞',
    label: 'Stands for a time without end',
    unit: 's',
    value: 1e9,
    source: ARBITRARY,
    note: 'Thirty years: a cell cannot hold infinity.',
  },
} as const satisfies Quantities;
