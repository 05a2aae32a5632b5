/**
 * A clamp that passes no direct current, or an input coupled so: what it shows falls behind by the charge that has flowed. A
 * single pole of time constant T shows y with dy/dt = di/dt − y/T, so that i = y + ∫y dt / T, to a constant.
 */
import { median } from './noise.ts';
import type { ChargeSpan } from './zero.ts';

/** A droop below this share of the height is left: zero and noise come to as much. Arbitrary. */
const WORTH = 0.004;

/** 1/T, for each sample; 0 where there is no droop. By how far the level after a charge lies below that before it. */
export function droopOf(
  values: Float64Array,
  zero: Float64Array,
  spans: readonly ChargeSpan[],
  pauses: readonly [number, number][],
): number {
  const whole = spans.filter(({ starts, ends }) => starts && ends);
  if (whole.length < 2) return 0;
  const starts = whole.map(({ first }) => first);
  const period = median(starts.slice(1).map((at, i) => at - (starts[i] as number)));
  const shares = whole.flatMap(({ first, last }) => {
    const before = pauses.findLast(([, to]) => to <= first);
    const after = pauses.find(([from]) => from > last);
    if (before === undefined || after === undefined) return [];
    const [earlier, later] = [thirdOf(before, 2), thirdOf(after, 0)];
    const jump = level(values, later) - level(values, earlier);
    const steps = (later[0] + later[1] - earlier[0] - earlier[1]) / 2;
    // Over whole periods only the drift of the zero is left.
    const drift = (((zero[last] as number) - (zero[first] as number)) / (last - first)) * steps;
    let charge = 0;
    for (let i = first; i <= last; i++) charge += (values[i] as number) - (zero[i] as number);
    // What flows on the mean is what the level rises by again, also while this is measured.
    const left = 1 - steps / period;
    return left < 0.1 ? [] : [(drift - jump) / (charge * left)];
  });
  if (shares.length < 2) return 0;
  const middle = median(shares);
  const spread = 1.4826 * median(shares.map((share) => Math.abs(share - middle)));
  const length = median(whole.map(({ first, last }) => last - first));
  return middle * length > WORTH && middle > 4 * (spread / Math.sqrt(shares.length)) ? middle : 0;
}

const thirdOf = ([from, to]: readonly [number, number], which: 0 | 2): [number, number] => {
  const third = Math.max(2, Math.floor((to - from) / 3));
  return which === 0 ? [from, from + third] : [to - third, to];
};

const level = (values: Float64Array, [from, to]: readonly [number, number]): number =>
  median(values.subarray(from, to));

/** The same without droop, to a level that drifts evenly. */
export function undrooped(values: Float64Array, droop: number): Float64Array {
  const middle = median(values);
  let sum = 0;
  return values.map((value) => {
    sum += (value - middle) * droop;
    return value + sum;
  });
}
