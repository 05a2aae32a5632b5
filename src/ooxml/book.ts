/** What a workbook is made of, for whoever has something to put into one. Rows and columns are counted from 0. */
import type { Chart } from './chart.ts';

export interface Font {
  readonly bold?: true;
  readonly italic?: true;
  /** Every character as wide as the others. */
  readonly mono?: true;
  /** [pt] */
  readonly size: number;
  /** Opacity, red, green, blue, two digits each. */
  readonly color: string;
}

export interface Edge {
  readonly style: 'thin' | 'medium';
  readonly color: string;
}
export interface Border {
  readonly around?: Edge;
  readonly bottom?: Edge;
}

/** How a cell looks. Cells that share the same object are written faster. */
export interface Style {
  readonly font: Font;
  /** Colour of the ground. */
  readonly fill?: string;
  readonly border?: Border;
  readonly format: string;
  readonly vertical: 'center' | 'bottom';
  readonly horizontal: 'left' | 'right';
  readonly indent: boolean;
  readonly wrap: boolean;
  readonly locked: boolean;
}

/** What a condition lays over a cell. */
export interface Look {
  readonly bold?: true;
  readonly italic?: true;
  readonly color: string;
  readonly fill?: string;
}

export interface Cell {
  /** Of a formula the result; never NaN or infinite. */
  readonly value: number | string | null;
  /** Without the leading equals sign. */
  readonly formula?: string;
  readonly style: Style;
  /** Columns that the cell takes, more than one. */
  readonly span?: number;
}

export interface Row {
  readonly cells: readonly (Cell | undefined)[];
  /** [pt] */
  readonly height: number;
  /** Not in sight, until somebody asks the program to show it. */
  readonly hidden?: true;
  /** A program may fit the height to the text. */
  readonly fitted: boolean;
}

/** Makes cells follow a formula, written as for the first of them. */
export interface Condition {
  /** `A5:C9` */
  readonly where: string;
  readonly looks: readonly (readonly [formula: string, look: Look])[];
}

/** What may be entered, or only what a cell is. A value outside is questioned, not refused. */
export interface Validation {
  /** `C5:C9`; several with blanks between. */
  readonly where: string;
  /** The cells that hold the choices, or these in quotes; the least and the largest number; null where anything may stand. */
  readonly allowed: string | readonly [number, number] | null;
  /** Shown while the cell is chosen. What is too long for the format ends in an ellipsis. */
  readonly prompt: readonly [title: string, text: string];
  /** Shown when the value is not allowed. */
  readonly error?: readonly [title: string, text: string];
}

/** On paper: A4, as wide as it may be and as long as it takes. */
export interface Print {
  readonly landscape: boolean;
  /** Pages beside each other. */
  readonly wide: number;
  /** Pages below each other at most, 0 for as many as it takes. */
  readonly tall: number;
  /** Columns and rows that are printed, all of them when left out. */
  readonly columns?: number;
  readonly rows?: number;
  /** [in] */
  readonly margins: Readonly<Record<'left' | 'right' | 'top' | 'bottom' | 'header' | 'footer', number>>;
  /** In the format's own codes: an ampersand of the text is written twice. */
  readonly header: string;
  readonly footer: string;
  /** How many of the frozen rows, the last ones, are repeated on every page; all of them when left out. */
  readonly repeated?: number;
  /** Rows before which a new page starts. */
  readonly breaks: readonly number[];
}

export interface Sheet {
  /** Letters only where formulas name it: a name with anything else would need quotes there. No other sheet has it, in capitals or not. */
  readonly name: string;
  /** Not in sight, until somebody asks the program to show it. */
  readonly hidden?: true;
  /** Colour of the tab. */
  readonly tab?: string;
  /** Not locked. */
  readonly open?: true;
  /** Lines between cells on screen. */
  readonly lines: boolean;
  readonly rows: readonly (Row | undefined)[];
  /** Widths of the columns, in digits of the plain font. */
  readonly widths: readonly number[];
  /** Rows and columns that stay in sight. */
  readonly frozen: readonly [number, number];
  readonly conditions: readonly Condition[];
  readonly validations: readonly Validation[];
  readonly charts: readonly Chart[];
  readonly print: Print;
}

export interface Book {
  readonly title: string;
  readonly creator: string;
  readonly keywords: string;
  /** Size of the font of empty cells, in whose digits widths are counted [pt]. */
  readonly size: number;
  readonly sheets: readonly Sheet[];
  /** Defined names, and the cells that they stand for: `Sheet!$C$5:$C$9`. */
  readonly names: readonly (readonly [string, string])[];
}
