/** Recordings of a current clamp that never was: known values, made-up noise. */

export interface Recorded {
  /** Voltage left for coil and feed [V], resistance of the loop [ohm], inductance [H]. */
  drive: number;
  ohm: number;
  henry: number;
  /** Charge, time from one firing to the next, time between samples, length of the recording [s]. */
  dwell: number;
  period: number;
  every: number;
  length: number;
  /** Where in its first period the recording begins [s]. */
  from?: number;
  /** [A] */
  noise?: number;
  offset?: number;
  limit?: number;
  /** The instrument shows no more than this [A]. */
  range?: number;
  /** Above this current the inductance is a third [A]. */
  saturates?: number;
  sign?: 1 | -1;
}

/** Normally distributed numbers, the same ones every time; Box and Muller's method on a linear congruence. */
function normal(): () => number {
  let state = 12345;
  const uniform = (): number => {
    state = (state * 1103515245 + 12345) % 2147483648;
    return (state + 0.5) / 2147483648;
  };
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}

/** Current [A] a time [s] after the start of a charge. */
export function chargeCurrent(r: Recorded, after: number): number {
  if (after <= 0) return 0;
  const rise = (from: number, henry: number, t: number): number =>
    r.drive / r.ohm + (from - r.drive / r.ohm) * Math.exp((-t * r.ohm) / henry);
  let current = rise(0, r.henry, after);
  if (r.saturates !== undefined && current > r.saturates) {
    const then = (-r.henry / r.ohm) * Math.log(1 - (r.saturates * r.ohm) / r.drive);
    current = rise(r.saturates, r.henry / 3, after - then);
  }
  return Math.min(current, r.limit ?? Number.POSITIVE_INFINITY);
}

/** Samples as [s, A]. A charge ends with each period. */
export function samplesOf(r: Recorded): [number, number][] {
  const random = normal();
  return Array.from({ length: Math.round(r.length / r.every) }, (_, i) => {
    const t = i * r.every;
    const inPeriod = (t + (r.from ?? 0)) % r.period;
    const current = chargeCurrent(r, inPeriod - (r.period - r.dwell)) + (r.noise ?? 0) * random();
    const shown = Math.min((r.sign ?? 1) * current, r.range ?? Number.POSITIVE_INFINITY) + (r.offset ?? 0);
    return [t, shown];
  });
}

export interface Written {
  head?: string;
  separator?: string;
  comma?: boolean;
  /** Factor from seconds to what is written. */
  times?: number;
}

/** The recording as text. */
export function textOf(
  r: Recorded,
  { head, separator = ',', comma = false, times = 1 }: Written = {},
): string {
  const number = (value: number, digits: number): string => {
    const text = value.toFixed(digits);
    return comma ? text.replace('.', ',') : text;
  };
  const lines = samplesOf(r).map(([t, i]) => [number(t * times, 7), number(i, 4)].join(separator));
  return [...(head === undefined ? [] : [head]), ...lines, ''].join('\n');
}
