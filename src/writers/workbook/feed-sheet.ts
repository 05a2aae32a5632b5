/** The first page, to be read in ten seconds: the verdict, what limits, what would pass, what to buy, where the drop arises. */
import type { Design } from '../../design/design.ts';
import { type Cell, put, type Sheet } from '../../engine/cell.ts';
import { CHANGED, FIRST_PROBLEM, PROBLEMS } from '../../engine/entered/sheet.ts';
import type { Grid } from '../../engine/translate.ts';
import { JUDGED_COLUMNS, judgedRows } from '../../findings/sheet.ts';
import { QUANTITIES } from '../../model/model.ts';
import { hasRules } from '../../own/found.ts';
import { ownRows } from '../../own/rows.ts';
import { quantityOf } from '../../views/view.ts';
import { BUY, FEED, SHARE } from '../../views/views.ts';
import { CAUTIONS } from '../cautions.ts';
import { heads, live, row as rowOf } from './figures.ts';
import { ADDED, judgedColumn, SHOWN } from './judged.ts';
import { MOST_REMEDIES, remedyCell } from './kept-sheet.ts';
import { cellFor, heading, picked } from './links.ts';
import { type Column, type Look, opening, type Page, section, table, texts, words } from './page.ts';
import { CHECK_INPUTS } from './styles.ts';
import { weighedCells } from './weighed.ts';

const WIDTHS = [20, 11, 10, 10, 11, 9, 9, 9, 10, 8, 8, 8];
const WIDE = WIDTHS.length;
/** Where the verdict stands. */
export const VERDICT_CELL = 'Feed!$A$5';
/** Findings that the first page shows: the most pressing ones, then what passes with least margin. */
const PRESSING = 4;
const CLOSEST = 2;

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
  const count = judgedRows(grid, design);
  const looks: Look[] = [];

  put(cells, 2, 0, { role: 'warning', formula: FIRST_PROBLEM, span: WIDE });
  looks.push({ rows: [row + 1, row + 1], columns: [0, 1], word: 0 });
  const weighed = weighedCells(grid, design);
  const ofAuthor = hasRules(design);
  row = table(cells, row, ofAuthor ? [...VERDICT, AUTHORS] : VERDICT, [
    verdicts(count, design, weighed?.verdict ?? null),
  ]);
  if (weighed !== null) {
    put(cells, row - 1, 0, { role: 'warning', formula: weighed.said, span: WIDE });
    row += 1;
  }
  const shownRows = Math.min(PRESSING + CLOSEST, count);
  row = section(cells, row, 'What limits', WIDE);
  looks.push({ rows: [row + 1, row + shownRows], columns: [0, 0], word: 0 });
  row = table(
    cells,
    row,
    LIMITS,
    Array.from({ length: shownRows }, (_, i) => pressing(count, i + 1)),
  );
  const fitted = [row - 1, row] as const;
  row = remedy(cells, row - 1, count, ownRows(design));

  put(cells, row, 0, {
    role: 'title',
    formula: `"${BUY.title}"&IF(${FAILS},": nothing while something fails; the sheet Runs has the sizes as they are now","")`,
    span: WIDE,
  });
  row = table(
    cells,
    row + 1,
    heads(design, ['Run'], BUY),
    design.runs.map(({ name }, run) => [
      words(name),
      ...rowOf(grid, design, BUY, { run }).map(unlessFailing),
    ]),
  );
  row = budget(grid, design, cells, row);
  row = figures(grid, design, cells, row);

  const lists: [string, readonly string[]][] = [
    ['Cautions', CAUTIONS],
    ['Notes of the author', design.notes === null ? [] : [design.notes]],
  ];
  for (const [title, said] of lists) {
    if (said.length === 0) continue;
    row = texts(cells, section(cells, row, title, WIDE), said, WIDE) + 1;
  }
  return {
    name: 'Feed',
    kind: 'shown',
    cells,
    widths: WIDTHS,
    frozen: [2, 0],
    landscape: false,
    tall: 1,
    looks,
    fitted,
  };
}

/** Whether something fails; not while an input cannot be taken. */
const FAILS = `${VERDICT_CELL}="${SHOWN.fail}"`;

const UNRULED = 'no change is tried against a rule of the author’s own.';

/** While a rule fails: why the most pressing does, and what would pass as long as no input was changed. */
function remedy(cells: Sheet, top: number, count: number, own: number): number {
  const failing = (of: number): string =>
    `COUNTIF(${judgedColumn(of, JUDGED_COLUMNS.verdict)},"${SHOWN.fail}")`;
  const others = Array.from({ length: MOST_REMEDIES - 1 }, (_, i) => remedyCell(i + 1)).map(
    (other) => `IF(${other}="","",CHAR(10)&"Or: "&${other})`,
  );
  const tried = [remedyCell(0), ...others].join('&');
  [
    `"Why: "&${ranked(count, 1, ADDED.meaning)}`,
    `"What would pass: "&IF(${failing(count - own)}=0,"${UNRULED}",IF(${CHANGED}>0,${remedyCell(MOST_REMEDIES)},${tried}))`,
  ].forEach((text, i) => {
    put(cells, top + i, 0, {
      role: 'text',
      formula: `IF(${FAILS},IF(${failing(count)}=0,"",${text}),"")`,
      span: WIDE,
    });
  });
  return top + 3;
}

/** Nothing to buy stands there while something fails. */
const unlessFailing = (cell: Cell): Cell =>
  cell.formula === undefined ? cell : { ...cell, formula: `IF(${FAILS},"",${cell.formula})` };

const VERDICT: Column[] = [
  { title: 'Verdict', span: 2 },
  { title: 'Fail' },
  { title: 'Unknown' },
  { title: 'Advice' },
  { title: 'Pass' },
  { title: 'Close to the limit', span: 2 },
];
const AUTHORS: Column = { title: 'Author’s own, not met', span: 3 };

/** `read` is the cell with the verdict of the readings, where there is a card. */
function verdicts(count: number, design: Design, read: string | null): Cell[] {
  const own = ownRows(design);
  const verdict = judgedColumn(count, JUDGED_COLUMNS.verdict);
  const of = (word: string): string => `COUNTIF(${verdict},"${word}")`;
  const ours = judgedColumn(count - own, JUDGED_COLUMNS.verdict);
  const theirs = ['fail', 'unknown'].map((word) => `${of(word)}-COUNTIF(${ours},"${word}")`);
  const authors = formula(`IF(${PROBLEMS}>0,"",${theirs.join('+')})`, 'count');
  // Where a part is not known rules are judged for every choice of it, with the readings; here they stand for one.
  const rules = design.unknowns.length > 0 ? theirs : [of('fail'), of('unknown')];
  const some = (i: 0 | 1, word: string): string =>
    `${rules[i]}${read === null ? '' : `+IF(${read}="${word}",1,0)`}>0,"${word}"`;
  return [
    {
      role: 'verdict',
      formula: `IF(${PROBLEMS}>0,"${CHECK_INPUTS}",IF(${some(0, SHOWN.fail)},IF(${some(1, SHOWN.unknown)},"PASS")))`,
    },
    ...['fail', 'unknown', 'advice', 'pass'].map((word) =>
      formula(`IF(${PROBLEMS}>0,"",${of(word)})`, 'count'),
    ),
    formula(`COUNTIF(${judgedColumn(count, ADDED.word)},"${SHOWN.close}")`, 'count'),
    ...(hasRules(design) ? [authors] : []),
  ];
}

/** What is said of the whole feed, a line each. */
function figures(grid: Grid, design: Design, cells: Sheet, top: number): number {
  const names = FEED.read.map(quantityOf);
  names.forEach((name, i) => {
    put(cells, top + i, 0, { role: 'member', value: QUANTITIES[name].label, span: 8 });
    const cell = live(grid, design, name, {});
    put(cells, top + i, 8, name === 'copper_total' ? unlessFailing(cell) : cell);
    put(cells, top + i, 9, { role: 'unit', value: heading(name, design.units) });
  });
  return top + names.length + 1;
}

/** What the worst coil’s path drops at its worst point, run by run, and the voltage that is left behind each. */
function budget(grid: Grid, design: Design, cells: Sheet, top: number): number {
  const { units, runs } = design;
  const drop = (run: number): string => cellFor(grid, 'run_drop', { run });
  const of = (side: 'feed' | 'return'): number[] =>
    [...runs.keys()].filter((run) => runs[run]?.side === side);
  const [feed, back] = [of('feed'), of('return')];
  const supply = picked(grid, 'point_supply', cellFor(grid, 'worst_drop_point', {}), units).formula as string;
  const none: Cell = { role: 'member', value: null };
  const level = (text: string): Cell => formula(`IF(${PROBLEMS}>0,"",${text || '0'})`, 'any');
  /** A run that other coils have to themselves drops nothing here. */
  const onPath = (run: number, cell: Cell, otherwise = ''): Cell => ({
    ...cell,
    formula: `IF(${PROBLEMS}>0,"",IF(${drop(run)}=0,"${otherwise}",${cell.formula}))`,
  });
  const row = (run: number, behind: string): Cell[] => [
    words(runs[run]?.name ?? ''),
    ...rowOf(grid, design, SHARE, { run }).map((cell) => onPath(run, cell)),
    onPath(run, level(behind), 'not on its path'),
  ];
  const left = (i: number): string => [supply, ...feed.slice(0, i + 1).map(drop)].join('-');
  const ahead = (i: number): string => back.slice(i).map(drop).join('+');
  const rows = [
    [words('battery'), none, none, level(supply)],
    ...feed.map((run, i) => row(run, left(i))),
    [words('coil and driver'), none, none, level(ahead(0))],
    ...back.map((run, i) => row(run, ahead(i + 1))),
  ];
  const [coil, point] = (['worst_coil', 'worst_drop_point'] as const).map((name) =>
    live(grid, design, name, {}),
  );
  put(cells, top, 0, {
    role: 'title',
    formula: `"Drop budget"&IF(${PROBLEMS}>0,"",": "&${coil?.formula}&" at "&${point?.formula})`,
    span: WIDE,
  });
  const columns = [
    ...heads(design, ['From the battery to the worst coil and back'], SHARE),
    { title: 'Left behind it, against the negative post', unit: 'V', span: 3 },
  ];
  return table(cells, top + 1, columns, rows);
}

const LIMITS: Column[] = [
  { title: 'Verdict' },
  { title: 'Where', span: 2 },
  { title: 'What', span: 3 },
  { title: 'Value', span: 2 },
  { title: 'Limit', span: 2 },
  { title: 'Margin %', span: 2 },
];

/** What stands in a column of the finding of this rank, as a formula. */
const ranked = (count: number, rank: number | string, column: number): string =>
  `INDEX(${judgedColumn(count, column)},MATCH(${rank},${judgedColumn(count, ADDED.rank)},0),1)`;

/** A row of what limits; the last ones are what passes with least margin, however much else there is. */
function pressing(count: number, row: number): Cell[] {
  const passing = `SUMPRODUCT((${judgedColumn(count, ADDED.group)}<3)*1)+${row - PRESSING}`;
  const rank = row > PRESSING ? `MAX(${row},${passing})` : row;
  const word = ranked(count, rank, ADDED.word);
  const of = (column: number): string => `IFERROR(IF(${word}="","",${ranked(count, rank, column)}),"")`;
  return [
    { role: 'verdict', formula: of(ADDED.word) },
    formula(of(JUDGED_COLUMNS.subject)),
    formula(of(ADDED.title)),
    formula(of(ADDED.value), 'any'),
    formula(of(ADDED.limit), 'any'),
    formula(of(ADDED.margin), 'margin'),
  ];
}
