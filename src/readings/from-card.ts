/** Readings from the cells of a test card that a person filled in. */
import { convert } from '../basis/units.ts';
import type { Design, Measured } from '../design/design.ts';
import { quote } from '../design/problems.ts';
import { QUANTITIES } from '../model/model.ts';
import { cardPlaces, hasRow } from './card.ts';
import { quantityOf } from './expected.ts';

/** A cell as it was read from a workbook. */
interface CardCell {
  readonly cell: string;
  readonly found: { readonly is: string; readonly value?: number | string };
}

export interface OnCard {
  readonly measured: Measured[];
  /** Cells that hold no reading. */
  readonly wrong: readonly { readonly cell: string; readonly found: string }[];
}

/** `cells` from the first row of the card down, each in the unit in which its row is printed; empty ones are skipped. */
export function measuredOn(design: Design, cells: readonly CardCell[]): OnCard {
  const places = cardPlaces(design);
  const measured = design.measured.filter((one) => !hasRow(one));
  const wrong: { cell: string; found: string }[] = [];
  cells.forEach(({ cell, found }, i) => {
    const where = places[i];
    if (where === undefined || found.is === 'empty') return;
    if (found.is !== 'number' || typeof found.value !== 'number' || found.value < 0) {
      wrong.push({
        cell,
        found: typeof found.value === 'number' ? String(found.value) : quote(found.value ?? ''),
      });
      return;
    }
    const name = quantityOf(where);
    const { unit, shown = unit } = name === null ? { unit: 'V' } : QUANTITIES[name];
    measured.push({ ...where, value: found.value * convert(shown, unit), path: cell });
  });
  return { measured, wrong };
}
