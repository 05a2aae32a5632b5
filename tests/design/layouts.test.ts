/** Coils and firings of every layout. Angles are worked out by hand from the firing order. */
import { expect, test } from 'vitest';
import { base, design } from './helpers.ts';

const LAYOUT = 'layout: coil_per_cylinder';
const ORDER = 'firing_order: [1, 3, 4, 2]';

test('a coil per cylinder fires once a cycle, in firing order', () => {
  const { engine, coils, events } = design(base());
  expect(engine.firing_angles).toEqual([0, 180, 360, 540]);
  expect(coils).toEqual([
    { id: '1', fires_at: [0] },
    { id: '3', fires_at: [180] },
    { id: '4', fires_at: [360] },
    { id: '2', fires_at: [540] },
  ]);
  expect(events).toEqual([
    { coil: 0, angle: 0 },
    { coil: 1, angle: 180 },
    { coil: 2, angle: 360 },
    { coil: 3, angle: 540 },
  ]);
});

test('a 2-stroke engine fires every cylinder within one turn', () => {
  const { engine } = design(base(['stroke: 4', 'stroke: 2']));
  expect(engine.firing_angles).toEqual([0, 90, 180, 270]);
});

test('wasted sparks fall one turn later, and coils that fire together stand in firing order', () => {
  const { coils, events } = design(base([LAYOUT, 'layout: wasted_coil_per_cylinder']));
  expect(coils).toEqual([
    { id: '1', fires_at: [0, 360] },
    { id: '3', fires_at: [180, 540] },
    { id: '4', fires_at: [0, 360] },
    { id: '2', fires_at: [180, 540] },
  ]);
  expect(events.map((e) => [e.angle, e.coil])).toEqual([
    [0, 0],
    [0, 2],
    [180, 1],
    [180, 3],
    [360, 0],
    [360, 2],
    [540, 1],
    [540, 3],
  ]);
});

test('wasted sparks of 14 cylinders: angles that rounding could part are one', () => {
  const order = 'firing_order: [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14]';
  const { events } = design(
    base(['cylinders: 4', 'cylinders: 14'], [ORDER, order], [LAYOUT, 'layout: wasted_coil_per_cylinder']),
  );
  expect(events).toHaveLength(28);
  expect(new Set(events.map((e) => e.angle)).size).toBe(14);
});

test('a coil per pair fires every turn and is named by its cylinders in firing order', () => {
  const { coils, events } = design(base([LAYOUT, 'layout: coil_per_pair']));
  expect(coils).toEqual([
    { id: '1+4', fires_at: [0, 360] },
    { id: '3+2', fires_at: [180, 540] },
  ]);
  expect(events.map((e) => e.coil)).toEqual([0, 1, 0, 1]);
});

test('pairs of an uneven engine', () => {
  const angles = `${ORDER}\n  firing_angles: [0, 90, 360, 450 deg]`;
  const { coils } = design(base([ORDER, angles], [LAYOUT, 'layout: coil_per_pair']));
  expect(coils).toEqual([
    { id: '1+4', fires_at: [0, 360] },
    { id: '3+2', fires_at: [90, 450] },
  ]);
});

test('a single coil fires for every cylinder', () => {
  const { coils, events } = design(base([LAYOUT, 'layout: single_coil']));
  expect(coils).toEqual([{ id: '1', fires_at: [0, 180, 360, 540] }]);
  expect(events).toHaveLength(4);
});

test('listed coils keep the order of the list and fire by angle', () => {
  const list =
    'layout: listed\n  coils: [{id: rear, fires_at: [90, 450 deg]}, {id: front, fires_at: [0, 90]}]';
  const { coils, events, wires } = design(base([LAYOUT, list]));
  expect(coils).toEqual([
    { id: 'rear', fires_at: [90, 450] },
    { id: 'front', fires_at: [0, 90] },
  ]);
  expect(events.map((e) => [e.angle, e.coil])).toEqual([
    [0, 1],
    [90, 0],
    [90, 1],
    [450, 0],
  ]);
  expect(wires.map((w) => w.id)).toEqual(['main', 'drop.rear', 'drop.front', 'strap']);
});
