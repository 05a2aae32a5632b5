/** Which point is named where several are equally bad: the same one, in whatever order they are written. */
import { expect, test } from 'vitest';
import { evaluate } from '../../src/engine/evaluate.ts';
import { demo, design } from '../design/helpers.ts';
import { known } from './harness.ts';

/**
 * The charges of a six do not overlap below 4000 rpm: 120° of the crank take 5 ms there, and the dwell is 3.2 ms. So the drops
 * at one supply are the same at any lower speed, and all but the last of these are equally bad. The effective current rises with
 * the speed: of the feed's runs those two are equally bad whose speed is the highest.
 */
const POINTS = [
  { name: 'crawling', rpm: '1200 rpm', supply: '14.2 V' },
  { name: 'again', rpm: '1200 rpm', supply: '14.2 V' },
  { name: 'walking', rpm: '900 rpm', supply: '14.2 V' },
  { name: 'waiting', rpm: '900 rpm', supply: '14.2 V' },
  { name: 'low', rpm: '800 rpm', supply: '13 V' },
];

const orders = <T>(of: readonly T[]): T[][] =>
  of.length < 2
    ? [[...of]]
    : of.flatMap((one, i) => orders(of.toSpliced(i, 1)).map((rest) => [one, ...rest]));

const evaluated = (points: typeof POINTS) =>
  evaluate(
    design(demo('hill-climb-six').replace(/^points:\n(?: .*\n)+/m, `points: ${JSON.stringify(points)}\n`)),
  );

/** The points that are named for the worst drop, and for the current of the conductors. */
function named(points: typeof POINTS): string {
  const e = evaluated(points);
  const nameOf = (number: number): string => points[number - 1]?.name ?? 'none';
  const wires = e.design.wires.map((_, wire) => nameOf(known(e, 'worst_point', { wire })));
  return [nameOf(known(e, 'worst_drop_point')), ...new Set(wires)].join(', ');
}

test('of equally bad points the one with the lowest speed, then supply, then the first by name', () => {
  // By speed 900 rpm before 1200, then "waiting" before "walking"; by current 1200 rpm, then "again" before "crawling".
  expect([...new Set(orders(POINTS).map(named))]).toEqual(['waiting, again']);
});

test('places go by speed, then supply, then name', () => {
  const more = [{ name: 'zero', rpm: '900 rpm', supply: '13.9 V' }, ...POINTS];
  const e = evaluated(more);
  const places = more.map(({ name }, point) => [known(e, 'point_place', { point }), name] as const);
  // 800 rpm; 900 rpm with 13.9 V, then two with 14.2 V by name; two of 1200 rpm by name.
  expect(places.sort(([a], [b]) => a - b)).toEqual(
    ['low', 'zero', 'waiting', 'walking', 'again', 'crawling'].map((name, i) => [i + 1, name]),
  );
});
