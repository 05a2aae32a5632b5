/** One table of ranges: reader, entries of the workbook and docs say the same. */
import { describe, expect, test } from 'vitest';
import type { Quantity } from '../../src/basis/quantity.ts';
import { ends, RANGES, type Range } from '../../src/design/ranges.ts';
import { keysByRange } from '../../src/docs/ranges.ts';
import { QUANTITIES } from '../../src/model/model.ts';
import { base, design } from './helpers.ts';

const all: readonly Range[] = Object.values(RANGES);

test('every range is one, has its reason, and holds what is usual', () => {
  for (const { of, from, to, usual, why, text } of all) {
    expect(from, of).toBeLessThan(to);
    expect(usual[0], of).toBeGreaterThanOrEqual(from);
    expect(usual[1], of).toBeLessThanOrEqual(to);
    expect(why, of).toMatch(/\w/);
    expect(text, of).toMatch(/^[-\d.]+( [\w/]+)? to \d+( [\w%/]+)?$/);
  }
  expect(new Set(all.map(({ of }) => of)).size).toBe(all.length);
});

test('every range is used by a key of the format', () => {
  const used = keysByRange();
  expect(all.filter(({ of }) => !used.has(of))).toEqual([]);
});

/** `runs.{run}.fuse.rating` of the model is `feed[].fuse.rating` of the format. */
const keyOf = (path: string): string =>
  path
    .replace(/^runs\.\{run\}/, 'feed[]')
    .replace(/^wires\.\{wire\}/, 'feed[]')
    .replace(/^events\.\{event\}\.angle$/, 'engine.firing_angles[]')
    .replace(/\.\{\w+\}/g, '[]');

test('entries of the workbook have the range of their key', () => {
  const used = keysByRange();
  const offenders = Object.entries(QUANTITIES).flatMap(([id, q]: [string, Quantity]) => {
    if (q.kind !== 'input' || q.unit === 'text' || q.path === 'engine.stroke') return [];
    const range = all.find(({ of }) => used.get(of)?.includes(keyOf(q.path)));
    if (!range) return [`${id}: ${q.path} has no range in the format`];
    const [from, to] = ends(range, q.unit);
    return q.range?.[0] === from && q.range[1] === to ? [] : [`${id}: ${q.range} is not ${from} to ${to}`];
  });
  expect(offenders).toEqual([]);
});

describe('ends in the unit of the model', () => {
  test('shares are plain numbers there', () => {
    expect(ends(RANGES.share, '1')).toEqual([0.02, 1]);
    expect(ends(RANGES.spread, '1')).toEqual([0, 0.9]);
  });

  test('both ends are taken, also in another unit', () => {
    // 1 mm and 100 m; 60 V as 60000 mV.
    for (const length of ['1 mm', '0.1 cm', '100 m', '10000 cm'])
      expect(design(base(['length: 1.5 m', `length: ${length}`])).wires[0]?.length).toBeGreaterThan(0);
    expect(design(base(['supply: 13.6 V', 'supply: 60000 mV'])).points[1]?.supply).toBe(60);
  });
});
