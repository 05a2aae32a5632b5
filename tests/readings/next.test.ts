/** What to measure next and what would not show, against the circuit simulator and definitions. */
import { expect, test } from 'vitest';
import { checked } from '../../src/readings/check.ts';
import { expectedAt, type Where } from '../../src/readings/expected.ts';
import { blinds } from '../../src/readings/unseen.ts';
import { run } from '../../src/run.ts';
import { checkReport } from '../../src/writers/check-report.ts';
import { design } from '../design/helpers.ts';
import { describeWithPeer } from '../peers/peer.ts';
import { caseText, simulated } from './cases.ts';
import { namesOf } from './named.ts';

const text = caseText('weak-cylinder');
const bare = text.replace(/\nmeasured:[\s\S]*$/, '\n');
const of = (...readings: string[]) =>
  checked(run(design(`${bare}measured:\n${readings.map((r) => `  - ${r}\n`).join('')}`)));
const weak = checked(run(design(text)));
const e = weak.result.evaluation;
const wireOf = (id: string): number => e.design.wires.findIndex((w) => w.id === id);

describeWithPeer('ngspice', 'the next reading of one weak cylinder', () => {
  test('it would show what the simulator shows with each of the two faults', () => {
    const { where, shows = [] } = weak.next ?? {};
    expect(where?.wire).toBe(wireOf('branch.3'));
    // By hand: 30 mΩ in the main drops as much on average as 120 mΩ in one of four branches.
    const truth = [
      simulated(e, { name: '', fault: { 'branch.3': 0.12 } }),
      simulated(e, { name: '', fault: { main: 0.03 } }),
    ].map((show) => show(where as Where));
    // The size that was inferred is known to about 4 %, by the digits and what the joints of the main may have; of a sound
    // branch the simulator has the warm wire of the design, the tool half of that warmth and of its tolerances.
    const off = shows.map(({ value }, k) => Math.abs(value / (truth[k] as number) - 1));
    expect(off).toHaveLength(2);
    expect(off[0]).toBeLessThan(0.05);
    expect(off[1]).toBeLessThan(0.15);
  });
});

test('with that reading in, the fault is named and nothing else', () => {
  const more = checked(
    run(design(`${text}  - { what: drop, run: branch.3, point: limiter, meter: 137 mV }\n`)),
  );
  expect(namesOf(more.result.evaluation, more.diagnosis)).toEqual([['branch.3']]);
  expect(more.diagnosis.found[0]?.[0]?.size).toBeGreaterThan(0.11);
  expect(more.diagnosis.found[0]?.[0]?.size).toBeLessThan(0.13);
});

test('no reading tells more than which of the explanations it is', () => {
  // At most the logarithm of the eight that are weighed; what is worth the way tells something.
  expect(weak.next?.gain).toBeGreaterThan(0.03);
  expect(weak.next?.gain).toBeLessThanOrEqual(Math.log(8));
});

test('an instrument that is doubted is not asked again', () => {
  // All coils read twice: the dwell, or the clamp.
  const amps = ['1', '2', '3', '4'].map(
    (coil) => `{ what: current, coil: "${coil}", point: limiter, clamp_average: 2.2 A }`,
  );
  const c = of('{ what: supply, point: limiter, meter: 14.2 V }', ...amps);
  expect(namesOf(c.result.evaluation, c.diagnosis).flat()).toContain('clamp');
  expect(c.next?.where.instrument).not.toMatch(/^clamp/);
});

test('a sound reading of one run: the others are not seen, and the hottest of them is read next', () => {
  const posts = '{ what: supply, point: limiter, meter: 14.2 V }';
  const c = of(posts, '{ what: drop, run: engine strap, point: limiter, meter: 5 mV }');
  const seen = (id: string) => c.unseen.find(({ part }) => part.is === 'wire' && part.wire === wireOf(id));
  for (const id of ['main', 'branch.3']) expect(blinds(seen(id) as never)).toBe(true);
  const strap = seen('engine strap');
  expect(strap?.size).toBeGreaterThan(0);
  // Heat is the square of the effective current times it, by definition.
  const amps = e.number('worst_effective', { wire: wireOf('engine strap') }) as number;
  expect(strap?.watts).toBeCloseTo(amps ** 2 * (strap?.size ?? 0), 12);
  expect(c.blind?.wire).toBe(wireOf('main'));
  const { low } = expectedAt(c.result.evaluation, c.blind as Where);
  expect(low).toBeGreaterThan(0);
  expect(checkReport(c).replace(/\s+/g, ' ')).toContain('No reading tells of that run yet.');
});

test('the smallest fault that would show does show, and half of it does not', () => {
  const posts = '{ what: supply, point: limiter, meter: 14.2 V }';
  const c = of(posts, '{ what: drop, run: main, point: limiter, meter: 85 mV }');
  const size = c.unseen.find(({ part }) => part.is === 'wire' && part.wire === wireOf('main'))?.size ?? 0;
  // The drop of so much more at the average current that the simulator shows, 4.47 A.
  const drop = (ohm: number) =>
    of(posts, `{ what: drop, run: main, point: limiter, meter: ${(85 + 4470 * ohm).toFixed(0)} mV }`);
  expect(drop(size * 1.3).diagnosis.sound).toBeLessThan(0.2);
  expect(drop(size / 2).diagnosis.sound).toBeGreaterThan(0.5);
});
