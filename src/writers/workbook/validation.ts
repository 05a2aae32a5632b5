/** What may be entered: the range of numbers, or the words of a list. A value outside is questioned, not refused. */
import type { DataValidation } from 'exceljs';
import type { Quantity } from '../../basis/quantity.ts';
import { asEntered, type Cell } from '../../engine/cell.ts';
import type { Grid } from '../../engine/translate.ts';
import { QUANTITIES, type QuantityName } from '../../model/model.ts';
import { column } from './links.ts';

/** Words that an entry takes from a column of the workings. */
const LISTS: Partial<Record<QuantityName, QuantityName>> = {
  run_insulation: 'insulation_name',
  smallest: 'size_name',
  run_gauge: 'size_name',
};
/** Entries that take the word `auto` besides. */
const AUTO: readonly QuantityName[] = ['run_gauge', 'fuse_given', 'relay_given'];

export function validationOf(grid: Grid, { quantity }: Cell, address: string): DataValidation | null {
  if (quantity === undefined) return null;
  const q: Quantity = QUANTITIES[quantity];
  const list = LISTS[quantity];
  const auto = AUTO.includes(quantity) ? `${address}="auto",` : '';
  const common = {
    allowBlank: true,
    showErrorMessage: true,
    errorStyle: 'warning',
    errorTitle: 'Outside of what is permitted',
  };
  if (list !== undefined) {
    return {
      ...common,
      type: 'custom',
      formulae: [`OR(${auto}ISNUMBER(MATCH(${address},${column(grid, list)},0)))`],
      error: 'This word is not in the tables of this workbook.',
    };
  }
  if (q.range === undefined) return null;
  const [least, most] = q.range.map((end) => asEntered(end, q)) as [number, number];
  return {
    ...common,
    type: 'custom',
    formulae: [`OR(${auto}AND(ISNUMBER(${address}),${address}>=${least},${address}<=${most}))`],
    error: `Permitted: ${least} to ${most}.`,
  };
}
