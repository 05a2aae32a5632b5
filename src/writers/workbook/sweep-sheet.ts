/** The first feed run over engine speed. */
import type { Design } from '../../design/design.ts';
import type { Sheet } from '../../engine/cell.ts';
import type { Grid } from '../../engine/translate.ts';
import type { QuantityName } from '../../model/model.ts';
import { heading, shown } from './links.ts';
import { opening, type Page, table, words } from './page.ts';

const FIGURES: readonly (readonly [string, QuantityName])[] = [
  ['Engine speed', 'speed'],
  ['Dwell', 'dwell'],
  ['Duty', 'duty'],
  ['Average current', 'main_average'],
  ['Effective current', 'main_effective'],
  ['Peak current', 'main_peak'],
  ['Peak of one coil', 'peak'],
  ['Energy of one coil', 'energy'],
];

/** Nothing when the design has no sweep. */
export function sweepPage(grid: Grid, design: Design): Page | null {
  if (design.sweep === null) return null;
  const cells: Sheet = [];
  const run = design.runs[0]?.name ?? '';
  const top = opening(
    cells,
    'Sweep',
    `Current in the first conductor of the feed, run “${run}”, over engine speed.`,
  );
  table(
    cells,
    top,
    [{ title: 'Row', unit: '' }, ...FIGURES.map(([title, name]) => ({ title, unit: heading(name) }))],
    Array.from({ length: design.sweep.rows }, (_, i) => [
      words(String(i + 1)),
      ...FIGURES.map(([, name]) => shown(grid, name, { speed: design.points.length + i })),
    ]),
  );
  const widths = [8, ...FIGURES.map(() => 13)];
  return { name: 'Sweep', kind: 'shown', cells, widths, frozen: [top + 2, 0], landscape: false, looks: [] };
}
