/** A sheet before it is drawn: its cells, and how they lie on screen and paper. */
import { type Cell, put, type Sheet } from '../../engine/cell.ts';
import { PROBLEMS } from '../../engine/entered/sheet.ts';
import type { Chart } from '../../ooxml/chart.ts';

/** Makes part of a page follow a verdict, by a condition on the cells themselves. */
export interface Look {
  /** Rows and columns, counted from 0, both ends included. */
  readonly rows: readonly [number, number];
  readonly columns: readonly [number, number];
  /** Column of the word that decides; it stands in the same row. */
  readonly word: number;
}

export interface Page {
  readonly name: string;
  /** `own` for a sheet that a person added, which is not locked. */
  readonly kind: 'shown' | 'inputs' | 'working' | 'own';
  readonly cells: Sheet;
  /** Widths of the columns, in digits of the plain font. */
  readonly widths: readonly number[];
  /** Rows and columns that stay in sight. */
  readonly frozen: readonly [number, number];
  /** How many of these rows, the last ones, are repeated on every printed page; all of them when left out. */
  readonly repeated?: number;
  readonly landscape: boolean;
  /** Pages below each other that it is fitted to on paper; as many as it takes when left out. */
  readonly tall?: number;
  /** Columns and rows that are printed, all of them when left out. */
  readonly printed?: number;
  readonly printedRows?: number;
  readonly looks: readonly Look[];
  /** Entries, by row and column, that hold what was taken where the design says nothing, and what that is. */
  readonly taken?: readonly {
    readonly row: number;
    readonly column: number;
    readonly value: number | string;
  }[];
  /** Defined names of its own: the name, and the cells that it stands for. */
  readonly names?: readonly (readonly [string, string])[];
  /** Rows, counted from 0, that are not in sight. */
  readonly hidden?: ReadonlySet<number>;
  readonly charts?: readonly Chart[];
  /** Hidden like the workings, for the sake of a sheet that was asked for. */
  readonly aside?: true;
  /** Rows, counted from 0, before which a new page starts on paper. */
  readonly breaks?: readonly number[];
  /**
   * First and last row of those whose text changes with the inputs: a program that fits rows to their text may do so.
   */
  readonly fitted?: readonly [number, number];
}

/** The sheet that a part of a page is put on, and how many columns its tables are wide. */
export interface On {
  readonly name: string;
  readonly cells: Sheet;
  readonly wide: number;
}

/** A part that was put: the row after it, its charts, and the first rows of what should stay together on paper. */
export interface Part {
  readonly row: number;
  readonly charts: readonly Chart[];
  readonly starts: readonly number[];
}

export interface Column {
  readonly title: string;
  /** As it is printed; empty for words and plain numbers. */
  readonly unit?: string;
  readonly span?: number;
}

/** Puts a table with its heading and its units at `top`; returns the row after it and one row of space. */
export function table(
  sheet: Sheet,
  top: number,
  columns: readonly Column[],
  rows: readonly Cell[][],
): number {
  const units = columns.some(({ unit = '' }) => unit !== '');
  const first = top + (units ? 2 : 1);
  let at = 0;
  columns.forEach(({ title, unit = '', span = 1 }, i) => {
    const wide = span > 1 ? { span } : {};
    put(sheet, top, at, { role: 'label', value: title, ...wide });
    if (units) put(sheet, top + 1, at, { role: 'unit', value: unit, ...wide });
    rows.forEach((row, j) => {
      put(sheet, first + j, at, { ...(row[i] as Cell), ...wide });
    });
    at += span;
  });
  return first + rows.length + 1;
}

/** Title of a page and the line under it; returns the row where the page goes on. */
export function opening(sheet: Sheet, title: string, about: string): number {
  put(sheet, 0, 0, { role: 'heading', value: title });
  put(sheet, 1, 0, { role: 'about', value: about });
  return 3;
}

export const UNCOUNTED = 'Nothing here counts until the inputs are corrected: see the first sheet.';

/** Under the title of a page with results: that they do not count while an input cannot be taken. */
export const warned = (sheet: Sheet): void =>
  put(sheet, 2, 0, {
    role: 'warning',
    formula: `IF(${PROBLEMS}>0,"${UNCOUNTED}","")`,
  });

/** Rows of text across a page, one below the other, with a point before each where there are several. */
export function texts(sheet: Sheet, row: number, values: readonly string[], span: number): number {
  values.forEach((value, i) => {
    put(sheet, row + i, 0, { role: 'text', value: values.length > 1 ? `•  ${value}` : value, span });
  });
  return row + values.length;
}

/** Puts a sheet of its own beside what stands there, from this row and column on. */
export function putBeside(sheet: Sheet, top: number, left: number, own: Sheet): void {
  own.forEach((row, r) => {
    row.forEach((cell, c) => {
      if (cell !== undefined) put(sheet, top + r, left + c, cell);
    });
  });
}

/** A title within a page; returns the row after it. */
export function section(sheet: Sheet, row: number, title: string, span: number): number {
  put(sheet, row, 0, { role: 'title', value: title, span });
  return row + 1;
}

export const words = (value: string): Cell => ({ role: 'member', value });
