/** Causes of every kind, on circuits with the cause put in: what is found, and what cannot be told apart. */
import { describe, expect, test } from 'vitest';
import type { Instrument, Measured, What } from '../../src/design/design.ts';
import { evaluate } from '../../src/engine/evaluate.ts';
import { type Cause, diagnose } from '../../src/readings/diagnose.ts';
import { judge } from '../../src/readings/judge.ts';
import { circuitAt } from '../../src/transient/circuit.ts';
import { wireFigures } from '../../src/transient/figures.ts';
import { steady } from '../../src/transient/steady.ts';
import { demo, design } from '../design/helpers.ts';
import { shown } from './perturbed.ts';

const e = evaluate(design(demo('hill-climb-six')));
const wire = (id: string): number => e.design.wires.findIndex((w) => w.id === id);
const coil = (id: string): number => e.design.coils.findIndex((c) => c.id === id);
const point = (name: string): number => e.design.points.findIndex((p) => p.name === name);

interface Place {
  what: What;
  instrument: Instrument;
  run?: string;
  coil?: string;
  at: string;
}

/** Readings without errors where `more` ohms were put into conductors, and all coils draw `draw` times as much. */
function readings(places: readonly Place[], more: Record<string, number> = {}, draw = 1): Measured[] {
  return places.map((place): Measured => {
    const where = {
      what: place.what,
      instrument: place.instrument,
      wire: place.run === undefined ? null : wire(place.run),
      coil: place.coil === undefined ? null : coil(place.coil),
      point: point(place.at),
    };
    const circuit = circuitAt(e, where.point);
    const course = steady({
      ...circuit,
      wires: circuit.wires.map((w, i) => ({ ...w, ohm: w.ohm + (more[e.design.wires[i]?.id ?? ''] ?? 0) })),
    });
    const value = shown(course, where);
    return { ...where, path: 'measured', value: place.what === 'supply' ? value : value * draw };
  });
}

const drop = (run: string, at: string, instrument: Instrument = 'meter'): Place => ({
  what: 'drop',
  instrument,
  run,
  at,
});
const clamp = (at: string, run = 'main'): Place => ({
  what: 'current',
  instrument: 'clamp_average',
  run,
  at,
});
const runs = ['main', 'engine strap', ...['1', '5', '3'].flatMap((c) => [`branch.${c}`, `coil ground.${c}`])];
const card = ['idle', 'limiter'].flatMap((at) => [...runs.map((run) => drop(run, at)), clamp(at)]);

const named = (cause: Cause): string =>
  cause.kind === 'resistance'
    ? (e.design.wires[cause.wire ?? -1]?.id ?? 'source')
    : cause.kind === 'draw'
      ? `draw ${cause.coil}`
      : `reading ${cause.reading} ${cause.instrument}`;

test('a sound install has no cause', () => {
  expect(diagnose(e, readings(card)).causes).toEqual([]);
});

test('two faults at a time: both, with their sizes', () => {
  const { causes } = diagnose(e, readings(card, { main: 0.03, 'coil ground.3': 0.06 }));
  const sizes = Object.fromEntries(
    causes.map(({ cause }) => [named(cause), cause.kind === 'resistance' ? cause.ohm : 0]),
  );
  expect(Object.keys(sizes).sort()).toEqual(['coil ground.3', 'main']);
  // Readings without errors; what tolerances could be else pulls a few percent.
  expect(Math.abs((sizes.main ?? 0) / 0.03 - 1)).toBeLessThan(0.1);
  expect(Math.abs((sizes['coil ground.3'] ?? 0) / 0.06 - 1)).toBeLessThan(0.1);
  expect(causes.every(({ orElse }) => orElse.length === 0)).toBe(true);
});

describe('what the readings cannot tell apart is not guessed', () => {
  test('the supply at one coil alone: any conductor of its path', () => {
    const place: Place = { what: 'supply', instrument: 'scope', coil: '3', at: 'limiter' };
    const [found, ...others] = diagnose(e, readings([place], { main: 0.06 })).causes;
    expect(others).toEqual([]);
    const all = [found?.cause, ...(found?.orElse ?? [])].map((cause) => named(cause as Cause)).sort();
    expect(all).toEqual(['branch.3', 'coil ground.3', 'engine strap', 'main']);
  });

  test('feed and return that carry all coils, by the supplies of all coils', () => {
    const places = e.design.coils.flatMap(({ id }): Place[] => [
      { what: 'supply', instrument: 'scope', coil: id, at: 'limiter' },
      { what: 'supply', instrument: 'scope', coil: id, at: 'idle' },
    ]);
    const [found] = diagnose(e, readings(places, { 'engine strap': 0.06 })).causes;
    const all = [found?.cause, ...(found?.orElse ?? [])].map((cause) => named(cause as Cause)).sort();
    expect(all).toEqual(['engine strap', 'main']);
  });

  test('one meter on one run: too much resistance, or a peak that was read', () => {
    // As much as makes the average as high as the peak should be.
    const peakOf = readings([drop('main', 'limiter', 'scope')])[0]?.value as number;
    const reading = { ...(readings([drop('main', 'limiter')])[0] as Measured), value: peakOf };
    const [found] = diagnose(e, [reading]).causes;
    const all = [found?.cause, ...(found?.orElse ?? [])].map((cause) => named(cause as Cause)).sort();
    expect(all).toEqual(['main', 'reading 0 scope']);
  });
});

test('a meter that shows a peak is told by the other readings', () => {
  const sound = readings(card);
  const peak = readings([drop('main', 'idle', 'scope')])[0]?.value as number;
  const mixed = sound.map((r) =>
    r.what === 'drop' && r.wire === wire('main') && r.point === point('idle') ? { ...r, value: peak } : r,
  );
  const { causes } = diagnose(e, mixed);
  expect(causes.map(({ cause }) => named(cause))).toEqual([
    `reading ${mixed.findIndex((r) => r.value === peak)} scope`,
  ]);
});

test('coils that all draw half as much again', () => {
  // Beyond what the tolerances allow: dwell, inductance and resistance together make a fifth.
  const { causes } = diagnose(e, readings([...card, clamp('midrange')], {}, 1.5));
  expect(causes.map(({ cause }) => named(cause))).toEqual(['draw null']);
  const cause = causes[0]?.cause as Cause;
  if (cause.kind !== 'draw') throw new Error('another kind');
  expect(cause.factor).toBeCloseTo(1.5, 1);
});

test('a supply that sags: the source', () => {
  const at = point('limiter');
  const course = steady(circuitAt(e, at));
  const { average, peak } = wireFigures(course, wire('main'));
  const posts = (instrument: Instrument, value: number): Measured => ({
    what: 'supply',
    wire: null,
    coil: null,
    point: at,
    instrument,
    path: 'measured',
    value,
  });
  // 60 mΩ before the posts: the meter shows what the average leaves, the scope what the peak leaves.
  const open = 14.2 + 0.06 * average;
  const { causes } = diagnose(e, [posts('meter', open - 0.06 * average), posts('scope', open - 0.06 * peak)]);
  expect(causes.map(({ cause }) => named(cause))).toEqual(['source']);
  const cause = causes[0]?.cause as Cause;
  if (cause.kind !== 'resistance') throw new Error('another kind');
  // The currents were taken without the sag, which lowers them by 5 %.
  expect(Math.abs(cause.ohm / 0.06 - 1)).toBeLessThan(0.1);
});

describe('one reading by itself', () => {
  const reading = (place: Place, factor: number): Measured => {
    const [r] = readings([place]);
    return { ...(r as Measured), value: (r as Measured).value * factor };
  };

  test('within, low and high', () => {
    const stands = [1, 0.2, 4].map((factor) => judge(e, reading(drop('main', 'limiter'), factor)).stands);
    expect(stands).toEqual(['within', 'low', 'high']);
  });

  test('what a drop says of the resistance', () => {
    // Four times the drop: three times the own resistance more.
    const { excess, ratio } = judge(e, reading(drop('main', 'limiter'), 4));
    const own = circuitAt(e, 0).wires[wire('main')]?.ohm as number;
    // The expected reading stands within 1.2 % of the exact one.
    expect((excess as number) / (3 * own)).toBeCloseTo(1, 1);
    expect(ratio).toBeCloseTo(4, 1);
  });

  test('an average that would be a peak', () => {
    const [peak] = readings([drop('main', 'idle', 'scope')]);
    const judged = judge(e, { ...(peak as Measured), instrument: 'meter' });
    expect([judged.stands, judged.wouldBe]).toEqual(['high', 'scope']);
  });
});
