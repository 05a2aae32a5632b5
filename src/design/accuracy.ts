/** How makers state the error of an instrument: `0.5 % + 2 digits`, `1 % + 5 digits of 6000`, `3 % + 0.1 A`. */
import { readValue } from '../basis/read-value.ts';
import type { Accuracy, Sense } from './design.ts';

/** Unit that an instrument shows, and how many steps its display has when nobody says. */
export const SENSES: Readonly<Record<Sense, { readonly unit: string; readonly counts: number }>> = {
  meter: { unit: 'V', counts: 2000 },
  // Eight bits, the usual converter of a scope.
  scope: { unit: 'V', counts: 250 },
  clamp: { unit: 'A', counts: 4000 },
  ohmmeter: { unit: 'ohm', counts: 2000 },
  trace: { unit: 'H', counts: 2000 },
  log: { unit: 's', counts: 2000 },
  camera: { unit: 'K', counts: 2000 },
};

/** A share of 20 % or more is no instrument; a display has at most a million steps. */
const MOST = { share: 0.2, digits: 100, counts: 1e6 };

const DIGITS = /^(\d+) *(?:digits?|dgts?|counts?)(?: +of +(\d+)(?: *counts?)?)?$/i;

/** Null for what is no such statement. */
export function readAccuracy(text: string, sense: Sense): Accuracy | null {
  const { unit, counts } = SENSES[sense];
  const found = { share: 0, digits: 0, counts, least: 0 };
  for (const part of text
    .replace(/^±/, '')
    .split('+')
    .map((one) => one.trim().replace(/^±/, ''))) {
    const digits = DIGITS.exec(part);
    if (digits) {
      found.digits += Number(digits[1]);
      if (digits[2] !== undefined) found.counts = Number(digits[2]);
      continue;
    }
    const share = readValue(part.replace(/ *(?:of (?:the )?)?(?:reading|rdg)$/i, ''), '%');
    if (share.ok) {
      found.share += share.value / 100;
      continue;
    }
    const least = readValue(part, unit);
    if (!least.ok || least.value < 0) return null;
    found.least += least.value;
  }
  const some = found.share > 0 || found.digits > 0 || found.least > 0;
  const sane = found.share >= 0 && found.share <= MOST.share && found.digits <= MOST.digits;
  return some && sane && found.counts >= 100 && found.counts <= MOST.counts ? found : null;
}
