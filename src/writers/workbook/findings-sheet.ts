/** The findings in order of urgency, by formula, so that the order follows the inputs. */
import type { Design } from '../../design/design.ts';
import type { Cell, Sheet } from '../../engine/cell.ts';
import type { Grid } from '../../engine/translate.ts';
import { JUDGED_COLUMNS, judged } from '../../findings/sheet.ts';
import { ADDED, judgedColumn, sentenceOf } from './judged.ts';
import { opening, type Page, table } from './page.ts';

const WIDTHS = [15, 17, 32, 10, 10, 10, 9, 10, 88, 30];
const MEANING = 8;

export function findingsPage(grid: Grid, design: Design): Page {
  const cells: Sheet = [];
  const found = judged(grid, design);
  const about =
    'Failing first, then unknown, then passing with the least margin first. [value] and [limit] are those of the row; other brackets hold symbols of the sheet Quantities.';
  const top = opening(cells, 'Findings', about);
  const rows = found.map((_, i) => lineOf(found.length, i + 1));
  const titles = [
    'Verdict',
    'Subject',
    'Finding',
    'Value',
    'must be',
    'Limit',
    'Unit',
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
  const [first, last] = [top + 1, top + found.length];
  const texts = found.flatMap(({ rule }) =>
    (['pass', 'fail', 'unknown'] as const).map((v) => sentenceOf(rule, v)),
  );
  const longest = texts.reduce((a, b) => (b.length > a.length ? b : a), '');
  return {
    name: 'Findings',
    kind: 'shown',
    cells,
    widths: WIDTHS,
    frozen: [top + 1, 0],
    landscape: true,
    looks: [{ rows: [first, last], columns: [0, 0], word: 0 }],
    longest: { rows: [first, last], texts: new Map([[MEANING, longest]]) },
  };
}

function lineOf(count: number, rank: number): Cell[] {
  const at = `MATCH(${rank},${judgedColumn(count, ADDED.rank)},0)`;
  const of = (column: number): string => `INDEX(${judgedColumn(count, column)},${at},1)`;
  const margin = of(JUDGED_COLUMNS.margin);
  const show = (column: number, unit?: string): Cell => ({
    role: 'formula',
    formula: of(column),
    ...(unit === undefined ? {} : { unit }),
  });
  return [
    { role: 'verdict', formula: of(ADDED.word) },
    show(JUDGED_COLUMNS.subject),
    show(ADDED.title),
    show(ADDED.value, 'any'),
    show(ADDED.sense),
    show(ADDED.limit, 'any'),
    show(ADDED.unit),
    { role: 'formula', formula: `IF(ISNUMBER(${margin}),${margin}*100,"")`, unit: '%' },
    show(ADDED.meaning),
    { role: 'source', formula: of(ADDED.source) },
  ];
}
