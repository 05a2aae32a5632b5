/**
 * The words of the instructions, as templates. `{name}` stands for a value of the model or a name of the design; no
 * number is written in the words themselves, so that none can be wrong. A kit writer can replace each part.
 */
import { FAULTS } from './words-faults.ts';
import { always, only, type Words } from './words-kinds.ts';
import { STEPS } from './words-steps.ts';

export const WORDS: Words = {
  about: [
    ...only(
      'relay',
      'This kit feeds the ignition coils, {coil_count} in all, straight from the battery. The original ignition wire no longer feeds them: it only closes the relay.',
    ),
    ...only(
      'no_relay',
      'This kit feeds the ignition coils, {coil_count} in all, straight from the battery. The original ignition wire no longer feeds them.',
    ),
    ...always(
      'Read all of this before you touch the vehicle. If you cannot do a step as written, stop and ask: {contact}.',
    ),
  ],
  cautions: always(
    'Wear eye protection when you work on the battery, drill, cut, crimp or solder. Battery gas explodes; battery acid blinds.',
    'The new feed bypasses whatever cut off the old one. The kill switch and the battery master switch, where fitted, must stop the engine afterwards as they did before. Test it before you drive.',
    'Run the engine outdoors or with the exhaust gas led outside: exhaust gas kills.',
    'Transmission in neutral or park, parking brake on, wheels chocked, before anybody cranks or starts the engine.',
    'Clip test leads on with the ignition off, and let go of them before it is switched on. Nobody holds a probe or a lead on a coil terminal while the ignition is on.',
    'High-tension leads, plugs and coil towers can kill. Keep hands, tools and leads away while the ignition is on. Never pull a lead or a coil off a running engine.',
    'A fuse larger than stated does not protect the wires behind it: they can set the vehicle on fire. Never bridge a fuse.',
    'Solder, hot air and heat-shrink burn skin and start fires. Work away from fuel and let things cool.',
    'Airbags, a high-voltage drive or battery management have their own rules for disconnecting the battery: the vehicle maker’s manual takes precedence.',
    'Keep a fire extinguisher for electrical fires within reach and a helper within call.',
  ),
  tools: [
    ...always(
      'Eye protection; gloves without metal; wheel chocks; fire extinguisher',
      'Wrenches for the battery posts and the ground points; torque wrench',
      'Tool that releases the contacts of the old coil connectors; crimp tool for the contact of the control wire, where it needs a new one',
    ),
    ...only(
      'not_assembled',
      'Cutter, stripper, and the crimp tool and die that the terminal maker names',
      'Hot-air tool, or what the seal of the splices needs',
    ),
    ...always(
      'Multimeter with clip-on leads and back probes; a clamp meter for direct current helps',
      'Ties, clips, grommets and sleeve; brush for bare metal; corrosion protection for ground points',
      'Infrared thermometer, to find a hot joint without touching it',
    ),
  ],
  ...STEPS,
  faults: FAULTS,
};

export * from './words-kinds.ts';
