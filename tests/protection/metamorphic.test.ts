/**
 * What must hold between two designs that differ in one thing, over random feeds: no second evaluation is needed to see
 * it. Three hundred were tried by hand; by night there are more.
 */
import { expect, test } from 'vitest';
import type { Design } from '../../src/design/design.ts';
import type { Result } from '../../src/findings/result.ts';
import type { RuleId } from '../../src/findings/rules.ts';
import { run } from '../../src/run.ts';
import { design } from '../design/helpers.ts';
import { apart } from '../physics/harness.ts';
import { samples } from '../samples.ts';
import { feedDesign } from './random.ts';

const SEEDS = Array.from({ length: samples(30) }, (_, i) => i + 1);
/** Rounding of a sum of some terms, in whatever order or unit they come. */
const DUST = 1e-9;

interface Text {
  points: object[];
  feed: (Record<string, unknown> & { run: string })[];
  [key: string]: unknown;
}
const made = new Map<number, { text: Text; result: Result }>();
function of(seed: number): { text: Text; result: Result } {
  const known = made.get(seed);
  if (known) return known;
  const text = feedDesign(seed) as Text;
  const result = run(design(JSON.stringify(text)));
  made.set(seed, { text, result });
  return { text, result };
}

/** The design with everything that was chosen entered as if it had been stated. */
function entered({ evaluation: e }: Result): Design {
  return {
    ...e.design,
    runs: e.design.runs.map((spec, at) => ({
      ...spec,
      gauge: String(e.value('gauge', { run: at })),
      fuse: spec.fuse && { ...spec.fuse, rating: e.number('fuse_rating', { run: at }) ?? 'auto' },
      relay: spec.relay && { ...spec.relay, rating: e.number('relay_rating', { run: at }) ?? 'auto' },
    })),
  };
}
const solved = ({ evaluation: e }: Result): boolean => e.number('solved') === 1;
const failing = ({ findings }: Result): string[] =>
  findings.filter((f) => f.verdict === 'fail').map((f) => `${f.rule} ${f.subject}`);
const added = (before: Result, after: Result): string[] => {
  const known = new Set(failing(before));
  return failing(after).filter((key) => !known.has(key));
};
const number = ({ evaluation: e }: Result, name: Parameters<typeof e.number>[0], at = {}): number =>
  e.number(name, at) ?? Number.NaN;
/** Seeds at which something is found, with what it is. */
const offenders = (each: (seed: number) => readonly string[]): string[] =>
  SEEDS.flatMap((seed) => each(seed).map((what) => `${seed}: ${what}`));

test('what was chosen, entered as stated, gives the same verdicts', () => {
  /** These judge the choosing. */
  const choosing: readonly RuleId[] = ['size_found', 'series_ampacity', 'drop_budget'];
  const told = ({ findings }: Result): string[] =>
    findings
      .filter(({ rule }) => !choosing.includes(rule))
      .map(({ rule, subject, verdict }) => `${rule} ${subject} ${verdict}`)
      .sort();
  const found = offenders((seed) => {
    const { result } = of(seed);
    if (!solved(result)) return [];
    const [before, after] = [told(result), told(run(entered(result)))];
    return [
      ...after.filter((one) => !before.includes(one)),
      ...before.filter((one) => !after.includes(one)).map((one) => `no longer ${one}`),
    ];
  });
  expect(found).toEqual([]);
  expect(SEEDS.filter((seed) => solved(of(seed).result)).length).toBeGreaterThan(SEEDS.length / 3);
});

test('longer conductors of the same size: more drop, less energy, smaller shorts, and nothing passes that failed', () => {
  const found = offenders((seed) => {
    const short = run(entered(of(seed).result));
    const { design: d } = short.evaluation;
    const long = run({ ...d, wires: d.wires.map((wire) => ({ ...wire, length: wire.length * 1.3 })) });
    const rules: readonly RuleId[] = ['drop', 'min_supply', 'energy', 'supply_left', 'fault_opens'];
    const mended = failing(short).filter(
      (key) => rules.includes(key.split(' ')[0] as RuleId) && !failing(long).includes(key),
    );
    const drops = number(long, 'worst_drop') > number(short, 'worst_drop');
    const kept = number(long, 'least_kept') <= number(short, 'least_kept') * (1 + DUST);
    const faults = d.runs.flatMap(({ side, name }, at) =>
      side === 'feed' && number(long, 'end_fault', { run: at }) > number(short, 'end_fault', { run: at })
        ? [name]
        : [],
    );
    return [...mended, ...(drops ? [] : ['drop']), ...(kept ? [] : ['energy']), ...faults];
  });
  expect(found).toEqual([]);
});

test('a hotter place: less ampacity, less of every rating, warmer copper, more drop', () => {
  const found = offenders((seed) => {
    const cool = run(entered(of(seed).result));
    const { design: d } = cool.evaluation;
    const hot = run({
      ...d,
      runs: d.runs.map((spec) => ({
        ...spec,
        ambient: spec.ambient + 10,
        fuse: spec.fuse && { ...spec.fuse, ambient: spec.fuse.ambient + 10 },
      })),
    });
    const more = (name: 'amps_allowed' | 'fuse_allowed', at: object): string[] =>
      number(hot, name, at) > number(cool, name, at) ? [name] : [];
    const mended = failing(cool).filter(
      (key) => /^(wire_load|fuse_load|drop|insulation) ?/.test(key) && !failing(hot).includes(key),
    );
    return [
      ...mended,
      ...d.runs.flatMap((_, at) => [
        ...more('amps_allowed', { run: at }),
        ...more('fuse_allowed', { run: at }),
      ]),
      ...(number(hot, 'worst_drop') >= number(cool, 'worst_drop') * (1 - DUST) ? [] : ['drop']),
    ];
  });
  expect(found).toEqual([]);
});

test('a coil more on the same conductors: no current and no drop is smaller', () => {
  const text = (coils: number) => ({
    ...(feedDesign(7) as Text),
    ignition: {
      layout: 'listed',
      dwell: '3 ms',
      coils: Array.from({ length: coils }, (_, i) => ({ id: `c${i + 1}`, fires_at: [i * 77] })),
    },
    engine: { cylinders: 9, stroke: 4, firing_order: [1, 2, 3, 4, 5, 6, 7, 8, 9] },
    feed: [
      { run: 'main', carries: 'all', length: '1 m', ambient: '60 degC', insulation: 'C', gauge: '10 AWG' },
    ],
    return: undefined,
  });
  const all = Array.from({ length: 9 }, (_, i) => run(design(JSON.stringify(text(i + 1)))));
  for (const name of ['worst_drop', 'worst_total'] as const)
    expect(all.slice(1).every((one, i) => number(one, name) >= number(all[i] as Result, name))).toBe(true);
  for (const name of ['worst_effective', 'wire_peak'] as const)
    expect(
      all
        .slice(1)
        .every((one, i) => number(one, name, { wire: 0 }) >= number(all[i] as Result, name, { wire: 0 })),
    ).toBe(true);
});

/** The same quantity in another unit. */
const OTHER: readonly (readonly [RegExp, (value: number) => string])[] = [
  [/^(\S+) m$/, (v) => `${v / 0.0254} in`],
  [/^(\S+) ms$/, (v) => `${v / 1e3} s`],
  [/^(\S+) V$/, (v) => `${v * 1e3} mV`],
  [/^(\S+) ohm$/, (v) => `${v * 1e3} mohm`],
  [/^(\S+) mohm$/, (v) => `${v / 1e3} ohm`],
  [/^(\S+) mH$/, (v) => `${v * 1e3} uH`],
  [/^(\S+) degC$/, (v) => `${v * 1.8 + 32} degF`],
  [/^(\S+) rpm$/, (v) => `${v / 60} Hz`],
];
const inOther = (_: string, value: unknown): unknown => {
  if (typeof value !== 'string') return value;
  for (const [like, say] of OTHER) {
    const [, amount] = like.exec(value) ?? [];
    if (amount !== undefined) return say(Number(amount));
  }
  return value;
};

const FIGURES = ['worst_drop', 'least_kept', 'copper_total', 'worst_total'] as const;
const same = (a: Result, b: Result): string[] => [
  ...FIGURES.filter((name) => {
    const [x, y] = [number(a, name), number(b, name)];
    return !(Number.isNaN(x) && Number.isNaN(y)) && !(apart(x, y) < DUST);
  }),
  ...added(a, b),
  ...added(b, a),
  ...a.evaluation.design.runs.flatMap(({ name }, at) => {
    const other = b.evaluation.design.runs.findIndex((spec) => spec.name === name);
    return a.evaluation.value('gauge', { run: at }) === b.evaluation.value('gauge', { run: other })
      ? []
      : [name];
  }),
];

test('other units: the same result', () => {
  expect(
    offenders((seed) => {
      const { text, result } = of(seed);
      return same(result, run(design(JSON.stringify(text, inOther))));
    }),
  ).toEqual([]);
});

test('runs side by side, and points, in another order: the same result', () => {
  let turned = 0;
  const found = offenders((seed) => {
    const { text, result } = of(seed);
    const left = text.feed.findIndex(({ run: name }) => name === 'left');
    const feed = [...text.feed];
    if (left >= 0) {
      turned++;
      [feed[left], feed[left + 1]] = [feed[left + 1] as (typeof feed)[0], feed[left] as (typeof feed)[0]];
    }
    return same(result, run(design(JSON.stringify({ ...text, feed, points: text.points.toReversed() }))));
  });
  expect(found).toEqual([]);
  expect(turned).toBeGreaterThan(2);
});

test('banks made alike take one size', () => {
  let banks = 0;
  const found = offenders((seed) => {
    const { text } = of(seed);
    const [left] = text.feed.filter(({ run: name }) => name === 'left');
    if (left === undefined) return [];
    banks++;
    const feed = text.feed.map((one) =>
      one.run === 'left' || one.run === 'right'
        ? {
            ...one,
            gauge: 'auto',
            length: one.run === 'left' ? '0.9 m' : '0.65 m',
            insulation: 'C',
            ambient: '70 degC',
          }
        : one,
    );
    // Both have as many coils only when the number is even; where nothing keeps every rule each is as by itself.
    const both = run(design(JSON.stringify({ ...text, feed })));
    const runs = both.evaluation.design.runs.flatMap(({ name }, at) =>
      /^(left|right)$/.test(name) ? [at] : [],
    );
    const [a, b] = runs.map((at) => both.evaluation.value('gauge', { run: at }));
    return (text.ignition as { coils: unknown[] }).coils.length % 2 === 1 || !solved(both) || a === b
      ? []
      : [`${a} and ${b}`];
  });
  expect(found).toEqual([]);
  expect(banks).toBeGreaterThan(2);
});

test('loosening a limit never fails what passed', () => {
  const found = offenders((seed) => {
    const { result } = of(seed);
    if (!solved(result)) return [];
    const { design: d } = result.evaluation;
    const looser: Partial<Design['limits']>[] = [
      { drop: Math.min(10, d.limits.drop * 3) },
      { wire_load: 1 },
      { energy: 1e-5 },
      { wire_load: 1, drop: Math.min(10, d.limits.drop * 1.5) },
    ];
    return looser.flatMap((limits) =>
      added(result, run({ ...d, limits: { ...d.limits, ...limits } })).map(
        (what) => `${Object.keys(limits)}: ${what}`,
      ),
    );
  });
  expect(found).toEqual([]);
});
