/** From values to places in a chart, and the values that an axis names. */

export interface Axis {
  readonly label: string;
  readonly unit: string;
  readonly from: number;
  readonly to: number;
  readonly log?: boolean;
  /** Steps that suit it, rising; else 1, 2 and 5 times a power of ten. */
  readonly steps?: readonly number[];
}

/** Share of the axis, 0 at its begin and 1 at its end. */
export const shareOf = ({ from, to, log }: Axis, value: number): number =>
  log ? Math.log(value / from) / Math.log(to / from) : (value - from) / (to - from);

/** The value at a share of the axis. */
export const valueBy = ({ from, to, log }: Axis, share: number): number =>
  log ? from * (to / from) ** share : from + share * (to - from);

/** About `most` values, all of them short numbers. */
export function ticksOf(axis: Axis, most: number): number[] {
  return axis.log ? logTicks(axis, most) : straightTicks(axis, most);
}

function straightTicks({ from, to, steps }: Axis, most: number): number[] {
  const raw = (to - from) / Math.max(1, most);
  const power = 10 ** Math.floor(Math.log10(raw));
  const step =
    steps?.find((one) => one >= raw) ??
    steps?.at(-1) ??
    ([1, 2, 5, 10].find((n) => n * power >= raw) ?? 10) * power;
  const first = Math.ceil(from / step - 1e-9);
  const last = Math.floor(to / step + 1e-9);
  return Array.from({ length: last - first + 1 }, (_, i) => Number(((first + i) * step).toPrecision(12)));
}

function logTicks({ from, to }: Axis, most: number): number[] {
  const decades: number[] = [];
  for (let power = Math.floor(Math.log10(from)); power <= Math.ceil(Math.log10(to)); power++)
    decades.push(power);
  const inside = (n: number): boolean => n >= from * 0.999 && n <= to * 1.001;
  for (const steps of [[1, 2, 5], [1, 3], [1]]) {
    const found = decades
      .flatMap((power) => steps.map((n) => Number((n * 10 ** power).toPrecision(3))))
      .filter(inside);
    if (found.length <= most) return found;
  }
  const tens = decades.map((power) => 10 ** power).filter(inside);
  const every = Math.ceil(tens.length / most);
  return tens.filter((_, i) => i % every === 0);
}

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** The line's value at `x`, straight between its points (in logarithms where the axis has them); null beside it. */
export function valueAt(points: readonly Point[], x: number, log = false): number | null {
  const next = points.findIndex((p) => p.x > x);
  const [a, b] = next < 0 ? [points.at(-1), undefined] : [points[next - 1], points[next]];
  if (a === undefined) return null;
  if (b === undefined) return a.x === x ? a.y : null;
  if (!Number.isFinite(a.y) || !Number.isFinite(b.y)) return b.y;
  if (!log) return a.y + ((x - a.x) / (b.x - a.x)) * (b.y - a.y);
  const share = Math.log(x / a.x) / Math.log(b.x / a.x);
  return a.y * (b.y / a.y) ** share;
}
