/** A study: its grid, its rows against designs that were written by hand, and where it turns. */
import { expect, test } from 'vitest';
import { evaluate } from '../../src/engine/evaluate.ts';
import { run } from '../../src/run.ts';
import {
  pointOf,
  pointsOf,
  type Row,
  type Study,
  shownOf,
  usualOf,
  valuesAt,
} from '../../src/study/study.ts';
import { turnsOf } from '../../src/study/turns.ts';
import { readVary, type Vary } from '../../src/study/values.ts';
import { studyReport } from '../../src/writers/study-report.ts';
import { demo, design } from '../design/helpers.ts';

const v8 = demo('two-bank-v8');
const vary = (text: string): Vary => {
  const read = readVary(text);
  if (typeof read === 'string') throw new Error(read);
  return read;
};

test.each([
  ['feed.main.length=1 m..2 m/0.5 m', ['1 m', '1.5 m', '2 m'], [1, 1.5, 2]],
  ['feed.main.length=1..2 m/0.4', ['1 m', '1.4 m', '1.8 m'], [1, 1.4, 1.8]],
  ['feed.main.length = 0.1 m..0.3 m/0.1 m', ['0.1 m', '0.2 m', '0.3 m'], [0.1, 0.2, 0.3]],
  ['feed.main.joints=2..4/1', ['2', '3', '4'], [2, 3, 4]],
  ['feed.main.ambient=-20 degC..20 degC/20 degC', ['-20 degC', '0 degC', '20 degC'], [-20, 0, 20]],
  ['feed.main.gauge=10 AWG, 8 AWG', ['10 AWG', '8 AWG'], null],
  ['feed.main.length=2 m, 1 m', ['2 m', '1 m'], null],
])('%s', (text, values, numbers) => {
  expect(vary(text).values).toEqual(values);
  expect(vary(text).scale?.numbers ?? null).toEqual(numbers);
});

test.each([
  ['feed.main.length', 'takes PATH=VALUES'],
  ['feed.main.length=', 'takes PATH=VALUES'],
  ['feed.main.length=1 m..2 m', 'first..last/step'],
  ['feed.main.length=1 m..2 ft/1 m', 'mixes units'],
  ['feed.main.length=2 m..1 m/1 m', 'must rise'],
  ['feed.main.length=1 m..2 m/0 m', 'must rise'],
  ['feed.main.length=1 m..2 m/0.0001 m', '10001 values; 10000 points are the most'],
  ['feed.main.gauge=8 AWG,,6 AWG', 'a value is missing'],
])('%s is refused', (text, says) => {
  expect(readVary(text)).toContain(says);
});

const lengths = vary('feed.main.length=1 m..5.8 m/0.2 m');
const gauges = vary('feed.main.gauge=8 AWG, 6 AWG');
const both = [lengths, gauges];
const asked = usualOf(design(v8));
const rows: Row[] = Array.from({ length: pointsOf(both) }, (_, i) =>
  pointOf(design(v8), 'metric', both, asked, valuesAt(both, i), run),
);
const shown = shownOf(evaluate(design(v8)), asked);
if (typeof shown === 'string') throw new Error(shown);
const study: Study = { design: design(v8), vary: both, shown, rows };

test('fifty points are what single designs give, with these values written into the file by hand', () => {
  expect(rows).toHaveLength(50);
  for (const { values, verdict, found, why } of rows) {
    const [length, gauge] = values as [string, string];
    const text = v8.replace('length: 1.8 m', `length: ${length}`).replace('gauge: 6 AWG', `gauge: ${gauge}`);
    const { evaluation: e, findings, verdict: single } = run(design(text));
    // Where no sizes were found there is no drop and no size.
    const left = e.value('gauge', { run: 1 });
    const none = e.number('solved') === 1 ? null : [null, null];
    expect([verdict, found[0], found[2]]).toEqual([single, ...(none ?? [e.number('worst_drop'), left])]);
    expect(why).toHaveLength(findings.filter((f) => f.verdict === 'fail' || f.verdict === 'unknown').length);
  }
});

test('where no sizes would do, none is told, nor a drop and a copper that rest on those that stand in', () => {
  const without = rows.filter(({ why }) => why.some((text) => text.startsWith('Size: available')));
  expect(without.length).toBeGreaterThan(0);
  for (const { verdict, texts } of without) {
    expect(verdict).toBe('fail');
    expect(texts.map((text, i) => (asked[i]?.startsWith('gauge') ? text === 'none' : text === '–'))).toEqual(
      asked.map(() => true),
    );
  }
  for (const { texts } of rows.filter((row) => !without.includes(row)))
    expect(texts.filter((text) => text === 'none' || text === '–')).toEqual([]);
});

test('turns name the first value at which something is another word', () => {
  for (const { beside, what, value, before, after } of turnsOf(study)) {
    const own = rows.filter(({ values }) => values[1] === beside);
    const at = own.findIndex(({ values }) => values[0] === value);
    if (what !== 'Size, left trunk') continue;
    expect([own[at - 1]?.texts[2], own[at]?.texts[2]]).toEqual([before, after]);
  }
  // The drop of a thin main run passes its limit of 0.5 V at some length; of the thicker one later.
  const verdicts = turnsOf(study).filter(({ what }) => what === 'Verdict');
  expect(verdicts.map(({ beside }) => beside)).toContain('8 AWG');
  const drops = rows.filter(({ verdict }) => verdict === 'pass').map(({ found }) => found[0] as number);
  expect(Math.max(...drops)).toBeLessThanOrEqual(0.5);
});

test('a value that there cannot be is told in its row and not taken', () => {
  const odd = [vary('feed.main.length=1 m, 3 kg, 900 m')];
  const found = [0, 1, 2].map((i) =>
    pointOf(design(v8), 'metric', odd, ['worst_drop'], valuesAt(odd, i), run),
  );
  expect(found.map(({ verdict }) => verdict)).toEqual(['pass', 'refused', 'refused']);
  expect(found[1]?.why.join()).toContain('found "3 kg"');
  const report = studyReport({ design: design(v8), vary: odd, shown: shown.slice(0, 1), rows: found });
  expect(report).toContain('There is no design at some points');
  expect(Math.max(...report.split('\n').map((line) => [...line].length))).toBeLessThanOrEqual(80);
});

test('a design that fails is studied as well', () => {
  const thin = design(v8.replace('drop: 0.5 V', 'drop: 0.05 V'));
  const one = [vary('feed.main.length=1 m, 2 m')];
  const found = [0, 1].map((i) =>
    pointOf(thin, 'metric', one, ['worst_drop', 'drop_limit'], valuesAt(one, i), run),
  );
  // No sizes drop as little: there is no drop to be told.
  expect(found.map(({ verdict, found: own }) => [verdict, ...own])).toEqual([
    ['fail', null, 0.05],
    ['fail', null, 0.05],
  ]);
});
