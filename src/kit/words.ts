/**
 * The words of the instructions, as templates. `{name}` stands for a value of the model or a name of the design; no
 * number is written in the words themselves, so that none can be wrong. A kit writer can replace each part.
 */

/** When a line is printed; always when it has no condition. */
export const CONDITIONS = ['relay', 'no_relay', 'fuse', 'no_fuse', 'return', 'no_return', 'diode'] as const;
export type Condition = (typeof CONDITIONS)[number];

export interface Line {
  readonly text: string;
  readonly when?: Condition;
}

export interface Fault {
  readonly sign: string;
  readonly cause: string;
  readonly act: string;
}

/** Parts that are lists of lines, in the order of the paper. */
export const LISTS = [
  'about',
  'cautions',
  'tools',
  'prepare',
  'mount',
  'route',
  'ground',
  'trigger',
  'connect',
  'ratings',
  'first_start',
  'stop',
] as const;
export type ListName = (typeof LISTS)[number];

/** These are added to ours and never replace them: nobody's kit goes out with fewer cautions. */
export const ADDED: readonly ListName[] = ['cautions', 'stop'];

export interface Words extends Readonly<Record<ListName, readonly Line[]>> {
  readonly faults: readonly Fault[];
}

const always = (...texts: string[]): Line[] => texts.map((text) => ({ text }));
const only = (when: Condition, text: string): Line => ({ text, when });

export const WORDS: Words = {
  about: always(
    'This kit gives the ignition coils ({coil_count}) a feed of their own from the battery. The original ignition wire no longer feeds the coils: where there is a relay, it only closes it.',
    'Read all of this before you touch the vehicle. If a step cannot be done as written, stop and ask.',
  ),
  cautions: [
    ...always(
      'Wear eye protection whenever you work on the battery, drill, cut, crimp or solder. A battery gives off gas that explodes; its acid blinds.',
      'Fresh solder, hot air and heat-shrink burn skin and start fires. Work on a bench where you can, never near fuel, and let it cool.',
      'A fuse that is larger than stated does not protect the wires behind it: they can set the vehicle on fire before it opens. The same holds for a bridged fuse.',
      'High-tension leads, plugs and coil towers can kill. Keep hands, tools and test leads away while the ignition is on, and never pull a lead or a coil off a running engine.',
      'Vehicles with airbags, a high-voltage drive or battery management have their own rules for disconnecting the battery: the vehicle maker’s manual takes precedence.',
      'Have a fire extinguisher for electrical fires within reach, and a second person within call.',
    ),
  ],
  tools: [
    ...always(
      'Eye protection; gloves without metal',
      'Wrenches for the battery posts and the ground points',
      'Cutter, stripper, and the crimp tool and die that the terminal maker names',
      'Hot-air tool for sealing sleeves, or what the splices call for',
      'Multimeter that shows millivolts and ohms; a clamp meter for direct current helps',
      'Ties, sleeve and grommets; a cloth and a brush for bare metal; corrosion protection for ground points',
      'Infrared thermometer, to find a hot joint without touching it',
    ),
  ],
  prepare: [
    ...always(
      'Lay out the parts and compare them with the list. A part that is missing, damaged or different: stop and ask.',
      'Stop the engine, let it and the exhaust cool, take the key out.',
      'Note what loses its memory without the battery, and follow the vehicle maker’s order for switching off.',
      'Disconnect the battery, negative post first, and tie the lead away so that it cannot spring back.',
    ),
    only('fuse', 'Take {fuse_names} out of the holder and put it aside. It goes in last.'),
  ],
  mount: [
    only(
      'fuse',
      'Mount the fuse holder close to the battery: {first_pieces}. Nothing protects the wire ahead of the fuse, so sleeve it, keep it short and away from edges and moving parts.',
    ),
    only('fuse', 'Keep the fuse out of the heat: its load was worked out for {fuse_places}.'),
    only(
      'relay',
      'Mount {relay_names} near the battery, on the body and not on the engine, where it stays dry, terminals down. Its place must not be hotter than {relay_places}.',
    ),
    only('no_fuse', 'This design has no fuse. Do not go on: a feed without a fuse is a fire.'),
  ],
  route: always(
    'Lay each wire where the drawing and the table of wires say. Its label says which end goes where.',
    'Keep away from the exhaust, belts, fan, steering and pedals. No place along a wire may be hotter than the table says.',
    'Keep away from high-tension leads; where they must be crossed, cross them at a right angle. Do not bundle the feed with signal wires.',
    'Put a grommet wherever a wire goes through metal, and a sleeve wherever it may rub. Fix it so that nothing hangs or swings, and leave a loop where the engine moves against the body.',
    'Lay no more wires together in one bundle than the table says: they heat each other.',
    'Pieces are cut longer than the design by {allowance} and {end_allowance} at each end. Trim them when they lie in place; wire that stays in costs voltage. If a wire has to be longer than the table says, stop and ask.',
    'Strip and crimp as the terminal maker says, pull at every crimp by hand, then seal it. A crimp that moves is cut off and made again.',
  ),
  ground: [
    only(
      'return',
      'The return matters as much as the feed. Take the return wires to {grounds} and on to the negative post of the battery, as drawn.',
    ),
    only(
      'return',
      'At each ground point clean the metal until it is bare, use a lock washer, tighten as the maker says, then protect it from corrosion. Do not put it under a painted or loose bracket.',
    ),
    only(
      'no_return',
      'This design says nothing about the return from the coils. It was not judged: stop and ask before you rely on the old ground.',
    ),
  ],
  trigger: [
    only(
      'relay',
      'Take the original ignition wire, which carries battery voltage with the ignition on (terminal {t_fifteen}), off the coils. Leave its own fuse in place: it also protects the new wire to the relay, which must not be thinner than that fuse allows.',
    ),
    only(
      'relay',
      'Connect it by {trigger_wires} to terminal {t_eightysix} of {relay_names} and to nothing else. It now carries {trigger_currents} and may no longer feed a coil. Insulate every end that is left over.',
    ),
    only(
      'relay',
      'Connect terminal {t_eightyfive} by {relay_grounds} to engine ground (terminal {t_thirtyone}).',
    ),
    only(
      'diode',
      'The relay has a diode in it: terminals {t_eightysix} and {t_eightyfive} must not be exchanged, or the diode shorts the original ignition wire.',
    ),
    only(
      'no_relay',
      'This feed has no relay: the coils are live whenever the battery is connected and the fuse is in. Ask how the ignition is switched off before you go on.',
    ),
    { text: 'The wires with which the controller tells each coil when to fire stay as they are.' },
  ],
  connect: [
    only(
      'return',
      'First the returns: coils, ground points, negative side. The battery’s negative post stays open.',
    ),
    {
      text: 'Then the coils: supply to terminal {t_fifteen}, ground to terminal {t_thirtyone}, as the pins of the coil maker’s data sheet say.',
    },
    only(
      'relay',
      'Then {relay_names}: terminal {t_eightyseven} to the coils, terminal {t_thirty} to the fuse.',
    ),
    only('fuse', 'Then the fuse holder, still empty, and last its wire to the positive post.'),
    {
      text: 'Before there is power, with the coils unplugged: measure the resistance from each feed wire behind the fuse holder to ground. It must be open. Then measure that each ground wire reaches the negative side. Do not go on with a short.',
    },
    { text: 'Plug the coils in. Connect the battery: positive post first, negative post last.' },
    only(
      'relay',
      'Still without the fuse, switch the ignition on: the relay must click. Switch it off: it must click again.',
    ),
    only('fuse', 'With the ignition off put in {fuses}, the ones from this kit.'),
  ],
  ratings: [
    only(
      'fuse',
      '{fuses}. Every wire behind the fuse is chosen for it. A larger fuse would let the wire burn before it opens. If it opens, look for the cause, and replace it with one of the same type and rating.',
    ),
    only(
      'relay',
      '{relays}. A different relay must carry as much and pull in at as low a voltage: hot, this one needs {pull_ins}, and while the engine cranks it has {relay_supplies}. With one that needs more, the engine may not start.',
    ),
    {
      text: 'The sizes and lengths of the wires. A thinner or longer one loses voltage: the worst coil may lose {drop_limit} and loses {worst_drop} as designed.',
    },
    { text: 'The coils. Others that draw more need a new design.' },
  ],
  first_start: [
    { text: 'Tools out, nobody near belts and fan, extinguisher at hand.' },
    {
      text: 'Ignition on for a few seconds, engine not running, then off. No smell, no smoke, nothing that gets warm.',
    },
    { text: 'Start the engine and let it idle. Take the readings of the test card.' },
    {
      text: 'Run it for some minutes, stop it, switch off, and look for hot places with the thermometer: fuse holder, relay, splices, terminals. No wire may get hotter than {hottest}.',
    },
    {
      text: 'After the first drive tighten the ground points and battery posts again, and look for wires that rub.',
    },
  ],
  faults: [
    {
      sign: 'No click of the relay when the ignition is switched on',
      cause:
        'No voltage on the original ignition wire, no ground at terminal {t_eightyfive}, or a pin not home in the socket',
      act: 'Measure at terminal {t_eightysix}: battery voltage. Measure from terminal {t_eightyfive} to the negative post: nothing. If not, trace the wire.',
    },
    {
      sign: 'Engine cranks and does not fire; relay chatters',
      cause: 'Supply falls below what the relay needs while cranking ({pull_ins})',
      act: 'Charge or replace the battery; check the relay is the one of this kit.',
    },
    {
      sign: 'Engine cranks and does not fire; relay clicks',
      cause: 'Fuse open or missing, relay contact, or a plug of the feed not home',
      act: 'Ignition on: measure to the negative post ahead of and behind the fuse, at {t_thirty} and {t_eightyseven}, at a coil. The fault lies before the first place without voltage.',
    },
    {
      sign: 'One coil does not fire',
      cause: 'Its feed wire, its ground, its trigger wire, or the coil',
      act: 'Ignition on, engine not running: measure from its terminal {t_fifteen} to its terminal {t_thirtyone}. Battery voltage there: look at trigger and coil. None: look at the wires.',
    },
    {
      sign: 'The fuse opens at once',
      cause: 'A feed wire touches metal, or a coil is shorted',
      act: 'Battery off. Unplug the coils, measure from the feed to ground; find the place. Never try a larger fuse.',
    },
    {
      sign: 'The fuse opens after a while',
      cause: 'A coil driver that stays on, a coil that is shorted, or a fuse that sits too hot',
      act: 'Compare the current of each coil with the test card. Do not drive on.',
    },
    {
      sign: 'A drop is larger than the test card allows',
      cause: 'A poor crimp, splice, contact or ground point; a wire that is too long or too thin',
      act: 'Measure joint by joint: the one with the drop is the bad one. Make it again.',
    },
    {
      sign: 'Misfire at high engine speed or with lights and fans on',
      cause: 'Too much drop, a weak charging system, or the dwell of the controller',
      act: 'Take the readings at that speed. In order: supply at the posts, drop, then the dwell setting.',
    },
    {
      sign: 'The engine runs on with the ignition off',
      cause:
        'The relay contact is welded, or the original ignition wire stays live by way of another circuit',
      act: 'Stall the engine in gear with the brake on, or cut its fuel; else pull the fuse. Then battery off. Replace the relay, and find why. Do not use the vehicle.',
    },
    {
      sign: 'A wire, the fuse holder or the relay gets hot',
      cause: 'A poor crimp or contact, wires bundled too tightly, or a place that is hotter than designed',
      act: 'Stop at once, let it cool, battery off. Make the joint again, or move it.',
    },
  ],
  stop: always(
    'These papers say that they are not released for building.',
    'A line ______ cannot be filled in.',
    'A wire must be longer, run hotter, or lie in a larger bundle than the table says.',
    'A part differs from the list, or a data sheet of its maker says something else than these papers.',
    'A reading lies outside of the test card and you do not find why.',
    'A fuse opens a second time.',
    'There is a smell, smoke, a hot joint or damaged insulation.',
    'The relay does not release, or the engine does not stop with the key.',
    'The vehicle has a high-voltage drive, airbags near the work, or the law wants a licensed person for it.',
  ),
};
