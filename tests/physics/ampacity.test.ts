/** Ampacity, through designs, against 33 CFR 183.425 table 5 and second opinions. */
import { describe, expect, test } from 'vitest';
import { AMPACITY, AMPACITY_RATINGS, BUNDLE, ENGINE_SPACE } from '../../src/data/ampacity.ts';
import { FAA_FREE_AIR } from '../../src/data/faa.ts';
import { IEC_60228_CLASS_5 } from '../../src/data/iec60228.ts';
import { NEC_AMBIENT } from '../../src/data/nec-ambient.ts';
import { SAE_SIZES } from '../../src/data/sae.ts';
import { expectOfAll } from '../offenders.ts';
import { apart, known } from './harness.ts';
import { ampacitiesOf, feedOf, type Piece } from './one-wire.ts';

/** An insulation of each rating that the model has. */
const INSULATION: Readonly<Record<number, string>> = {
  80: 'GPT',
  85: 'A',
  100: 'B',
  125: 'C',
  150: 'D',
  175: 'E',
  200: 'F',
  225: 'G',
  250: 'H',
};
const GAUGES = AMPACITY.rows.map((row) => row.gauge);
type Column = (typeof AMPACITY_RATINGS)[number]['column'];
const printed = (gauge: string, column: Column): number =>
  AMPACITY.rows.find((row) => row.gauge === gauge)?.[column] ?? Number.NaN;

/** Rounding of doubles, after a few powers and roots. */
const DUST = 1e-9;

/** Area of a solid AWG wire [mm²]: ASTM B258, quoted, with the constant printed to five figures. */
const awgArea = (gauge: string): number => {
  const n = gauge.endsWith('/0') ? 1 - Number(gauge[0]) : Number(gauge);
  return 0.012668 * 92 ** ((36 - n) / 19.5);
};
/** What those five figures leave open. */
const FIVE_FIGURES = 5e-5;

const amps = (pieces: readonly Piece[]): number[] => ampacitiesOf(pieces).map((found) => found ?? Number.NaN);

test('a type that is sold by SAE number carries what its own area does, in the column of 80 °C', () => {
  // An AWG number stated for such a type is taken as the SAE size, which holds less copper than the AWG size.
  const sizes = SAE_SIZES.rows.filter(({ gauge }) => GAUGES.includes(gauge));
  expect(sizes.length).toBeGreaterThan(9);
  const found = amps(sizes.map(({ gauge }) => ({ gauge: `${gauge} AWG`, ambient: 30, insulation: 'GPT' })));
  sizes.forEach(({ gauge, area: mils }, i) => {
    // 1 cmil = 5.06707e-4 mm².
    const area = mils * 5.06707e-4;
    const above = GAUGES.findIndex((one) => awgArea(one) > area);
    const [low, high] = [GAUGES[above - 1], GAUGES[above]] as [string | undefined, string];
    const expected =
      low === undefined
        ? (printed(high, 'at_80') * area) / awgArea(high)
        : printed(low, 'at_80') *
          (printed(high, 'at_80') / printed(low, 'at_80')) **
            (Math.log(area / awgArea(low)) / Math.log(awgArea(high) / awgArea(low)));
    expect(apart(found[i] as number, expected), gauge).toBeLessThan(FIVE_FIGURES * 2);
  });
});

describe('33 CFR 183.425 table 5 (printed), 30 °C', () => {
  const e = feedOf([{ gauge: '18 AWG', ambient: 30 }]);
  const cells = GAUGES.flatMap((gauge) =>
    AMPACITY_RATINGS.map(({ rating, column }, i) => ({ gauge, rating, amps: printed(gauge, column), i })),
  );
  test('is printed with 15 sizes and 7 ratings', () => expect(cells).toHaveLength(105));

  test('every cell', () => {
    expectOfAll(
      cells,
      (cell) => `No. ${cell.gauge} at ${cell.rating} °C`,
      ({ gauge, amps, i }) => {
        const size = e.grid.axes.size.indexOf(`${gauge} AWG`);
        expect(apart(known(e, 'size_amps', { size, amps_column: i }), amps)).toBeLessThan(DUST);
      },
    );
  });

  // The ratings that an insulation of the model has, all the way to the ampacity of a run.
  const reached = [
    { rating: 125, column: 'at_125' },
    { rating: 200, column: 'at_200' },
  ] as const;
  test.each(reached)(
    'a run with insulation for $rating °C carries what its column says',
    ({ rating, column }) => {
      const insulation = INSULATION[rating] as string;
      const found = amps(GAUGES.map((gauge) => ({ gauge: `${gauge} AWG`, ambient: 30, insulation })));
      GAUGES.forEach((gauge, i) => {
        expect(apart(found[i] as number, printed(gauge, column)), gauge).toBeLessThan(DUST);
      });
    },
  );

  test('insulation above 200 °C carries what the last column says', () => {
    for (const insulation of ['G', 'H']) {
      const found = amps(GAUGES.map((gauge) => ({ gauge: `${gauge} AWG`, ambient: 30, insulation })));
      GAUGES.forEach((gauge, i) => {
        expect(apart(found[i] as number, printed(gauge, 'at_200')), gauge).toBeLessThan(DUST);
      });
    }
  });
});

describe('between the columns', () => {
  const between = [
    { rating: 85, below: { rating: 80, column: 'at_80' }, above: 'at_90' },
    { rating: 100, below: { rating: 90, column: 'at_90' }, above: 'at_105' },
    { rating: 150, below: { rating: 125, column: 'at_125' }, above: 'at_200' },
    { rating: 175, below: { rating: 125, column: 'at_125' }, above: 'at_200' },
  ] as const;
  test.each(between)('$rating °C: by the same heat path, and never above the next column', (one) => {
    const insulation = INSULATION[one.rating] as string;
    const found = amps(GAUGES.map((gauge) => ({ gauge: `${gauge} AWG`, ambient: 30, insulation })));
    // Rise goes with I²·resistance, the resistance with 234.5 + T.
    const heat = (rating: number) => (rating - 30) / (234.5 + rating);
    const law = Math.sqrt(heat(one.rating) / heat(one.below.rating));
    GAUGES.forEach((gauge, i) => {
      const lower = printed(gauge, one.below.column);
      const upper = printed(gauge, one.above);
      expect(found[i], gauge).toBeGreaterThanOrEqual(lower * (1 - DUST));
      expect(found[i], gauge).toBeLessThanOrEqual(upper * (1 + DUST));
      expect(apart(found[i] as number, Math.min(lower * law, upper)), gauge).toBeLessThan(DUST);
    });
  });
});

describe('ambient temperature', () => {
  test('33 CFR 183.425 note 1 (from memory), engine space of 50 °C', () => {
    const rows = ENGINE_SPACE.rows.filter(({ rating }) => INSULATION[rating] !== undefined);
    expectOfAll(
      rows,
      ({ rating }) => `${rating} °C`,
      ({ rating, factor }) => {
        const insulation = INSULATION[rating] as string;
        const [cool, warm] = amps([30, 50].map((ambient) => ({ gauge: '10 AWG', ambient, insulation })));
        const found = (warm as number) / (cool as number);
        // Two printed decimals, some of them cut: one whole unit. At 200 °C the note makes no reduction, we do (0.94).
        if (rating === 200) expect(found).toBeCloseTo(0.939, 3);
        else expect(Math.abs(found - factor)).toBeLessThan(0.01);
        expect(found).toBeLessThanOrEqual(factor + 0.005);
      },
    );
  });

  test('NEC 310.15 (quoted), from 40 °C to another temperature', () => {
    const rows = NEC_AMBIENT.rows.filter(({ rating }) => INSULATION[rating] !== undefined);
    expectOfAll(
      rows,
      (row) => `${row.rating} °C at ${row.ambient} °C`,
      ({ rating, ambient, factor }) => {
        const insulation = INSULATION[rating] as string;
        const [base, there] = amps([40, ambient].map((t) => ({ gauge: '10 AWG', ambient: t, insulation })));
        // Two printed decimals.
        expect(Math.abs((there as number) / (base as number) - factor)).toBeLessThanOrEqual(0.005);
      },
    );
  });

  test('a place as hot as the insulation may be, or hotter: nothing can be carried', () => {
    const found = ampacitiesOf([
      { gauge: '10 AWG', ambient: 125, insulation: 'C' },
      { gauge: '10 AWG', ambient: 140, insulation: 'C' },
      { gauge: '10 AWG', ambient: 80, insulation: 'GPT' },
      { gauge: '2 AWG', ambient: 260, insulation: 'H' },
    ]);
    expect(found).toEqual([0, 0, 0, 0]);
  });

  test('there is then no conductor temperature, and the resistance is taken at the place', () => {
    const hot = feedOf([
      { gauge: '10 AWG', ambient: 140, insulation: 'C' },
      { gauge: '10 AWG', ambient: 140, insulation: 'F' },
    ]);
    expect(hot.value('wire_T', { wire: 0 })).toBeNull();
    // The other one is warmed by a milliampere only.
    expect(apart(known(hot, 'wire_ohm', { wire: 0 }), known(hot, 'wire_ohm', { wire: 1 }))).toBeLessThan(
      1e-6,
    );
  });
});

test('FAA AC 43.13-1B fig. 11-4a: never more than in free air', () => {
  expectOfAll(
    FAA_FREE_AIR.rows,
    (row) => `No. ${row.gauge}, ${row.rise} K`,
    ({ gauge, rise, current }) => {
      // Every insulation that reaches its rating with this rise, from a place of 20 °C or warmer.
      const pieces = Object.entries(INSULATION)
        .map(([rating, insulation]) => ({
          gauge: `${gauge} AWG`,
          ambient: Number(rating) - rise,
          insulation,
        }))
        .filter(({ ambient }) => ambient >= 20);
      expect(pieces.length).toBeGreaterThan(0);
      const found = ampacitiesOf(pieces);
      for (const one of found) {
        // Thinner than 0.75 mm² the model has no figure. Free air is the best place there is: a bound on one side.
        if (gauge === '20' || gauge === '22') expect(one).toBeNull();
        else {
          expect(one).not.toBeNull();
          expect(one as number).toBeLessThanOrEqual(current);
        }
      }
    },
  );
});

test('33 CFR 183.425 note 2 (quoted): conductors together', () => {
  expectOfAll(
    BUNDLE.rows,
    ({ from }) => `${from} conductors`,
    ({ from, to, factor }) => {
      const counts = [from, to ?? from * 2];
      const [alone, ...found] = amps(
        [1, ...counts].map((bundle) => ({ gauge: '10 AWG', ambient: 30, bundle })),
      );
      for (const one of found) expect(apart(one / (alone as number), factor)).toBeLessThan(DUST);
    },
  );
});

describe('sizes between those of the table', () => {
  const sizes = [
    // Areas in mm², SAE by the circular mil of the trade.
    ...SAE_SIZES.rows.map(({ gauge, area }) => ({ size: `${gauge} SAE`, area: area * 5.06707e-4 })),
    ...IEC_60228_CLASS_5.rows.map(({ size }) => ({ size: `${size} mm2`, area: size })),
  ];
  const least = awgArea('18');
  const inside = sizes.filter(({ area }) => area > least);
  const found = amps(inside.map(({ size }) => ({ gauge: size, ambient: 30, insulation: 'C' })));

  test('each lies between its neighbours, straight in the logarithms', () => {
    expectOfAll(
      inside,
      ({ size }) => size,
      ({ area }, i) => {
        const amps = found[i] as number;
        const above = GAUGES.findIndex((gauge) => awgArea(gauge) >= area);
        const [thin, thick] = [GAUGES[above - 1] as string, GAUGES[above] as string];
        const [low, high] = [printed(thin, 'at_125'), printed(thick, 'at_125')];
        expect(amps).toBeGreaterThanOrEqual(low);
        expect(amps).toBeLessThanOrEqual(high);
        const part = Math.log(area / awgArea(thin)) / Math.log(awgArea(thick) / awgArea(thin));
        // The exponent is below 2, so that the five figures of the area weigh at most twice.
        expect(apart(amps, low * (high / low) ** part)).toBeLessThan(2 * FIVE_FIGURES);
      },
    );
  });

  test('from 18 AWG down to 0.75 mm² it goes with the area', () => {
    const thin = sizes.filter(({ area }) => area <= least && area >= 0.75);
    expect(thin.map(({ size }) => size)).toEqual(['18 SAE', '0.75 mm2']);
    const carried = amps(thin.map(({ size }) => ({ gauge: size, ambient: 30, insulation: 'C' })));
    thin.forEach(({ area }, i) => {
      expect(apart(carried[i] as number, (25 * area) / least)).toBeLessThan(FIVE_FIGURES);
    });
  });

  test('below 0.75 mm² there is no figure', () => {
    const thin = [...sizes.filter(({ area }) => area < 0.75).map(({ size }) => size), '20 AWG', '22 AWG'];
    expect(thin).toContain('0.5 mm2');
    expect(ampacitiesOf(thin.map((gauge) => ({ gauge, ambient: 30 })))).toEqual(thin.map(() => null));
  });
});
