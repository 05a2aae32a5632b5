/** What the sheets of the kit have in common. */
import { printSize } from '../../basis/print.ts';
import type { Cell, Sheet } from '../../engine/cell.ts';
import { put } from '../../engine/cell.ts';
import type { Grid } from '../../engine/translate.ts';
import { laidOut } from '../../findings/judged.ts';
import { JUDGED_COLUMNS } from '../../findings/sheet.ts';
import { judgedColumn } from '../../writers/workbook/judged.ts';
import { opening, words } from '../../writers/workbook/page.ts';
import { type Job, shortDigest } from '../job.ts';

export const formula = (text: string, unit?: string): Cell => ({
  role: 'formula',
  formula: text,
  ...(unit === undefined ? {} : { unit }),
});
export const given = (value: number | string | null, unit?: string): Cell => ({
  role: 'given',
  value,
  ...(unit === undefined ? {} : { unit }),
});
/** A place to write on. */
export const open: Cell = { role: 'entry', value: null };
export const size = (gauge: string | null): Cell => words(printSize(gauge ?? ''));

/** Title, the loud word when the design does not pass, what the sheet is. */
export function begin(
  cells: Sheet,
  title: string,
  about: string,
  job: Job,
  grid: Grid,
  span: number,
): number {
  const { design } = job.result.evaluation;
  const row = opening(cells, `${title}: ${design.title}`, about);
  const verdicts = judgedColumn(laidOut(grid, design).length, JUDGED_COLUMNS.verdict);
  put(cells, row, 0, {
    role: 'title',
    span,
    formula: `IF(COUNTIF(${verdicts},"fail")+COUNTIF(${verdicts},"unknown")>0,"NOT RELEASED FOR BUILDING: see Findings","All checks of the calculation pass")`,
  });
  put(cells, row + 1, 0, { role: 'text', value: `Design ${shortDigest(job)}`, span });
  return row + 3;
}

export const AT_WRITING =
  'Rows, groups and texts are those of the design as it was written; numbers follow the inputs. After a change, make the kit again.';

/** A sheet before it is evaluated. */
export interface KitSheet {
  readonly cells: Sheet;
  readonly widths: readonly number[];
  readonly landscape: boolean;
}
