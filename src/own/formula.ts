/** A person’s own formula, cut into pieces and looked at before any program evaluates it. */
import { address, columnOf } from '../basis/address.ts';
import { meantBy } from './names.ts';

/** Longest formula [characters]. */
export const LONGEST = 500;
/** Cells of one range: what is beyond would cost more than it is worth. */
const MOST_RANGE = 2000;
/** Rows and columns that a sheet of one’s own may use. */
export const MOST_ROWS = 1000;
export const MOST_COLUMNS = 50;

/** Functions that HyperFormula, LibreOffice, Gnumeric and Excel have in common and evaluate alike. */
export const FUNCTIONS: readonly string[] = (
  'ABS AND AVERAGE CONCATENATE COS COUNT COUNTA COUNTIF DEGREES EXACT EXP HLOOKUP IF IFERROR INDEX INT ISBLANK ISNUMBER LARGE ' +
  'LEFT LEN LN LOG LOG10 LOWER MATCH MAX MEDIAN MID MIN MOD NOT OR PI POWER RADIANS RIGHT ROUND ROUNDDOWN ROUNDUP SIGN SIN ' +
  'SMALL SQRT SUBSTITUTE SUM SUMIF SUMPRODUCT TAN TRIM UPPER VLOOKUP'
).split(' ');

interface Piece {
  readonly kind: 'blank' | 'text' | 'number' | 'sheet' | 'address' | 'function' | 'name' | 'sign' | 'odd';
  readonly text: string;
}

const KINDS: readonly (readonly [Piece['kind'], string])[] = [
  ['blank', String.raw`\s+`],
  ['text', '"(?:[^"]|"")*"'],
  ['number', String.raw`(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d{1,3})?`],
  ['sheet', String.raw`(?:'(?:[^']|'')+'|[\p{L}_][\p{L}\p{N}_.]*)!`],
  ['function', String.raw`[\p{L}_][\p{L}\p{N}_.]*(?=\s*\()`],
  ['address', String.raw`\$?[A-Za-z]{1,3}\$?\d{1,7}(?![\p{L}\p{N}_.])`],
  ['name', String.raw`[\p{L}_][\p{L}\p{N}_.]*`],
  ['sign', '<=|>=|<>|[-+*/^&=<>(),:%]'],
  ['odd', String.raw`[\s\S]`],
];
const PATTERN = new RegExp(KINDS.map(([, text]) => `(${text})`).join('|'), 'gu');

export const pieces = (formula: string): Piece[] =>
  [...formula.matchAll(PATTERN)].map((match) => ({
    kind: (KINDS[match.slice(1).findIndex((group) => group !== undefined)] as (typeof KINDS)[number])[0],
    text: match[0],
  }));

/** As every engine reads it: an exponent with a small letter. */
export const spelledOut = (formula: string): string =>
  pieces(formula)
    .map(({ kind, text }) => (kind === 'number' ? text.toLowerCase() : text))
    .join('');

const COLUMN = /^\$?([A-Za-z]{1,3})\$?(\d{1,7})$/;
/** Row and column of an address, counted from 0. */
export const placeOf = (text: string): { row: number; column: number } => {
  const [, letters = '', row = ''] = COLUMN.exec(text) as RegExpExecArray;
  return { row: Number(row) - 1, column: columnOf(letters.toUpperCase()) };
};
/** The sheet that `'My sheet'!` names. */
export const sheetOf = (text: string): string =>
  text.slice(0, -1).replace(/^'|'$/g, '').replaceAll("''", "'");

/** What is wrong with a formula. */
export interface Wrong {
  readonly found: string;
  readonly taken: string;
}

export interface Looked {
  readonly wrong: Wrong | null;
  /** Names that it uses, as they are written. */
  readonly names: readonly string[];
  /** Cells of its ranges. */
  readonly cells: number;
}

/** Looks at a formula, without its equals sign; `sheets` are those whose cells it may name. */
export function look(formula: string, sheets: readonly string[]): Looked {
  const names: string[] = [];
  let cells = 0;
  const no = (found: string, taken: string): Looked => ({ wrong: { found, taken }, names, cells });
  if (formula.length > LONGEST)
    return no(`a formula of ${formula.length} characters`, `takes at most ${LONGEST}`);
  const all = pieces(formula).filter(({ kind }) => kind !== 'blank');
  for (const [i, { kind, text }] of all.entries()) {
    switch (kind) {
      case 'odd':
        return no(
          `a formula with ${JSON.stringify(text)}`,
          text === '[' ? 'takes nothing outside of the workbook' : 'takes a formula of a spreadsheet',
        );
      case 'function':
        if (!FUNCTIONS.includes(text.toUpperCase()))
          return no(`the function ${text}`, `takes ${FUNCTIONS.join(', ')}`);
        break;
      case 'sheet': {
        const sheet = sheetOf(text);
        if (!sheets.some((one) => one.toLowerCase() === sheet.toLowerCase()))
          return no(
            `a cell of the sheet ${sheet}`,
            'takes names, see Guide, and cells of sheets that a person added: the workbook’s own cells move',
          );
        break;
      }
      case 'name':
        if (/^(?:true|false)$/i.test(text)) break;
        if (meantBy(text) === undefined)
          return no(`the name ${text}`, 'names nothing: takes the names on the sheets Own and Quantities');
        names.push(text);
        break;
      case 'address': {
        const from = placeOf(text);
        if (from.row >= MOST_ROWS || from.column >= MOST_COLUMNS)
          return no(`the cell ${text}`, `takes cells within ${MOST_ROWS} rows and ${MOST_COLUMNS} columns`);
        if (all[i + 1]?.text !== ':') break;
        const end = all[i + 2];
        if (end?.kind !== 'address') return no(`a range from ${text}`, 'takes one from cell to cell');
        const to = placeOf(end.text);
        const count = (Math.abs(to.row - from.row) + 1) * (Math.abs(to.column - from.column) + 1);
        if (count > MOST_RANGE) return no(`a range of ${count} cells`, `takes one of at most ${MOST_RANGE}`);
        cells += count;
      }
    }
  }
  return { wrong: null, names, cells };
}

/** The formula with other rows for the cells of a sheet; `home` says whether it stands on that sheet itself. */
export function withRows(
  formula: string,
  sheet: string,
  home: boolean,
  rowOf: (row: number) => number,
): string {
  let on = home;
  return pieces(formula)
    .map(({ kind, text }, i, all) => {
      if (kind === 'sheet') on = sheetOf(text).toLowerCase() === sheet.toLowerCase();
      if (kind !== 'address') return text;
      const moved = on ? text.replace(/\d+$/, (row) => String(rowOf(Number(row) - 1) + 1)) : text;
      // The end of a range is on the sheet of its start.
      if (all[i + 1]?.text !== ':') on = home;
      return moved;
    })
    .join('');
}

/** The formula as it is when it is filled into a cell this far away: what has no dollar sign goes along. */
export const filled = (formula: string, rows: number, columns: number): string =>
  pieces(formula)
    .map(({ kind, text }) => {
      const [, toColumn, , toRow] = /^(\$?)([A-Za-z]{1,3})(\$?)\d{1,7}$/.exec(text) ?? [];
      if (kind !== 'address') return text;
      const { row, column } = placeOf(text);
      return address(
        toRow === '$' ? row : row + rows,
        toColumn === '$' ? column : column + columns,
        toRow === '$',
        toColumn === '$',
      );
    })
    .join('');
