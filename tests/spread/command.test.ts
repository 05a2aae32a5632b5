/** `coilfeed spread` as a person runs it. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { coilfeed, emptyFolder } from '../cli/tool.ts';

const V8 = 'workbooks/two-bank-v8.yaml';

test('the same bytes from one thread, two and three; another seed gives others', async () => {
  const folder = emptyFolder();
  const call = (threads: string, seed: string) =>
    coilfeed([
      ...['spread', V8, '--samples', '330', '--seed', seed, '--threads', threads],
      ...['--json', '--out', join(folder, `${threads}-${seed}.csv`)],
    ]);
  const [one, two, three, other] = await Promise.all([
    call('1', '5'),
    call('2', '5'),
    call('3', '5'),
    call('2', '6'),
  ]);
  expect([one?.status, two?.status, three?.status]).toEqual([1, 1, 1]);
  expect(new Set([one?.out, two?.out, three?.out]).size).toBe(1);
  expect(other?.out).not.toBe(one?.out);
  const csv = ['1-5', '2-5', '3-5'].map((name) => readFileSync(join(folder, `${name}.csv`), 'utf8'));
  expect(new Set(csv).size).toBe(1);
  expect(csv[0]?.trimEnd().split('\r\n')).toHaveLength(331);
  const result = JSON.parse(one?.out ?? '');
  expect(result).toMatchObject({ format: 'coilfeed-spread/1', samples: 330, seed: 5, verdict: 'pass' });
  // The table holds what the result tells.
  const drops = csv[0]
    ?.trimEnd()
    .split('\r\n')
    .slice(1)
    .map((row) => Number(row.split(',')[1])) as number[];
  expect([Math.min(...drops), Math.max(...drops)]).toEqual([result.figures[0].least, result.figures[0].most]);
});

test('a report within eighty columns, and a picture', async () => {
  const folder = join(emptyFolder(), 'plots');
  const { out, err } = await coilfeed(['spread', V8, '--samples', '100', '--plots', folder]);
  expect(err).toBe('');
  expect(
    Math.max(
      ...out
        .split('\n')
        .filter((line) => !line.startsWith('Wrote'))
        .map((line) => [...line].length),
    ),
  ).toBeLessThanOrEqual(80);
  for (const part of [
    'for a whole install: supply ± 2 %',
    'for each coil and each conductor by itself',
    'What matters most',
  ])
    expect(out).toContain(part);
  expect(readFileSync(join(folder, 'shares.svg'), 'utf8')).toContain('Share of the variance in %');
  expect(readFileSync(join(folder, 'shares.png')).subarray(1, 4).toString()).toBe('PNG');
});

test.each([
  [['--samples', '1000001'], '--samples takes a whole number from 1 to 1000000'],
  [['--samples', '0'], '--samples takes'],
  [['--seed', '-1'], 'seed'],
  [['--out', 'x.xlsx'], 'must end in .csv'],
  [['--samples', '200000', '--out', 'x.csv'], '100000 installs at most'],
  [['--threads', '99'], '--threads takes a number from 1 to 16'],
  [['--set', 'tolerance.lenght=5%'], 'did you mean "length"?'],
])('%j is refused', async (call, says) => {
  const { out, err, status } = await coilfeed(['spread', V8, ...call]);
  expect([out, status]).toEqual(['', 2]);
  expect(err.replaceAll('\n', ' ')).toContain(says);
});
