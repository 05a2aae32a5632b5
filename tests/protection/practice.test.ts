/**
 * FAA AC 43.13-1B table 11-3 (printed): copper wire and the fuse that protects it, at 57 °C (135 °F; from memory).
 *
 * The table is for aircraft: wires in bundles, insulation of 105 °C and more, and every fuse far below what its wire
 * carries in free air. The rule here is that a fuse does not exceed the ampacity by 33 CFR 183.425 at the ambient
 * temperature. Which of the two is the more cautious hangs on the insulation: the table states none. Our smallest
 * conductor for each of its fuses is compared at its ambient for the insulation that its time had, class B (100 °C),
 * and in a bundle of three, since aircraft wires seldom lie alone.
 */
import { describe, expect, test } from 'vitest';
import { FAA_FUSES } from '../../src/data/faa.ts';
import { designOf, judge } from './feeds.ts';
import { ampacityOf, SERIES } from './truth.ts';

const AMBIENT = 57;
const number = (gauge: string): number => Number(gauge.split(' ')[0]?.replace(/^(\d)\/0$/, '-$1'));

/** Smallest size that `auto` takes for a fuse of this rating. */
function smallestFor(fuse: number, insulation: string, bundle: number): string {
  const type = fuse >= 70 ? 'SF30' : 'C';
  const judged = judge(
    designOf({
      feed: [
        {
          run: 'main',
          gauge: 'auto',
          ambient: `${AMBIENT} degC`,
          insulation,
          bundle,
          fuse: { type, rating: `${fuse} A` },
        },
      ],
      // No source resistance: the rule of rating against ampacity alone.
      supply: {},
    }),
  );
  expect(judged.finding('fuse_conductor', 'main').verdict).toBe('pass');
  return String(judged.e.value('gauge', { run: 0 }));
}

/** The largest wire that the table has for each fuse is the one that it could do without; the smallest counts. */
const rows = [...new Set(FAA_FUSES.rows.map(({ fuse }) => fuse))].map((fuse) => ({
  fuse,
  table: FAA_FUSES.rows.find((row) => row.fuse === fuse)?.gauge ?? '',
}));

describe('class B, three wires together', () => {
  test.each(rows)('fuse of $fuse A: No. $table in the table', ({ fuse, table }) => {
    const ours = smallestFor(fuse, 'B', 3);
    // Ours never is thinner. Our list ends at 18 AWG, above the 22 AWG that the table begins with.
    expect(number(ours)).toBeLessThanOrEqual(number(table));
    // Nor absurdly thick: two steps of the even numbers.
    expect(number(ours)).toBeGreaterThanOrEqual(number(table) - 6);
  });
});

describe('class B, a wire alone', () => {
  test.each(rows)('fuse of $fuse A: No. $table in the table', ({ fuse, table }) => {
    const ours = smallestFor(fuse, 'B', 1);
    const amps = ampacityOf(`${table} AWG`, { insulation: 'B', ambient: AMBIENT, bundle: 1 });
    // Alone, 33 CFR 183.425 lets the wires of the table carry more than their fuse, so that a thinner one may be
    // chosen: by one or two of the even numbers, where the regulation for boats is the bolder one.
    if (amps !== null) expect(amps).toBeGreaterThanOrEqual(fuse);
    expect(number(ours)).toBeLessThanOrEqual(number(table) + 4);
    const next = SERIES.AWG?.[(SERIES.AWG?.indexOf(ours) ?? 0) - 1];
    if (next !== undefined)
      expect(ampacityOf(next, { insulation: 'B', ambient: AMBIENT, bundle: 1 })).toBeLessThan(fuse);
  });
});

test('the fuses of the table protect the wires of the table by our rule, in every insulation from 100 °C up', () => {
  for (const { gauge, fuse } of FAA_FUSES.rows)
    for (const insulation of ['B', 'C', 'D', 'F']) {
      const amps = ampacityOf(`${gauge} AWG`, { insulation, ambient: AMBIENT, bundle: 1 });
      // Below 18 AWG there is no figure.
      if (amps === null) expect(['20', '22']).toContain(gauge);
      else expect(amps, `No. ${gauge}, ${insulation}`).toBeGreaterThanOrEqual(fuse);
    }
});
