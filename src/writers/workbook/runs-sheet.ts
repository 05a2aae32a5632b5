/** Every run: what flows in it, what it drops, how warm its conductor gets. */
import type { Design } from '../../design/design.ts';
import type { Sheet } from '../../engine/cell.ts';
import type { Grid } from '../../engine/translate.ts';
import { labelOf } from '../../views/print.ts';
import { LOAD, WIRE } from '../../views/views.ts';
import { heads, live, putView, row as rowOf, worstName } from './figures.ts';
import { opening, type Page, warned, words } from './page.ts';

const WIDTHS = [20, 19, 13, ...WIRE.read.map(() => 12)];

export function runsPage(grid: Grid, design: Design): Page {
  const cells: Sheet = [];
  let row = opening(
    cells,
    'Runs',
    'Of each run the conductor that carries most is shown; the sheet Loads has all of them.',
  );
  warned(cells);
  row = putView(
    cells,
    row,
    WIRE.title,
    WIDTHS.length,
    heads(design, ['Run', 'Conductor', labelOf('gauge')], WIRE),
    design.runs.map(({ name }, run) => [
      words(name),
      worstName(run),
      live(grid, design, 'gauge', { run }),
      ...rowOf(grid, design, WIRE, { run }),
    ]),
  );
  putView(
    cells,
    row,
    LOAD.title,
    WIDTHS.length,
    heads(design, ['Run', 'Conductor', 'Point'], LOAD),
    design.runs.flatMap((r, run) =>
      design.points.map((p, point) => [
        words(r.name),
        worstName(run),
        words(p.name),
        ...rowOf(grid, design, LOAD, { run, point }),
      ]),
    ),
  );
  return {
    name: 'Runs',
    kind: 'shown',
    cells,
    widths: WIDTHS,
    frozen: [2, 0],
    landscape: false,
    looks: [],
  };
}
