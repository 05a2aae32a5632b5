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
import { opening, type Page, putBeside, section, table, words } from './page.ts';
import { SAID } from './said.ts';
import { WEIGHED } from './weighed.ts';
import { WORST } from './worst.ts';

/** What is printed; beside it the list of the workings. */
const PRINTED = [16, 100];
const WIDTHS = [...PRINTED, 4, 16, 130];

export const USE: readonly string[] = [
  'Change the framed cells of the sheet Inputs. Everything else follows, in any spreadsheet program: sizes, verdicts, findings, charts.',
  'All other cells are locked against slips, without a password: “Unprotect Sheet” opens them. A table of Inputs that is sorted then is refused: a value counts by its cell, not by the label beside it.',
  'While an input cannot be taken, the first sheet says which one and why, and gives no verdict and nothing to buy. The same stands beside the input.',
  'What would pass is tried when a workbook is made. After a change save the file: “coilfeed size THIS.xlsx --out NEW.xlsx” tries again.',
  'How many cylinders, coils, runs, conductors, points and rows there are is fixed within a workbook. For others “coilfeed design THIS.xlsx” writes the design file with the inputs as they are now: change that, and make another workbook from it.',
  'Formulas and rules of your own go onto the sheet Own, or onto sheets that you add. Own lists the names that they may use, with units. They are kept when the file is read back.',
  'The sheets of the calculation are hidden: “Unhide” or “Show Sheet” in the menu of the tabs. A workbook made with --workings shows them.',
];

const SHOWN: readonly (readonly [string, string])[] = [
  ['Feed', 'The answer: verdict, what to buy, the most pressing findings, cautions.'],
  [INPUTS, 'Everything that can be changed, with its unit and allowed range.'],
  ['WhatIf', 'The inputs that matter most and what follows from them, as designed beside as it is now.'],
  [
    'Runs',
    'What the coils get; size, current, temperature and drop of every run; fuses, relays, faults, and the curves of each fuse.',
  ],
  [
    'Sweep',
    'The first run of the feed over engine speed, if the design asks for it; hidden beside a card or a comparison.',
  ],
  ['Findings', 'Every rule for every run, coil and point, the most pressing first.'],
  [
    'TestCard',
    'What to measure where, and room for what was read, which counts in the verdict: of “coilfeed check”.',
  ],
  ['Compare', 'Another feed beside this one: of “coilfeed compare”.'],
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
  [WEIGHED.name, 'What the readings on TestCard come to, as made and as they are now.'],
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
    'The sheets in sight are all that is needed; to the right, the sheets of the calculation, for those who want to check it.',
  );
  row = section(cells, row, 'How to use this workbook', PRINTED.length);
  for (const value of USE) {
    put(cells, row, 0, { role: 'text', value: `•  ${value}`, span: PRINTED.length });
    row += 1;
  }
  row += 1;
  const list = (
    to: Sheet,
    top: number,
    title: string,
    rows: readonly (readonly [string, string])[],
  ): void => {
    table(
      to,
      section(to, top, title, PRINTED.length),
      [{ title: 'Sheet' }, { title: 'What it holds' }],
      rows.map((r) => r.map(words)),
    );
  };
  list(cells, row, 'Sheets to read', SHOWN);
  const workings = [...grid.placement.sheets.values()].filter(({ sheet }) => sheet !== INPUTS);
  const own: Sheet = [];
  list(own, 0, 'Sheets of the calculation, hidden', [
    ...workings.map(({ sheet, about }) => [sheet, about] as const),
    ...ADDED,
  ]);
  putBeside(cells, 3, PRINTED.length + 1, own);
  return {
    name: 'Guide',
    kind: 'shown',
    cells,
    widths: WIDTHS,
    frozen: [2, 0],
    landscape: false,
    tall: 1,
    printed: PRINTED.length,
    looks: [],
  };
}
