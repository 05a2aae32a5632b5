/** The papers as sheets of the live workbook: what the model knows is a formula there, and follows the inputs. */
import type { Sheet } from '../engine/cell.ts';
import type { Laid } from '../engine/spreadsheet.ts';
import type { Grid } from '../engine/translate.ts';
import type { Page } from '../writers/workbook/page.ts';
import type { Job } from './job.ts';
import type { KitSheet } from './sheets/cells.ts';
import { checkSheet } from './sheets/checks.ts';
import { cutSheet } from './sheets/cuts.ts';
import { labelSheet } from './sheets/labels.ts';
import { partsSheet } from './sheets/parts.ts';
import { recordSheet } from './sheets/record.ts';

export interface KitPages {
  /** Their cells, for the engine to evaluate beside the model. */
  sheets(grid: Grid): Map<string, Sheet>;
  /** The sheets as they are drawn; the evaluation must hold them. */
  pages(e: Laid): Page[];
}

type Make = (job: Job, grid: Grid) => KitSheet;

const SHEETS: readonly [string, Make][] = [
  ['Parts', partsSheet],
  ['Cuts', cutSheet],
  ['Pieces', checkSheet],
  ['Labels', labelSheet],
  ['Record', recordSheet],
];

export function kitPages(job: Job): KitPages {
  const make = (grid: Grid): Page[] =>
    SHEETS.map(([name, of]) => ({
      name,
      kind: 'shown',
      ...of(job, grid),
      frozen: [2, 0],
      looks: [],
    }));
  return {
    sheets: (grid) => new Map(make(grid).map(({ name, cells }) => [name, cells])),
    pages: (e) => make(e.grid).map((page) => ({ ...page, cells: e.sheets.get(page.name) ?? page.cells })),
  };
}
