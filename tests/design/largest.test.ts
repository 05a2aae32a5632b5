/** The design with which speed and memory are measured is the largest that is allowed: one more of anything is refused. */
import { expect, test } from 'vitest';
import { largest } from '../../src/build/largest.ts';
import { readDesign } from '../../src/design/read.ts';

test('the largest design is taken, and has 24 points, 200 rows, 16 coils, 64 firings, 64 conductors', () => {
  const read = readDesign(largest(), 'largest.yaml');
  expect(read).toMatchObject({ ok: true });
  if (!read.ok) return;
  const { points, sweep, coils, events, wires } = read.design;
  expect([points.length, sweep?.rows, coils.length, events.length, wires.length]).toEqual([
    24, 200, 16, 64, 64,
  ]);
});

const swap = (find: string, put: string): string => {
  const text = largest();
  expect(text).toContain(find);
  return text.replace(find, put);
};

test.each([
  ['a point', 'sweep:', '  - { name: more, rpm: 300 rpm, supply: 12 V }\nsweep:', 'points'],
  ['a row', 'to: 2390 rpm', 'to: 2400 rpm', 'sweep.step'],
  ['a firing', 'fires_at: [0, ', 'fires_at: [0, 1, ', 'ignition.coils'],
  [
    'a conductor',
    'feed:\n',
    'feed:\n  - { run: more, carries: all, length: 1 m, ambient: 60 degC, insulation: TXL, gauge: auto }\n',
    'feed',
  ],
])('one more: %s', (_, find, put, key) => {
  const read = readDesign(swap(find, put), 'larger.yaml');
  if (read.ok) throw new Error('was taken');
  expect(read.problems.map((problem) => problem.key)).toContain(key);
  expect(read.problems.some(({ taken }) => /at most|1 to 24/.test(taken))).toBe(true);
});
