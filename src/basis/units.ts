/**
 * Units of measurement: what a unit's text means, and how a value moves from one unit to another.
 *
 * A unit is a product of powers, written with `*`, `/` and `^`: `ohm*mm^2/m`. It is read as exponents of the
 * base dimensions and one factor to the SI base. Temperatures in °C are treated as kelvins with a moved zero:
 * the zero matters only where a person's text is read or a value is shown to one, never inside a formula, where only
 * differences of temperatures are formed.
 */

/** Base dimensions; the crank angle is kept apart so that degrees cannot be mistaken for a plain number. */
export const DIMENSIONS = ['m', 'kg', 's', 'A', 'K', 'deg'] as const;
export type Dimension = (typeof DIMENSIONS)[number];

/** A unit: exponent of each base dimension, in the order of `DIMENSIONS`, and the factor to SI. */
export interface Unit {
  readonly powers: readonly number[];
  readonly factor: number;
}

const base = (powers: Partial<Record<Dimension, number>>, factor = 1): Unit => ({
  powers: DIMENSIONS.map((d) => powers[d] ?? 0),
  factor,
});

const VOLT = { kg: 1, m: 2, s: -3, A: -1 };
const OHM = { kg: 1, m: 2, s: -3, A: -2 };
const HENRY = { kg: 1, m: 2, s: -2, A: -2 };
const JOULE = { kg: 1, m: 2, s: -2 };

/** Every unit symbol that the project knows. Exact by definition: the inch 25.4 mm, the pound 0.45359237 kg, its force at 9.80665 m/s². */
export const SYMBOLS: Readonly<Record<string, Unit>> = {
  '1': base({}),
  '%': base({}, 0.01),
  V: base(VOLT),
  mV: base(VOLT, 1e-3),
  A: base({ A: 1 }),
  mA: base({ A: 1 }, 1e-3),
  kA: base({ A: 1 }, 1e3),
  ohm: base(OHM),
  mohm: base(OHM, 1e-3),
  kohm: base(OHM, 1e3),
  'ohm/m': base({ ...OHM, m: 1 }),
  'mohm/m': base({ ...OHM, m: 1 }, 1e-3),
  'mohm/ft': base({ ...OHM, m: 1 }, 1e-3 / 0.3048),
  H: base(HENRY),
  mH: base(HENRY, 1e-3),
  uH: base(HENRY, 1e-6),
  uF: base({ kg: -1, m: -2, s: 4, A: 2 }, 1e-6),
  J: base(JOULE),
  mJ: base(JOULE, 1e-3),
  W: base({ kg: 1, m: 2, s: -3 }),
  mW: base({ kg: 1, m: 2, s: -3 }, 1e-3),
  s: base({ s: 1 }),
  ms: base({ s: 1 }, 1e-3),
  us: base({ s: 1 }, 1e-6),
  min: base({ s: 1 }, 60),
  Hz: base({ s: -1 }),
  rpm: base({ s: -1 }, 1 / 60),
  m: base({ m: 1 }),
  cm: base({ m: 1 }, 1e-2),
  mm: base({ m: 1 }, 1e-3),
  in: base({ m: 1 }, 0.0254),
  ft: base({ m: 1 }, 0.3048),
  mm2: base({ m: 2 }, 1e-6),
  A2s: base({ A: 2, s: 1 }),
  K: base({ K: 1 }),
  degC: base({ K: 1 }),
  degF: base({ K: 1 }, 5 / 9),
  deg: base({ deg: 1 }),
  N: base({ kg: 1, m: 1, s: -2 }),
  lbf: base({ kg: 1, m: 1, s: -2 }, 0.45359237 * 9.80665),
  kg: base({ kg: 1 }),
  g: base({ kg: 1 }, 1e-3),
  lb: base({ kg: 1 }, 0.45359237),
  oz: base({ kg: 1 }, 0.45359237 / 16),
};

/** What has to be added to a point on the scale of a unit before its factor leads to the Celsius scale; 0 for most. */
export const zeroOf = (symbol: string): number => (symbol === 'degF' ? -32 : 0);

const units = new Map<string, Unit>();

/** Reads a unit's text, `ohm*mm^2/m`. Throws on a symbol that is not known: units are written by us. */
export function unit(text: string): Unit {
  const found = SYMBOLS[text] ?? units.get(text) ?? product(text);
  units.set(text, found);
  return found;
}

function product(text: string): Unit {
  const powers = DIMENSIONS.map(() => 0);
  let factor = 1;
  let sign = 1;
  for (const part of text.split(/([*/])/)) {
    if (part === '*') sign = 1;
    else if (part === '/') sign = -1;
    else {
      const [name = '', power = '1'] = part.trim().split('^');
      const known = SYMBOLS[name];
      if (!known) throw new Error(`unit "${text}": "${name}" is not a known unit`);
      const p = sign * Number(power);
      known.powers.forEach((own, i) => {
        powers[i] = (powers[i] ?? 0) + own * p;
      });
      factor *= known.factor ** p;
    }
  }
  return { powers, factor };
}

/** True when both units measure the same kind of quantity. */
export const sameDimension = (a: Unit, b: Unit): boolean => a.powers.every((p, i) => p === b.powers[i]);

const factors = new Map<string, number>();

/** Factor by which a value in `from` is multiplied to stand in `to`. Throws when the dimensions differ. */
export function convert(from: string, to: string): number {
  if (from === to) return 1;
  const key = `${from}>${to}`;
  const factor = factors.get(key) ?? factorBetween(from, to);
  factors.set(key, factor);
  return factor;
}

function factorBetween(from: string, to: string): number {
  const [a, b] = [unit(from), unit(to)];
  if (!sameDimension(a, b)) throw new Error(`"${from}" cannot be turned into "${to}"`);
  // Powers of ten are divided the other way round so that 1 ms is 0.001 s and not its neighbour.
  const ratio = a.factor / b.factor;
  const inverse = Math.round(b.factor / a.factor);
  return ratio < 1 && inverse > 0 && Math.abs(ratio * inverse - 1) < 1e-12 ? 1 / inverse : ratio;
}

const PRINTED: Readonly<Record<string, string>> = {
  '1': '',
  ohm: 'Ω',
  mohm: 'mΩ',
  degC: '°C',
  degF: '°F',
  deg: '°',
  mm2: 'mm²',
  'mm^2': 'mm²',
  A2s: 'A²s',
  uF: 'µF',
  us: 'µs',
  uH: 'µH',
  rpm: 'rpm',
};

/** A unit as it is printed: `Ω·mm²/m`. */
export const printUnit = (text: string): string =>
  text
    .split(/([*/])/)
    .map((part) =>
      part === '*' ? '·' : part === '/' ? '/' : (PRINTED[part] ?? part.replace('^2', '²').replace('^3', '³')),
    )
    .join('');
