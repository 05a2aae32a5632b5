/** Axes: from what to what, and what stands beside them. */
import type { Axis } from 'vega-lite/types_unstable/axis.js';
import type { Field, PositionFieldDef } from 'vega-lite/types_unstable/channeldef.js';
import type { Circuit } from '../transient/circuit.ts';

/** A straight axis from `least` to `most`; `field` is the key of the rows that is drawn along it. */
export const straight = (
  field: 'x' | 'y',
  title: string,
  [least, most]: readonly [number, number],
  axis: Axis<never> = {},
): PositionFieldDef<Field> => ({
  field,
  type: 'quantitative',
  title,
  scale: { domain: [least, most], nice: false, zero: false },
  // Beside ticks that are given, a wish for their number would drop some of them.
  axis: axis.values ? axis : { tickCount: 5, ...axis },
});

/** One with logarithms, a label at each of `ticks`; both ends above 0. */
export const logarithmicAxis = (
  field: 'x' | 'y',
  title: string,
  [least, most]: readonly [number, number],
  ticks: readonly number[],
  axis: Axis<never> = {},
): PositionFieldDef<Field> => ({
  field,
  type: 'quantitative',
  title,
  scale: { type: 'log', domain: [least, most], nice: false },
  axis: { values: [...ticks], ...axis },
});

/** Crank angle over one working cycle; below each angle the time. Without words where another panel follows below. */
export function angleAxis({ cycle, cycleAngle }: Circuit, words: boolean): PositionFieldDef<Field> {
  const perDegree = (cycle * 1e3) / cycleAngle;
  const step = cycleAngle / 8;
  const places = perDegree * step < 0.1 ? 3 : perDegree * step < 10 ? 2 : 1;
  const values = Array.from({ length: 9 }, (_, i) => i * step);
  if (!words) return straight('x', '', [0, cycleAngle], { values, labels: false, title: null });
  return straight('x', 'Crank angle in °, below it time in ms', [0, cycleAngle], {
    values,
    labelExpr: `[datum.label + '°', format(datum.value * ${perDegree}, '.${places}f')]`,
  });
}
