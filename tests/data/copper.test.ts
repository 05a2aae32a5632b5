/**
 * The constants of copper and gauge against printed resistances and areas. Each relation is written out here once
 * more, by itself, so that the published figures judge the constants and nothing else.
 */
import { describe, expect, test } from 'vitest';
import { AWG_SIZES, awg } from '../../src/data/awg.ts';
import { copper } from '../../src/data/copper.ts';
import { SOLID_AWG } from '../../src/data/handbook.ts';
import { IEC_60228_CLASS_5 } from '../../src/data/iec60228.ts';
import { NEC_TABLE_8 } from '../../src/data/nec.ts';
import { SAE_SIZES, sae } from '../../src/data/sae.ts';
import { expectOfAll } from '../offenders.ts';

const FOOT = 0.3048;

/** Area of a solid AWG wire [mm²], from the definition. */
function awgArea(gauge: string): number {
  const n = AWG_SIZES.rows.find((row) => row.gauge === gauge)?.number ?? Number.NaN;
  const steps = (awg.awg_number.value - n) / awg.awg_steps.value;
  return (Math.PI / 4) * (awg.awg_diameter.value * awg.awg_ratio.value ** steps) ** 2;
}

/** Resistance of a solid AWG wire at 20 °C [mΩ/ft], the same number as ohms per thousand feet. */
const solid = (gauge: string) => ((copper.rho_20.value * FOOT) / awgArea(gauge)) * 1000;

/** Half of the last digit of a figure printed with `digits` significant ones. */
const halfDigit = (value: number, digits: number) => 0.5 * 10 ** (Math.floor(Math.log10(value)) + 1 - digits);

test('ASTM B258: area is 0.012668 mm² · 92^((36 − n)/19.5)', () => {
  // The factor is printed with five figures.
  for (const { gauge, number } of AWG_SIZES.rows) {
    expect(awgArea(gauge) / 92 ** ((36 - number) / 19.5)).toBeCloseTo(0.012668, 6);
  }
});

test('handbook table: solid copper at 20 °C', () => {
  expectOfAll(
    SOLID_AWG.rows,
    ({ gauge }) => `${gauge} AWG`,
    ({ gauge, resistance }) => {
      // Printed with four figures, 1/0 with three.
      const digits = gauge === '1/0' ? 3 : 4;
      expect(Math.abs(solid(gauge) - resistance)).toBeLessThanOrEqual(halfDigit(resistance, digits));
    },
  );
});

describe('NEC ch. 9 table 8: stranded at 75 °C, from 1/58, 234.5 and 1.02', () => {
  const beta = copper.copper_zero.value;
  const hot = (beta + 75) / (beta + copper.T_ref.value);
  const stranded = (gauge: string) => solid(gauge) * hot * copper.lay.value;

  // The same sum as it was done by hand from the definitions, printed to three decimals.
  const BY_HAND = [7.92, 4.981, 3.133, 1.97, 1.239, 0.779, 0.49, 0.308, 0.194];

  test('every size', () => {
    expectOfAll(
      NEC_TABLE_8.rows,
      ({ gauge }) => `${gauge} AWG`,
      ({ gauge, resistance }, i) => {
        expect(Math.abs(stranded(gauge) - (BY_HAND[i] as number))).toBeLessThanOrEqual(0.0005);
        // Three printed figures, and a lay factor that is itself known to two decimals only: ±0.005 in 1.02.
        const tolerance = halfDigit(resistance, 3) + resistance * (0.005 / copper.lay.value);
        expect(Math.abs(stranded(gauge) - resistance)).toBeLessThanOrEqual(tolerance);
      },
    );
  });

  test('coefficient and zero-resistance temperature are one straight line', () => {
    // 0.00393 is printed with three figures.
    expect(Math.abs(1 / (beta + copper.T_ref.value) - copper.alpha_20.value)).toBeLessThanOrEqual(0.000005);
  });
});

describe('SAE minimum areas', () => {
  const AREAS = [0.779, 1.184, 1.876, 2.956, 4.734, 7.504, 12.43, 18.93, 31.64, 50.15, 63.39];

  test('in square millimetres', () => {
    expectOfAll(
      SAE_SIZES.rows,
      ({ gauge }) => `SAE ${gauge}`,
      ({ area }, i) => {
        const printed = AREAS[i] as number;
        // Calculated outside from 5.06707e-4 mm² for a circular mil, printed with three or four figures.
        const digits = printed < 1 ? 3 : 4;
        expect(Math.abs(area * sae.circular_mil.value - printed)).toBeLessThanOrEqual(
          halfDigit(printed, digits),
        );
      },
    );
  });

  test('one circular mil is 5.06707e-4 mm²', () => {
    expect(sae.circular_mil.value).toBeCloseTo(5.06707e-4, 9);
  });

  test('each holds 5 to 12 % less copper than the same number of AWG', () => {
    expectOfAll(
      SAE_SIZES.rows,
      ({ gauge }) => `SAE ${gauge}`,
      ({ gauge, area }) => {
        const missing = 1 - (area * sae.circular_mil.value) / awgArea(gauge);
        // Both ends are stated in whole percents.
        expect(missing).toBeGreaterThan(0.045);
        expect(missing).toBeLessThan(0.125);
      },
    );
  });
});

test('IEC 60228 class 5: a wire of the nominal area passes', () => {
  expectOfAll(
    IEC_60228_CLASS_5.rows,
    ({ size }) => `${size} mm²`,
    ({ size, resistance }) => {
      // The area is a name, the resistance is the rule; a solid wire of the nominal area must stay below the maximum,
      // and the maximum is less than a third above it, or a digit has slipped.
      const nominal = (copper.rho_20.value / size) * 1000;
      expect(resistance).toBeGreaterThan(nominal);
      expect(resistance).toBeLessThan(nominal * 1.33);
    },
  );
});
