/**
 * The charge of one coil, and what two charges have in common when one coil fires a given interval after another: as
 * records, since they are wanted on a stiff supply and behind the feed.
 *
 * For the charge that ends first, time x runs from the start of the later one: it lasts `shared` = dwell − interval.
 * Both rise until the limit: the earlier one up to x₁, the later one up to x₂. The integral of the product of the
 * two currents falls into three parts, both rising, one at the limit, both at the limit.
 */
import type { Axis, Formula } from '../basis/quantity.ts';
import { PHYSICS } from '../basis/sources.ts';

/** Each record with the prefix before its name. */
const named = <P extends string, const R extends Readonly<Record<string, Omit<Formula, 'source'>>>>(
  prefix: P,
  records: R,
) =>
  Object.fromEntries(
    Object.entries(records).map(([name, record]) => [`${prefix}${name}`, { source: PHYSICS, ...record }]),
  ) as { readonly [N in keyof R & string as `${P}${N}`]: R[N] & Formula };

/** Time to the limit, peak and charge; `supplied` ends the labels, `bound` is the peak where only that is known. */
export const charging = <P extends string>(p: P, per: readonly Axis[], supplied: string, bound: string) =>
  named(p, {
    limit_time: {
      symbol: 't_lim',
      label: 'Time of the charge at which the limit is reached, else the whole dwell',
      unit: 's',
      shown: 'ms',
      per,
      formula:
        `IF(bound=1, 0, IF(ISNUMBER(current_limit), IF(${p}final_current>current_limit, ` +
        `MIN(${p}dwell, -${p}tau*LN(1-current_limit/${p}final_current)), ${p}dwell), ${p}dwell))`,
    },
    peak_unlimited: {
      symbol: 'I_pk,0',
      label: `Current of one coil at the end of dwell without a limit${supplied}`,
      unit: 'A',
      per,
      formula: `IF(bound=1, ${bound}, ${p}final_current*(1-EXP(-${p}dwell/${p}tau)))`,
    },
    peak: {
      symbol: 'I_pk',
      short: 'Peak current',
      label: `Peak current of one coil${supplied}`,
      unit: 'A',
      per,
      formula: `IF(${p}dwell>0, IF(ISNUMBER(current_limit), MIN(current_limit, ${p}peak_unlimited), ${p}peak_unlimited), 0)`,
    },
    charge: {
      symbol: 'Q',
      label: 'Charge drawn by one coil in one dwell',
      unit: 'A*s',
      per,
      formula: `${p}final_current*(${p}limit_time-${p}tau*(1-EXP(-${p}limit_time/${p}tau)))+${p}peak*(${p}dwell-${p}limit_time)`,
      note: 'Integral of the current: rising to the limit, then constant.',
    },
  });

/** What two charges have in common, for each interval between firings. */
export function meeting<P extends string>(p: P, per: readonly Axis[]) {
  const place = { per, across: 'lag' } as const;
  const time = { unit: 's', shown: 'ms', ...place };
  return named(p, {
    shared: {
      symbol: 'e',
      label: 'Time in which both are charged',
      ...time,
      formula: `MAX(0, ${p}dwell-delay)`,
    },
    both_rise: {
      symbol: 'x₁',
      label: 'Time in which both currents rise',
      ...time,
      formula: `MIN(${p}shared, MAX(0, ${p}limit_time-delay))`,
    },
    later_rises: {
      symbol: 'x₂',
      label: 'Time in which the later current rises',
      ...time,
      formula: `MIN(${p}shared, ${p}limit_time)`,
    },
    both_part: {
      symbol: 'u₁',
      label: 'Share of the final current that the later one has reached when both have risen',
      unit: '1',
      ...place,
      formula: `1-EXP(-${p}both_rise/${p}tau)`,
    },
    later_part: {
      symbol: 'u₂',
      label: 'Share of the final current that the later one has reached when it no longer rises',
      unit: '1',
      ...place,
      formula: `1-EXP(-${p}later_rises/${p}tau)`,
    },
    product_after: {
      symbol: 'C₂',
      label: 'Integral of the product of the two currents from where the earlier one no longer rises',
      unit: 'A^2*s',
      ...place,
      formula:
        `${p}peak*(${p}final_current*(${p}later_rises-${p}both_rise-${p}tau*(${p}later_part-${p}both_part))+` +
        `${p}peak*(${p}shared-${p}later_rises))`,
    },
    product: {
      symbol: 'C',
      label: 'Integral of the product of the two currents',
      unit: 'A^2*s',
      ...place,
      formula: `${p}final_current^2*(${p}both_rise-${p}tau*${p}both_part*(1+EXP(-delay/${p}tau)*${p}both_part/2))+${p}product_after`,
      note: 'Exact for identical coils. At interval 0 it is the integral of the squared current.',
    },
    flowing: {
      symbol: 'i',
      label: 'Current that already flows in the later coil when the earlier one fires',
      unit: 'A',
      ...place,
      formula: `IF(${p}shared>0, IF(${p}shared>=${p}limit_time, ${p}peak, ${p}final_current*(1-EXP(-${p}shared/${p}tau))), 0)`,
    },
  });
}
