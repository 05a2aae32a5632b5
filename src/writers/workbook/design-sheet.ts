/** The design file itself, line by line: what the workbook was made from, and all of it that has no cell elsewhere. */

import { address } from '../../basis/address.ts';
import { put, type Sheet } from '../../engine/cell.ts';
import { LINE_PART } from '../../saved/mark.ts';
import { opening, type Page } from './page.ts';

const NAME = 'Design';
/** Row of the first line, counted from 0. */
const TOP = 3;
/**
 * Lines run on over empty columns, as many as the longest of them takes: a sheet is fitted to paper by leaving columns
 * to the next page, and one wide column would be cut.
 */
const COLUMN = 20;
const COLUMNS = [5, 10] as const;
/** A letter of the font of the lines, where each is as wide as the others [digits of the plain font]. */
const LETTER = 1;

/** A line in pieces that a cell can hold; no character is cut in two. */
function pieces(line: string): string[] {
  const found: string[] = [];
  for (let at = 0; at < line.length || at === 0; ) {
    let end = at + LINE_PART;
    const last = line.charCodeAt(end - 1);
    if (end < line.length && last >= 0xd800 && last <= 0xdbff) end -= 1;
    found.push(line.slice(at, end));
    at = end;
  }
  return found;
}

const linesOf = (text: string): string[][] => text.replace(/\n$/, '').split('\n').map(pieces);

export function designPage(text: string): Page {
  const cells: Sheet = [];
  opening(
    cells,
    'Design file',
    'The design file that this workbook was made from. Change Inputs, not this sheet; “coilfeed design” writes the file with your changes.',
  );
  const lines = linesOf(text);
  const longest = Math.max(...lines.map(([first = '']) => first.length));
  const columns = Math.ceil((longest * LETTER) / COLUMN);
  lines.forEach((parts, i) => {
    parts.forEach((value, j) => {
      put(cells, TOP + i, j, { role: 'code', value });
    });
  });
  return {
    name: NAME,
    kind: 'working',
    cells,
    widths: Array.from({ length: Math.min(Math.max(columns, COLUMNS[0]), COLUMNS[1]) }, () => COLUMN),
    frozen: [2, 0],
    landscape: false,
    looks: [],
  };
}

/** The cells of the text, as a defined name has them: `Design!$A$4:$A$103`. */
export function designRange(text: string): string {
  const lines = linesOf(text);
  const wide = Math.max(...lines.map((parts) => parts.length));
  return `${NAME}!${address(TOP, 0)}:${address(TOP + lines.length - 1, wide - 1)}`;
}
