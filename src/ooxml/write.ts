/** Writes a workbook as an Open XML file. The same book gives the same bytes, wherever it is written. */
import type { Book } from './book.ts';
import { chartXml, drawingXml } from './chart.ts';
import { pack } from './package.ts';
import { properties, relationships, workbookXml } from './parts.ts';
import { StringTable } from './strings.ts';
import { StyleTable } from './styles.ts';
import { worksheet } from './worksheet.ts';

export function write(book: Book): Uint8Array {
  const tables = { styles: new StyleTable(book.size), strings: new StringTable() };
  const { sheets } = book;
  const names = sheets.map(({ name }) => name.toLowerCase());
  const twice = names.find((name, i) => names.indexOf(name) < i);
  if (twice !== undefined) throw new Error(`two sheets of the name ${twice}`);
  const parts = new Map<string, string>();
  let charts = 0;
  sheets.forEach((sheet, i) => {
    const name = `sheet${i + 1}`;
    parts.set(`xl/worksheets/${name}.xml`, worksheet(sheet, tables));
    if (sheet.charts.length === 0) return;
    const drawing = `drawing${i + 1}.xml`;
    parts.set(
      `xl/worksheets/_rels/${name}.xml.rels`,
      relationships([['rId1', 'drawing', `../drawings/${drawing}`]]),
    );
    parts.set(`xl/drawings/${drawing}`, drawingXml(sheet.charts));
    const targets = sheet.charts.map((chart, j) => {
      charts += 1;
      parts.set(`xl/charts/chart${charts}.xml`, chartXml(chart));
      return [`rId${j + 1}`, 'chart', `../charts/chart${charts}.xml`] as const;
    });
    parts.set(`xl/drawings/_rels/${drawing}.rels`, relationships(targets));
  });
  parts.set('xl/workbook.xml', workbookXml(book));
  parts.set(
    'xl/_rels/workbook.xml.rels',
    relationships([
      ...sheets.map((_, i) => [`rId${i + 1}`, 'worksheet', `worksheets/sheet${i + 1}.xml`] as const),
      [`rId${sheets.length + 1}`, 'styles', 'styles.xml'],
      [`rId${sheets.length + 2}`, 'sharedStrings', 'sharedStrings.xml'],
    ]),
  );
  // After the sheets, which fill them.
  parts.set('xl/styles.xml', tables.styles.xml());
  parts.set('xl/sharedStrings.xml', tables.strings.xml());
  parts.set('docProps/core.xml', properties(book));
  parts.set(
    '_rels/.rels',
    relationships([
      ['rId1', 'officeDocument', 'xl/workbook.xml'],
      ['rId2', 'core', 'docProps/core.xml'],
    ]),
  );
  return pack(parts);
}
