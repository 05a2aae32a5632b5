/** Compares what two programs make of the same workbook, cell by cell. */
import { address } from '../../src/basis/address.ts';
import type { Laid } from '../../src/engine/spreadsheet.ts';
import { type Cells, readCells } from '../peers/cells.ts';

/** Every formula cell whose result differs, has an error, or has no stored result; one line each. */
export function differences(ours: Uint8Array | Cells, theirs: Uint8Array | Cells, relative = 1e-9): string[] {
  const [a, b] = [ours, theirs].map((x) => (x instanceof Map ? x : readCells(x))) as [Cells, Cells];
  const found: string[] = [];
  for (const [sheet, cells] of a)
    for (const [address, { value, formula }] of cells) {
      if (formula === null) continue;
      const other = b.get(sheet)?.get(address)?.value ?? null;
      if (!same(value, other, relative))
        found.push(`${sheet}!${address}: ${show(value)} here, ${show(other)} there, =${formula}`);
    }
  return found;
}

/** The same between the cells of an evaluation and a file that another program made of them. */
export function differencesFrom(e: Laid, theirs: Uint8Array, relative = 1e-9): string[] {
  const there = readCells(theirs);
  return [...e.sheets].flatMap(([sheet, rows]) =>
    rows.flatMap((cells, row) =>
      cells.flatMap((cell, column) => {
        if (cell?.formula === undefined) return [];
        const at = address(row, column, false, false);
        const [ours, other] = [e.cached(sheet, row, column) ?? '', there.get(sheet)?.get(at)?.value ?? ''];
        return same(ours, other, relative)
          ? []
          : [`${sheet}!${at}: ${show(ours)} here, ${show(other)} there, =${cell.formula}`];
      }),
    ),
  );
}

/** Near 0 a difference of terms leaves nothing but rounding [in the unit of the cell]. */
const NEAR_ZERO = 1e-12;

function same(a: unknown, b: unknown, relative: number): boolean {
  if (typeof a === 'number' && typeof b === 'number')
    return Math.abs(a - b) <= Math.max(NEAR_ZERO, relative * Math.max(Math.abs(a), Math.abs(b)));
  // A formula must have a result that is no error; an empty text is one that is stored as such.
  return (typeof a === 'string' || typeof a === 'number') && a === b;
}

const show = (value: unknown): string => JSON.stringify(value);
