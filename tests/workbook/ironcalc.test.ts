/** A second spreadsheet program reads every formula as we do. */
import { expect, test } from 'vitest';
import { runLaid } from '../../src/run-laid.ts';
import { show } from '../../src/writers/workbook/workbook.ts';
import { judge } from '../peers/ironcalc.ts';
import { demoDesign } from './books.ts';

const SCALARS = 'Values';

test('two-bank-v8: all quantities that exist once', () => {
  const { evaluation } = runLaid(demoDesign('two-bank-v8'), show);
  const { formulas, differ } = judge(evaluation, (sheet) => sheet === SCALARS).get(SCALARS) ?? {};
  expect(differ).toEqual([]);
  expect(formulas).toBeGreaterThan(50);
});

test('pair-four: every sheet', () => {
  const { evaluation } = runLaid(demoDesign('pair-four'), show);
  const found = judge(evaluation, () => true);
  expect([...found].flatMap(([sheet, { differ }]) => differ.map((line) => `${sheet} ${line}`))).toEqual([]);
  const count = [...found.values()].reduce((sum, { formulas }) => sum + formulas, 0);
  expect(count).toBeGreaterThan(9000);
});
