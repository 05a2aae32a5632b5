/** Values and rules of a person’s own, with room for more; the names that their formulas may use; and sheets that were added. */
import type { Quantity } from '../../basis/quantity.ts';
import { printUnit } from '../../basis/units.ts';
import type { Design } from '../../design/design.ts';
import { type Cell, put, type Sheet, turned } from '../../engine/cell.ts';
import { PROBLEMS } from '../../engine/entered/sheet.ts';
import type { Grid } from '../../engine/translate.ts';
import { QUANTITIES } from '../../model/model.ts';
import { spelledOut } from '../../own/formula.ts';
import { PER_RUN, SHORT, type Short } from '../../own/names.ts';
import { isFormula } from '../../own/names-in.ts';
import {
  cellAt,
  OWN,
  OWN_COLUMN,
  OWN_TOP,
  ownArea,
  ownCell,
  ownRows,
  SENSES,
  SIGNS,
  shortCell,
  shortTop,
} from '../../own/rows.ts';
import { OWN_ROWS } from '../../saved/mark.ts';
import { cellFor } from './links.ts';
import { opening, type Page, section, table, words } from './page.ts';

const WIDTHS = [31, 13, 9, 9, 10, 40, 11];
const WIDE = WIDTHS.length;
const TITLES = ['What', 'Value', 'Unit', 'must be', 'Limit', 'What it means when it is not', 'Verdict'];

export function ownPage(grid: Grid, design: Design): Page {
  const cells: Sheet = [];
  opening(
    cells,
    OWN,
    'Room for formulas of your own. They are kept when this workbook is read back, and stand in every workbook made from it.',
  );
  put(cells, 2, 0, {
    role: 'about',
    value:
      'A row with ≤ or ≥ and a limit is a rule: it is judged beside the tool’s own, also on the first sheet.',
  });
  TITLES.forEach((value, column) => {
    put(cells, OWN_TOP - 1, column, { role: 'label', value });
  });
  const count = ownRows(design);
  for (let i = 0; i < count; i++)
    rowOf(design.own[i], i).forEach((cell, column) => {
      put(cells, OWN_TOP + i, column, cell);
    });

  let row = section(cells, shortTop(design) - 2, 'Names that formulas may use', WIDE);
  const names = SHORT.map((short): Cell[] => [
    words(short.name),
    { role: 'formula', formula: shortFormula(grid, short), unit: short.unit },
    { role: 'unit', value: printUnit(short.unit) },
    words(QUANTITIES[short.quantity].label),
  ]);
  row = table(
    cells,
    row,
    [{ title: 'Name' }, { title: 'Now' }, { title: 'Unit' }, { title: 'What it is', span: 4 }],
    names,
  );
  row = table(
    cells,
    row,
    [
      { title: 'One for each run, in order' },
      { title: '' },
      { title: 'Unit' },
      { title: 'What it is', span: 4 },
    ],
    PER_RUN.map((name) => {
      const q: Quantity = QUANTITIES[name];
      return [words(name), words(''), { role: 'unit', value: unitOf(q) } as Cell, words(q.label)];
    }),
  );
  put(cells, row - 1, 0, {
    role: 'about',
    value:
      'For example =SUM(run_length) for all runs, =INDEX(run_length,2,1) for the second. The hidden sheet Quantities lists all other names, with units.',
  });
  return {
    name: OWN,
    kind: 'inputs',
    cells,
    widths: WIDTHS,
    frozen: [OWN_TOP, 0],
    landscape: false,
    tall: 1,
    looks: [
      {
        rows: [OWN_TOP, OWN_TOP + count - 1],
        columns: [OWN_COLUMN.verdict, OWN_COLUMN.verdict],
        word: OWN_COLUMN.verdict,
      },
    ],
    names: [
      [OWN_ROWS, ownArea(design)],
      ...SHORT.map(({ name }, i): [string, string] => [name, shortCell(design, i)]),
    ],
  };
}

const unitOf = ({ unit }: Quantity): string => (unit === 'text' ? '' : printUnit(unit));

function shortFormula(grid: Grid, { quantity, unit }: Short): string {
  const cell = cellFor(grid, quantity, {});
  const value = turned(cell, QUANTITIES[quantity].unit, unit);
  // A cell that a person left empty would read as 0.
  return value === cell ? `IF(ISNUMBER(${cell}),${cell},"")` : value;
}

function rowOf(row: Design['own'][number] | undefined, i: number): Cell[] {
  const entry = (value: number | string | null): Cell => ({
    role: 'entry',
    value: value === '' ? null : value,
  });
  const [value, sense, limit] = (['value', 'sense', 'limit'] as const).map((column) => ownCell(i, column));
  const judged = (sign: string): string => `IF(${value}${sign}${limit},"pass","FAIL")`;
  const bySign = Object.entries(SIGNS).reduceRight(
    (others, [sign, of]) =>
      `IF(TRIM(${sense})="${sign}",${judged(of === 'at_least' ? '>=' : '<=')},${others})`,
    '"UNKNOWN"',
  );
  return [
    entry(row?.label ?? null),
    row === undefined
      ? { role: 'entry', value: null, unit: 'own' }
      : { role: 'entry', formula: spelledOut(row.formula), unit: 'own' },
    entry(row?.unit ?? null),
    entry(row?.sense ? SENSES[row.sense] : null),
    entry(row?.limit ?? null),
    entry(row?.words ?? null),
    {
      role: 'verdict',
      formula:
        `IF(${sense}="","",IF(${PROBLEMS}>0,"",IFERROR(IF(ISNUMBER(${value}),IF(ISNUMBER(${limit}),` +
        `${bySign},"UNKNOWN"),"UNKNOWN"),"UNKNOWN")))`,
    },
  ];
}

/** Sheets that a person added, as they were. */
export const addedPages = ({ added }: Design): Page[] =>
  [...added].map(([name, own]) => {
    const cells: Sheet = [];
    for (const [at, content] of own) {
      const { row, column } = cellAt(at);
      put(
        cells,
        row,
        column,
        isFormula(content)
          ? { role: 'own', formula: spelledOut(content.slice(1)) }
          : { role: 'own', value: content },
      );
    }
    const wide = Math.max(1, ...cells.map((row) => row.length));
    return {
      name,
      kind: 'own',
      cells,
      widths: Array.from({ length: wide }, (_, column) => (column === 0 ? 24 : 14)),
      frozen: [0, 0],
      landscape: false,
      looks: [],
    };
  });
