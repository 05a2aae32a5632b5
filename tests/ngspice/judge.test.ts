/** ngspice judges the exact currents, and the exact currents judge the closed forms. */
import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { describeWithPeer } from '../peers/peer.ts';
import { type Measured, measure } from './accuracy.ts';
import { CASES, LIMIT_LOST } from './cases.ts';
import { accuracyPage, ceiling, percent } from './page.ts';

// Of the task: what the exact currents may be off the simulator.
const PEAKS = 0.001;
const MEANS = 0.002;

/** A difference of 1e-9 is rounding of sums of a few terms: the closed forms are exact where nothing drops. */
const ROUNDING = 1e-9;

describeWithPeer('ngspice', 'currents in time', () => {
  const all: Measured[] = [];
  // A fault in one design must not hide the others.
  const failed = new Map<string, unknown>();
  beforeAll(() => {
    for (const one of CASES)
      try {
        all.push(measure(one));
      } catch (error) {
        failed.set(one.name, error);
      }
  });
  const of = (name: string): Measured => {
    if (failed.has(name)) throw failed.get(name);
    return all.find((one) => one.name === name) as Measured;
  };

  describe.each(CASES)('$name', ({ name }) => {
    test('the exact currents are those of the simulator', () => {
      const { peak, supply, average, effective } = of(name).simulator;
      expect(peak).toBeLessThanOrEqual(PEAKS);
      expect(supply).toBeLessThanOrEqual(PEAKS);
      expect(average).toBeLessThanOrEqual(MEANS);
      expect(effective).toBeLessThanOrEqual(MEANS);
    });

    test('the closed forms: loads never below, energy within 0.5 % or low', () => {
      const { drop, loads, energy, supply } = of(name).closed;
      expect(loads[0]).toBeGreaterThanOrEqual(-ROUNDING);
      if (drop <= 0.7) expect(Math.abs(energy)).toBeLessThanOrEqual(0.005);
      else expect(energy).toBeLessThanOrEqual(0.005);
      expect(supply).toBeLessThanOrEqual(ROUNDING);
    });
  });

  test('the cases hold what they are named after', () => {
    const named = (part: string): Measured => of(CASES.find(({ name }) => name.includes(part))?.name ?? part);
    // Two coils or more at a time.
    expect(named('overlapping').trace.course.segments.some(({ on }) => on.length > 1)).toBe(true);
    expect(named('dwell cut').evaluation.number('clipped', { speed: 0 })).toBe(1);
    expect(named('eight').trace.circuit.coils).toBe(8);
    expect(named('held to the end').trace.coils[0]?.peak.exact).toBe(12);
    expect(named('very poor').closed.drop).toBeGreaterThan(2);
    // A coil at its limit whose current has fallen at the end of the segment after.
    const { segments, circuit } = of(LIMIT_LOST).trace.course;
    const atLimit = (i: number, coil: number): boolean =>
      segments[i]?.currents[coil]?.level === circuit.limit;
    const lost = segments.some(
      ({ on }, i) =>
        i > 0 &&
        on.some((coil) => atLimit(i - 1, coil) && !atLimit(i, coil) && segments[i - 1]?.on.includes(coil)),
    );
    expect(lost).toBe(true);
  });

  test('docs/accuracy.md tells what was measured; when stale: npx vitest run tests/ngspice -u', async () => {
    expect([...failed.keys()]).toEqual([]);
    const page = readFileSync(new URL('../../docs/accuracy.md', import.meta.url), 'utf8');
    // The diagnosis of readings has its own test.
    const rest = page.slice(page.indexOf('## Diagnosis of readings'));
    await expect(accuracyPage(all, rest)).toMatchFileSnapshot('../../docs/accuracy.md');
  });
});

test('a difference is rounded up, a share has its sign', () => {
  expect([0.0000004, 0.00001, 0.000011, 0.004, 0.006].map(ceiling)).toEqual([
    '≤ 0.001',
    '≤ 0.001',
    '≤ 0.002',
    '≤ 0.5',
    'more than 0.5',
  ]);
  expect([0.0123, -0.00456, -0.00001].map(percent)).toEqual(['+1.23', '−0.46', '0.00']);
});
