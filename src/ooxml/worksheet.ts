/** Writes a sheet as a part of the file: its cells, and how they lie on screen and paper. */
import { address, letters } from '../basis/address.ts';
import type { Cell, Condition, Print, Row, Sheet, Validation } from './book.ts';
import type { StringTable } from './strings.ts';
import type { StyleTable } from './styles.ts';
import { escaped, HEAD, MAIN, OFFICE } from './xml.ts';

export interface Tables {
  readonly styles: StyleTable;
  readonly strings: StringTable;
}

const A4 = 9;
/** Longest texts that the format takes with a validation. */
const LONGEST = { title: 32, prompt: 255, error: 225 } as const;

/** Columns that the cells of a row take. */
const across = (row: Row | undefined): number =>
  row === undefined ? 0 : row.cells.length - 1 + (row.cells.at(-1)?.span ?? 1);

/** `K40`: the corner at the lower right. */
export const corner = (
  { widths, rows }: Sheet,
  fixed: boolean,
  columns = Math.max(widths.length, 1, ...rows.map(across)),
  count = Math.max(rows.length, 1),
): string => address(count - 1, columns - 1, fixed, fixed);

const inside = (name: string, items: readonly string[]): string =>
  items.length === 0 ? '' : `<${name} count="${items.length}">${items.join('')}</${name}>`;

export function worksheet(sheet: Sheet, tables: Tables): string {
  const { tab, rows, widths, conditions, validations, charts, print } = sheet;
  const columns = widths.map(
    (width, i) => `<col min="${i + 1}" max="${i + 1}" width="${width}" customWidth="1"/>`,
  );
  const merged: string[] = [];
  const data = rows.map((row, r) => (row === undefined ? '' : rowXml(row, r, tables, merged)));
  return [
    `${HEAD}<worksheet xmlns="${MAIN}" xmlns:r="${OFFICE}">`,
    `<sheetPr>${tab === undefined ? '' : `<tabColor rgb="${tab}"/>`}<pageSetUpPr fitToPage="1"/></sheetPr>`,
    `<dimension ref="A1:${corner(sheet, false)}"/>`,
    `<sheetViews><sheetView${sheet.lines ? '' : ' showGridLines="0"'} workbookViewId="0">${frozenXml(sheet)}</sheetView></sheetViews>`,
    '<sheetFormatPr defaultRowHeight="15"/>',
    columns.length === 0 ? '' : `<cols>${columns.join('')}</cols>`,
    `<sheetData>${data.join('')}</sheetData>`,
    // Without a password: it guards against slips, not against people.
    sheet.open ? '' : '<sheetProtection sheet="1" formatColumns="0" formatRows="0"/>',
    inside('mergeCells', merged),
    ...conditions.map((one) => conditionXml(one, tables)),
    inside('dataValidations', validations.map(validationXml)),
    printXml(print),
    charts.length === 0 ? '' : '<drawing r:id="rId1"/>',
    '</worksheet>',
  ].join('');
}

function rowXml({ cells, height, fitted, hidden }: Row, r: number, tables: Tables, merged: string[]): string {
  let inner = '';
  cells.forEach((cell, c) => {
    if (cell === undefined) return;
    const style = tables.styles.of(cell.style);
    const at = address(r, c, false, false);
    inner += cellXml(at, style, cell, tables);
    const { span = 1 } = cell;
    if (span > 1) merged.push(`<mergeCell ref="${at}:${address(r, c + span - 1, false, false)}"/>`);
    for (let i = 1; i < span; i++) inner += `<c r="${address(r, c + i, false, false)}" s="${style}"/>`;
  });
  return `<row r="${r + 1}" ht="${height}"${hidden ? ' hidden="1"' : ''}${fitted ? '' : ' customHeight="1"'}>${inner}</row>`;
}

function cellXml(at: string, style: number, { value, formula }: Cell, { strings }: Tables): string {
  const start = `<c r="${at}" s="${style}"`;
  if (formula !== undefined) {
    const f = `<f>${escaped(formula)}</f>`;
    return typeof value === 'number'
      ? `${start}>${f}<v>${value}</v></c>`
      : `${start} t="str">${f}<v>${escaped(value ?? '')}</v></c>`;
  }
  if (typeof value === 'number') return `${start}><v>${value}</v></c>`;
  return value === null || value === '' ? `${start}/>` : `${start} t="s"><v>${strings.of(value)}</v></c>`;
}

function frozenXml({ frozen: [rows, columns] }: Sheet): string {
  if (rows === 0 && columns === 0) return '';
  const pane = rows > 0 ? (columns > 0 ? 'bottomRight' : 'bottomLeft') : 'topRight';
  const split = `${columns > 0 ? ` xSplit="${columns}"` : ''}${rows > 0 ? ` ySplit="${rows}"` : ''}`;
  return (
    `<pane${split} topLeftCell="${letters(columns)}${rows + 1}" activePane="${pane}" state="frozen"/>` +
    `<selection pane="${pane}"/>`
  );
}

function conditionXml({ where, looks }: Condition, { styles }: Tables): string {
  const rules = looks.map(
    ([formula, look], i) =>
      `<cfRule type="expression" dxfId="${styles.look(look)}" priority="${i + 1}"><formula>${escaped(formula)}</formula></cfRule>`,
  );
  return `<conditionalFormatting sqref="${where}">${rules.join('')}</conditionalFormatting>`;
}

function validationXml({ where, allowed, prompt, error }: Validation): string {
  const [type, formulas] = typeof allowed === 'string' ? ['list', [allowed]] : ['decimal', allowed ?? []];
  return (
    `<dataValidation${allowed === null ? '' : ` type="${type}" errorStyle="warning"`} allowBlank="1" showInputMessage="1" ` +
    (error === undefined
      ? ''
      : `showErrorMessage="1" errorTitle="${cut(error[0], LONGEST.title)}" error="${cut(error[1], LONGEST.error)}" `) +
    `promptTitle="${cut(prompt[0], LONGEST.title)}" prompt="${cut(prompt[1], LONGEST.prompt)}" sqref="${where}">` +
    `${formulas.map((one, i) => `<formula${i + 1}>${one}</formula${i + 1}>`).join('')}</dataValidation>`
  );
}

const cut = (text: string, most: number): string =>
  escaped(text.length <= most ? text : `${text.slice(0, most - 1)}…`);

function printXml({ landscape, wide, tall, margins, header, footer, breaks }: Print): string {
  const sides = Object.entries(margins).map(([side, inches]) => ` ${side}="${inches}"`);
  const marks = breaks.map((row) => `<brk id="${row}" max="16383" man="1"/>`);
  return (
    `<pageMargins${sides.join('')}/>` +
    `<pageSetup paperSize="${A4}" orientation="${landscape ? 'landscape' : 'portrait'}" fitToWidth="${wide}" fitToHeight="${tall}"/>` +
    `<headerFooter scaleWithDoc="0"><oddHeader>${escaped(header)}</oddHeader><oddFooter>${escaped(footer)}</oddFooter></headerFooter>` +
    (marks.length === 0
      ? ''
      : `<rowBreaks count="${marks.length}" manualBreakCount="${marks.length}">${marks.join('')}</rowBreaks>`)
  );
}
