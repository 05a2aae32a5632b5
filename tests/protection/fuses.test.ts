/** Fuses: opening time from the limits, which fuse protects what, breaking capacity. */
import { describe, expect, test } from 'vitest';
import { FUSE_LIMITS } from '../../src/data/fuse-limits.ts';
import { readDesign } from '../../src/design/read.ts';
import { designOf, judge, type Parts, runAt, wireAt } from './feeds.ts';
import { openingOf } from './truth.ts';

/** Rounding of doubles after a power and a few sums. */
const DUST = 1e-9;
const apart = (a: number, b: number): number => Math.abs(a / b - 1);

const TYPES = ['C', 'F', 'E', 'SF30'] as const;

describe.each(TYPES)('type %s', (type) => {
  const rating = 30;
  const judged = judge(
    designOf({
      feed: [{ run: 'main', length: '0.3 m', gauge: '6 AWG', fuse: { type, rating: `${rating} A` } }],
      supply: { source_resistance: '2 mohm' },
    }),
  );
  const { e, number } = judged;
  e.set('coil_ohm_20', {}, 1e-6);
  e.set('point_supply', { point: 1 }, 1e6);
  /** The latest opening at any current: that of a driver stuck on, which the current limit sets. */
  const opensAt = (amps: number): number => {
    e.set('current_limit', {}, amps);
    return number('stuck_opening', { run: 0 });
  };
  const limits = FUSE_LIMITS.rows.filter((row) => row.type === type && row.max !== null);

  test('without end up to 1.35 times its rating', () => {
    for (const multiple of [0.01, 0.5, 1, 1.1, 1.2, 1.3, 1.35]) {
      expect(opensAt(rating * multiple), `${multiple}`).toBe(number('no_end'));
      expect(openingOf(type, rating, rating * multiple)).toBe(Infinity);
    }
    // Just above, the limit holds.
    expect(apart(opensAt(rating * 1.3500001), limits[0]?.max ?? Number.NaN)).toBeLessThan(1e-5);
  });

  test('the printed maximum at every limit', () => {
    for (const { multiple, max } of limits.slice(1))
      expect(apart(opensAt(rating * multiple), max ?? Number.NaN), `${multiple}`).toBeLessThan(DUST);
  });

  test('straight in log–log between the limits', () => {
    for (let multiple = 1.36; multiple < 12; multiple *= 1.013)
      expect(apart(opensAt(rating * multiple), openingOf(type, rating, rating * multiple))).toBeLessThan(
        DUST,
      );
    // By hand, halfway between two limits in the logarithm: the geometric mean of both times.
    limits.slice(1).forEach((high, i) => {
      const low = limits[i];
      if (!low) throw new Error('no limit');
      const middle = rating * Math.sqrt(low.multiple * high.multiple);
      expect(apart(opensAt(middle), Math.sqrt((low.max ?? NaN) * (high.max ?? NaN)))).toBeLessThan(DUST);
    });
  });

  test('the same I²t beyond the last limit', () => {
    const last = limits.at(-1);
    const energy = (last?.max ?? Number.NaN) * (rating * (last?.multiple ?? Number.NaN)) ** 2;
    for (const multiple of [6, 6.1, 10, 23.9, 24.1, 61, 1000])
      expect(apart(opensAt(rating * multiple) * (rating * multiple) ** 2, energy)).toBeLessThan(DUST);
  });

  test('the curve that is drawn: slowest and fastest', () => {
    e.set('point_supply', { point: 1 }, 14);
    const at = [...e.grid.axes.grid.keys()].map((grid) => ({
      amps: number('curve_current', { feed: 0, grid }),
      slowest: number('curve_slowest', { feed: 0, grid }),
      fastest: number('curve_fastest', { feed: 0, grid }),
    }));
    expect(at.length).toBeGreaterThan(20);
    expect(at[0]?.amps).toBeCloseTo(1.1 * rating, 9);
    const most = number('start_fault', { run: 0 });
    expect(apart(at.at(-1)?.amps ?? 0, most)).toBeLessThan(DUST);
    expect(most).toBeGreaterThan(6 * rating);
    for (const [i, { amps, slowest, fastest }] of at.entries()) {
      expect(amps).toBeGreaterThanOrEqual(at[i - 1]?.amps ?? 0);
      // Just above the current: at the limit of 1.35 itself the curve already stands at its maximum.
      const own = openingOf(type, rating, amps * (1 + 1e-11));
      if (own === Infinity) expect(slowest).toBe(number('no_end'));
      else expect(apart(slowest, own)).toBeLessThan(1e-8);
      expect(fastest).toBeLessThanOrEqual(slowest);
    }
  });
});

/** A driver stuck on that draws what its current limit lets through. */
function opens(fuse: Record<string, unknown>): (amps: number) => number {
  const { e, number } = judge(designOf({ feed: [{ run: 'main', gauge: '2 AWG', fuse }] }));
  e.set('coil_ohm_20', {}, 1e-6);
  e.set('point_supply', { point: 1 }, 1e6);
  return (amps) => {
    e.set('current_limit', {}, amps);
    return number('stuck_opening', { run: 0 });
  };
}

test('by hand: 20 A of type E, limit 1 s at 120 A: at 600 A (120/600)² = 40 ms', () => {
  expect(opens({ type: 'E', rating: '20 A' })(600)).toBeCloseTo(0.04, 12);
  // A cross-linked conductor from 90 °C to 250 °C has k = 143 A·√s/mm² (IEC 60364-5-54, quoted): what survives is
  // √(600² · 0.04)/143 = √14400/143 = 0.84 mm². A flat 1 s would have asked for 600/143 = 4.2 mm².
  expect(Math.sqrt(600 ** 2 * opens({ type: 'E', rating: '20 A' })(600)) / 143).toBeCloseTo(0.84, 2);
});

describe('a fuse with its maker’s own curve', () => {
  const curve = [
    { current: '40 A', within: '5 s' },
    { current: '100 A', within: '0.2 s' },
    { current: '200 A', within: '40 ms' },
  ];
  const at = opens({ type: 'C', rating: '20 A', curve });
  test('without end up to its first point, then the points', () => {
    expect(at(40)).toBe(1e9);
    expect(at(40.0001)).toBeCloseTo(5, 3);
    expect(at(100)).toBeCloseTo(0.2, 12);
    expect(at(200)).toBeCloseTo(0.04, 12);
  });
  test('straight in the logarithms between them: the geometric mean halfway', () =>
    expect(at(Math.sqrt(100 * 200))).toBeCloseTo(Math.sqrt(0.2 * 0.04), 12));
  test('by the same I²t beyond: 600 A is three times 200 A, 40 ms / 9', () =>
    expect(at(600)).toBeCloseTo(0.04 / 9, 12));
  test('as many points as there are rows, and one', () => {
    const many = Array.from({ length: 7 }, (_, i) => ({
      current: `${30 * (i + 1)} A`,
      within: `${10 / 3 ** i} s`,
    }));
    expect(opens({ type: 'E', rating: '20 A', curve: many })(210)).toBeCloseTo(10 / 3 ** 6, 9);
    expect(opens({ type: 'E', rating: '20 A', curve: many })(420)).toBeCloseTo(10 / 3 ** 6 / 4, 9);
    expect(opens({ type: 'E', rating: '20 A', curve: many.slice(0, 1) })(60)).toBeCloseTo(10 / 4, 9);
  });
});

test('a curve that starts within the rating, or does not fall, is refused with every point', () => {
  const read = readDesign(
    JSON.stringify(
      designOf({
        feed: [
          {
            run: 'main',
            fuse: {
              type: 'C',
              rating: '20 A',
              curve: [
                { current: '20 A', within: '5 s' },
                { current: '15 A', within: '6 s' },
              ],
            },
          },
        ],
      }),
    ),
    'design.json',
  );
  expect(read.ok ? [] : read.problems.map(({ key }) => key)).toEqual([
    'feed[0].fuse.curve[0].current',
    'feed[0].fuse.curve[1].current',
    'feed[0].fuse.curve[1].within',
  ]);
});

test('pulses: the I²t of one firing against 48 % of what melts the fuse', () => {
  // Rectangular pulses of 10 A for 3 ms, far apart at 200 rpm: 0.3 A²s each. 48 % of 0.7 A²s is 0.336 A²s, of 0.6 0.288.
  const judged = (melting: string) =>
    judge(
      designOf({
        coil: { resistance: '0.5 ohm', peak: '10 A' },
        points: [{ name: 'slow', rpm: '200 rpm', supply: '14 V' }],
        feed: [{ run: 'main', fuse: { type: 'C', rating: '20 A', melting } }],
      }),
    ).finding('fuse_pulse', 'main');
  expect(judged('0.7 A2s').value).toBeCloseTo(0.3, 12);
  expect(judged('0.7 A2s')).toMatchObject({ verdict: 'pass' });
  expect(judged('0.7 A2s').limit).toBeCloseTo(0.336, 12);
  expect(judged('0.6 A²s')).toMatchObject({ verdict: 'fail' });
});

describe('which fuse protects what', () => {
  const fuse = (rating: number) => ({ type: 'E', rating: `${rating} A` });
  const protectors = (feed: Parts['feed'], back: Parts['feed'] = []) => {
    const judged = judge(designOf({ feed, ...(back.length > 0 ? { return: back } : {}) }));
    const of = (id: string) => judged.e.number('nearest_fuse', { wire: wireAt(judged.e, id) });
    return { judged, of };
  };

  test('its own, or the nearest before it that carries all its coils', () => {
    const { of, judged } = protectors([
      { run: 'main', fuse: fuse(80) },
      { run: 'left', carries: ['1', '2'], fuse: fuse(40) },
      { run: 'right', carries: ['3', '4'] },
      { run: 'drop', carries: 'each' },
    ]);
    expect([of('main'), of('left'), of('right')]).toEqual([80, 40, 80]);
    expect(['1', '2', '3', '4'].map((coil) => of(`drop.${coil}`))).toEqual([40, 40, 80, 80]);
    for (const run of ['main', 'left', 'right', 'drop'])
      expect(judged.finding('fuse_present', run).verdict).toBe('pass');
  });

  test('a fuse of some of the coils protects these only', () => {
    const { of, judged } = protectors([
      { run: 'left', carries: ['1', '2'], fuse: fuse(30) },
      { run: 'right', carries: ['3', '4'] },
      { run: 'drop', carries: 'each' },
    ]);
    expect([of('left'), of('right')]).toEqual([30, null]);
    expect(of('drop.1')).toBe(30);
    expect(of('drop.3')).toBeNull();
    expect(judged.finding('fuse_present', 'right')).toMatchObject({ verdict: 'fail', value: 1 });
    // Two of the four drops.
    expect(judged.finding('fuse_present', 'drop')).toMatchObject({ verdict: 'fail', value: 2 });
    expect(judged.finding('fuse_present', 'left').verdict).toBe('pass');
  });

  test('a fuse further out protects nothing before it, and nothing in the return', () => {
    const { of, judged } = protectors(
      [{ run: 'main' }, { run: 'drop', carries: 'each', fuse: fuse(20) }],
      [{ run: 'strap' }],
    );
    expect(of('main')).toBeNull();
    expect(of('drop.2')).toBe(20);
    expect(of('strap')).toBeNull();
    expect(
      judged
        .found('fuse_present')
        .map(({ subject }) => subject)
        .sort(),
    ).toEqual(['drop', 'main']);
  });
});

describe('breaking capacity: 1000 A of blades (ISO 8820-3, printed), 2000 A of strips (from memory)', () => {
  test.each([
    ['C', 2.4, 'fail'],
    ['C', 7, 'pass'],
    ['E', 2.4, 'fail'],
    ['SF30', 2.4, 'pass'],
  ])('type %s behind %d mΩ: %s', (type, milliohms, verdict) => {
    const judged = judge(
      designOf({
        feed: [{ run: 'main', gauge: '6 AWG', fuse: { type, rating: '40 A' } }],
        supply: { source_resistance: `${milliohms} mohm` },
      }),
    );
    // Highest supply over source, fuse and chassis.
    const amps = 14 / (milliohms / 1000 + 0.1 / 40 + 0.005);
    const finding = judged.finding('breaking', 'main');
    expect(apart(finding.value ?? Number.NaN, amps)).toBeLessThan(DUST);
    expect(finding.limit).toBe(type === 'SF30' ? 2000 : 1000);
    expect(finding.verdict).toBe(verdict);
    expect(verdict === 'fail').toBe(amps > (finding.limit ?? 0));
    if (verdict === 'fail') expect(judged.words(finding)).toMatch(/interrupt/);
  });

  test('not known without the resistance of the source', () => {
    const judged = judge(
      designOf({ feed: [{ run: 'main', fuse: { type: 'C', rating: '30 A' } }], supply: {} }),
    );
    const finding = judged.finding('breaking', 'main');
    expect(finding).toMatchObject({ verdict: 'unknown', value: null });
    expect(judged.words(finding)).toContain('supply.source_resistance');
    expect(judged.e.number('fault_max', { wire: runAt(judged.e, 'main') })).toBeNull();
  });
});
