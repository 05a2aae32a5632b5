/** Installs: against hand arithmetic, against the spreadsheet engine, and against the worst corners. */
import { expect, test } from 'vitest';
import type { Design } from '../../src/design/design.ts';
import { evaluate } from '../../src/engine/evaluate.ts';
import { spread as laid } from '../../src/engine/spreadsheet.ts';
import { builtOf } from '../../src/spread/built.ts';
import type { Model } from '../../src/spread/coils.ts';
import type { Input } from '../../src/spread/inputs.ts';
import { Installs } from '../../src/spread/install.ts';
import { Sequence } from '../../src/spread/sequence.ts';
import { blockOf, Gathering, installsOf } from '../../src/spread/spread.ts';
import { DEMOS, demo, design } from '../design/helpers.ts';
import { samples } from '../samples.ts';

/** Two coils of which only the peak current is known: a current that no tolerance moves, so that the drop is a sum. */
const CHAIN = `
coilfeed: 1
title: A chain of two runs
engine: { cylinders: 2, stroke: 4, firing_order: [1, 2] }
ignition: { layout: coil_per_cylinder, dwell: 2 ms }
coil: { resistance: 0.5 ohm, peak: 10 A }
points: [{ name: idle, rpm: 900 rpm, supply: 14 V }]
feed:
  - { run: main, carries: all, length: 3 m, ambient: 40 degC, insulation: C, gauge: 12 AWG, joints: 4 }
  - { run: branch, carries: each, length: { 1: 1 m, 2: 0.2 m }, ambient: 40 degC, insulation: C, gauge: 16 AWG, joints: 3 }
tolerance: { length: 10 %, joint_resistance: 50 %, supply: 0 %, ambient: 0 K, dwell: 0 % }
`;

/** Two coils whose charges do not meet, each with an inductance. */
const PAIR = CHAIN.replace('peak: 10 A', 'inductance: 2 mH').replace(
  'dwell: 0 %',
  'dwell: 0 %, coil_warmer: 0 K',
);

const places = (inputs: readonly Input[], of: (input: Input, i: number) => number): number[] =>
  inputs.map(of);

test('propagation of errors by hand: the drop of a chain, its variance and the share of each part', () => {
  const chain = design(CHAIN);
  const e = evaluate(chain);
  // Coil 1 has the long branch: its path has the worst drop. A current of 10 A through copper and joints.
  const parts = [
    { group: 'length of main', ohm: e.number('wire_copper_ohm', { wire: 0 }) as number, tolerance: 0.1 },
    { group: 'length of branch', ohm: e.number('wire_copper_ohm', { wire: 1 }) as number, tolerance: 0.1 },
    { group: 'joints of main', ohm: 4 * 0.3e-3, tolerance: 0.5 },
    { group: 'joints of branch', ohm: 3 * 0.3e-3, tolerance: 0.5 },
  ];
  // 3 m of 12 AWG, 3.309 mm², at 17.241 Ω·mm²/km: 15.6 mΩ at 20 °C, 1.08 times that at 40 °C.
  expect(parts[0]?.ohm).toBeCloseTo(16.9e-3, 3);
  const variances = parts.map(({ ohm, tolerance }) => (10 * ohm * tolerance) ** 2 / 3);
  const all = variances.reduce((a, b) => a + b);
  const count = 4000;
  const gathering = new Gathering(chain, 'pass', 1, count);
  const installs = installsOf(chain);
  const block = blockOf(installs, new Sequence(installs.inputs.length, 1), 0, count);
  gathering.take(block);
  const drops = Array.from({ length: count }, (_, i) => block.figures[i * installs.figures.length] as number);
  const mean = drops.reduce((a, b) => a + b) / count;
  const variance = drops.reduce((sum, drop) => sum + (drop - mean) ** 2, 0) / (count - 1);
  expect(mean).toBeCloseTo(10 * parts.reduce((sum, { ohm }) => sum + ohm, 0), 3);
  // Evenly spread points: the variance of a sum is met within 3 %.
  expect(Math.abs(variance / all - 1)).toBeLessThan(0.03);
  const [drop] = gathering.spread().figures;
  for (const [i, { group }] of parts.entries()) {
    const share = drop?.shares.find((one) => one.group === group)?.share ?? Number.NaN;
    expect(Math.abs(share - (variances[i] as number) / all), group).toBeLessThan(0.03);
  }
});

test('each coil has its own currents: the drop by hand for two coils of which one is off', () => {
  const pair = design(PAIR);
  const installs = installsOf(pair);
  const { inputs } = installs;
  const off = (kind: Input['kind'], index: number) =>
    inputs.findIndex((one) => one.kind === kind && one.index === index);
  const at = places(inputs, () => 0.5);
  // Coil 1 has 10 % less resistance and 10 % less inductance.
  at[off('coil_resistance', 0)] = 0;
  at[off('coil_inductance', 0)] = 0;
  const { figures, weakest } = installs.outcome(at);
  const e = evaluate(pair);
  const [ohm, henry] = [0.45, 1.8e-3];
  const peak = (14 / ohm) * (1 - Math.exp((-2e-3 * ohm) / henry));
  const path = (e.number('wire_ohm', { wire: 0 }) as number) + (e.number('wire_ohm', { wire: 1 }) as number);
  const figure = (key: string): number =>
    figures[installs.figures.findIndex((one) => one.key === key)] as number;
  expect(figure('peak')).toBeCloseTo(peak, 9);
  // The runs are a little warmer than with coils as designed: 0.1 % of their resistance.
  expect(Math.abs(figure('drop') / (path * peak) - 1)).toBeLessThan(2e-3);
  // Behind its path coil 2 keeps I = V/(R + R_p)·(1 − e^(−t(R + R_p)/L)); coil 1 of the longer path keeps more energy.
  expect(weakest).toBe(1);
});

test('in the middle of all tolerances an install is the design', () => {
  for (const name of DEMOS) {
    const built = builtOf(evaluate(design(demo(name))));
    const e = evaluate(built);
    const installs = installsOf(built);
    const { figures } = installs.outcome(
      places(installs.inputs, ({ kind }) => (kind === 'coil_warmer' ? 0 : 0.5)),
    );
    expect(figures[0], name).toBeCloseTo(e.number('worst_drop') as number, 12);
    const kept = design(demo(name)).coils.flatMap((_, coil) =>
      built.points.map((__, point) => e.number('energy_kept', { coil, point }) as number),
    );
    expect(figures[1], name).toBeCloseTo(Math.min(...kept), 12);
  }
});

test('no install is beyond the worst corners of all tolerances', () => {
  const installs = installsOf(design(demo('pair-four')));
  const { inputs } = installs;
  const kinds = [...new Set(inputs.map(({ kind }) => kind))];
  const corners = Array.from(
    { length: 2 ** kinds.length },
    (_, bits) =>
      installs.outcome(places(inputs, ({ kind }) => ((bits >> kinds.indexOf(kind)) & 1 ? 1 : 0)))
        .figures[0] as number,
  );
  const [least, most] = [Math.min(...corners), Math.max(...corners)];
  const block = blockOf(installs, new Sequence(inputs.length, 2), 0, 300);
  const drops = Array.from({ length: 300 }, (_, i) => block.figures[i * installs.figures.length] as number);
  expect(Math.min(...drops)).toBeGreaterThan(least);
  expect(Math.max(...drops)).toBeLessThan(most);
  // They are not so far apart that anything would do.
  expect(most / least).toBeLessThan(4);
});

/** A design with few firings and no sweep, so that the spreadsheet engine has little to recalculate. */
const small = (): Design => builtOf(evaluate(design(demo('pair-four'))));

test('installs through the spreadsheet engine: the same figures, and the same rules hold', () => {
  const built = small();
  const [feed, alike] = [laid(built), laid(built)];
  const asked = (of: typeof feed): Model => ({
    asker: (name, at) => () => of.value(name, at) as number | null,
    setAll: of.setAll,
  });
  const cells = new Installs(built, evaluate(built).grid, asked(alike), asked(feed));
  const compiled = installsOf(built);
  const sequence = new Sequence(compiled.inputs.length, 1);
  const at = new Float64Array(compiled.inputs.length);
  for (let i = 0; i < samples(50); i++) {
    sequence.point(i, at);
    const [a, b] = [cells.outcome(at), compiled.outcome(at)];
    for (const [k, { key }] of compiled.figures.entries()) {
      const [x, y] = [a.figures[k] as number, b.figures[k] as number];
      // As all cells are held against the compiled model; a margin near 0 is the difference of two numbers near 1.
      expect(Math.abs(x - y), `${key} of install ${i}`).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(y)));
    }
    expect([a.passes, a.weakest]).toEqual([b.passes, b.weakest]);
  }
});

test('a design that fails is spread as well', () => {
  const thin = design(demo('two-bank-v8').replace('drop: 0.5 V', 'drop: 0.05 V'));
  const gathering = new Gathering(thin, 'fail', 1, 20);
  const installs = installsOf(thin);
  gathering.take(blockOf(installs, new Sequence(installs.inputs.length, 1), 0, 20));
  const { passing, figures, samples: count } = gathering.spread();
  expect([passing, count]).toEqual([0, 20]);
  expect(figures[0]?.median).toBeGreaterThan(0.05);
});
