/** `coilfeed study` as a person runs it. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { coilfeed, emptyFolder } from '../cli/tool.ts';

const V8 = 'workbooks/two-bank-v8.yaml';
const GRID = [
  'study',
  V8,
  '--vary',
  'feed.main.length=1 m..6 m/0.1 m',
  '--show',
  'worst_drop',
  '--show',
  'gauge main',
];

test('the same bytes from one thread, two and three; table and picture as files', async () => {
  const folder = emptyFolder();
  const calls = await Promise.all(
    [1, 2, 3].map((threads) =>
      coilfeed([...GRID, '--json', '--threads', String(threads), '--out', join(folder, `${threads}.csv`)]),
    ),
  );
  expect(calls.map(({ status, err }) => [status, err])).toEqual(
    [1, 2, 3].map((threads) => [0, `\nWrote ${join(folder, `${threads}.csv`)}\n`]),
  );
  expect(new Set(calls.map(({ out }) => out)).size).toBe(1);
  const bytes = [1, 2, 3].map((threads) => readFileSync(join(folder, `${threads}.csv`), 'utf8'));
  expect(new Set(bytes).size).toBe(1);
  expect(bytes[0]?.split('\r\n')).toHaveLength(53);
  const result = JSON.parse(calls[0]?.out ?? '');
  expect(result).toMatchObject({ format: 'coilfeed-study/1', vary: [{ path: 'feed.main.length' }] });
  expect(result.points).toHaveLength(51);
});

test('a map over two inputs is drawn', async () => {
  const file = join(emptyFolder(), 'map.svg');
  const vary = ['--vary', 'feed.main.length=1 m, 4 m', '--vary', 'feed.main.gauge=10 AWG, 4 AWG'];
  const { status, out } = await coilfeed(['study', V8, ...vary, '--out', file]);
  expect(status).toBe(0);
  expect(out).toContain('feed.main.length  10 AWG  4 AWG');
  const svg = readFileSync(file, 'utf8');
  for (const text of ['feed.main.gauge', '10 AWG', 'Drop, worst path in V'])
    expect(svg).toContain(`>${text}<`);
});

test.each([
  [['study', V8], 'takes one or two --vary'],
  [['study', V8, '--vary', 'feed.mian.length=1 m, 2 m'], 'feed has no "mian"; did you mean "main"?'],
  [['study', V8, '--vary', 'feed.main.length=1 m, 2 m', '--show', 'ampacty'], 'Did you mean ampacity'],
  [
    ['study', V8, '--vary', 'feed.main.length=1..6 m/0.01', '--vary', 'feed.main.joints=1..30/1'],
    'has 15030 points; 10000 are the most',
  ],
  [['study', V8, '--vary', 'feed.main.length=1 m, 2 m', '--out', 'x.xlsx'], 'must end in .csv, .svg or .png'],
])('%j is refused', async (call, says) => {
  const { out, err, status } = await coilfeed(call as string[]);
  expect([out, status]).toEqual(['', 2]);
  expect(err.replaceAll('\n', ' ')).toContain(says);
});
