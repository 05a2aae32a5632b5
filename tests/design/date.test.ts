/** The day that a design may give of itself. */
import { expect, test } from 'vitest';
import { readDesign } from '../../src/design/read.ts';
import { base, design } from './helpers.ts';

const dated = (date: string): string => base(['coilfeed: 1', `coilfeed: 1\ndate: ${date}`]);

test.each(['2031-05-28', '"2028-02-29"'])('%s is taken as it stands', (date) => {
  expect(design(dated(date)).date).toBe(date.replaceAll('"', ''));
  expect(design(base()).date).toBeNull();
});

// 2031 is no leap year; the others are no days in this form.
test.each([
  '2031-02-29',
  '28.5.2031',
  '2031-5-28',
  '2031-13-01',
  'yesterday',
  '20310528',
  '2031-05-28T00:00',
])('%s is refused with its place', (date) => {
  const read = readDesign(dated(date), 'x.yaml');
  expect(read.ok).toBe(false);
  if (read.ok) return;
  expect(read.problems[0]).toMatchObject({ line: 2 });
  expect(read.problems[0]?.taken).toContain('2031-05-28');
});
