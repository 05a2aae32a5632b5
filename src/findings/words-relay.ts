/** The words of the findings of the relay. */
import type { relayRules } from './rules-relay.ts';
import type { Facts, Words } from './word.ts';

const SUPPRESSION_SAYS: Readonly<Record<string, string>> = {
  diode:
    'A bare diode slows the release, and the contacts can tack-weld: a resistor or diode and zener is kinder.',
  resistor: 'A resistor of 6 to 8 times the coil resistance is kind to the contacts.',
  diode_zener: 'Diode and zener let the relay release quickly.',
};

/** When the relay must close; the sheet of all rules does not know it. */
const when = (f: Facts): string =>
  ({ 'while cranking': 'while cranking', 'before cranking': 'at the resting battery' })[
    f.say('relay_closes') ?? ''
  ] ?? 'when it must close';

/** That a rating at this temperature follows from usual relays, where it does. */
const hot = (f: Facts): string =>
  !f.is('relay_own_table') && Number(f.say('relay_derating')) < 1
    ? ', by what is usual (its data sheet goes first)'
    : '';

const power = (f: Facts): string => {
  const watts = f.say('relay_coil_power');
  return watts === undefined ? '' : `It makes ${watts} of heat there.`;
};

export const relayWords: Readonly<Record<keyof typeof relayRules, Words>> = {
  relay_contact: {
    title: 'Relay: contact, load',
    pass: (f) =>
      `The contact carries ${f.value} and is rated ${f.limit} at ${f.say('relay_ambient')}${hot(f)}.`,
    fail: (f) =>
      `The contact carries ${f.value} and is rated only ${f.limit} at ${f.say('relay_ambient')}${hot(f)}: a larger relay, one ` +
      'for each bank, or a cooler place.',
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
      `The hot coil pulls in only at ${f.value} and has ${f.limit} ${when(f)}: the relay may not close. A cooler ` +
      'place, a relay with a lower pull-in voltage, or a better trigger wire.',
    unknown: () =>
      'The pull-in voltage at 20 °C or the battery at rest is not stated: the data sheet of the relay, and `supply.resting`.',
  },
  relay_again: {
    title: 'Relay: pulls in again',
    pass: (f) => `While cranking the hot coil has ${f.limit} and would pull in again at ${f.value}.`,
    fail: (f) =>
      `While cranking the hot coil has ${f.limit} and would not pull in again, which takes ${f.value}: see that the wire ` +
      'that triggers it does not go dead between run and start.',
    unknown: () => 'The pull-in voltage is not known: the data sheet of the relay has it, at 20 °C.',
  },
  relay_holds: {
    title: 'Relay: holds',
    pass: (f) => `The hot coil lets go at ${f.value} and has ${f.limit} at the lowest instant.`,
    fail: (f) =>
      `The hot coil may let go at ${f.value} and has ${f.limit} at the lowest instant: the coils lose their feed. A relay ` +
      'with a lower drop-out voltage, a cooler place, or a better trigger wire.',
    unknown: () =>
      'A dip of the supply is stated, but not at which voltage the relay lets go: give `drop_out`, from its data sheet.',
  },
  relay_holds_unsaid: {
    title: 'Relay: holding is not shown',
    pass: () => 'The drop-out voltage is stated.',
    fail: (f) =>
      `Whether it holds while cranking is not shown: the drop-out voltage is not stated. Relays of this class let go at ` +
      `${f.say('relay_drop_out_least') ?? '10 % of the rated voltage'} or more when hot, and this one has ` +
      `${f.say('relay_hold_supply')} at the lowest supply. Give \`drop_out\` and, for the lowest instant of cranking, \`dip\`.`,
    unknown: () => 'Whether it holds is not known.',
  },
  relay_coil: {
    title: 'Relay: voltage of its coil',
    pass: (f) => `The highest supply is ${f.value}; the coil stands ${f.limit} for ever. ${power(f)}`.trim(),
    fail: (f) =>
      `The highest supply is ${f.value}; the coil stands only ${f.limit} for ever, and burns out: a relay for this ` +
      `system. ${power(f)}`.trim(),
    unknown: () => 'What the coil stands for ever is not known: give `coil_max`, from the data sheet.',
  },
  relay_coil_long: {
    title: 'Relay: its coil in the long run',
    pass: (f) => `The highest supply is ${f.value}; up to ${f.limit} the coil lasts.`,
    fail: (f) =>
      `The highest supply is ${f.value}: above ${f.limit}, 120 % of its rated voltage, the coil runs hot for years. Ask ` +
      'the maker, or choose a relay that allows it.',
    unknown: () => 'The rated voltage of the coil is not known.',
  },
  relay_listed: {
    title: 'Relay: a rating that is sold',
    pass: () => 'The rating is a customary one.',
    fail: (f) => `Relays of ${f.say('relay_rating')} are not customary: a spare one may be hard to get.`,
    unknown: () => 'The rating of the contact is not known.',
  },
  relay_worn: {
    title: 'Relay: resistance of its contact',
    pass: (f) => `The contact has ${f.value}; sheets allow ${f.limit}.`,
    fail: (f) => `The contact has ${f.value}; sheets allow ${f.limit}: it is worn, or burnt. Another relay.`,
    unknown: () => 'The resistance of the contact is not known.',
  },
  relay_tab_wire: {
    title: 'Relay: wire at its tabs',
    pass: (f) => `The run has ${f.value}; tabs of this width take ${f.limit}.`,
    fail: (f) =>
      `The run has ${f.value}; terminals for tabs of this width take ${f.limit}: look for one that takes this wire, or a ` +
      'relay with wider tabs or studs.',
    unknown: () => 'No largest wire is known for tabs of this width: the data sheet of the terminal has it.',
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
