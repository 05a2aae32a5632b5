/**
 * The live workbook.
 *
 *   design ─► show ─► evaluate ─► pages ─► a worksheet each ─► parts ─► bytes
 */
import type { Laid } from '../../engine/spreadsheet.ts';
import { DESIGN_TEXT } from '../../saved/mark.ts';
import { chartXml, drawingXml } from './chart.ts';
import { designRange } from './design-sheet.ts';
import { definedNames } from './names.ts';
import { pack } from './package.ts';
import type { Page } from './page.ts';
import { pages } from './pages.ts';
import { properties, relationships, workbookXml } from './parts.ts';
import { StringTable } from './strings.ts';
import { StyleTable } from './style-table.ts';
import { worksheet } from './worksheet.ts';

export { isOurs } from '../../saved/ours.ts';
export { show } from './pages.ts';

/**
 * The workbook of a result whose evaluation was made with `show`. `more` are pages besides the usual ones, whose cells the
 * evaluation holds as sheets of the same name. The same design gives the same bytes.
 */
export function toWorkbook(
  { evaluation }: { readonly evaluation: Laid },
  more: readonly Page[] = [],
): Uint8Array {
  const { design, grid } = evaluation;
  const tables = { styles: new StyleTable(), strings: new StringTable(), known: new Map() };
  const all = pages(evaluation, more);
  const parts = new Map<string, string>();
  let charts = 0;
  all.forEach((page, i) => {
    const sheet = `sheet${i + 1}`;
    const own = page.charts ?? [];
    parts.set(
      `xl/worksheets/${sheet}.xml`,
      worksheet(page, evaluation, tables, own.length > 0 ? 'rId1' : null),
    );
    if (own.length === 0) return;
    const drawing = `drawing${i + 1}.xml`;
    parts.set(
      `xl/worksheets/_rels/${sheet}.xml.rels`,
      relationships([['rId1', 'drawing', `../drawings/${drawing}`]]),
    );
    parts.set(`xl/drawings/${drawing}`, drawingXml(own));
    const targets = own.map((chart, j) => {
      charts += 1;
      parts.set(`xl/charts/chart${charts}.xml`, chartXml(chart));
      return [`rId${j + 1}`, 'chart', `../charts/chart${charts}.xml`] as const;
    });
    parts.set(`xl/drawings/_rels/${drawing}.rels`, relationships(targets));
  });
  parts.set(
    'xl/workbook.xml',
    workbookXml(all, [
      [DESIGN_TEXT, designRange(design.text)],
      ...definedNames(grid),
      ...all.flatMap(({ names = [] }) => names.map(([name, cells]): [string, string] => [name, cells])),
    ]),
  );
  parts.set(
    'xl/_rels/workbook.xml.rels',
    relationships([
      ...all.map((_, i) => [`rId${i + 1}`, 'worksheet', `worksheets/sheet${i + 1}.xml`] as const),
      [`rId${all.length + 1}`, 'styles', 'styles.xml'],
      [`rId${all.length + 2}`, 'sharedStrings', 'sharedStrings.xml'],
    ]),
  );
  // After the sheets, which fill them.
  parts.set('xl/styles.xml', tables.styles.xml());
  parts.set('xl/sharedStrings.xml', tables.strings.xml());
  parts.set('docProps/core.xml', properties(design));
  parts.set(
    '_rels/.rels',
    relationships([
      ['rId1', 'officeDocument', 'xl/workbook.xml'],
      ['rId2', 'core', 'docProps/core.xml'],
    ]),
  );
  return pack(parts);
}
