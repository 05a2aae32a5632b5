/** Fuses, relays and faults, and the curves of each fuse against the conductors behind it. */
import type { Design } from '../../design/design.ts';
import { type Cell, put, type Sheet } from '../../engine/cell.ts';
import type { Grid } from '../../engine/translate.ts';
import type { Chart, Dash, Lines, Series } from '../../ooxml/chart.ts';
import { breaksOf } from './breaks.ts';
import { type Charted, charted, type Group, groups } from './charted-sheet.ts';
import { columns, type Figure, ofRun, type Part, putPart } from './figures.ts';
import { cellFor, heading, shown } from './links.ts';
import { opening, type Page, section, words } from './page.ts';

const WIDTHS = [20, 13, 13, 13, 13, 13, 13, 13];
const WIDE = WIDTHS.length;
/** Rows that a chart takes, and the space behind it. */
const TALL = 25;
const SPACE = 2;

export function protectionPage(grid: Grid, design: Design): Page {
  const cells: Sheet = [];
  let row = opening(
    cells,
    'Protection',
    'Each fuse must carry its load and open before a short harms a conductor behind it.',
  );
  row = putPart(cells, row, 'Fuses', WIDE, fuses(grid, design));
  row = putPart(cells, row, 'Relays', WIDE, relays(grid, design));
  row = putPart(cells, row, 'Shorts to the chassis, by feed run', WIDE, faults(grid, design));
  const source = cellFor(grid, 'source_ohm', {});
  put(cells, row - 1, 0, {
    role: 'about',
    formula: `IF(ISNUMBER(${source}),"","Fill in the resistance of the source on Inputs: without it no fault current is known, and the charts are empty.")`,
  });
  row += 1;

  const all = groups(design);
  const charts: Chart[] = [];
  // The tables, then each chart, the first one with the words before it.
  const starts = [3];
  const from = charted(grid, design);
  all.forEach((group, i) => {
    starts.push(row);
    if (i === 0) row = reading(cells, row);
    charts.push({ ...curves(design, group, i, from), rows: [row, row + TALL], columns: [0, WIDE] });
    row += TALL + SPACE;
  });
  // The last chart lies within the area that is printed.
  if (charts.length > 0) put(cells, row - 1, 0, { role: 'text', value: '' });
  const laid = { cells, widths: WIDTHS, frozen: [2, 0], landscape: false } as const;
  return { name: 'Protection', kind: 'shown', ...laid, looks: [], charts, breaks: breaksOf(laid, starts) };
}

const READING = [
  'A conductor is protected where its line lies above the solid line of the fuse. Where it lies below, the fuse may open too late: between the two lines of the fuse it may or may not.',
  'The marks lie on the solid line: what it takes at most until the fuse opens on a short, and on a driver that stays on. A mark that does not show lies above the chart: that current need not open the fuse.',
];

function reading(cells: Sheet, top: number): number {
  let row = section(cells, top, 'Time-current curves', WIDE);
  for (const value of READING) {
    put(cells, row, 0, { role: 'text', value, span: WIDE });
    row += 1;
  }
  return row + 1;
}

/** Lines of conductors, told apart by their dashes first and by their colours second. */
const WIRES: readonly (readonly [Dash, string])[] = [
  ['dash', '1F5FA8'],
  ['sysDot', '9B1C1C'],
  ['dashDot', '1E6B34'],
  ['lgDash', '7A5200'],
  ['sysDash', '6B3FA0'],
  ['lgDashDotDot', '0F766E'],
];
const INK = '1F2933';
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
    {
      ...from.curve('curve_slowest', fuse),
      drawn: { dash: 'solid', points: 2.25 },
      color: INK,
    },
    {
      ...from.curve('curve_fastest', fuse),
      drawn: { dash: 'solid', points: 0.75 },
      color: INK,
    },
    ...runs.map((run, i): Series => {
      const [dash, color] = WIRES[i % WIRES.length] as (typeof WIRES)[number];
      return {
        ...from.curve('curve_wire', run),
        drawn: { dash, points: 2 },
        color,
      };
    }),
    {
      ...from.marks(index, 'smallest'),
      drawn: { mark: 'diamond' },
      color: INK,
    },
    { ...from.marks(index, 'largest'), drawn: { mark: 'triangle' }, color: INK },
    { ...from.stuck(index), drawn: { mark: 'square' }, color: INK },
  ];
  return {
    kind: 'lines',
    title: `Fuse of run “${name(fuse)}” and the conductors behind it`,
    x: { title: 'Current [A]', log: true, format: '0' },
    y: { title: 'Time [s]', log: true, ...TIMES, format: 'General' },
    series,
  };
}

const FUSE: readonly Figure[] = [
  ['Rating', 'fuse_rating'],
  ['Load of the rating', 'fuse_load'],
  ['Ambient', 'fuse_ambient'],
];

const fuses: Part = (grid, design) => [
  columns(['Run', 'Type'], FUSE),
  design.runs.flatMap((r, run) =>
    r.fuse === null
      ? []
      : [
          [
            words(r.name),
            shown(grid, 'fuse_type', { run }),
            ...FUSE.map(([, name]) => ofRun(grid, run, name)),
          ],
        ],
  ),
];

const RELAY: readonly Figure[] = [
  ['Rating', 'relay_rating'],
  ['Load of the rating', 'relay_load'],
  ['Ambient', 'relay_ambient'],
  ['Pulls in hot at', 'relay_pull_in'],
  ['Has while cranking', 'relay_supply'],
  ['Drop of the contact', 'contact_drop'],
  ['Heat in the contact', 'contact_heat'],
];

const relays: Part = (grid, design) => [
  columns(['Run'], RELAY),
  design.runs.flatMap((r, run) =>
    r.relay === null ? [] : [[words(r.name), ...RELAY.map(([, name]) => ofRun(grid, run, name))]],
  ),
];

const FAULT: readonly Figure[] = [
  ['Fuse that protects it', 'run_fuse'],
  ['Largest fault current', 'start_fault'],
  ['Smallest fault current', 'end_fault'],
];

const faults: Part = (grid, design) => [
  [
    ...columns(['Run'], FAULT),
    { title: 'Opens at the latest after', unit: 's' },
    { title: 'Must open within', unit: 's' },
    { title: 'Not protected from', unit: heading('window_from') },
    { title: 'to', unit: heading('window_to') },
  ],
  design.runs.flatMap((r, run): Cell[][] =>
    r.side === 'feed'
      ? [
          [
            words(r.name),
            ...FAULT.map(([, name]) => ofRun(grid, run, name)),
            { ...shown(grid, 'end_opening', { run }), unit: 'time' },
            { ...shown(grid, 'open_limit'), unit: 'time' },
            shown(grid, 'window_from', { feed: run, window: 0 }),
            shown(grid, 'window_to', { feed: run, window: 0 }),
          ],
        ]
      : [],
  ),
];
