/**
 * Inputs that follow the name of a part of the shop's file: a cell that still holds the formula that was written there has what
 * that part has. No stored result is taken, and no formula need be worked out.
 */
import { address } from '../basis/address.ts';
import type { Design } from '../design/design.ts';
import { deviceNamed, followed, heldFor, namesOf, PART_OF, withPart } from '../engine/entered/parts.ts';
import { lookedUp } from '../engine/entered/shelf.ts';
import type { Found } from './book.ts';
import type { Entry } from './entries.ts';

/** A formula without what a program writes in one way or the other. */
const plain = (formula: string): string => formula.replace(/[$'\s]/g, '').toUpperCase();

/** The entries, with the values of the part that is named: none without a name, as they were with one that is not known. */
export function following(design: Design, entries: readonly Entry[]): readonly Entry[] {
  const names = new Map(
    entries.flatMap((entry) =>
      deviceNamed(entry.name) === undefined ? [] : [[`${entry.name} ${entry.at.run}`, entry] as const],
    ),
  );
  return entries.map((entry): Entry => {
    const { name, at, found, system } = entry;
    const part = found.is === 'formula' ? followed(design, name, at) : null;
    const named = part && names.get(`${PART_OF[part.device]} ${at.run}`);
    if (!part || !named || found.is !== 'formula') return entry;
    const written = lookedUp(design, name, at, address(named.row, named.column));
    if (written === null || plain(found.value) !== plain(written)) return entry;
    if (named.found.is === 'empty') return { ...entry, found: named.found, follows: true };
    // Also one that is on no list of the workbook: that was made for another curve, what is read is not.
    const wanted = namesOf(design, part.device).find(
      (one) => named.found.is === 'text' && named.found.value === one,
    );
    const of = wanted === undefined ? design : withPart(design, part.device, at, wanted);
    return { ...entry, found: contentOf(heldFor(of, name, at, system)), follows: true };
  });
}

const contentOf = (value: number | string | null): Found =>
  value === null
    ? { is: 'empty' }
    : typeof value === 'number'
      ? { is: 'number', value }
      : { is: 'text', value };
