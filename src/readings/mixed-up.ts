/** Which instrument a reading may have been taken with in place of the one that it names. */
import type { Instrument, What } from '../design/design.ts';

/** An average, an effective value and a peak of the same current differ by two to ten times: that gives it away. */
const OTHERS: Readonly<Partial<Record<Instrument, readonly Instrument[]>>> = {
  meter: ['scope'],
  scope: ['meter'],
  clamp_average: ['clamp_effective', 'clamp_peak'],
  clamp_effective: ['clamp_average', 'clamp_peak'],
  clamp_peak: ['clamp_average', 'clamp_effective'],
};

/** A supply hardly differs between them, so that nothing would give it away. */
export const otherInstruments = ({
  what,
  instrument,
}: {
  what: What;
  instrument: Instrument;
}): readonly Instrument[] =>
  what === 'supply' || what === 'trigger' || what === 'resting' ? [] : (OTHERS[instrument] ?? []);
