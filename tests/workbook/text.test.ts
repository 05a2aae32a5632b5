/** Texts of a design that mean something else in a workbook: they arrive as the words that they are. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { strFromU8, unzipSync } from 'fflate';
import { expect, test } from 'vitest';
import { LONGEST } from '../../src/writers/plain-text.ts';
import { clean } from '../../src/writers/workbook/text.ts';
import { emptyFolder } from '../cli/tool.ts';
import { readCells } from '../peers/cells.ts';
import { describeWithPeer } from '../peers/peer.ts';
import { schemaErrors } from '../peers/schema.ts';
import { bookOf, demoDesign } from './books.ts';

const withTitle = (title: string, notes: string | null = null) =>
  bookOf({ ...demoDesign('pair-four'), title, notes });

test.each([
  '=1+1',
  '+1',
  '-1',
  '@SUM(A1)',
  "'quoted",
  '&P of &N',
  '<b>&amp;</b>',
  '_x0041_',
  '12 %',
  '🚗 Straße',
  '\u202e=1+1 مرحبا',
])('a title %s', async (title) => {
  const cells = readCells((await withTitle(title, title)).bytes).get('Feed');
  expect(cells?.get('A1')).toEqual({ value: title, formula: null });
  const found = [...(cells?.values() ?? [])].filter(
    ({ value, formula }) => value === title && formula === null,
  );
  expect(found.length).toBe(2);
});

test('an ampersand in the header is no code', async () => {
  const { bytes } = await withTitle('Coils & wires &P');
  const sheet = strFromU8(unzipSync(bytes)['xl/worksheets/sheet1.xml'] ?? new Uint8Array());
  expect(sheet).toContain('Coils &amp;&amp; wires &amp;&amp;P');
});

test('control characters and halves of characters are taken out', () => {
  expect(clean('a\u0000b\u001fc\td\ne\ufffff')).toBe('abc\td\nef');
  expect(clean('x\ud800y\udc00z')).toBe('x\ufffdy\ufffdz');
  expect(clean('🚗')).toBe('🚗');
});

test('a text longer than a cell holds ends in an ellipsis and in a whole character', () => {
  expect(clean('a'.repeat(LONGEST))).toHaveLength(LONGEST);
  expect(clean('a'.repeat(LONGEST + 1))).toBe(`${'a'.repeat(LONGEST - 1)}…`);
  const cars = clean('🚗'.repeat(LONGEST));
  expect(cars.length).toBeLessThanOrEqual(LONGEST);
  expect(cars.endsWith('🚗…')).toBe(true);
});

describeWithPeer('ooxml-validator', 'long and strange texts', () => {
  test('the schema takes them', async () => {
    const { bytes } = await withTitle(`=${'&'.repeat(300)}\u0001`, '\u0002'.repeat(10) + '>'.repeat(40_000));
    const file = join(emptyFolder(), 'book.xlsx');
    writeFileSync(file, bytes);
    expect(await schemaErrors(file)).toEqual([]);
  });
});
