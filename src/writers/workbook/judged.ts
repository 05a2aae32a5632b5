/** The sheet of the rules with what the pages need of it: rank, words and the units in which values are read. */

import { address } from '../../basis/address.ts';
import type { At, Quantity } from '../../basis/quantity.ts';
import { ARBITRARY, AS_STATED, plainCitation } from '../../basis/sources.ts';
import type { Design } from '../../design/design.ts';
import { type Cell, put, type Sheet } from '../../engine/cell.ts';
import { type Checked, changedFormula, checkedOf, PROBLEMS } from '../../engine/entered/sheet.ts';
import type { Grid } from '../../engine/translate.ts';
import { MARGINAL } from '../../findings/finding.ts';
import { type Judged, laidOut } from '../../findings/judged.ts';
import { SIGNS } from '../../findings/rule.ts';
import { citationOf, RULES, type Rule, type RuleId } from '../../findings/rules.ts';
import { JUDGED, JUDGED_COLUMNS, JUDGED_TOP, judgedRows, judgedSheet } from '../../findings/sheet.ts';
import { WORDS } from '../../findings/words.ts';
import { QUANTITIES, type QuantityName } from '../../model/model.ts';
import { ownCell, ownRows } from '../../own/rows.ts';
import { unitOf } from './links.ts';
import { Said, sentenceFormula } from './said.ts';

const base = Math.max(...Object.values(JUDGED_COLUMNS)) + 1;
/** Columns beside those of the findings. */
export const ADDED = {
  group: base,
  order: base + 1,
  rank: base + 2,
  word: base + 3,
  title: base + 4,
  value: base + 5,
  limit: base + 6,
  meaning: base + 7,
  source: base + 8,
  pass: base + 9,
  fail: base + 10,
  unknown: base + 11,
  margin: base + 12,
} as const;

const TITLES: Readonly<Record<keyof typeof ADDED, string>> = {
  group: 'Failing 0, unknown 1, advice 2, passing 3, not applied 9',
  order: 'Margin, a large number for none',
  rank: 'Rank',
  word: 'Verdict as shown',
  title: 'Title',
  value: 'Value as read',
  limit: 'Limit as read',
  meaning: 'What it means',
  source: 'Source',
  pass: 'when it passes',
  fail: 'when it fails, or is advice',
  unknown: 'when it is unknown',
  margin: 'Margin as read',
};

/** Where the share stands within which a pass counts as close. */
const CLOSE = { row: 1, column: 2 } as const;
/** Stands for a margin that is not known; no real one comes near it. */
const NO_MARGIN = '1e9';

/** A margin of more times the limit is said in a word. */
const FAR = 9.99;

/** Words as they are shown, and the verdicts that they stand for. */
export const SHOWN = {
  fail: 'FAIL',
  unknown: 'UNKNOWN',
  advice: 'advice',
  pass: 'pass',
  close: 'pass, close',
} as const;

/** Column of the sheet as a range over all findings. */
export const judgedColumn = (count: number, at: number): string =>
  `${JUDGED}!${address(JUDGED_TOP, at)}:${address(JUDGED_TOP + count - 1, at)}`;

/** Findings with ranks and words, and the figures that the words name. */
export function rankedSheets(grid: Grid, design: Design): { ranked: Sheet; said: Sheet } {
  const said = new Said(grid, design.units === 'us' ? 'us' : 'metric');
  const sheet = judgedSheet(grid, design).map((row) => [...row]);
  const found = laidOut(grid, design);
  put(sheet, 0, 0, { role: 'heading', value: 'Every rule with every subject' });
  put(sheet, CLOSE.row, 0, {
    role: 'about',
    value: 'In the order of the rules. A pass counts as close when its margin is below:',
  });
  // Far enough to the right for the sentence before it.
  put(sheet, CLOSE.row, CLOSE.column + 4, { role: 'given', value: MARGINAL });
  put(sheet, CLOSE.row, CLOSE.column + 5, { role: 'source', value: plainCitation(ARBITRARY) });
  for (const key of Object.keys(ADDED) as (keyof typeof ADDED)[])
    put(sheet, JUDGED_TOP - 1, ADDED[key], { role: 'label', value: TITLES[key] });
  const checked = checkedOf(grid, design);
  const count = judgedRows(grid, design);
  found.forEach(({ rule, subject, at }, i) => {
    const stated = changedLimit(grid, checked, rule, at);
    for (const [key, cell] of Object.entries(added({ rule, subject, at }, i, count, design, stated, said)))
      put(sheet, JUDGED_TOP + i, ADDED[key as keyof typeof ADDED], cell);
  });
  for (let i = 0; i < ownRows(design); i++)
    for (const [key, cell] of Object.entries(addedOwn(i, found.length + i, count, said)))
      put(sheet, JUDGED_TOP + found.length + i, ADDED[key as keyof typeof ADDED], cell);
  return { ranked: sheet, said: said.sheet() };
}

/** Limits of what is a yes or a no, or must not be at all: the words say it, and figures would say nothing. */
const YES_OR_NO: readonly QuantityName[] = ['none_allowed', 'one_needed'];

/** As long as nobody changes what the design says of a limit, its source; then the design itself. */
const sourceFormula = (changed: string, source: string): string =>
  `IF(${changed}>0,"${plainCitation(AS_STATED)}","${source.replaceAll('"', '""')}")`;

/** Formula that is above 0 when the input that states the limit of a rule was changed; null where no input does. */
function changedLimit(grid: Grid, checked: Checked, rule: RuleId, at: At): string | null {
  const { limit, stated }: Rule = RULES[rule];
  const q: Quantity = QUANTITIES[limit];
  const path = stated ?? (q.kind === 'input' ? q.path : undefined);
  const name = [...grid.placement.entries.keys()].find((one) => {
    const entry: Quantity = QUANTITIES[one];
    return entry.kind === 'input' && entry.path === path;
  });
  if (path === undefined || name === undefined) return null;
  const { per = [] }: Quantity = QUANTITIES[name];
  if (per.some((axis) => at[axis] === undefined)) return null;
  const own: At = Object.fromEntries(per.map((axis) => [axis, at[axis]]));
  return changedFormula(checked, name, [own]);
}

const formula = (text: string): Cell => ({ role: 'formula', formula: text });

/** What makes the order, and the word and the margin that are shown. */
function ranked(row: number, count: number): Pick<Record<keyof typeof ADDED, Cell>, Ranked> {
  const here = (column: number): string => address(row, column, false);
  const all = (column: number): string =>
    `${address(JUDGED_TOP, column)}:${address(JUDGED_TOP + count - 1, column)}`;
  const verdict = here(JUDGED_COLUMNS.verdict);
  const margin = here(JUDGED_COLUMNS.margin);
  const close = address(CLOSE.row, CLOSE.column + 4);
  const [group, order] = [here(ADDED.group), here(ADDED.order)];
  const [groups, orders] = [all(ADDED.group), all(ADDED.order)];
  // Rows of equal rank keep their order: of those, the ones up to this row count.
  const upTo = (column: number): string => `${address(JUDGED_TOP, column)}:${address(row, column, false)}`;
  return {
    group: formula(
      `IF(${verdict}="",9,IF(${verdict}="fail",0,IF(${verdict}="unknown",1,IF(${verdict}="advice",2,3))))`,
    ),
    order: formula(`IF(ISNUMBER(${margin}),${margin},IF(${verdict}="fail",-1,1)*${NO_MARGIN})`),
    rank: formula(
      `SUMPRODUCT((${groups}<${group})*1)+SUMPRODUCT((${groups}=${group})*(${orders}<${order}))+` +
        `SUMPRODUCT((${upTo(ADDED.group)}=${group})*(${upTo(ADDED.order)}=${order}))`,
    ),
    word: formula(
      `IF(${verdict}="","",IF(${PROBLEMS}>0,"",IF(${verdict}="fail","${SHOWN.fail}",IF(${verdict}="unknown","${SHOWN.unknown}",` +
        `IF(${verdict}="advice","${SHOWN.advice}",` +
        `IF(ISNUMBER(${margin}),IF(${margin}<${close},"${SHOWN.close}","${SHOWN.pass}"),"${SHOWN.pass}"))))))`,
    ),
    margin: formula(
      `IF(ISNUMBER(${margin}),IF(${margin}<-${FAR},"far off",IF(${margin}>${FAR},"ample",${margin}*100)),"")`,
    ),
  };
}
type Ranked = 'group' | 'order' | 'rank' | 'word' | 'margin';

/** The same of a rule of the author, whose words stand on the sheet Own. */
function addedOwn(i: number, at: number, count: number, said: Said): Record<keyof typeof ADDED, Cell> {
  const row = JUDGED_TOP + at;
  const here = (column: number): string => address(row, column, false);
  const verdict = here(JUDGED_COLUMNS.verdict);
  const ifJudged = (text: string): Cell => formula(`IF(${verdict}="","",${text})`);
  const unit = `IF(${ownCell(i, 'unit')}="",""," "&${ownCell(i, 'unit')})`;
  const number = (of: 'value' | 'limit'): string =>
    `${said.number(`own rule ${i + 1}, ${of}`, `${JUDGED}!${address(row, JUDGED_COLUMNS[of])}`)}&${unit}`;
  const none = formula('""');
  return {
    ...ranked(row, count),
    title: ifJudged(`""&${ownCell(i, 'label')}`),
    value: ifJudged(number('value')),
    limit: ifJudged(`${ownCell(i, 'sense')}&" "&${number('limit')}`),
    meaning: ifJudged(
      `IF(${ownCell(i, 'words')}="","A rule of the author’s own is not met.",""&${ownCell(i, 'words')})`,
    ),
    source: formula(`IF(${verdict}="","","as the author states")`),
    pass: none,
    fail: none,
    unknown: none,
  };
}

function added(
  { rule, subject, at }: Judged,
  i: number,
  count: number,
  design: Design,
  stated: string | null,
  said: Said,
): Record<keyof typeof ADDED, Cell> {
  const { value, limit, sense }: Rule = RULES[rule];
  const { units } = design;
  const source = citationOf(rule, design);
  const row = JUDGED_TOP + i;
  const here = (column: number): string => address(row, column, false);
  const verdict = here(JUDGED_COLUMNS.verdict);
  const text = (words: string): Cell => ({ role: 'source', value: words });
  const unit = unitOf(value, units);
  // Empty texts are formulas: an empty cell that is looked up reads as 0.
  const plain = YES_OR_NO.includes(limit);
  const inWords = (of: 'value' | 'limit'): string =>
    said.cell(
      `${rule}, ${of}`,
      `${JUDGED}!${address(row, JUDGED_COLUMNS[of])}`,
      RULES[rule][of],
      plain ? '1' : unit,
      // Limits are stated, or stand in a table.
      plain || of === 'limit' || QUANTITIES[RULES[rule][of]].exact === true,
    );
  const facts = { subject, at, value: inWords('value'), limit: inWords('limit') };
  const sentence = (which: 'pass' | 'fail' | 'unknown'): Cell =>
    formula(sentenceFormula(said, rule, which, facts));
  return {
    ...ranked(row, count),
    title: text(WORDS[rule].title),
    // Of a yes or a no the words say it.
    value: formula(plain ? '""' : facts.value),
    limit: formula(plain ? '""' : `"${SIGNS[sense]} "&${facts.limit}`),
    meaning: formula(
      `IF(${verdict}="pass",${here(ADDED.pass)},IF(ISNUMBER(${here(JUDGED_COLUMNS.value)})*` +
        `ISNUMBER(${here(JUDGED_COLUMNS.limit)}),${here(ADDED.fail)},${here(ADDED.unknown)}))`,
    ),
    source:
      stated === null ? text(plainCitation(source)) : formula(sourceFormula(stated, plainCitation(source))),
    pass: sentence('pass'),
    fail: sentence('fail'),
    unknown: sentence('unknown'),
  };
}
