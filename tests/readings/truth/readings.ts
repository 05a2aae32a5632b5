/** What a technician writes down of an install: real instruments, with their errors and their digits. */
import { dice } from '../../protection/random.ts';
import { flow, type Shown } from './circuit.ts';
import type { Install } from './install.ts';

/** As an entry of `measured:`. */
export type Entry = Record<string, string>;

/** Digits of a display with so many counts: 0.1 mV up to 0.2 V of 2000. */
const digit = (value: number, counts: number): number => {
  let range = 1e-4 * counts;
  while (value >= range && range < 1000) range *= 10;
  return range / counts;
};

/** Readings of a thorough or of a hurried person. `mohm`: what the milliohm meter reads is not asked for here. */
export function readingsOf(install: Install, how: 'thorough' | 'sparse'): Entry[] {
  const d = dice(install.seed * 2 + (how === 'sparse' ? 1 : 0) + 40_000);
  const counts = d.one([2000, 4000, 6000]);
  const gains = {
    meter: 1 + 0.005 * d.between(-0.7, 0.7),
    clamp: 1 + 0.03 * d.between(-0.7, 0.7),
    scope: 1 + 0.03 * d.between(-0.7, 0.7),
  };
  const meter = (volts: number): string => {
    const lsb = digit(volts, counts);
    const shown = volts * gains.meter * (1 + 0.0015 * d.between(-1, 1)) + 2 * lsb * d.between(-1, 1);
    return `${Math.max(0, Number((Math.round(shown / lsb) * lsb).toFixed(5)))} V`;
  };
  const clamp = (amps: number): string =>
    `${Math.max(0, Math.round(amps * install.clampScale * gains.clamp * (1 + 0.009 * d.between(-1, 1)) * 100) / 100)} A`;
  const shown = new Map<number, Shown>();
  const at = (point: number): Shown => {
    const known = shown.get(point) ?? flow(install, point);
    shown.set(point, known);
    return known;
  };
  const [IDLE, FAST] = [1, 2];
  const name = (point: number): string => install.points[point]?.name as string;
  const posts = (point: number): Entry => ({
    what: 'supply',
    point: name(point),
    meter: meter(at(point).posts),
  });
  const drop = (w: number, point: number): Entry => ({
    what: 'drop',
    run: install.wires[w]?.id as string,
    point: name(point),
    meter: meter((install.wires[w]?.ohm as number) * (at(point).average[w] as number)),
  });
  const main = (point: number): Entry => ({
    what: 'current',
    run: 'main',
    point: name(point),
    clamp_average: clamp(at(point).average[0] as number),
  });
  const peak = (point: number): Entry => ({
    what: 'current',
    run: 'main',
    point: name(point),
    clamp_peak: clamp(at(point).peak[0] as number),
  });
  const coilAmps = (c: number, point: number): Entry => ({
    what: 'current',
    coil: install.coilIds[c] as string,
    point: name(point),
    clamp_average: clamp(at(point).coilAverage[c] as number),
  });
  const coilPeak = (c: number, point: number): Entry => ({
    what: 'current',
    coil: install.coilIds[c] as string,
    point: name(point),
    clamp_peak: clamp(at(point).coilPeak[c] as number),
  });
  const coilVolts = (c: number, point: number): Entry => ({
    what: 'supply',
    coil: install.coilIds[c] as string,
    point: name(point),
    meter: meter(at(point).coilVolts[c] as number),
  });
  const wires = install.wires.map((_, w) => w);
  const coils = install.coils.map((_, c) => c);
  const primary = (c: number): Entry => {
    const ohms = install.coils[c]?.cold as number;
    const shown = ohms * (1 + 0.01 * d.between(-1, 1)) + 2e-3 * d.between(-1, 1);
    return {
      what: 'resistance',
      coil: install.coilIds[c] as string,
      value: `${Number(shown.toFixed(3))} ohm`,
    };
  };
  if (how === 'thorough')
    return [
      posts(IDLE),
      posts(FAST),
      ...wires.flatMap((w) => [drop(w, IDLE), drop(w, FAST)]),
      main(IDLE),
      main(FAST),
      peak(FAST),
      ...coils.map((c) => coilAmps(c, FAST)),
      ...coils.map((c) => coilPeak(c, FAST)),
      ...coils.map((c) => coilVolts(c, FAST)),
      ...coils.flatMap((c) => (Number.isFinite(install.coils[c]?.ohm) ? [primary(c)] : [])),
    ];
  const some = d.one(coils);
  return [
    posts(FAST),
    ...d.one([
      [drop(0, FAST), main(FAST), drop(wires.length - 1, FAST)],
      [main(FAST), peak(FAST), coilVolts(some, FAST)],
      [drop(0, IDLE), drop(0, FAST), coilVolts(some, FAST), main(FAST)],
      coils.map((c) => coilVolts(c, FAST)),
      [...coils.map((c) => coilAmps(c, FAST)), posts(IDLE)],
    ]),
  ];
}

/** What a fault in this conductor does at its worst: heat [W], and drop at the peak [V]. */
export function weight(install: Install, wire: string, ohm: number): { watts: number; volts: number } {
  const w = install.wires.findIndex(({ id }) => id === wire);
  const found = [1, 2].map((point) => flow(install, point));
  return {
    watts: Math.max(...found.map(({ effective }) => (effective[w] as number) ** 2 * ohm)),
    volts: Math.max(...found.map(({ peak }) => (peak[w] as number) * ohm)),
  };
}
