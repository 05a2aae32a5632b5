/** What the making of a workbook is at. The spreadsheet engine takes most of the time, at once. */
import type { Extra } from '../../engine/spreadsheet.ts';
import type { Tell } from '../protocol.ts';

export const STAGES = {
  design: '1 of 4, the design is worked out',
  cells: '2 of 4, the cells are laid out',
  check: '3 of 4, every cell is evaluated a second way',
  file: '4 of 4, the file is written',
} as const;

/** The sheets that `show` adds, with what goes on before and after them told. */
export const staged =
  (show: Extra, tell: Tell): Extra =>
  (grid, design) => {
    tell(STAGES.cells);
    const sheets = show(grid, design);
    tell(STAGES.check);
    return sheets;
  };
