/** Every run: what flows in it, what it drops, how warm its conductor gets. */
import type { Design } from '../../design/design.ts';
import type { Sheet } from '../../engine/cell.ts';
import type { Grid } from '../../engine/translate.ts';
import { columns, type Figure, ofRun, type Part, putPart, sizeOf, worstName } from './figures.ts';
import { picked } from './links.ts';
import { opening, type Page, words } from './page.ts';
import { worstOf } from './worst.ts';

const WIDTHS = [20, 19, 13, 12, 12, 12, 12, 12, 12];

export function runsPage(grid: Grid, design: Design): Page {
  const cells: Sheet = [];
  let row = opening(
    cells,
    'Runs',
    'Of each run the conductor that carries most is shown; the sheet Loads has all of them.',
  );
  row = putPart(cells, row, 'Conductors', WIDTHS.length, conductors(grid, design));
  putPart(cells, row, 'Currents and drops', WIDTHS.length, loads(grid, design));
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

const CONDUCTOR: readonly Figure[] = [
  ['Area', 'area'],
  ['Ampacity at its place', 'ampacity'],
  ['Effective current', 'worst_effective'],
  ['Ambient', 'run_ambient'],
  ['At most', 'wire_T'],
  ['Resistance', 'wire_ohm'],
];

const conductors: Part = (grid, design) => [
  columns(['Run', 'Conductor', 'Size'], CONDUCTOR),
  design.runs.map((r, run) => [
    words(r.name),
    worstName(run),
    sizeOf(grid, run),
    ...CONDUCTOR.map(([, name]) => ofRun(grid, run, name)),
  ]),
];

const LOAD: readonly Figure[] = [
  ['Average current', 'average'],
  ['Effective current', 'effective'],
  ['Peak current', 'peak_current'],
  ['Average drop (meter)', 'drop_average'],
  ['Peak drop (scope)', 'drop_peak'],
];

const loads: Part = (grid, design) => [
  columns(['Run', 'Conductor', 'Point'], LOAD),
  design.runs.flatMap((r, run) =>
    design.points.map((p, point) => {
      const row = `(${worstOf(run, 'worst')}-1)*${design.points.length}+${point + 1}`;
      return [
        words(r.name),
        worstName(run),
        words(p.name),
        ...LOAD.map(([, name]) => picked(grid, name, row)),
      ];
    }),
  ),
];
