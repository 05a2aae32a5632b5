/** What the coils get; what flows in every run, what it drops, how warm it gets; and what protects it. */
import type { Design } from '../../design/design.ts';
import { put, type Sheet } from '../../engine/cell.ts';
import type { Grid } from '../../engine/translate.ts';
import { labelOf } from '../../views/print.ts';
import { LOAD, WIRE } from '../../views/views.ts';
import { breaksOf } from './breaks.ts';
import { coilsPart } from './coils-part.ts';
import { heads, live, putView, row as rowOf, worstName } from './figures.ts';
import { type On, opening, type Page, type Part, putBeside, warned, words } from './page.ts';
import { protectionPart } from './protection-part.ts';

const NAME = 'Runs';
/** As many columns as the widest of its tables; beside them, for the screen, the currents at every point. */
const PRINTED = [16, 14.5, 12, 11, 11, 13, 11.5, 11, 11, 9, 9];
const BESIDE = PRINTED.length + 1;
const WIDTHS = [...PRINTED, 4, 20, 19, 13, ...LOAD.read.map(() => 12)];

export function runsPage(grid: Grid, design: Design): Page {
  const cells: Sheet = [];
  const top = opening(
    cells,
    'Coils, runs and protection',
    'What the coils get, what flows in each run, in its most loaded conductor, and whether its fuse protects it.',
  );
  warned(cells);
  const on: On = { name: NAME, cells, wide: PRINTED.length };
  const coils = coilsPart(grid, design, on, top);
  const runs = runsPart(grid, design, on, coils.row);
  const guarded = protectionPart(grid, design, on, runs.row);
  const parts = [coils, runs, guarded];
  // The last chart lies within the area that is printed.
  put(cells, guarded.row, 0, { role: 'text', value: '' });
  const laid = { cells, widths: PRINTED, frozen: [3, 0], landscape: false } as const;
  const breaks = breaksOf(
    laid,
    parts.flatMap(({ starts }) => starts),
  );
  loadsBeside(grid, design, cells, top);
  return {
    name: NAME,
    kind: 'shown',
    ...laid,
    widths: WIDTHS,
    printed: PRINTED.length,
    looks: [],
    charts: parts.flatMap(({ charts }) => charts),
    breaks,
  };
}

function runsPart(grid: Grid, design: Design, { cells, wide }: On, top: number): Part {
  const row = putView(
    cells,
    top,
    WIRE.title,
    wide,
    heads(design, ['Run', 'Conductor', labelOf('gauge')], WIRE),
    design.runs.map(({ name }, run) => [
      words(name),
      worstName(run),
      live(grid, design, 'gauge', { run }),
      ...rowOf(grid, design, WIRE, { run }),
    ]),
  );
  return { row, charts: [], starts: [top] };
}

/** To the right of what is printed. */
function loadsBeside(grid: Grid, design: Design, cells: Sheet, top: number): void {
  const own: Sheet = [];
  putView(
    own,
    0,
    `${LOAD.title}, in the most loaded conductor of each run`,
    WIDTHS.length - BESIDE,
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
  putBeside(cells, top, BESIDE, own);
}
