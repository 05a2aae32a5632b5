/** Turns the formula of a quantity into the formulas of its cells. */

import { address } from '../basis/address.ts';
import { type Selector, type Token, tokens } from '../basis/formula.ts';
import type { At, Axis } from '../basis/quantity.ts';
import { OWNERS } from './axes.ts';
import { areaOf, type Chosen, chosen, type Here, here, isSingle, type Shape } from './choose.ts';
import type { Place, Placement } from './layout.ts';

/** A shape with the places of its cells. */
export interface Grid extends Shape {
  readonly placement: Placement;
}

/** A member that is not there, such as the one before the first, reads as the empty text. */
const NO_MEMBER = '""';

/** The quantity that a formula belongs to: its axes, and the sheet where it stands. */
export interface Home {
  readonly rows: readonly Axis[];
  readonly across?: Axis;
  readonly sheet: string;
}
const axesOf = (home: Home): readonly Axis[] => (home.across ? [...home.rows, home.across] : home.rows);

/**
 * Returns a function that gives the formula of one cell, without the leading equals sign, for the members at hand.
 * Throws when the formula names what does not exist or leaves an axis open: formulas are written by us.
 *
 * A reference is relative where row or column follow those of the cell at a constant distance, and fixed elsewhere.
 * All cells of a quantity then hold the same formula, or few different ones, which a spreadsheet program shows as a
 * column without gaps and the evaluation need not read again for each cell.
 */
export function translate(grid: Grid, formula: string, home: Home): (at: At) => string {
  const parts = portable(tokens(formula), (t) =>
    t.kind === 'reference'
      ? reference(grid, chosen(t.reference, axesOf(home)), t.reference.selectors, home)
      : t.text,
  );
  return (at) => {
    const one = here(grid, at);
    let text = '';
    for (const part of parts) text += typeof part === 'string' ? part : part(one);
    return text;
  };
}

type Part = string | ((at: Here) => string);

/** Index of the bracket that closes the one at `open`, and of the commas between the two. */
function closing(all: readonly Token[], open: number): { end: number; commas: number[] } {
  const commas: number[] = [];
  let depth = 1;
  let end = open;
  while (depth > 0) {
    end += 1;
    const text = all[end]?.text;
    if (text === undefined) throw new Error('a bracket is not closed');
    if (text === '(') depth += 1;
    if (text === ')') depth -= 1;
    if (text === ',' && depth === 1) commas.push(end);
  }
  return { end, commas };
}

/**
 * The parts of a formula in the form that every program evaluates alike. Gnumeric takes what stands in `MAX` for no array,
 * not even inside `SUMPRODUCT`, and what stands in `LARGE` for one; and it looks nothing up in a range of one cell.
 */
function portable(all: readonly Token[], part: (token: Token) => Part): Part[] {
  const parts = all.map(part);
  all.forEach((token, i) => {
    if (token.text === 'MAX' && all[i - 2]?.text === 'SUMPRODUCT') {
      parts[i] = 'LARGE';
      parts[closing(all, i + 1).end] = ',1)';
    }
    const range = parts[i + 2];
    if (token.text !== 'INDEX' || typeof range !== 'function') return;
    const { end, commas } = closing(all, i + 1);
    const [first, second] = commas as [number, number];
    const either = (index: number, other: (cell: string) => string): void => {
      const usual = parts[index] as Part;
      parts[index] = (at) => {
        const text = typeof usual === 'string' ? usual : usual(at);
        const cell = ownCell(range(at));
        return cell === null ? text : other(cell);
      };
    };
    either(i, () => 'IF');
    either(first, () => '(');
    either(second, () => ')*(');
    either(end, (cell) => `)=1,${cell},1/0)`);
    either(i + 2, () => '');
  });
  return parts;
}

/** `Sheet!$B$9` for the range `Sheet!$B$9:$B$9`, null for a range of several cells. */
function ownCell(range: string): string | null {
  const [first = '', last] = range.split(':');
  return last !== undefined && first.slice(first.indexOf('!') + 1) === last ? first : null;
}

function reference(grid: Grid, found: Chosen, selectors: readonly Selector[], home: Home): Part {
  const target = grid.placement.places.get(found.name) as Place;
  if (target.rows.length === 0) return found.name;
  const where = target.sheet === home.sheet ? '' : `${target.sheet}!`;
  const { list } = found;
  // A cell each, so that no chain of conductors is closed.
  if (list !== undefined)
    return (at) =>
      list(at)
        .map((i) => where + address(target.row + i, target.column))
        .join() || '0';
  const follows = following(target, selectors, home);
  const single = isSingle(found);
  const corner = (row: number, column: number): string =>
    address(target.row + row, target.column + column, !follows.row, !follows.column);
  return (at) => {
    const area = areaOf(found, target.counts, at);
    if (area === null) return NO_MEMBER;
    const first = where + corner(area.top, area.left);
    return single ? first : `${first}:${corner(area.bottom, area.right)}`;
  };
}

/** Whether the rows and the columns of a reference follow those of the cell at a constant distance. */
function following(
  target: Place,
  selectors: readonly Selector[],
  home: Home,
): { row: boolean; column: boolean } {
  const same = (member: Axis | undefined, owner: Axis | undefined): boolean => {
    const found = member && OWNERS[member];
    return found?.axis === owner && found?.same === true;
  };
  const direct = (axis: Axis): boolean =>
    !selectors.some(
      (s) =>
        s.axis === axis &&
        s.how !== 'before' &&
        s.how !== 'after' &&
        !(s.how === 'owned' && same(axis, s.owner as Axis)),
    );
  const owned = (axis: Axis, own: Axis | undefined): boolean =>
    axis === own || same(own, axis) || same(axis, own);
  return {
    row:
      target.rows.length === home.rows.length &&
      target.rows.every((axis, i) => direct(axis) && owned(axis, home.rows[i])),
    column: target.across !== undefined && direct(target.across) && target.across === home.across,
  };
}
