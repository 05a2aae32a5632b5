/** How a page lies on paper: margins, header and footer. */
import type { Design } from '../../design/design.ts';
import type { Print } from '../../ooxml/book.ts';
import type { Page } from './page.ts';
import { clean } from './text.ts';

/** Digits of the plain font that fit beside each other on a page in landscape, at a size that can be read. */
const PAPER = 210;
/** Wide enough for the printers of both papers, A4 and Letter [in]. */
export const MARGINS = { left: 0.4, right: 0.4, top: 0.6, bottom: 0.55 } as const;
/** Of the tool; put in where it is bundled. */
declare const COILFEED_VERSION: string;

/** Longest title in a header; the format allows 255 characters in all. */
const HEADER = 120;

export function printOf(
  { name, widths, kind, landscape, breaks = [], tall = 0, printed, printedRows, repeated }: Page,
  design: Design,
): Print {
  const total = widths.reduce((a, b) => a + b, 0);
  return {
    landscape,
    // A working sheet may be far too wide for one page.
    wide: kind === 'working' ? Math.ceil(total / PAPER) : 1,
    tall,
    ...(printed === undefined ? {} : { columns: printed }),
    ...(printedRows === undefined ? {} : { rows: printedRows }),
    ...(repeated === undefined ? {} : { repeated }),
    margins: { ...MARGINS, header: 0.3, footer: 0.3 },
    header: `&L${titled(design)}&R${name}`,
    footer: `&Lcoilfeed ${COILFEED_VERSION}, ${dated(design)}&Rpage &P of &N`,
    breaks: tall > 0 ? [] : breaks,
  };
}

/** Title of the design. In a header an ampersand starts a code, and twice it is itself. */
const titled = ({ title }: Design): string => {
  const line = clean(title).replace(/\s+/g, ' ');
  const short = [...line].length > HEADER ? `${[...line].slice(0, HEADER).join('')}…` : line;
  return short.replace(/&/g, '&&');
};

/** The day that the design gives; a day of our own would differ whenever the same design is written again. */
const dated = ({ date }: Design): string => (date === null ? 'design without a date' : `design of ${date}`);
