/** docs/cases.md: its quotations against the tool, its readings against the circuit simulator. */
import { describe, expect, test } from 'vitest';
import { checked } from '../../src/readings/check.ts';
import { run } from '../../src/run.ts';
import { checkReport } from '../../src/writers/check-report.ts';
import { design } from '../design/helpers.ts';
import { describeWithPeer } from '../peers/peer.ts';
import { CASES, caseText, page, simulated } from './cases.ts';

const results = new Map(CASES.map(({ name }) => [name, checked(run(design(caseText(name))))] as const));
const of = (name: string) => {
  const found = results.get(name);
  if (!found) throw new Error(`no case ${name}`);
  return found;
};

/** The section of the page that names the file, up to the next one. */
const sectionOf = (name: string): string =>
  page()
    .split('\n## ')
    .find((section) => section.includes(`\`${name}.yaml\``)) ?? '';

describe.each(CASES)('$name', ({ name }) => {
  test('every quoted line stands in the report', () => {
    const quoted = [...sectionOf(name).matchAll(/```\n([\s\S]*?)```/g)].flatMap(([, block = '']) =>
      block.trimEnd().split('\n'),
    );
    expect(quoted.length).toBeGreaterThan(3);
    const lines = checkReport(of(name)).split('\n');
    expect(quoted.filter((line) => !lines.includes(line))).toEqual([]);
  });

  test('fails as the page says', () => expect(of(name).verdict).toBe('fail'));
});

test('the page has a section for each case, and none without one', () => {
  const named = [...page().matchAll(/^`([\w-]+)\.yaml`/gm)].map(([, name]) => name);
  expect(named).toEqual(CASES.map(({ name }) => name));
});

describe('what the page says in its own words', () => {
  test('a corroded joint: the run, and its size within 10 % of what was put in', () => {
    const { found } = of('corroded-return').diagnosis;
    const [[cause, ...others] = []] = found;
    expect(found).toHaveLength(1);
    expect(others).toEqual([]);
    expect(cause?.how).toBe('resistance');
    expect(Math.abs((cause?.size ?? 0) / 0.035 - 1)).toBeLessThan(0.1);
  });

  test('a sound feed with the wrong instrument: no rule fails', () => {
    const { result, mend } = of('misleading-meter');
    expect(result.verdict).toBe('pass');
    expect(mend.map(({ harm }) => harm)).toEqual(['note']);
  });

  test('wasted spark: twice the average of one spark a cycle, at every point', () => {
    const e = of('wasted-spark').result.evaluation;
    const single = run(
      design(caseText('wasted-spark').replace('wasted_coil_per_cylinder', 'coil_per_cylinder')),
    );
    e.design.points.forEach((_, point) => {
      const at = { wire: 0, point };
      expect(
        (e.number('average', at) as number) / (single.evaluation.number('average', at) as number),
      ).toBeCloseTo(2, 9);
    });
  });

  test('a stuck driver: supply over resistance', () => {
    // (14.2 V − 1.0 V)/(0.9 · 0.42 Ω + 29.3 mΩ), by hand: 32.41 A.
    expect(of('stuck-driver').result.evaluation.number('path_cold', { event: 0 })).toBeCloseTo(0.0293, 4);
    expect(of('stuck-driver').result.evaluation.number('stuck_current', { run: 1 })).toBeCloseTo(32.41, 2);
  });

  test('a hot relay: 7.2 V at 20 °C is 10.2 V at 125 °C of its winding', () => {
    expect(of('relay-drops-out').result.evaluation.number('relay_pull_in', { run: 0 })).toBeCloseTo(10.17, 2);
  });
});

describeWithPeer('ngspice', 'the readings of the cases', () => {
  test.each(CASES)(
    '$name',
    (one) => {
      const { evaluation: e } = of(one.name).result;
      const show = simulated(e, one);
      e.design.measured.forEach((reading, i) => {
        const truth = show({ ...reading, instrument: one.takenWith?.[i] ?? reading.instrument });
        // Two or three figures are what an instrument shows: at worst half a unit of the second one in 10.
        expect(Math.abs(reading.value / truth - 1), `${reading.path} ${truth}`).toBeLessThan(0.03);
      });
    },
    60_000,
  );
});
