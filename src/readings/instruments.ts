/** Errors of instruments, as their makers state them: a share of the reading and some of its last digits. */
import type { Accuracy, Design, Instrument, Sense, What } from '../design/design.ts';

/** The instrument in one's hand: a meter, a clamp whatever it is set to. */
export function senseOf(instrument: Instrument): Sense {
  switch (instrument) {
    case 'meter':
    case 'least':
      return 'meter';
    case 'scope':
      return 'scope';
    case 'value':
    case 'ohmmeter':
      return 'ohmmeter';
    case 'trace':
    case 'log':
    case 'camera':
      return instrument;
    default:
      return 'clamp';
  }
}

/** Finest step of any display [V], [A], [ohm]: 0.1 mV, 0.1 mohm on the lowest range; of a clamp 10 mA. Common practice. */
export const FINEST = 1e-4;
export const FINEST_AMPS = 0.01;

/** What the last digit stands for when such a value is shown: ranges go up by tens, four of them. */
export function digitOf({ counts }: Accuracy, value: number, what: What): number {
  const finest = what === 'current' ? FINEST_AMPS : FINEST;
  let digit = finest;
  while (digit < 1e3 * finest && Math.abs(value) >= digit * counts) digit *= 10;
  return digit;
}

/** Of a hand-held meter: as many of the last digits that were written down. Common practice. */
const WRITTEN = 2;

/** What the last digit of a number stands for, as a person writes it; whole numbers end in ones. */
const lastDigit = (value: number): number =>
  10 ** -(String(Number(value.toPrecision(6))).split('.')[1]?.length ?? 0);

/** The largest error of a reading, in its unit: [V], [A] or [ohm]. */
export function errorOf(
  { instruments }: Design,
  { what, instrument }: { readonly what: What; readonly instrument: Instrument },
  value: number,
): number {
  const accuracy = instruments[senseOf(instrument)];
  if (instrument === 'ohmmeter') return accuracy.share * value + WRITTEN * lastDigit(value);
  return accuracy.share * Math.abs(value) + accuracy.digits * digitOf(accuracy, value, what) + accuracy.least;
}

/** What the design states of the posts at a point: to what is held while the starter turns, the dip [V]. */
export const statedAt = ({ dip, supply }: Design['points'][number], instrument: Instrument): number =>
  instrument === 'least' ? (dip ?? supply) : supply;
