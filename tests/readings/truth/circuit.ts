/**
 * What flows in an install: the currents of all coils integrated step by step (Runge and Kutta, second order), each
 * through its own resistance and those that it shares. A plain loop over time; no matrix, no closed form.
 */
import type { Install } from './install.ts';

export interface Shown {
  /** By conductor [A]. */
  readonly average: readonly number[];
  readonly effective: readonly number[];
  readonly peak: readonly number[];
  /** By coil [A]. */
  readonly coilAverage: readonly number[];
  readonly coilPeak: readonly number[];
  /** Supply between the terminals of each coil and its ground: average, and least while it is charged [V]. */
  readonly coilVolts: readonly number[];
  readonly coilLeast: readonly number[];
  /** At the posts: average and least [V]. */
  readonly posts: number;
  readonly postsLeast: number;
}

/** Step of time while a coil charges [s]: 1/300 of the shortest charge, so that an error is some 1e-5. */
const STEPS = 300;

export function flow(install: Install, point: number): Shown {
  const { wires, coils, firings, driverDrop, limit, sourceOhm } = install;
  const { rpm, volts, dwell: asked } = install.points[point] as Install['points'][number];
  const cycle = 120 / rpm;
  const n = coils.length;
  // A coil is charged at most from the rest after its last firing on.
  const rest = 0.8e-3;
  const charges = firings.map(({ coil, at }) => {
    const own = firings.filter((f) => f.coil === coil).map((f) => f.at);
    const before = own.map((a) => (at - a + 1) % 1).filter((gap) => gap > 0);
    const room = (before.length > 0 ? Math.min(...before) : 1) * cycle - rest;
    return { coil, end: at * cycle, length: Math.max(0, Math.min(asked, room)) };
  });
  const cuts = [
    ...new Set([0, cycle, ...charges.flatMap(({ end, length }) => [end, (end - length + cycle) % cycle])]),
  ].sort((a, b) => a - b);
  const path = coils.map((_, c) =>
    wires.flatMap(({ coils: carried }, w) => (carried.includes(c) ? [w] : [])),
  );
  const ohms = wires.map(({ ohm }) => ohm);
  const amps = new Array<number>(n).fill(0);
  const inWire = new Array<number>(wires.length).fill(0);
  const fill = (now: readonly number[]): number => {
    inWire.fill(0);
    let total = 0;
    for (let c = 0; c < n; c++) {
      total += now[c] as number;
      for (const w of path[c] as number[]) inWire[w] = (inWire[w] as number) + (now[c] as number);
    }
    return total;
  };
  const slope = (now: readonly number[], on: readonly boolean[]): number[] => {
    const total = fill(now);
    return now.map((i, c) => {
      // An open winding draws nothing.
      if (!on[c] || coils[c]?.ohm === Number.POSITIVE_INFINITY) return 0;
      const { ohm, henry } = coils[c] as Install['coils'][number];
      const drop = (path[c] as number[]).reduce(
        (sum, w) => sum + (ohms[w] as number) * (inWire[w] as number),
        0,
      );
      const rise = (volts - driverDrop - sourceOhm * total - drop - ohm * i) / henry;
      return i >= limit ? Math.min(0, rise) : rise;
    });
  };
  const sums = {
    w: ohms.map(() => 0),
    w2: ohms.map(() => 0),
    peak: ohms.map(() => 0),
    c: amps.map(() => 0),
    cPeak: amps.map(() => 0),
    volt: amps.map(() => 0),
    least: amps.map(() => volts),
    total: 0,
    most: 0,
  };
  // The second cycle counts: the first may start in the middle of a charge.
  for (const counts of [false, false, true])
    for (let k = 0; k + 1 < cuts.length; k++) {
      const [from, to] = [cuts[k] as number, cuts[k + 1] as number];
      const middle = (from + to) / 2;
      const on = coils.map((_, c) =>
        charges.some(
          ({ coil, end, length }) => coil === c && (((end - middle) % cycle) + cycle) % cycle < length,
        ),
      );
      // Who is not charged has fired: its current is gone.
      for (let c = 0; c < n; c++) if (!on[c]) amps[c] = 0;
      const steps = on.some(Boolean)
        ? Math.max(8, Math.ceil(((to - from) / Math.max(asked, 1e-5)) * STEPS))
        : 1;
      const h = (to - from) / steps;
      for (let s = 0; s < steps; s++) {
        const k1 = slope(amps, on);
        const half = amps.map((i, c) => i + (h / 2) * (k1[c] as number));
        const k2 = slope(half, on);
        if (counts) {
          const total = fill(half);
          sums.total += total * h;
          for (let w = 0; w < ohms.length; w++) {
            const i = inWire[w] as number;
            sums.w[w] = (sums.w[w] as number) + i * h;
            sums.w2[w] = (sums.w2[w] as number) + i * i * h;
          }
          for (let c = 0; c < n; c++) {
            sums.c[c] = (sums.c[c] as number) + (half[c] as number) * h;
            const drop = (path[c] as number[]).reduce(
              (sum, w) => sum + (ohms[w] as number) * (inWire[w] as number),
              0,
            );
            sums.volt[c] = (sums.volt[c] as number) + (volts - sourceOhm * total - drop) * h;
          }
        }
        for (let c = 0; c < n; c++) amps[c] = Math.min(limit, (amps[c] as number) + h * (k2[c] as number));
        if (counts) {
          const total = fill(amps);
          sums.most = Math.max(sums.most, total);
          for (let w = 0; w < ohms.length; w++)
            sums.peak[w] = Math.max(sums.peak[w] as number, inWire[w] as number);
          for (let c = 0; c < n; c++) {
            sums.cPeak[c] = Math.max(sums.cPeak[c] as number, amps[c] as number);
            const drop = (path[c] as number[]).reduce(
              (sum, w) => sum + (ohms[w] as number) * (inWire[w] as number),
              0,
            );
            const now = volts - sourceOhm * total - drop;
            // At its own firing: the end of a charge of this coil.
            if (
              s === steps - 1 &&
              charges.some(({ coil, end }) => coil === c && Math.abs(((end - to) % cycle) + 0) < 1e-12)
            )
              sums.least[c] = Math.min(sums.least[c] as number, now);
          }
        }
      }
    }
  return {
    average: sums.w.map((q) => q / cycle),
    effective: sums.w2.map((q) => Math.sqrt(q / cycle)),
    peak: sums.peak,
    coilAverage: sums.c.map((q) => q / cycle),
    coilPeak: sums.cPeak,
    coilVolts: sums.volt.map((v) => v / cycle),
    coilLeast: sums.least,
    posts: volts - (sourceOhm * sums.total) / cycle,
    postsLeast: volts - sourceOhm * sums.most,
  };
}
