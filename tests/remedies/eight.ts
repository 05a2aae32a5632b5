/** An install that is common: eight coils of 20 A, one fuse and relay of 50 A, a main of 8 AWG, thin branches. */
export const EIGHT = `coilfeed: 1
title: Eight coils on one fuse and relay
engine: { cylinders: 8, stroke: 4, firing_order: [1, 8, 4, 3, 6, 5, 7, 2] }
ignition: { layout: coil_per_cylinder, dwell: 3.0 ms }
coil: { resistance: 0.5 ohm, inductance: 2.1 mH, driver_drop: 1 V }
supply: { source_resistance: 20 mohm }
points:
  - { name: cranking, rpm: 200 rpm, supply: 9.6 V }
  - { name: limiter, rpm: 7000 rpm, supply: 14.2 V }
feed:
  - run: main
    carries: all
    length: 1.8 m
    ambient: 60 degC
    insulation: TXL
    gauge: 8 AWG
    joints: 4
    fuse: { type: E, rating: 50 A, ambient: 60 degC, from_source: 150 mm }
    relay: { rating: 50 A, coil: 90 ohm, pull_in: 6.5 V, suppression: resistor, ambient: 60 degC }
  - run: branch
    carries: each
    length: 0.5 m
    ambient: 90 degC
    insulation: TXL
    gauge: 20 AWG
    joints: 2
return:
  - run: coil ground
    carries: each
    length: 0.3 m
    ambient: 90 degC
    insulation: TXL
    gauge: 16 AWG
    joints: 2
`;
