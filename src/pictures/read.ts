/** Reading a chart: from values to places on an axis and back, what an axis names, what a line has at a place. */
import { bisector, ticks } from 'd3-array';
import type { Axis, Point, Stack } from './chart.ts';

/** Share of the axis, 0 at its start and 1 at its end; what is infinite lies beyond it. */
export function shareOf({ from, to, log }: Axis, value: number): number {
  const share = log ? Math.log(value / from) / Math.log(to / from) : (value - from) / (to - from);
  return Math.min(FAR, Math.max(-FAR, share));
}
/** Lengths of the axis after which a place is as good as infinite: drawn, and cut off. */
const FAR = 20;

/** The value at a share of the axis. */
export const valueBy = ({ from, to, log }: Axis, share: number): number =>
  log ? from * (to / from) ** share : from + share * (to - from);

/** Leading digits of the names of an axis with logarithms, from few names to many. */
const LEADING = ['1', '1', '125'];

/** Values that an axis names, the more the larger `level`, from 0. */
export function ticksOf({ from, to, log, ticks: given }: Axis, level: number): number[] {
  if (given) {
    const every = [1, 2, 4, 8][3 - level] ?? 1;
    return given.filter((_, i) => i % every === 0);
  }
  if (!log) return ticks(from, to, [2, 3, 5, 8][level] ?? 8);
  const first = Math.floor(Math.log10(from) + 1e-9);
  return Array.from({ length: Math.ceil(Math.log10(to)) - first + 1 }, (_, i) => first + i)
    .filter((power) => level > 0 || power % 2 === 0)
    .flatMap((power) =>
      [...(LEADING[level - 1] ?? '1')].map((digit) => Number((Number(digit) * 10 ** power).toPrecision(3))),
    )
    .filter((value) => value >= from * (1 - 1e-9) && value <= to * (1 + 1e-9));
}
/** The level with the most names. */
export const LEVELS = 3;

/** `10 000`, `0.02`: with as many places as the step from one to the next needs, and `more` to show that step itself. */
export function tickTexts(values: readonly number[], log?: true, more = 0): string[] {
  const step = Math.min(...values.slice(1).map((value, i) => value - (values[i] as number)));
  const places = Number.isFinite(step) ? Math.max(0, more - Math.floor(Math.log10(step) + 1e-9)) : 0;
  return values.map((value) => {
    const text = log ? String(value) : value.toFixed(places).replace('-', '−');
    return value < 10_000 ? text : text.replace(/\B(?=(\d{3})+$)/g, '\u202f');
  });
}

const after = bisector<Point, number>(({ x }) => x).right;

type Logged = Pick<Axis, 'log'>;

/** The line's value at `x`, straight between its points on these axes; null beside it. */
export function valueAt(
  points: readonly Point[],
  x: number,
  axes: { x?: Logged; y?: Logged } = {},
): number | null {
  const next = after(points, x);
  const [a, b] = [points[next - 1], points[next]];
  if (!a) return null;
  if (!b) return a.x === x ? a.y : null;
  // What is nothing is as far away in logarithms as what is infinite.
  const far = ({ y }: Point): boolean => !Number.isFinite(axes.y?.log ? Math.log(y) : y);
  if (far(a) || far(b)) return a.x === x ? a.y : b.y;
  const share = axes.x?.log ? Math.log(x / a.x) / Math.log(b.x / a.x) : (x - a.x) / (b.x - a.x);
  return axes.y?.log ? a.y * (b.y / a.y) ** share : a.y + share * (b.y - a.y);
}

/** A line's value at a place; null beside the line, infinite where it has no end. */
export interface Reading {
  readonly name: string;
  readonly value: number | null;
  readonly unit: string;
}

/** All lines with a name at `x`, by panel. */
export const readingsOf = ({ x: axis, panels }: Stack, x: number): Reading[][] =>
  panels.map(({ y, parts }) =>
    parts.flatMap((part) =>
      part.kind === 'line' && part.name !== undefined
        ? [{ name: part.name, value: valueAt(part.points, x, { x: axis, y }), unit: y.unit }]
        : [],
    ),
  );
