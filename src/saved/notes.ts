/** The notes that a person wrote beside the inputs: each belongs to its row, wherever that has gone. */
import { address } from '../basis/address.ts';
import type { Design } from '../design/design.ts';
import { LONGEST_REMARK } from '../design/schema-own.ts';
import { namesRow, remarkName } from '../engine/remarks.ts';
import { quoted } from '../own/rows.ts';
import type { Book } from './book.ts';
import type { Edit } from './document.ts';
import type { Entry } from './entries.ts';
import { OWN_NOTES } from './mark.ts';

/** The change of the text of the design, none where all is as it was; and what is lost. */
export function notesIn(
  book: Book,
  made: Design,
  entries: readonly Entry[],
): { edits: readonly Edit[]; behind: readonly string[] } {
  const area = book.names.get(OWN_NOTES);
  const behind: string[] = [];
  if (!area) return { edits: [], behind };
  // Notes whose row this workbook does not have stay where they are.
  const notes = new Map(made.remarks);
  for (const { name, q, at, of, sheet, row } of entries) {
    const beside = q.per?.[0] === 'run';
    const member = q.per === undefined || beside ? '' : of;
    if (sheet !== area.sheet || (beside && at.run !== 0) || (member !== '' && !namesRow(name))) continue;
    const key = remarkName(name, member);
    const found = book.cell(sheet, row, area.left);
    notes.delete(key);
    if (found.is === 'empty') continue;
    const text = String(found.value);
    if (found.is === 'formula' || found.is === 'other' || text.length > LONGEST_REMARK)
      behind.push(`${quoted(sheet)}!${address(row, area.left, false, false)}, a note that is no short text`);
    else notes.set(key, text);
  }
  const same =
    notes.size === made.remarks.size && [...notes].every(([key, text]) => made.remarks.get(key) === text);
  const value = notes.size === 0 ? undefined : Object.fromEntries(notes);
  return { edits: same ? [] : [{ key: ['remarks'], value }], behind };
}
