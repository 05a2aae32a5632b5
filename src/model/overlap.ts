/** What the charges of two coils have in common on a stiff supply, by the interval between their firings. */
import type { Quantities } from '../basis/quantity.ts';
import { PHYSICS } from '../basis/sources.ts';
import { lagOf, meeting } from './charge.ts';

export const overlap = {
  delay: {
    symbol: 'δ',
    label: 'Interval between the two firings',
    unit: 's',
    shown: 'ms',
    per: ['speed'],
    across: 'lag',
    formula: 'interval_of_row*cycle_time',
    source: PHYSICS,
  },
  ...meeting('', ['speed']),
  begun: {
    symbol: 't_b',
    label: 'How long the coil that fired before had been charged when this dwell began, at most the dwell',
    unit: 's',
    shown: 'ms',
    per: ['point'],
    across: 'lag',
    formula: 'IF(interval_of_row>same_interval, MIN(dwell, cycle_time*(1-interval_of_row)), dwell)',
    source: PHYSICS,
    note: 'The same interval read backwards: the cycle less the interval.',
  },
  begun_rises: {
    symbol: 't_b,r',
    label: 'How long its current had been rising when this dwell began',
    unit: 's',
    shown: 'ms',
    per: ['point'],
    across: 'lag',
    formula: 'MIN(begun, limit_time)',
    source: PHYSICS,
  },
  later_u: {
    symbol: 'u_2',
    label: 'Time in which the later current rises, over the time constant',
    unit: '1',
    per: ['point'],
    across: 'lag',
    formula: 'later_rises/tau',
    source: PHYSICS,
  },
  later_lag: {
    symbol: 'λ_2',
    label: 'Charge of that rise, over final current and time constant',
    unit: '1',
    per: ['point'],
    across: 'lag',
    formula: lagOf('later_u'),
    source: PHYSICS,
  },
  begun_u: {
    symbol: 'u_b,r',
    label: 'How long the other current had been rising, over the time constant',
    unit: '1',
    per: ['point'],
    across: 'lag',
    formula: 'begun_rises/tau',
    source: PHYSICS,
  },
  begun_lag: {
    symbol: 'λ_b',
    label: 'Charge of that earlier rise, over final current and time constant',
    unit: '1',
    per: ['point'],
    across: 'lag',
    formula: lagOf('begun_u'),
    source: PHYSICS,
  },
  neighbour_charge: {
    symbol: 'q',
    label: 'Charge drawn by the other coil during the dwell of this one',
    unit: 'A*s',
    per: ['point'],
    across: 'lag',
    formula:
      'final_current*tau*later_lag+peak*(shared-later_rises)+charge-' +
      '(final_current*tau*begun_lag+peak*(begun-begun_rises))+spark_neighbour',
    source: PHYSICS,
    note: 'First what the coil that fires later draws, then what the same coil, a cycle before, still draws; then further charges.',
  },
} as const satisfies Quantities;
