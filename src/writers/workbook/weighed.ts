/**
 * What the readings on the test card come to. Each is judged on its row, live. What they mean together no formula can say: that is
 * kept from when the workbook was made, and holds until a reading or an input is changed.
 */
import { address } from '../../basis/address.ts';
import type { Design } from '../../design/design.ts';
import { put, type Sheet } from '../../engine/cell.ts';
import { CHANGED } from '../../engine/entered/sheet.ts';
import type { Grid } from '../../engine/translate.ts';
import type { Overall } from '../../findings/finding.ts';
import { overall } from '../../findings/read.ts';
import { hasRow } from '../../readings/card.ts';
import type { Checked } from '../../readings/check.ts';
import { atPosts } from '../../readings/expected.ts';
import { VERDICT_WORDS } from '../verdict.ts';
import { CARD_COLUMN, cardRange, cardTaken } from './card-sheet.ts';
import { SHOWN } from './judged.ts';
import { opening, words } from './page.ts';

const NAME = 'Weighed';
const AT = {
  verdict: 3,
  told: 4,
  same: 5,
  off: 6,
  posts: 7,
  taken: 8,
  now: 9,
  said: 10,
  sentences: 12,
} as const;
const TOP = 18;
const VALUE = 3;
const COLUMN = { made: 0, posts: 1, changed: 2 } as const;
const cell = (row: number): string => `${NAME}!${address(row, VALUE)}`;

/** What `coilfeed check` found in the design that the workbook is made of. */
export interface Weighed {
  /** Of the readings by themselves; of parts that nobody knows together with the rules. */
  readonly verdict: Overall;
  /** What the readings point at, for the customer; empty where they point at nothing. */
  readonly told: string;
}

/** Things to mend that are told at most. */
const MOST = 3;

export function weighedOf({ read, readings, mend, result: { evaluation, findings } }: Checked): Weighed {
  const open = evaluation.design.unknowns.length > 0;
  const verdict = open ? overall([{ verdict: read }, ...findings]) : read;
  const ours = mend.filter(({ rule }) => rule === null);
  const more = ours.length > MOST ? ` And ${ours.length - MOST} more.` : '';
  const off = readings.filter(({ stands }) => stands === 'low' || stands === 'high').length;
  const counted = off > 0 ? `${off} of ${readings.length} readings out of range. ` : '';
  const says = ours.slice(0, MOST).map(({ subject, says }) => `${subject}: ${says}`);
  return { verdict, told: off + says.length === 0 ? '' : `Readings: ${counted}${says.join(' ')}${more}` };
}

/** A text in a formula is at most 255 characters long, so that they stand in cells. */
const SENTENCES = {
  outside:
    ' readings on TestCard are out of range: something in the feed is not as it is stated. “coilfeed check THIS.xlsx” says what the readings mean.',
  supply:
    'The supply at the battery posts is not the one that the design states. Enter on Inputs what was read, or ask “coilfeed check THIS.xlsx” what the readings mean.',
  within:
    'Each reading on TestCard is within its range. Whether they go together, only “coilfeed check THIS.xlsx” says: until then there is no verdict.',
  parts:
    'The design has parts that nobody knows, and the figures stand for one choice of them. Only “coilfeed check THIS.xlsx” says what holds for every choice.',
} as const;

/** Nothing where there is no card; `found` is null where nobody weighed the readings. */
export function weighedSheet(grid: Grid, design: Design, found: Weighed | null): [string, Sheet][] {
  const rows = cardTaken(grid, design);
  if (rows === null) return [];
  const sheet: Sheet = [];
  opening(sheet, NAME, 'What the readings on the test card come to, as made and as they are now.');
  const line = (row: number, label: string, formula: string): void => {
    put(sheet, row, 0, words(label));
    put(sheet, row, VALUE, { role: 'formula', formula });
  };
  const own = (column: number): string => `${address(TOP, column)}:${address(TOP + rows.length - 1, column)}`;
  const verdicts = cardRange(design, CARD_COLUMN.verdict);
  const off = `(${verdicts}="${SHOWN.fail}")`;
  const at = (row: number): string => address(row, VALUE);
  const sentence = (of: keyof typeof SENTENCES): string =>
    at(AT.sentences + Object.keys(SENTENCES).indexOf(of));
  put(sheet, AT.verdict, 0, words('Verdict of the readings when the workbook was made'));
  put(sheet, AT.verdict, VALUE, words(found === null ? '' : VERDICT_WORDS[found.verdict]));
  put(sheet, AT.told, 0, words('What was said of them'));
  put(sheet, AT.told, VALUE, words(found?.told ?? ''));
  Object.values(SENTENCES).forEach((text, i) => {
    put(sheet, AT.sentences + i, VALUE, words(text));
  });
  line(AT.same, 'As made (1) or not (0)', `IF(${CHANGED}+SUM(${own(COLUMN.changed)})>0,0,1)`);
  line(AT.off, 'Out of range, but for the supply', `SUMPRODUCT(${off}*(${own(COLUMN.posts)}=0))`);
  line(AT.posts, 'Supplies out of range', `SUMPRODUCT(${off}*(${own(COLUMN.posts)}=1))`);
  line(AT.taken, 'Readings on the card', `COUNT(${cardRange(design, CARD_COLUMN.measured)})`);
  /** As made, and weighed then, the verdict of then; else what is known without weighing. */
  const kept = (then: string, otherwise: string): string =>
    `IF(${at(AT.same)}=0,${otherwise},IF(${at(AT.verdict)}="",${otherwise},${then}))`;
  const unrowed = design.measured.filter((one) => !hasRow(one)).length;
  const [unknown, any] = [`"${SHOWN.unknown}"`, `${at(AT.taken)}+${unrowed}>0`];
  const open = design.unknowns.length > 0;
  const alone = open ? unknown : `IF(${at(AT.off)}>0,"${SHOWN.fail}",IF(${any},${unknown},"PASS"))`;
  const counted = `${at(AT.off)}&" of "&${at(AT.taken)}&${sentence('outside')}`;
  const quiet = open ? sentence('parts') : `IF(${any},${sentence('within')},"")`;
  line(AT.now, 'Verdict now', kept(at(AT.verdict), alone));
  line(
    AT.said,
    'What is said of them now',
    kept(
      `${at(AT.told)}&""`,
      `IF(${at(AT.off)}>0,${counted},IF(${at(AT.posts)}>0,${sentence('supply')},${quiet}))`,
    ),
  );
  rows.forEach(({ where, value, cell: there }, i) => {
    const same =
      value === null
        ? `IF(${there}="",0,1)`
        : `IF(ISNUMBER(${there}),IF(ABS(${there}-${address(TOP + i, COLUMN.made)})<=ABS(${there})*1e-14,0,1),1)`;
    put(sheet, TOP + i, COLUMN.made, { role: 'given', value });
    put(sheet, TOP + i, COLUMN.posts, { role: 'given', value: atPosts(where) ? 1 : 0 });
    put(sheet, TOP + i, COLUMN.changed, { role: 'formula', formula: `IFERROR(${same},1)` });
  });
  return [[NAME, sheet]];
}

/** Cells with the verdict of the readings as a word, and with what is said of them; null where there is no card. */
export const weighedCells = (grid: Grid, design: Design): { verdict: string; said: string } | null =>
  cardTaken(grid, design) === null ? null : { verdict: cell(AT.now), said: cell(AT.said) };

/** The sheet, and the row from which it scrolls. */
export const WEIGHED = { name: NAME, first: AT.verdict } as const;
