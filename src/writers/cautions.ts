/** What has to be said wherever the tool tells somebody to build something. */
export const CAUTIONS: readonly string[] = [
  'Disconnect the battery before any work on the feed, negative post first, and connect it last.',
  'A battery delivers hundreds of amperes into a short circuit: metal glows, sparks and burns. Take off rings and watches.',
  'Coils and plugs carry tens of kilovolts that can injure or kill. Never work on them while the engine turns or the ' +
    'ignition is on. Persons with a pacemaker or another implant keep away from a running ignition.',
  'Conductors, relays and fuses can be hot. Keep them away from fuel: its vapour is lit by any spark.',
  'Put the fuse as close to the source as it will go: what lies before it is not protected.',
  'Never raise a fuse or a relay above what is stated here: the conductors behind it are chosen for it.',
  'Sizes are a design aid. The makers’ data sheets, local codes and a licensed practitioner come first.',
];
