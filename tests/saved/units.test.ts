/** Inputs in the reader's units: what is edited in inches and degrees Fahrenheit is what a design file would say in them. */
import { expect, test } from 'vitest';
import { readDesign } from '../../src/design/read.ts';
import { bookOf, demoDesign } from '../workbook/books.ts';
import { fill, readBack } from './edit.ts';

/** The eight of the demo by coil: 1 to 8 stand below each other, whatever order they fire in. */
const made = readDesign(`${demoDesign('two-bank-v8').text}\nunits: us\n`, 'v8.yaml');
if (!made.ok) throw new Error('the demo is not read');

test('untouched it is the design to the letter; an edit in inches or °F is read back exactly', async () => {
  const book = await bookOf(made.design);
  expect((await readBack(book.bytes)).changed).toEqual([]);
  const wire = made.design.wires.findIndex(({ id }) => id === 'branch.2');
  const edited = await readBack(
    fill(
      book,
      ['wire_length', { wire }, 10.5],
      ['run_ambient', { run: 0 }, 150.8],
      ['fuse_distance_given', { run: 0 }, 4],
    ),
  );
  expect(edited.said).toEqual([]);
  const { wires, runs } = edited.design as NonNullable<typeof edited.design>;
  // By hand: 10.5 × 25.4 mm; (150.8 − 32) × 5/9 °C; 4 × 25.4 mm.
  expect(wires[wire]?.length).toBe(0.2667);
  expect(runs[0]?.ambient).toBe(66);
  expect(runs[0]?.fuse?.from_source).toBe(0.1016);
  // Of all other conductors nothing moved.
  expect(wires.filter(({ length }, i) => length !== made.design.wires[i]?.length)).toHaveLength(1);
  expect(edited.changed.map(({ now }) => now).sort()).toEqual(['10.5 in', '150.8 degF', '4 in']);
});

test('the ranges are those of the design file, told within them', async () => {
  const book = await bookOf(made.design);
  const { said } = await readBack(fill(book, ['wire_length', { wire: 0 }, 3938]));
  // 100 m is 3937.008 in.
  expect(said.join()).toMatch(/Inputs!C\d+ feed\[0\]\.length: found "3938 in"; allowed: /);
});
