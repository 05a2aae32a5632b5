/** A second spreadsheet program reads every formula as we do. */
import { expect, test } from 'vitest';
import { runLaid } from '../../src/run-laid.ts';
import { show } from '../../src/writers/workbook/workbook.ts';
import { judge } from '../peers/ironcalc.ts';
import { demoDesign } from './books.ts';

/**
 * Sheets with formulas that it is known to read otherwise: ISNUMBER of a range inside SUMPRODUCT looks at one cell only
 * there, and values that are equal but for their last digit are different to it, so that a tie between two sizes or the
 * end of a table falls to the other side. LibreOffice judges these sheets.
 */
const KNOWN = ['FeedRuns', 'EachRun', 'Sizes'];
const SCALARS = 'Values';

test('two-bank-v8: all quantities that exist once', () => {
  const { evaluation } = runLaid(demoDesign('two-bank-v8'), show);
  const { formulas, differ } = judge(evaluation, (sheet) => sheet === SCALARS).get(SCALARS) ?? {};
  expect(differ).toEqual([]);
  expect(formulas).toBeGreaterThan(50);
});

test('pair-four: every sheet', () => {
  const { evaluation } = runLaid(demoDesign('pair-four'), show);
  const found = judge(evaluation, (sheet) => !KNOWN.includes(sheet));
  expect([...found].flatMap(([sheet, { differ }]) => differ.map((line) => `${sheet} ${line}`))).toEqual([]);
  const count = [...found.values()].reduce((sum, { formulas }) => sum + formulas, 0);
  expect(count).toBeGreaterThan(4000);
});
