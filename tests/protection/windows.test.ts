/** Currents at which a fuse is slower than its conductor, against a dense scan, and what may draw them. */
import { beforeAll, describe, expect, test } from 'vitest';
import { overall } from '../../src/findings/read.ts';
import { toJson } from '../../src/writers/json.ts';
import { samples } from '../samples.ts';
import { ampacityOf, limitsOf, openingOf, sizeOf, soundAt } from './truth.ts';
import { type Case, examine, type Window } from './windows.ts';

const DESIGNS = samples(64);
/** Ends of a window: what is required, and what is wanted. */
const REQUIRED = 0.02;

const cases: Case[] = [];
beforeAll(() => {
  for (let seed = 1; seed <= DESIGNS; seed++) cases.push(...examine(seed));
});

/** Ends of both lists, one by one. Windows narrower than a thousandth count for nothing. */
const wide = (windows: Window[]): Window[] => windows.filter(({ from, to }) => to / from > 1.001);
const worstEnd = (a: Window[], b: Window[]): number =>
  a.length === b.length
    ? Math.max(
        0,
        ...a.flatMap((w, i) => [
          Math.abs(Math.log(w.from / (b[i]?.from ?? 0))),
          Math.abs(Math.log(w.to / (b[i]?.to ?? 0))),
        ]),
      )
    : Infinity;
const show = (windows: Window[]): string =>
  windows.map(({ from, to }) => `${from.toFixed(2)} to ${to.toFixed(2)} A`).join(', ') || 'none';
const told = ({ seed, feed, model, truth }: Case): string =>
  `design ${seed}, run ${feed}: model ${show(model)}; scan ${show(truth)}`;

describe('windows', () => {
  test('are met and missed', () => {
    // Thin branches mostly have one, thick main conductors mostly none.
    expect(cases.filter(({ truth }) => truth.length > 0).length).toBeGreaterThan(30);
    expect(cases.filter(({ truth }) => truth.length === 0).length).toBeGreaterThan(20);
    // Beyond the last limit neither curve gains on the other any more: no second window opens there.
    expect(cases.every(({ truth }) => truth.length < 2)).toBe(true);
  });

  test('end where the scan finds the ends, within 2 %', () => {
    expect(
      cases.filter(({ model, truth }) => worstEnd(wide(model), wide(truth)) > REQUIRED).map(told),
    ).toEqual([]);
  });

  test('in the JSON, for each conductor up to its own fault current', () => {
    const { judged } = cases[0] as Case;
    for (const { judged: j } of cases.filter(({ feed }) => feed === 1)) {
      const json = toJson({ evaluation: j.e, findings: [], verdict: overall([]) }) as {
        runs: { run: string; fault_max_A: number; unprotected: { from_A: number; to_A: number }[] }[];
      };
      for (const run of json.runs)
        for (const { from_A, to_A } of run.unprotected) {
          expect(from_A).toBeLessThanOrEqual(to_A);
          expect(to_A).toBeLessThanOrEqual(run.fault_max_A);
        }
    }
    expect(judged.e.grid.axes.window.length).toBeGreaterThan(1);
  });
});

describe('causes', () => {
  const within = (amps: number, { from, to }: Window): boolean => amps >= from && amps <= to;
  /** Too close to an end to say on which side of it. */
  const close = (amps: number, windows: Window[]): boolean =>
    windows.some(({ from, to }) => [from, to].some((end) => Math.abs(Math.log(amps / end)) < REQUIRED));

  test('a driver stuck on', () => {
    let met = 0;
    for (const one of cases) {
      if (close(one.stuck, one.truth)) continue;
      const expected = one.truth.some((window) => within(one.stuck, window));
      const found = one.judged.e.grid.axes.window.some(
        (_, window) => one.judged.e.number('window_stuck', { feed: one.feed, window }) === 1,
      );
      expect(found, `${told(one)}; stuck ${one.stuck}`).toBe(expected);
      met += expected ? 1 : 0;
    }
    expect(met).toBeGreaterThan(3);
  });

  test('a short', () => {
    let met = 0;
    for (const one of cases) {
      // The largest fault current is where the scan ends: only the other ends can be too close.
      const { from, to } = one.short;
      const near = (a: number, b: number): boolean => Math.abs(Math.log(a / b)) < REQUIRED;
      if (one.truth.some((window) => near(from, window.to) || near(to, window.from))) continue;
      const expected = one.truth.some(({ from, to }) => one.short.from <= to && one.short.to >= from);
      const found = one.judged.e.grid.axes.window.some(
        (_, window) => one.judged.e.number('window_short', { feed: one.feed, window }) === 1,
      );
      expect(found, `${told(one)}; short ${show([one.short])}`).toBe(expected);
      met += expected ? 1 : 0;
    }
    expect(met).toBeGreaterThan(3);
  });

  test('the finding fails exactly when a short may draw a current in a window, and gives both times', () => {
    let [failing, passing] = [0, 0];
    for (const { judged, feed, seed, truth, short } of cases) {
      const subject = judged.e.design.runs[feed]?.name ?? '';
      const finding = judged.finding('curves', subject);
      // The scan has a hundred thousand steps over its range: an end is known to a ten-thousandth.
      const near = (a: number, b: number): boolean => Math.abs(Math.log(a / b)) < 1e-4;
      if (truth.some(({ from, to }) => near(short.from, to) || near(short.to, from))) continue;
      const expected = truth.some(({ from, to }) => short.from <= to && short.to >= from);
      // Below 1.1 of its rating the scan does not start; there the fuse need not open at all.
      const opens = judged.finding('fault_opens', subject).verdict === 'pass';
      if (!opens) continue;
      expect(finding.verdict, `${seed} ${subject}`).toBe(expected ? 'fail' : 'pass');
      expect(judged.words(finding)).toMatch(/far end .* fuse .* conductor .* near end/);
      if (expected) failing += 1;
      else passing += 1;
    }
    expect(failing).toBeGreaterThan(10);
    expect(passing).toBeGreaterThan(20);
  });

  test('a driver stuck on that no fuse ends and the conductor does not withstand fails in any case', () => {
    let failing = 0;
    for (const one of cases) {
      const { judged, feed, stuck } = one;
      const run = judged.e.design.runs[feed];
      const fuse = judged.e.design.runs[0]?.fuse;
      if (!run || !fuse || fuse.rating === 'auto') throw new Error('stated');
      const conductor = {
        ...limitsOf(run.insulation),
        ...sizeOf(run.gauge),
        ambient: run.ambient,
        amps: ampacityOf(run.gauge, run) ?? Number.NaN,
      };
      const from = judged.number('load_T', { run: feed });
      // The fuse is read at this coil alone; what the others draw heats besides.
      const opens = Math.min(86_400, openingOf(fuse.type, fuse.rating, stuck));
      const rms = judged.number('stuck_rms', { run: feed });
      // Where a thousandth of the current changes the answer it may fall to either side.
      const sound = [0.999, 1, 1.001].map((by) => soundAt(conductor, from, rms * by, opens));
      if (new Set(sound).size > 1) continue;
      const finding = judged.finding('stuck_driver', run.name);
      expect(finding.verdict, `${one.seed} ${run.name}`).toBe(sound[1] ? 'pass' : 'fail');
      failing += sound[1] ? 0 : 1;
    }
    expect(failing).toBeGreaterThan(3);
  });
});
