/** What is taken where a design says nothing and it depends on the system: the supply, or the class of a relay. */
import { RELAY_CLASSES, RELAY_SHARES } from '../data/relays.ts';
import type { Preset } from './defaults.ts';

/** [V] Supply up to which a system counts as one of 12 V; the alternators of 24 V systems are above it. */
const LOW_SYSTEM = RELAY_CLASSES.rows[0]?.system ?? 0;

/** [V] Supply above which there are no relays of the trade. */
export const HIGHEST_SYSTEM = RELAY_CLASSES.rows.at(-1)?.system ?? 0;

const number = (value: number): string => (Number.isInteger(value) ? value.toFixed(1) : String(value));

/** Largest drop [V], by the highest supply of the points [V]. */
export const dropFor = (highest: number): Preset<number> =>
  highest <= LOW_SYSTEM
    ? { value: 0.5, text: '0.5 V', why: 'FAA AC 43.13-1B table 11-6, 14 V system, continuous (quoted)' }
    : { value: 1, text: '1 V', why: 'FAA AC 43.13-1B table 11-6, 28 V system, continuous (quoted)' };

/** Class of relay that belongs to a supply [V]; nothing above the systems that there are relays for. */
const classFor = (highest: number) => RELAY_CLASSES.rows.find(({ system }) => highest <= system);

/** Pull-in voltage at 20 °C [V]: two thirds of the rated voltage, the highest of several sheets. */
export function pullInFor(highest: number): Preset<number | null> | null {
  const own = classFor(highest);
  if (own === undefined) return null;
  const value = (own.rated * 2) / 3;
  return {
    value,
    text: `${number(value)} V`,
    why: `quoted, source not named: the highest of several sheets; a relay of ${own.rated} V is taken`,
  };
}

/** Class of a relay with this pull-in voltage at 20 °C [V]; nothing above those of the trade. */
export const classOf = (pullIn: number) => RELAY_CLASSES.rows.find(({ pull_in }) => pullIn < pull_in);

/** Largest continuous coil voltage [V] of a relay with this pull-in voltage at 20 °C [V]. */
export function coilMaxFor(pullIn: number): Preset<number | null> | null {
  const own = classOf(pullIn);
  return own === undefined
    ? null
    : {
        value: own.greatest,
        text: `${own.greatest} V`,
        why: `from memory: ${own.rated} V relays; the data sheet takes precedence`,
      };
}

/** Voltage of the battery at rest [V]. */
export function restingFor(highest: number): Preset<number | null> | null {
  const own = classFor(highest);
  return own === undefined
    ? null
    : { value: own.rated, text: `${number(own.rated)} V`, why: 'arbitrary: a battery that is nearly flat' };
}

/** `70 % at 85 degC, 30 % at 125 degC` of the rating at 23 °C. */
export const usualDerating: Preset<null> = {
  value: null,
  text: RELAY_SHARES.rows
    .slice(1)
    .map(({ at, share }) => `${share * 100} % at ${at} degC`)
    .join(', '),
  why: `quoted, source not named: usual for relays, of the rating at ${RELAY_SHARES.rows[0]?.at} degC; the data sheet takes precedence`,
};
