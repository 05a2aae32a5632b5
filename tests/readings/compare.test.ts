/** Two feeds side by side: against each other, and against what the single results say. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { checked } from '../../src/readings/check.ts';
import { compare } from '../../src/readings/compare.ts';
import { alikeSize } from '../../src/readings/sizes.ts';
import { run } from '../../src/run.ts';
import { circuitAt } from '../../src/transient/circuit.ts';
import { wireFigures } from '../../src/transient/figures.ts';
import { steady } from '../../src/transient/steady.ts';
import { compareReport } from '../../src/writers/compare-report.ts';
import { coilfeed } from '../cli/tool.ts';
import { demo, design } from '../design/helpers.ts';
import { caseText } from './cases.ts';

const thin = demo('pair-four').replace(/gauge: auto/g, 'gauge: 1 mm2');
const side = (name: string, text: string) => {
  const d = design(text);
  return { name, title: d.title, result: run(d) };
};

test('a feed beside itself: every figure twice, nothing appears or vanishes', () => {
  const c = compare(side('A', demo('pair-four')), side('B', demo('pair-four')));
  expect(c.points).toHaveLength(4);
  for (const { figures } of c.points) expect(figures[0]).toEqual(figures[1]);
  expect([c.vanish, c.appear, c.stay]).toEqual([[], [], []]);
});

test('thinner wire: less copper, more heat, less of everything at the coil; turned round, the other way', () => {
  const [a, b] = [side('A', thin), side('B', demo('pair-four'))];
  const there = compare(a, b);
  for (const { figures } of there.points) {
    const [thinner, own] = figures;
    expect(own.supply_V).toBeGreaterThan(thinner.supply_V as number);
    expect(own.energy_J).toBeGreaterThan(thinner.energy_J as number);
    expect(own.heat_W).toBeLessThan(thinner.heat_W as number);
    // On a stiff supply the wire does not matter.
    expect(own.average_A).toBe(thinner.average_A);
  }
  expect(there.vanish.map(({ rule }) => rule)).toContain('drop');
  const back = compare(b, a);
  expect(back.appear.map(({ rule }) => rule)).toEqual(there.vanish.map(({ rule }) => rule));
});

test('heat in the wiring: what the exact currents make, or a little more', () => {
  const { evaluation: e } = side('A', demo('hill-climb-six')).result;
  const course = steady(circuitAt(e, 3));
  const exact = course.circuit.wires.reduce(
    (sum, { ohm }, i) => sum + ohm * wireFigures(course, i).effective ** 2,
    0,
  );
  const ratio = (e.number('wiring_heat', { point: 3 }) as number) / exact;
  // Loads are counted on a stiff supply: this feed keeps 95.7 % of the energy, and heat goes with the current squared, as
  // energy does; the average course of a charge loses less than its end.
  expect(ratio).toBeGreaterThanOrEqual(1);
  expect(ratio).toBeLessThan(1 / 0.957);
});

test('the report keeps to 80 columns', () => {
  const text = compareReport(compare(side('A', thin), side('B', demo('pair-four'))));
  expect(text.split('\n').filter((line) => [...line].length > 80)).toEqual([]);
});

test('points are matched by name', () => {
  const other = demo('pair-four').replace('name: motorway', 'name: hill');
  const c = compare(side('A', demo('pair-four')), side('B', other));
  expect(c.points.map(({ name }) => name)).toEqual(['cranking', 'idle', 'limiter']);
  expect(c.alone).toEqual([['motorway'], ['hill']]);
});

const folder = (): string => {
  const path = mkdtempSync(join(tmpdir(), 'coilfeed-compare-'));
  onTestFinished(() => rmSync(path, { recursive: true, force: true }));
  return path;
};

test('one design with its original wiring; workbook and picture are written', async () => {
  const at = folder();
  const file = join(at, 'both.yaml');
  const text = demo('pair-four');
  const original = text
    .slice(text.indexOf('\nfeed:') + 1, text.indexOf('\nlimits:'))
    .replace(/gauge: auto/g, 'gauge: 1 mm2');
  const inside = original.replace(/^/gm, '  ').replace(/^ +$/gm, '');
  writeFileSync(file, `${text}\noriginal:\n${inside}`);
  const ran = await coilfeed(['compare', file, '--out', join(at, 'c.xlsx'), '--out', join(at, 'c.png')]);
  expect(ran.err).toBe('');
  expect(ran.status).toBe(0);
  expect(ran.out).toContain('A  FAIL  Original wiring');
  expect(ran.out).toContain('B  PASS  ');
  expect(readFileSync(join(at, 'c.xlsx')).subarray(0, 2).toString()).toBe('PK');
  expect(readFileSync(join(at, 'c.png')).subarray(1, 4).toString()).toBe('PNG');
});

test('a design without another feed, and three designs, are refused', async () => {
  const at = folder();
  const file = join(at, 'one.yaml');
  writeFileSync(file, demo('pair-four'));
  const alone = await coilfeed(['compare', file]);
  expect([alone.status, alone.out]).toEqual([2, '']);
  expect(alone.err).toContain('has no other feed');
  expect((await coilfeed(['compare', file, file, file])).status).toBe(2);
  expect((await coilfeed(['compare', file, file, '--out', join(at, 'c.pdf')])).err).toContain(
    '.xlsx, .html,',
  );
});

test('JSON: pairs in the order of the sides', async () => {
  const at = folder();
  const [a, b] = [join(at, 'a.yaml'), join(at, 'b.yaml')];
  writeFileSync(a, thin);
  writeFileSync(b, demo('pair-four'));
  const { out, status } = await coilfeed(['compare', a, b, '--json']);
  const json = JSON.parse(out);
  expect(status).toBe(0);
  expect(json.format).toBe('coilfeed-compare/1');
  expect(json.sides.map((s: { verdict: string }) => s.verdict)).toEqual(['fail', 'pass']);
  expect(json.points[0].supply_V[0]).toBeLessThan(json.points[0].supply_V[1]);
});

test('check: exit statuses, JSON and the workbook with the card', async () => {
  const at = folder();
  const file = join(at, 'case.yaml');
  writeFileSync(file, caseText('corroded-return'));
  const ran = await coilfeed(['check', file, '--json', '--out', join(at, 'card.xlsx')]);
  expect(ran.status).toBe(1);
  const { check, format, verdict } = JSON.parse(ran.out);
  expect([format, verdict]).toEqual(['coilfeed-result/1', 'fail']);
  expect(check.causes).toHaveLength(1);
  expect(check.causes[0]).toMatchObject({
    kind: 'wire',
    how: 'resistance',
    subject: 'engine strap',
    or_else: [],
  });
  const sound = caseText('corroded-return').replace(/measured:[\s\S]*/, '');
  writeFileSync(file, sound);
  expect((await coilfeed(['check', file])).status).toBe(0);
  writeFileSync(file, sound.replace('gauge: 10 AWG', 'gauge: 10'));
  expect((await coilfeed(['check', file])).status).toBe(2);
});

test('another supply at the posts is no fault; a drop that is too low is not one of the feed', () => {
  const sound = caseText('corroded-return').replace(/measured:[\s\S]*/, '');
  const check = (readings: string) => checked(run(design(`${sound}measured:\n${readings}\n`)));
  const posts = check('  - { what: supply, point: idle, meter: 13.0 V }');
  expect([posts.verdict, posts.mend.map(({ harm }) => harm)]).toEqual(['unknown', ['note']]);
  // Half the drop that is the least for sound parts: less current than there should be, or the reading itself.
  const low = check('  - { what: drop, run: main, point: limiter, meter: 20 mV }');
  expect(low.verdict).toBe('fail');
  const likely = [...low.diagnosis.found.flat(), ...low.diagnosis.suspects].map(({ part }) => part.is);
  expect(likely[0]).toBe('dwell');
  expect(likely).not.toContain('wire');
});

test('a thinner conductor than stated is named as what the resistance could be', () => {
  const e = run(design(caseText('corroded-return'))).evaluation;
  const main = e.design.wires.findIndex(({ id }) => id === 'main');
  // 16 AWG has four times the resistance of 10 AWG, by the formula of ASTM B258: 92^(6/19.5) = 4.02.
  const own = e.number('wire_copper_ohm', { wire: main }) as number;
  expect(alikeSize(e, main, own * 3.02)).toBe('16 AWG');
  // Twenty times as much is no wire that anybody takes for the other.
  expect(alikeSize(e, main, own * 20)).toBeNull();
});
