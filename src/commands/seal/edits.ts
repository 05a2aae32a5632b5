/** What a person changed in a file since coilfeed made it, as far as it can be told. */
import { strFromU8 } from 'fflate';
import { openArchive } from '../../saved/archive.ts';
import { sheetParts } from '../../saved/parts.ts';
import { readSaved } from '../../saved/read.ts';

/** So many changed inputs are named. */
const NAMED = 3;
/** Far beyond the lists of a workbook of ours [byte]. */
const LARGEST = 1024 * 1024;

/** As parts of a sentence; none where nothing can be told. `fresh` is what would be written. */
export async function editsOf(path: string, old: Uint8Array, fresh: Uint8Array): Promise<string[]> {
  if (!/\.xlsx$/i.test(path)) return [];
  const edits: string[] = [];
  const read = await readSaved(old, path);
  if (read.ok) {
    const { changed, card } = read;
    for (const { cell, key, was, now } of changed.slice(0, NAMED))
      edits.push(`${cell} ${key}: ${was} → ${now}`);
    if (changed.length > NAMED) edits.push(`${changed.length - NAMED} more inputs`);
    const filled = (card ?? []).filter(({ found }) => found.is !== 'empty').length;
    if (filled > 0)
      edits.push(filled === 1 ? 'a reading on the test card' : `${filled} readings on the test card`);
  } else edits.push('inputs that cannot be used');
  const [before, now] = [contents(old), contents(fresh)];
  const more = before.sheets.filter((name) => !now.sheets.includes(name));
  if (more.length > 0) edits.push(`${more.length === 1 ? 'sheet' : 'sheets'} ${more.join(', ')}`);
  if (before.notes && !now.notes) edits.push('notes on cells');
  return edits;
}

function contents(bytes: Uint8Array): { sheets: string[]; notes: boolean } {
  const archive = openArchive(bytes);
  if (typeof archive === 'string') return { sheets: [], notes: false };
  const text = (name: string): string => {
    const part = archive.read(name, LARGEST);
    return typeof part === 'string' ? '' : strFromU8(part);
  };
  return {
    sheets: [...sheetParts(text('xl/workbook.xml'), text('xl/_rels/workbook.xml.rels')).keys()],
    notes: archive.parts.some(({ name }) => /^xl\/(?:comments|threadedComments)/.test(name)),
  };
}
