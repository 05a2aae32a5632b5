/** What may go wrong on the vehicle, and what to do about it. */
import type { Fault } from './words-kinds.ts';

export const FAULTS: readonly Fault[] = [
  {
    sign: 'Relay does not click when the ignition is switched on',
    cause:
      'No voltage on the original ignition wire, no ground at terminal {t_eightyfive}, or a contact not home in the socket',
    act: 'Measure from terminal {t_eightysix} to {t_eightyfive}: battery voltage. None: measure from each one to the negative post and trace the wire at fault.',
  },
  {
    sign: 'Engine cranks and does not fire; relay chatters or drops out',
    cause:
      'Too little voltage at the relay while cranking: weak battery, or an ignition wire behind a resistor',
    act: 'Measure from {t_eightysix} to {t_eightyfive} while a helper cranks: at least {trigger_limits}. Charge the battery or use another wire.',
  },
  {
    sign: 'Engine cranks and does not fire; relay clicks',
    cause: 'Fuse blown or missing, relay contact burnt, or a contact not home',
    act: 'Clip on at a coil connector and at the negative post. Ignition on: work back through {t_eightyseven}, {t_thirty} and both sides of the fuse. The fault lies between the last place without voltage and the first with it.',
  },
  {
    sign: 'One coil does not fire',
    cause: 'Its feed wire, ground, control wire, or the coil',
    act: 'Ignition off: unplug it, clip on between its supply and ground pins. Ignition on: battery voltage means control wire or coil; none means feed or ground.',
  },
  {
    sign: 'Fuse blows at once',
    cause: 'A feed wire touches metal, or a coil is shorted',
    act: 'Battery off. Unplug the coils, measure from the feed to ground: at least {isolation}. Never try a larger fuse.',
  },
  {
    sign: 'Fuse blows after a while',
    cause: 'A driver that stays on, a shorted coil, or a fuse in too hot a place',
    act: 'Compare the current of each coil with the test card. Do not drive.',
  },
  {
    sign: 'A drop is above the test card',
    cause: 'A poor crimp, splice, contact or ground point; a wire too long or too thin',
    act: 'Measure joint by joint and make the one with the drop again.',
  },
  {
    sign: 'Misfire at high engine speed or with lights and fans on',
    cause: 'Too much drop, weak charging, or the dwell of the controller',
    act: 'Compare with the test card, in this order: supply at the posts, drops, currents. Then check the dwell.',
  },
  {
    sign: 'Engine does not stop with the key or a switch',
    cause: 'Relay contact welded, or the trigger wire is live by another way',
    act: 'Cut the fuel, or stall the engine in gear with the brake on, or pull the fuse. Battery off. Replace the relay and find the cause. Do not use the vehicle.',
  },
  {
    sign: 'A wire, the fuse holder or the relay gets hot',
    cause: 'A poor crimp or contact, a bundle that is too tight, or a place that is hotter than designed',
    act: 'Stop, let it cool, battery off. Make the joint again, or move the part.',
  },
];
