/** Evaluates what a person added to a design, in a spreadsheet engine of its own that holds nothing but the names in use. */
import { type CellValue, DetailedCellError, type RawCellContent } from 'hyperformula';
import { letters } from '../basis/address.ts';
import type { At, Axis } from '../basis/quantity.ts';
import type { Design, OwnRow } from '../design/design.ts';
import type { Path } from '../design/problems.ts';
import { type Evaluation, ModelError } from '../engine/evaluate.ts';
import { members } from '../engine/places.ts';
import { OURS } from '../engine/sheets.ts';
import { evaluated } from '../engine/spreadsheet.ts';
import { QUANTITIES, type QuantityName } from '../model/model.ts';
import { look, spelledOut, type Wrong } from './formula.ts';
import type { OwnFound } from './found.ts';
import { inShort, meantBy } from './names.ts';
import { formulasOf, isFormula, namesUsed, ownSheets } from './names-in.ts';
import { cellAt, OWN, OWN_COLUMN, OWN_TOP, ownCell, quoted, SENSES } from './rows.ts';

/** What cannot be taken, with its key in the design file and its cell in a workbook. */
export interface OwnWrong extends Wrong {
  readonly key: Path;
  readonly cell: string;
}

/** All ranges of a design together [cells]. */
const MOST_CELLS = 20_000;
/** Given values, a row for each name. */
const GIVEN = 'Given';

/** The values in the order of the design, or everything that cannot be taken. */
export function ownOf(e: Evaluation): { found: readonly OwnFound[]; wrong: readonly OwnWrong[] } {
  const { design } = e;
  const places = formulasOf(design);
  const sheets = ownSheets(design);
  let cells = 0;
  const wrong = places.flatMap(({ key, cell, formula }): OwnWrong[] => {
    const looked = look(formula, sheets);
    cells += looked.cells;
    if (looked.wrong !== null) return [{ key, cell, ...looked.wrong }];
    return cells > MOST_CELLS && cells - looked.cells <= MOST_CELLS
      ? [{ key, cell, found: `ranges of ${cells} cells in all`, taken: `takes at most ${MOST_CELLS}` }]
      : [];
  });
  for (const sheet of design.added.keys())
    if (OURS.some((one) => one.toLowerCase() === sheet.toLowerCase()))
      wrong.push({
        key: ['added', sheet],
        cell: `${quoted(sheet)}!A1`,
        found: `a sheet called ${sheet}`,
        taken: 'takes another name: the workbook has a sheet of this one',
      });
  if (wrong.length > 0) return { found: [], wrong };
  const given = givenOf(e);
  const engine = evaluated({ [OWN]: ownRaw(design), ...addedRaw(design), [GIVEN]: given.rows }, given.names);
  const at = (cell: string): CellValue => {
    const address = engine.simpleCellAddressFromString(cell.replaceAll('$', ''), 0);
    return address === undefined ? null : engine.getCellValue(address);
  };
  const open = places.flatMap(({ key, cell }): OwnWrong[] => {
    const value = at(cell);
    const why = value instanceof DetailedCellError ? FAULTS[value.value] : undefined;
    return why === undefined ? [] : [{ key, cell, ...why }];
  });
  if (open.length > 0) return { found: [], wrong: open };
  return {
    found: design.own.map((row, i) => judged(row, at(ownCell(i, 'value')))),
    wrong: [],
  };
}

/** Errors that no input mends. */
const FAULTS: Readonly<Record<string, Wrong>> = {
  '#CYCLE!': { found: 'a circle: the cell follows from itself', taken: 'takes a formula that does not' },
  '#ERROR!': { found: 'a formula that cannot be read', taken: 'takes a formula of a spreadsheet' },
  '#NAME?': {
    found: 'a name that stands for nothing',
    taken: 'takes the names on the sheets Own and Quantities',
  },
};

function judged(row: OwnRow, value: CellValue): OwnFound {
  const error = value instanceof DetailedCellError ? value.value : null;
  const found =
    value instanceof DetailedCellError || value === ''
      ? null
      : typeof value === 'boolean'
        ? Number(value)
        : value;
  const { sense, limit } = row;
  const known = typeof found === 'number' && limit !== null;
  const verdict =
    sense === null
      ? null
      : !known
        ? 'unknown'
        : (sense === 'at_most' ? found <= limit : found >= limit)
          ? 'pass'
          : 'fail';
  return { ...row, value: found, error, verdict };
}

const text = (value: string): string => `'${value}`;

function ownRaw({ own }: Design): RawCellContent[][] {
  const rows: RawCellContent[][] = Array.from({ length: OWN_TOP }, () => []);
  for (const { label, formula, unit, sense, limit, words } of own) {
    const row: RawCellContent[] = [];
    row[OWN_COLUMN.label] = text(label);
    row[OWN_COLUMN.value] = `=${spelledOut(formula)}`;
    row[OWN_COLUMN.unit] = text(unit);
    row[OWN_COLUMN.sense] = sense === null ? null : text(SENSES[sense]);
    row[OWN_COLUMN.limit] = limit;
    row[OWN_COLUMN.words] = text(words);
    rows.push(row);
  }
  return rows;
}

const addedRaw = ({ added }: Design): Record<string, RawCellContent[][]> =>
  Object.fromEntries(
    [...added].map(([sheet, cells]) => {
      const rows: RawCellContent[][] = [];
      for (const [cell, content] of cells) {
        const { row, column } = cellAt(cell);
        while (rows.length <= row) rows.push([]);
        (rows[row] as RawCellContent[])[column] =
          typeof content === 'number' ? content : isFormula(content) ? spelledOut(content) : text(content);
      }
      return [sheet, rows.map((row) => Array.from(row, (cell) => cell ?? null))];
    }),
  );

/** Values of a name, in rows and columns as the workbook has them. */
function valuesOf(e: Evaluation, name: string): RawCellContent[][] {
  const meant = meantBy(name);
  if (meant === undefined) return [];
  if ('short' in meant) return [[inShort(meant.short, number(e, meant.short.quantity, {})) ?? '']];
  const { per = [], across } = QUANTITIES[meant.quantity] as { per?: readonly Axis[]; across?: Axis };
  return members(e.grid.axes, per).map((at) =>
    (across === undefined ? [at] : e.grid.axes[across].map((_, i) => ({ ...at, [across]: i }))).map((one) => {
      const value = known(e, meant.quantity, one);
      return typeof value === 'string' ? text(value) : (value ?? '');
    }),
  );
}

/** What comes to no finite number is not known. */
function known(e: Evaluation, name: QuantityName, at: At): number | string | null {
  try {
    return e.value(name, at);
  } catch (error) {
    if (error instanceof ModelError) return null;
    throw error;
  }
}
const number = (e: Evaluation, name: QuantityName, at: At): number | null => {
  const value = known(e, name, at);
  return typeof value === 'number' ? value : null;
};

/** The values of all names in use, below each other, and what each name stands for. */
function givenOf(e: Evaluation): {
  rows: RawCellContent[][];
  names: { name: string; expression: string }[];
} {
  const rows: RawCellContent[][] = [];
  const names = namesUsed(e.design).flatMap((name) => {
    const values = valuesOf(e, name);
    const first = rows.length + 1;
    rows.push(...values);
    const wide = values[0]?.length ?? 0;
    if (wide === 0) return [];
    const single = values.length === 1 && wide === 1;
    const to = `:$${letters(wide - 1)}$${rows.length}`;
    return [{ name, expression: `=${GIVEN}!$A$${first}${single ? '' : to}` }];
  });
  return { rows, names };
}
