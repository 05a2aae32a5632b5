/** The first page: the verdict, what to buy, the cautions. */
import { address } from '../../basis/address.ts';
import type { Design } from '../../design/design.ts';
import { type Cell, put, type Sheet } from '../../engine/cell.ts';
import { FIRST_PROBLEM, PROBLEMS } from '../../engine/entered/sheet.ts';
import type { Grid } from '../../engine/translate.ts';
import { laidOut } from '../../findings/judged.ts';
import { JUDGED_COLUMNS } from '../../findings/sheet.ts';
import { QUANTITIES } from '../../model/model.ts';
import { quantityOf } from '../../views/view.ts';
import { BUY, FEED } from '../../views/views.ts';
import { CAUTIONS } from '../cautions.ts';
import { heads, live, putView, row as rowOf } from './figures.ts';
import { ADDED, judgedColumn, SHOWN } from './judged.ts';
import { heading } from './links.ts';
import { type Column, type Look, opening, type Page, section, table, words } from './page.ts';
import { CHECK_INPUTS } from './styles.ts';

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
  const count = laidOut(grid, design).length;
  const looks: Look[] = [];

  put(cells, 2, 0, { role: 'warning', formula: FIRST_PROBLEM, span: WIDE });
  looks.push({ rows: [row + 1, row + 1], columns: [0, 1], word: 0 });
  row = table(cells, row, VERDICT, [verdicts(count)]);

  row = putView(
    cells,
    row,
    BUY.title,
    WIDE,
    heads(design, ['Run'], BUY),
    design.runs.map(({ name }, run) => [
      words(name),
      ...rowOf(grid, design, BUY, { run }).map((cell) => unlessBlocked(cell, count)),
    ]),
  );
  put(cells, row - 1, 0, {
    role: 'about',
    formula: `IF(${address(4, 0)}="${SHOWN.fail}","Something fails: nothing to buy until it is corrected. The sheet Runs has the sizes as they are now.","")`,
  });
  row = figures(grid, design, cells, row);

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
      'Assumed where the design says nothing',
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

/** Nothing to buy stands there while something fails. */
function unlessBlocked(cell: Cell, count: number): Cell {
  if (cell.formula === undefined) return cell;
  const fails = `COUNTIF(${judgedColumn(count, JUDGED_COLUMNS.verdict)},"fail")`;
  return { ...cell, formula: `IF(${fails}>0,"",${cell.formula})` };
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
      formula: `IF(${PROBLEMS}>0,"${CHECK_INPUTS}",IF(${of('fail')}>0,"${SHOWN.fail}",IF(${of('unknown')}>0,"${SHOWN.unknown}","PASS")))`,
    },
    ...['fail', 'unknown', 'advice', 'pass'].map((word) =>
      formula(`IF(${PROBLEMS}>0,"",${of(word)})`, 'count'),
    ),
    formula(`COUNTIF(${judgedColumn(count, ADDED.word)},"${SHOWN.close}")`, 'count'),
  ];
}

/** What is said of the whole feed, a line each. */
function figures(grid: Grid, design: Design, cells: Sheet, top: number): number {
  const names = FEED.read.map(quantityOf);
  names.forEach((name, i) => {
    put(cells, top + i, 0, { role: 'member', value: QUANTITIES[name].label, span: 8 });
    put(cells, top + i, 8, live(grid, design, name, {}));
    put(cells, top + i, 9, { role: 'unit', value: heading(name, design.units) });
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
  const found = (column: number): string => `INDEX(${judgedColumn(count, column)},${at},1)`;
  const of = (column: number): string => `IF(${found(ADDED.word)}="","",${found(column)})`;
  const margin = of(JUDGED_COLUMNS.margin);
  return [
    { role: 'verdict', formula: of(ADDED.word) },
    formula(of(JUDGED_COLUMNS.subject)),
    formula(of(ADDED.title)),
    formula(`IF(ISNUMBER(${margin}),${margin}*100,"")`, '%'),
  ];
}
