/** The resting level of a clamp, which wanders as its core and its electronics warm up. */
import { median } from './noise.ts';

/** Samples of one charge. */
export interface ChargeSpan {
  /** First sample above the threshold, and the last one before the fall. */
  readonly first: number;
  readonly last: number;
  /** Whether the recording holds its start, and its end. */
  readonly starts: boolean;
  readonly ends: boolean;
}

/** Level at every sample: straight from each of these to the next. `at` are indices, rising. */
function along(
  length: number,
  points: readonly { readonly at: number; readonly level: number }[],
): Float64Array {
  const levels = new Float64Array(length);
  let next = 0;
  for (let i = 0; i < length; i++) {
    while (next < points.length && (points[next] as { at: number }).at <= i) next += 1;
    const [before, after] = [points[next - 1], points[next]];
    levels[i] =
      before === undefined || after === undefined
        ? ((before ?? after)?.level ?? 0)
        : before.level + ((after.level - before.level) * (i - before.at)) / (after.at - before.at);
  }
  return levels;
}

/** From here up, counted from the lowest of a block, is the level at rest: past stray samples. Arbitrary. */
const LOWEST = 0.05;

/** A first look: the lowest of each block of so many samples. Charges point upward; every block holds a pause. */
export function roughZero(values: Float64Array, block: number): Float64Array {
  const count = Math.max(1, Math.floor(values.length / block));
  const size = values.length / count;
  return along(
    values.length,
    Array.from({ length: count }, (_, i) => {
      const part = values.slice(Math.floor(i * size), Math.floor((i + 1) * size)).sort();
      return {
        at: Math.floor((i + 0.5) * size),
        level: part[Math.floor(LOWEST * (part.length - 1))] as number,
      };
    }),
  );
}

/** Share of a charge before it that is no rest: its start below the threshold, a `share` of its height. */
export const startOf = (share: number): number => 0.02 + (1.2 * share) / (1 - Math.min(0.7, share));
/** Share of a charge after it that is no rest: the ringing of its end. */
const AFTER = 0.2;

/** Stretches outside of the charges, as indices from and to; a charge is seen from `share` of its height up. */
export function pausesOf(length: number, spans: readonly ChargeSpan[], share: number): [number, number][] {
  const edges = [null, ...spans, null];
  return edges.slice(1).flatMap((next, i): [number, number][] => {
    const before = edges[i] ?? null;
    const margin = (span: ChargeSpan | null, share: number): number =>
      span === null ? 0 : Math.ceil((span.last - span.first + 1) * share) + 2;
    const from = before === null ? 0 : before.last + 1;
    const to = next === null ? length : next.first - margin(next, startOf(share));
    // Where the pause is short, at least a third of it is left.
    const late = Math.min(from + margin(before, AFTER), Math.floor(to - (to - from) / 3));
    return to - late >= 3 ? [[late, to]] : [];
  });
}

/** Rising so steeply, as a share of a charge's mean slope, is no rest. Arbitrary. */
const RISES = 0.4;

/** Whether the level stands still in most of the pauses; `slope` is that of a charge, for each sample. */
export function rests(values: Float64Array, pauses: readonly [number, number][], slope: number): boolean {
  const trends = pauses.map(([from, to]) => {
    const third = Math.max(1, Math.floor((to - from) / 3));
    const rise = median(values.subarray(to - third, to)) - median(values.subarray(from, from + third));
    return rise / Math.max(1, to - from - third);
  });
  return trends.length > 0 && median(trends) < RISES * slope;
}

/** Mean of the middle half: steps of a converter are evened out, stray samples do not count. */
function middleOf(values: Float64Array): number {
  const middle = values.toSorted().subarray(values.length >> 2, values.length - (values.length >> 2));
  return middle.reduce((a, b) => a + b, 0) / middle.length;
}

/** The middle of each pause, and straight between them. */
export const zeroOf = (values: Float64Array, pauses: readonly [number, number][]): Float64Array =>
  along(
    values.length,
    pauses.map(([from, to]) => ({ at: (from + to) >> 1, level: middleOf(values.subarray(from, to)) })),
  );
