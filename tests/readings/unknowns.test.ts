/** Unknown parts, against the same install with the part stated: one design for each possibility. */
import { describe, expect, test } from 'vitest';
import { checked } from '../../src/readings/check.ts';
import { run } from '../../src/run.ts';
import { design } from '../design/helpers.ts';
import { caseText } from './cases.ts';

const sound = caseText('corroded-return').replace(/measured:[\s\S]*/, '');
/** The sound feed with a drop of this size. */
const withDrop = (gauge: string): string => sound.replace('gauge: 14 AWG', `gauge: ${gauge}`);
const check = (text: string) => checked(run(design(text)));

describe('an unknown size', () => {
  const found = check(withDrop('unknown'));
  const [open] = found.open;

  test('what hangs on it is what differs between stated sizes', () => {
    // The ends, and two between: enough that every rule that can turn has turned.
    const stated = ['22 AWG', '18 AWG', '14 AWG', '4/0 AWG'].map(
      (gauge) => run(design(withDrop(gauge))).findings,
    );
    const key = ({ rule, subject }: { rule: string; subject: string }): string => `${rule} ${subject}`;
    const verdicts = new Map<string, Set<string>>();
    for (const f of stated.flat()) verdicts.set(key(f), (verdicts.get(key(f)) ?? new Set()).add(f.verdict));
    const turning = [...verdicts].filter(([, seen]) => seen.size > 1).map(([rule]) => rule);
    // A rule about chosen sizes applies to a stated one no more.
    const comparable = (open?.decides ?? []).map(key).filter((rule) => verdicts.has(rule));
    expect(comparable.sort()).toEqual(turning.sort());
  });

  test('what it decides is unknown, the rest stands', () => {
    expect(found.verdict).toBe('unknown');
    expect(found.result.findings.some((f) => f.verdict === 'fail')).toBe(false);
    expect(found.result.findings.filter((f) => f.verdict === 'pass').length).toBeGreaterThan(15);
  });

  test('the size from which all pass is offered: with it they do, with the next thinner they do not', () => {
    const [offered] = open?.offered ?? [];
    const sizes = open?.options ?? [];
    const thinner = sizes[sizes.indexOf(offered ?? '') - 1] as string;
    const rules = (open?.decides ?? []).map(({ rule }) => rule);
    const passes = (gauge: string): boolean =>
      run(design(withDrop(gauge))).findings.every((f) => !rules.includes(f.rule) || f.verdict === 'pass');
    expect(passes(offered as string)).toBe(true);
    expect(passes(thinner)).toBe(false);
  });

  test('a reading narrows it down, and never away from the size that is there', () => {
    // 14 AWG, 0.5 m, two joints: as the simulator shows it in docs/cases.md, and within a third of that.
    for (const meter of ['6.7 mV', '5.5 mV', '8.0 mV']) {
      const text = `${withDrop('unknown')}measured:\n  - { what: drop, run: branch, coil: 1, point: limiter, meter: ${meter} }\n`;
      const [one] = check(text).open;
      expect(one?.consistent).toContain('14 AWG');
      expect((one?.consistent ?? []).length).toBeLessThan(8);
    }
  });
});

test('an unknown relay: nothing about it passes', () => {
  const text = sound.replace(/ {4}relay:\n(?: {6}.*\n)+/, '    relay: unknown\n');
  const found = check(text);
  const about = found.result.findings.filter(({ rule }) => rule.startsWith('relay_'));
  expect(about.length).toBeGreaterThan(2);
  // What would only be advice stays that.
  expect(about.filter((f) => !['unknown', 'advice'].includes(f.verdict))).toEqual([]);
  expect(found.open[0]?.unknown.kind).toBe('relay');
  expect(found.verdict).toBe('unknown');
});

test('an unknown type of fuse: every type that has the rating', () => {
  const found = check(sound.replace('{ type: C, rating: 15 A,', '{ type: unknown, rating: 20 A,'));
  // ISO 8820-3 (printed): 20 A exists as C, F and E; SF 30 begins with 30 A.
  expect([...(found.open[0]?.options ?? [])].sort()).toEqual(['C', 'E', 'F']);
});

test('an unknown bundle: the largest one with which all pass', () => {
  const text = sound.replace('    bundle: 2\n', '    bundle: unknown\n');
  const [open] = check(text).open;
  const stated = (bundle: string): boolean =>
    run(design(sound.replace('    bundle: 2\n', `    bundle: ${bundle}\n`))).verdict === 'pass';
  const passing = ['1', '3', '4', '7', '25'].filter(stated);
  if (open?.decides.length === 0) expect(passing).toHaveLength(5);
  else expect(open?.offered).toEqual(passing.slice(-1));
});

test('the unknown that decides most stands first', () => {
  const text = withDrop('unknown').replace(/ {4}relay:\n(?: {6}.*\n)+/, '    relay: unknown\n');
  const counts = check(text).open.map(({ decides }) => decides.length);
  expect(counts).toHaveLength(2);
  expect([...counts].sort((a, b) => b - a)).toEqual(counts);
});
