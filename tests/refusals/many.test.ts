/** More of something than a design may hold; the texts are too long to be written out as cases. */
import { describe, expect, test } from 'vitest';
import { readDesign } from '../../src/design/read.ts';
import { base } from '../design/helpers.ts';

const times = (n: number, make: (i: number) => string): string =>
  Array.from({ length: n }, (_, i) => make(i)).join('');
const run = (name: string, carries: string): string =>
  `  - { run: ${name}, carries: ${carries}, length: 1 m, ambient: 60 degC, insulation: C, gauge: auto }\n`;
const feed = (runs: string): [string, string] => ['\nfeed:\n', `\nfeed:\n${runs}`];

/** What is said about the text, `key: found`. */
const said = (text: string): string[] => {
  const result = readDesign(text, 'design.yaml');
  return result.ok ? [] : result.problems.map((p) => `${p.key}: ${p.found}; ${p.taken}`);
};

const ORDER = 'firing_order: [1, 3, 4, 2]';
const SIXTEEN = `firing_order: [${Array.from({ length: 16 }, (_, i) => i + 1).join(', ')}]`;

describe('the most of a thing passes, one more does not', () => {
  // The base has two feed runs and one return run: 21 more make 24.
  test('runs', () => {
    expect(said(base(feed(times(21, (i) => run(`r${i}`, 'all')))))).toEqual([]);
    expect(said(base(feed(times(22, (i) => run(`r${i}`, 'all')))))).toEqual([
      'return: 25 runs; allowed: at most 24, feed and return together',
    ]);
    expect(said(base(feed(times(23, (i) => run(`r${i}`, 'all')))))).toEqual([
      'feed: found a list; takes 1 to 24 runs, not 25',
    ]);
  });

  // The base has 1 + 4 + 1 conductors. With 16 coils it has 18; two more runs for each coil make 50, three make 66.
  test('conductors', () => {
    const sixteen = (n: number): string =>
      base(
        ['cylinders: 4', 'cylinders: 16'],
        [ORDER, SIXTEEN],
        // Before the strap, in which all coils come together.
        ['\nreturn:\n', `\nreturn:\n${times(n, (i) => run(`r${i}`, 'each'))}`],
      );
    expect(said(sixteen(2))).toEqual([]);
    expect(said(sixteen(3))).toEqual(['feed: 66 conductors; allowed: at most 64, feed and return together']);
  });

  test('points', () => {
    const points = (n: number): string =>
      base(['points:\n', `points:\n${times(n, (i) => `  - { name: p${i}, rpm: 900 rpm, supply: 14 V }\n`)}`]);
    expect(said(points(22))).toEqual([]);
    expect(said(points(23))).toEqual(['points: found a list; takes 1 to 24 points, not 25']);
  });

  const listed = (coils: number, firings: number): string => {
    const angles = Array.from({ length: firings }, (_, i) => i * 10).join(', ');
    const list = times(coils, (i) => `{ id: c${i}, fires_at: [${angles}] }, `);
    return base(['layout: coil_per_cylinder', `layout: listed\n  coils: [${list}]`]);
  };

  test('coils', () => {
    expect(said(listed(16, 1))).toEqual([]);
    expect(said(listed(17, 1))).toEqual(['ignition.coils: found a list; takes 1 to 16 coils, not 17']);
  });

  test('firings', () => {
    expect(said(listed(4, 16))).toEqual([]);
    expect(said(listed(5, 16))).toEqual(['ignition.coils: 80 firings in a cycle; allowed: at most 64']);
    expect(said(listed(1, 17))).toEqual([
      'ignition.coils[0].fires_at: found a list; takes 1 to 16 crank angles, not 17',
    ]);
  });

  test('letters of a title and of a name', () => {
    expect(said(base(['title: Base', `title: ${'x'.repeat(200)}`]))).toEqual([]);
    expect(said(base(['title: Base', `title: ${'x'.repeat(201)}`]))).toHaveLength(1);
    expect(said(base(['run: drop', `run: ${'x'.repeat(40)}`]))).toEqual([]);
    expect(said(base(['run: drop', `run: ${'x'.repeat(41)}`]))).toHaveLength(1);
  });
});
