/** All sheets of the workbook, in the order in which a person asks: the answer, the inputs, the detail, the workings. */
import type { Design } from '../../design/design.ts';
import type { Sheet } from '../../engine/cell.ts';
import { CHECKS } from '../../engine/entered/sheet.ts';
import { SHELF } from '../../engine/entered/shelf.ts';
import { SPELLINGS } from '../../engine/entered/spellings.ts';
import { INPUTS } from '../../engine/sheets.ts';
import type { Extra, Laid } from '../../engine/spreadsheet.ts';
import type { Grid } from '../../engine/translate.ts';
import { JUDGED, JUDGED_TOP } from '../../findings/sheet.ts';
import { cardPage, TEST_CARD } from './card-sheet.ts';
import { CHARTED, chartedSheet } from './charted-sheet.ts';
import { choicesPage } from './choices-sheet.ts';
import { COMPARE } from './compare-sheet.ts';
import { designPage } from './design-sheet.ts';
import { feedPage } from './feed-sheet.ts';
import { findingsPage } from './findings-sheet.ts';
import { guidePage } from './guide-sheet.ts';
import { inputsPage } from './inputs-page.ts';
import { rankedSheets } from './judged.ts';
import { KEPT, keptSheet, type Remedies } from './kept-sheet.ts';
import { addedPages, ownPage } from './own-sheet.ts';
import type { Page } from './page.ts';
import { quantitiesPage } from './quantities-sheet.ts';
import { runsPage } from './runs-sheet.ts';
import { SAID } from './said.ts';
import { sourcesPage } from './sources-sheet.ts';
import { OVER_SPEED, sweepPage } from './sweep-sheet.ts';
import { WEIGHED, type Weighed, weighedSheet } from './weighed.ts';
import { whatIfPage } from './what-if-sheet.ts';
import { workingPage, workingPages } from './working-page.ts';
import { WORST, worstSheet } from './worst.ts';

const presenting = (grid: Grid, design: Design, weighed: Weighed | null = null): Page[] =>
  [
    feedPage(grid, design),
    whatIfPage(grid, design, weighed),
    runsPage(grid, design),
    cardPage(grid, design),
    sweepPage(grid, design),
    findingsPage(grid, design),
    sourcesPage(grid, design),
    ownPage(grid, design),
    ...addedPages(design),
  ].filter((page) => page !== null);

/**
 * The sheets that present the results, for the engine to evaluate beside its own; `remedies`, and what came of weighing the
 * readings on a test card, are told while nothing is changed.
 */
export const showWith =
  (remedies: Remedies, weighed: Weighed | null = null): Extra =>
  (grid, design) =>
    new Map<string, Sheet>([
      [KEPT, keptSheet(remedies)],
      ...weighedSheet(grid, design, weighed),
      ...judgedSheets(grid, design),
      [WORST, worstSheet(grid, design)],
      [CHARTED, chartedSheet(grid, design)],
      ...presenting(grid, design, weighed).map(({ name, cells }): [string, Sheet] => [name, cells]),
    ]);

function judgedSheets(grid: Grid, design: Design): [string, Sheet][] {
  const { ranked, said } = rankedSheets(grid, design);
  return [
    [JUDGED, ranked],
    [SAID, said],
  ];
}

/** The same where nobody looked for remedies. */
export const show = showWith(null);

/** Every page of an evaluation that was made with `show`, `more` behind the first. */
export function pages({ grid, design, sheets }: Laid, more: readonly Page[] = []): Page[] {
  const sheet = (name: string): Sheet => {
    const found = sheets.get(name);
    if (found === undefined)
      throw new Error(`the evaluation has no sheet ${name}: it was made without "show"`);
    return found;
  };
  const all = presenting(grid, design).map((page): Page => ({ ...page, cells: sheet(page.name) }));
  // A card or a comparison takes the place of the sheet over speed, which is out of sight then.
  const asked = [...all, ...more].some(({ name }) => name === TEST_CARD || name === COMPARE);
  const [feed, ...others] = all.map(
    (page): Page => (asked && page.name === OVER_SPEED ? { ...page, aside: true } : page),
  );
  return [
    feed as Page,
    ...more.map((page) => ({ ...page, cells: sheet(page.name) })),
    inputsPage(grid, design, sheet(INPUTS)),
    ...others,
    guidePage(grid),
    ...workingPages(grid, sheets),
    workingPage(CHECKS, sheet(CHECKS), 10, 2),
    workingPage(SPELLINGS, sheet(SPELLINGS), 3, 1),
    ...(sheets.has(SHELF) ? [workingPage(SHELF, sheet(SHELF), 3, 1)] : []),
    workingPage(JUDGED, sheet(JUDGED), JUDGED_TOP, 2),
    workingPage(WORST, sheet(WORST), 4, 1),
    workingPage(SAID, sheet(SAID), 4, 1),
    workingPage(KEPT, sheet(KEPT), 3, 1),
    ...(sheets.has(WEIGHED.name) ? [workingPage(WEIGHED.name, sheet(WEIGHED.name), WEIGHED.first, 1)] : []),
    workingPage(CHARTED, sheet(CHARTED), 3, 1),
    choicesPage(design),
    quantitiesPage(grid),
    designPage(design.text.toString()),
  ];
}
