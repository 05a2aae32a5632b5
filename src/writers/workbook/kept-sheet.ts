/**
 * What was found when the workbook was made and cannot follow the inputs: remedies are tried on whole designs, which no
 * spreadsheet does. A text in a formula is at most 255 characters long, so that they stand in cells.
 */
import { address } from '../../basis/address.ts';
import { put, type Sheet } from '../../engine/cell.ts';
import { opening, words } from './page.ts';

export const KEPT = 'Kept';
const TOP = 3;
/** Remedies that are told at most. */
export const MOST_REMEDIES = 3;

/** What is told of remedies: those that were tried, as sentences; null where none were looked for. */
export type Remedies = readonly string[] | null;

const UNTRIED =
  'Remedies are tried when a workbook is made: save this one, and “coilfeed size THIS.xlsx” tells what would pass.';
const NONE = 'No single change that was tried helps.';

export function keptSheet(remedies: Remedies): Sheet {
  const sheet: Sheet = [];
  opening(sheet, 'Kept', 'What was found when the workbook was made; it does not follow the inputs.');
  const told = remedies === null ? [UNTRIED] : remedies.length === 0 ? [NONE] : remedies;
  for (let i = 0; i < MOST_REMEDIES; i++) put(sheet, TOP + i, 0, words(told[i] ?? ''));
  put(sheet, TOP + MOST_REMEDIES, 0, words(UNTRIED));
  return sheet;
}

/** Cell of a remedy; of the word that none hold any more behind the last of them. */
export const remedyCell = (i: number): string => `${KEPT}!${address(TOP + i, 0)}`;
