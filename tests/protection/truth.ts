/**
 * Protection a second time, for tests only: sizes, ampacity, opening of a fuse, heating of a conductor. Written from
 * the published tables and the heat balance, not from the formulas of the model.
 *
 * Areas in mm², lengths in m, temperatures in °C, otherwise SI.
 */
import { AMPACITY, AMPACITY_RATINGS, BUNDLE } from '../../src/data/ampacity.ts';
import { FUSE_LIMITS } from '../../src/data/fuse-limits.ts';
import { FUSE_RATINGS } from '../../src/data/fuse-ratings.ts';
import { fuse } from '../../src/data/fuses.ts';
import { IEC_60228_CLASS_5 } from '../../src/data/iec60228.ts';
import { CONDUCTOR_TYPES, INSULATION_CLASSES, SHORT_CIRCUIT_LIMITS } from '../../src/data/insulation.ts';
import { SAE_SIZES } from '../../src/data/sae.ts';

// --- copper -----------------------------------------------------------------------------------------------------

/** IEC 60028 (quoted): 58 m/(Ω·mm²) and 0.00393 per kelvin at 20 °C. */
export const RHO_20 = 1 / 58;
export const ALPHA_20 = 0.00393;
/** NEC ch. 9 table 8 (quoted), stranded over solid. */
export const LAY = 1.02;
/** IEC 60364-5-54 annex (quoted), J/(K·mm²·m). */
export const HEAT = 3.45;
/** FAA AC 43.13-1B p. 11-22 (printed). */
export const BETA = 234.5;

const number = (gauge: string): number =>
  gauge.endsWith('/0') ? 1 - Number(gauge.slice(0, -2)) : Number(gauge);
/** ASTM B258 (quoted). */
const awgArea = (gauge: string): number => (Math.PI / 4) * (0.127 * 92 ** ((36 - number(gauge)) / 39)) ** 2;

export interface Size {
  area: number;
  /** One metre at 20 °C. */
  ohm: number;
}

export function sizeOf(name: string): Size {
  const [gauge = '', series] = name.split(' ');
  if (series === 'mm2') {
    const row = IEC_60228_CLASS_5.rows.find(({ size }) => size === Number(gauge));
    return { area: Number(gauge), ohm: (row?.resistance ?? Number.NaN) / 1000 };
  }
  const area =
    series === 'SAE'
      ? // 1 cmil = 5.06707e-4 mm².
        (SAE_SIZES.rows.find((row) => row.gauge === gauge)?.area ?? Number.NaN) * (Math.PI / 4) * 0.0254 ** 2
      : awgArea(gauge);
  return { area, ohm: (RHO_20 * LAY) / area };
}

/** Sizes from which `auto` chooses, in order. */
export const SERIES: Readonly<Record<string, readonly string[]>> = {
  AWG: ['18', '16', '14', '12', '10', '8', '6', '4', '2', '1/0', '2/0', '3/0', '4/0'].map((g) => `${g} AWG`),
  SAE: SAE_SIZES.rows.map((row) => `${row.gauge} SAE`),
  mm2: IEC_60228_CLASS_5.rows.filter(({ size }) => size >= 0.75).map(({ size }) => `${size} mm2`),
};

// --- insulation and ampacity ------------------------------------------------------------------------------------

export interface Limits {
  rating: number;
  /** Up to 6 hours. */
  overload: number;
  /** Up to 5 s. */
  short: number;
}

export function limitsOf(insulation: string): Limits {
  const shortOf = (material: string): number =>
    SHORT_CIRCUIT_LIMITS.rows.find((row) => row.material === material)?.limit ?? Number.NaN;
  const type = CONDUCTOR_TYPES.rows.find(({ name }) => name === insulation);
  // A conductor type says nothing of six hours: 50 K above its rating, as every class has it.
  if (type) return { rating: type.continuous, overload: type.continuous + 50, short: shortOf(type.material) };
  const row = INSULATION_CLASSES.rows.find(({ name }) => name === insulation);
  if (!row) throw new Error(`no insulation ${insulation}`);
  // A class letter does not say what the insulation is made of: taken as PVC, never below its own overload limit.
  return { rating: row.continuous, overload: row.hours_6, short: Math.max(shortOf('PVC'), row.hours_6) };
}

/** Table 5 of 33 CFR 183.425 (printed) at an area; below 18 AWG in proportion, outside nothing. */
function inTable(area: number, column: number): number | null {
  const key = AMPACITY_RATINGS[column]?.column ?? 'at_60';
  const points = AMPACITY.rows.map((row) => ({ area: awgArea(row.gauge), amps: row[key] }));
  const [first] = points;
  if (!first || area < 0.75) return null;
  if (area < first.area) return (first.amps * area) / first.area;
  for (const [i, low] of points.entries()) {
    const high = points[i + 1];
    // An AWG area is itself a point of the table, whatever the rounding.
    if (Math.abs(area / low.area - 1) < 1e-9) return low.amps;
    if (high && area > low.area && area < high.area * (1 - 1e-9)) {
      const share = Math.log(area / low.area) / Math.log(high.area / low.area);
      return Math.exp(Math.log(low.amps) * (1 - share) + Math.log(high.amps) * share);
    }
  }
  return null;
}

export interface Place {
  insulation: string;
  ambient: number;
  bundle: number;
}

/** Ampacity at its place; null where the table has no figure. */
export function ampacityOf(name: string, { insulation, ambient, bundle }: Place): number | null {
  const { area } = sizeOf(name);
  const { rating } = limitsOf(insulation);
  const column = AMPACITY_RATINGS.findLastIndex((c) => c.rating <= rating);
  const base = AMPACITY_RATINGS[column]?.rating ?? Number.NaN;
  const own = inTable(area, column);
  if (own === null) return null;
  if (ambient >= rating) return 0;
  const next = inTable(area, Math.min(column + 1, AMPACITY_RATINGS.length - 1)) ?? Number.NaN;
  const law = Math.sqrt(((rating - 30) / (base - 30)) * ((BETA + base) / (BETA + rating)));
  const at30 = rating >= 200 ? own : Math.min(own * law, next);
  const together = BUNDLE.rows.find(({ from, to }) => bundle >= from && bundle <= (to ?? Infinity));
  return at30 * Math.sqrt((rating - ambient) / (rating - 30)) * (together?.factor ?? Number.NaN);
}

// --- fuse -------------------------------------------------------------------------------------------------------

/** Limits with a maximum, in the logarithms of multiple and time. */
const LIMITS = new Map(
  ['C', 'F', 'E', 'SF30'].map((type) => [
    type,
    FUSE_LIMITS.rows
      .filter((row) => row.type === type && row.max !== null)
      .map(({ multiple, max }) => ({ x: Math.log(multiple), y: Math.log(max ?? Number.NaN) })),
  ]),
);

/** Latest opening by the limits: straight in log–log between them, without end up to the first one with a maximum, I²t beyond the last. */
export function openingOf(type: string, rating: number, amps: number): number {
  const limits = LIMITS.get(type) ?? [];
  const x = Math.log(amps / rating);
  const [first] = limits;
  const last = limits.at(-1);
  if (!first || !last) throw new Error(`no limits for ${type}`);
  // Rounding of the product rating × multiple.
  if (x <= first.x + 1e-12) return Infinity;
  // The energy that melts it stays: half the time at 1.41 times the current.
  if (x >= last.x) return Math.exp(last.y - 2 * (x - last.x));
  const i = limits.findLastIndex((limit) => limit.x <= x);
  const [low, high] = [limits[i], limits[i + 1]] as [typeof first, typeof first];
  return Math.exp(low.y + ((high.y - low.y) * (x - low.x)) / (high.x - low.x));
}

/** Ratings of the standard's list, in order. */
export const ratingsOf = (type: string): number[] =>
  FUSE_RATINGS.rows.filter((row) => row.type === type && row.standing === 'listed').map((row) => row.rating);

/** ISO 8820-3 (quoted): type E of 20 A may drop 125 mV at its rating; all others are taken with 100 mV. */
export const fuseOhm = (type: string, rating: number): number =>
  (type === 'E' && rating === 20 ? 0.125 : 0.1) / rating;

/** A fuse is not re-rated below this share of its rating; arbitrary. */
const LEAST_SHARE = fuse.fuse_least_share.value;

/** Smallest listed rating for a load, and the largest when none is large enough. */
export function ratingFor(type: string, amps: number, share: number, ambient: number): number {
  const ratings = ratingsOf(type);
  const needed = amps / (share * Math.max(LEAST_SHARE, 1 - 0.0045 * (ambient - 25)));
  return ratings.find((rating) => rating >= needed) ?? (ratings.at(-1) as number);
}

// --- heating ----------------------------------------------------------------------------------------------------

/** A conductor at its place: what its heat balance needs. */
export interface Conductor extends Limits, Size {
  ambient: number;
  amps: number;
}

/** Heat balance of one metre at constant resistance, that at the rating: J/K, W/K and Ω. */
export function balanceOf({ area, ohm, rating, ambient, amps }: Conductor) {
  const hot = ohm * (1 + ALPHA_20 * (rating - 20));
  // At the ampacity the conductor sits at its rating: that says how much heat leaves it.
  return { store: HEAT * area, leave: (amps ** 2 * hot) / (rating - ambient), hot };
}

/** Temperature after `t` from `from` at a constant current. */
export function temperatureAfter(c: Conductor, from: number, current: number, t: number): number {
  const { store, leave, hot } = balanceOf(c);
  const settled = c.ambient + (current ** 2 * hot) / leave;
  return settled + (from - settled) * Math.exp((-t * leave) / store);
}

/**
 * Whether the conductor is still sound when the fuse opens: within its short-circuit limit up to 5 s, within its
 * overload limit later on.
 */
export function soundAt(c: Conductor, from: number, current: number, opens: number): boolean {
  const limit = opens <= 5 ? c.short : c.overload;
  return temperatureAfter(c, from, current, opens) <= limit;
}
