/** The cells in which a person enters something, with what stood there when the workbook was made. */

import { address } from '../basis/address.ts';
import type { At, Axis, OfKind, Quantity } from '../basis/quantity.ts';
import type { System } from '../basis/shown.ts';
import type { Design } from '../design/design.ts';
import { type Path, quote } from '../design/problems.ts';
import { members } from '../engine/axes.ts';
import { inputValue } from '../engine/cell.ts';
import { type Label, labelsOf } from '../engine/entered/labels.ts';
import { PART_OF } from '../engine/entered/parts.ts';
import { entering, METRIC } from '../engine/entering.ts';
import { type Place, placement } from '../engine/layout.ts';
import { cellOf, members as combinations, memberName } from '../engine/places.ts';
import { ON_REQUEST, type OnRequest, QUANTITIES, type QuantityName } from '../model/model.ts';
import { quoted } from '../own/rows.ts';
import type { Book, Found } from './book.ts';
import { keyOf } from './keys.ts';
import { ENTRY, ENTRY_US, FIRST_MARK, LABELS, MARK } from './mark.ts';
import type { Area } from './parts.ts';

/** One cell. Row and column are counted from 0. */
export interface Entry {
  readonly name: QuantityName;
  readonly q: OfKind<'input'>;
  readonly at: At;
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  /** Where the value stands in the design file. */
  readonly key: Path;
  /** Whose value it is: a run, a point, a conductor; empty where there is only one. */
  readonly of: string;
  /** In whose units it is entered. */
  readonly system: System;
  /** What stood in the cell, in the unit in which it is written; null for nothing. */
  readonly was: number | string | null;
  readonly found: Found;
  /** What was found is what a formula came to. */
  readonly figured?: true;
  /** What was found is what the part of the shop has that is named in its own cell. */
  readonly follows?: true;
}

/** `Inputs!C7`, as messages name the cell. */
export const cellName = ({ sheet, row, column }: Entry): string =>
  `${quoted(sheet)}!${address(row, column, false, false)}`;

export interface Entries {
  readonly entries: readonly Entry[];
  /** Names that are gone, stand for no cells, or for more or fewer cells than the design has members. */
  readonly lost: readonly { readonly name: string; readonly found: string; readonly taken: string }[];
  /** Beside these the label of another input stands. */
  readonly mislabelled: readonly Mislabelled[];
}

/** `cell` is that of the label. */
export interface Mislabelled {
  readonly entry: Entry;
  readonly cell: string;
  readonly found: string;
  readonly taken: string;
}

/** An input of each subject that is laid out on request. */
const TELLING = { readings: 'tolerance_henry', parts: PART_OF.relay } as const satisfies Record<
  OnRequest,
  QuantityName
>;

/** Every entry of a workbook that was made from `design`. */
export function entriesOf(book: Book, design: Design, mark: string = MARK): Entries {
  const axes = members(design);
  const entries: Entry[] = [];
  /** Name of the input that each cell is of. */
  const taken = new Map<string, string>();
  const lost: { name: string; found: string; taken: string }[] = [];
  // The workbook of a check holds the tolerances besides, one with parts of a shop their names.
  const asked = ON_REQUEST.filter((subject) => book.names.has(ENTRY + TELLING[subject]));
  const order = mark === FIRST_MARK ? METRIC : entering(design);
  const { entries: places, blocks } = placement(axes, asked, order);
  for (const [name, place] of places) {
    const q: Quantity = QUANTITIES[name];
    const ats = combinations(axes, place.rows);
    if (q.kind !== 'input' || ats.length === 0) continue;
    // Its name tells in whose units it is entered.
    const system = book.names.has((ENTRY_US + name).toLowerCase()) ? 'us' : 'metric';
    const defined = (system === 'us' ? ENTRY_US : ENTRY) + name;
    const area = book.names.get(defined.toLowerCase());
    const found = area ? lostIn(area, place, ats.length) : 'no cells with this name';
    if (found !== null) {
      lost.push({ name: defined, found, taken: `takes ${cells(ats.length, place)}` });
      continue;
    }
    const { sheet, top, left } = area as Area;
    for (const at of ats) {
      const [row, column] = cellOf({ ...place, row: top, column: left }, at);
      const cell = `${sheet} ${row},${column}`;
      const other = taken.get(cell);
      if (other !== undefined)
        lost.push({ name: defined, found: `the cell of ${other}`, taken: 'takes a cell of its own' });
      taken.set(cell, defined);
      entries.push({
        name,
        q,
        at,
        sheet,
        row,
        column,
        key: keyOf(design, q.path, at),
        of: memberName(axes, place.rows, at),
        system,
        was: inputValue(design, q, at, system),
        found: book.cell(sheet, row, column),
      });
    }
  }
  return { entries, lost, mislabelled: mislabelled(book, entries, labelsOf(blocks, axes)) };
}

/** An input is found by its cell: a label that is another one's tells that cells were sorted. One that is no other's was reworded. */
function mislabelled(book: Book, entries: readonly Entry[], labels: readonly Label[]): Mislabelled[] {
  const plain = (text: string): string => text.trim().toLowerCase();
  const all = new Set(labels.map(({ text }) => plain(text)));
  return labels.flatMap(({ text, name, at, above }) => {
    const entry = entries.find(
      (one) => one.name === name && Object.entries(at).every(([axis, i]) => one.at[axis as Axis] === i),
    );
    if (entry === undefined) return [];
    const { sheet } = entry;
    // Workbooks that do not name it had it in the first column.
    const [row, column] = above
      ? [entry.row - 1, entry.column]
      : [entry.row, book.names.get(LABELS)?.left ?? 0];
    const cell = book.cell(sheet, row, column);
    const found = cell.is === 'text' || cell.is === 'number' ? String(cell.value) : '';
    return plain(found) === plain(text) || !all.has(plain(found))
      ? []
      : [
          {
            entry,
            cell: `${quoted(sheet)}!${address(row, column, false, false)}`,
            found: `found the label ${quote(found)}`,
            taken: `takes ${quote(text)}: its values go by their cells, and those of a sorted table stand in other cells; undo that`,
          },
        ];
  });
}

const cells = (count: number, place: Place): string =>
  count === 1 ? 'one cell' : `${count} cells ${place.beside ? 'beside' : 'below'} each other`;

/** What is wrong with the cells of a name; null when there are as many as there were, in the same direction. */
function lostIn({ top, bottom, left, right }: Area, place: Place, count: number): string | null {
  const [rows, columns] = [bottom - top + 1, right - left + 1];
  const [along, across] = place.beside ? [columns, rows] : [rows, columns];
  return along === count && across === 1 ? null : `${rows} × ${columns} cells`;
}
