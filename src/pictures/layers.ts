/** Layers that several panels have in common: lines across, and labels at the right end. */
import { linear, logarithmic, spread } from './labels.ts';
import { type Layer, rows } from './picture.ts';
import type { Theme } from './theme.ts';

/** Least distance of two labels one above the other [px]. */
export const LINE = 14;

/** Length of the leader from the end of the plot to the label, and space before the label [px]. */
const LEADER = 12;
const SPACE = 3;

/** A line across the panel at `value`. */
export const rule = (value: number, strokeDash: readonly number[], color: string): Layer => ({
  data: rows([{ y: value }]),
  mark: { type: 'rule', color, strokeDash: [...strokeDash], strokeWidth: 1 },
  encoding: { y: { field: 'y', type: 'quantitative' } },
});

export interface Label {
  readonly value: number;
  readonly text: string;
  /** Where along the other axis its line ends; at the end of the plot when it is left out. */
  readonly from?: number;
}

/** Ends of the axis that labels stand beside, and its length [px]. */
export interface Ends {
  readonly least: number;
  readonly most: number;
  readonly height: number;
  /** The axis has logarithms. */
  readonly log?: boolean;
}

/**
 * Labels right of the plot, at their values where there is room, and a thin leader from the line to each; `right` is the
 * end of the other axis.
 */
export function rightLabels(
  labels: readonly Label[],
  { least, most, height, log = false }: Ends,
  right: number,
  theme: Theme,
): Layer[] {
  const axis = (log ? logarithmic : linear)(least, most, height);
  const places = spread(
    labels.map(({ value }) => value),
    axis,
    LINE,
  );
  return [
    {
      data: rows(
        labels.map(({ value, from = right }, i) => ({
          x: from,
          y: Math.min(most, Math.max(least, value)),
          right,
          place: places[i] as number,
        })),
      ),
      mark: { type: 'rule', x2Offset: LEADER, color: theme.faint, strokeWidth: 0.8 },
      encoding: {
        x: { field: 'x', type: 'quantitative' },
        x2: { field: 'right' },
        y: { field: 'y', type: 'quantitative' },
        y2: { field: 'place' },
      },
    },
    {
      data: rows(labels.map(({ text }, i) => ({ x: right, y: places[i] as number, text }))),
      mark: { type: 'text', align: 'left', baseline: 'middle', dx: LEADER + SPACE, color: theme.ink },
      encoding: {
        x: { field: 'x', type: 'quantitative' },
        y: { field: 'y', type: 'quantitative' },
        text: { field: 'text', type: 'nominal' },
      },
    },
  ];
}
