/**
 * What a published table is: columns with units, rows as they are printed, and where each cell comes from.
 *
 * Rows are written as lists in the order of the columns, so that a file can be laid beside the page, and read as
 * objects keyed by column. A row may end in a citation of its own, where it was seen in another way than the rest.
 */
import type { Citation } from './sources.ts';

export type Cell = number | string | null;

export interface TableColumn {
  /** A unit of `units.ts`, one of `PRINTED_ONLY`, '1' for a plain number, or 'text' for words. */
  readonly unit: string;
  readonly label: string;
  /** Present where the source leaves cells empty: the cell is then null. */
  readonly empty?: true;
  readonly source?: Citation;
}
export type Columns = Readonly<Record<string, TableColumn>>;

/** Units that stand in printed tables only, so that no formula can take them: circular mils, pounds of force. */
export const PRINTED_ONLY: readonly string[] = ['cmil', 'lbf'];

type CellOf<C extends TableColumn> =
  | (C['unit'] extends 'text' ? string : number)
  | (C extends { readonly empty: true } ? null : never);
type NumberColumn<C extends Columns> = {
  [K in keyof C]: C[K]['unit'] extends 'text' ? never : K;
}[keyof C];

/** One row, keyed by column; `source` only where the row has a citation of its own. */
export type Row<C extends Columns> = { readonly [K in keyof C]: CellOf<C[K]> } & {
  readonly source?: Citation;
};

interface Head<C extends Columns> {
  readonly title: string;
  readonly source: Citation;
  /** Where the source is wrong, what was left out, how it is meant. */
  readonly note?: string;
  readonly columns: C;
  /** From a second reading of what was noted, not from these rows. An empty cell counts as 0. */
  readonly check: {
    readonly rows: number;
    readonly sums: { readonly [K in NumberColumn<C>]: number };
  };
}

export interface Table<C extends Columns> extends Head<C> {
  /** Columns that tell one row from another. */
  readonly key: readonly string[];
  readonly rows: readonly Row<C>[];
}

/** Any table, for those who walk through all of them. */
export interface AnyTable {
  readonly title: string;
  readonly source: Citation;
  readonly note?: string;
  readonly columns: Columns;
  readonly check: { readonly rows: number; readonly sums: Readonly<Record<string, number>> };
  readonly key: readonly string[];
  readonly rows: readonly Readonly<Record<string, Cell | Citation | undefined>>[];
}

type Written<C extends Columns> = Head<C> & {
  /** The first column when left out. */
  readonly key?: readonly (keyof NoInfer<C> & string)[];
  readonly rows: readonly (readonly (Cell | Citation)[])[];
};

const isCitation = (entry: Cell | Citation | undefined): entry is Citation =>
  typeof entry === 'object' && entry !== null;

/** Why a cell does not fit its column, or nothing when it does. */
function misfit(cell: Cell | Citation | undefined, column: TableColumn): string | undefined {
  if (cell === null) return column.empty ? undefined : 'is empty';
  if (column.unit === 'text') return typeof cell === 'string' ? undefined : 'is not text';
  return Number.isFinite(cell) ? undefined : 'is not a finite number';
}

/**
 * Makes a frozen table. Throws an error that names table, row and column when a row is too short or too long, or
 * when a cell is not of the column's kind: tables are written by us.
 */
export function table<const C extends Columns>(written: Written<C>): Table<C> {
  const names = Object.keys(written.columns);
  const rows = written.rows.map((entries, i) => {
    const last = entries.at(-1);
    const own = isCitation(last) ? last : undefined;
    const cells = own ? entries.slice(0, -1) : entries;
    if (cells.length !== names.length) {
      throw new Error(`${written.title}, row ${i + 1}: ${cells.length} cells for ${names.length} columns`);
    }
    names.forEach((name, j) => {
      const why = misfit(cells[j], written.columns[name] as TableColumn);
      if (why) throw new Error(`${written.title}, row ${i + 1}, ${name}: ${why}`);
    });
    const row = {
      ...Object.fromEntries(names.map((name, j) => [name, cells[j]])),
      ...(own && { source: own }),
    };
    // The loop above has just checked what the type says.
    return Object.freeze(row) as Row<C>;
  });
  return Object.freeze({
    ...written,
    columns: Object.freeze(written.columns),
    key: Object.freeze(written.key ?? names.slice(0, 1)),
    rows: Object.freeze(rows),
  });
}

/** Where a cell comes from: the row's own citation, else the column's, else the table's. */
export function sourceOf(from: AnyTable, row: AnyTable['rows'][number], column: string): Citation {
  const own = row.source;
  return (isCitation(own) ? own : undefined) ?? from.columns[column]?.source ?? from.source;
}
