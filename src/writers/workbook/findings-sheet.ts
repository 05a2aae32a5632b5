/** The findings in order of urgency, by formula, so that the order follows the inputs. */
import type { Design } from '../../design/design.ts';
import { type Cell, put, type Sheet } from '../../engine/cell.ts';
import { PROBLEMS } from '../../engine/entered/sheet.ts';
import { evaluate } from '../../engine/evaluate.ts';
import type { Grid } from '../../engine/translate.ts';
import { findings } from '../../findings/read.ts';
import { JUDGED_COLUMNS, judgedRows } from '../../findings/sheet.ts';
import { ADDED, judgedColumn, SHOWN } from './judged.ts';
import { opening, type Page, table, UNCOUNTED } from './page.ts';

/** Verdict, subject, rule, value, limit, margin, meaning; beyond the print the source, in one line. */
const WIDTHS = [10.5, 15, 25, 10, 11, 8, 47, 170];

/** Rows that fit on a page at a size that can be read. */
const PER_PAGE = 62;
/** Rows that are printed besides those that are filled when the workbook is made. */
const SPARE = 6;

export function findingsPage(grid: Grid, design: Design): Page {
  const cells: Sheet = [];
  const count = judgedRows(grid, design);
  const about =
    'Failures first, then unknowns, then advice, then what passes, least margin first. Numbers in the sentences follow the inputs.';
  const top = opening(cells, 'Findings', about);
  const filled = findings(evaluate(design)).length + design.own.filter(({ sense }) => sense !== null).length;
  const printed = Math.min(count, filled + SPARE);
  const more = `SUMPRODUCT((${judgedColumn(count, ADDED.group)}<9)*1)-${printed}`;
  put(cells, 2, 0, {
    role: 'warning',
    formula: `IF(${PROBLEMS}>0,"${UNCOUNTED}",IF(${more}>0,"Not printed: the last "&(${more})&". They lie below the print area.",""))`,
  });
  const rows = Array.from({ length: count }, (_, i) => lineOf(count, i + 1));
  const titles = [
    'Verdict',
    'Subject',
    'Finding',
    'Value',
    'Limit',
    'Margin %',
    'What it means, what to do',
    'Source',
  ];
  table(
    cells,
    top,
    titles.map((title) => ({ title })),
    rows,
  );
  const [first, last] = [top + 1, top + count];
  return {
    name: 'Findings',
    kind: 'shown',
    cells,
    widths: WIDTHS,
    frozen: [top + 1, 0],
    repeated: 1,
    landscape: false,
    // The sources of the limits are for the screen.
    printed: WIDTHS.length - 1,
    printedRows: top + 1 + printed,
    tall: Math.ceil(printed / PER_PAGE),
    looks: [{ rows: [first, last], columns: [0, 0], word: 0 }],
    fitted: [first, last],
  };
}

function lineOf(count: number, rank: number): Cell[] {
  const at = `MATCH(${rank},${judgedColumn(count, ADDED.rank)},0)`;
  const of = (column: number): string => `INDEX(${judgedColumn(count, column)},${at},1)`;
  /** Rows of rules that do not apply stand at the end and stay empty. */
  const said = (text: string): string => `IF(${of(ADDED.word)}="","",${text})`;
  const show = (column: number, unit?: string): Cell => ({
    role: 'formula',
    formula: said(of(column)),
    ...(unit === undefined ? {} : { unit }),
  });
  return [
    { role: 'verdict', formula: of(ADDED.word) },
    show(JUDGED_COLUMNS.subject),
    show(ADDED.title),
    show(ADDED.value, 'any'),
    show(ADDED.limit, 'any'),
    show(ADDED.margin, 'margin'),
    // What passes with room to spare needs no words.
    { role: 'formula', formula: said(`IF(${of(ADDED.word)}="${SHOWN.pass}","",${of(ADDED.meaning)})`) },
    { role: 'source', formula: said(of(ADDED.source)) },
  ];
}
