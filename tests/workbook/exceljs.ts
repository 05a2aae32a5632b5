/** Workbooks as ExcelJS reads them, held against the pages that they were made of. */
import ExcelJS from 'exceljs';
import { address } from '../../src/basis/address.ts';
import type { Laid } from '../../src/engine/spreadsheet.ts';
import type { Page } from '../../src/writers/workbook/page.ts';

export async function readWorkbook(bytes: Uint8Array): Promise<ExcelJS.Workbook> {
  const read = new ExcelJS.Workbook();
  await read.xlsx.load(bytes as unknown as ArrayBuffer);
  return read;
}

/** What stands in a cell. Of a result that is an empty text ExcelJS says that there is none. */
const contentOf = (cell: ExcelJS.Cell): unknown =>
  cell.formula === undefined
    ? { value: cell.value }
    : { formula: cell.formula, value: cell.result === undefined ? '' : cell.result };

/** Every cell whose formula or value is not what was laid out, and how many formulas were looked at. */
export function compared(
  read: ExcelJS.Workbook,
  e: Laid,
  pages: readonly Page[],
): { formulas: number; wrong: unknown[] } {
  let formulas = 0;
  const wrong: unknown[] = [];
  for (const { name, cells } of pages)
    cells.forEach((row, r) => {
      row.forEach((cell, c) => {
        if (cell === undefined) return;
        const { formula, value = null } = cell;
        const found = contentOf(read.getWorksheet(name)?.getCell(r + 1, c + 1) as ExcelJS.Cell);
        const meant =
          formula === undefined
            ? { value: value === '' ? null : value }
            : { formula, value: e.cached(name, r, c) ?? '' };
        if (formula !== undefined) formulas += 1;
        if (JSON.stringify(found) !== JSON.stringify(meant))
          wrong.push({ at: `${name}!${address(r, c, false, false)}`, found, meant });
      });
    });
  return { formulas, wrong };
}
