/** Addresses of quantities, for whoever writes formulas beside the model's own. */
import { address } from '../basis/address.ts';
import type { At } from '../basis/quantity.ts';
import { QUANTITIES, type QuantityName } from '../model/model.ts';
import type { Place } from './layout.ts';
import { cellOf } from './places.ts';
import type { Grid } from './translate.ts';

export const placeOf = (grid: Grid, name: QuantityName): Place => grid.placement.places.get(name) as Place;

/** `Sheet!$C$5` */
export function cellFor(grid: Grid, name: QuantityName, at: At): string {
  const place = placeOf(grid, name);
  return `${place.sheet}!${address(...cellOf(place, at))}`;
}

/** `Sheet!$C$5:$C$9`: all members of a place, over all of its columns. */
export function rangeOf(grid: Grid, name: QuantityName, place: Place): string {
  const { across } = QUANTITIES[name];
  const count = place.counts.reduce((a, b) => a * b, 1) - 1;
  const wide = across === undefined ? 0 : grid.axes[across].length - 1;
  const [down, right] = place.beside ? [0, count] : [count, wide];
  const first = address(place.row, place.column);
  const last = address(place.row + down, place.column + right);
  return `${place.sheet}!${first === last ? first : `${first}:${last}`}`;
}
