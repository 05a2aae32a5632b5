/** The table helper itself: what it refuses, and whose citation wins. */
import { expect, test } from 'vitest';
import { cite, fromMemory } from '../../src/basis/sources.ts';
import { sourceOf, table } from '../../src/basis/table.ts';

const head = {
  title: 'Invented',
  source: cite('NEC', 'quoted'),
  columns: {
    name: { unit: 'text', label: 'Name' },
    amps: { unit: 'A', label: 'Current', source: cite('NEC', 'printed') },
    note: { unit: 'text', label: 'Note', empty: true },
  },
  check: { rows: 1, sums: { amps: 3 } },
} as const;

test('rows become objects keyed by column, frozen', () => {
  const made = table({ ...head, rows: [['a', 3, null]] });
  expect(made.rows).toEqual([{ name: 'a', amps: 3, note: null }]);
  expect(made.key).toEqual(['name']);
  expect(Object.isFrozen(made) && Object.isFrozen(made.rows) && Object.isFrozen(made.rows[0])).toBe(true);
});

test('a cell has the citation of its row, else of its column, else of the table', () => {
  const own = fromMemory('low');
  const made = table({
    ...head,
    rows: [
      ['a', 1, null],
      ['b', 2, 'x', own],
    ],
  });
  const [first, second] = made.rows as [(typeof made.rows)[number], (typeof made.rows)[number]];
  expect(sourceOf(made, first, 'name').status).toBe('quoted');
  expect(sourceOf(made, first, 'amps').status).toBe('printed');
  expect(sourceOf(made, second, 'amps')).toBe(own);
});

test.each([
  ['a row that is too short', ['a', 3], 'Invented, row 1: 2 cells for 3 columns'],
  ['a row that is too long', ['a', 3, null, 'x'], 'Invented, row 1: 4 cells for 3 columns'],
  ['text where a number belongs', ['a', '3', null], 'Invented, row 1, amps: is not a finite number'],
  ['a number that is none', ['a', Number.NaN, null], 'Invented, row 1, amps: is not a finite number'],
  ['a number where text belongs', [1, 3, null], 'Invented, row 1, name: is not text'],
  ['a gap where the source leaves none', ['a', null, null], 'Invented, row 1, amps: is empty'],
])('refuses %s', (_what, row, message) => {
  expect(() => table({ ...head, rows: [row] })).toThrow(message);
});
