/** Schema of what is measured on an install: tolerances of the parts, and readings that were taken. */
import * as z from 'zod';
import { readAccuracy, SENSES } from './accuracy.ts';
import { ACROSS_WORDS } from './across.ts';
import { PLACES } from './between.ts';
import { PRESETS } from './defaults.ts';
import type { Accuracy, Sense } from './design.ts';
import { list, name, quantity, share, spelled, word } from './fields.ts';
import { DISTRIBUTIONS, MEASURED, SPREADING } from './names.ts';
import { RANGES } from './ranges.ts';
import { map, use } from './schema-coils.ts';
import { coilId } from './schema-runs.ts';

/** Half the width of a range, in percent; read into a plain number. */
const spread = (preset: string, description: string) =>
  share(RANGES.spread, { description, preset }).optional();

const distribution = word(DISTRIBUTIONS, {
  description:
    'How values lie within the tolerance: uniform, or normal with the limits at three standard deviations, cut there; uniform when left out.',
}).optional();

export const tolerance = map(
  {
    coil_resistance: spread(
      PRESETS.coil_resistance.text,
      'Primary resistance may be this much above or below.',
    ),
    coil_inductance: spread(
      PRESETS.coil_inductance.text,
      'Primary inductance may be this much above or below.',
    ),
    coil_warmer: quantity(RANGES.rise, {
      description: 'How much warmer than coil.temperature a coil may be when the reading is taken.',
      preset: PRESETS.coil_warmer.text,
    }).optional(),
    dwell: spread(PRESETS.dwell_tolerance.text, 'Dwell may be this much longer or shorter.'),
    length: spread(PRESETS.length_tolerance.text, 'Lengths may be this much longer or shorter.'),
    joint_resistance: spread(
      PRESETS.joint_tolerance.text,
      'Resistance of joints, fuses and relay contacts may be this much above or below.',
    ),
    supply: spread(
      PRESETS.supply_tolerance.text,
      'Supply at the posts may be this much above or below that of its point.',
    ),
    current_limit: spread(
      PRESETS.limit_tolerance.text,
      'Current limit of coil or driver may be this much above or below.',
    ),
    ambient: quantity(RANGES.rise, {
      description: 'How much warmer or colder all places together may be.',
      preset: PRESETS.ambient_tolerance.text,
    }).optional(),
    distribution: map(
      Object.fromEntries(SPREADING.map((key) => [key, distribution])) as Record<
        (typeof SPREADING)[number],
        typeof distribution
      >,
      'Distribution of each tolerance, for coilfeed spread.',
    ).optional(),
  },
  'How far parts may be from their values: the range in which a reading is acceptable, and what coilfeed spread draws from.',
);

const accuracy = (sense: Sense, description: string) => {
  const taken = `takes an error as makers state it: ${PRESETS[sense].text}, or 1 % + 0.1 ${SENSES[sense].unit}`;
  const about = {
    description: `${description} As makers state it: 0.5 % + 2 digits, 1 % + 5 digits of 6000; or { use: NAME } of an instrument of the shop’s file.`,
    default: PRESETS[sense].text,
  };
  const read = (text: string): Accuracy | null => readAccuracy(text, sense);
  return z
    .union(
      [
        spelled(taken, read, about),
        // The name was put in place before; one that is not known has been told of.
        map({ use: use('instrument').unwrap() }, 'An instrument of the shop’s file.').transform(
          () => read(PRESETS[sense].text) as Accuracy,
        ),
      ],
      { error: taken },
    )
    .meta(about)
    .optional();
};

export const instruments = map(
  {
    meter: accuracy('meter', 'Error of the multimeter on direct voltage.'),
    scope: accuracy('scope', 'Error of the oscilloscope.'),
    clamp: accuracy('clamp', 'Error of the current clamp, with whatever shows its reading.'),
    ohmmeter: accuracy('ohmmeter', 'Error of what resistances are read with.'),
    trace: accuracy('trace', 'Error of an inductance from a trace.'),
    log: accuracy('log', 'Error of a dwell from a log.'),
    camera: accuracy('camera', 'Error of the thermal camera.'),
  },
  'Errors of the instruments with which the readings were taken.',
);

const volts = (description: string) => quantity(RANGES.read_voltage, { description }).optional();
const amps = (description: string) => quantity(RANGES.read_current, { description }).optional();

export const reading = map(
  {
    what: word(MEASURED, {
      description:
        'drop: voltage from one end of a run to the other. supply: voltage between the terminals of a coil, or at the battery posts. current: in a run or in the wire of a coil. voltage: between two named places. resistance: of a run, disconnected, or of the primary of a coil, unplugged. inductance: of a coil. dwell: how long coils are charged. trigger: voltage across the coil of the relay of a run. resting: the battery with everything off. temperature: of the hottest place of a run, or of one place within it.',
    }),
    run: name({ description: 'Run or conductor, such as main or branch.3.' }).optional(),
    coil: coilId.optional(),
    from: name({ description: `Of a voltage: the place nearer to battery positive: ${PLACES}.` }).optional(),
    to: name({ description: 'Of a voltage: the other place.' }).optional(),
    across: name({
      description: `Of a drop or a temperature: one place within the run in place of all of it: ${ACROSS_WORDS}.`,
    }).optional(),
    point: name({ description: 'Operating point at which it was read.' }).optional(),
    ambient: quantity(RANGES.temperature, {
      description: 'Of a temperature: that of the air around it, read at the same time.',
    }).optional(),
    meter: volts('Multimeter on direct voltage: the average.'),
    least: volts('Multimeter that holds its least reading (MIN), while the starter turns.'),
    scope: volts('Oscilloscope: the peak of a drop, the least of a supply or at the coil of a relay.'),
    clamp_average: amps('Current clamp on direct current: the average.'),
    clamp_effective: amps('Current clamp, true effective value of direct and alternating current together.'),
    clamp_peak: amps('Current clamp on an oscilloscope, or with a peak hold: the peak.'),
    value: quantity(RANGES.read_resistance, {
      description:
        'Resistance, of the run alone or of the primary of a coil, leads of the instrument taken off.',
    }).optional(),
    ohmmeter: quantity(RANGES.read_resistance, {
      description:
        'Primary resistance of an unplugged coil by a hand-held meter: good for two of the last digits written.',
    }).optional(),
    trace: quantity(RANGES.inductance, {
      description: 'Inductance of a coil by `coilfeed trace --measured`.',
    }).optional(),
    log: quantity(RANGES.dwell, {
      description: 'Dwell from a log of the controller, or on a scope.',
    }).optional(),
    camera: quantity(RANGES.temperature, {
      description: 'Temperature by a thermal camera, after five minutes at the point.',
    }).optional(),
  },
  'A reading that was taken.',
);

/** Readings in one file: a full card of a large engine has about 200. */
export const MOST_READINGS = 300;

export const measured = list(reading, [0, MOST_READINGS], {
  of: 'readings',
  start: '{ what: drop, run: main, point: idle, meter: 0.12 V }',
  description: 'Readings that were taken on the install.',
});
