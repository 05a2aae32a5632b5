/** Advice: what it is given for, where it stands, and that it leaves the verdict on the whole alone. */
import { describe, expect, test } from 'vitest';
import { readDesign } from '../../src/design/read.ts';
import { overall } from '../../src/findings/read.ts';
import { RULES, type Rule } from '../../src/findings/rules.ts';
import { run } from '../../src/run.ts';
import { report } from '../../src/writers/report.ts';
import { designOf, judge } from './feeds.ts';

const ORDER = ['fail', 'unknown', 'advice', 'pass'];
const fusedWith = (type: string, rating: string): object =>
  designOf({ feed: [{ run: 'main', gauge: '6 AWG', fuse: { type, rating } }] });

describe('a rating of a fuse that its list does not have', () => {
  // The standard lists type E from 20 A to 80 A; 22 A and 35 A are not among them, 100 A is sold beyond the list.
  test.each([
    ['E', '30 A', 'pass'],
    ['E', '22 A', 'advice'],
    ['E', '35 A', 'advice'],
    ['E', '100 A', 'advice'],
    ['C', '35 A', 'pass'],
    ['SF30', '35 A', 'advice'],
  ] as const)('type %s of %s: %s', (type, rating, verdict) => {
    const { finding, words } = judge(fusedWith(type, rating));
    const found = finding('fuse_listed', 'main');
    expect(found.verdict).toBe(verdict);
    if (verdict === 'advice')
      expect(words(found)).toContain(`${rating.replace(' ', ' ')} is not on the list`);
  });

  test('advice stands before what passes, and does not change the verdict or the count of failures', () => {
    const read = readDesign(JSON.stringify(fusedWith('E', '22 A')), 'design.json');
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    const result = run(read.design);
    const places = result.findings.map((f) => ORDER.indexOf(f.verdict));
    expect(places).toEqual([...places].sort((a, b) => a - b));
    expect(result.findings.some((f) => f.verdict === 'advice')).toBe(true);
    const without = result.findings.filter((f) => f.verdict !== 'advice');
    expect(overall(result.findings)).toBe(overall(without));
    expect(report(result)).toMatch(/, \d advice, \d+ pass/);
  });
});

test('advice that cannot be worked out is advice with the words of an unknown, and never an unknown', () => {
  const { e, finding, words } = judge(fusedWith('E', '22 A'));
  // A division by nothing inside the rating.
  e.set('fuse_given', { run: 0 }, 'auto');
  e.set('coil_ohm_20', {}, 0);
  const found = finding('fuse_listed', 'main');
  expect([found.verdict, found.value]).toEqual(['advice', null]);
  expect(words(found)).toBe('The rating of the fuse is not known.');
});

test('a number that is not finite is never compared', () => {
  const { e, found } = judge(
    designOf({
      feed: [{ run: 'main', gauge: '6 AWG', fuse: { type: 'E', rating: '30 A' } }],
      coil: { resistance: '0.5 ohm', inductance: '3 mH' },
    }),
  );
  e.set('coil_ohm_20', {}, 0);
  for (const rule of ['drop', 'wire_load', 'fuse_load', 'stuck_driver'] as const)
    for (const f of found(rule)) expect([rule, f.value === null, f.verdict]).toEqual([rule, true, 'unknown']);
});

test('a rule that is advice says so in its record, and only such rules give advice', () => {
  const { e, found } = judge(fusedWith('E', '22 A'));
  expect(e).toBeDefined();
  for (const id of Object.keys(RULES) as (keyof typeof RULES)[])
    for (const f of found(id))
      if ((RULES[id] as Rule).advice) expect(['advice', 'pass']).toContain(f.verdict);
      else expect(f.verdict).not.toBe('advice');
});

describe('a type of cable in a size that it is not made in', () => {
  // 8 SAE are 14810 circular mils, 7.50 mm²; 6 SAE are 24538, 12.43 mm².
  test.each([
    ['TXL', '8 SAE', 'pass'],
    ['TXL', '6 SAE', 'advice'],
    ['GPT', '10 mm2', 'advice'],
    ['SGX', '6 SAE', 'pass'],
    ['SGX', '8 SAE', 'advice'],
  ] as const)('%s in %s: %s', (insulation, gauge, verdict) => {
    const { finding, words } = judge(designOf({ feed: [{ run: 'main', insulation, gauge }] }));
    const found = finding('cable_made', 'main');
    expect(found.verdict).toBe(verdict);
    if (verdict === 'advice')
      expect(words(found)).toContain(
        insulation === 'SGX' ? 'battery cable, customarily' : 'primary cable, customarily',
      );
  });

  test('a class letter names no cable', () =>
    expect(judge(designOf({ feed: [{ run: 'main', gauge: '2 AWG' }] })).found('cable_made')).toEqual([]));
});
