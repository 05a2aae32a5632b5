/** A remedy is told only when the whole design was evaluated with it; carried out by hand in the text it does the same. */
import { expect, test } from 'vitest';
import { readDesign } from '../../src/design/read.ts';
import type { Evaluation } from '../../src/engine/evaluate.ts';
import { alternativesOf } from '../../src/remedies/alternatives.ts';
import { remediesOf } from '../../src/remedies/tried.ts';
import { run } from '../../src/run.ts';
import { bought } from '../../src/views/buy.ts';
import { alternativesText } from '../../src/writers/alternatives.ts';
import { remedyText } from '../../src/writers/remedies.ts';
import { report } from '../../src/writers/report.ts';
import { demo, design } from '../design/helpers.ts';
import { feedDesign } from '../protection/random.ts';
import { EIGHT } from './eight.ts';

const failing = (text: string) => run(design(text)).findings.filter(({ verdict }) => verdict === 'fail');

test('eight coils on thin branches: main, its fuse and its relay are fine; fuses or larger wire for the branches', () => {
  const result = run(design(EIGHT));
  expect(result.verdict).toBe('fail');
  expect(new Set(failing(EIGHT).map(({ subject }) => subject))).not.toContain('main');
  const remedies = remediesOf(result, run);
  const kinds = remedies.map((remedy) => remedyText(remedy, 'metric'));
  expect(kinds.some((text) => /fuse, type \w, at the head of each of the 8 wires of branch/.test(text))).toBe(
    true,
  );
  expect(kinds.some((text) => /\d+ (?:AWG|SAE) for branch in place of 20 (?:AWG|SAE)/.test(text))).toBe(true);
  expect(remedies.length).toBeLessThanOrEqual(3);
  // The reason comes before all figures, and nothing is to be bought.
  const text = report(result, {}, remedies);
  expect(text).toMatch(/\nWhy\n {2}Nothing fails in main[. ]/);
  expect(text.indexOf('What would pass')).toBeLessThan(text.indexOf('Findings'));
  expect(text).not.toContain('What to buy');
});

test('a larger size carried out in the text of the design passes as was said', () => {
  const remedies = remediesOf(run(design(EIGHT)), run);
  const size = remedies.find(({ says }) => /^\d+ \w+ for /.test(says[0] ?? ''));
  const sizes = [...(size?.says ?? []).join(', ').matchAll(/(\d+ \w+) for ([a-z ]+?) in place of/g)];
  const carried = sizes.reduce(
    (text, [, gauge, run]) => text.replace(new RegExp(`(run: ${run}\\n[^]*?gauge: )\\d+ AWG`), `$1${gauge}`),
    EIGHT,
  );
  expect(carried).not.toBe(EIGHT);
  expect(failing(carried)).toHaveLength(size?.failing as number);
  expect(run(design(carried)).verdict).toBe(size?.verdict);
});

test('what each remedy mends passes when it is carried out, and nothing fails that did not: random designs that fail', () => {
  let told = 0;
  for (let seed = 1; seed <= 400 && told < 12; seed++) {
    const read = readDesign(JSON.stringify(feedDesign(seed)), 'x');
    if (!read.ok) continue;
    const result = run(read.design);
    if (result.verdict !== 'fail') continue;
    const before = new Set(
      result.findings.filter((f) => f.verdict === 'fail').map((f) => `${f.rule} ${f.subject}`),
    );
    const remedies = remediesOf(result, run);
    expect(remedies.length).toBeLessThanOrEqual(3);
    for (const remedy of remedies) {
      told += 1;
      const after = run(remedy.design);
      const left = after.findings.filter((f) => f.verdict === 'fail').map((f) => `${f.rule} ${f.subject}`);
      expect(remedy.mends.length, `${seed}`).toBeGreaterThan(0);
      expect(
        left.filter((one) => !before.has(one)),
        `${seed}`,
      ).toEqual([]);
      for (const { rule, subject } of remedy.mends)
        expect(left, `${seed}`).not.toContain(`${rule} ${subject}`);
      expect([after.verdict, left.length]).toEqual([remedy.verdict, remedy.failing]);
      // A short is not mended by what the driver does.
      expect(remedy.says.join()).not.toMatch(/limit/);
    }
  }
  expect(told).toBeGreaterThanOrEqual(12);
}, 120_000);

test('a main too thin for any branch: of all its sizes that with which the whole has least copper, the branches named', () => {
  const thin = (size: string) =>
    EIGHT.replace('gauge: 8 AWG', `gauge: ${size}`)
      .replace('gauge: 20 AWG', 'gauge: auto')
      .replace('gauge: 16 AWG', 'gauge: auto');
  const found = remediesOf(run(design(thin('14 AWG'))), run).find(({ says }) =>
    / for main in place/.test(says[0] ?? ''),
  );
  // Every size that is made, tried one after the other.
  const ways = ['12', '10', '8', '6', '4', '2', '1', '1/0', '2/0'].flatMap((size) => {
    const { evaluation: e, verdict } = run(design(thin(`${size} AWG`)));
    return verdict === 'fail' ? [] : [{ size, copper: e.number('copper_total') as number }];
  });
  const least = ways.reduce((a, b) => (b.copper < a.copper ? b : a));
  expect(ways.length).toBeGreaterThan(1);
  expect(found?.says).toEqual([`${least.size} SAE for main in place of 14 SAE`]);
  expect(found?.copperInAll).toBe(least.copper);
  expect(found?.chosen.map((words) => words.replace(/^\S+ SAE for /, ''))).toEqual(['branch', 'coil ground']);
});

test('a unit off by a thousand: the input with the other unit is tried, and mends the energy of the coil', () => {
  const open = EIGHT.replace(/gauge: \d+ AWG/g, 'gauge: auto');
  const told = (from: string, to: string) =>
    remediesOf(run(design(open.replace(from, to))), run).flatMap(({ says, mends }) =>
      mends.some(({ rule }) => rule === 'energy') ? says : [],
    );
  expect(told('dwell: 3.0 ms', 'dwell: 3.0 us')).toContain(
    '`ignition.dwell` a thousand times as long, if its unit is wrong',
  );
  expect(told('inductance: 2.1 mH', 'inductance: 2.1 H')).toContain(
    '`coil.inductance` a thousandth of it, if its unit is wrong',
  );
  expect(told('2.1 mH', '2.1 uH')).toContain(
    '`coil.inductance` a thousand times as much, if its unit is wrong',
  );
});

test('a relay for 12 V at 28 V: one for 24 V is tried, at the same power', () => {
  const text = EIGHT.replace('supply: 9.6 V', 'supply: 18 V')
    .replace('supply: 14.2 V', 'supply: 28 V')
    .replace('dwell: 3.0 ms', 'dwell: 1.5 ms');
  const found = remediesOf(run(design(text)), run).find(({ says }) => /coil for 24 V/.test(says.join()));
  // 6.5 V and 90 Ω for 12 V: 13 V and 360 Ω for 24 V.
  expect(found?.says.join()).toContain('a relay with a coil for 24 V that pulls in at 13.0 V or less');
  expect(found?.design.runs[0]?.relay).toMatchObject({ pull_in: 13, coil: 360 });
  expect(found?.mends.map(({ rule }) => rule)).toContain('relay_coil');
});

test('conductors in parallel are bought as many times', () => {
  const two = EIGHT.replace('gauge: 8 AWG', 'gauge: 8 AWG\n    conductors: 2');
  expect(bought(run(design(two)).evaluation).map(({ lengths }) => lengths.split(' ')[0])).toEqual([
    '2',
    '8',
    '8',
  ]);
});

test('a design that passes has no remedies', () => {
  expect(remediesOf(run(design(demo('pair-four'))), run)).toEqual([]);
});

test('alternatives: two sizes of wire, a fuse for each bank, one for each coil; no size where none would do', () => {
  const found = alternativesOf(design(demo('two-bank-v8')), run);
  expect(found.map(({ name }) => name)).toEqual([
    'as designed',
    'two sizes of wire',
    'fuse for each bank',
    'fuse for each coil',
  ]);
  const fuses = found.map(({ result }) =>
    result.evaluation.design.runs.filter(({ fuse }) => fuse).map(({ name }) => name),
  );
  expect(fuses).toEqual([['main'], ['main'], ['main', 'left trunk', 'right trunk'], ['main', 'branch']]);
  const text = alternativesText(found);
  expect(text.split('\n').filter((line) => [...line].length > 80)).toEqual([]);
  found.forEach(({ result }, i) => {
    if (result.verdict !== 'fail') return;
    const row = text.split('\n').find((line) => line.startsWith('  branch  ')) ?? '';
    expect(row.trim().split(/ {2,}/)[i + 1]).toBe('none');
  });
});

test('alternatives: where a rule fails that no size can meet, the sizes that were found are told, and that rule', () => {
  // 2 mΩ and 150 mm of copper: a short behind the fuse draws some thousand amperes, more than a blade fuse interrupts.
  const stiff = EIGHT.replace('20 mohm', '2 mohm').replace(/gauge: \d+ AWG/g, 'gauge: auto');

  const [asDesigned] = alternativesOf(design(stiff), run);
  expect(failing(stiff).map(({ rule }) => rule)).toEqual(['breaking']);
  const text = alternativesText(asDesigned ? [asDesigned] : []);
  expect(text).toMatch(/^ {2}branch +\d+ SAE$/m);
  expect(text).toMatch(/^ {2}as designed fails: Fuse: breaking capacity$/m);
});

test('alternatives: a shop’s two sizes, and any size beside the stock, each as if the design stated it', () => {
  const stocked = design(
    demo('two-bank-v8').replace(/^sizes: .*$/m, 'sizes: { stock: [6 SAE, 10 SAE, 12 SAE] }'),
  );
  const found = alternativesOf(stocked, run);
  const of = (name: string) => found.find((way) => way.name === name)?.result.evaluation as Evaluation;
  const sizes = (e: Evaluation) => e.design.runs.map((_, at) => String(e.value('gauge', { run: at })));
  const open = stocked.runs.flatMap(({ gauge }, at) => (gauge === 'auto' ? [at] : []));
  const several = (at: number) => stocked.wires.some(({ run: own, coils }) => own === at && coils.length > 1);
  for (const shared of [true, false]) {
    const own = open.filter((at) => several(at) === shared);
    expect(own.length).toBeGreaterThan(1);
    expect(new Set(own.map((at) => sizes(of('two sizes of wire'))[at])).size, `${shared}`).toBe(1);
  }
  for (const at of open) expect(stocked.sizes.stock).toContain(sizes(of('as designed'))[at]);
  // More sizes to choose from: some that the stock has not, and no more copper.
  expect(open.some((at) => !stocked.sizes.stock?.includes(sizes(of('any size'))[at] as string))).toBe(true);
  expect(of('any size').number('copper_total')).toBeLessThanOrEqual(
    of('as designed').number('copper_total') as number,
  );
  for (const { name, what, result } of found) {
    expect(what === '', name).toBe(name === 'as designed');
    const { evaluation: e } = result;
    if (e.number('solved') !== 1) continue;
    const stated = sizes(e);
    const again = run({
      ...e.design,
      runs: e.design.runs.map((own, at) => ({ ...own, gauge: stated[at] as string })),
    });
    expect([again.verdict, again.evaluation.number('copper_total')], name).toEqual([
      result.verdict,
      e.number('copper_total'),
    ]);
  }
  const lines = alternativesText(found).split('\n');
  expect(lines.filter((line) => [...line].length > 80)).toEqual([]);
  expect(lines.filter((line) => line.startsWith('  Copper '))).not.toHaveLength(0);
});

test('alternatives: one main fuse is in the main, also where only the branches had fuses', () => {
  const branches = EIGHT.replace(/^ +fuse: .*\n/m, '').replace(
    'gauge: 20 AWG',
    'gauge: 20 AWG\n    fuse: { type: C, rating: 7.5 A, ambient: 60 degC }',
  );
  const way = alternativesOf(design(branches), run).find(({ name }) => name === 'one main fuse');
  const runs = way?.result.evaluation.design.runs ?? [];
  expect(runs.filter(({ fuse }) => fuse).map(({ name }) => name)).toEqual(['main']);
});

test('the report keeps to sixty lines of eighty columns, with every caution, in any units', () => {
  for (const text of [...['hill-climb-six', 'two-bank-v8', 'pair-four'].map(demo), EIGHT])
    for (const units of ['metric', 'us', 'both'] as const) {
      const result = run({ ...design(text), units });
      const lines = report(result, {}, remediesOf(result, run)).trimEnd().split('\n');
      expect(lines.length, `${result.evaluation.design.title}, ${units}`).toBeLessThanOrEqual(60);
      expect(lines.filter((line) => [...line].length > 80)).toEqual([]);
      expect(lines.filter((line) => line.startsWith('  - '))).not.toHaveLength(0);
    }
});

test('units: lengths, temperatures and masses in those that are asked for, by converting values', () => {
  const of = (units: 'us' | 'metric' | 'both') =>
    report(run({ ...design(demo('hill-climb-six')), units }), { all: true });
  // 1.50 m is 59.1 in, 0.450 m 17.7 in: 25.4 mm to the inch. 60 °C is 140 °F, 95 °C 203 °F.
  expect(of('us')).toContain('1 × 59.1 in');
  expect(of('us')).toContain('6 × 17.7 in');
  expect(of('us')).toMatch(/Insulation: ambient +branch \+\d +203 °F/);
  expect(of('us')).not.toMatch(/\d (?:m|mm|g|°C)\b(?![²Ω])/);
  expect(of('metric')).not.toMatch(/°F|\d in\b/);
  expect(of('both')).toContain('1 × 1.50 m (59.1 in)');
});

test('a fuse too far from the battery: the place where it may sit at the farthest, 7 in (33 CFR 183.455)', () => {
  const far = EIGHT.replace(/from_source: [\d.]+ \w+/, 'from_source: 0.4 m');
  expect(far).not.toBe(EIGHT);
  expect(failing(far).map(({ rule }) => rule)).toContain('fuse_distance');
  const mends = remediesOf(run(design(far)), run).flatMap((remedy) =>
    remedy.says.map((text) => ({ text, rules: remedy.mends.map(({ rule }) => rule) })),
  );
  const place = mends.find(({ text }) => text.startsWith('the fuse of main at most'));
  expect(place?.text).toMatch(/177\.8 mm from the source/);
  expect(place?.rules).toContain('fuse_distance');
});
