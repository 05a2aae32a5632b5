/**
 * The charge of one coil, and what two charges have in common when one coil fires a given interval after another: as
 * records, since they are wanted on a stiff supply and behind the feed.
 *
 * For the charge that ends first, time x runs from the start of the later one: it lasts `shared` = dwell − interval.
 * Both rise until the limit: the earlier one up to x₁, the later one up to x₂. The integral of the product of the
 * two currents falls into three parts, both rising, one at the limit, both at the limit.
 */
import type { Axis, Formula } from '../basis/quantity.ts';
import { ARBITRARY, PHYSICS } from '../basis/sources.ts';

/** u − (1 − e^(−u)), u = t/τ: the charge of a rise over final current and time constant. */
export const lagOf = (u: string): string =>
  `IF(${u}<small_rise, ${u}^2/2*(1-${u}/3*(1-${u}/4*(1-${u}/5*(1-${u}/6)))), ${u}-(1-EXP(-${u})))`;

/** u − g − g²/2, g = 1 − e^(−u): the integral of the square of a rise, over final current squared and time constant. */
export const squareOf = (u: string, g: string): string =>
  `IF(${u}<small_rise, ${u}^3/3*(1-${u}*(3/4-${u}*(7/20-${u}*(1/8-${u}*31/840)))), ${u}-${g}-${g}^2/2)`;

export const SMALL_RISE = {
  symbol: 'u_0',
  label: 'Rise, over the time constant, below which a series stands for its integrals',
  unit: '1',
  value: 0.02,
  source: ARBITRARY,
  note:
    'What these cancel to is u²/2 and u³/3: of the digits of a cell nothing would be left where a dwell is a ten-thousandth of τ. ' +
    'The first terms that the series leave out are u⁵/2520 and 3u⁵/320 of the result, at most 1.3e-12 and 3e-11.',
} as const;

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
    rise_u: {
      symbol: 'u_r',
      label: 'Time in which the current rises, over the time constant',
      unit: '1',
      per,
      formula: `${p}limit_time/${p}tau`,
    },
    rise_lag: {
      symbol: 'λ',
      label: 'Charge while the current rises, over final current and time constant',
      unit: '1',
      per,
      formula: lagOf(`${p}rise_u`),
    },
    charge: {
      symbol: 'Q',
      label: 'Charge drawn by one coil in one dwell',
      unit: 'A*s',
      per,
      formula: `${p}final_current*${p}tau*${p}rise_lag+${p}peak*(${p}dwell-${p}limit_time)`,
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
    both_u: {
      symbol: 'u_b',
      label: 'Time in which both currents rise, over the time constant',
      unit: '1',
      ...place,
      formula: `${p}both_rise/${p}tau`,
    },
    both_square: {
      symbol: 'h',
      label: 'Integral of the square of a rise of that length, over final current squared and time constant',
      unit: '1',
      ...place,
      formula: squareOf(`${p}both_u`, `${p}both_part`),
    },
    both_part: {
      symbol: 'u₁',
      label: 'Share of the final current that the later one has reached when both have risen',
      unit: '1',
      ...place,
      formula: `1-EXP(-${p}both_u)`,
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
      formula: `${p}final_current^2*${p}tau*(${p}both_square+(1-EXP(-delay/${p}tau))*${p}both_part^2/2)+${p}product_after`,
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
