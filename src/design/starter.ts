/** The commented design that a new project starts from. */

const TEXT = `# The power feed of ignition coils, to start from.
# Replace every value with that of your engine, your wires and the data sheets of your parts.
# Write each value with its unit: 3.2 ms, 0.42 ohm, 1.5 m, 4 ft 7 in, 60 degC, 140 degF, 80 %.
# docs/format.md has every key and every spelling. All errors are reported together, each with its line.
coilfeed: 1
title: Four cylinders, a coil for each
# units: us                 # shows results in feet, inches and degF; or both

engine:
  cylinders: 4
  stroke: 4
  firing_order: [1, 3, 4, 2]  # or 1-3-4-2
  # firing_angles: [0, 180, 360, 540]   # crank degrees in that order; leave it out for even firing

ignition:
  # coil_per_cylinder, wasted_coil_per_cylinder, coil_per_pair, single_coil or listed
  layout: coil_per_cylinder
  # One value, or a table: [{ supply: 8 V, dwell: 6.0 ms }, { supply: 14 V, dwell: 2.8 ms }]
  dwell: 2.8 ms
  rest: 1.0 ms

coil:                       # an invented one: put in the data sheet of yours, or use: NAME of a shop's file
  resistance: 0.5 ohm       # primary, at 20 degC
  # How the coil charges: give exactly one of the three.
  inductance: 3.0 mH
  # test_point: { supply: 13.5 V, dwell: 3.0 ms, peak: 10.5 A }
  # peak: 12 A
  driver_drop: 1.0 V
  # current_limit: 15 A
  temperature: 20 degC      # a cold coil draws most
  # Limits of the data sheet, if it gives them:
  # max_dwell: 6 ms
  # max_duty: 40 %
  # max_peak: 16 A
  # min_supply: 6 V

supply:
  source_resistance: 8 mohm # battery and posts; for fault currents
  # alternator: 90 A
  # other_load: 35 A        # of the alternator, everything else together

points:                     # at least one; the relay must close at the one named cranking
  - { name: cranking, rpm: 220 rpm, supply: 9.6 V }
  - { name: idle, rpm: 900 rpm, supply: 13.6 V }
  - { name: limiter, rpm: 7000 rpm, supply: 14.2 V }

sweep: { from: 1000 rpm, to: 7000 rpm, step: 500 rpm, supply: 14.0 V }

# gauge: auto takes any size of this series: AWG, SAE or mm2; with a shop's file what it has on its shelf.
sizes: { series: AWG, smallest: 18 AWG }

feed:                       # in order, from the battery outward
  - run: main
    carries: all            # all, each, or a list of coil ids
    length: 1.5 m
    ambient: 60 degC
    insulation: C           # class A (85 degC) to H (250 degC), or a type such as TXL
    material: cross-linked  # where the class does not say; else taken as PVC
    bundle: 1               # current-carrying conductors bundled together, this one included
    gauge: auto             # chosen by the tool; or state it: 10 AWG, 10 SAE, 4 mm2
    joints: 4               # crimps in series; contacts: pairs of plug contacts
    # Types: C blade, F small blade, E large blade, SF30 bolted strip. rating: auto takes the smallest rating of the
    # type's standard that serves; with a shop's file one that the shop has.
    fuse: { type: C, rating: auto, ambient: 60 degC, from_source: 0.15 m }
    relay:                  # an invented one: put in the data sheet of yours, or use: NAME of a shop's file
      rating: 40 A
      rated_at: 85 degC
      coil: 90 ohm
      pull_in: 7.2 V
      drop_out: 1.2 V
      coil_max: 16 V
      closes: before cranking # with the key; or while cranking
      contact: 5 mohm
      ambient: 60 degC
      coil_rise: 20 K
      suppression: resistor # none, diode, resistor or diode_zener
      trigger_drop: 0.3 V
      tab: 6.3 mm
  - run: branch
    carries: each           # a wire for each coil
    length: { "1": 0.6 m, "2": 0.5 m, "3": 0.4 m, "4": 0.3 m }
    ambient: 90 degC
    insulation: C
    material: cross-linked
    bundle: 2
    gauge: auto
    joints: 3

return:                     # from the coil to battery negative
  - run: coil ground
    carries: each
    length: 0.35 m
    ambient: 90 degC
    insulation: C
    bundle: 2
    gauge: auto
    joints: 2
  - run: engine strap
    carries: all
    length: 0.5 m
    ambient: 80 degC
    insulation: C
    bundle: 1
    gauge: 4 AWG            # stated: a strap that is there is judged, not chosen
    joints: 2

limits:
  drop: 0.5 V               # feed and return together
  wire_load: 80 %
  fuse_load: 75 %
  joint_resistance: 0.3 mohm

tolerance:
  coil_resistance: 10 %     # a driver that stays on draws from the low end
`;

/** Text of a design that passes the reader. */
export const starter = (): string => TEXT;
