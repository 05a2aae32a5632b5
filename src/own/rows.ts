/** Where the sheet Own has what; the one who writes it, judges it and reads it back take it from here. */
import { address, columnOf } from '../basis/address.ts';
import type { Design } from '../design/design.ts';

export const OWN = 'Own';
/** First row of the table, counted from 0. */
export const OWN_TOP = 5;
export const OWN_COLUMN = { label: 0, value: 1, unit: 2, sense: 3, limit: 4, words: 5, verdict: 6 } as const;
/** Rows that are left free for a person. */
const FREE = 8;

/** Rows of the table: those of the design, and free ones. */
export const ownRows = ({ own }: Pick<Design, 'own'>): number => own.length + FREE;

/** Cell of the table on the sheet Own. */
export const ownCell = (i: number, column: keyof typeof OWN_COLUMN): string =>
  `${OWN}!${address(OWN_TOP + i, OWN_COLUMN[column])}`;

/** The words of a rule as they stand in the table. */
export const SENSES = { at_most: '≤', at_least: '≥' } as const;

/** Signs that are taken for these words: those of the list, and as they are typed. */
export const SIGNS: Readonly<Record<string, keyof typeof SENSES>> = {
  '≤': 'at_most',
  '<=': 'at_most',
  'at most': 'at_most',
  '≥': 'at_least',
  '>=': 'at_least',
  'at least': 'at_least',
};

/** Row of the first name of the short list, below the table. */
export const shortTop = (design: Pick<Design, 'own'>): number => OWN_TOP + ownRows(design) + 4;
export const shortCell = (design: Pick<Design, 'own'>, i: number): string =>
  `${OWN}!${address(shortTop(design) + i, OWN_COLUMN.value)}`;

/** What a person fills in, without the verdict. */
export const ownArea = (design: Pick<Design, 'own'>): string =>
  `${OWN}!${address(OWN_TOP, OWN_COLUMN.label)}:${address(OWN_TOP + ownRows(design) - 1, OWN_COLUMN.words)}`;

/** The name of a sheet as formulas and messages write it. */
export const quoted = (sheet: string): string => (/^[A-Za-z_]\w*$/.test(sheet) ? sheet : `'${sheet}'`);

/** `B4`, counted from 0. */
export function cellAt(cell: string): { row: number; column: number } {
  const [, letters = '', row = '1'] = /^([A-Z]+)(\d+)$/.exec(cell) ?? [];
  return { row: Number(row) - 1, column: columnOf(letters) };
}
