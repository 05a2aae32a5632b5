/** How each kind of cell looks. Few colours, and nothing that is told by colour alone. */
import type { Borders, Fill, Font, Style } from 'exceljs';
import type { Cell, Role } from '../../engine/cell.ts';
import { formatOf } from './formats.ts';

const INK = { argb: 'FF1F2933' };
const FAINT = { argb: 'FF5F6B76' };
const LINE = { argb: 'FFB8C0C8' };
const FRAME = { argb: 'FF1F2933' };

const FONT = 'Arial';
export const PLAIN_SIZE = 10;
export const SMALL_SIZE = 8;

const font = (more: Partial<Font> = {}): Partial<Font> => ({
  name: FONT,
  family: 2,
  size: PLAIN_SIZE,
  color: INK,
  ...more,
});
const fill = (argb: string): Fill => ({ type: 'pattern', pattern: 'solid', fgColor: { argb } });
const under: Partial<Borders> = { bottom: { style: 'thin', color: LINE } };
const framed: Partial<Borders> = Object.fromEntries(
  (['top', 'left', 'bottom', 'right'] as const).map((side) => [side, { style: 'thin', color: FRAME }]),
);

interface Look {
  readonly font: Partial<Font>;
  readonly fill?: Fill;
  readonly border?: Partial<Borders>;
  readonly wrap?: boolean;
}

const LOOKS: Readonly<Record<Role, Look>> = {
  heading: { font: font({ size: 15, bold: true }) },
  about: { font: font({ color: FAINT }) },
  title: { font: font({ size: 11, bold: true }), border: { bottom: { style: 'medium', color: INK } } },
  label: { font: font({ bold: true }), fill: fill('FFE9EDF0'), border: under, wrap: true },
  symbol: { font: font({ italic: true, color: FAINT }), border: under },
  unit: { font: font({ color: FAINT }), border: under },
  member: { font: font(), border: under, wrap: true },
  source: { font: font({ size: SMALL_SIZE, color: FAINT }), border: under, wrap: true },
  text: { font: font(), wrap: true },
  code: { font: font({ name: 'Courier New', family: 3, size: SMALL_SIZE + 1 }) },
  entry: { font: font(), fill: fill('FFFFF8DC'), border: framed },
  given: { font: font(), border: under },
  formula: { font: font(), border: under, wrap: true },
  verdict: { font: font({ bold: true }), border: under },
};

export const wraps = (role: Role): boolean => LOOKS[role].wrap === true;

const NEVER_INDENTED: readonly Role[] = ['heading', 'about', 'title', 'text', 'code'];

/**
 * Style of a cell. `number` tells whether its value is one: numbers stand at the right, with the digits of their unit;
 * what a person enters is shown as it was entered. `above` is for headings over numbers. Words keep off the number
 * before them, but not in the first column.
 */
export function styleOf(
  { role, unit }: Cell,
  number: boolean,
  above: boolean,
  first: boolean,
): Partial<Style> {
  const look = LOOKS[role];
  const right = number || above;
  return {
    font: look.font,
    ...(look.fill === undefined ? {} : { fill: look.fill }),
    border: look.border ?? {},
    numFmt: number && role !== 'entry' ? formatOf(unit) : 'General',
    alignment: {
      vertical: role === 'label' ? 'bottom' : 'top',
      horizontal: right ? 'right' : 'left',
      ...(right || first || NEVER_INDENTED.includes(role) ? {} : { indent: 1 }),
      ...(look.wrap && !number ? { wrapText: true } : {}),
    },
    protection: { locked: role !== 'entry' },
  };
}

/** Looks of the words of a verdict; each differs from the others in black and white, too. */
export const VERDICT_LOOKS = {
  FAIL: { font: { bold: true, color: { argb: 'FF9B1C1C' } }, fill: solid('FFFBDADA') },
  UNKNOWN: { font: { italic: true, color: { argb: 'FF7A5200' } }, fill: solid('FFFDF1D0') },
  pass: { font: { color: { argb: 'FF1E6B34' } } },
  'pass, close': { font: { bold: true, color: { argb: 'FF1E6B34' } } },
  PASS: { font: { bold: true, color: { argb: 'FF1E6B34' } } },
} as const satisfies Record<string, Partial<Style>>;

/** A rule's fill has its colour as background, where a cell's has it as foreground. */
function solid(argb: string): Fill {
  return { type: 'pattern', pattern: 'solid', bgColor: { argb } };
}
