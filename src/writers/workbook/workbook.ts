/**
 * The live workbook.
 *
 *   design ─► show ─► evaluate ─► pages ─► draw, one worksheet after the other ─► repack ─► bytes
 */
import type { Result } from '../../findings/result.ts';
import { DESIGN_TEXT, MARK } from '../../saved/mark.ts';
import { designRange } from './design-sheet.ts';
import { draw } from './draw.ts';
import { definedNames } from './names.ts';
import { repack } from './package.ts';
import { pages } from './pages.ts';
import { clean } from './text.ts';

export { isOurs } from '../../saved/ours.ts';
export { show } from './pages.ts';

/** The day that stands in the file as that of its making: a fixed one, so that the same design gives the same bytes. */
const MADE = new Date(Date.UTC(2000, 0, 1));

/** The workbook of a result whose evaluation was made with `show`. The same design gives the same bytes. */
export async function toWorkbook({ evaluation }: Result): Promise<Uint8Array> {
  // Loaded here because it takes longer to load than everything else together.
  const { default: ExcelJS } = await import('exceljs');
  const book = new ExcelJS.Workbook();
  book.creator = 'coilfeed';
  book.lastModifiedBy = 'coilfeed';
  book.title = clean(evaluation.design.title);
  book.keywords = MARK;
  book.created = MADE;
  book.modified = MADE;
  book.calcProperties.fullCalcOnLoad = true;
  for (const page of pages(evaluation)) await draw(book, page, evaluation);
  const { grid, design } = evaluation;
  return repack(new Uint8Array(await book.xlsx.writeBuffer()), [
    [DESIGN_TEXT, designRange(design.text)],
    ...definedNames(grid),
  ]);
}
