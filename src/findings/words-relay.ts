/** The words of the findings of the relay. */
import type { relayRules } from './rules-relay.ts';
import type { Facts, Words } from './word.ts';

const SUPPRESSION_SAYS: Readonly<Record<string, string>> = {
  diode:
    'A bare diode slows the release, and the contacts can tack-weld: a resistor, or a diode with a zener, is easier on them.',
  resistor: 'A resistor of 6 to 8 times the coil resistance is easy on the contacts.',
  diode_zener: 'A diode with a zener lets the relay release quickly.',
};

/** When the relay must close; the sheet of all rules does not know it. */
const when = (f: Facts): string =>
  ({ 'while cranking': 'while cranking', 'before cranking': 'from the battery at rest' })[
    f.say('relay_closes') ?? ''
  ] ?? 'when it must close';

/** That a rating at this temperature follows from usual relays, where it does. */
const hot = (f: Facts): string =>
  !f.is('relay_own_table') && Number(f.say('relay_derating')) < 1
    ? ', as is usual for its class (its data sheet takes precedence)'
    : '';

const power = (f: Facts): string => {
  const watts = f.say('relay_coil_power');
  return watts === undefined ? '' : `It then dissipates ${watts}.`;
};

export const relayWords: Readonly<Record<keyof typeof relayRules, Words>> = {
  relay_contact: {
    title: 'Relay: contact, load',
    pass: (f) =>
      `The contact carries ${f.value} and is rated ${f.limit} at ${f.say('relay_ambient')}${hot(f)}.`,
    fail: (f) =>
      `The contact carries ${f.value} and is rated only ${f.limit} at ${f.say('relay_ambient')}${hot(f)}: it overheats.`,
    unknown: () => 'What the contact carries at this temperature is not known: the data sheet has it.',
  },
  relay_inductive: {
    title: 'Relay: contact, inductive',
    pass: (f) => `For an inductive load the contact needs ${f.value} nominal and has ${f.limit}.`,
    fail: (f) => `For an inductive load the contact needs ${f.value} nominal and has only ${f.limit}.`,
    unknown: () => 'The rating of the contact is not known.',
  },
  relay_pull_in: {
    title: 'Relay: pulls in hot',
    pass: (f) => `The hot coil pulls in at ${f.value} and has ${f.limit} ${when(f)}.`,
    fail: (f) =>
      `The hot coil pulls in only at ${f.value} and has ${f.limit} ${when(f)}: the relay may not close.`,
    unknown: () =>
      'The pull-in voltage at 20 °C or the battery at rest is not stated: the data sheet of the relay, and `supply.resting`.',
  },
  relay_again: {
    title: 'Relay: pulls in again',
    pass: (f) => `While cranking the hot coil has ${f.limit} and would pull in again at ${f.value}.`,
    fail: (f) =>
      `While cranking the hot coil has ${f.limit}, too little to pull in again, which takes ${f.value}. Make sure that the ` +
      'trigger wire does not go dead between the run and start positions of the switch.',
    unknown: () => 'The pull-in voltage is not known: the data sheet of the relay has it, at 20 °C.',
  },
  relay_holds: {
    title: 'Relay: holds',
    pass: (f) => `The hot coil drops out at ${f.value} and has ${f.limit} at the lowest instant.`,
    fail: (f) =>
      `The hot coil may drop out at ${f.value} and has ${f.limit} at the lowest instant: the coils lose their feed.`,
    unknown: () =>
      'A dip of the supply is stated, but not the voltage at which the relay drops out: give `drop_out`, from its data sheet.',
  },
  relay_holds_unsaid: {
    title: 'Relay: holding not proved',
    pass: () => 'The drop-out voltage is stated.',
    fail: (f) =>
      `Nothing proves that it holds while cranking: the drop-out voltage is not stated. Relays of this class drop out at ` +
      `${f.say('relay_drop_out_least') ?? '10 % of the rated voltage'} or more when hot, and this one has ` +
      `${f.say('relay_hold_supply')} at the lowest supply. Give \`drop_out\` and, for the lowest instant of cranking, \`dip\`.`,
    unknown: () => 'Whether it holds is not known.',
  },
  relay_coil: {
    title: 'Relay: voltage of its coil',
    pass: (f) =>
      `The highest supply is ${f.value}; the coil withstands ${f.limit} continuously. ${power(f)}`.trim(),
    fail: (f) =>
      (
        `The highest supply is ${f.value}; the coil withstands only ${f.limit} continuously and will burn out. ` +
        power(f)
      ).trim(),
    unknown: () =>
      'The voltage that the coil withstands continuously is not known: give `coil_max`, from the data sheet.',
  },
  relay_coil_long: {
    title: 'Relay: life of its coil',
    pass: (f) => `The highest supply is ${f.value}; up to ${f.limit} the coil lasts.`,
    fail: (f) =>
      `The highest supply is ${f.value}. Above ${f.limit}, 120 % of its rated voltage, the coil runs hot all its life. Ask ` +
      'its maker whether it may.',
    unknown: () => 'The rated voltage of the coil is not known.',
  },
  relay_listed: {
    title: 'Relay: a standard rating',
    pass: () => 'The rating is a customary one.',
    fail: (f) => `Relays rated ${f.say('relay_rating')} are not customary: a spare may be hard to find.`,
    unknown: () => 'The rating of the contact is not known.',
  },
  relay_worn: {
    title: 'Relay: resistance of its contact',
    pass: (f) => `The contact has ${f.value}; data sheets allow ${f.limit}.`,
    fail: (f) => `The contact has ${f.value}; data sheets allow ${f.limit}. It is worn or burnt.`,
    unknown: () => 'The resistance of the contact is not known.',
  },
  relay_tab_wire: {
    title: 'Relay: wire at its tabs',
    pass: (f) => `The run has ${f.value}; tabs of this width take ${f.limit}.`,
    fail: (f) =>
      `The run has ${f.value}; terminals for tabs of this width take ${f.limit}. Look for ` +
      'one that takes this wire.',
    unknown: () => 'No largest wire is known for tabs of this width: the data sheet of the terminal has it.',
  },
  relay_suppression: {
    title: 'Relay: suppression',
    pass: (f) =>
      `The relay coil is suppressed. ${SUPPRESSION_SAYS[f.say('relay_suppression') ?? ''] ?? ''}`.trim(),
    fail: () =>
      'The relay coil is not suppressed: when it is switched off it sends a spike of 1000 V or more into the original ' +
      'ignition wire. Customary is a resistor of 6 to 8 times the coil resistance across it, or a diode with a zener diode.',
    unknown: () =>
      'It is not stated whether the relay coil is suppressed: look for a resistor or diode mark on its case or data sheet.',
  },
  relay_tab: {
    title: 'Relay: tabs',
    pass: (f) => `The tabs carry ${f.value}; ${f.limit} is customary for their width.`,
    fail: (f) =>
      `The tabs carry ${f.value}; ${f.limit} is customary for their width: the terminals overheat.`,
    unknown: () =>
      'No customary current is known for tabs of this width: the data sheet of the terminal has it.',
  },
  relay_make: {
    title: 'Relay: make current',
    pass: (f) =>
      `Closing onto the capacitors of the harness draws up to ${f.value}; the contact may make ${f.limit}.`,
    fail: (f) =>
      `Closing onto the capacitors of the harness draws up to ${f.value}; the contact may make only ${f.limit} and can ` +
      'weld.',
    unknown: (f) =>
      `Closing onto the capacitors of the harness draws ${f.say('make_current') ?? 'a current that needs the resistance of the source'}: ` +
      'look up the make current in the data sheet, and state it as `make`.',
  },
};
