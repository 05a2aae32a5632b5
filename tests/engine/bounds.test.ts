/**
 * Both engines at the ends of every input of a small design: one by one, and in pairs. Whatever a person enters, no value is
 * an error, infinite, or no number, and the cells of a workbook say the same as the compiled model.
 */
import { expect, test } from 'vitest';
import type { At, Axis, OfKind } from '../../src/basis/quantity.ts';
import { convert } from '../../src/basis/units.ts';
import type { Design } from '../../src/design/design.ts';
import { inputValue } from '../../src/engine/cell.ts';
import { members } from '../../src/engine/cells.ts';
import { type Entry, type Evaluation, evaluate } from '../../src/engine/evaluate.ts';
import { disagreements, spread } from '../../src/engine/spreadsheet.ts';
import { ON_REQUEST, QUANTITIES, type QuantityName } from '../../src/model/model.ts';
import { design } from '../design/helpers.ts';
import { dice } from '../protection/random.ts';
import { samples } from '../samples.ts';

/** Pairs besides those in which every input is at an end. */
const PAIRS = samples(40);

const run = { length: '0.5 m', ambient: '60 degC', insulation: 'C', gauge: 'auto' };
const small: Design = design(
  JSON.stringify({
    coilfeed: 1,
    title: 'At the ends',
    engine: { cylinders: 2, stroke: 4, firing_order: [1, 2] },
    ignition: {
      layout: 'coil_per_cylinder',
      dwell: '3 ms',
      sparks: { count: 3, below: '2500 rpm', charge: '1.2 ms' },
    },
    coil: { resistance: '0.5 ohm', inductance: '3 mH', driver_drop: '1 V', current_limit: '15 A' },
    supply: { source_resistance: '8 mohm', alternator: '90 A', other_load: '35 A' },
    points: [
      { name: 'cranking', rpm: '200 rpm', supply: '9.6 V' },
      { name: 'fast', rpm: '6000 rpm', supply: '14 V' },
    ],
    feed: [
      {
        ...run,
        run: 'main',
        carries: 'all',
        fuse: { type: 'E', rating: 'auto', ambient: '50 degC' },
        relay: { rating: '40 A', pull_in: '7.2 V', coil: '90 ohm', ambient: '50 degC' },
      },
      { ...run, run: 'drop', carries: 'each' },
    ],
    return: [{ ...run, run: 'strap', carries: 'all' }],
  }),
);

/** What can be entered: one entry for every input that is a number and used in this design, first member. */
interface Field {
  name: QuantityName;
  at: At;
  /** In the unit of the entry. */
  ends: readonly [number, number];
  usual: Entry['value'];
}

/** The sizes of these tell how long other lists are, or what stands in them: the reader refuses them in a workbook. */
const FIXED: readonly string[] = ['cylinders', 'stroke'];

const axes = evaluate(small).grid.axes;
const fields: Field[] = (Object.keys(QUANTITIES) as QuantityName[]).flatMap((name) => {
  const q = QUANTITIES[name];
  if (q.kind !== 'input' || !('range' in q) || FIXED.includes(name)) return [];
  const factor = convert(q.unit, 'shown' in q ? q.shown : q.unit);
  const [at] = members(axes, (('per' in q ? q.per : undefined) ?? []) as readonly Axis[]);
  if (at === undefined) return [];
  const [low, high] = q.range;
  return [
    {
      name,
      at,
      ends: [low * factor, high * factor],
      usual: inputValue(small, q as OfKind<'input'>, at),
    },
  ];
});

/** Values that are none. */
function unsound(e: Evaluation): string[] {
  const found: string[] = [];
  for (const [name, q] of Object.entries(QUANTITIES)) {
    const axes: Axis[] = [...(q.per ?? []), ...(q.across === undefined ? [] : [q.across])];
    for (const at of members(e.grid.axes, axes))
      try {
        const value = e.value(name as QuantityName, at);
        if (typeof value === 'number' && !Number.isFinite(value))
          found.push(`${name} ${JSON.stringify(at)}: ${value}`);
      } catch (error) {
        found.push((error as Error).message);
      }
  }
  return found;
}

const [cells, compiled] = [spread(small, undefined, ON_REQUEST), evaluate(small)];

/** What stands in each field at the moment. A cell that is written is worked out at once, so that none is without need. */
const standing = new Map(fields.map((field) => [field, field.usual]));

/** What is wrong with these fields at these ends, the others as they are usually: at most three lines. */
function wrong(of: readonly [Field, 0 | 1][]): string[] {
  const wanted = new Map(of.map(([field, end]) => [field, field.ends[end]]));
  const entries = fields.flatMap((field): Entry[] => {
    const value = wanted.get(field) ?? field.usual;
    if (standing.get(field) === value) return [];
    standing.set(field, value);
    return [{ name: field.name, at: field.at, value }];
  });
  for (const { name, at, value } of entries) cells.set(name, at, value);
  compiled.setAll(entries);
  const lines = unsound(compiled);
  try {
    if (lines.length === 0) lines.push(...disagreements(cells, compiled));
  } catch (error) {
    lines.push(`as a cell: ${(error as Error).message}`);
  }
  const label = of.map(([{ name }, end]) => `${name} ${end === 0 ? 'least' : 'most'}`).join(', ');
  return lines.slice(0, 3).map((line) => `${label.slice(0, 80)}: ${line}`);
}

test('there are inputs, and nothing is wrong before they are changed', () => {
  expect(fields.length).toBeGreaterThan(40);
  expect(wrong([])).toEqual([]);
});

test('every input at its least and at its most', () => {
  const found = fields.flatMap((field) => ([0, 1] as const).flatMap((end) => wrong([[field, end]])));
  expect(found).toEqual([]);
});

/**
 * Each input has a word of its own, half of its letters least and half most; the letters at one place make one case. Two
 * different words of this kind have all four pairs of letters somewhere, so that a dozen cases hold every pair of ends.
 */
function words(count: number): (0 | 1)[][] {
  for (let length = 4; ; length += 2) {
    const all = Array.from({ length: 2 ** (length - 1) }, (_, i) =>
      Array.from({ length }, (_, k) => ((i >> k) & 1) as 0 | 1),
    ).filter((word) => word.reduce<number>((a, b) => a + b, 0) === length / 2);
    if (all.length >= count) return all.slice(0, count);
  }
}

test('all inputs at ends, every pair of ends in one case or another', () => {
  const own = words(fields.length);
  const cases = (own[0] ?? []).map((_, k) =>
    fields.map((field, i): [Field, 0 | 1] => [field, own[i]?.[k] as 0 | 1]),
  );
  const met = new Set(
    cases.flatMap((one) => one.flatMap(([, a], i) => one.slice(0, i).map(([, b], j) => `${i}${a} ${j}${b}`))),
  );
  expect(met.size).toBe((4 * fields.length * (fields.length - 1)) / 2);
  expect(cases.flatMap(wrong)).toEqual([]);
});

test(`${PAIRS} pairs of ends, all others as usual`, () => {
  const d = dice(1);
  const found = Array.from({ length: PAIRS }, () => {
    const [a, b] = [d.one(fields), d.one(fields)];
    return a === b
      ? []
      : wrong([
          [a, d.whole(0, 1) as 0 | 1],
          [b, d.whole(0, 1) as 0 | 1],
        ]);
  });
  expect(found.flat()).toEqual([]);
});
