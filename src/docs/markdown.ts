/** Pieces of Markdown that the reference pages are made of. */

/** First line of every page that is made by a program. */
export const MADE = '<!-- Made by `npm run docs`; changes by hand are lost. -->';

/** Text as it stands in a cell of a table: on one line, and without anything that would end the cell. */
export const cell = (text: string): string => text.replace(/\s+/g, ' ').replaceAll('|', '\\|').trim();

/** Text that is to be read as it is written, such as a formula; empty stays empty. */
export const code = (text: string): string => (text === '' ? '' : `\`${text}\``);

/** A table; every row has as many cells as there are titles. */
export const grid = (titles: readonly string[], rows: readonly (readonly string[])[]): string =>
  [titles, titles.map(() => '---'), ...rows].map((row) => `| ${row.map(cell).join(' | ')} |`).join('\n');

/** A number with all the digits that mean something: a double carries fifteen, products of factors the last with dust. */
export const digits = (value: number): string => String(Number(value.toPrecision(14))).replace('-', '−');
