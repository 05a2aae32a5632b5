/** The words of the findings of coils and supply. */
import type { coilRules } from './rules-coil.ts';
import type { Facts, Words } from './word.ts';

/** Inputs whose unit would explain an energy that no ignition has. */
function units(f: Facts): string {
  const test = f.say('test_dwell') !== undefined;
  const henry = f.is('henry_less') || f.is('henry_more');
  const inputs = [
    henry && (test ? '`coil.test_point`' : '`coil.inductance`'),
    f.is('dwell_more') && '`ignition.dwell`',
    f.is('ohm_less') && '`coil.resistance`',
  ].filter(Boolean);
  return inputs.length === 0
    ? ''
    : `Check the units of ${inputs.join(' and ')}: a factor of a thousand would explain it.`;
}

export const coilWords: Readonly<Record<keyof typeof coilRules, Words>> = {
  energy: {
    title: 'Coil: energy',
    pass: (f) => `The weakest coil stores ${f.value}; at least ${f.limit} is needed.`,
    fail: (f) => `The weakest coil stores only ${f.value}; at least ${f.limit} is needed. ${units(f)}`.trim(),
    unknown: () => 'The energy is not known.',
  },
  usual_ohm: {
    title: 'Coil: usual resistance',
    pass: () => 'The resistance of the primary is in the usual range.',
    fail: (f) =>
      `A primary of ${f.say('coil_ohm_20')} is unusual: check its unit, and that it was measured without the leads. ` +
      `Usual: ${f.say('usual_ohm_low')} to ${f.say('usual_ohm_high')}.`,
    unknown: () => 'The resistance of the primary is not stated: measure it at 20 °C, without the leads.',
  },
  usual_henry: {
    title: 'Coil: usual inductance',
    pass: () => 'The inductance of the primary is in the usual range.',
    fail: (f) =>
      `An inductance of ${f.say('coil_L')} is unusual: check its unit, or those of the bench test. Usual: ` +
      `${f.say('usual_henry_low')} to ${f.say('usual_henry_high')}.`,
    unknown: () => 'The inductance is not known.',
  },
  usual_peak: {
    title: 'Coil: usual peak',
    pass: (f) => `The coil current reaches ${f.value}; up to ${f.limit} is usual.`,
    fail: (f) =>
      `The coil current reaches ${f.value}; up to ${f.limit} is usual. Check dwell, inductance and resistance.`,
    unknown: () => 'The peak current is not known.',
  },
  stud: {
    title: 'Stud: terminals on it',
    pass: (f) => `At most ${f.value} terminals meet where runs divide or join.`,
    fail: (f) =>
      `${f.value} terminals meet where runs divide or join; one stud takes at most ${f.limit}. Use a small metal bus ` +
      'across several studs, a distribution block, or splices one after the other.',
    unknown: () => 'How many terminals meet is not known.',
  },
  max_dwell: {
    title: 'Coil: dwell',
    pass: (f) => `The coil gets ${f.value} of dwell; its data sheet allows ${f.limit}.`,
    fail: (f) => `The coil gets ${f.value} of dwell; its data sheet allows only ${f.limit}.`,
    unknown: () => 'The dwell is not known.',
  },
  max_duty: {
    title: 'Coil: duty',
    pass: (f) => `The coil is charged ${f.value} of the time; its data sheet allows ${f.limit}.`,
    fail: (f) =>
      `The coil is charged ${f.value} of the time; its data sheet allows only ${f.limit}. It will overheat.`,
    unknown: () => 'The duty is not known.',
  },
  max_peak: {
    title: 'Coil: peak current',
    pass: (f) => `The coil current reaches ${f.value}; its data sheet allows ${f.limit}.`,
    fail: (f) => `The coil current reaches ${f.value}; its data sheet allows only ${f.limit}.`,
    unknown: () => 'The peak current is not known.',
  },
  min_supply: {
    title: 'Coil: supply',
    pass: (f) => `The worst coil has ${f.value} at the firing instant; its data sheet calls for ${f.limit}.`,
    fail: (f) =>
      `The worst coil has only ${f.value} at the firing instant; its data sheet calls for ${f.limit}.`,
    unknown: () => 'The supply at the coil is not known.',
  },
  dwell_served: {
    title: 'Dwell: time for it',
    pass: (f) => `The coil gets ${f.value} of dwell.`,
    fail: () =>
      'The rest between charges takes the whole time between two firings: no time is left for dwell at this engine speed.',
    unknown: () => 'The dwell is not known.',
  },
  sparks_fit: {
    title: 'Further sparks: time for them',
    pass: () => 'There is time for the further sparks before the next charge of the coil.',
    fail: (f) =>
      `There is no time for the further sparks and ${f.say('rest')} of rest before the next charge of the coil: only the ` +
      'first one is counted at this point.',
    unknown: () => 'The time between two charges is not known.',
  },
  alternator: {
    title: 'Alternator: free current',
    pass: (f) => `The coils take ${f.value} on average; the other loads leave ${f.limit}.`,
    fail: (f) =>
      `The coils take ${f.value} on average; the other loads leave only ${f.limit}: the battery discharges.`,
    unknown: () => 'What the alternator has to spare is not known.',
  },
  intervals: {
    title: 'Firing intervals: rows',
    pass: () => 'Every interval between firings has its row.',
    fail: (f) =>
      `${f.value} pairs of firings have intervals without a row: the firing angles were changed by hand. Make a new ` +
      'workbook from a design with these angles; until then the currents here are too low.',
    unknown: () => 'The intervals are not known.',
  },
};
