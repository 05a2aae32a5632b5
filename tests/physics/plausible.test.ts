/** Whether the numbers of a coil can be meant; the bench test at its own temperature; a resistor before each coil. */
import { describe, expect, test } from 'vitest';
import { traceOf } from '../../src/transient/trace.ts';
import { designOf, judge, type Parts } from '../protection/feeds.ts';

const FEED = [{ run: 'main', gauge: '6 AWG' }];
const COIL = { resistance: '0.42 ohm', inductance: '2.4 mH', driver_drop: '1 V' };
const withCoil = (coil: object, more: Partial<Parts> = {}, dwell = '3.2 ms') => {
  const design = designOf({ feed: FEED, coil: coil as Record<string, string>, ...more }) as {
    ignition: object;
  };
  return judge({ ...design, ignition: { layout: 'coil_per_cylinder', dwell } });
};

describe('energy of the weakest coil', () => {
  const at = 'full';
  // By hand, 14 V less 1 V: tau 5.714 ms, 30.95 A · (1 − e^(−0.56)) = 13.27 A, ½ · 2.4 mH · 13.27² = 211 mJ.
  test('2.4 mH and 3.2 ms pass with some 200 mJ', () => {
    const found = withCoil(COIL).finding('energy', at);
    expect(found.verdict).toBe('pass');
    expect((found.value ?? 0) * 1000).toBeGreaterThan(195);
    expect((found.value ?? 0) * 1000).toBeLessThan(211.5);
  });

  test.each([
    ['inductance of 2.4 H', { ...COIL, inductance: '2.4 H' }, '3.2 ms', '`coil.inductance`'],
    ['inductance of 2.4 uH', { ...COIL, inductance: '2.4 uH' }, '3.2 ms', '`coil.inductance`'],
    ['dwell of 3.2 us', COIL, '3.2 us', '`ignition.dwell`'],
    ['resistance of 99 ohm', { ...COIL, resistance: '99 ohm' }, '3.2 ms', '`coil.resistance`'],
    [
      'bench test of 3.2 us',
      {
        resistance: '0.42 ohm',
        driver_drop: '1 V',
        test_point: { supply: '14 V', dwell: '3.2 us', peak: '13 A' },
      },
      '3.2 ms',
      '`coil.test_point`',
    ],
  ])('%s: FAIL, and the unit is named', (_, coil, dwell, named) => {
    const judged = withCoil(coil, {}, dwell);
    const found = judged.finding('energy', at);
    expect(found.verdict).toBe('fail');
    expect(judged.words(found)).toContain(`Check the units of ${named}: a factor of a thousand`);
  });

  test('2.4 H: 0.36 mJ, by hand ½ · 2.4 H · (13 V · 3.2 ms/2.4 H)² = 0.361 mJ', () =>
    expect((withCoil({ ...COIL, inductance: '2.4 H' }).finding('energy', at).value ?? 0) * 1000).toBeCloseTo(
      0.36,
      2,
    ));

  test('a weak coil whose numbers are meant: FAIL without a unit named; its own limit goes first', () => {
    // 13 V on 0.8 ohm and 0.6 mH for 0.4 ms: 6.7 A and 14 mJ; for 0.3 ms some 9 mJ.
    const weak = { resistance: '0.8 ohm', inductance: '0.6 mH', driver_drop: '1 V' };
    const judged = withCoil(weak, {}, '0.3 ms');
    expect(judged.finding('energy', at).verdict).toBe('fail');
    expect(judged.words(judged.finding('energy', at))).not.toContain('`coil.');
    expect(withCoil(weak, { limits: { energy: '5 mJ' } }, '0.3 ms').finding('energy', at)).toMatchObject({
      verdict: 'pass',
      source: { status: 'design' },
    });
  });

  test('of a peak alone no energy is known, and no rule asks', () =>
    expect(withCoil({ resistance: '0.5 ohm', peak: '10 A' }).found('energy')).toEqual([]));
});

test.each([
  [{ ...COIL, resistance: '0.09 ohm' }, 'usual_ohm', 'advice'],
  [{ ...COIL, resistance: '21 ohm' }, 'usual_ohm', 'advice'],
  [COIL, 'usual_ohm', 'pass'],
  [{ ...COIL, inductance: '0.2 mH' }, 'usual_henry', 'advice'],
  [{ ...COIL, inductance: '31 mH' }, 'usual_henry', 'advice'],
  [COIL, 'usual_henry', 'pass'],
  // 13 V on 0.15 ohm and 0.3 mH for 3.2 ms: 86.7 A · (1 − e^(−1.6)) = 69.2 A.
  [{ ...COIL, resistance: '0.15 ohm', inductance: '0.3 mH' }, 'usual_peak', 'advice'],
  [COIL, 'usual_peak', 'pass'],
] as const)('usual numbers: %j, %s: %s', (coil, rule, verdict) =>
  expect(withCoil(coil).finding(rule).verdict).toBe(verdict),
);

describe('bench test', () => {
  const TEST = { supply: '13.0 V', dwell: '3.5 ms', peak: '13.5 A' };
  // By hand: −3.5 ms · 0.5 ohm/ln(1 − 13.5 A · 0.5 ohm/12 V) = 1.75 mV·s/0.82668 = 2.1169 mH.
  test.each(['20 degC', '-10 degC', '90 degC'])(
    '2.1169 mH, whatever the coil’s temperature is later: %s',
    (temperature) => {
      const judged = withCoil({ resistance: '0.5 ohm', driver_drop: '1.0 V', temperature, test_point: TEST });
      expect(judged.number('coil_L') * 1000).toBeCloseTo(2.1169, 4);
    },
  );
  test('its own temperature counts: at 70 °C the primary has 0.59825 ohm', () => {
    // −3.5 ms · 0.59825/ln(1 − 13.5 · 0.59825/12) = 2.0939 mV·s/1.11805 = 1.8728 mH.
    const judged = withCoil({
      resistance: '0.5 ohm',
      driver_drop: '1.0 V',
      test_point: { ...TEST, temperature: '70 degC' },
    });
    expect(judged.number('test_ohm')).toBeCloseTo(0.59825, 8);
    expect(judged.number('coil_L') * 1000).toBeCloseTo(1.8728, 3);
  });
});

describe('a resistor before each coil', () => {
  const points = [
    { name: 'cranking', rpm: '200 rpm', supply: '10 V' },
    { name: 'full', rpm: '2000 rpm', supply: '14 V' },
  ];
  const judged = withCoil(
    {
      resistance: '1.4 ohm',
      inductance: '8 mH',
      series_resistor: { value: '1.6 ohm', bypassed_at: ['cranking'] },
    },
    { points },
    '8 ms',
  );
  // By hand: 14 V/3.0 ohm · (1 − e^(−3)) = 4.4343 A; bridged 10 V/1.4 ohm · (1 − e^(−1.4)) = 5.3815 A.
  test('peak on a stiff supply, with it and bridged', () => {
    expect(judged.number('peak', { speed: 1 })).toBeCloseTo(4.4343, 4);
    expect(judged.number('peak', { speed: 0 })).toBeCloseTo(5.3815, 4);
  });
  test('the energy is the coil’s own: ½ · 8 mH · 4.4343² = 78.65 mJ', () =>
    expect(judged.number('energy', { speed: 1 }) * 1000).toBeCloseTo(78.65, 2));
  test('the drop of the feed does not count it', () => expect(judged.number('worst_drop')).toBeLessThan(0.1));
  test('the exact currents know it, too', () => {
    for (const point of [0, 1]) {
      const { peak } = traceOf(judged.e, point).coils[0] ?? { peak: { exact: Number.NaN, closed: null } };
      // Closed form and exact solution: within 0.3 % for feeds that drop little.
      expect(Math.abs(peak.exact / (peak.closed ?? Number.NaN) - 1)).toBeLessThan(0.003);
    }
  });
});

describe('cold cranking current in place of the resistance of the source (SAE J537)', () => {
  const judged = judge(
    designOf({
      feed: [{ run: 'main', gauge: '6 AWG', fuse: { type: 'E', rating: '30 A' } }],
      supply: { cold_cranking: '650 A' },
    }),
  );
  test('(12.6 V − 7.2 V)/650 A = 8.308 mΩ for the smallest faults, a third for the largest', () => {
    expect(judged.number('source_ohm') * 1000).toBeCloseTo(8.3077, 4);
    expect(judged.number('source_least') * 1000).toBeCloseTo(2.7692, 4);
  });
  test('the largest fault: 14 V over 2.769 mΩ, 5 mΩ of chassis and the fuse, 100 mV/30 A', () =>
    expect(judged.number('start_fault', { run: 0 })).toBeCloseTo(14 / (0.0027692 + 0.005 + 0.1 / 30), 0));
  test('it is listed', () =>
    expect(judged.e.design.assumed.map(({ path }) => path)).toContain('supply.source_resistance'));
});

describe('terminals on one stud (AC 43.13-1B par. 11-174: at most four)', () => {
  const main = { run: 'main', gauge: '4 AWG' };
  const drop = { run: 'drop', carries: 'each', gauge: '14 AWG' };
  const back = { run: 'ground', carries: 'each', gauge: '14 AWG' };
  const strap = { run: 'strap', gauge: '4 AWG' };
  const of = (cylinders: number, feed: object[], returns?: object[]) =>
    judge(
      designOf({
        cylinders,
        feed: feed as Parts['feed'],
        ...(returns ? { return: returns as Parts['feed'] } : {}),
      }),
    );
  test('main and three drops: four', () =>
    expect(of(3, [main, drop]).finding('stud')).toMatchObject({ value: 4, verdict: 'pass' }));
  test('main and four drops: five', () =>
    expect(of(4, [main, drop]).finding('stud')).toMatchObject({ value: 5, verdict: 'advice' }));
  test('two trunks between: three at the main, three at each trunk, two at a coil', () => {
    const trunks = [
      { run: 'left', carries: ['1', '2'], gauge: '8 AWG' },
      { run: 'right', carries: ['3', '4'], gauge: '8 AWG' },
    ];
    const judged = of(4, [main, ...trunks, drop]);
    expect([0, 1, 2, 3].map((run) => judged.number('stud_terminals', { run }))).toEqual([3, 3, 3, 2]);
  });
  test('on the way back the grounds meet at the strap', () => {
    const judged = of(4, [main], [back, strap]);
    expect(judged.number('stud_terminals', { run: 2 })).toBe(5);
  });
});
