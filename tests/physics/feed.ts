/** The drop of a feed and what it leaves of the spark, computed a second time from the numeric currents. */
import { before, type Course, chargeDuring, copperAt, currentAt } from './reference.ts';

/** A conductor: which coils it carries, and its whole resistance [ohm]. */
export interface Conductor {
  coils: readonly number[];
  ohm: number;
}

/** Area of an AWG wire [mm²], ASTM B258 (quoted). */
export const awgArea = (number: number): number => (Math.PI / 4) * (0.127 * 92 ** ((36 - number) / 39)) ** 2;

/** Resistance of a stranded AWG wire [ohm]: 1/58 at 20 °C, 1.02 for the lay. */
export const awgOhm = (number: number, metres: number, celsius: number): number =>
  ((1.02 / 58) * metres * copperAt(celsius)) / awgArea(number);

/** Temperature [degC] of a wire that may reach `rating` under `amps`. */
export const warmedTo = (rating: number, ambient: number, effective: number, amps: number): number =>
  ambient + (rating - ambient) * (effective / amps) ** 2;

const carrying = (course: Course, conductors: readonly Conductor[], k: number): Conductor[] =>
  conductors.filter(({ coils }) => coils.includes(course.fires[k]?.coil ?? -1));

/** Drop [V] of the path of the coil of firing `k` at the instant before it fires. */
export const pathDrop = (course: Course, conductors: readonly Conductor[], k: number): number =>
  carrying(course, conductors, k).reduce((sum, { coils, ohm }) => sum + ohm * before(course, coils, k), 0);

export const pathOhm = (course: Course, conductors: readonly Conductor[], k: number): number =>
  carrying(course, conductors, k).reduce((sum, { ohm }) => sum + ohm, 0);

/** Average drop [V] that the other coils make in the path during the dwell of firing `k`. */
export function neighbourDrop(course: Course, conductors: readonly Conductor[], k: number): number {
  const own = course.fires[k]?.coil ?? -1;
  return carrying(course, conductors, k).reduce((sum, { coils, ohm }) => {
    const others = coils.filter((coil) => coil !== own);
    return sum + (ohm * chargeDuring(course, others, k)) / course.dwell;
  }, 0);
}

/** Peak [A] behind the feed after a dwell, the drop of the others held. */
export function deliveredAfter(
  course: Course,
  conductors: readonly Conductor[],
  k: number,
  dwell: number,
): number {
  if ('height' in course.charging) throw new Error('a bound has no delivered peak');
  const { ohm, volts, henry, limit } = course.charging;
  return currentAt(
    {
      ohm: ohm + pathOhm(course, conductors, k),
      volts: volts - neighbourDrop(course, conductors, k),
      henry,
      limit,
    },
    dwell,
  );
}

/**
 * The peaks [A] of all firings from the coupled circuit itself, without any approximation: L·dI/dt of each coil that is on,
 * with the drop of all currents at that instant, by the Runge–Kutta method of fourth order. For coils without a limit.
 */
export function exactPeaks(course: Course, conductors: readonly Conductor[]): number[] {
  if ('height' in course.charging || course.charging.limit !== null) throw new Error('only for free coils');
  const { ohm, volts, henry } = course.charging;
  // One cycle to settle: no charge is longer than that. The second one is read.
  const charges = [0, 1].flatMap((turn) =>
    course.fires.map(({ coil, at }, k) => {
      const end = at + (turn + 1) * course.cycle;
      return { coil, k, turn, begin: end - course.dwell, end };
    }),
  );
  const cuts = [...new Set(charges.flatMap(({ begin, end }) => [begin, end]))].sort((a, b) => a - b);
  const amps = new Map<number, number>();
  const peaks = course.fires.map(() => Number.NaN);
  const slope = (now: readonly number[], on: readonly number[]): number[] => {
    const drops = conductors.map(({ coils, ohm: r }) =>
      on.reduce((sum, coil, i) => sum + (coils.includes(coil) ? r * (now[i] as number) : 0), 0),
    );
    return on.map((coil, i) => {
      const lost = conductors.reduce(
        (sum, { coils }, c) => sum + (coils.includes(coil) ? (drops[c] as number) : 0),
        0,
      );
      return (volts - ohm * (now[i] as number) - lost) / henry;
    });
  };
  cuts.forEach((from, i) => {
    const to = cuts[i + 1];
    if (to === undefined) return;
    const middle = (from + to) / 2;
    const on = charges.filter(({ begin, end }) => begin < middle && middle < end).map(({ coil }) => coil);
    let now = on.map((coil) => amps.get(coil) ?? 0);
    const steps = Math.ceil((to - from) / ((henry / ohm) * 0.02));
    const h = (to - from) / steps;
    const ahead = (s: readonly number[], by: number): number[] =>
      now.map((x, j) => x + by * (s[j] as number));
    for (let s = 0; s < steps; s++) {
      const a = slope(now, on);
      const b = slope(ahead(a, h / 2), on);
      const c = slope(ahead(b, h / 2), on);
      const d = slope(ahead(c, h), on);
      now = now.map((x, j) => x + (h / 6) * ((a[j] ?? 0) + 2 * (b[j] ?? 0) + 2 * (c[j] ?? 0) + (d[j] ?? 0)));
    }
    on.forEach((coil, j) => {
      amps.set(coil, now[j] as number);
    });
    for (const charge of charges.filter(({ end }) => Math.abs(end - to) < 1e-12)) {
      if (charge.turn === 1) peaks[charge.k] = amps.get(charge.coil) ?? Number.NaN;
      amps.delete(charge.coil);
    }
  });
  return peaks;
}
