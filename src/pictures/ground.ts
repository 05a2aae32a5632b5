/** What stands behind the lines over engine speed. */
import { type Layer, rows } from './picture.ts';
import type { AtSpeed, SpeedLines } from './speed-lines.ts';
import type { Theme } from './theme.ts';

/** A ground where the dwell of the first design is cut short: from half way to the speed before. */
export function clippedGround(
  [set]: readonly SpeedLines[],
  [least, most]: readonly [number, number],
  theme: Theme,
): Layer[] {
  const speeds = set?.speeds ?? [];
  const first = speeds.findIndex(({ clipped }) => clipped);
  if (first < 0) return [];
  const [before, at] = [speeds[first - 1], speeds[first] as AtSpeed];
  const from = before ? (before.rpm + at.rpm) / 2 : least;
  // Written on the side where there is more room.
  const left = from - least > most - from;
  return [
    {
      data: rows([{ x: from, to: most }]),
      mark: { type: 'rect', color: theme.tint, opacity: 0.7 },
      encoding: {
        x: { field: 'x', type: 'quantitative' },
        x2: { field: 'to' },
      },
    },
    {
      data: rows([{ x: from, text: left ? 'dwell cut short →' : '→ dwell cut short' }]),
      mark: {
        type: 'text',
        align: left ? 'right' : 'left',
        baseline: 'top',
        dx: left ? -6 : 6,
        dy: 4,
        color: theme.quiet,
      },
      encoding: {
        x: { field: 'x', type: 'quantitative' },
        y: { value: 0 },
        text: { field: 'text', type: 'nominal' },
      },
    },
  ];
}
