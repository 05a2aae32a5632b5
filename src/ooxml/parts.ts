/** The parts of the file besides the sheets: the list of sheets and names, what belongs to what, the properties. */
import type { Book, Sheet } from './book.ts';
import { corner } from './worksheet.ts';
import { escaped, HEAD, MAIN, OFFICE } from './xml.ts';

const PACKAGE = 'http://schemas.openxmlformats.org/package/2006';
/** The day that stands in the file as that of its making: a fixed one, so that the same book gives the same bytes. */
const MADE = '2000-01-01T00:00:00Z';

/** Types of relationships, by the last part of their names. */
export type Kind = 'officeDocument' | 'worksheet' | 'styles' | 'sharedStrings' | 'drawing' | 'chart';

/** A list of relationships: what a part leads to. */
export const relationships = (
  targets: readonly (readonly [id: string, kind: Kind | 'core', target: string])[],
): string =>
  `${HEAD}<Relationships xmlns="${PACKAGE}/relationships">${targets
    .map(([id, kind, target]) => {
      const type =
        kind === 'core' ? `${PACKAGE}/relationships/metadata/core-properties` : `${OFFICE}/${kind}`;
      return `<Relationship Id="${id}" Type="${type}" Target="${target}"/>`;
    })
    .join('')}</Relationships>`;

const SPREADSHEET = 'application/vnd.openxmlformats-officedocument.spreadsheetml';
const DRAWING = 'application/vnd.openxmlformats-officedocument.drawing';
/** Content types of parts by the start of their path. */
const TYPES: readonly (readonly [start: string, type: string])[] = [
  ['xl/workbook.xml', `${SPREADSHEET}.sheet.main+xml`],
  ['xl/worksheets/', `${SPREADSHEET}.worksheet+xml`],
  ['xl/styles.xml', `${SPREADSHEET}.styles+xml`],
  ['xl/sharedStrings.xml', `${SPREADSHEET}.sharedStrings+xml`],
  ['xl/drawings/', `${DRAWING}+xml`],
  ['xl/charts/', `${DRAWING}ml.chart+xml`],
  ['docProps/core.xml', 'application/vnd.openxmlformats-package.core-properties+xml'],
];

export function contentTypes(paths: readonly string[]): string {
  const overrides = paths.flatMap((path) => {
    const type = path.endsWith('.rels') ? undefined : TYPES.find(([start]) => path.startsWith(start))?.[1];
    return type === undefined ? [] : [`<Override PartName="/${path}" ContentType="${type}"/>`];
  });
  return (
    `${HEAD}<Types xmlns="${PACKAGE}/content-types">` +
    '<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>' +
    `<Default Extension="xml" ContentType="application/xml"/>${overrides.join('')}</Types>`
  );
}

/** The sheets have the relationships `rId1` and so on. */
export function workbookXml({ sheets, names }: Book): string {
  const listed = sheets.map(
    ({ name, hidden }, i) =>
      `<sheet name="${name}" sheetId="${i + 1}"${hidden === true ? ' state="hidden"' : ''} r:id="rId${i + 1}"/>`,
  );
  const own = names.map(([name, to]) => `<definedName name="${name}">${escaped(to)}</definedName>`);
  return (
    `${HEAD}<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}"><workbookPr/>` +
    '<bookViews><workbookView xWindow="0" yWindow="0" windowWidth="28800" windowHeight="16200" tabRatio="800"/></bookViews>' +
    `<sheets>${listed.join('')}</sheets>` +
    `<definedNames>${sheets.map(printNames).join('')}${own.join('')}</definedNames>` +
    // Computed afresh when it is opened, whatever results are stored.
    '<calcPr calcId="191029" fullCalcOnLoad="1"/></workbook>'
  );
}

const quoted = (name: string): string =>
  /^[A-Za-z]+$/.test(name) ? name : `'${name.replaceAll("'", "''")}'`;

/** Print area and repeated rows, as names that belong to the sheet of this number. */
function printNames(sheet: Sheet, i: number): string {
  const [last] = sheet.frozen;
  const first = last - (sheet.print.repeated ?? last) + 1;
  const name = (which: string, range: string): string =>
    `<definedName name="_xlnm.${which}" localSheetId="${i}">${escaped(quoted(sheet.name))}!${range}</definedName>`;
  // LibreOffice prints every sheet that has an area to print, in sight or not.
  if (sheet.hidden === true) return '';
  return (
    name('Print_Area', `$A$1:${corner(sheet, true, sheet.print.columns, sheet.print.rows)}`) +
    // No columns are repeated: to lay out wide sheets with them takes a spreadsheet program many seconds.
    (first <= last ? name('Print_Titles', `$${first}:$${last}`) : '')
  );
}

export const properties = ({ title, creator, keywords }: Book): string =>
  `${HEAD}<cp:coreProperties xmlns:cp="${PACKAGE}/metadata/core-properties" ` +
  'xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:dcterms="http://purl.org/dc/terms/" ' +
  'xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance">' +
  `<dc:title>${escaped(title)}</dc:title><dc:creator>${escaped(creator)}</dc:creator>` +
  `<cp:keywords>${escaped(keywords)}</cp:keywords><cp:lastModifiedBy>${escaped(creator)}</cp:lastModifiedBy>` +
  `<dcterms:created xsi:type="dcterms:W3CDTF">${MADE}</dcterms:created>` +
  `<dcterms:modified xsi:type="dcterms:W3CDTF">${MADE}</dcterms:modified></cp:coreProperties>`;
