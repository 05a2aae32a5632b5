/** The words of the findings of coils and supply. */
import type { coilRules } from './rules-coil.ts';
import type { Words } from './word.ts';

export const coilWords: Readonly<Record<keyof typeof coilRules, Words>> = {
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
      `The coil is charged ${f.value} of the time; its data sheet allows only ${f.limit}: it overheats.`,
    unknown: () => 'The duty is not known.',
  },
  max_peak: {
    title: 'Coil: peak current',
    pass: (f) => `The coil reaches ${f.value}; its data sheet allows ${f.limit}.`,
    fail: (f) => `The coil reaches ${f.value}; its data sheet allows only ${f.limit}: a shorter dwell.`,
    unknown: () => 'The peak current is not known.',
  },
  min_supply: {
    title: 'Coil: supply',
    pass: (f) => `The worst coil has ${f.value} at the firing instant; its data sheet asks for ${f.limit}.`,
    fail: (f) =>
      `The worst coil has only ${f.value} at the firing instant; its data sheet asks for ${f.limit}.`,
    unknown: () => 'The supply at the coil is not known.',
  },
  dwell_served: {
    title: 'Dwell: time for it',
    pass: (f) => `The coil gets ${f.value} of dwell.`,
    fail: () => 'The rest takes the whole time between two firings: this engine speed cannot be served.',
    unknown: () => 'The dwell is not known.',
  },
  alternator: {
    title: 'Alternator: free current',
    pass: (f) => `The coils take ${f.value} on average; the other loads leave ${f.limit}.`,
    fail: (f) =>
      `The coils take ${f.value} on average; the other loads leave only ${f.limit}: the battery empties.`,
    unknown: () => 'What the alternator has to spare is not known.',
  },
  intervals: {
    title: 'Firing intervals: rows',
    pass: () => 'Every interval between firings has its row.',
    fail: (f) =>
      `${f.value} pairs of firings have intervals without a row: the firing angles were changed by hand. Make the ` +
      'workbook anew from a design with these angles; until then its currents are too low.',
    unknown: () => 'The intervals are not known.',
  },
};
