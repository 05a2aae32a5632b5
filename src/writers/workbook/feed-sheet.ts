/** The first page: the verdict, what to buy, the cautions. */
import type { Design } from '../../design/design.ts';
import { type Cell, put, type Sheet } from '../../engine/cell.ts';
import type { Grid } from '../../engine/translate.ts';
import { judged } from '../../findings/judged.ts';
import { JUDGED_COLUMNS } from '../../findings/sheet.ts';
import { CAUTIONS } from '../cautions.ts';
import { ADDED, judgedColumn, SHOWN } from './judged.ts';
import { cellFor, heading, shown } from './links.ts';
import { type Column, type Look, opening, type Page, section, table, words } from './page.ts';

const WIDTHS = [20, 11, 10, 10, 11, 9, 9, 9, 10, 8, 8, 8];
const WIDE = WIDTHS.length;
/** Findings that the first page shows, the most pressing ones. */
const PRESSING = 4;

const formula = (text: string, unit?: string): Cell => ({
  role: 'formula',
  formula: text,
  ...(unit === undefined ? {} : { unit }),
});

export function feedPage(grid: Grid, design: Design): Page {
  const cells: Sheet = [];
  let row = opening(
    cells,
    design.title,
    'Power feed of the ignition coils. Every figure follows from the sheet Inputs; Guide says how to use this workbook.',
  );
  const count = judged(grid, design).length;
  const looks: Look[] = [];

  looks.push({ rows: [row + 1, row + 1], columns: [0, 1], word: 0 });
  row = table(cells, row, VERDICT, [verdicts(count)]);

  row = section(cells, row, 'What to buy', WIDE);
  row = table(
    cells,
    row,
    BUY,
    design.runs.map((_, run) => toBuy(grid, design, run)),
  );
  row = figures(grid, cells, row - 1);

  row = section(cells, row, 'Most pressing findings', WIDE);
  const shownRows = Math.min(PRESSING, count);
  looks.push({ rows: [row + 1, row + shownRows], columns: [0, 0], word: 0 });
  row = table(
    cells,
    row,
    FOUND,
    Array.from({ length: shownRows }, (_, i) => pressing(count, i + 1)),
  );

  const lists: [string, readonly string[]][] = [
    ['Cautions', CAUTIONS],
    ['Notes of the author', design.notes === null ? [] : [design.notes]],
    [
      'Taken where the design says nothing',
      design.assumed.map(({ path, value, why }) => `${path}: ${value} (${why})`),
    ],
  ];
  for (const [title, texts] of lists) {
    if (texts.length === 0) continue;
    row = section(cells, row, title, WIDE);
    for (const text of texts) {
      put(cells, row, 0, { role: 'text', value: texts.length > 1 ? `•  ${text}` : text, span: WIDE });
      row += 1;
    }
    row += 1;
  }
  return { name: 'Feed', kind: 'shown', cells, widths: WIDTHS, frozen: [2, 0], landscape: false, looks };
}

const VERDICT: Column[] = [
  { title: 'Verdict', span: 2 },
  { title: 'Fail' },
  { title: 'Unknown' },
  { title: 'Advice' },
  { title: 'Pass' },
  { title: 'Close to the limit', span: 2 },
];

function verdicts(count: number): Cell[] {
  const verdict = judgedColumn(count, JUDGED_COLUMNS.verdict);
  const of = (word: string): string => `COUNTIF(${verdict},"${word}")`;
  return [
    {
      role: 'verdict',
      formula: `IF(${of('fail')}>0,"${SHOWN.fail}",IF(${of('unknown')}>0,"${SHOWN.unknown}","PASS"))`,
    },
    formula(of('fail'), 'count'),
    formula(of('unknown'), 'count'),
    formula(of('advice'), 'count'),
    formula(of('pass'), 'count'),
    formula(`COUNTIF(${judgedColumn(count, ADDED.word)},"${SHOWN.close}")`, 'count'),
  ];
}

const BUY: Column[] = [
  { title: 'Run', unit: '' },
  { title: 'Size' },
  { title: 'Size is' },
  { title: 'Area', unit: 'mm²' },
  { title: 'Insulation' },
  { title: 'Number' },
  { title: 'Length each', unit: 'm' },
  { title: 'up to', unit: 'm' },
  { title: 'All together', unit: 'm' },
  { title: 'Fuse', unit: 'A' },
  { title: 'Fuse type' },
  { title: 'Relay', unit: 'A' },
];

function toBuy(grid: Grid, design: Design, run: number): Cell[] {
  const own = design.wires.flatMap((w, i) => (w.run === run ? [i] : []));
  const at = { run };
  const length = (wire: number | undefined): string => cellFor(grid, 'wire_length', { wire: wire as number });
  const lengths = `${length(own[0])}:${length(own.at(-1)).split('!')[1]}`;
  return [
    words(design.runs[run]?.name ?? ''),
    formula(`SUBSTITUTE(${cellFor(grid, 'gauge', at)},"mm2","mm²")`),
    formula(`IF(${cellFor(grid, 'auto', at)}=1,"chosen","stated")`),
    shown(grid, 'area', at),
    shown(grid, 'run_insulation', at),
    { role: 'given', value: own.length, unit: 'count' },
    formula(`MIN(${lengths})`, 'm'),
    formula(`IF(MAX(${lengths})>MIN(${lengths}),MAX(${lengths}),"")`, 'm'),
    formula(`SUM(${lengths})`, 'm'),
    formula(cellFor(grid, 'fuse_rating', at), 'rating'),
    shown(grid, 'fuse_type', at),
    formula(cellFor(grid, 'relay_rating', at), 'rating'),
  ];
}

/** What is said of the whole feed, a line each. */
function figures(grid: Grid, cells: Sheet, top: number): number {
  const names = ['copper_total', 'worst_drop', 'drop_limit', 'worst_total'] as const;
  const said = [
    'Copper of all conductors',
    'Drop of the worst coil’s path at the firing instant, feed and return together',
    'Drop that is allowed',
    'Average current of all coils together at the worst point',
  ];
  names.forEach((name, i) => {
    put(cells, top + i, 0, { role: 'member', value: said[i] as string, span: 8 });
    put(cells, top + i, 8, shown(grid, name));
    put(cells, top + i, 9, { role: 'unit', value: heading(name) });
  });
  return top + names.length + 1;
}

const FOUND: Column[] = [
  { title: 'Verdict' },
  { title: 'Subject', span: 3 },
  { title: 'Finding', span: 6 },
  { title: 'Margin %', span: 2 },
];

function pressing(count: number, rank: number): Cell[] {
  const at = `MATCH(${rank},${judgedColumn(count, ADDED.rank)},0)`;
  const of = (column: number): string => `INDEX(${judgedColumn(count, column)},${at},1)`;
  const margin = of(JUDGED_COLUMNS.margin);
  return [
    { role: 'verdict', formula: of(ADDED.word) },
    formula(of(JUDGED_COLUMNS.subject)),
    formula(of(ADDED.title)),
    formula(`IF(ISNUMBER(${margin}),${margin}*100,"")`, '%'),
  ];
}
