/** The words of the findings of the relay. */
import type { relayRules } from './rules-relay.ts';
import type { Words } from './word.ts';

const SUPPRESSION_SAYS: Readonly<Record<string, string>> = {
  diode:
    'A bare diode slows the release, and the contacts can tack-weld: a resistor or diode and zener is kinder.',
  resistor: 'A resistor of 6 to 8 times the coil resistance is kind to the contacts.',
  diode_zener: 'Diode and zener let the relay release quickly.',
};

export const relayWords: Readonly<Record<keyof typeof relayRules, Words>> = {
  relay_contact: {
    title: 'Relay: contact, load',
    pass: (f) => `The contact carries ${f.value} and is rated ${f.limit} at this temperature.`,
    fail: (f) => `The contact carries ${f.value} and is rated only ${f.limit} at this temperature.`,
    unknown: () =>
      'A contact rating holds up to its own temperature: look up in the data sheet what the relay carries at this ' +
      'ambient temperature, and state it with `rated_at`.',
  },
  relay_inductive: {
    title: 'Relay: contact, inductive',
    pass: (f) => `For an inductive load the contact needs ${f.value} nominal and has ${f.limit}.`,
    fail: (f) => `For an inductive load the contact needs ${f.value} nominal and has only ${f.limit}.`,
    unknown: () => 'The rating of the contact is not known.',
  },
  relay_pull_in: {
    title: 'Relay: pulls in hot',
    pass: (f) => `The hot coil pulls in at ${f.value} and has ${f.limit} while cranking.`,
    fail: (f) =>
      `The hot coil pulls in only at ${f.value} and has ${f.limit} while cranking: the relay may not close. A cooler ` +
      'place, a relay with a lower pull-in voltage, or a better trigger wire.',
    unknown: () => 'The pull-in voltage is not stated: the data sheet of the relay has it, at 20 °C.',
  },
  relay_suppression: {
    title: 'Relay: suppression',
    pass: (f) =>
      `The relay coil is suppressed. ${SUPPRESSION_SAYS[f.say('relay_suppression') ?? ''] ?? ''}`.trim(),
    fail: () =>
      'The relay coil is not suppressed: it spikes to 1000 V and more when it is switched off, into the original ' +
      'ignition wire. A resistor of 6 to 8 times the coil resistance across it, or a diode with a zener diode.',
    unknown: () =>
      'It is not stated whether the relay coil is suppressed: look for a resistor or diode mark on its case or data sheet.',
  },
  relay_tab: {
    title: 'Relay: tabs',
    pass: (f) => `The tabs carry ${f.value}; ${f.limit} is customary for their width.`,
    fail: (f) =>
      `The tabs carry ${f.value}; ${f.limit} is customary for their width: a relay with wider tabs.`,
    unknown: () =>
      'No customary current is known for tabs of this width: the data sheet of the terminal has it.',
  },
  relay_make: {
    title: 'Relay: make current',
    pass: (f) =>
      `Closing onto the capacitors of the harness draws up to ${f.value}; the contact may make ${f.limit}.`,
    fail: (f) =>
      `Closing onto the capacitors of the harness draws up to ${f.value}; the contact may make only ${f.limit} and can ` +
      'weld: smaller capacitors, or a relay with a larger make current.',
    unknown: (f) =>
      `Closing onto the capacitors of the harness draws ${f.say('make_current') ?? 'a current that needs the resistance of the source'}: ` +
      'look up in the data sheet what the contact may make, and state it with `make`.',
  },
};
