/** Readings as a design lists them: what each names, in the units of the design. */
import { expect, test } from 'vitest';
import { base, design } from '../design/helpers.ts';

test('an entry gives one reading for each instrument, where it was taken', () => {
  const found = design(`${base()}
measured:
  - { what: drop, run: main, point: idle, meter: 120 mV, scope: 0.4 V }
  - { what: drop, run: drop, coil: 3, point: idle, meter: 0.01 V }
  - { what: drop, run: drop.4, point: idle, meter: 0.01 V }
  - { what: supply, coil: "2", point: idle, scope: 12.9 V }
  - { what: supply, point: idle, meter: 13.5 V }
  - { what: current, coil: "2", point: idle, clamp_peak: 12 A }
  - { what: resistance, run: strap, value: 12 mohm }
`);
  const id = (wire: number | null): string | null => (wire === null ? null : (found.wires[wire]?.id ?? ''));
  expect(
    found.measured.map((m) => [
      m.what,
      id(m.wire),
      m.coil === null ? null : found.coils[m.coil]?.id,
      m.instrument,
      m.value,
    ]),
  ).toEqual([
    ['drop', 'main', null, 'meter', 0.12],
    ['drop', 'main', null, 'scope', 0.4],
    ['drop', 'drop.3', null, 'meter', 0.01],
    ['drop', 'drop.4', null, 'meter', 0.01],
    ['supply', null, '2', 'scope', 12.9],
    ['supply', null, null, 'meter', 13.5],
    ['current', null, '2', 'clamp_peak', 12],
    ['resistance', 'strap', null, 'value', 0.012],
  ]);
  expect(found.measured.at(-1)?.point).toBeNull();
});

test('tolerances that are left out are listed apart, but for that of the coil, on which a size depends', () => {
  const found = design(`${base()}\ntolerance: { dwell: 2 %, coil_warmer: 0 K }\n`);
  expect(found.tolerance).toMatchObject({
    coil_resistance: 0.1,
    coil_inductance: 0.1,
    coil_warmer: 0,
    dwell: 0.02,
    length: 0.1,
    joint_resistance: 0.5,
    supply: 0.02,
  });
  expect(found.tolerance_assumed.map(({ path }) => path)).toEqual([
    'tolerance.coil_inductance',
    'tolerance.length',
    'tolerance.joint_resistance',
    'tolerance.supply',
    'instruments.meter',
    'instruments.scope',
    'instruments.clamp',
    'instruments.ohmmeter',
    'instruments.trace',
    'instruments.log',
    'instruments.camera',
  ]);
  // A driver that stays on draws most through a coil at the low end.
  const sized = found.assumed.filter(({ path }) => path.startsWith('tolerance')).map(({ path }) => path);
  expect(sized).toEqual(['tolerance.coil_resistance']);
});
