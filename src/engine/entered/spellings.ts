/** The spellings that the cells of the inputs take, as a sheet to look them up in, and the formulas that do so. */
import { address } from '../../basis/address.ts';
import { IGNORED, LISTS, type List } from '../../design/spelled.ts';
import { put, type Sheet } from '../cell.ts';

export const SPELLINGS = 'Spellings';
const TOP = 3;
const COLUMN = { key: 0, word: 1, sold: 2 } as const;

/** Lists stand below each other; first row and number of rows of each. */
const PLACES = (() => {
  let row = TOP;
  const places = {} as Record<List, { row: number; count: number }>;
  for (const list of Object.keys(LISTS) as List[]) {
    places[list] = { row, count: LISTS[list].length };
    // An empty row ends each: a look-up sees one row more than there are.
    row += LISTS[list].length + 1;
  }
  return places;
})();

export function spellingsSheet(): Sheet {
  const sheet: Sheet = [];
  put(sheet, 0, 0, { role: 'heading', value: 'Spellings' });
  put(sheet, 1, 0, {
    role: 'about',
    value:
      'Every spelling that Inputs takes, in small letters and without blanks, and the word that it stands for.',
  });
  ['Spelling', 'Word', 'Sold as, or sold by SAE number'].forEach((value, i) => {
    put(sheet, TOP - 1, i, { role: 'label', value });
  });
  for (const list of Object.keys(LISTS) as List[])
    LISTS[list].forEach(({ key, word, sold }, i) => {
      const row = PLACES[list].row + i;
      put(sheet, row, COLUMN.key, { role: 'given', value: key });
      put(sheet, row, COLUMN.word, { role: 'given', value: word });
      put(sheet, row, COLUMN.sold, { role: 'given', value: sold });
    });
  return sheet;
}

const column = (list: List, of: keyof typeof COLUMN): string => {
  const { row, count } = PLACES[list];
  const [first, last] = [address(row, COLUMN[of]), address(row + count, COLUMN[of])];
  // One row more than there are: not every program looks anything up in a single cell.
  return `${SPELLINGS}!${first}:${last}`;
};

/** What an entry is looked up as. */
export const foldedFormula = (cell: string): string =>
  `LOWER(${[...IGNORED.map((sign) => [sign, '']), ['²', '2']].reduce(
    (text, [sign, by]) => `SUBSTITUTE(${text},"${sign}","${by}")`,
    cell,
  )})`;

/** Row of the spelling in its list, 0 when there is none. A star in the text would be a wildcard: the find is compared. */
export const rowFormula = (list: List, folded: string): string =>
  `IFERROR(IF(EXACT(INDEX(${column(list, 'key')},MATCH(${folded},${column(list, 'key')},0),1),${folded}),` +
  `MATCH(${folded},${column(list, 'key')},0),0),0)`;

/** Word at that row, which must be above 0. */
export const wordFormula = (list: List, row: string): string => `INDEX(${column(list, 'word')},${row},1)`;
export const soldFormula = (list: List, row: string): string => `INDEX(${column(list, 'sold')},${row},1)`;
