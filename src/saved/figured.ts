/**
 * Formulas in the cells of the inputs: their stored results may be old, so they are worked out afresh. They may name other
 * inputs, by cell or by name, and cells of sheets that a person added; what the workbook itself works out is not taken.
 */
import type { RawCellContent } from 'hyperformula';
import { address } from '../basis/address.ts';
import { inUnit } from '../basis/shown.ts';
import { entryUnit } from '../engine/cell.ts';
import { SHELF } from '../engine/entered/shelf.ts';
import { FUNCTIONS, pieces, placeOf, sheetOf, spelledOut } from '../own/formula.ts';
import { type Book, type Found, strangeIn } from './book.ts';
import type { Entry } from './entries.ts';
import { ENTRY, ENTRY_US, PAGE } from './mark.ts';

/** Cells that all formulas together may name. */
const MOST = 2000;

/** The entries, with the value in the place of each formula that can be worked out. */
export async function figured(book: Book, entries: readonly Entry[]): Promise<readonly Entry[]> {
  if (entries.every(({ found }) => found.is !== 'formula')) return entries;
  const named = new Named(book, entries);
  const open = entries.filter(
    ({ found, sheet, row, column }) => found.is === 'formula' && named.cell(sheet, row, column),
  );
  const { evaluated } = await import('../engine/spreadsheet.ts');
  const engine = evaluated(named.sheets(), named.names());
  return entries.map((entry): Entry => {
    if (!open.includes(entry)) return entry;
    const sheet = engine.getSheetId(entry.sheet) as number;
    const value = engine.getCellValue({ sheet, row: entry.row, col: entry.column });
    return typeof value === 'number' || (typeof value === 'string' && value !== '')
      ? {
          ...entry,
          found: { is: typeof value === 'number' ? 'number' : 'text', value } as Found,
          figured: true,
        }
      : entry;
  });
}

/** The cells and names that formulas name, and those that these name. */
class Named {
  private readonly cells = new Map<string, Map<string, RawCellContent>>();
  private readonly given = new Map<string, string>();
  /** Whether a cell can be taken, by its place. */
  private readonly known = new Map<string, boolean>();
  private readonly entries: ReadonlyMap<string, Entry>;
  private readonly strange: readonly string[];
  /** Sheets whose cells are known: of others none can be taken. */
  private readonly read: ReadonlySet<string>;
  private readonly book: Book;

  constructor(book: Book, entries: readonly Entry[]) {
    this.book = book;
    this.entries = new Map(entries.map((entry) => [`${entry.sheet} ${entry.row},${entry.column}`, entry]));
    this.strange = strangeIn(book.names, book.sheets);
    const shelf = book.names.get((PAGE + SHELF).toLowerCase())?.sheet;
    this.read = new Set([...entries.map(({ sheet }) => sheet), ...this.strange, ...(shelf ? [shelf] : [])]);
  }

  /** Takes a cell with all that it names; false where some of it cannot be taken. */
  cell(sheet: string, row: number, column: number): boolean {
    const at = `${sheet} ${row},${column}`;
    const known = this.known.get(at);
    if (known !== undefined) return known;
    // A circle ends here; the engine tells of it.
    this.known.set(at, true);
    const entry = this.entries.get(at);
    const found = entry?.found ?? this.book.cell(sheet, row, column);
    const good =
      this.read.has(sheet) &&
      this.known.size <= MOST &&
      found.is !== 'other' &&
      (found.is !== 'formula' ||
        ((entry !== undefined || this.strange.includes(sheet)) && this.all(found.value, sheet)));
    this.known.set(at, good);
    const cells = this.cells.get(sheet) ?? new Map<string, RawCellContent>();
    this.cells.set(sheet, cells.set(`${row},${column}`, contentOf(found)));
    return good;
  }

  /** Takes all that a formula names. */
  private all(formula: string, home: string): boolean {
    const all = pieces(formula).filter(({ kind }) => kind !== 'blank');
    let sheet: string | undefined = home;
    for (let i = 0; i < all.length; i++) {
      const { kind, text } = all[i] as (typeof all)[number];
      if (kind === 'odd' || (kind === 'function' && !FUNCTIONS.includes(text.toUpperCase()))) return false;
      if (kind === 'name' && !/^(?:true|false)$/i.test(text) && !this.name(text)) return false;
      if (kind === 'sheet') {
        const wanted = sheetOf(text).toLowerCase();
        sheet = this.book.sheets.find((one) => one.toLowerCase() === wanted);
      }
      if (kind !== 'address') continue;
      const last = all[i + 1]?.text === ':' ? all[i + 2] : undefined;
      if (last !== undefined) i += 2;
      if (sheet === undefined || (last !== undefined && last.kind !== 'address')) return false;
      if (!this.range(sheet, text, last?.text ?? text)) return false;
      sheet = home;
    }
    return true;
  }

  private range(sheet: string, first: string, last: string): boolean {
    const [a, b] = [placeOf(first), placeOf(last)];
    for (let row = Math.min(a.row, b.row); row <= Math.max(a.row, b.row); row++)
      for (let column = Math.min(a.column, b.column); column <= Math.max(a.column, b.column); column++)
        if (!this.cell(sheet, row, column)) return false;
    return true;
  }

  /** An input that exists once, by the name of its cell, or by that of its value in the unit of the model. */
  private name(text: string): boolean {
    const wanted = text.toLowerCase();
    for (const { name, at, q, system, sheet, row, column } of this.entries.values()) {
      if (
        Object.keys(at).length > 0 ||
        ![name, ENTRY + name, ENTRY_US + name].some((one) => one.toLowerCase() === wanted)
      )
        continue;
      const cell = `'${sheet.replaceAll("'", "''")}'!${address(row, column)}`;
      const turned = q.unit !== 'text' && wanted === name.toLowerCase();
      const [zero, one] = turned
        ? ([0, 1].map((value) => inUnit(value, entryUnit(q, system), q.unit)) as [number, number])
        : [0, 1];
      this.given.set(text, one === 1 && zero === 0 ? `=${cell}` : `=${cell}*${one - zero}+${zero}`);
      return this.cell(sheet, row, column);
    }
    return false;
  }

  sheets(): Record<string, RawCellContent[][]> {
    return Object.fromEntries(
      [...this.cells].map(([sheet, cells]) => {
        const rows: RawCellContent[][] = [];
        for (const [at, value] of cells) {
          const [row = 0, column = 0] = at.split(',').map(Number);
          while (rows.length <= row) rows.push([]);
          (rows[row] as RawCellContent[])[column] = value;
        }
        return [sheet, rows.map((row) => Array.from(row, (cell) => cell ?? null))];
      }),
    );
  }

  names(): { name: string; expression: string }[] {
    return [...this.given].map(([name, expression]) => ({ name, expression }));
  }
}

function contentOf(found: Found): RawCellContent {
  if (found.is === 'number') return found.value;
  if (found.is === 'formula') return `=${spelledOut(found.value)}`;
  return found.is === 'text' ? `'${found.value}` : null;
}
