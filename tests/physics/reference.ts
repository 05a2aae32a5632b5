/**
 * A second computation of the currents, for tests only. It shares nothing with the model: charges are laid out in
 * time and every integral is summed up numerically over one working cycle, split at each instant at which a charge
 * begins, reaches the limit or ends. Where the model has a closed form, this has none.
 *
 * Base units: seconds, volts, amperes, ohms, henrys, degrees of crank.
 */

/** What charges: `height` alone is a bound, a rectangular pulse. */
export type Charging =
  | { ohm: number; henry: number; volts: number; limit: number | null }
  | { height: number };

/** Everything that flows at one operating point. */
export interface Course {
  charging: Charging;
  dwell: number;
  /** Time of one working cycle. */
  cycle: number;
  /** Instants of firing within the cycle, one for each firing. */
  fires: { coil: number; at: number }[];
}

export interface Figures {
  average: number;
  effective: number;
  peak: number;
}

/** Resistance of copper at `celsius` over that at 20 °C; IEC 60028, quoted. */
export const copperAt = (celsius: number): number => 1 + 0.00393 * (celsius - 20);

// --- one coil ---------------------------------------------------------------------------------------------------

/** Inductance from a bench test by halving the interval: the one at which the current reaches `peak`. */
export function inductanceOf(
  test: { supply: number; dwell: number; peak: number },
  ohm: number,
  drop: number,
): number {
  const reached = (henry: number): number =>
    ((test.supply - drop) / ohm) * (1 - Math.exp((-test.dwell * ohm) / henry));
  let [low, high] = [1e-9, 1e3];
  for (let i = 0; i < 200; i++) {
    const middle = Math.sqrt(low * high);
    if (reached(middle) > test.peak) low = middle;
    else high = middle;
  }
  return Math.sqrt(low * high);
}

/** Current a time `t` after the start of the charge. */
export function currentAt(charging: Charging, t: number): number {
  if (t <= 0) return 0;
  if ('height' in charging) return charging.height;
  const { ohm, henry, volts, limit } = charging;
  return Math.min(limit ?? Infinity, (Math.max(0, volts) / ohm) * (1 - Math.exp((-t * ohm) / henry)));
}

/** When the current meets its limit within the dwell, by halving the interval; the dwell when it does not. */
function limitTime(charging: Charging, dwell: number): number {
  if ('height' in charging || charging.limit === null) return dwell;
  const free = { ...charging, limit: null };
  if (currentAt(free, dwell) <= charging.limit) return dwell;
  let [low, high] = [0, dwell];
  for (let i = 0; i < 100; i++) {
    const middle = (low + high) / 2;
    if (currentAt(free, middle) < charging.limit) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

// --- integration ------------------------------------------------------------------------------------------------

/** Gauss–Legendre, five points on −1 … 1: nodes and weights; exact up to the ninth power. */
const NODES = [
  [0, 128 / 225],
  [Math.sqrt(5 - 2 * Math.sqrt(10 / 7)) / 3, (322 + 13 * Math.sqrt(70)) / 900],
  [-Math.sqrt(5 - 2 * Math.sqrt(10 / 7)) / 3, (322 + 13 * Math.sqrt(70)) / 900],
  [Math.sqrt(5 + 2 * Math.sqrt(10 / 7)) / 3, (322 - 13 * Math.sqrt(70)) / 900],
  [-Math.sqrt(5 + 2 * Math.sqrt(10 / 7)) / 3, (322 - 13 * Math.sqrt(70)) / 900],
] as const;

/** Integral of a function that is smooth from `a` to `b`, in pieces not longer than `step`. */
export function integral(f: (t: number) => number, a: number, b: number, step: number): number {
  if (b <= a) return 0;
  const pieces = Math.min(2000, Math.max(1, Math.ceil((b - a) / step)));
  const half = (b - a) / pieces / 2;
  let sum = 0;
  for (let i = 0; i < pieces; i++) {
    const middle = a + (2 * i + 1) * half;
    for (const [node, weight] of NODES) sum += weight * f(middle + node * half);
  }
  return sum * half;
}

/** Half a time constant: there the fifth-order rule errs by less than 1e-12. */
const stepOf = (charging: Charging): number =>
  'height' in charging ? Infinity : (charging.henry / charging.ohm) * 0.5;

/** Integral of i(x + δ)·i(x) from the begin of the later charge to the end of the earlier one. */
export function overlapOf(charging: Charging, dwell: number, delta: number): number {
  const end = dwell - delta;
  if (end <= 0) return 0;
  const limit = limitTime(charging, dwell);
  const cuts = [0, limit - delta, limit, end].filter((x) => x >= 0 && x <= end).sort((a, b) => a - b);
  const product = (x: number): number => currentAt(charging, x + delta) * currentAt(charging, x);
  let sum = 0;
  for (let i = 1; i < cuts.length; i++)
    sum += integral(product, cuts[i - 1] as number, cuts[i] as number, stepOf(charging));
  return sum;
}

// --- several coils ----------------------------------------------------------------------------------------------

/** Every charge that can touch the times from −cycle to 2·cycle: its begin, by coil. */
const begins = (course: Course): { coil: number; from: number }[] =>
  [-1, 0, 1, 2].flatMap((turn) =>
    course.fires.map(({ coil, at }) => ({ coil, from: at + turn * course.cycle - course.dwell })),
  );

/** Integrates the charges of `coils` from `a` to `b`, in pieces within which nothing switches. */
function pieces(
  course: Course,
  coils: readonly number[],
  a: number,
  b: number,
  visit: (from: number, to: number, total: (t: number) => number) => void,
): void {
  const charges = course.dwell > 0 ? begins(course).filter(({ coil }) => coils.includes(coil)) : [];
  const limit = limitTime(course.charging, course.dwell);
  const cuts = [a, b, ...charges.flatMap(({ from }) => [from, from + limit, from + course.dwell])]
    .filter((t) => t >= a && t <= b)
    .sort((x, y) => x - y);
  for (let i = 1; i < cuts.length; i++) {
    const [from, to] = [cuts[i - 1] as number, cuts[i] as number];
    if (to - from <= 1e-13) continue;
    const middle = (from + to) / 2;
    const on = charges.filter((c) => c.from < middle && middle < c.from + course.dwell);
    visit(from, to, (t) => on.reduce((sum, c) => sum + currentAt(course.charging, t - c.from), 0));
  }
}

/** Average, effective and peak current of a conductor that carries `coils`. */
export function figures(course: Course, coils: readonly number[]): Figures {
  let [charge, square, peak] = [0, 0, 0];
  const step = stepOf(course.charging);
  pieces(course, coils, 0, course.cycle, (from, to, total) => {
    charge += integral(total, from, to, step);
    square += integral((t) => total(t) ** 2, from, to, step);
    // Looked for, not assumed to stand at an end.
    for (let k = 0; k <= 8; k++) peak = Math.max(peak, total(from + ((to - from) * k) / 8));
  });
  return { average: charge / course.cycle, effective: Math.sqrt(square / course.cycle), peak };
}

/** Current of `coils` at the instant before firing number `k`. */
export function before(course: Course, coils: readonly number[], k: number): number {
  const at = course.fires[k]?.at ?? Number.NaN;
  let found = 0;
  // A piece that ends with the firing; what begins with it does not flow yet.
  pieces(course, coils, at - course.cycle / 1000, at, (_, to, total) => {
    if (Math.abs(to - at) <= 1e-12) found = total(to);
  });
  return found;
}

/** Charge that `coils` draw during the dwell of firing number `k`. */
export function chargeDuring(course: Course, coils: readonly number[], k: number): number {
  const at = course.fires[k]?.at ?? Number.NaN;
  let sum = 0;
  pieces(course, coils, at - course.dwell, at, (from, to, total) => {
    sum += integral(total, from, to, stepOf(course.charging));
  });
  return sum;
}
