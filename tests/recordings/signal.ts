/**
 * What a current clamp and an instrument make of the charges of coils. Nothing of the tool is used: the charge is integrated
 * in small steps, and every disturbance is drawn from numbers that are the same each time.
 */

export interface Coil {
  /** Voltage left for coil and feed [V], resistance of the loop [ohm], inductance [H]. */
  readonly volts: number;
  readonly ohm: number;
  readonly henry: number;
  /** Charge, and time from one firing to the next [s]. */
  readonly dwell: number;
  readonly period: number;
  /** Held at this current [A]. */
  readonly limit?: number;
}

/** Steps of the integration in a charge: the method of Heun leaves an error of 1e-7 of the peak with so many. */
const STEPS = 2000;

/** Current [A] over the time since the start of a charge, in steps of dwell/STEPS. */
export function chargeOf({ volts, ohm, henry, dwell, limit = Number.POSITIVE_INFINITY }: Coil): Float64Array {
  const h = dwell / STEPS;
  const rise = (i: number): number => (volts - ohm * i) / henry;
  const current = new Float64Array(STEPS + 1);
  for (let k = 1; k <= STEPS; k++) {
    const i = current[k - 1] as number;
    const ahead = i + h * rise(i);
    current[k] = Math.min(limit, i + (h / 2) * (rise(i) + rise(ahead)));
  }
  return current;
}

/** Numbers from 0 to 1, the same ones for the same seed: the generator of Park and Miller. */
export function random(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}

export interface Instrument {
  /** Time between samples, length of the recording, time before the first start of a charge [s]. */
  readonly every: number;
  readonly length: number;
  readonly lead?: number;
  /** Standard deviation of its noise, level at rest [A]; by how much that moves to the end, straight and as a slow wave [A]. */
  readonly noise?: number;
  readonly offset?: number;
  readonly drift?: number;
  readonly wave?: number;
  /** Bits of its converter, over a range from −full to +full [A]. */
  readonly bits?: number;
  readonly full?: number;
  /** Ringing after each firing: height [A], frequency [Hz], time constant [s]. */
  readonly ringing?: readonly [number, number, number];
  /** Spikes of other coils: so many between two firings, height [A], length [s]. */
  readonly spikes?: readonly [number, number, number];
  /** Single pole of the clamp [s]; of its coupling, when it passes no direct current [s]. */
  readonly slow?: number;
  readonly coupling?: number;
  readonly turned?: boolean;
  /** Coils on the wire, their charges spread evenly over the period. */
  readonly coils?: number;
  /** Share of the dwell of each charge, by its number: for misfires. */
  readonly short?: readonly [number, number];
  /** Stretches without signal in every charge: from which share of it on, how long [s]. */
  readonly dropout?: readonly [number, number];
  readonly seed?: number;
}

/** Samples [A] as the instrument has them. */
export function recorded(coil: Coil, inst: Instrument): number[] {
  const uniform = random(inst.seed ?? 4711);
  const normal = (): number => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
  const charge = chargeOf(coil);
  const { every, length, lead = coil.period * 0.4, coils = 1 } = inst;
  const count = Math.round(length / every);
  let [slow, coupled] = [0, 0];
  return Array.from({ length: count }, (_, n) => {
    const t = n * every;
    let current = 0;
    for (let c = 0; c < coils; c++) {
      const since = t - lead + coil.period - (c * coil.period) / coils;
      const at = since % coil.period;
      const number = Math.floor(since / coil.period);
      const part = inst.short && number === inst.short[0] ? inst.short[1] : 1;
      if (at <= coil.dwell * part && number >= 1) {
        const k = (at / coil.dwell) * STEPS;
        const [low, rest] = [Math.floor(k), k % 1];
        current += (charge[low] as number) * (1 - rest) + (charge[Math.min(STEPS, low + 1)] as number) * rest;
        if (
          inst.dropout &&
          at > coil.dwell * inst.dropout[0] &&
          at < coil.dwell * inst.dropout[0] + inst.dropout[1]
        )
          current = 0;
      } else if (inst.ringing && number >= 1) {
        const [height, hertz, decay] = inst.ringing;
        const after = at - coil.dwell * part;
        current += height * Math.exp(-after / decay) * Math.sin(2 * Math.PI * hertz * after);
      }
    }
    if (inst.spikes) {
      const [often, height, lasts] = inst.spikes;
      const since = (t + coil.period * 0.13) % (coil.period / often);
      const which = Math.floor((t + coil.period * 0.13) / (coil.period / often));
      if (since < lasts) current += (which % 2 === 0 ? height : -height) * (1 - since / lasts);
    }
    slow = inst.slow ? slow + (1 - Math.exp(-every / inst.slow)) * (current - slow) : current;
    if (inst.coupling) coupled += (every / inst.coupling) * (slow - coupled);
    const zero =
      (inst.offset ?? 0) +
      (inst.drift ?? 0) * (t / length) +
      (inst.wave ?? 0) * Math.sin((2 * Math.PI * t) / length);
    const shown = (inst.turned ? -1 : 1) * (slow - coupled) + zero + (inst.noise ?? 0) * normal();
    if (!inst.bits || !inst.full) return shown;
    const step = (2 * inst.full) / 2 ** inst.bits;
    return Math.max(-inst.full, Math.min(inst.full - step, Math.round(shown / step) * step));
  });
}
