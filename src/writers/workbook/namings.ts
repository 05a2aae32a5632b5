/**
 * What a result is, told while its cell is chosen: label, symbol, and the name under which the workings and `explain` have
 * it. Messages and not notes: they add no parts to the file and no corners to the cells, and a note in one of our workbooks
 * is then always a person's.
 */
import { address } from '../../basis/address.ts';
import type { Quantity } from '../../basis/quantity.ts';
import type { Sheet } from '../../engine/cell.ts';
import { QUANTITIES, type QuantityName } from '../../model/model.ts';
import type { Validation } from '../../ooxml/book.ts';

/** One message for all cells of a sheet that show the same quantity. */
export function namings(cells: Sheet): Validation[] {
  const found = new Map<QuantityName, Map<number, number[]>>();
  cells.forEach((row, r) => {
    row.forEach((cell, c) => {
      if (cell?.tells === undefined) return;
      const columns = found.get(cell.tells) ?? new Map<number, number[]>();
      found.set(cell.tells, columns.set(c, [...(columns.get(c) ?? []), r]));
    });
  });
  return [...found].map(([name, columns]) => {
    const { label, symbol }: Quantity = QUANTITIES[name];
    return {
      where: [...columns].flatMap(([column, rows]) => ranges(rows, column)).join(' '),
      allowed: null,
      prompt: [`${symbol} (${name})`, `${label}. coilfeed explain DESIGN ${name} shows where it comes from.`],
    };
  });
}

/** Rows of a column in ascending order as ranges: `C5:C9`. */
function ranges(rows: readonly number[], column: number): string[] {
  const at = (row: number): string => address(row, column, false, false);
  const firsts = rows.filter((row, i) => rows[i - 1] !== row - 1);
  return firsts.map((first, i) => {
    const next = firsts[i + 1];
    const last = (next === undefined ? rows.at(-1) : rows[rows.indexOf(next) - 1]) as number;
    return last === first ? at(first) : `${at(first)}:${at(last)}`;
  });
}
