/** Evaluates the model of one design in process. */
import { type CellValue, DetailedCellError, HyperFormula, type RawCellContent } from 'hyperformula';
import type { At } from '../basis/quantity.ts';
import type { Design } from '../design/design.ts';
import { type OnRequest, QUANTITIES, type QuantityName } from '../model/model.ts';
import { before, protectorOf } from '../model/route.ts';
import { members, owners } from './axes.ts';
import { type Cell, cellOf, type Sheet, workings } from './cells.ts';
import { address, type Place, placement } from './layout.ts';
import type { Grid } from './translate.ts';

/**
 * Fourteen digits of precision and an epsilon of 2⁻⁴⁸, where the defaults would keep eleven digits; nothing is
 * taken for a date, a time or money.
 */
const SETTINGS = {
  licenseKey: 'gpl-v3',
  precisionRounding: 14,
  precisionEpsilon: 2 ** -48,
  smartRounding: true,
  evaluateNullToZero: true,
  useArrayArithmetic: true,
  undoLimit: 0,
  dateFormats: [],
  timeFormats: [],
  currencySymbol: [],
};

/** A value that a quantity can have: an unknown one is null. */
export type Value = number | string | null;

/** The model of one design, evaluated. */
export interface Evaluation {
  readonly design: Design;
  readonly grid: Grid;
  readonly sheets: ReadonlyMap<string, Sheet>;
  /** Value in the model's unit; an empty text is null. Throws when the cell holds an error. */
  value(name: QuantityName, at?: At): Value;
  /** The same as a number; null when it is unknown. Throws when it is a word. */
  number(name: QuantityName, at?: At): number | null;
  /** The value of any cell, counted from 0: for the cached results of a workbook. */
  cached(sheet: string, row: number, column: number): Value;
  /** Writes an input in the unit of its entry and evaluates what hangs on it. */
  set(name: QuantityName, at: At, value: Value): void;
  /** Writes several inputs, then evaluates what hangs on them, once. */
  setAll(entries: readonly { readonly name: QuantityName; readonly at: At; readonly value: Value }[]): void;
  /** Cells that hold a formula. */
  readonly formulas: number;
}

/** Thrown when a cell of the model holds an error: a fault of the tool, not of the design. */
export class ModelError extends Error {}

/** Sheets besides the model's own, such as those that show results. */
export type Extra = (grid: Grid, design: Design) => ReadonlyMap<string, Sheet>;

/** `asked` names subjects of the model that are laid out on request only. */
export function evaluate(design: Design, extra?: Extra, asked: readonly OnRequest[] = []): Evaluation {
  const axes = members(design);
  const grid: Grid = {
    axes,
    owners: owners(design),
    placement: placement(axes, asked),
    ahead: (wire) => before(wire, design),
    guard: (wire) => design.wires[protectorOf(wire, design)]?.run ?? -1,
  };
  const sheets = new Map([...workings(grid, design), ...(extra ? extra(grid, design) : [])]);
  const raw = Object.fromEntries([...sheets].map(([name, rows]) => [name, rows.map(rawRow)]));
  const engine = HyperFormula.buildFromSheets(raw, SETTINGS, singleNames(grid));
  const ids = new Map([...sheets.keys()].map((name) => [name, engine.getSheetId(name) as number]));

  const cached = (sheet: string, row: number, column: number): Value => {
    const found: CellValue = engine.getCellValue({ sheet: ids.get(sheet) as number, row, col: column });
    if (found instanceof DetailedCellError) {
      throw new ModelError(
        `${sheet}!${address(row, column, false, false)}: ${found.value} ${found.message} (from ${found.address ?? 'here'})`,
      );
    }
    if (typeof found === 'boolean') throw new ModelError(`${sheet}!${address(row, column)}: a truth value`);
    return found === '' ? null : found;
  };
  const value = (name: QuantityName, at: At = {}): Value => {
    const place = grid.placement.places.get(name);
    if (place === undefined) throw new ModelError(`${name} is laid out on request only`);
    try {
      return cached(place.sheet, ...cellOf(place, at));
    } catch (error) {
      throw new ModelError(`${name} at ${JSON.stringify(at)}: ${(error as Error).message}`);
    }
  };
  const set: Evaluation['set'] = (name, at, entry) => {
    const place = grid.placement.entries.get(name) as Place;
    const [row, col] = cellOf(place, at);
    engine.setCellContents({ sheet: ids.get(place.sheet) as number, row, col }, [[content(entry)]]);
  };
  return {
    design,
    grid,
    sheets,
    value,
    cached,
    number(name, at = {}) {
      const found = value(name, at);
      if (typeof found === 'string') throw new ModelError(`${name} is "${found}" where a number is needed`);
      return found;
    },
    set,
    setAll(entries) {
      engine.batch(() => {
        for (const { name, at, value } of entries) set(name, at, value);
      });
    },
    formulas: [...sheets.values()].flat(2).filter((cell) => cell?.formula !== undefined).length,
  };
}

const rawRow = (row: (Cell | undefined)[]): RawCellContent[] =>
  Array.from(row, (cell) =>
    cell?.formula === undefined ? content(cell?.value ?? null) : `=${cell.formula}`,
  );

/** A text is marked as text, so that `1/0` or `=x` is not read as anything else. */
const content = (value: Value): RawCellContent => (typeof value === 'string' ? `'${value}` : value);

/** Names of the quantities that exist once. */
function singleNames(grid: Grid): { name: string; expression: string }[] {
  return [...grid.placement.places].flatMap(([name, place]) =>
    place.rows.length === 0 && QUANTITIES[name].across === undefined
      ? [{ name, expression: `=${place.sheet}!${address(place.row, place.column)}` }]
      : [],
  );
}
