/** The engine's own sheets as pages: what is frozen, how wide the columns are. */
import type { Design } from '../../design/design.ts';
import type { Cell, Sheet } from '../../engine/cell.ts';
import { deviceOf } from '../../engine/entered/check.ts';
import { type Block, firstRow, SCALAR_COLUMNS } from '../../engine/layout.ts';
import { INPUTS } from '../../engine/sheets.ts';
import type { Grid } from '../../engine/translate.ts';
import { QUANTITIES } from '../../model/model.ts';
import { columnWidth } from './measure.ts';
import type { Page } from './page.ts';

/** With more columns of entries than this they are narrower, for the sake of the print. */
const MANY = 5;
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

/** Rows of inputs that no run of the design has a place for: of fuses, relays or a sweep that there are none of. */
function idle(grid: Grid, design: Design): ReadonlySet<number> {
  const rows = new Set<number>();
  for (const [name, place] of grid.placement.entries) {
    const q = QUANTITIES[name];
    if (q.kind !== 'input') continue;
    const device = deviceOf(q);
    const none =
      (device !== null && design.runs.every((run) => run[device] === null)) ||
      (q.path.startsWith('sweep.') && design.sweep === null);
    if (none && (place.beside || place.rows.length === 0)) rows.add(place.row);
  }
  return rows;
}

/** Widths of label, symbol, unit and range. */
const INPUT_WIDTHS = [38, 9, 7, 13];

export function inputsPage(grid: Grid, design: Design, cells: Sheet): Page {
  const { count, check } = grid.placement.columns;
  return {
    name: INPUTS,
    kind: 'inputs',
    cells,
    widths: [...INPUT_WIDTHS, ...Array.from({ length: count }, () => (count > MANY ? 9.5 : 14)), 20, 36, 90],
    frozen: [4, 0],
    landscape: false,
    // Source and note are for the screen; what is entered and what is wrong with it goes on paper.
    printed: check + 1,
    hidden: idle(grid, design),
    looks: [],
  };
}
