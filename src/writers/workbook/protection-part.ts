/** Fuses, relays and faults, and the curves of each fuse against the conductors behind it. */
import type { Design } from '../../design/design.ts';
import { put, type Sheet } from '../../engine/cell.ts';
import type { Grid } from '../../engine/translate.ts';
import type { Chart, Lines, Series } from '../../ooxml/chart.ts';
import type { View } from '../../views/view.ts';
import { FAULT, FUSE, RELAY } from '../../views/views.ts';
import { type Charted, charted, type Group, groups } from './charted-sheet.ts';
import { heads, putView, row as rowOf } from './figures.ts';
import { cellFor } from './links.ts';
import { lineIn, markIn } from './look.ts';
import { type On, type Part, section, words } from './page.ts';

/** Rows that a chart takes, and the space behind it. */
const TALL = 18;
const SPACE = 1;

export function protectionPart(grid: Grid, design: Design, { cells, wide }: On, top: number): Part {
  let row = top;
  // Each table may go to the next page, the words before the first chart with it.
  const starts: number[] = [];
  /** A row for each run of which this is true. */
  const each = (view: View, has: (run: Design['runs'][number]) => boolean): void => {
    const rows = design.runs.flatMap((r, run) =>
      has(r) ? [[words(r.name), ...rowOf(grid, design, view, { run, feed: run, window: 0 })]] : [],
    );
    if (rows.length > 0) starts.push(row);
    row = putView(cells, row, view.title, wide, heads(design, ['Run'], view), rows);
  };
  each(FUSE, (r) => r.fuse !== null);
  // In two rows, to be read on paper.
  const half = Math.ceil(RELAY.read.length / 2);
  const relayed = (r: Design['runs'][number]): boolean => r.relay !== null;
  each({ ...RELAY, read: RELAY.read.slice(0, half) }, relayed);
  each({ ...RELAY, title: `${RELAY.title}, continued`, read: RELAY.read.slice(half) }, relayed);
  each(FAULT, (r) => r.side === 'feed');
  const source = cellFor(grid, 'source_ohm', {});
  put(cells, row - 1, 0, {
    role: 'about',
    formula: `IF(ISNUMBER(${source}),"","Fill in the resistance of the source on Inputs: without it no fault current is known and the charts stay empty.")`,
  });
  row += 1;

  const all = groups(design);
  const charts: Chart[] = [];
  const from = charted(grid, design);
  all.forEach((group, i) => {
    starts.push(row);
    if (i === 0) row = reading(cells, row, wide);
    charts.push({
      ...curves(design, group, i, from),
      rows: [row, row + TALL],
      columns: [0, wide],
    });
    row += TALL + SPACE;
  });
  return { row, charts, starts };
}

const READING = [
  'A conductor is protected where its line lies above the solid line of the fuse. Between the two lines of the fuse, the fuse may or may not open in time; below both, it opens too late.',
  'The marks lie on the solid line: the longest time until the fuse opens on a short, and on a driver that stays on. A mark that does not show lies above the chart: that current need not open the fuse.',
];

function reading(cells: Sheet, top: number, wide: number): number {
  let row = section(cells, top, 'Time-current curves', wide);
  for (const value of READING) {
    put(cells, row, 0, { role: 'text', value, span: wide });
    row += 1;
  }
  return row + 1;
}

/** Lines of conductors, told apart by their dashes first and by their colours second. */
const WIRES = ['plain', 'limit', 'strong'] as const;
/** Ends of the time axis: faster is of no matter here, and slower is as good as never [s]. */
const TIMES = { least: 0.01, most: 10_000 } as const;

function curves(
  design: Design,
  { fuse, runs }: Group,
  index: number,
  from: Charted,
): Omit<Lines, 'rows' | 'columns'> {
  const name = (run: number): string => design.runs[run]?.name ?? '';
  const series: Series[] = [
    { ...from.curve('curve_slowest', fuse), ...lineIn('strong') },
    { ...from.curve('curve_fastest', fuse), ...lineIn('plain') },
    ...runs.map(
      (run, i): Series => ({
        ...from.curve('curve_withstood', run),
        ...lineIn(WIRES[i % WIRES.length] as (typeof WIRES)[number], i + 1),
      }),
    ),
    { ...from.marks(index, 'smallest'), ...markIn('plain', 'diamond') },
    { ...from.marks(index, 'largest'), ...markIn('plain', 'triangle') },
    { ...from.stuck(index), ...markIn('plain', 'square') },
  ];
  return {
    kind: 'lines',
    title: `Fuse of run “${name(fuse)}” and the conductors behind it`,
    x: { title: 'Current [A]', log: true, format: '0' },
    y: { title: 'Time [s]', log: true, ...TIMES, format: 'General' },
    series,
  };
}
