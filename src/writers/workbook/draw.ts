/** Draws a page into a worksheet. */
import type { Workbook, Worksheet } from 'exceljs';
import type { Cell } from '../../engine/cell.ts';
import type { Evaluation, Value } from '../../engine/evaluate.ts';
import { address, letters } from '../../engine/layout.ts';
import { height } from './measure.ts';
import type { Page } from './page.ts';
import { styleOf, VERDICT_LOOKS } from './styles.ts';
import { clean } from './text.ts';
import { validationOf } from './validation.ts';

/** Digits of the plain font that fit beside each other on a page in landscape, at a size that can be read. */
const PAPER = 210;
const A4 = 9;

export async function draw(book: Workbook, page: Page, e: Evaluation): Promise<void> {
  const sheet = book.addWorksheet(page.name, {
    properties: { defaultRowHeight: 15, ...(page.kind === 'working' ? {} : { tabColor: TABS[page.kind] }) },
    views: [frozen(page)],
    pageSetup: paper(page),
    headerFooter: {
      oddHeader: `&L&"Arial,Regular"&8 ${inHeader(e.design.title)}&R&"Arial,Regular"&8 ${page.name}`,
      oddFooter: '&L&"Arial,Regular"&8 coilfeed&R&"Arial,Regular"&8 page &P of &N',
    },
  });
  sheet.columns = page.widths.map((width) => ({ width }));
  page.cells.forEach((row, r) => {
    let tallest = 0;
    row.forEach((cell, c) => {
      if (cell === undefined) return;
      const value = shownIn(cell, page.name, r, c, e);
      put(sheet, cell, value, r, c, isHeading(cell) && numbersBelow(page, r, c, e));
      if (cell.entry) {
        const rule = validationOf(e.grid, cell, address(r, c, false, false));
        if (rule !== null) sheet.getCell(r + 1, c + 1).dataValidation = rule;
      }
      tallest = Math.max(tallest, height(cell, textOf(page, r, c, value), widthOf(page, c, cell.span)));
    });
    if (tallest > 0) sheet.getRow(r + 1).height = tallest;
  });
  // The library breaks the page behind a row.
  if (page.pageAt !== undefined) sheet.getRow(page.pageAt).addPageBreak();
  verdictLooks(sheet, page);
  // Without a password: it guards against slips, not against people.
  await sheet.protect('', {
    selectLockedCells: true,
    selectUnlockedCells: true,
    formatColumns: true,
    formatRows: true,
  });
}

const TABS = { shown: { argb: 'FF1F2933' }, inputs: { argb: 'FFE0B000' } };

function frozen({ frozen: [rows, columns], kind }: Page) {
  return {
    state: 'frozen',
    xSplit: columns,
    ySplit: rows,
    showGridLines: kind === 'working',
    zoomScale: 100,
  } as const;
}

function paper({ widths, frozen: [rows], landscape, kind, cells }: Page) {
  const total = widths.reduce((a, b) => a + b, 0);
  const last = letters(Math.max(widths.length, ...cells.map((row) => row.length)) - 1);
  return {
    paperSize: A4,
    orientation: landscape ? 'landscape' : 'portrait',
    fitToPage: true,
    // A working sheet may be far too wide for one page.
    fitToWidth: kind === 'working' ? Math.ceil(total / PAPER) : 1,
    fitToHeight: 0,
    // Room for the narrower height of Letter and its printers' margins.
    margins: { left: 0.5, right: 0.5, top: 0.75, bottom: 0.7, header: 0.35, footer: 0.35 },
    // The library puts a dollar sign before each column, and none before the row.
    printArea: `A$1:${last}$${cells.length}`,
    // No columns are repeated: to lay out the wide workings with them takes a spreadsheet program many seconds.
    printTitlesRow: `1:${rows}`,
  } as const;
}

/** Longest text for a header; the format allows 255 characters in all. */
const HEADER = 120;
/** In a header an ampersand begins a code, and twice it is itself. */
const inHeader = (title: string): string => {
  const line = clean(title).replace(/\s+/g, ' ');
  return ([...line].length > HEADER ? `${[...line].slice(0, HEADER).join('')}…` : line).replace(/&/g, '&&');
};

const shownIn = (cell: Cell, name: string, row: number, column: number, e: Evaluation): Value =>
  cell.formula === undefined ? (cell.value ?? null) : (e.cached(name, row, column) ?? '');

function put(sheet: Worksheet, cell: Cell, value: Value, row: number, column: number, above: boolean): void {
  const target = sheet.getCell(row + 1, column + 1);
  if (cell.span !== undefined) sheet.mergeCells(row + 1, column + 1, row + 1, column + cell.span);
  const result = typeof value === 'string' ? clean(value) : value;
  if (cell.formula !== undefined) target.value = { formula: cell.formula, result: result ?? '' };
  else if (result !== null && result !== '') target.value = result;
  target.style = styleOf(cell, isNumber(cell, value), above, column === 0);
}

/** A result or an entry that is empty now may become a number later: its unit tells. */
const isNumber = ({ formula, role, unit }: Cell, value: Value): boolean =>
  typeof value === 'number' ||
  ((formula !== undefined || role === 'entry') &&
    (value === '' || value === null) &&
    unit !== undefined &&
    unit !== 'text');

const isHeading = ({ role }: Cell): boolean => role === 'label' || role === 'unit' || role === 'symbol';

/** Whether the next values under a heading are numbers: then it stands at the right, as they do. */
function numbersBelow(page: Page, row: number, column: number, e: Evaluation): boolean {
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

function textOf(page: Page, row: number, column: number, value: Value): string {
  const { longest } = page;
  const other =
    longest && row >= longest.rows[0] && row <= longest.rows[1] ? longest.texts.get(column) : undefined;
  return other ?? (typeof value === 'string' ? value : '');
}

const widthOf = ({ widths }: Page, column: number, span = 1): number =>
  widths.slice(column, column + span).reduce((a, b) => a + b, 0);

function verdictLooks(sheet: Worksheet, { looks }: Page): void {
  for (const { rows, columns, word } of looks) {
    const deciding = address(rows[0], word, false);
    sheet.addConditionalFormatting({
      ref: `${address(rows[0], columns[0], false, false)}:${address(rows[1], columns[1], false, false)}`,
      rules: Object.entries(VERDICT_LOOKS).map(([text, style], i) => ({
        type: 'expression',
        priority: i + 1,
        // Upper and lower case count as the same in a comparison of texts.
        formulae: [`EXACT(${deciding},"${text}")`],
        style,
      })),
    });
  }
}
