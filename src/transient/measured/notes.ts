/** What was done to a recording before it was judged, as sentences. */
import { printValue } from '../../basis/print.ts';
import type { Found } from './charges.ts';
import type { TimeUnit } from './heading.ts';

/** Below this a level at rest is not worth a word [A]. Arbitrary. */
const WORTH = 0.02;

/** `guess` is the unit of time where none was named. */
export function notesOf(found: Found, guess: TimeUnit | null): string[] {
  const { turned, offset, drift, droops, noise, group, step, short } = found;
  const least = Math.max(WORTH, noise, 2 * step);
  return [
    ...(group > 1
      ? [`Each ${group} samples were averaged to one: they are far closer than a charge needs.`]
      : []),
    ...(guess ? [`No unit of time is named; "${guess}" makes the charges about as long as the dwell.`] : []),
    ...(turned
      ? ['The current falls where a coil charges: the clamp is on backwards; the sign was reversed.']
      : []),
    ...(Math.abs(offset) > least
      ? [`At rest the clamp shows ${offset.toFixed(2).replace('-', '−')} A; that was subtracted.`]
      : []),
    ...(droops ? ['The clamp passes no direct current; its droop was undone.'] : []),
    ...(drift > 2 * least && !droops
      ? [`Its zero wanders by ${printValue(drift, 'A')}; that was subtracted.`]
      : []),
    ...(step > 0 ? [`The instrument shows the current in steps of ${printValue(step, 'A')}.`] : []),
    ...(short > 0 ? [`${short} pulse${short > 1 ? 's' : ''} far shorter than a charge: left out.`] : []),
  ];
}
