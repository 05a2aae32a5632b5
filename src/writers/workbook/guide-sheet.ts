/** What each sheet holds, and how the workbook is used: the page between the answers and the workings. */
import { put, type Sheet } from '../../engine/cell.ts';
import { CHECKS } from '../../engine/entered/sheet.ts';
import { SPELLINGS } from '../../engine/entered/spellings.ts';
import { INPUTS } from '../../engine/sheets.ts';
import type { Grid } from '../../engine/translate.ts';
import { JUDGED } from '../../findings/sheet.ts';
import { OWN } from '../../own/rows.ts';
import { CHARTED } from './charted-sheet.ts';
import { CHOICES } from './choices-sheet.ts';
import { KEPT } from './kept-sheet.ts';
import { opening, type Page, section, table, words } from './page.ts';
import { SAID } from './said.ts';
import { WORST } from './worst.ts';

const WIDTHS = [20, 96];

export const USE: readonly string[] = [
  'Change the framed cells of the sheet Inputs. Everything else follows, in any spreadsheet program: sizes, verdicts, findings, charts.',
  'All other cells are locked against slips, without a password: “Unprotect Sheet” opens them.',
  'The numbers of cylinders, coils, runs, conductors, points and rows are fixed within a workbook. To change one, take the design file (“coilfeed design THIS.xlsx” writes it with the inputs as they are now), change it, and run “coilfeed size DESIGN --out FILE.xlsx”.',
  'The sheets of the calculation are hidden. “Unhide” or “Show Sheet” in the menu of the tabs brings them up; a workbook made with --workings shows them.',
  'Formulas of your own go onto the sheet Own, or onto sheets that you add; they use the names listed on Own. Read back, they are kept, and written again into every workbook made from this one.',
  'While an input cannot be taken, a line on the first page says which one and why, and there is no verdict and no list to buy. The same is said beside the input.',
];

const SHOWN: readonly (readonly [string, string])[] = [
  ['Feed', 'The answer: verdict, what to buy, the most pressing findings, cautions.'],
  [INPUTS, 'Everything that can be changed, with its unit and allowed range.'],
  ['WhatIf', 'The inputs that matter most and what follows from them, as designed beside as it is now.'],
  [
    'Runs',
    'What the coils get; size, current, temperature and drop of every run; fuses, relays, faults, and the curves of each fuse.',
  ],
  ['Sweep', 'The first run of the feed over engine speed, if the design asks for it.'],
  ['Findings', 'Every rule for every run, coil and point, the most pressing first.'],
  [OWN, 'Room for formulas and rules of your own, and the names that they may use.'],
  ['Sources', 'Where the values come from, and how each source was seen.'],
];
const ADDED: readonly (readonly [string, string])[] = [
  [CHECKS, 'Each input: what stood there at first, whether it was changed, whether it can be taken.'],
  [SPELLINGS, 'Every spelling of a word or a size that Inputs takes.'],
  [JUDGED, 'The same in the order of the rules; Findings puts them in the order of urgency.'],
  [SAID, 'The figures that the sentences of the findings name, rounded and with their units.'],
  [
    KEPT,
    'What was found when the workbook was made and does not follow the inputs: the remedies that were tried.',
  ],
  [WORST, 'Which conductor of each run carries most.'],
  [CHARTED, 'Values that only the charts need.'],
  [CHOICES, 'What the lists in the cells of Inputs offer.'],
  ['Design', 'The design file that this workbook was made from, to be read and copied.'],
  [
    'Quantities',
    'Every quantity of the calculation by name, with its formula, its source and what it neglects.',
  ],
];

export function guidePage(grid: Grid): Page {
  const cells: Sheet = [];
  let row = opening(
    cells,
    'Guide',
    'Only the visible sheets are needed to use the workbook; the workings are for those who want to check them.',
  );
  row = section(cells, row, 'How to use this workbook', WIDTHS.length);
  for (const value of USE) {
    put(cells, row, 0, { role: 'text', value: `•  ${value}`, span: WIDTHS.length });
    row += 1;
  }
  row += 1;
  const list = (title: string, rows: readonly (readonly [string, string])[]): void => {
    row = section(cells, row, title, WIDTHS.length);
    row = table(
      cells,
      row,
      [{ title: 'Sheet' }, { title: 'What it holds' }],
      rows.map((r) => r.map(words)),
    );
  };
  list('Sheets to read', SHOWN);
  const workings = [...grid.placement.sheets.values()].filter(({ sheet }) => sheet !== INPUTS);
  list('Workings, not in sight', [...workings.map(({ sheet, about }) => [sheet, about] as const), ...ADDED]);
  return {
    name: 'Guide',
    kind: 'shown',
    cells,
    widths: WIDTHS,
    frozen: [2, 0],
    landscape: false,
    tall: 1,
    looks: [],
  };
}
