/** From members to places: which there are, and where the value of each stands. */
import type { At, Axis } from '../basis/quantity.ts';
import type { Members } from './axes.ts';
import type { Place } from './layout.ts';

/** Every combination of members of the axes, the last axis running fastest. */
export function members(axes: Members, rows: readonly Axis[]): At[] {
  return rows.reduce<At[]>(
    (found, axis) => found.flatMap((at) => axes[axis].map((_, i) => ({ ...at, [axis]: i }))),
    [{}],
  );
}

/** Name of the row of these members, `limiter` or `8, coil 3`; empty where there are no axes. */
export const memberName = (axes: Members, rows: readonly Axis[], at: At): string =>
  rows.map((axis) => axes[axis][at[axis] as number] ?? '').join(', ');

/** Row and column, counted from 0, of a quantity's value for the members `at`. */
export function cellOf(place: Place, at: At): [number, number] {
  const member = place.rows.reduce(
    (sum, axis, i) => sum * (place.counts[i] as number) + (at[axis] as number),
    0,
  );
  const index = place.order?.[member] ?? member;
  if (place.beside) return [place.row, place.column + index];
  return [place.row + index, place.column + (place.across === undefined ? 0 : (at[place.across] as number))];
}
