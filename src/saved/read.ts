/**
 * Reads the design back from a workbook that a person edited and saved:
 *
 *   bytes ─► archive ─► book ─┬─ text of the design ─► the design it was made from ─┐
 *                             └─ cells of the inputs, by their names ───────────────┴─► the text with what was
 *                                                              changed ─► read like a design file ─► design, changes
 *
 * A design that is read like this is what the workbook shows: after the reading every cell is compared once more.
 */

import { address } from '../basis/address.ts';
import type { Design } from '../design/design.ts';
import { keyText, type Problem, quote, sortProblems } from '../design/problems.ts';
import { readDesign } from '../design/read.ts';
import { boundsOf } from '../engine/cell.ts';
import { deviceNamed } from '../engine/entered/parts.ts';
import { SHELF } from '../engine/entered/shelf.ts';
import { QUANTITIES, type QuantityName } from '../model/model.ts';
import { edited } from './apply.ts';
import { type Archive, openArchive } from './archive.ts';
import { type Book, type Found, openBook } from './book.ts';
import { editsOf, type Filled, isEmpty, valueIn } from './changes.ts';
import type { Edit } from './document.ts';
import { cellName, type Entries, type Entry, entriesOf } from './entries.ts';
import { figured } from './figured.ts';
import { following } from './follow.ts';
import {
  CARD,
  DESIGN_TEXT,
  ENTRY,
  ENTRY_US,
  KNOWN_ANSWER,
  LABELS,
  OWN_NOTES,
  OWN_ROWS,
  PAGE,
} from './mark.ts';
import { notesIn } from './notes.ts';
import { markIn } from './ours.ts';
import { addedIn } from './own.ts';
import { asSaid, same, sameWord, unitOf, wordIn } from './value.ts';

/** An input that is another one than when the workbook was made. */
export interface Changed {
  /** `Inputs!C7` */
  readonly cell: string;
  /** Key in the design file. */
  readonly key: string;
  readonly label: string;
  /** The run, point or conductor whose input it is; empty for one that exists once. */
  readonly of: string;
  /** With units. */
  readonly was: string;
  readonly now: string;
}

export type SavedResult =
  | {
      readonly ok: true;
      readonly design: Design;
      readonly changed: readonly Changed[];
      /** What stands in the cells of the test card, from the first row down; null where there is no card. */
      readonly card: readonly CardCell[] | null;
      /** What a person put into the workbook that a new one made from it does not hold: sheets, and notes on cells. */
      readonly behind: readonly string[];
      /** The program that saved it computes a known answer otherwise: what it showed is not to be trusted. */
      readonly differs: boolean;
    }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** A cell of the test card. */
export interface CardCell {
  /** `TestCard!H7` */
  readonly cell: string;
  readonly found: Found;
}

/** Names of the cells that are read, in small letters; a quantity of the model may be called as an entry is. */
const WANTED = new Set(
  [
    ...[DESIGN_TEXT, KNOWN_ANSWER, OWN_ROWS, OWN_NOTES, CARD, PAGE + SHELF, LABELS],
    ...Object.entries(QUANTITIES).flatMap(([name, { kind }]) =>
      kind === 'input' ? [ENTRY + name, ENTRY_US + name] : [],
    ),
  ].map((name) => name.toLowerCase()),
);

/** How to get a workbook that can be read. */
const AGAIN = 'make another one from the design: coilfeed size DESIGN --out FILE.xlsx';
/** A design's defaults follow from other values at most this many times in a row. */
const MOST_PASSES = 5;
/** After a change of the unit the last digits may differ [share]. */
const CLOSE = 1e-13;

/** `file` is its name in messages. Never throws on account of the bytes. */
export async function readSaved(bytes: Uint8Array, file: string): Promise<SavedResult> {
  const refuse = (found: string, taken: string): SavedResult => ({
    ok: false,
    problems: [{ file, cell: '', line: 1, column: 1, key: '', found, taken }],
  });
  const archive = openArchive(bytes);
  if (typeof archive === 'string')
    return refuse(`a workbook that ${archive}`, `takes one saved as .xlsx, or ${AGAIN}`);
  const mark = markIn(archive);
  if (mark === null)
    return refuse(
      'no workbook that coilfeed made',
      archive.has('content.xml')
        ? 'takes .xlsx: save it in that format'
        : `takes one that came from it, saved as .xlsx, or ${AGAIN}`,
    );
  const book = await openBook(archive, (name) => WANTED.has(name));
  if (typeof book === 'string')
    return refuse(`a workbook that ${book}`, `takes one as it was made, or ${AGAIN}`);
  const carried = carriedText(book);
  if (carried === null)
    return refuse(
      `a workbook without the name ${DESIGN_TEXT}, which holds its design file`,
      `takes one whose sheet Design is there, or ${AGAIN}`,
    );
  const read = readDesign(carried.text, file);
  if (!read.ok)
    return {
      ok: false,
      problems: read.problems.map((p) => ({ ...p, cell: `${carried.sheet}!A${carried.top + p.line}` })),
    };
  const { entries, ...rest } = entriesOf(book, read.design, mark);
  const known = { entries: await figured(book, following(read.design, entries)), ...rest };
  return new Reading(file, book, read.design, behindIn(archive)).result(carried.text, known);
}

/** The text of the design; null when its cells are gone. */
function carriedText(book: Book): { text: string; sheet: string; top: number } | null {
  const area = book.names.get(DESIGN_TEXT);
  if (!area) return null;
  const lines: string[] = [];
  for (let row = area.top; row <= area.bottom; row++) {
    let line = '';
    for (let column = area.left; column <= area.right; column++) {
      const found = book.cell(area.sheet, row, column);
      if (found.is === 'text' || found.is === 'number') line += found.value;
    }
    lines.push(line);
  }
  return { text: `${lines.join('\n')}\n`, sheet: area.sheet, top: area.top };
}

function cardOf(book: Book): CardCell[] | null {
  const area = book.names.get(CARD);
  if (!area) return null;
  const { sheet, top, bottom, left } = area;
  return Array.from({ length: bottom - top + 1 }, (_, i) => ({
    cell: `${sheet}!${address(top + i, left, false, false)}`,
    found: book.cell(sheet, top + i, left),
  }));
}

/** Whether the stored result of the known answer is a wrong one. */
function differsIn(book: Book): boolean {
  const area = book.names.get(KNOWN_ANSWER);
  if (!area) return false;
  const stored = book.stored(area.sheet, area.top, area.left);
  return stored !== null && stored !== 1;
}

/** What a design cannot hold: drawings of sheets that a person added, and notes. */
function behindIn(archive: Archive): string[] {
  const notes = archive.parts.some(({ name }) => /^xl\/(?:comments|threadedComments)/.test(name));
  return notes ? ['notes on cells'] : [];
}

/** The reading of one workbook; `made` is the design that it was made from. */
class Reading {
  private readonly problems: Problem[] = [];
  private readonly file: string;
  private readonly book: Book;
  private readonly made: Design;
  private readonly behind: readonly string[];

  constructor(file: string, book: Book, made: Design, behind: readonly string[]) {
    this.file = file;
    this.book = book;
    this.made = made;
    this.behind = behind;
  }

  result(text: string, { entries, lost, mislabelled }: Entries): SavedResult {
    for (const { name, found, taken } of lost) this.say(null, name, found, `${taken}; ${FIXED}, ${AGAIN}`);
    for (const { entry, cell, found, taken } of mislabelled)
      this.say(entry, keyText(entry.key), found, taken, cell);
    const filled = entries.flatMap((entry) => this.fill(entry));
    for (const one of filled)
      if (isPart(one.name) && one.value === null && one.was !== null && !isEmpty(one, filled))
        this.say(one, keyText(one.key), 'left empty', 'takes the name of a part of its list');
    if (this.problems.length > 0) return this.refused();
    const changed = filled.filter(({ value, was }) => !same(value, was));
    const own = addedIn(this.book, this.made);
    for (const { cell, found, taken } of own.problems)
      this.problems.push({
        file: this.file,
        cell,
        line: Number(/\d+$/.exec(cell)?.[0] ?? 1),
        column: 1,
        key: '',
        found,
        taken,
      });
    if (this.problems.length > 0) return this.refused();
    const settled = this.settle(text, filled, changed);
    const notes = notesIn(this.book, this.made, entries);
    const design = settled === null ? null : this.withOwn(settled, [...own.edits, ...notes.edits]);
    if (design === null) return this.refused();
    return {
      ok: true,
      design,
      changed: changed
        .filter(({ follows }) => !follows)
        .map((entry) => ({
          cell: cellName(entry),
          key: keyText(entry.key),
          label: entry.q.label,
          of: entry.of,
          was: asSaid(entry.was, entry),
          now: asSaid(entry.value, entry),
        })),
      card: cardOf(this.book),
      differs: differsIn(this.book),
      behind: [...this.behind, ...worked(entries), ...own.behind, ...notes.behind],
    };
  }

  /** The design with what a person added to the workbook; null when it cannot be taken. */
  private withOwn(design: Design, edits: readonly Edit[]): Design | null {
    if (edits.length === 0) return design;
    const read = readDesign(edited(design.text.toString(), edits), this.file);
    if (read.ok) return read.design;
    for (const { key, found, taken } of read.problems) this.say(null, key, found, taken);
    return null;
  }

  /** Brings the changes into the text until the design holds what the cells hold; null when it cannot. */
  private settle(text: string, all: readonly Filled[], changed: readonly Filled[]): Design | null {
    // What follows the name of a part comes with it; what does not is stated beside it.
    const named = changed.filter(({ name }) => isPart(name));
    let [design, now, open] = [this.made, text, named.length > 0 ? named : changed];
    for (let pass = 0; pass < MOST_PASSES && open.length > 0; pass++) {
      now = edited(now, editsOf(open, all, this.made));
      const read = readDesign(now, this.file);
      if (!read.ok) {
        for (const problem of read.problems) this.move(problem, all, changed);
        return null;
      }
      design = read.design;
      // A word may be written in several ways; a number must be the number.
      open = all.filter((one) => {
        const value = valueIn(design, one, this.made);
        return typeof one.value === 'string' && typeof value === 'string'
          ? !sameWord(one.q, one.value, value)
          : !same(one.value, value, CLOSE);
      });
    }
    for (const one of open) {
      const value = asSaid(valueIn(design, one, this.made), one);
      if (one.value === null)
        this.say(
          one,
          keyText(one.key),
          'left empty',
          `takes a value: without one a design file means ${value}`,
        );
      else
        this.say(
          one,
          keyText(one.key),
          `found ${asSaid(one.value, one)}`,
          `takes ${value}, which follows from the rest of the design`,
        );
    }
    return this.problems.length > 0 ? null : design;
  }

  /** What a person left in a cell; nothing, and a problem, where it cannot be taken. */
  private fill(entry: Entry): Filled[] {
    const { found, q } = entry;
    const key = keyText(entry.key);
    if (found.is === 'formula' || found.is === 'other') {
      const what =
        found.is === 'formula' ? `the formula ${quote(`=${found.value}`)}` : `found ${found.value}`;
      const how =
        found.is === 'formula' ? 'as a value, or as a formula over other inputs alone' : 'as a value';
      this.say(entry, key, what, `takes ${takenBy(entry)}, ${how}`);
      return [];
    }
    const value =
      found.is === 'empty' ? null : typeof found.value === 'string' ? wordIn(q, found.value) : found.value;
    if (typeof value === 'string' && q.unit !== 'text' && value !== 'auto') {
      this.say(entry, key, `found ${quote(value)}`, `takes ${takenBy(entry)}`);
      return [];
    }
    if (q.path === 'engine.cylinders' && !same(value, entry.was)) {
      this.say(
        entry,
        key,
        `found ${asSaid(value, entry)}`,
        `takes ${asSaid(entry.was, entry)}: ${FIXED}, ${AGAIN}`,
      );
      return [];
    }
    if (q.path.startsWith('sweep.') && this.made.sweep === null && value !== null) {
      this.say(
        entry,
        key,
        `found ${asSaid(value, entry)}`,
        `takes nothing: this workbook has no rows for a sweep, ${AGAIN}`,
      );
      return [];
    }
    return [{ ...entry, value }];
  }

  /** A problem of the text becomes one of the cell that it came from. */
  private move(problem: Problem, all: readonly Filled[], changed: readonly Filled[]): void {
    const exact = (of: readonly Filled[]) => of.find(({ key }) => keyText(key) === problem.key);
    const near = (of: readonly Filled[]) =>
      of.find(({ key }) => keyText(key).startsWith(problem.key) || problem.key.startsWith(keyText(key)));
    const entry = exact(changed) ?? exact(all) ?? near(changed) ?? near(all) ?? null;
    this.say(entry, problem.key, problem.found, problem.taken);
  }

  private say(
    entry: Entry | null,
    key: string,
    found: string,
    taken: string,
    cell = entry === null ? '' : cellName(entry),
  ): void {
    this.problems.push({
      file: this.file,
      cell,
      line: entry === null ? 1 : entry.row + 1,
      column: entry === null ? 1 : entry.column + 1,
      key,
      found,
      taken,
    });
  }

  private refused(): SavedResult {
    return { ok: false, problems: sortProblems(this.problems) };
  }
}

const isPart = (name: QuantityName): boolean => deviceNamed(name) !== undefined;

/** Formulas whose values are taken. */
const worked = (entries: readonly Entry[]): string[] =>
  entries.flatMap((entry) => (entry.figured ? [`${cellName(entry)}, a formula: its value is taken`] : []));

const FIXED = 'the numbers of cylinders, runs and points are fixed within a workbook';

/** What a cell takes: `a number in mH, 0.001 to 100`. */
function takenBy(entry: Entry): string {
  const { q, was, system } = entry;
  if (q.unit === 'text') return 'a word';
  const unit = unitOf(entry);
  const range = boundsOf(q, system).join(' to ');
  const number = `a number${unit === '' ? '' : ` in ${unit}`}${range === '' ? '' : `, ${range}`}`;
  return was === 'auto' ? `${number}, or auto` : number;
}
