/** Cures for a conductor that its fuse does not protect: each that is named helps. */
import { beforeAll, expect, test } from 'vitest';
import { samples } from '../samples.ts';
import { judge, runAt } from './feeds.ts';
import { dice } from './random.ts';
import { ampacityOf, ratingsOf, SERIES } from './truth.ts';
import { branchDesign, type Case, examine } from './windows.ts';

const DESIGNS = samples(48);
const cases: Case[] = [];
beforeAll(() => {
  for (let seed = 1; seed <= DESIGNS; seed++) cases.push(...examine(seed));
});

const failing = (): Case[] =>
  cases.filter(({ judged, feed }) => {
    const subject = judged.e.design.runs[feed]?.name ?? '';
    return judged.finding('curves', subject).verdict === 'fail';
  });

test('the fuse that is named carries the load and does not exceed the ampacity', () => {
  let met = 0;
  for (const { judged, feed, seed } of failing()) {
    const run = judged.e.design.runs[feed];
    if (!run) throw new Error('no run');
    const amps = ampacityOf(run.gauge, run) ?? Number.NaN;
    const load = judged.number('run_effective', { run: feed });
    const allowed = 0.75 * (1 - 0.002 * (run.ambient - 25));
    const fitting = ratingsOf('C').filter((rating) => rating * allowed >= load && rating <= amps);
    const named = judged.e.number('cure_fuse', { feed });
    // The smallest of those that fit; none where none fits.
    expect(named, `${seed} ${run.name}`).toBe(fitting[0] ?? null);
    if (named === null) continue;
    met += 1;
    expect(judged.words(judged.finding('curves', run.name))).toContain(`a fuse of ${named} A `);
  }
  expect(met).toBeGreaterThan(5);
});

test('with the size that is named the run is covered, with the next smaller one it is not', () => {
  let met = 0;
  for (const { judged, feed, seed } of failing().slice(0, 14)) {
    const run = judged.e.design.runs[feed];
    if (run?.name !== 'branch') continue;
    const rating = judged.number('run_fuse', { run: feed });
    const sizes = SERIES[judged.e.design.sizes.series] as readonly string[];
    const covered = (gauge: string): boolean => {
      // A fuse for everything that lies behind it: ampacity not below its rating, the other rule apart.
      if ((ampacityOf(gauge, run) ?? 0) < rating * (1 - 1e-12)) return false;
      const design = structuredClone(branchDesign(dice(seed))) as { feed: { gauge: string }[] };
      (design.feed[feed] as { gauge: string }).gauge = gauge;
      const cured = judge(design);
      return (['fault_opens', 'curves'] as const).every(
        (rule) => cured.finding(rule, 'branch').verdict === 'pass',
      );
    };
    const named = judged.e.value('cure_gauge', { feed });
    if (named === null) {
      expect(covered(sizes.at(-1) as string), `${seed}: the largest`).toBe(false);
      continue;
    }
    expect(covered(String(named)), `${seed} ${named}`).toBe(true);
    const smaller = sizes[sizes.indexOf(String(named)) - 1];
    if (smaller !== undefined) expect(covered(smaller), `${seed} ${smaller}`).toBe(false);
    met += 1;
  }
  expect(met).toBeGreaterThan(3);
});

test('with the current limit that is named a driver stuck on does no harm', () => {
  let met = 0;
  for (const { judged, feed, seed, stuck } of failing()) {
    const { e } = judged;
    const name = e.design.runs[feed]?.name ?? '';
    const before = e.grid.axes.window.some((_, window) => e.number('window_stuck', { feed, window }) === 1);
    if (!before) continue;
    const limit = judged.number('cure_limit', { feed });
    expect(limit).toBeLessThan(stuck);
    const given = e.design.coil.current_limit;
    // "Below" it: a thousandth less.
    e.set('current_limit', {}, limit * 0.999);
    const after = e.grid.axes.window.some((_, window) => e.number('window_stuck', { feed, window }) === 1);
    const verdict = judged.finding('stuck_driver', name).verdict;
    e.set('current_limit', {}, given);
    expect(after, `${seed} ${name}, limit ${limit}`).toBe(false);
    expect(verdict, `${seed} ${name}, limit ${limit}`).toBe('pass');
    met += 1;
  }
  expect(met).toBeGreaterThan(3);
});

test('with the fuse that is named at its head the run is without a cause', () => {
  let met = 0;
  for (const { judged, feed } of failing().slice(0, 12)) {
    const named = judged.e.number('cure_fuse', { feed });
    if (named === null || feed === 0) continue;
    const seed = cases.find((c) => c.judged === judged)?.seed ?? 0;
    const design = structuredClone(branchDesign(dice(seed))) as {
      feed: { fuse?: unknown }[];
    };
    const branch = design.feed[feed];
    if (!branch) throw new Error('no branch');
    branch.fuse = { type: 'C', rating: `${named} A` };
    const cured = judge(design);
    expect(cured.finding('fuse_conductor', 'branch').verdict, `${seed}`).toBe('pass');
    expect(cured.finding('fuse_load', 'branch').verdict, `${seed}`).toBe('pass');
    expect(cured.finding('curves', 'branch').verdict, `${seed}`).toBe('pass');
    expect(runAt(cured.e, 'branch')).toBe(feed);
    met += 1;
  }
  expect(met).toBeGreaterThan(2);
});
