/**
 * The live workbook.
 *
 *   design ─► show ─► evaluate ─► pages ─► a sheet each ─► bytes
 */
import { KNOWN } from '../../engine/entered/sheet.ts';
import type { Laid } from '../../engine/spreadsheet.ts';
import { write } from '../../ooxml/write.ts';
import { DESIGN_TEXT, KNOWN_ANSWER, MARK, PAGE } from '../../saved/mark.ts';
import { designRange } from './design-sheet.ts';
import { definedNames } from './names.ts';
import type { Page } from './page.ts';
import { pages } from './pages.ts';
import { PLAIN_SIZE } from './styles.ts';
import { clean } from './text.ts';
import { sheetOf } from './worksheet.ts';

export { isOurs } from '../../saved/ours.ts';
export { show, showWith } from './pages.ts';
export { weighedOf } from './weighed.ts';

/**
 * The workbook of a result whose evaluation was made with `show`. `more` are pages besides the usual ones, whose cells the
 * evaluation holds as sheets of the same name. `workings` shows the sheets of the calculation, too. The same design gives the
 * same bytes.
 */
export function toWorkbook(
  { evaluation }: { readonly evaluation: Laid },
  more: readonly Page[] = [],
  workings = false,
): Uint8Array {
  const { design, grid } = evaluation;
  const all = pages(evaluation, more);
  return write({
    title: clean(design.title),
    creator: 'coilfeed',
    keywords: MARK,
    size: PLAIN_SIZE,
    sheets: all.map((page) => sheetOf(page, evaluation, workings)),
    names: [
      [DESIGN_TEXT, designRange(design.text.toString())],
      [KNOWN_ANSWER, KNOWN],
      ...definedNames(grid),
      ...all.flatMap(({ names = [] }) => names),
      ...all
        .filter(({ kind }) => kind !== 'own')
        .map(({ name }): [string, string] => [PAGE + name, `${name}!$A$1`]),
    ],
  });
}
