/** Turns the formula of a quantity into the formulas of its cells. */
import { type Reference, type Selector, tokens } from '../basis/formula.ts';
import type { At, Axis } from '../basis/quantity.ts';
import { QUANTITIES, type QuantityName } from '../model/model.ts';
import type { Members, Owners } from './axes.ts';
import { address, type Place, type Placement } from './layout.ts';

export interface Grid {
  readonly axes: Members;
  readonly owners: Owners;
  readonly placement: Placement;
  /** Conductors between the battery and a conductor, from the battery outward. */
  readonly ahead: (wire: number) => readonly number[];
  /** Run whose fuse protects a conductor; −1 when there is none. */
  readonly guard: (wire: number) => number;
}

/** First and last member that a reference means along one axis; `bound` when they follow the cell at hand. */
interface Span {
  readonly first: number;
  readonly last: number;
  readonly bound: boolean;
}
/** A span for each cell, worked out from the members at hand. */
type Spanner = (at: At) => Span;

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
export function compile(grid: Grid, formula: string, home: Home): (at: At) => string {
  const parts = tokens(formula).map((t) =>
    t.kind === 'reference' ? reference(grid, t.reference, home) : t.text,
  );
  return (at) => {
    let text = '';
    for (const part of parts) text += typeof part === 'string' ? part : part(at);
    return text;
  };
}

function reference(grid: Grid, { name, selectors }: Reference, home: Home): string | ((at: At) => string) {
  const axes = axesOf(home);
  if (!Object.hasOwn(QUANTITIES, name)) throw new Error(`"${name}" is no quantity`);
  const target = grid.placement.places.get(name as QuantityName) as Place;
  if (target.rows.length === 0) return name;
  const all = target.across ? [...target.rows, target.across] : target.rows;
  const stray = selectors.find((s) => !all.includes(s.axis as Axis));
  if (stray) throw new Error(`${name} has no axis ${stray.axis}`);
  const spanner = (axis: Axis): Spanner => {
    const found = choose(
      grid,
      axis,
      selectors.find((s) => s.axis === axis),
      axes,
    );
    if (found === undefined) throw new Error(`${name}: the axis ${axis} is left open`);
    return found;
  };
  const where = target.sheet === home.sheet ? '' : `${target.sheet}!`;
  if (selectors.some((s) => s.how === 'ahead')) return ahead(grid, target, axes, where);
  const rows = target.rows.map(spanner);
  const across = target.across ? spanner(target.across) : undefined;
  const follows = following(grid, target, selectors, home);
  return (at) => range(target, where, rows, across, follows, at);
}

/** The conductors between the battery and the one at hand, each as a cell of its own, so that no chain is closed. */
function ahead(grid: Grid, target: Place, axes: readonly Axis[], where: string): (at: At) => string {
  const wire = indexAlong(grid, 'wire', axes);
  if (wire === undefined || target.rows.join() !== 'wire')
    throw new Error('only conductors stand ahead of one');
  return (at) => {
    const cells = grid.ahead(wire(at)).map((i) => where + address(target.row + i, target.column));
    return cells.length === 0 ? '0' : cells.join(',');
  };
}

/** Whether the rows and the columns of a reference follow those of the cell at a constant distance. */
function following(
  grid: Grid,
  target: Place,
  selectors: readonly Selector[],
  home: Home,
): { row: boolean; column: boolean } {
  const same = (member: Axis | undefined, owner: Axis | undefined): boolean => {
    const found = member && grid.owners[member];
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

/** How a reference chooses along one axis; undefined when it does not. */
function choose(
  grid: Grid,
  axis: Axis,
  selector: Selector | undefined,
  axes: readonly Axis[],
): Spanner | undefined {
  const index = indexAlong(grid, axis, axes);
  const one = (i: number): Span => ({ first: i, last: i, bound: true });
  switch (selector?.how) {
    case 'all': {
      const span: Span = { first: 0, last: grid.axes[axis].length - 1, bound: false };
      return () => span;
    }
    case 'owned': {
      const owner = grid.owners[axis];
      const by = indexAlong(grid, selector.owner as Axis, axes);
      if (owner?.axis !== selector.owner || by === undefined) return undefined;
      // One member at most, such as the feed run that a run is.
      if (owner.same) return (at) => one(by(at) < grid.axes[axis].length ? by(at) : -1);
      const owned = grid.axes[axis].map((_, i) => owner.index(i));
      return (at) => ({ first: owned.indexOf(by(at)), last: owned.lastIndexOf(by(at)), bound: false });
    }
    case 'as': {
      const other = selector.other as Axis;
      return axes.includes(other) ? (at) => one(at[other] as number) : undefined;
    }
    case 'ahead':
      return undefined;
    case 'guard': {
      const wire = indexAlong(grid, 'wire', axes);
      return wire && ((at) => one(grid.guard(wire(at))));
    }
    case 'before':
      return index && ((at) => one(index(at) - 1));
    case 'after': {
      const count = grid.axes[axis].length;
      return index && ((at) => one(index(at) + 1 < count ? index(at) + 1 : -1));
    }
    case undefined:
      return index && ((at) => one(index(at)));
  }
}

/** Index on `axis` of the member at hand, or of the owner of a member at hand. */
function indexAlong(grid: Grid, axis: Axis, axes: readonly Axis[]): ((at: At) => number) | undefined {
  if (axes.includes(axis)) return (at) => at[axis] as number;
  const member = axes.find((a) => grid.owners[a]?.axis === axis);
  const owner = member && grid.owners[member];
  return owner && ((at) => owner.index(at[member as Axis] as number));
}

function range(
  target: Place,
  where: string,
  rows: readonly Spanner[],
  across: Spanner | undefined,
  follows: { row: boolean; column: boolean },
  at: At,
): string {
  let [top, bottom, wide, single] = [0, 0, false, true];
  for (const [i, spanner] of rows.entries()) {
    const { first, last, bound } = spanner(at);
    if (first < 0) return NO_MEMBER;
    const count = target.counts[i] as number;
    if (wide && !(first === 0 && last === count - 1)) throw new Error(`a range over ${target.rows} has gaps`);
    wide ||= first !== last;
    single &&= bound;
    top = top * count + first;
    bottom = bottom * count + last;
  }
  let [left, right] = [0, 0];
  if (across) {
    const { first, last, bound } = across(at);
    if (first < 0) return NO_MEMBER;
    [left, right] = [first, last];
    single &&= bound;
  }
  const corner = (row: number, column: number): string =>
    address(target.row + row, target.column + column, !follows.row, !follows.column);
  return single ? where + corner(top, left) : `${where}${corner(top, left)}:${corner(bottom, right)}`;
}
