/** Text that any spreadsheet program can take. */
import { cut, plain } from '../plain-text.ts';

/**
 * Without the characters that a workbook cannot hold, and cut where a cell ends. A part that looks like the format's
 * own way of writing a character (`_x0041_`) is kept as it is.
 */
export const clean = (text: string): string => cut(plain(text).replace(/_(?=x[0-9A-Fa-f]{4}_)/g, '_x005F_'));
