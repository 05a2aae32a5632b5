/** How each kind of cell looks. Few colours, and nothing that is told by colour alone. */
import type { Cell, Role } from '../../engine/cell.ts';
import type { Border, Font, Look, Style } from '../../ooxml/book.ts';
import { formatOf } from './formats.ts';

const INK = 'FF1F2933';
const FAINT = 'FF5F6B76';
const LINE = 'FFB8C0C8';

export const PLAIN_SIZE = 10;
export const SMALL_SIZE = 9;

const font = (more: Partial<Font> = {}): Font => ({ size: PLAIN_SIZE, color: INK, ...more });
const under: Border = { bottom: { style: 'thin', color: LINE } };
const framed: Border = { around: { style: 'thin', color: INK } };

type Plain = Pick<Style, 'font' | 'fill' | 'border'> & { readonly wrap?: true };

const LOOKS: Readonly<Record<Role, Plain>> = {
  heading: { font: font({ size: 15, bold: true }) },
  about: { font: font({ color: FAINT }) },
  title: { font: font({ size: 11, bold: true }), border: { bottom: { style: 'medium', color: INK } } },
  label: { font: font({ bold: true }), fill: 'FFE9EDF0', border: under, wrap: true },
  symbol: { font: font({ italic: true, color: FAINT }), border: under },
  unit: { font: font({ color: FAINT }), border: under },
  member: { font: font(), border: under, wrap: true },
  source: { font: font({ size: SMALL_SIZE, color: FAINT }), border: under, wrap: true },
  gap: { font: font() },
  text: { font: font(), wrap: true },
  code: { font: font({ mono: true, size: SMALL_SIZE }) },
  entry: { font: font(), fill: 'FFFFF8DC', border: framed, wrap: true },
  spare: { font: font(), border: under },
  given: { font: font(), border: under },
  own: { font: font() },
  remark: { font: font({ size: SMALL_SIZE }), border: under, wrap: true },
  formula: { font: font(), border: under, wrap: true },
  verdict: { font: font({ bold: true }), border: under },
  warning: { font: font({ bold: true, color: 'FF9B1C1C' }), wrap: true },
};

export const wraps = (role: Role): boolean => LOOKS[role].wrap === true;

/** A person may write there. */
const OPEN: readonly Role[] = ['entry', 'spare', 'own', 'remark'];
/** Numbers keep off the frame, too. */
const FRAMED: readonly Role[] = ['entry', 'spare'];
const NEVER_INDENTED: readonly Role[] = ['heading', 'about', 'title', 'text', 'code'];

/**
 * Style of a cell. `number` tells whether its value is one: numbers stand at the right, with the digits of their unit;
 * what a person enters is shown as it was entered. `above` is for headings over numbers. Words keep off the number
 * before them, but not in the first column.
 */
export function styleOf({ role, unit }: Cell, number: boolean, above: boolean, first: boolean): Style {
  const look = LOOKS[role];
  const right = number || above;
  return {
    font: look.font,
    ...(look.fill === undefined ? {} : { fill: look.fill }),
    ...(look.border === undefined ? {} : { border: look.border }),
    format: number ? formatIn(role, unit) : 'General',
    vertical: role === 'label' ? 'bottom' : 'center',
    horizontal: right ? 'right' : 'left',
    indent: FRAMED.includes(role) || (!right && !first && !NEVER_INDENTED.includes(role)),
    wrap: look.wrap === true && !number,
    locked: !OPEN.includes(role),
  };
}

/** Inches, which other units turn into many digits, have four behind the point; else what was entered is shown as it is. */
const formatIn = (role: Role, unit: string | undefined): string =>
  role !== 'entry' && role !== 'spare' ? formatOf(unit) : unit === 'in' ? formatOf('entered_in') : 'General';

/** An entry that holds what was taken where the design says nothing. */
export const TAKEN: Look = { italic: true, color: FAINT };

/** In place of a verdict while an input cannot be taken. */
export const CHECK_INPUTS = 'CHECK INPUTS';

/** Looks of the words of a verdict; each differs from the others in black and white, too. */
export const VERDICT_LOOKS: Readonly<Record<string, Look>> = {
  FAIL: { bold: true, color: 'FF9B1C1C', fill: 'FFFBDADA' },
  [CHECK_INPUTS]: { bold: true, color: 'FF9B1C1C', fill: 'FFFBDADA' },
  UNKNOWN: { italic: true, color: 'FF7A5200', fill: 'FFFDF1D0' },
  advice: { italic: true, color: 'FF1F4E8C' },
  pass: { color: 'FF1E6B34' },
  'pass, close': { bold: true, color: 'FF1E6B34' },
  PASS: { bold: true, color: 'FF1E6B34' },
};
