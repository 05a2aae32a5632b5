/** Values, runs, conductors and defaults of the design that the model takes. Numbers are converted by hand. */
import { describe, expect, test } from 'vitest';
import { starter } from '../../src/design/starter.ts';
import { base, DEMOS, demo, design } from './helpers.ts';

describe('values', () => {
  test('are numbers in the unit of the model', () => {
    const d = design(
      base(
        ['dwell: 3.0 ms', 'dwell: 3200 us\n  rest: 0.9 ms'],
        ['resistance: 0.5 ohm', 'resistance: 420 mΩ'],
        [
          'inductance: 3.0 mH',
          'inductance: 2400 µH\n  driver_drop: 1200 mV\n  max_duty: 45 %\n  temperature: 14 °F',
        ],
        ['length: 1.5 m', 'length: 5 ft'],
        ['gauge: auto', 'gauge: auto\n    capacitor: 1000 µF'],
      ),
    );
    expect(d.ignition.dwell).toEqual([{ supply: null, dwell: 0.0032 }]);
    expect(d.ignition.rest).toBe(0.0009);
    expect(d.coil.resistance).toBe(0.42);
    expect(d.coil.inductance).toBe(0.0024);
    expect(d.coil.driver_drop).toBe(1.2);
    expect(d.coil.max_duty).toBe(0.45);
    // 14 °F is 18 °F below freezing, so −10 °C; the last digit is lost in the fractions of 5/9.
    expect(d.coil.temperature).toBeCloseTo(-10, 12);
    // 5 ft of 0.3048 m, exact by definition; one rounding of a product.
    expect(d.wires[0]?.length).toBeCloseTo(1.524, 14);
    expect(d.runs[0]?.capacitor).toBe(1000);
  });

  test('minus zero is zero', () => {
    const d = design(base(['inductance: 3.0 mH', 'inductance: 3.0 mH\n  driver_drop: -0 V']));
    expect(Object.is(d.coil.driver_drop, 0)).toBe(true);
  });

  test('a dwell table is sorted by supply', () => {
    const table =
      'dwell: [{supply: 14 V, dwell: 3 ms}, {supply: 8 V, dwell: 7 ms}, {supply: 12 V, dwell: 4 ms}]';
    expect(design(base(['dwell: 3.0 ms', table])).ignition.dwell).toEqual([
      { supply: 8, dwell: 0.007 },
      { supply: 12, dwell: 0.004 },
      { supply: 14, dwell: 0.003 },
    ]);
  });

  test('a test point, or a peak alone, stand in for the inductance', () => {
    const point = 'test_point: {supply: 13.5 V, dwell: 3.0 ms, peak: 13.1 A}';
    expect(design(base(['inductance: 3.0 mH', point])).coil).toMatchObject({
      inductance: null,
      test_point: { supply: 13.5, dwell: 0.003, peak: 13.1 },
      peak: null,
    });
    expect(design(base(['inductance: 3.0 mH', 'peak: 20 A'])).coil).toMatchObject({
      inductance: null,
      test_point: null,
      peak: 20,
    });
  });

  test.each([
    ['8 AWG', '8 AWG'],
    ['8AWG', '8 AWG'],
    ['8 awg', '8 AWG'],
    ['1/0 AWG', '1/0 AWG'],
    ['4/0 AWG', '4/0 AWG'],
    ['8 SAE', '8 SAE'],
    ['6 mm2', '6 mm2'],
    ['6 mm²', '6 mm2'],
    ['0.50 mm^2', '0.5 mm2'],
    ['2.5mm2', '2.5 mm2'],
  ])('the size %s is %s', (written, read) => {
    // A strap of class C: a type of SAE J1128 would be taken by its SAE number.
    expect(design(base(['gauge: 4 AWG', `gauge: ${written}`])).runs[2]?.gauge).toBe(read);
  });

  test('SF 30 is SF30', () => {
    const d = design(base(['{ type: C, rating: auto }', '{type: SF 30, rating: 60 A}']));
    expect(d.runs[0]?.fuse).toMatchObject({ type: 'SF30', rating: 60 });
  });

  test.each([
    // 1000, 1250, … 8000: (8000 − 1000)/250 + 1.
    ['1000 rpm', '8000 rpm', '250 rpm', 29],
    // 1000, 1300, 1600, 1900; 2200 is above.
    ['1000 rpm', '2000 rpm', '300 rpm', 4],
    // 0.1, 0.2, 0.3. In binary the quotient (0.3 − 0.1)/0.1 falls just short of 2: the allowance counts the third.
    ['1.1 rpm', '3.3 rpm', '1.1 rpm', 3],
    ['900 rpm', '900 rpm', '100 rpm', 1],
  ])('a sweep from %s to %s in steps of %s has %i rows', (from, to, step, rows) => {
    const sweep = `\nsweep: {from: ${from}, to: ${to}, step: ${step}, supply: 14 V}\nfeed:`;
    expect(design(base(['\nfeed:', sweep])).sweep?.rows).toBe(rows);
  });

  test('notes are kept; without them there are none', () => {
    expect(design(base(['title: Base', 'title: Base\nnotes: |\n  Two\n  lines'])).notes).toBe('Two\nlines\n');
    expect(design(base()).notes).toBeNull();
  });
});

describe('runs and conductors', () => {
  test('feed runs stand before return runs, conductors in the order of runs and coils', () => {
    const d = design(base());
    expect(d.runs.map((r) => [r.name, r.side])).toEqual([
      ['main', 'feed'],
      ['drop', 'feed'],
      ['strap', 'return'],
    ]);
    expect(d.wires).toEqual([
      { id: 'main', run: 0, coils: [0, 1, 2, 3], length: 1.5 },
      { id: 'drop.1', run: 1, coils: [0], length: 0.5 },
      { id: 'drop.3', run: 1, coils: [1], length: 0.5 },
      { id: 'drop.4', run: 1, coils: [2], length: 0.5 },
      { id: 'drop.2', run: 1, coils: [3], length: 0.5 },
      { id: 'strap', run: 2, coils: [0, 1, 2, 3], length: 0.5 },
    ]);
  });

  test('a length for each coil, keys as numbers or text', () => {
    const lengths = 'length: {1: 10 cm, "2": 20 cm, 3: 30 cm, 4: 40 cm}\n    ambient: 90';
    const d = design(base(['length: 0.5 m\n    ambient: 90', lengths]));
    expect(d.wires.filter((w) => w.run === 1).map((w) => [w.id, w.length])).toEqual([
      ['drop.1', 0.1],
      ['drop.3', 0.3],
      ['drop.4', 0.4],
      ['drop.2', 0.2],
    ]);
  });

  test('a list of coils makes one conductor, its coils in their own order', () => {
    const d = design(base(['carries: each', 'carries: [2, "4", 1]']));
    // Coil indices follow the firing order 1, 3, 4, 2.
    expect(d.wires[1]).toEqual({ id: 'drop', run: 1, coils: [0, 2, 3], length: 0.5 });
  });

  test('a coil may be carried twice on one side', () => {
    expect(design(base(['carries: each', 'carries: [1]'])).wires).toHaveLength(3);
  });

  test('the return may be left out', () => {
    const text = base();
    const d = design(text.slice(0, text.indexOf('return:')));
    expect(d.runs.map((r) => r.side)).toEqual(['feed', 'feed']);
  });
});

describe('what was not given', () => {
  test('is filled in and listed, with a reason', () => {
    const d = design(base());
    expect(d.coil).toMatchObject({ driver_drop: 0, temperature: 20 });
    expect(d.ignition.rest).toBe(0.001);
    // The drop is of a type that is sold by SAE number.
    expect(d.sizes).toEqual({ series: 'SAE', smallest: '18 SAE', stock: null, aim: 'copper' });
    expect(d.runs[1]?.gauge).toBe('14 SAE');
    expect(d.limits).toEqual({
      drop: 0.5,
      wire_load: 0.8,
      fuse_load: 0.75,
      energy: 0.01,
      joint_resistance: 0.0003,
      contact_resistance: 0.005,
    });
    expect(d.runs[0]).toMatchObject({ bundle: 1, joints: 2, capacitor: null });
    expect(d.runs[0]?.fuse).toEqual({
      use: null,
      type: 'C',
      rating: 'auto',
      ambient: 60,
      from_source: null,
      curve: null,
      melting: null,
      voltage: null,
      rerating: null,
    });
    expect(d.runs[0]?.relay).toEqual({
      use: null,
      rating: 40,
      rated_at: null,
      coil: null,
      derating: null,
      pull_in: 7.2,
      drop_out: null,
      coil_max: 16,
      closes: 'before cranking',
      contact: 0.002,
      ambient: 60,
      coil_rise: 40,
      suppression: null,
      trigger_drop: 0.3,
      make: null,
      tab: null,
    });
    expect(d.supply).toEqual({
      source_resistance: null,
      alternator: null,
      other_load: null,
      resting: 12,
      cold_cranking: null,
    });
    expect(d.sweep).toBeNull();
    expect(d.assumed.map((a) => `${a.path}: ${a.value}`)).toEqual([
      'engine.firing_angles: 0, 180, 360, 540',
      'ignition.rest: 1.0 ms',
      'coil.driver_drop: 0 V',
      'coil.temperature: 20 degC',
      'sizes.series: SAE',
      'sizes.smallest: 18 SAE',
      'feed[0].bundle: 1',
      'feed[0].joints: 2',
      'feed[0].fuse.ambient: 60 degC',
      'feed[0].fuse.rerating: 0.45 % less for each kelvin above 25 degC',
      'feed[0].relay.ambient: 60 degC',
      'feed[0].relay.derating: 70 % at 85 degC, 30 % at 125 degC',
      'feed[0].relay.coil_max: 16 V',
      'feed[0].relay.closes: before cranking',
      'feed[0].relay.contact: 2 mohm',
      'feed[0].relay.coil_rise: 40 K',
      'feed[0].relay.trigger_drop: 0.3 V',
      'feed[1].bundle: 1',
      'feed[1].gauge: 14 SAE',
      'feed[1].joints: 2',
      'return[0].bundle: 1',
      'return[0].joints: 2',
      'supply.resting: 12.0 V',
      'limits.drop: 0.5 V',
      'limits.energy: 10 mJ',
      'limits.wire_load: 80 %',
      'limits.fuse_load: 75 %',
      'limits.joint_resistance: 0.3 mohm',
      'tolerance.coil_resistance: 10 %',
    ]);
    for (const { why } of d.assumed) expect(why).not.toBe('');
  });

  test.each([
    ['{series: mm2}', 'mm2', '0.75 mm2'],
    ['{series: SAE}', 'SAE', '18 SAE'],
    ['{smallest: 1.5 mm2}', 'mm2', '1.5 mm2'],
  ])('sizes: %s', (written, series, smallest) => {
    expect(design(base(['\nfeed:', `\nsizes: ${written}\nfeed:`])).sizes).toEqual({
      series,
      smallest,
      stock: null,
      aim: 'copper',
    });
  });
});

describe('designs that come with the program', () => {
  test('the starter passes and leaves little to assume', () => {
    expect(design(starter()).assumed.map((a) => a.path)).toEqual([
      'engine.firing_angles',
      'feed[0].fuse.rerating',
      'supply.resting',
      'limits.energy',
    ]);
  });

  test.each(DEMOS)('%s passes, with cranking, two points more and a sweep', (name) => {
    const d = design(demo(name));
    expect(d.points.map((p) => p.name)).toContain('cranking');
    expect(d.points.length).toBeGreaterThanOrEqual(3);
    expect(d.sweep).not.toBeNull();
  });

  test('each bank of the V8 fires unevenly, the engine evenly', () => {
    const d = design(demo('two-bank-v8'));
    const gaps = (angles: number[]): number[] =>
      angles.map((a, i) => (angles[i + 1] ?? 720 + (angles[0] ?? 0)) - a);
    for (const trunk of ['left trunk', 'right trunk']) {
      const coils = d.wires.find((w) => w.id === trunk)?.coils ?? [];
      const angles = d.events.filter((e) => coils.includes(e.coil)).map((e) => e.angle);
      // A cross-plane crank gives each bank the gaps 90, 180, 180 and 270 in some order.
      expect(gaps(angles).sort((a, b) => a - b)).toEqual([90, 180, 180, 270]);
    }
    expect(new Set(gaps(d.events.map((e) => e.angle)))).toEqual(new Set([90]));
  });
});
