/** The steps, in the one order in which the work is done: every connection is made once, measured, and then used. */
import { always, type Line, type ListName, only } from './words-kinds.ts';

export const STEPS: Readonly<Record<Exclude<ListName, 'about' | 'cautions' | 'tools'>, readonly Line[]>> = {
  prepare: [
    ...always(
      'Compare the parts with the list. Stop and ask if a part is missing, damaged or different.',
      'Let engine and exhaust cool. Transmission in neutral or park, parking brake on, wheels chocked, key out.',
      'Find every switch that stops the engine: kill switch, lanyard, tilt switch, alarm, battery master switch. Note where each one cuts the circuit.',
      'Note what loses its memory without the battery. Follow the vehicle maker’s order for disconnecting it.',
      'Disconnect the battery, negative post first. Tie the lead back so that it cannot touch the post.',
    ),
    ...only('fuse', 'Keep {fuse_names} out of the holder, in your pocket, until the step that asks for it.'),
    ...only('relay', 'Keep {relay_names} out of the socket.'),
  ],
  mount: [
    ...only(
      'fuse',
      'Mount the holder of {fuse_names} close to the battery ({fuse_place}): {first_pieces}. Nothing protects that wire: sleeve it and keep it off edges and moving parts.',
      'Keep the fuse out of the heat: its load was worked out at {fuse_places}.',
    ),
    ...only(
      'relay',
      'Mount the socket of {relay_names} on the body and not on the engine ({relay_place}), dry, terminals down. The place must not get hotter than {relay_places}.',
    ),
    ...only('no_fuse', 'This design has no fuse. Stop: a feed without a fuse can burn the vehicle.'),
  ],
  route: [
    ...always(
      'Lay each wire as the diagram and the table of wires show. The label at each end says where that end goes.',
      'Keep clear of exhaust, belts, fan, steering and pedals. No place along a wire may be hotter than the table says.',
      'Keep clear of high-tension leads; cross them at a right angle. Do not bundle the feed with signal wires.',
      'Fit a grommet where a wire passes through metal and a sleeve where it may rub. Clip the wires every {clip_spacing}; bend radius at least {bend_radius}. Leave slack where the engine moves against the body.',
      'Lay no more wires in one bundle than the table says: they heat each other.',
    ),
    ...only(
      'loose',
      'The wires are cut longer than the design by {allowance} and by {end_allowance} at each end. Trim each one to fit before you crimp it: length left in costs voltage.',
    ),
    ...only('not_loose', 'The wires are cut to length. Do not shorten or extend one.'),
    ...always('Stop and ask if a wire is too short or would have to be longer than the table says.'),
  ],
  crimp: [
    ...only(
      'loose',
      'Strip every end and crimp on the terminal that the table of wires names, as its maker says. Pull at each crimp by hand. If it moves, cut it off and crimp a new terminal. Then seal it: {heat_shrink}.',
    ),
    ...only(
      'crimped',
      'Join the wires at {splices}. Pull at each crimp by hand, then seal it: {heat_shrink}.',
    ),
  ],
  ground: [
    ...only(
      'return',
      'Clean the metal at {grounds} ({ground_place}) until it is bare. Bolt the return wires on with a lock washer, torque {ground_torque}, then protect the joint from corrosion.',
      'Bolt the last return wire to the negative battery lead or its ground stud. The negative post stays open. Where there is a battery master switch in the negative lead, connect on the side away from the battery.',
    ),
    ...only(
      'no_return',
      'This design says nothing about the return from the coils, so it was not judged. Stop and ask before you rely on the old ground.',
    ),
  ],
  trigger: [
    ...only(
      'relay',
      'Take the original ignition wire off the coils ({trigger_place}). Unpin it; do not cut it. Leave its own fuse in place.',
      'Pick it up downstream of every switch that you noted: ignition switch, kill switch, lanyard, alarm. If a switch cut the circuit elsewhere, put its contact into {trigger_wires}.',
      'Connect it by {trigger_wires} to terminal {t_eightysix} of {relay_names}. It carries {trigger_currents} and must feed no coil. Least size of that wire: {trigger_sizes}. Insulate every end that is left over.',
      'Connect terminal {t_eightyfive} by {relay_grounds} to engine ground (terminal {t_thirtyone}).',
    ),
    ...only(
      'diode',
      'The relay has a diode: never exchange terminals {t_eightysix} and {t_eightyfive}, or the diode shorts the ignition wire.',
    ),
    ...only(
      'no_relay',
      'This feed has no relay: the coils are live whenever battery and fuse are connected. Stop and ask how the ignition is switched off.',
    ),
  ],
  connect: [
    ...only(
      'not_assembled',
      'Fit the contacts of the feed and the return into the new coil connectors: supply (terminal {t_fifteen}) in pin {supply_pin}, ground (terminal {t_thirtyone}) in pin {ground_pin}.',
    ),
    ...always(
      'One coil at a time: release the control wire from the old connector, tag it with the number of its coil, and fit it into pin {control_pin} of the new connector. Keep the old connectors with their supply wires, capped and tied back.',
      'Where the driver sits outside the coil there is no control wire: leave the wire from coil to driver as it is. The return then starts at the driver’s ground.',
      'Do not plug in the coils yet.',
    ),
    ...only(
      'relay',
      'Socket of {relay_names}: the wire from the fuse goes into {t_thirty}, the wire to the coils into {t_eightyseven}.',
    ),
    ...always(
      'Bolt the first wire to the positive post, torque {battery_torque}. Where there is a battery master switch in the positive lead, connect on the side away from the battery.',
    ),
  ],
  measure: always(
    'Battery negative still open, fuse out, relay out, coils unplugged. Touch the leads of the ohmmeter together and deduct what it shows.',
    'From the fuse holder’s outgoing side, and from the supply pin of each coil connector, to engine ground: at least {isolation}. Less is a short: find it before you go on.',
    'From end to end of each feed wire, and from the ground pin of each coil connector to the negative battery lead: at most {continuity}.',
  ),
  power: [
    ...always(
      'Coils still unplugged, fuse still out: the engine cannot start. Connect the battery, positive post first, negative post last.',
    ),
    ...only(
      'relay',
      'Plug in {relay_names}. Clip the voltmeter on terminals {t_eightysix} and {t_eightyfive}. Ignition on: at least {pull_ins}, and the relay clicks. Ignition off: no voltage, and it clicks again.',
      'Shut off the fuel as the vehicle maker says. A helper cranks for a few seconds while you read the same place: at least {trigger_limits}.',
      'No voltage while cranking, or too little? The wire is dead in the start position or fed through a resistor. Use another wire that is live with the key in run and in start, dead with the key off, and not behind a resistor. The supply of the ignition controller is often one. None to be found: stop and ask.',
      'Open each switch that stops the engine, one at a time: the voltage must go away and the relay must click.',
    ),
    ...only('fuse', 'Ignition off. Put in {fuses}, from this kit.'),
    ...always(
      'Clip the voltmeter on the supply and ground pins of a coil connector with the ignition off. Ignition on: battery voltage. Ignition off: none. Do the same at every connector.',
      'Ignition off. Plug in the coils and lock the connectors. Restore the fuel.',
    ),
  ],
  first_start: [
    ...always(
      'Transmission in neutral or park, parking brake on, wheels chocked, exhaust gas led outside. Tools out, nobody near belts and fan, extinguisher at hand, helper at the key.',
      'Ignition on for a few seconds, then off. Stop if anything smells, smokes or gets warm.',
      'Start the engine and let it idle.',
      'Press the kill switch: the engine must stop at once. Start it again and do the same with every other switch that you noted, the battery master switch last. If one does not stop the engine: ignition off, fuse out, do not use the vehicle, ask {contact}.',
      'Take the readings of the test card.',
      'Run the engine for some minutes and stop it. Look for hot places with the thermometer: fuse holder, relay, splices, terminals. No wire may get hotter than {hottest}.',
      'After the first drive check the torque of ground points and battery posts, and look for wires that rub.',
    ),
  ],
  ratings: [
    ...only(
      'fuse',
      '{fuses}. Every wire behind the fuse is chosen for it. If it blows, find the cause and replace it with one of the same type and rating.',
    ),
    ...only(
      'relay',
      '{relays}. Another relay must carry as much and pull in at no more than {pull_ins} when hot. While the engine cranks this one gets {relay_supplies}.',
    ),
    ...always(
      'The sizes and lengths of the wires. The worst coil may lose {drop_limit} at the instant of a spark; as designed it loses {worst_drop}.',
      'The coils. Coils that draw more need a new design.',
    ),
  ],
  card: always(
    'Neutral or park, parking brake on, wheels chocked, exhaust gas led outside, a helper at the throttle.',
    'Ignition off: clip the leads on, lay them clear of belts, fan, exhaust and high tension, let go. Then start. Never hold a lead at a coil.',
    'Hold the speed only as long as the reading takes. Never hold the engine at its limiter.',
  ),
  stop: always(
    'These papers say that they are not released for building.',
    'You cannot fill in a line ______.',
    'A wire would have to be longer, run hotter, or lie in a larger bundle than the table says.',
    'A part differs from the list, or its maker’s data sheet contradicts these papers.',
    'A reading is outside the test card and you do not find why.',
    'A fuse blows a second time.',
    'Something smells or smokes, a joint is hot, or insulation is damaged.',
    'The relay does not release, or a switch that must stop the engine does not.',
    'The vehicle has a high-voltage drive or airbags near the work, or the law asks for a licensed person.',
  ),
  back: [
    ...always('Ignition off. Disconnect the battery, negative post first.'),
    ...only('fuse', 'Take {fuse_names} out.'),
    ...always(
      'Take the first feed wire off the positive post and insulate its end.',
      'Unplug the coils. Put each control wire back into its old connector by its tag.',
    ),
    ...only('relay', 'Take {trigger_wires} off the original ignition wire and pin that wire back as it was.'),
    ...always(
      'Plug the old connectors into the original coils. The original wiring suits the original coils only.',
      'Check that every switch stops the engine before you drive.',
    ),
  ],
};
