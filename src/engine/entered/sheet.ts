/**
 * The sheet that looks at every input: what stood there when the workbook was made, whether it was changed, and whether it
 * can be taken. While one cannot, the workbook gives no verdict.
 */
import { address } from '../../basis/address.ts';
import { type At, bareLabel } from '../../basis/quantity.ts';
import type { Design } from '../../design/design.ts';
import { type List, listOf } from '../../design/spelled.ts';
import { QUANTITIES, type QuantityName } from '../../model/model.ts';
import { type Cell, inputValue, put, type Sheet } from '../cell.ts';
import type { Place } from '../layout.ts';
import { cellOf, memberName, members } from '../places.ts';
import { INPUTS } from '../sheets.ts';
import type { Grid } from '../translate.ts';
import { cellFor } from '../where.ts';
import { between } from './between.ts';
import { alone, type Check } from './check.ts';
import { knownAnswer } from './known.ts';
import { labelsOf, misplaced } from './labels.ts';
import { ofName, ofShop } from './shop.ts';
import { foldedFormula, rowFormula } from './spellings.ts';

export const CHECKS = 'Checks';
const COLUMN = {
  label: 0,
  of: 1,
  cell: 2,
  made: 3,
  changed: 4,
  wrong: 5,
  takes: 6,
  folded: 7,
  row: 8,
  place: 9,
  moved: 10,
  beside: 11,
  sorted: 12,
} as const;
/** Row of the sums, of the first problem, of the known answer; then the entries. */
const ROWS = { wrong: 3, changed: 4, first: 5, known: 6, moved: 7 } as const;
const TOP = 11;

const at = (row: number, column: number): string => `${CHECKS}!${address(row, column)}`;

/** How many inputs cannot be taken, and one more where the program computes otherwise. */
export const PROBLEMS = at(ROWS.wrong, 3);
/** How many inputs are others than when the workbook was made. */
export const CHANGED = at(ROWS.changed, 3);
/** The first problem as a sentence; empty when there is none. */
export const FIRST_PROBLEM = at(ROWS.first, 3);
/** 1 when the program computes as it should. */
export const KNOWN = at(ROWS.known, 3);

interface Row {
  readonly check: Check;
  readonly inputRow: number;
  /** The first check of an entry, with what stood there. */
  readonly own: boolean;
}

/** What is looked at, in the order of the rows of `Inputs`; the place of each entry among them. */
export interface Checked {
  readonly rows: readonly Row[];
  /** Row on the sheet of an entry's own check, by `keyOf`. */
  readonly places: ReadonlyMap<string, number>;
}

const keyOf = (name: QuantityName, where: At): string => `${name} ${Object.values(where).join()}`;

/** Row in its list of the spelling in a cell, as a formula; null for an entry that takes numbers only. */
const listed = (name: QuantityName): List | null => {
  const q = QUANTITIES[name];
  return q.kind === 'input' ? listOf(q.path) : null;
};

export function checkedOf(grid: Grid, design: Design): Checked {
  const { system } = grid.placement.entering;
  const places = new Map<string, number>();
  const found: { check: Check; own: boolean; inputRow: number; column: number }[] = [];
  const add = (check: Check, own: boolean): void => {
    const [inputRow, column] = cellOf(grid.placement.entries.get(check.name) as Place, check.at);
    found.push({ check, own, inputRow, column });
  };
  for (const [name, place] of grid.placement.entries) {
    const q = QUANTITIES[name];
    if (q.kind !== 'input') continue;
    for (const where of members(grid.axes, place.rows)) {
      // Its own row is not known before all are in order: `@` stands for it.
      const made = inputValue(design, q, where, system);
      const own = ofName(design, name, where);
      add(own ?? alone(design, name, where, made, listed(name) === null ? null : '@', system), true);
    }
  }
  const entry = (name: QuantityName, where: At = {}): string => entryCell(grid, name, where);
  const value = (name: QuantityName, where: At = {}): string => cellFor(grid, name, where);
  const all = (name: QuantityName): string => {
    const place = grid.placement.places.get(name) as Place;
    const count = place.counts.reduce((a, b) => a * b, 1);
    return `${place.sheet}!${address(place.row, place.column)}:${address(place.row + count - 1, place.column)}`;
  };
  for (const label of labelsOf(grid.placement.blocks, grid.axes))
    add(
      { name: label.name, at: label.at, wrong: '', takes: misplaced(label.text, label.above), label },
      false,
    );
  const cells = { entry, value, all };
  for (const check of [...between(design, cells), ...ofShop(design, cells)])
    if (grid.placement.entries.has(check.name)) add(check, false);
  const rows = found
    .map((one, i) => ({ ...one, i }))
    .sort(
      (a, b) => a.inputRow - b.inputRow || Number(b.own) - Number(a.own) || a.column - b.column || a.i - b.i,
    );
  rows.forEach(({ check, own }, i) => {
    if (own) places.set(keyOf(check.name, check.at), TOP + i);
  });
  return { rows, places };
}

const entryCell = (grid: Grid, name: QuantityName, where: At): string =>
  `${INPUTS}!${address(...cellOf(grid.placement.entries.get(name) as Place, where))}`;

/** Row of an entry on the sheet. */
const placeOf = (checked: Checked, name: QuantityName, where: At): number =>
  checked.places.get(keyOf(name, where)) as number;

/** Cell with the row of the entry's spelling in its list, 0 when there is none. */
export const spellingOf = (checked: Checked, name: QuantityName, where: At): string =>
  at(placeOf(checked, name, where), COLUMN.row);

/** Formula that is above 0 when one of these entries was changed. */
export const changedFormula = (checked: Checked, name: QuantityName, ats: readonly At[]): string => {
  const rows = ats.map((where) => placeOf(checked, name, where));
  const [first, last] = [Math.min(...rows), Math.max(...rows)];
  // Entries of one row of Inputs stand below each other; of a column each is named.
  return last - first === rows.length - 1
    ? `SUM(${at(first, COLUMN.changed)}:${address(last, COLUMN.changed)})`
    : rows.map((row) => at(row, COLUMN.changed)).join('+');
};

/** What is wrong in a row of `Inputs`, as a formula. */
export function wrongInRow({ rows }: Checked, inputRow: number): string {
  const own = rows.flatMap((row, i) => (row.inputRow === inputRow ? [TOP + i] : []));
  const [first, last] = [own[0] as number, own.at(-1) as number];
  const range = (column: number): string => `${at(first, column)}:${address(last + 1, column)}`;
  const column = (of: number): string => `INDEX(${range(of)},MATCH(1,${range(COLUMN.wrong)},0),1)`;
  const named = rows[first - TOP]?.check.at;
  const of = named === undefined || Object.keys(named).length === 0 ? '' : `${column(COLUMN.of)}&": "&`;
  return `IF(SUM(${at(first, COLUMN.wrong)}:${address(last, COLUMN.wrong)})=0,"",${of}${column(COLUMN.takes)})`;
}

export function checksSheet(grid: Grid, design: Design, checked: Checked): Sheet {
  const sheet: Sheet = [];
  const { rows } = checked;
  const last = TOP + rows.length - 1;
  const all = (column: number): string => `${address(TOP, column)}:${address(last, column)}`;
  const known = knownAnswer(last + 3);
  put(sheet, 0, 0, { role: 'heading', value: 'Checks of the inputs' });
  put(sheet, 1, 0, {
    role: 'about',
    value:
      'Each input: what stood there when the workbook was made, whether it was changed, whether it can be taken.',
  });
  const line = (row: number, label: string, formula: string): void => {
    put(sheet, row, 0, { role: 'member', value: label, span: 3 });
    put(sheet, row, 3, { role: 'formula', formula });
  };
  line(
    ROWS.wrong,
    'Inputs that cannot be taken',
    `SUM(${all(COLUMN.wrong)})+${address(ROWS.moved, 3)}+1-${address(ROWS.known, 3)}`,
  );
  line(ROWS.changed, 'Inputs that were changed', `SUM(${all(COLUMN.changed)})`);
  const problem = (column: number, of: number = COLUMN.wrong): string =>
    `INDEX(${all(column)},MATCH(1,${all(of)},0),1)`;
  /** Of the first that this column tells. */
  const said = (of: number): string =>
    `${problem(COLUMN.cell, of)}&" "&${problem(COLUMN.label, of)}&IF(${problem(COLUMN.of, of)}="",""," ("&${problem(COLUMN.of, of)}&")")&": "&${problem(COLUMN.takes, of)}`;
  line(
    ROWS.first,
    'The first of them',
    `IF(${address(ROWS.known, 3)}=0,"This program computes differently: do not use its results.",` +
      `IF(${address(ROWS.moved, 3)}>0,${problem(COLUMN.cell, COLUMN.moved)}&" is out of its place: cells were cut and pasted, or a row or a column was put into its table. Undo that; copy, do not cut.",` +
      `IF(SUM(${all(COLUMN.wrong)})=0,"",IF(SUM(${all(COLUMN.sorted)})>0,${said(COLUMN.sorted)},${said(COLUMN.wrong)}))))`,
  );
  line(ROWS.known, 'The program computes as it should (1) or not (0)', known.right);
  line(ROWS.moved, 'Inputs that are out of their place', `SUM(${all(COLUMN.moved)})`);
  const titles = {
    label: 'Input',
    of: 'of',
    cell: 'Cell',
    made: 'As made',
    changed: 'Changed (1)',
    wrong: 'Cannot be taken (1)',
    takes: 'What it takes',
    folded: 'As it is looked up',
    row: 'Row among the spellings',
    place: 'Place on the sheet',
    moved: 'Out of its place (1)',
    beside: 'Label beside it',
    sorted: 'Another one’s label (1)',
  };
  for (const key of Object.keys(titles) as (keyof typeof titles)[])
    put(sheet, TOP - 1, COLUMN[key], { role: 'label', value: titles[key] });
  rows.forEach(({ check, own }, i) => {
    for (const [column, cell] of rowOf(grid, design, check, own, TOP + i, all(COLUMN.beside)))
      put(sheet, TOP + i, column, cell);
    if (own)
      for (const [column, cell] of placed(grid, checked, check, TOP + i, all(COLUMN.place)))
        put(sheet, TOP + i, column, cell);
  });
  put(sheet, last + 2, 0, { role: 'title', value: 'A calculation whose answers are known', span: 5 });
  known.cells.forEach((row, i) => {
    row.forEach((cell, j) => {
      put(sheet, last + 3 + i, j, cell);
    });
  });
  return sheet;
}

/** Where an entry lies now, and whether that is on another one, or not beside or below the first of its own. */
function placed(
  grid: Grid,
  checked: Checked,
  { name, at: where }: Check,
  row: number,
  all: string,
): [number, Cell][] {
  const place = grid.placement.entries.get(name) as Place;
  const [first] = members(grid.axes, place.rows) as [At];
  const [from, to] = [cellOf(place, first), cellOf(place, where)];
  const entry = entryCell(grid, name, where);
  const own = address(row, COLUMN.place);
  const apart = (to[0] - from[0]) * PLACE + to[1] - from[1];
  const beside =
    apart === 0 ? '0' : `IF(${own}-${address(placeOf(checked, name, first), COLUMN.place)}=${apart},0,1)`;
  return [
    [COLUMN.place, { role: 'formula', formula: `ROW(${entry})*${PLACE}+COLUMN(${entry})` }],
    [
      COLUMN.moved,
      { role: 'formula', formula: `IFERROR(IF(MATCH(${own},${all},0)=${row - TOP + 1},${beside},1),1)` },
    ],
  ];
}

/** Rows count this many times as much as columns. */
const PLACE = 1000;

/** Whether the label of another entry stands beside an entry: an empty one, or a reworded one, is that of no other. */
function besideAnother(grid: Grid, { name, at: where, label }: Check, own: string, all: string): string {
  const [row, column] = cellOf(grid.placement.entries.get(name) as Place, where);
  const { label: labels } = grid.placement.columns;
  const there = `${INPUTS}!${label?.above ? address(row - 1, column) : address(row, labels)}`;
  return `IF(${there}="",0,IF(${there}=${own},0,IF(SUMPRODUCT((${all}=${there})*1)>0,1,0)))`;
}

function rowOf(
  grid: Grid,
  design: Design,
  check: Check,
  own: boolean,
  row: number,
  labels: string,
): [number, Cell][] {
  const { name, at: where, takes } = check;
  const q = QUANTITIES[name];
  if (q.kind !== 'input') throw new Error(`${name} is no input`);
  const place = grid.placement.entries.get(name) as Place;
  const entry = entryCell(grid, name, where);
  const [, column] = cellOf(place, where);
  const letter = address(0, column, false, false).replace(/\d+$/, '');
  const formula = (text: string): Cell => ({ role: 'formula', formula: text });
  const said = (value: string): Cell => ({ role: 'member', value });
  const here = (of: number): string => address(row, of, false);
  const wrong =
    check.label === undefined
      ? check.wrong.replaceAll('#', entry).replaceAll('@', here(COLUMN.row))
      : here(COLUMN.sorted);
  const cells: [number, Cell][] = [
    [COLUMN.label, said(bareLabel(q.label))],
    [COLUMN.of, said(memberName(grid.axes, place.rows, where))],
    [COLUMN.cell, formula(`"${INPUTS}!${letter}"&ROW(${entry})`)],
    [COLUMN.wrong, formula(`IFERROR(${wrong},1)`)],
    [COLUMN.takes, said(takes)],
  ];
  if (check.label !== undefined) {
    cells.push([COLUMN.beside, said(check.label.text)]);
    cells.push([COLUMN.sorted, formula(besideAnother(grid, check, here(COLUMN.beside), labels))]);
  }
  if (!own) return cells;
  const made = inputValue(design, q, where, grid.placement.entering.system);
  cells.push([COLUMN.made, { role: 'given', value: made }]);
  const list = listed(name);
  const before = here(COLUMN.made);
  // An empty cell reads as 0 beside a number.
  const number = `IF(ISNUMBER(${entry}),IF(ABS(${entry}-${before})<=ABS(${before})*1e-14,0,1),1)`;
  // A name of a part of the shop is of no list here, and is told apart as a look-up does.
  const word =
    list === null ? `IF(${entry}=${before},0,1)` : `IF(${here(COLUMN.folded)}=${foldedFormula(before)},0,1)`;
  const same = made === null ? `IF(${entry}="",0,1)` : typeof made === 'string' ? word : number;
  cells.push([COLUMN.changed, formula(`IFERROR(${same},1)`)]);
  if (list !== null) {
    cells.push([COLUMN.folded, formula(`IFERROR(${foldedFormula(entry)},"")`)]);
    cells.push([COLUMN.row, formula(rowFormula(list, here(COLUMN.folded)))]);
  }
  return cells;
}
