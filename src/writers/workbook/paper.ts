/** How a page lies on screen and on paper: what stays in sight, margins, header and footer. */
import type { Design } from '../../design/design.ts';
import { letters } from '../../engine/layout.ts';
import type { Page } from './page.ts';
import { clean } from './text.ts';
import { escaped } from './xml.ts';

/** Digits of the plain font that fit beside each other on a page in landscape, at a size that can be read. */
const PAPER = 210;
const A4 = 9;
/** Wide enough for the printers of both papers, A4 and Letter [in]. */
export const MARGINS = { left: 0.5, right: 0.5, top: 0.75, bottom: 0.7 } as const;
const TABS = { shown: 'FF1F2933', inputs: 'FFE0B000' } as const;
/** Longest title in a header; the format allows 255 characters in all. */
const HEADER = 120;

/** Last column of a page, `K`. */
const lastColumn = ({ widths, cells }: Page): string =>
  letters(Math.max(widths.length, ...cells.map((row) => row.length)) - 1);

/** What stands before the columns. */
export function before(page: Page): string {
  const { kind, cells } = page;
  const tab = kind === 'working' ? '' : `<tabColor rgb="${TABS[kind]}"/>`;
  return (
    `<sheetPr>${tab}<pageSetUpPr fitToPage="1"/></sheetPr>` +
    `<dimension ref="A1:${lastColumn(page)}${cells.length}"/>` +
    `<sheetViews><sheetView${kind === 'working' ? '' : ' showGridLines="0"'} workbookViewId="0">${frozen(page)}</sheetView></sheetViews>` +
    '<sheetFormatPr defaultRowHeight="15"/>'
  );
}

function frozen({ frozen: [rows, columns] }: Page): string {
  const pane = rows > 0 ? (columns > 0 ? 'bottomRight' : 'bottomLeft') : 'topRight';
  const split = `${columns > 0 ? ` xSplit="${columns}"` : ''}${rows > 0 ? ` ySplit="${rows}"` : ''}`;
  return (
    `<pane${split} topLeftCell="${letters(columns)}${rows + 1}" activePane="${pane}" state="frozen"/>` +
    `<selection pane="${pane}"/>`
  );
}

/** What stands behind the validations. */
export function behind(page: Page, design: Design): string {
  const { widths, kind, landscape, breaks = [] } = page;
  const total = widths.reduce((a, b) => a + b, 0);
  // A working sheet may be far too wide for one page.
  const wide = kind === 'working' ? Math.ceil(total / PAPER) : 1;
  const { left, right, top, bottom } = MARGINS;
  const small = '&"Arial,Regular"&8 ';
  const marks = breaks.map((row) => `<brk id="${row}" max="16383" man="1"/>`);
  return (
    `<pageMargins left="${left}" right="${right}" top="${top}" bottom="${bottom}" header="0.35" footer="0.35"/>` +
    `<pageSetup paperSize="${A4}" orientation="${landscape ? 'landscape' : 'portrait'}" fitToWidth="${wide}" fitToHeight="0"/>` +
    `<headerFooter><oddHeader>${escaped(`&L${small}${titled(design)}&R${small}${dated(design)} – ${page.name}`)}</oddHeader>` +
    `<oddFooter>${escaped(`&L${small}coilfeed&R${small}page &P of &N`)}</oddFooter></headerFooter>` +
    (marks.length === 0
      ? ''
      : `<rowBreaks count="${marks.length}" manualBreakCount="${marks.length}">${marks.join('')}</rowBreaks>`)
  );
}

/** Title of the design. In a header an ampersand begins a code, and twice it is itself. */
const titled = ({ title }: Design): string => {
  const line = clean(title).replace(/\s+/g, ' ');
  const short = [...line].length > HEADER ? `${[...line].slice(0, HEADER).join('')}…` : line;
  return short.replace(/&/g, '&&');
};

/** The day that the design gives; a day of our own would differ whenever the same design is written again. */
const dated = ({ date }: Design): string => (date === null ? 'design without a date' : `design of ${date}`);

/** Print area and repeated rows, as names that belong to the sheet of this number. */
export function printNames(page: Page, sheet: number): string {
  const name = (which: string, range: string): string =>
    `<definedName name="_xlnm.${which}" localSheetId="${sheet}">${page.name}!${range}</definedName>`;
  return (
    name('Print_Area', `$A$1:$${lastColumn(page)}$${page.cells.length}`) +
    // No columns are repeated: to lay out the wide workings with them takes a spreadsheet program many seconds.
    (page.frozen[0] > 0 ? name('Print_Titles', `$1:$${page.frozen[0]}`) : '')
  );
}
