/** How wide a column and how tall a row must be: no program fits rows to wrapped text when it opens a file. */
import type { Cell } from '../../engine/cell.ts';
import { PLAIN_SIZE, SMALL_SIZE, wraps } from './styles.ts';

/** Height of a line of the plain and the small font [pt]. */
const LINE = 13;
const SMALL_LINE = 10.5;
const PADDING = 3;
/** No program shows a row taller than this [pt]. */
const TALLEST = 409;

/** Lines that a text takes in `room` characters: whole words, long ones cut. */
export function lines(text: string, room: number): number {
  return text.split('\n').reduce((sum, paragraph) => {
    let count = 1;
    let used = 0;
    for (const word of paragraph.split(/(?<=[ –/-])/)) {
      const length = [...word].length;
      if (used > 0 && used + length > room + 1) {
        count += 1;
        used = 0;
      }
      count += Math.max(0, Math.ceil(length / room) - 1);
      used += length;
    }
    return sum + count;
  }, 0);
}

/** Height of the row that holds the cell with this text, in a cell of this width. */
export function height({ role }: Cell, text: string, width: number): number {
  if (role === 'heading') return 24;
  if (role === 'title') return 18;
  if (role === 'gap') return 8;
  if (!wraps(role)) return LINE + PADDING;
  const small = role === 'source';
  // A digit's width holds a little more than one letter of running text; bold letters are wider.
  const room = Math.max(
    4,
    role === 'label' ? width - 1.5 : (width - 2) * 1.05 * (small ? PLAIN_SIZE / SMALL_SIZE : 1),
  );
  const padding = role === 'text' ? 2 * PADDING : PADDING;
  return Math.min(TALLEST, lines(text, Math.floor(room)) * (small ? SMALL_LINE : LINE) + padding);
}

/** Width of a column of the workings: room for its members and values, not for its whole heading. */
export function columnWidth(texts: readonly string[], labels: readonly string[]): number {
  const longestWord = labels
    .flatMap((l) => l.split(/[ –/-]/))
    .reduce((most, w) => Math.max(most, w.length), 0);
  const longest = texts.reduce((most, t) => Math.max(most, t.length), 0);
  return Math.min(40, Math.max(12, longestWord * 1.15 + 2, longest + 2));
}
