/** Odd designs: each is refused with a reason, or judged with a clear finding; none ends in a crash or without a number. */
import { describe, expect, test } from 'vitest';
import { readDesign } from '../../src/design/read.ts';
import { findings } from '../../src/findings/read.ts';
import { sentence } from '../../src/findings/words.ts';
import { run } from '../../src/run.ts';
import { toJson } from '../../src/writers/json.ts';
import { report } from '../../src/writers/report.ts';
import { designOf, judge, type Parts, type RunText } from './feeds.ts';
import { dice } from './random.ts';

/** What the reader says of a design, `key: found; taken`. */
function refused(design: object): string[] {
  const read = readDesign(JSON.stringify(design), 'design.json');
  return read.ok ? [] : read.problems.map(({ key, found, taken }) => `${key}: ${found}; ${taken}`);
}

const PULSES = { resistance: '0.5 ohm', peak: '20 A' };
const withMain = (main: Partial<RunText>, parts: Partial<Parts> = {}): object =>
  designOf({ coil: PULSES, feed: [{ run: 'main', ...main }], ...parts });

describe('refused by the reader, with the key', () => {
  test('a relay without a rating', () => {
    const problems = refused(withMain({ relay: { rated_at: '85 degC' } }));
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatch(/feed\[0\]\.relay\.rating.*A/);
  });
  test('a fuse without a type', () => {
    const problems = refused(withMain({ fuse: { rating: '30 A' } }));
    expect(problems.join()).toMatch(/feed\[0\]\.fuse\.type.*C \(.*F \(.*E \(.*SF30 \(/);
  });
  test('a fuse or relay in the return', () => {
    const back = [{ run: 'strap', fuse: { type: 'E', rating: '30 A' } }];
    expect(refused(withMain({}, { return: back })).join()).toMatch(
      /return\[0\]\.fuse.*put it into a feed run/,
    );
  });
  test('a size that there is not', () =>
    expect(refused(withMain({ gauge: '5 AWG' })).join()).toMatch(/feed\[0\]\.gauge.*AWG/));
});

describe('sizes outside the ampacity table', () => {
  test.each(['22 AWG', '20 AWG', '0.5 mm2'])('%s: no figure, so that nothing is promised', (gauge) => {
    const judged = judge(withMain({ gauge, fuse: { type: 'C', rating: '5 A' } }));
    expect(judged.e.number('ampacity', { run: 0 })).toBeNull();
    for (const rule of ['wire_load', 'fuse_conductor', 'curves', 'stuck_driver'] as const) {
      const finding = judged.finding(rule, 'main');
      expect(finding.verdict, rule).toBe('unknown');
      expect(judged.words(finding)).not.toMatch(/NaN|undefined|not known\s*$/);
    }
    expect(judged.words(judged.finding('wire_load', 'main'))).toMatch(/0\.75 mm²/);
    // The resistance is known all the same, at the temperature of the place.
    expect(judged.number('wire_ohm', { wire: 0 })).toBeGreaterThan(0);
    expect(judged.finding('drop').verdict).not.toBe('unknown');
  });
});

test.each([125, 126, 200])('ambient of %i °C where the insulation is rated 125 °C', (ambient) => {
  const judged = judge(withMain({ ambient: `${ambient} degC`, fuse: { type: 'E', rating: '30 A' } }));
  expect(judged.finding('insulation', 'main')).toMatchObject({ verdict: 'fail', value: ambient, limit: 125 });
  expect(judged.number('ampacity', { run: 0 })).toBe(0);
  expect(judged.finding('wire_load', 'main')).toMatchObject({ verdict: 'fail', limit: 0 });
  expect(judged.finding('fuse_conductor', 'main').verdict).toBe('fail');
  // No conductor temperature; the resistance at that of the place.
  expect(judged.e.number('wire_T', { wire: 0 })).toBeNull();
  expect(judged.finding('stuck_driver', 'main').verdict).toBe('fail');
});

test('the same with a size to be chosen: no size carries anything there', () => {
  const judged = judge(withMain({ gauge: 'auto', ambient: '130 degC', fuse: { type: 'E', rating: '30 A' } }));
  expect(judged.finding('insulation', 'main').verdict).toBe('fail');
  expect(judged.finding('series_ampacity', 'main')).toMatchObject({ verdict: 'fail', limit: 0 });
});

test('no fuse at all', () => {
  const judged = judge(withMain({}, { feed: [{ run: 'main' }, { run: 'drop', carries: 'each' }] }));
  expect(judged.finding('fuse_present', 'main')).toMatchObject({ verdict: 'fail', value: 1 });
  expect(judged.finding('fuse_present', 'drop')).toMatchObject({ verdict: 'fail', value: 4 });
  for (const run of ['main', 'drop']) {
    expect(judged.finding('curves', run).verdict).toBe('unknown');
    expect(judged.finding('fault_opens', run).verdict).toBe('unknown');
    expect(judged.words(judged.finding('fault_opens', run))).toMatch(/fuse/);
  }
  expect(judged.found('fuse_load')).toEqual([]);
});

test('a fuse smaller than any of its type: 2 A of type E', () => {
  const judged = judge(withMain({ fuse: { type: 'E', rating: '2 A' } }));
  const finding = judged.finding('fuse_load', 'main');
  // 75 % of 2 A, at 60 °C 0.45 % for each of 35 K less: 1.264 A.
  expect(finding.verdict).toBe('fail');
  expect(finding.limit).toBeCloseTo(2 * 0.75 * (1 - 0.0045 * 35), 9);
  // 100 mV at its rating, common practice.
  expect(judged.number('fuse_ohm', { run: 0 })).toBeCloseTo(0.05, 12);
});

test.each([
  ['C', 40],
  ['E', 80],
  ['SF30', 200],
])('a load above every fuse of type %s: the largest, %i A, which fails', (type, largest) => {
  const judged = judge(
    designOf({
      coil: { resistance: '0.05 ohm', peak: '250 A' },
      feed: [{ run: 'main', gauge: '4/0 AWG', fuse: { type, rating: 'auto' } }],
    }),
  );
  expect(judged.number('fuse_rating', { run: 0 })).toBe(largest);
  const finding = judged.finding('fuse_load', 'main');
  expect(finding.verdict).toBe('fail');
  // Four pulses of 250 A, 3 ms of 20 ms each.
  expect(finding.value).toBeCloseTo(250 * Math.sqrt(12 / 20), 6);
  expect(judged.words(finding)).toMatch(/194 A/);
});

test('a relay in each of two runs, one behind the other', () => {
  const relay = { rating: '40 A', rated_at: '85 degC', pull_in: '7.2 V', contact: '4 mohm' };
  const judged = judge(
    designOf({
      coil: PULSES,
      feed: [
        { run: 'main', relay },
        { run: 'trunk', relay: { ...relay, contact: '6 mohm' } },
      ],
    }),
  );
  for (const run of ['main', 'trunk']) expect(judged.finding('relay_contact', run).verdict).toBe('pass');
  const plain = judge(designOf({ coil: PULSES, feed: [{ run: 'main' }, { run: 'trunk' }] }));
  // 60 A flow at most: three of four pulses of 3 ms do not overlap, so that 20 A are the peak.
  expect(judged.number('worst_drop') - plain.number('worst_drop')).toBeCloseTo(20 * 0.01, 9);
});

test('a drop limit that nothing meets: the joints alone exceed it', () => {
  const judged = judge(
    designOf({
      coil: PULSES,
      feed: [{ run: 'main', gauge: 'auto', joints: 20 }],
      limits: { drop: '0.1 V', joint_resistance: '1 mohm' },
    }),
  );
  // 20 A through 20 mΩ: 0.4 V, 0.3 V too much.
  const left = judged.finding('drop_budget');
  expect(left.verdict).toBe('fail');
  expect(left.value).toBeCloseTo(-0.3, 9);
  // There are no sizes of which a drop could be judged.
  expect(() => judged.finding('drop')).toThrow();
  expect(judged.words(left)).toMatch(/no conductor would do/);
});

test('a drop limit that the series does not reach: nothing is chosen, and what is left to drop is said', () => {
  const judged = judge(
    designOf({
      coil: PULSES,
      feed: [{ run: 'main', gauge: 'auto', length: '80 m' }],
      limits: { drop: '0.2 V' },
    }),
  );
  // Nor a load: what that of the size that stands in is, says nothing of this feed.
  for (const rule of ['drop', 'wire_load'] as const) expect(judged.found(rule)).toEqual([]);
  const finding = judged.finding('size_found', 'main');
  expect(finding.verdict).toBe('fail');
  expect(judged.number('solved')).toBe(0);
  expect(judged.e.value('binding', { run: 0 })).toBe('drop');
  // 4/0 AWG, 107.2 mm²: 20 A · 80 m · 1.02/58 / 107.2 mm² = 0.2625 V at 20 °C; warm more, at most 1.26 times at 85 °C.
  expect(judged.number('least_drop')).toBeGreaterThan(0.2625);
  expect(judged.number('least_drop')).toBeLessThan(0.2625 * 1.26);
  // By itself the run needs 20 A only.
  expect(judged.e.value('gauge', { run: 0 })).not.toBe('4/0 AWG');
  expect(judged.words(finding)).toMatch(/0\.\d+ V/);
});

test('the resistance of the source not given: faults are unknown, and the key is named', () => {
  const judged = judge(withMain({ fuse: { type: 'E', rating: '30 A' } }, { supply: {} }));
  for (const rule of ['curves', 'fault_opens', 'breaking'] as const) {
    const finding = judged.finding(rule, 'main');
    expect(finding.verdict, rule).toBe('unknown');
    expect(judged.words(finding), rule).toContain('supply.source_resistance');
  }
  // What needs no fault current is judged all the same.
  for (const rule of ['fuse_load', 'fuse_conductor', 'stuck_driver'] as const)
    expect(judged.finding(rule, 'main').verdict, rule).not.toBe('unknown');
});

// --- random -----------------------------------------------------------------------------------------------------

const ODD = 110;

/** A valid design in which as much as possible is at an edge. */
function oddDesign(seed: number): object {
  const d = dice(seed);
  const cylinders = d.one([1, 2, 3, 5, 8]);
  const run = (name: string, carries: string, feed: boolean): RunText => ({
    run: name,
    carries,
    length: `${d.one([0.01, 0.2, 1, 5, 100])} m`,
    ambient: `${d.one([-40, 20, 80, 124, 125, 150, 250])} degC`,
    insulation: d.one(['A', 'C', 'H', 'GPT', 'TXL']),
    bundle: d.one([1, 2, 3, 7, 25, 100]),
    gauge: d.one(['auto', 'auto', '22 AWG', '0.5 mm2', '18 SAE', '3 AWG', '4/0 AWG', '35 mm2']),
    joints: d.one([0, 2, 100]),
    ...(d.chance(0.3) && feed ? { capacitor: `${d.one([0.01, 470, 1e6])} uF` } : {}),
    ...(d.chance(0.5) && feed
      ? {
          fuse: {
            type: d.one(['C', 'F', 'E', 'SF30']),
            rating: d.one(['auto', '2 A', '33 A', '500 A']),
            ...(d.chance(0.5) ? { ambient: `${d.one([-40, 25, 150])} degC` } : {}),
            ...(d.chance(0.3) ? { from_source: `${d.one([0, 0.1, 5])} m` } : {}),
          },
        }
      : {}),
    ...(d.chance(0.4) && feed
      ? {
          relay: {
            rating: d.one(['auto', '1 A', '40 A']),
            ...(d.chance(0.5) ? { rated_at: '85 degC' } : {}),
            ...(d.chance(0.5) ? { pull_in: `${d.one([1, 7.2])} V` } : {}),
            ...(d.chance(0.3) ? { coil: '80 ohm' } : {}),
            ...(d.chance(0.3) ? { contact: '0 mohm' } : {}),
            ...(d.chance(0.3) ? { tab: `${d.one([2.8, 5.5, 9.5])} mm` } : {}),
            ...(d.chance(0.3) ? { suppression: d.one(['none', 'diode', 'resistor', 'diode_zener']) } : {}),
            ...(d.chance(0.3) ? { make: '30 A' } : {}),
          },
        }
      : {}),
  });
  const middle = d.chance(0.5) ? [run('trunk', 'all', true)] : [];
  const back = d.one([[], [run('strap', 'all', false)], [run('ground', 'each', false)]]);
  return designOf({
    cylinders,
    coil: d.one([
      { resistance: '0.03 ohm', peak: `${d.one([0.01, 20, 400])} A` },
      { resistance: `${d.one([0.05, 0.5, 20])} ohm`, inductance: `${d.one([0.01, 3, 100])} mH` },
      {
        resistance: '0.5 ohm',
        inductance: '3 mH',
        current_limit: `${d.one([1, 10, 100])} A`,
        driver_drop: `${d.one([0, 5])} V`,
        temperature: `${d.one([-40, 20, 150])} degC`,
      },
    ]),
    supply: {
      ...(d.chance(0.7) ? { source_resistance: `${d.one([0, 1, 8, 1000])} mohm` } : {}),
      ...(d.chance(0.5) ? { alternator: '60 A', other_load: `${d.one([0, 60, 90])} A` } : {}),
    },
    points: [
      { name: d.one(['cranking', 'slow']), rpm: `${d.one([30, 200])} rpm`, supply: `${d.one([8, 9.6])} V` },
      { name: 'full', rpm: `${d.one([3000, 9000, 20000])} rpm`, supply: '14 V' },
    ],
    sizes: { series: d.one(['AWG', 'SAE', 'mm2']) },
    feed: [run('main', 'all', true), ...middle, run('drop', 'each', true)],
    ...(back.length > 0 ? { return: back } : {}),
    limits: {
      drop: `${d.one([0.01, 0.5, 10])} V`,
      wire_load: `${d.one([2, 80, 100])} %`,
      fuse_load: `${d.one([2, 75, 100])} %`,
      joint_resistance: `${d.one([0, 0.3, 50])} mohm`,
    },
  });
}

/** Numbers in a nested object that are not finite, with their place. */
function infinite(value: unknown, path = ''): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${path}: ${value}`];
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([key, inner]) => infinite(inner, `${path}.${key}`));
}

test(`${ODD} odd designs: never a crash, never a number that is none, every finding with its words`, () => {
  let judgedOnes = 0;
  const verdicts = new Set<string>();
  for (let seed = 1; seed <= ODD; seed++) {
    const design = oddDesign(seed);
    const read = readDesign(JSON.stringify(design), 'design.json');
    if (!read.ok) throw new Error(`${seed}: ${JSON.stringify(read.problems)}`);
    const result = (() => {
      try {
        return run(read.design);
      } catch (error) {
        throw new Error(`design ${seed}: ${(error as Error).message}`);
      }
    })();
    judgedOnes += 1;
    verdicts.add(result.verdict);
    expect(infinite(toJson(result)), `${seed}`).toEqual([]);
    for (const finding of findings(result.evaluation)) {
      const words = sentence(finding, result.evaluation);
      const where = `${seed}, ${finding.rule} ${finding.subject}: ${words}`;
      expect(['pass', 'advice', 'fail', 'unknown'], where).toContain(finding.verdict);
      expect(words, where).not.toMatch(/NaN|Infinity|undefined|\bnull\b/);
      if (finding.verdict !== 'unknown') expect(finding.value, where).not.toBeNull();
    }
    expect(report(result)).not.toMatch(/NaN|undefined/);
  }
  expect(judgedOnes).toBe(ODD);
  expect(verdicts.has('fail')).toBe(true);
});
