/**
 * The model of one design as the cells of a workbook, evaluated by a spreadsheet engine: what the file holds, formulas and
 * results. Before anything is made of it, it is held against the compiled model.
 */
import { type CellValue, DetailedCellError, HyperFormula, type RawCellContent } from 'hyperformula';
import { address } from '../basis/address.ts';
import type { At, Axis, Quantity } from '../basis/quantity.ts';
import { inUnit } from '../basis/shown.ts';
import type { Design } from '../design/design.ts';
import { type OnRequest, QUANTITIES, type QuantityName } from '../model/model.ts';
import { type Cell, entryUnit, type Sheet } from './cell.ts';
import { cellOf, members, workings } from './cells.ts';
import { shapeOf } from './choose.ts';
import { hasShelf } from './entered/shelf.ts';
import { entering } from './entering.ts';
import { type Evaluation, evaluate, type Held, ModelError, type Value } from './evaluate.ts';
import { type Place, placement } from './layout.ts';
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

/**
 * Largest difference of the two engines, as a share of the value: the spreadsheet engine gives fourteen digits, and a
 * difference of two of its results loses some of them.
 */
export const AGREEMENT = 1e-9;

/** Cells of sheets as the spreadsheet engine evaluates them, with names of their own. */
export const evaluated = (
  sheets: Readonly<Record<string, RawCellContent[][]>>,
  names: readonly { readonly name: string; readonly expression: string }[],
): HyperFormula => HyperFormula.buildFromSheets(sheets, SETTINGS, [...names]);

/** An evaluation that can be written as a workbook. */
export interface Laid extends Evaluation {
  readonly grid: Grid;
  readonly sheets: ReadonlyMap<string, Sheet>;
  /** The value of any cell, counted from 0: for the cached results of a workbook. */
  cached(sheet: string, row: number, column: number): Value;
  /** Cells that hold a formula. */
  readonly formulas: number;
}

/** What a person adds: sheets on which an error is no fault of the tool, and names that formulas there use. */
export interface Theirs {
  readonly sheets: readonly string[];
  names(grid: Grid): readonly { readonly name: string; readonly expression: string }[];
}
const NOTHING: Theirs = { sheets: [], names: () => [] };

/** Sheets besides the model's own, such as those that show results. */
export type Extra = (grid: Grid, design: Design) => ReadonlyMap<string, Sheet>;

/**
 * `asked` names subjects of the model that are laid out on request only. Throws a `ModelError` that names the cell where a
 * result differs from that of the compiled model, or is an error.
 */
export function lay(
  design: Design,
  extra?: Extra,
  asked: readonly OnRequest[] = [],
  theirs: Theirs = NOTHING,
): Laid {
  const laid = spread(design, extra, asked, theirs);
  const compiled = evaluate(design);
  const [differs] = disagreements(laid, compiled);
  if (differs !== undefined) throw new ModelError(differs);
  return { ...laid, ...compiled, grid: laid.grid };
}

/** The cells alone, as the spreadsheet engine evaluates them, also after inputs were changed there. */
export function spread(
  design: Design,
  extra?: Extra,
  asked: readonly OnRequest[] = [],
  theirs: Theirs = NOTHING,
): Omit<Laid, keyof Evaluation> & Pick<Laid, 'grid' | 'design' | 'value' | 'set' | 'setAll'> {
  const shape = shapeOf(design);
  const more = hasShelf(design) && !asked.includes('parts') ? ([...asked, 'parts'] as const) : asked;
  const grid: Grid = { ...shape, placement: placement(shape.axes, more, entering(design)) };
  const sheets = new Map([...workings(grid, design), ...(extra ? extra(grid, design) : [])]);
  const raw = Object.fromEntries([...sheets].map(([name, rows]) => [name, rows.map(rawRow)]));
  const engine = evaluated(raw, [...singleNames(grid), ...theirs.names(grid)]);
  const ids = new Map([...sheets.keys()].map((name) => [name, engine.getSheetId(name) as number]));

  const cached = (sheet: string, row: number, column: number): Value => {
    const found: CellValue = engine.getCellValue({ sheet: ids.get(sheet) as number, row, col: column });
    if (theirs.sheets.includes(sheet)) {
      if (found instanceof DetailedCellError) return null;
      if (typeof found === 'boolean') return Number(found);
    }
    if (found instanceof DetailedCellError) {
      throw new ModelError(
        `${sheet}!${address(row, column, false, false)}: ${found.value} ${found.message} (from ${found.address ?? 'here'})`,
      );
    }
    if (typeof found === 'boolean') throw new ModelError(`${sheet}!${address(row, column)}: a truth value`);
    return found === '' ? null : found;
  };
  const write = (place: Place, at: At, contents: RawCellContent): void => {
    const [row, col] = cellOf(place, at);
    engine.setCellContents({ sheet: ids.get(place.sheet) as number, row, col }, [[contents]]);
  };
  /** Values of inputs come in metric units, whatever those of the cells are. */
  const enter = (name: QuantityName, at: At, value: Value): void => {
    const q: Quantity = QUANTITIES[name];
    const [from, to] = [q.shown ?? q.unit, entryUnit(q, grid.placement.entering.system)];
    const turned = typeof value === 'number' ? inUnit(value, from, to) : value;
    write(grid.placement.entries.get(name) as Place, at, content(turned));
  };
  /** What a cell holds while a value takes the place of its formula, or is added to it. */
  const contentsOf = (place: Place, at: At, { how, values, only }: Held, i: number): RawCellContent => {
    const [row, column] = cellOf(place, at);
    const formula = sheets.get(place.sheet)?.[row]?.[column]?.formula as string;
    if (values === null || (only && only[i] !== 1)) return `=${formula}`;
    const value = values[i] as number;
    return how === 'added' ? `=(${formula})+${value}` : Number.isNaN(value) ? '=""' : value;
  };
  return {
    design,
    grid,
    sheets,
    setAll(entries, held = []) {
      engine.batch(() => {
        for (const { name, at, value } of entries) enter(name, at, value);
        for (const one of held) {
          const place = grid.placement.places.get(one.name) as Place;
          const { per = [], across } = QUANTITIES[one.name];
          const axes: Axis[] = across === undefined ? [...per] : [...per, across];
          for (const [i, at] of members(grid.axes, axes).entries())
            write(place, at, contentsOf(place, at, one, i));
        }
      });
    },
    cached,
    value(name, at = {}) {
      const place = grid.placement.places.get(name);
      if (place === undefined) throw new ModelError(`${name} is laid out on request only`);
      return cached(place.sheet, ...cellOf(place, at));
    },
    set: enter,
    formulas: [...sheets.values()].flat(2).filter((cell) => cell?.formula !== undefined).length,
  };
}

/** Where the cells of the model differ from the compiled one, a line each. */
export function* disagreements(
  { grid, cached }: Pick<Laid, 'grid' | 'cached'>,
  compiled: Evaluation,
): Generator<string> {
  for (const [name, place] of grid.placement.places) {
    const { per = [], across } = QUANTITIES[name];
    const axes: Axis[] = across === undefined ? [...per] : [...per, across];
    for (const at of members(grid.axes, axes)) {
      const [row, column] = cellOf(place, at);
      const cell = cached(place.sheet, row, column);
      const value = compiled.value(name, at);
      if (!agree(cell, value))
        yield `${place.sheet}!${address(row, column, false, false)} (${name}): ${cell} as a cell, ${value} compiled`;
    }
  }
}

function agree(a: Value, b: Value): boolean {
  if (typeof a !== 'number' || typeof b !== 'number') return a === b;
  return Math.abs(a - b) <= AGREEMENT * Math.max(Math.abs(a), Math.abs(b));
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
