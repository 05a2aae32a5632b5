/** Writes a page as the part of a worksheet: its cells, and how they lie on screen and paper. */
import type { Cell } from '../../engine/cell.ts';
import type { Value } from '../../engine/evaluate.ts';
import { address } from '../../engine/layout.ts';
import type { Laid } from '../../engine/spreadsheet.ts';
import { height } from './measure.ts';
import type { Page } from './page.ts';
import { before, behind } from './paper.ts';
import type { StringTable } from './strings.ts';
import type { StyleTable } from './style-table.ts';
import { styleOf, VERDICT_LOOKS } from './styles.ts';
import { clean } from './text.ts';
import { validations } from './validation.ts';
import { escaped, HEAD } from './xml.ts';

export interface Tables {
  readonly styles: StyleTable;
  /** Numbers of styles that were asked for before, by what decides them. */
  readonly known: Map<string, number>;
  readonly strings: StringTable;
}

const MAIN = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
const RELATIONSHIPS = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';

/** `drawing` is the relationship that leads to the charts of the page, if it has any. */
export function worksheet(page: Page, e: Laid, tables: Tables, drawing: string | null): string {
  const columns = page.widths.map(
    (width, i) => `<col min="${i + 1}" max="${i + 1}" width="${width}" customWidth="1"/>`,
  );
  const merged: string[] = [];
  const rows = page.cells.map((row, r) => rowXml(page, e, tables, row, r, merged));
  return [
    `${HEAD}<worksheet xmlns="${MAIN}" xmlns:r="${RELATIONSHIPS}">`,
    before(page),
    `<cols>${columns.join('')}</cols>`,
    `<sheetData>${rows.join('')}</sheetData>`,
    // Without a password: it guards against slips, not against people.
    '<sheetProtection sheet="1" formatColumns="0" formatRows="0"/>',
    merged.length === 0 ? '' : `<mergeCells count="${merged.length}">${merged.join('')}</mergeCells>`,
    verdictLooks(page),
    page.kind === 'inputs' ? validations(e.grid) : '',
    behind(page, e.design),
    drawing === null ? '' : `<drawing r:id="${drawing}"/>`,
    '</worksheet>',
  ].join('');
}

function rowXml(
  page: Page,
  e: Laid,
  tables: Tables,
  row: readonly (Cell | undefined)[],
  r: number,
  merged: string[],
): string {
  let tallest = 0;
  let cells = '';
  row.forEach((cell, c) => {
    if (cell === undefined) return;
    const value = shownIn(cell, page.name, r, c, e);
    const above = isHeading(cell) && numbersBelow(page, r, c, e);
    const style = styled(cell, isNumber(cell, value), above, c === 0, tables);
    cells += cellXml(address(r, c, false, false), style, cell, value, tables);
    const span = cell.span ?? 1;
    if (span > 1)
      merged.push(
        `<mergeCell ref="${address(r, c, false, false)}:${address(r, c + span - 1, false, false)}"/>`,
      );
    for (let i = 1; i < span; i++) cells += `<c r="${address(r, c + i, false, false)}" s="${style}"/>`;
    tallest = Math.max(tallest, height(cell, typeof value === 'string' ? value : '', widthOf(page, c, span)));
  });
  if (tallest === 0) return '';
  const { fitted } = page;
  const free = fitted !== undefined && r >= fitted[0] && r <= fitted[1];
  return `<row r="${r + 1}" ht="${tallest}"${free ? '' : ' customHeight="1"'}>${cells}</row>`;
}

/** Number of the style of a cell. */
function styled(cell: Cell, number: boolean, above: boolean, first: boolean, tables: Tables): number {
  const key = `${cell.role} ${cell.unit ?? ''} ${number} ${above} ${first}`;
  const found = tables.known.get(key) ?? tables.styles.of(styleOf(cell, number, above, first));
  tables.known.set(key, found);
  return found;
}

function cellXml(at: string, style: number, cell: Cell, value: Value, { strings }: Tables): string {
  const begin = `<c r="${at}" s="${style}"`;
  const text = typeof value === 'string' ? clean(value) : '';
  if (cell.formula !== undefined) {
    const formula = `<f>${escaped(cell.formula)}</f>`;
    return typeof value === 'number'
      ? `${begin}>${formula}<v>${value}</v></c>`
      : `${begin} t="str">${formula}<v>${escaped(text)}</v></c>`;
  }
  if (typeof value === 'number') return `${begin}><v>${value}</v></c>`;
  return text === '' ? `${begin}/>` : `${begin} t="s"><v>${strings.of(text)}</v></c>`;
}

const shownIn = (cell: Cell, name: string, row: number, column: number, e: Laid): Value =>
  cell.formula === undefined ? (cell.value ?? null) : (e.cached(name, row, column) ?? '');

/** A result or an entry that is empty now may become a number later: its unit tells. */
const isNumber = ({ formula, role, unit }: Cell, value: Value): boolean =>
  typeof value === 'number' ||
  ((formula !== undefined || role === 'entry') &&
    (value === '' || value === null) &&
    unit !== undefined &&
    unit !== 'text');

const isHeading = ({ role }: Cell): boolean => role === 'label' || role === 'unit' || role === 'symbol';

/** Whether the next values under a heading are numbers: then it stands at the right, as they do. */
function numbersBelow(page: Page, row: number, column: number, e: Laid): boolean {
  for (let r = row + 1; r < page.cells.length; r++) {
    const cell = page.cells[r]?.[column];
    // Among the headings of the workings a row may have a gap.
    if (cell === undefined && r < page.frozen[0]) continue;
    if (cell === undefined) return false;
    if (isHeading(cell) || cell.role === 'source') continue;
    const value = shownIn(cell, page.name, r, column, e);
    if (isNumber(cell, value)) return true;
    if (value !== null && value !== '') return false;
  }
  return false;
}

const widthOf = ({ widths }: Page, column: number, span: number): number =>
  widths.slice(column, column + span).reduce((a, b) => a + b, 0);

/** Makes cells follow the words of a verdict; their looks have the same numbers as in the list of styles. */
const verdictLooks = ({ looks }: Page): string =>
  looks
    .map(({ rows, columns, word }) => {
      const deciding = address(rows[0], word, false);
      const where = `${address(rows[0], columns[0], false, false)}:${address(rows[1], columns[1], false, false)}`;
      const rules = Object.keys(VERDICT_LOOKS).map(
        (text, i) =>
          // Upper and lower case count as the same in a comparison of texts.
          `<cfRule type="expression" dxfId="${i}" priority="${i + 1}"><formula>${escaped(`EXACT(${deciding},"${text}")`)}</formula></cfRule>`,
      );
      return `<conditionalFormatting sqref="${where}">${rules.join('')}</conditionalFormatting>`;
    })
    .join('');
