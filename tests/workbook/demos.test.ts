/** The workbooks beside the demo designs are those that the designs make. */
import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readDesign } from '../../src/design/read.ts';
import { CHECKS } from '../../src/engine/entered/sheet.ts';
import { runLaid } from '../../src/run-laid.ts';
import { archive } from '../../src/saved/seal/archive.ts';
import { show, toWorkbook } from '../../src/writers/workbook/workbook.ts';

const folder = new URL('../../workbooks/', import.meta.url);
const designs = readdirSync(folder).filter((name) => name.endsWith('.yaml') && name !== 'shop.yaml');

test('there are three', () => {
  expect(designs).toHaveLength(3);
});

test.each(designs)('%s makes the workbook beside it, and passes', async (name) => {
  const read = readDesign(readFileSync(new URL(name, folder), 'utf8'), name, {
    text: readFileSync(new URL('shop.yaml', folder), 'utf8'),
    file: 'workbooks/shop.yaml',
  });
  if (!read.ok) throw new Error('the design cannot be read');
  const result = runLaid(read.design, show);
  expect(result.verdict).toBe('pass');
  // Nobody changed an input yet: remedies and what was designed stand there.
  expect(result.evaluation.cached(CHECKS, 4, 3)).toBe(0);
  const kept = readFileSync(new URL(name.replace('.yaml', '.xlsx'), folder));
  // Not the bytes side by side: the message has to be readable.
  expect(
    kept.equals(await archive.seal(toWorkbook(result))),
    `${name}: its workbook is stale: npm run workbooks`,
  ).toBe(true);
});
