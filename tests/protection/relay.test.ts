/** Relay: hot coil against the cranking supply, contact against the load, suppression, tabs, capacitors. */
import { describe, expect, test } from 'vitest';
import { FLAT_TABS } from '../../src/data/relays.ts';
import { overall } from '../../src/findings/read.ts';
import { toJson } from '../../src/writers/json.ts';
import { designOf, type Judged, judge, type RunText, wireAt } from './feeds.ts';
import { fuseOhm, sizeOf } from './truth.ts';

const DUST = 1e-9;
const apart = (a: number, b: number): number => Math.abs(a / b - 1);

/** Closes when the starter turns, its coil as warm as its place. */
const LATE = { closes: 'while cranking', coil_rise: '0 K' };

/** Rectangular pulses of 20 A, four of 3 ms in 20 ms at 6000 rpm: the effective current in the main conductor. */
const PULSE = 20;
const RMS = PULSE * Math.sqrt(12 / 20);
const COIL = { resistance: '0.5 ohm', peak: `${PULSE} A` };

const POINTS = [
  { name: 'cranking', rpm: '200 rpm', supply: '9.6 V' },
  { name: 'full', rpm: '6000 rpm', supply: '14 V' },
];

interface Options {
  run?: Partial<RunText>;
  points?: typeof POINTS;
  more?: RunText[];
  supply?: Record<string, string>;
}

const withRelay = (relay: Record<string, unknown>, options: Options = {}): Judged =>
  judge(
    designOf({
      coil: COIL,
      points: options.points ?? POINTS,
      ...(options.supply ? { supply: options.supply } : {}),
      feed: [{ run: 'main', relay: { rating: '40 A', ...relay }, ...options.run }, ...(options.more ?? [])],
    }),
  );

describe('copper coil of a relay, hot', () => {
  // (234.5 + T2)/(234.5 + T1): quoted, printed to a tenth of a volt or an ohm; a coil of 320 Ω goes the same way.
  const hot = (volts: number, from: number, to: number): number => (volts * (234.5 + to)) / (234.5 + from);
  test('quoted: 320 Ω at 25 °C is 443.3 Ω at 125 °C, and 13.0 V become 18.0 V', () => {
    expect(hot(320, 25, 125)).toBeCloseTo(443.3, 1);
    expect(hot(13, 25, 125)).toBeCloseTo(18, 1);
  });

  test('the same through the model: a pull-in voltage of 13.0 V at 25 °C', () => {
    // The design states it at 20 °C.
    const at20 = hot(13, 25, 20);
    const judged = withRelay(
      { pull_in: `${at20} V`, ambient: '125 degC', coil_rise: '0 K' },
      { points: [{ name: 'full', rpm: '6000 rpm', supply: '24 V' }] },
    );
    // Half of the last printed digit.
    expect(Math.abs(judged.number('relay_pull_in', { run: 0 }) - 18.0)).toBeLessThan(0.05);
  });

  test.each([
    [85, 9.04],
    [105, 9.6],
    [125, 10.17],
  ])('calculated: 7.2 V at 20 °C, at %i °C %d V', (ambient, volts) => {
    const judged = withRelay({ ...LATE, pull_in: '7.2 V', ambient: `${ambient} degC` });
    // Half of the last printed digit, and a whole one where 9.604 was cut.
    expect(Math.abs(judged.number('relay_pull_in', { run: 0 }) - volts)).toBeLessThan(0.006);
    // 9.6 V less 0.3 V: at 85 °C it closes, at 105 °C and above it may not.
    const finding = judged.finding('relay_pull_in', 'main');
    expect(finding.verdict).toBe(ambient === 85 ? 'pass' : 'fail');
    expect(finding.limit).toBeCloseTo(9.3, 9);
  });

  test('its own rise counts: 85 °C and 40 K are 125 °C', () => {
    const judged = withRelay({ ...LATE, pull_in: '7.2 V', ambient: '85 degC', coil_rise: '40 K' });
    expect(judged.number('relay_coil_T', { run: 0 })).toBe(125);
    expect(Math.abs(judged.number('relay_pull_in', { run: 0 }) - 10.17)).toBeLessThan(0.005);
    expect(judged.finding('relay_pull_in', 'main').verdict).toBe('fail');
  });

  test('without a pull-in voltage the highest of the sheets is taken, 8.0 V, and listed', () => {
    const judged = withRelay({ ambient: '85 degC', coil_rise: '0 K' });
    // By hand: 8.0 V · (234.5 + 85)/254.5 = 10.04 V.
    expect(judged.number('relay_pull_in', { run: 0 })).toBeCloseTo(10.04, 2);
    const { assumed } = judged.e.design;
    expect(assumed.find(({ path }) => path === 'feed[0].relay.pull_in')?.value).toBe('8.0 V');
  });
});

describe('supply of the relay coil', () => {
  const supplyOf = (points: typeof POINTS, relay: Record<string, string> = {}): number =>
    withRelay({ pull_in: '7 V', ...relay }, { points }).number('relay_supply', { run: 0 });
  const idle = { name: 'idle', rpm: '900 rpm', supply: '7.4 V' };

  test('that of the point named cranking, even where another one is lower', () =>
    expect(supplyOf([idle, ...POINTS])).toBeCloseTo(9.6 - 0.3, 9));
  test('else the lowest of all points', () =>
    expect(
      supplyOf([
        { name: 'full', rpm: '6000 rpm', supply: '14 V' },
        { name: 'weak', rpm: '900 rpm', supply: '11.2 V' },
      ]),
    ).toBeCloseTo(11.2 - 0.3, 9));
  test('less the drop of the trigger wire that is given', () =>
    expect(supplyOf(POINTS, { trigger_drop: '1.1 V' })).toBeCloseTo(8.5, 9));
});

describe('contact', () => {
  // What is usual: 1, 0.7 and 0.3 of the rating at 23, 85 and 125 °C, straight between.
  test.each([
    // No temperature of the rating: that of 23 °C. 40 A · (1 − 0.3 · 37/62) = 32.84 A.
    [{ ambient: '60 degC' }, 32.84],
    // Two kelvins above a rating at 85 °C: 40 A · (0.7 − 0.4 · 2/40)/0.7 = 38.86 A.
    [{ rated_at: '85 degC', ambient: '87 degC' }, 38.86],
    // 105 °C: 40 A · 0.5 = 20 A.
    [{ ambient: '105 degC' }, 20],
    // The table of the maker goes first, straight between its rows: 50 A − 15 A · 40/60 = 40 A.
    [
      {
        ambient: '65 degC',
        derating: [
          { at: '25 degC', rating: '50 A' },
          { at: '85 degC', rating: '35 A' },
        ],
      },
      40,
    ],
    // Beyond its last row nothing is known to be carried.
    [
      {
        ambient: '90 degC',
        derating: [
          { at: '25 degC', rating: '50 A' },
          { at: '85 degC', rating: '35 A' },
        ],
      },
      0,
    ],
    // Cooler than its first row: that of the first row.
    [
      {
        ambient: '5 degC',
        derating: [
          { at: '25 degC', rating: '50 A' },
          { at: '85 degC', rating: '35 A' },
        ],
      },
      50,
    ],
  ])('hot: %j carries %d A', (relay, amps) => {
    const judged = withRelay(relay);
    const finding = judged.finding('relay_contact', 'main');
    // Half of the last digit of the hand calculation.
    expect(Math.abs((finding.limit ?? Number.NaN) - amps)).toBeLessThan(0.005);
    expect(finding.verdict).toBe(RMS <= amps ? 'pass' : 'fail');
  });

  test('that it was taken from what is usual is said, and listed', () => {
    const judged = withRelay({ ambient: '60 degC' });
    expect(judged.words(judged.finding('relay_contact', 'main'))).toMatch(
      /as is usual for its class.*data sheet/s,
    );
    const taken = judged.e.design.assumed.find(({ path }) => path === 'feed[0].relay.derating');
    expect(taken?.value).toBe('70 % at 85 degC, 30 % at 125 degC');
    const cool = withRelay({ rated_at: '85 degC', ambient: '60 degC' });
    expect(cool.words(cool.finding('relay_contact', 'main'))).not.toMatch(/usual/);
  });

  test('up to that temperature: the rating holds', () => {
    const finding = withRelay({ rated_at: '70 degC', ambient: '70 degC' }).finding('relay_contact', 'main');
    expect(finding).toMatchObject({ verdict: 'pass', limit: 40 });
    expect(apart(finding.value ?? Number.NaN, RMS)).toBeLessThan(DUST);
    expect(
      withRelay({ rating: '15 A', rated_at: '70 degC', ambient: '60 degC' }).finding('relay_contact', 'main')
        .verdict,
    ).toBe('fail');
  });

  test('FAA AC 43.13-1B table 11-4 (printed): twice the current for an inductive load', () => {
    const need = withRelay({}).finding('relay_inductive', 'main');
    expect(apart(need.value ?? Number.NaN, 2 * RMS)).toBeLessThan(DUST);
    // 30.98 A are needed.
    expect(withRelay({ rating: '31 A' }).finding('relay_inductive', 'main').verdict).toBe('pass');
    expect(withRelay({ rating: '30.9 A' }).finding('relay_inductive', 'main').verdict).toBe('fail');
  });

  test('auto takes the smallest customary rating for it', () => {
    // 20, 30, 40 A …: 30.98 A need 40 A.
    expect(withRelay({ rating: 'auto' }).number('relay_rating', { run: 0 })).toBe(40);
  });

  test('a load above every customary rating: the largest, which fails', () => {
    const judged = judge(
      designOf({
        coil: { resistance: '0.15 ohm', peak: '90 A' },
        feed: [{ run: 'main', gauge: '2 AWG', relay: { rating: 'auto' } }],
      }),
    );
    expect(judged.number('relay_rating', { run: 0 })).toBe(100);
    const finding = judged.finding('relay_inductive', 'main');
    expect(finding.verdict).toBe('fail');
    expect(apart(finding.value ?? Number.NaN, 2 * 90 * Math.sqrt(12 / 20))).toBeLessThan(DUST);
  });

  test('drop and heat at the effective current', () => {
    const judged = withRelay({ contact: '4 mohm' });
    expect(apart(judged.number('contact_drop', { wire: 0 }), 0.004 * RMS)).toBeLessThan(DUST);
    // I²R: 4 mΩ at 240 A² make 0.96 W.
    expect(judged.number('contact_heat', { wire: 0 })).toBeCloseTo(0.96, 9);
    const json = toJson({ evaluation: judged.e, findings: [], verdict: overall([]) }) as {
      relays: { contact_drop_V: number; contact_W: number; load: number }[];
    };
    expect(json.relays[0]?.contact_W).toBeCloseTo(0.96, 9);
    expect(json.relays[0]?.load).toBeCloseTo(RMS / 40, 9);
  });

  test('a contact that is not stated is taken with the usual 2 mΩ (quoted), in the conductor’s resistance', () => {
    const judged = withRelay({});
    const without = judge(designOf({ coil: COIL, points: POINTS, feed: [{ run: 'main' }] }));
    const more = judged.number('wire_ohm', { wire: 0 }) - without.number('wire_ohm', { wire: 0 });
    expect(more).toBeCloseTo(0.002, 12);
  });

  test('a contact above 30 mΩ (quoted: most sheets allow 20 to 30) is worn', () => {
    expect(withRelay({ contact: '30 mohm' }).finding('relay_worn', 'main').verdict).toBe('pass');
    expect(withRelay({ contact: '31 mohm' }).finding('relay_worn', 'main').verdict).toBe('fail');
  });

  test('trigger: the cold coil at the highest supply', () => {
    expect(withRelay({ coil: '80 ohm' }).number('trigger_current', { run: 0 })).toBeCloseTo(14 / 80, 12);
    expect(withRelay({}).e.number('trigger_current', { run: 0 })).toBeNull();
  });
});

describe('make current into a capacitor', () => {
  const drop: RunText = {
    run: 'drop',
    carries: 'each',
    gauge: '16 AWG',
    length: '0.5 m',
    capacitor: '470 uF',
  };
  const fuse = { type: 'E', rating: '30 A' };
  // Highest supply over the resistances of the loop, cold: source, main conductor with fuse and contact, drop.
  const amps =
    14 / (0.008 + sizeOf('10 AWG').ohm * 1 + fuseOhm('E', 30) + 0.002 + sizeOf('16 AWG').ohm * 0.5);

  test('supply over the resistance of the loop', () => {
    const judged = withRelay({ make: '200 A' }, { more: [drop], run: { fuse } });
    const finding = judged.finding('relay_make', 'main');
    expect(apart(finding.value ?? Number.NaN, amps)).toBeLessThan(DUST);
    expect(finding.verdict).toBe(amps > 200 ? 'fail' : 'pass');
    expect(amps).toBeGreaterThan(200);
    expect(withRelay({ make: '800 A' }, { more: [drop], run: { fuse } }).finding('relay_make').verdict).toBe(
      'pass',
    );
  });

  test('not known what the contact may make: unknown, with the current and what to look up', () => {
    const judged = withRelay({}, { more: [drop], run: { fuse } });
    const finding = judged.finding('relay_make', 'main');
    expect(finding.verdict).toBe('unknown');
    expect(judged.words(finding)).toMatch(new RegExp(`${Math.round(amps)} A.*data sheet.*make`, 's'));
  });

  test('without the resistance of the source: unknown', () => {
    const judged = withRelay({ make: '100 A' }, { more: [drop], supply: {} });
    expect(judged.finding('relay_make', 'main')).toMatchObject({ verdict: 'unknown', value: null });
  });

  test('no capacitor, no rule', () => expect(withRelay({}).found('relay_make')).toEqual([]));
});

describe('suppression of the relay coil', () => {
  test.each([
    ['none', 'fail', /1000 V/],
    ['diode', 'pass', /slow.*tack-weld/s],
    ['resistor', 'pass', /6 to 8 times/],
    ['diode_zener', 'pass', /zener/i],
  ])('%s: %s', (suppression, verdict, words) => {
    const judged = withRelay({ suppression });
    const finding = judged.finding('relay_suppression', 'main');
    expect(finding.verdict).toBe(verdict);
    expect(judged.words(finding)).toMatch(words);
  });

  test('not stated: unknown, and where to look', () => {
    const judged = withRelay({});
    const finding = judged.finding('relay_suppression', 'main');
    expect(finding.verdict).toBe('unknown');
    expect(judged.words(finding)).toMatch(/data sheet/);
  });
});

describe('tabs (customary, from memory)', () => {
  test.each(FLAT_TABS.rows)('$width mm: $from A', ({ width, from }) => {
    const finding = withRelay({ tab: `${width} mm` }).finding('relay_tab', 'main');
    // The low end counts.
    expect(finding.limit).toBe(from);
    expect(finding.verdict).toBe(RMS <= from ? 'pass' : 'fail');
  });
  test('both verdicts are met: 15.5 A', () => {
    expect(FLAT_TABS.rows.some(({ from }) => RMS > from)).toBe(true);
    expect(FLAT_TABS.rows.some(({ from }) => RMS <= from)).toBe(true);
  });
  test('a width that is not customary: unknown', () =>
    expect(withRelay({ tab: '5.6 mm' }).finding('relay_tab', 'main')).toMatchObject({
      verdict: 'unknown',
      limit: null,
    }));
  test('no width, no rule', () => expect(withRelay({}).found('relay_tab')).toEqual([]));
});

test('two relays, one for each bank: each with its own load and temperature', () => {
  const judged = judge(
    designOf({
      coil: COIL,
      points: POINTS,
      feed: [
        {
          run: 'left',
          carries: ['1', '2', '3'],
          relay: {
            rating: '30 A',
            rated_at: '85 degC',
            ambient: '60 degC',
            pull_in: '7.2 V',
            contact: '3 mohm',
          },
        },
        {
          run: 'right',
          carries: ['4'],
          relay: {
            rating: '20 A',
            closes: 'while cranking',
            rated_at: '40 degC',
            ambient: '105 degC',
            pull_in: '7.2 V',
            contact: '8 mohm',
          },
        },
        { run: 'drop', carries: 'each', gauge: '14 AWG' },
      ],
    }),
  );
  const { e } = judged;
  // Three and one of the pulses of 3 ms in 20 ms.
  const [left, right] = [PULSE * Math.sqrt(9 / 20), PULSE * Math.sqrt(3 / 20)];
  expect(apart(judged.number('contact_drop', { wire: wireAt(e, 'left') }), 0.003 * left)).toBeLessThan(DUST);
  expect(apart(judged.number('contact_drop', { wire: wireAt(e, 'right') }), 0.008 * right)).toBeLessThan(
    DUST,
  );
  expect(judged.finding('relay_contact', 'left').verdict).toBe('pass');
  // By hand: 0.5 at 105 °C over 1 − 0.3 · 17/62 at 40 °C of 20 A are 10.90 A; 7.75 A flow.
  expect(judged.finding('relay_contact', 'right').limit).toBeCloseTo(10.9, 1);
  expect(judged.finding('relay_contact', 'right').verdict).toBe('pass');
  expect(judged.finding('relay_inductive', 'left').verdict).toBe(2 * left <= 30 ? 'pass' : 'fail');
  expect(judged.finding('relay_inductive', 'right').verdict).toBe(2 * right <= 20 ? 'pass' : 'fail');
  expect(judged.finding('relay_pull_in', 'left').verdict).toBe('pass');
  expect(judged.finding('relay_pull_in', 'right').verdict).toBe('fail');
  const json = toJson({ evaluation: e, findings: [], verdict: overall([]) }) as { relays: { run: string }[] };
  expect(json.relays.map(({ run }) => run)).toEqual(['left', 'right']);
});
