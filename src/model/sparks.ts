/**
 * Further sparks at low speed: after the first one each coil is charged again, for a time of its own, once or several
 * times. Their charges count in every load; what a coil has left for them is not judged.
 *
 *   first charge     ‖‖‖‖‖‖‖|              ends at the firing, 0
 *   further ones              ‖‖‖|  ‖‖‖|   end at one step, two steps, …: a step is the spark and the charge after it
 *
 * A row stands for a distance of −K to K steps. At `burst_after` a charge of the other coil ends after one of this coil.
 */
import type { Formula, Layout, Quantities } from '../basis/quantity.ts';
import { DEFINITION, PHYSICS } from '../basis/sources.ts';
import { ends, RANGES } from '../design/ranges.ts';
import { lagOf, squareOf } from './charge.ts';

const more = ({ ignition }: Layout): number => (ignition.sparks?.count ?? 1) - 1;
/** Steps from −K to K. */
const step = (at: { burst: number }, layout: Layout): number => at.burst - more(layout);

/** Current of a coil that has been charged for a time. */
const current = (age: string): string =>
  `IF(${age}>=rise_time, plateau, final_current*(1-EXP(-(${age})/tau)))`;

const ROW = { per: ['point', 'burst'] } as const;
const TABLE = { per: ['point', 'burst'], across: 'lag' } as const;

/** Integral of the product of two currents that both flow for `shared`, the older one flowing `age` longer. */
function overlapping<P extends string>(of: P, mark: string, label: string, age: string, shared: string) {
  const record = (symbol: string, words: string, unit: string, formula: string): Formula => ({
    symbol: `${symbol},${mark}`,
    label: `${label}: ${words}`,
    unit,
    ...(unit === 's' ? { shown: 'ms' } : {}),
    ...TABLE,
    formula,
    source: PHYSICS,
  });
  const all: Record<string, Formula> = {
    [`${of}_age`]: record('a', 'by how much the older one has flowed longer', 's', age),
    [`${of}_shared`]: record('e', 'time in which both are charged', 's', shared),
    [`${of}_u`]: record(
      'u_b',
      'time in which both currents rise, over the time constant',
      '1',
      `MIN(${of}_shared, MAX(0, rise_time-${of}_age))/tau`,
    ),
    [`${of}_later`]: record('x₂', 'time in which the younger one rises', 's', `MIN(${of}_shared, rise_time)`),
    [`${of}_part`]: record(
      'u₁',
      'share of the final current that the younger one has reached when both have risen',
      '1',
      `1-EXP(-${of}_u)`,
    ),
    [`${of}_later_part`]: record(
      'u₂',
      'share of the final current that it has reached when it no longer rises',
      '1',
      `1-EXP(-${of}_later/tau)`,
    ),
    [`${of}_square`]: record(
      'h',
      'integral of the square of the common rise, over final current squared and time constant',
      '1',
      squareOf(`${of}_u`, `${of}_part`),
    ),
    [`${of}_after`]: record(
      'C₂',
      'integral of the product from where the older one no longer rises',
      'A^2*s',
      `plateau*(final_current*(${of}_later-${of}_u*tau-tau*(${of}_later_part-${of}_part))+plateau*(${of}_shared-${of}_later))`,
    ),
    [`${of}_product`]: record(
      'C',
      'integral of the product of the two currents',
      'A^2*s',
      `final_current^2*tau*(${of}_square+(1-EXP(-${of}_age/tau))*${of}_part^2/2)+${of}_after`,
    ),
  };
  return all as Readonly<
    Record<
      `${P}_${'age' | 'shared' | 'u' | 'later' | 'part' | 'later_part' | 'square' | 'after' | 'product'}`,
      Formula
    >
  >;
}

export const sparks = {
  sparks_below: {
    symbol: 'n_sp',
    label: 'Further sparks: below this engine speed',
    unit: 'rpm',
    path: 'ignition.sparks.below',
    range: ends(RANGES.speed, 'rpm'),
    note: 'How many there are is fixed when the workbook is made.',
  },
  sparks_charge: {
    symbol: 't_sp',
    label: 'Further sparks: charge before each',
    unit: 's',
    shown: 'ms',
    path: 'ignition.sparks.charge',
    range: ends(RANGES.dwell, 's'),
  },
  sparks_burn: {
    symbol: 't_b',
    label: 'Further sparks: from a spark to the next charge',
    unit: 's',
    shown: 'ms',
    path: 'ignition.sparks.burn',
    range: ends(RANGES.rest, 's'),
  },
  sparks_more: {
    symbol: 'K',
    label: 'Sparks after the first one',
    unit: '1',
    value: (_, layout) => more(layout),
  },
  spark_step: {
    symbol: 't_st',
    label: 'From one spark to the next',
    unit: 's',
    shown: 'ms',
    formula: 'IF(sparks_more>0, sparks_burn+sparks_charge, 0)',
    source: DEFINITION,
  },
  sparks_on: {
    symbol: 'on',
    flag: true,
    label: 'Further sparks are made at the point (1) or not (0)',
    unit: '1',
    per: ['point'],
    formula:
      'IF(sparks_more>0, IF(point_rpm<sparks_below, IF(dwell+sparks_more*spark_step<=dwell_room, 1, 0), 0), 0)',
    source: DEFINITION,
    note: 'Below their engine speed, as long as the coil has its rest before the next first charge.',
  },
  spark_length: {
    symbol: 't_c',
    label: 'Charge before each further spark at the point, 0 for none',
    unit: 's',
    shown: 'ms',
    per: ['point'],
    formula: 'IF(sparks_on=1, sparks_charge, 0)',
    source: DEFINITION,
  },
  rise_time: {
    symbol: 't_lim,0',
    label: 'Time of any charge at which the limit is reached; the cycle where there is none',
    unit: 's',
    shown: 'ms',
    per: ['point'],
    formula:
      'IF(bound=1, 0, IF(ISNUMBER(current_limit), IF(final_current>current_limit, -tau*LN(1-current_limit/final_current), cycle_time), cycle_time))',
    source: PHYSICS,
  },
  plateau: {
    symbol: 'I_lim',
    label: 'Current that is held from then on',
    unit: 'A',
    per: ['point'],
    formula: 'IF(bound=1, peak, IF(ISNUMBER(current_limit), current_limit, 0))',
    source: PHYSICS,
  },
  spark_rise: {
    symbol: 'x',
    label: 'Time of a further charge in which the current rises',
    unit: 's',
    shown: 'ms',
    per: ['point'],
    formula: 'MIN(spark_length, rise_time)',
    source: PHYSICS,
  },
  spark_u: {
    symbol: 'u_sp',
    label: 'That time, over the time constant',
    unit: '1',
    per: ['point'],
    formula: 'spark_rise/tau',
    source: PHYSICS,
  },
  spark_lag: {
    symbol: 'λ_sp',
    label: 'Charge of a further rise, over final current and time constant',
    unit: '1',
    per: ['point'],
    formula: lagOf('spark_u'),
    source: PHYSICS,
  },
  spark_charge: {
    symbol: 'Q_sp',
    label: 'Charge drawn by one coil before a further spark',
    unit: 'A*s',
    per: ['point'],
    formula: 'final_current*tau*spark_lag+plateau*(spark_length-spark_rise)',
    source: PHYSICS,
    note: 'From no current: a driver that charges anew before the spark has ended draws as much as a longer charge would.',
  },
  charge_all: {
    symbol: 'Q_Σ',
    label: 'Charge drawn by one coil for all sparks of a firing',
    unit: 'A*s',
    per: ['point'],
    formula: 'charge+sparks_more*spark_charge',
    source: PHYSICS,
  },
  burst_no: {
    symbol: 'd',
    label: 'Steps',
    unit: '1',
    ...ROW,
    value: (at, layout) => step(at, layout),
  },
  mixed_times: {
    symbol: 'm_m',
    label: 'Times that a first and a further charge are this far apart',
    unit: '1',
    ...ROW,
    value: (at, layout) => (step(at, layout) > 0 ? 2 : 0),
  },
  alike_times: {
    symbol: 'm_w',
    label: 'Times that two further charges are this far apart',
    unit: '1',
    ...ROW,
    value: (at, layout) => {
      const d = step(at, layout);
      return d < 0 ? 0 : (d === 0 ? 1 : 2) * (more(layout) - d);
    },
  },
  burst_sum: {
    symbol: 't_Σ',
    label: 'Interval and steps together',
    unit: 's',
    shown: 'ms',
    ...TABLE,
    formula: 'interval_of_row*cycle_time+burst_no*spark_step',
    source: DEFINITION,
  },
  burst_wrapped: {
    symbol: 't_w',
    label: 'The same, from the cycle before where it lies there',
    unit: 's',
    shown: 'ms',
    ...TABLE,
    formula: 'IF(burst_sum<-same_interval*cycle_time, burst_sum+cycle_time, burst_sum)',
    source: DEFINITION,
  },
  burst_after: {
    symbol: 't_e',
    label: 'The other charge ends so long after this one, within the cycle',
    unit: 's',
    shown: 'ms',
    ...TABLE,
    formula:
      'MAX(0, IF(burst_wrapped>=cycle_time*(1-same_interval), burst_wrapped-cycle_time, burst_wrapped))',
    source: DEFINITION,
  },
  burst_delay: {
    symbol: 'D',
    label: 'The other charge, a further one, ends so long after this one, or before (negative)',
    unit: 's',
    shown: 'ms',
    ...TABLE,
    formula: 'IF(burst_after<spark_length, burst_after, burst_after-cycle_time)',
    source: DEFINITION,
  },
  ...overlapping(
    'mixed',
    'm',
    'First and further charge',
    'MAX(dwell+burst_delay-spark_length, spark_length-dwell-burst_delay)',
    'MAX(0, MIN(0, burst_delay)-MAX(-dwell, burst_delay-spark_length))',
  ),
  ...overlapping(
    'alike',
    'w',
    'Two further charges',
    'MAX(burst_delay, -burst_delay)',
    'MAX(0, spark_length-MAX(burst_delay, -burst_delay))',
  ),
  spark_square: {
    symbol: 'ΣC',
    label: 'Integrals that the further charges add at the interval',
    unit: 'A^2*s',
    per: ['point'],
    across: 'lag',
    formula:
      'IF(sparks_on=1, SUMPRODUCT(mixed_times[burst]*mixed_product[burst]+alike_times[burst]*alike_product[burst]), 0)',
    source: PHYSICS,
    note: 'Over all pairs of firings, each way round: the weight of the interval does not count here.',
  },
  product_all: {
    symbol: 'C_Σ',
    label: 'Integral of the product of the two currents, all sparks of a firing',
    unit: 'A^2*s',
    per: ['point'],
    across: 'lag',
    formula: 'product+spark_square/interval_weight',
    source: PHYSICS,
  },
  burst_flowing: {
    symbol: 'i_d',
    label: 'Current in the other coil, in a further charge, when a charge of this one ends',
    unit: 'A',
    ...TABLE,
    formula: `IF(burst_after<spark_length, ${current('spark_length-burst_after')}, 0)`,
    source: PHYSICS,
  },
  first_flowing: {
    symbol: 'i_1',
    label: 'Current in the other coil, in a first charge, when a charge of this one ends',
    unit: 'A',
    ...TABLE,
    formula: `IF(spark_length>0, IF(burst_after<dwell, ${current('dwell-burst_after')}, 0), 0)`,
    source: PHYSICS,
  },
  flowing_all: {
    symbol: 'i_Σ',
    label: 'Current that flows in the later coil at the firing of the earlier one, in any charge',
    unit: 'A',
    per: ['point'],
    across: 'lag',
    formula: 'IF(sparks_on=1, flowing+SUMPRODUCT((burst_no[burst]>0)*burst_flowing[burst]), flowing)',
    source: PHYSICS,
  },
  spark_flowing: {
    symbol: 'i_sp',
    label: 'Current that flows in the other coil at a further spark, in any charge',
    unit: 'A',
    ...TABLE,
    formula:
      'IF(burst_no<0, first_flowing+SUMPRODUCT((burst_no[burst]>burst_no)*(burst_no[burst]<=burst_no+sparks_more)*burst_flowing[burst]), 0)',
    source: PHYSICS,
    note: 'The row −1 stands for the first of the further sparks.',
  },
  spark_flowing_at: {
    symbol: 'i_k',
    label: 'Current in the coil of the other firing at a further spark of this one',
    unit: 'A',
    per: ['point', 'burst', 'event'],
    across: 'event2',
    formula: 'INDEX(spark_flowing[lag], 1, interval_no)',
    source: DEFINITION,
  },
  drawn_from: {
    symbol: 't_1',
    label: 'How long a further charge of the other coil had lasted when both began to flow',
    unit: 's',
    shown: 'ms',
    ...TABLE,
    formula: 'MAX(0, spark_length-dwell-burst_delay)',
    source: PHYSICS,
  },
  drawn_to: {
    symbol: 't_2',
    label: 'How long when one of the two ended',
    unit: 's',
    shown: 'ms',
    ...TABLE,
    formula: 'drawn_from+mixed_shared',
    source: PHYSICS,
  },
  from_u: {
    symbol: 'u_1',
    label: 'The one, as far as the current rises, over the time constant',
    unit: '1',
    ...TABLE,
    formula: 'MIN(drawn_from, rise_time)/tau',
    source: PHYSICS,
  },
  to_u: {
    symbol: 'u_2',
    label: 'The other, as far as the current rises, over the time constant',
    unit: '1',
    ...TABLE,
    formula: 'MIN(drawn_to, rise_time)/tau',
    source: PHYSICS,
  },
  from_lag: {
    symbol: 'λ_1',
    label: 'Charge until the one, over final current and time constant',
    unit: '1',
    ...TABLE,
    formula: lagOf('from_u'),
    source: PHYSICS,
  },
  to_lag: {
    symbol: 'λ_2',
    label: 'Charge until the other, over final current and time constant',
    unit: '1',
    ...TABLE,
    formula: lagOf('to_u'),
    source: PHYSICS,
  },
  burst_neighbour: {
    symbol: 'q_d',
    label: 'Charge drawn by the other coil in a further charge during the first charge of this one',
    unit: 'A*s',
    ...TABLE,
    formula: 'final_current*tau*(to_lag-from_lag)+plateau*(mixed_shared-(to_u-from_u)*tau)',
    source: PHYSICS,
  },
  spark_neighbour: {
    symbol: 'Σq_d',
    label: 'Charge drawn by the other coil in all further charges during the first charge of this one',
    unit: 'A*s',
    per: ['point'],
    across: 'lag',
    formula: 'IF(sparks_on=1, SUMPRODUCT((burst_no[burst]>0)*burst_neighbour[burst]), 0)',
    source: PHYSICS,
  },
} as const satisfies Quantities;
