/** How the rows and columns of a spreadsheet are written. */

/** Letters of a column that is counted from 0. */
export const letters = (column: number): string =>
  column < 26
    ? String.fromCharCode(65 + column)
    : letters(Math.floor(column / 26) - 1) + letters(column % 26);

/** Column of these capitals, counted from 0. */
export const columnOf = (capitals: string): number =>
  [...capitals].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;

/** `$C$5`, counted from 0; what is not fixed stands without its dollar sign. */
export const address = (row: number, column: number, fixedRow = true, fixedColumn = true): string =>
  `${fixedColumn ? '$' : ''}${letters(column)}${fixedRow ? '$' : ''}${row + 1}`;
