/** The factor of a clamp, as it is printed on it: `100 mV/A`, `0.1 V/A`, `10 A/V`. */
import { numberOf } from './lines.ts';

export interface Scale {
  /** What the instrument shows is in volts, or in amperes that are not those of the wire. */
  readonly shows: 'voltage' | 'current';
  /** Volts (or amperes) that it shows for an ampere in the wire. */
  readonly perAmpere: number;
}

const PREFIX: Readonly<Record<string, number>> = { '': 1, m: 1e-3, u: 1e-6, µ: 1e-6, μ: 1e-6, k: 1e3 };

/** Null for what is no factor. */
export function scaleOf(text: string): Scale | null {
  const [, number = '', size = '', shown = '', per = '', below = ''] =
    /^\s*([\d.,]+(?:e[-+]?\d+)?)\s*([muµμk]?)([va])\s*(?:\/|per)\s*([muµμk]?)([va])\s*$/i.exec(text) ?? [];
  const value = numberOf(number);
  const [over, under] = [size, per].map((one) => PREFIX[one.toLowerCase()] ?? 1) as [number, number];
  if (value === null || !(value > 0)) return null;
  const factor = (value * over) / under;
  if (below.toLowerCase() === 'a')
    return { shows: shown.toLowerCase() === 'v' ? 'voltage' : 'current', perAmpere: factor };
  return shown.toLowerCase() === 'a' ? { shows: 'voltage', perAmpere: 1 / factor } : null;
}
