/**
 * What two charges have in common when one coil fires a given interval after another.
 *
 * For the charge that ends first, time x counts from the start of the later one: it lasts `shared` = dwell − interval.
 * Both rise until the limit: the earlier one up to x₁, the later one up to x₂. The integral of the product of the
 * two currents falls into three parts, both rising, one at the limit, both at the limit.
 */
import type { Quantities } from '../basis/quantity.ts';
import { PHYSICS } from '../basis/sources.ts';

export const overlap = {
  delay: {
    kind: 'formula',
    symbol: 'δ',
    label: 'Interval between the two firings',
    unit: 's',
    shown: 'ms',
    per: ['speed'],
    across: 'lag',
    formula: 'interval_of_row*cycle_time',
    source: PHYSICS,
  },
  shared: {
    kind: 'formula',
    symbol: 'e',
    label: 'Time in which both are charged',
    unit: 's',
    shown: 'ms',
    per: ['speed'],
    across: 'lag',
    formula: 'MAX(0, dwell-delay)',
    source: PHYSICS,
  },
  both_rise: {
    kind: 'formula',
    symbol: 'x₁',
    label: 'Time in which both currents rise',
    unit: 's',
    shown: 'ms',
    per: ['speed'],
    across: 'lag',
    formula: 'MIN(shared, MAX(0, limit_time-delay))',
    source: PHYSICS,
  },
  later_rises: {
    kind: 'formula',
    symbol: 'x₂',
    label: 'Time in which the later current rises',
    unit: 's',
    shown: 'ms',
    per: ['speed'],
    across: 'lag',
    formula: 'MIN(shared, limit_time)',
    source: PHYSICS,
  },
  product: {
    kind: 'formula',
    symbol: 'C',
    label: 'Integral of the product of the two currents',
    unit: 'A^2*s',
    per: ['speed'],
    across: 'lag',
    formula:
      'final_current^2*(both_rise-(1+EXP(-delay/tau))*tau*(1-EXP(-both_rise/tau))+' +
      'EXP(-delay/tau)*tau/2*(1-EXP(-2*both_rise/tau)))+' +
      'peak*final_current*(later_rises-both_rise-tau*(EXP(-both_rise/tau)-EXP(-later_rises/tau)))+' +
      'peak^2*(shared-later_rises)',
    source: PHYSICS,
    note: 'Exact for identical coils on a stiff supply. At interval 0 it is the integral of the squared current.',
  },
  flowing: {
    kind: 'formula',
    symbol: 'i',
    label: 'Current that already flows in the later coil when the earlier one fires',
    unit: 'A',
    per: ['speed'],
    across: 'lag',
    formula: 'IF(shared>0, IF(shared>=limit_time, peak, final_current*(1-EXP(-shared/tau))), 0)',
    source: PHYSICS,
  },
  begun: {
    kind: 'formula',
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
  neighbour_charge: {
    kind: 'formula',
    symbol: 'q',
    label: 'Charge drawn by the other coil during the dwell of this one',
    unit: 'A*s',
    per: ['point'],
    across: 'lag',
    formula:
      'final_current*(later_rises-tau*(1-EXP(-later_rises/tau)))+peak*(shared-later_rises)+charge-' +
      '(final_current*(MIN(begun,limit_time)-tau*(1-EXP(-MIN(begun,limit_time)/tau)))+peak*(begun-MIN(begun,limit_time)))',
    source: PHYSICS,
    note: 'First what the coil that fires later draws, then what the same coil, a cycle before, still draws.',
  },
} as const satisfies Quantities;
