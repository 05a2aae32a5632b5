/** How wide a column and how tall a row must be: no program fits rows to wrapped text when it opens a file. */
import type { Cell } from '../../engine/cell.ts';
import { PLAIN_SIZE, SMALL_SIZE, wraps } from './styles.ts';

/** Height of a line of the plain and the small font [pt]. */
const LINE = 13;
const SMALL_LINE = 11.5;
const PADDING = 0.5;
/** No program shows a row taller than this [pt]. */
const TALLEST = 409;
/** Width of a digit of the plain font as columns are counted in it, and the space beside the digits of a column [pt]. */
export const DIGIT = 5.25;
export const BESIDE = 3.75;
/** Before the words of a column but the first [pt]. */
const INDENT = 9;
const BOLD = 1.07;

/** Widths of the letters of Arial and of what stands in for it, in parts of the font's size; what is in no list is as wide as a digit. */
const LETTERS: readonly (readonly [string, number])[] = [
  ['ijl’‘|', 0.22],
  [' ,.:;!/ftI[]', 0.28],
  ['()-r“”"', 0.34],
  ['cksvxyzJ', 0.5],
  ['ABEKPSVXY&', 0.67],
  ['CDHNRUwΩ', 0.74],
  ['GOQ', 0.78],
  ['mM', 0.84],
  ['W%@', 0.95],
  ['…—', 1],
];
const WIDTHS = new Map(
  LETTERS.flatMap(([all, em]) => [...all].map((letter): [string, number] => [letter, em])),
);
const DIGIT_EM = 0.556;
/** Letters of other scripts may be as wide as the font is tall. */
const OTHER_EM = 1;

const emOf = (letter: string): number => WIDTHS.get(letter) ?? (letter < '\u2c00' ? DIGIT_EM : OTHER_EM);

/** Width of a text [sizes of its font]. */
const widthOf = (text: string): number => [...text].reduce((sum, letter) => sum + emOf(letter), 0);

/** Lines that a text takes in `room`, in sizes of its font: whole words, long ones cut. */
export function lines(text: string, room: number): number {
  return text.split('\n').reduce((sum, paragraph) => {
    let count = 1;
    let used = 0;
    for (const word of paragraph.split(/(?<=[ –/-])/)) {
      const length = widthOf(word);
      if (used > 0 && used + widthOf(word.trimEnd()) > room) {
        count += 1;
        used = 0;
      }
      count += Math.max(0, Math.ceil(length / room) - 1);
      used += length;
    }
    return sum + count;
  }, 0);
}

/** Height of the row that holds the cell with this text, in a cell of this width [pt]; `first` stands for the first column. */
export function height({ role }: Cell, text: string, width: number, first = true): number {
  if (role === 'heading') return 24;
  if (role === 'title') return 18;
  if (role === 'gap') return 7;
  if (!wraps(role)) return LINE + PADDING;
  const small = role === 'source' || role === 'remark';
  const indent = first && role !== 'entry' ? 0 : INDENT;
  const room = Math.max(1.5, (width - indent) / (small ? SMALL_SIZE : PLAIN_SIZE));
  const padding = role === 'text' ? 2 : PADDING;
  const count = lines(text, role === 'label' ? room / BOLD : room);
  return Math.min(TALLEST, count * (small ? SMALL_LINE : LINE) + padding);
}

/** Width in which the words of a cell over these columns run [pt]. */
export const roomIn = (widths: readonly number[]): number =>
  widths.reduce((sum, width) => sum + width * DIGIT + BESIDE, 0) - BESIDE;

/** Width of a column of the workings: room for its members and values, not for its whole heading. */
export function columnWidth(texts: readonly string[], labels: readonly string[]): number {
  const longestWord = labels
    .flatMap((l) => l.split(/[ –/-]/))
    .reduce((most, w) => Math.max(most, w.length), 0);
  const longest = texts.reduce((most, t) => Math.max(most, t.length), 0);
  return Math.min(40, Math.max(12, longestWord * 1.15 + 2, longest + 2));
}
