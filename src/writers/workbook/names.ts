/** Defined names: of every quantity, and with `in_` before it of the cells in which it is entered. */
import { entryUnit } from '../../engine/cell.ts';
import type { Grid } from '../../engine/translate.ts';
import { QUANTITIES, type QuantityName } from '../../model/model.ts';
import { isLegal } from '../../own/names.ts';
import { ENTRY, ENTRY_US } from '../../saved/mark.ts';
import { rangeOf } from './links.ts';

/** Names and what they stand for, `Sheet!$C$5:$C$9`, in the order of the names. */
export function definedNames(grid: Grid): [string, string][] {
  const {
    places,
    entries,
    entering: { system },
  } = grid.placement;
  const of = (name: QuantityName, from: typeof places): string => {
    const place = from.get(name);
    if (place === undefined) throw new Error(`${name} has no place`);
    return rangeOf(grid, name, place);
  };
  return [
    // Of what a design has none there are no cells to name.
    ...[...places]
      .filter(([, { counts }]) => counts.every((count) => count > 0))
      .map(([name]): [string, string] => [name, of(name, places)]),
    ...[...entries.keys()].map((name): [string, string] => [
      (entryUnit(QUANTITIES[name], system) === entryUnit(QUANTITIES[name], 'metric') ? ENTRY : ENTRY_US) +
        name,
      of(name, entries),
    ]),
  ]
    .filter(([name]) => isLegal(name))
    .sort(([a], [b]) => (a < b ? -1 : 1));
}
