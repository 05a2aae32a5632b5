/** The engine's own sheets as pages: what is frozen, how wide the columns are. */
import type { Cell, Sheet } from '../../engine/cell.ts';
import { type Block, firstRow, SCALAR_COLUMNS } from '../../engine/layout.ts';
import { INPUTS } from '../../engine/sheets.ts';
import type { Grid } from '../../engine/translate.ts';
import { columnWidth } from './measure.ts';
import type { Page } from './page.ts';

const LIST_WIDTHS = [62, 11, 14, 14, 38, 64];

export function workingPages(grid: Grid, sheets: ReadonlyMap<string, Sheet>): Page[] {
  return [...grid.placement.sheets.keys()]
    .filter((name) => name !== INPUTS)
    .map((name) => {
      const block = grid.placement.blocks.find((b) => b.sheet === name) as Block;
      return workingPage(
        name,
        sheets.get(name) as Sheet,
        firstRow(block),
        block.form === 'list' ? null : block.rows.length,
      );
    });
}

/** A working sheet; `members` columns at the left name the rows, null for a list of single values. */
export function workingPage(name: string, cells: Sheet, first: number, members: number | null): Page {
  return {
    name,
    kind: 'working',
    cells,
    widths: members === null ? LIST_WIDTHS : widthsOf(cells),
    frozen: [first, members ?? SCALAR_COLUMNS.symbol],
    landscape: true,
    looks: [],
  };
}

function widthsOf(cells: Sheet): number[] {
  const count = cells.reduce((most, row) => Math.max(most, row.length), 0);
  const words = (cell: Cell | undefined): string[] =>
    typeof cell?.value === 'string' && cell.role !== 'heading' && cell.role !== 'about' ? [cell.value] : [];
  return Array.from({ length: count }, (_, column) => {
    const own = cells.map((row) => row[column]);
    const labels = own.filter((c) => (c?.role === 'label' || c?.role === 'source') && (c.span ?? 1) === 1);
    const others = own.filter((c) => c?.role !== 'label' && c?.role !== 'source');
    return columnWidth(others.flatMap(words), labels.flatMap(words));
  });
}
