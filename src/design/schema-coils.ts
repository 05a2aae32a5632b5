/** Schema of the first half of a design: engine, ignition, coil, supply. */
import * as z from 'zod';
import { PRESETS } from './defaults.ts';
import { angle, count, list, name, notOne, quantity, share, spelled, word } from './fields.ts';
import { LAYOUTS } from './names.ts';
import { RANGES } from './ranges.ts';
import { readOrder } from './spellings.ts';

export const MOST_CYLINDERS = RANGES.cylinders.to;
export const MOST_COILS = MOST_CYLINDERS;

/** A map of the file. Its keys are all there may be. */
export const map = <S extends z.ZodRawShape>(shape: S, description: string) =>
  z
    .strictObject(shape, { error: `takes a map with the keys: ${Object.keys(shape).join(', ')}` })
    .meta({ description });

const ORDER = 'takes a list of cylinder numbers: [1, 3, 4, 2] or 1-3-4-2';
const cylinderNumbers = list(
  count(RANGES.cylinders, { description: 'Number of a cylinder.' }),
  [0, MOST_CYLINDERS],
  { of: 'cylinder numbers', start: '[1, 3, 4, 2]', description: 'Numbers of cylinders.' },
);

const angles = (least: number, description: string) =>
  list(angle(RANGES.angle, { description: 'Crank angle of a firing, degrees.' }), [least, MOST_CYLINDERS], {
    of: 'crank angles',
    start: '[0, 180, 360, 540]',
    description,
  });

export const engine = map(
  {
    cylinders: count(RANGES.cylinders, { description: 'Number of cylinders.' }),
    stroke: z
      .literal([2, 4], { error: 'takes 2 or 4' })
      .meta({ description: '4: one cycle is two turns, 720 deg of crank. 2: one turn, 360 deg.' }),
    firing_order: z
      .union(
        [cylinderNumbers, spelled(ORDER, readOrder, { description: 'The same with hyphens: 1-5-3-6-2-4.' })],
        { error: ORDER },
      )
      .meta({ description: 'Cylinder numbers in the order in which they fire, each once.' }),
    firing_angles: angles(
      0,
      'Crank angles of those firings in degrees, rising, from 0 to below the cycle. Left out: even firing.',
    ).optional(),
  },
  'The engine: what fires, in which order, at which crank angles.',
);

const listedCoil = map(
  {
    id: name({ description: 'Name of the coil, for `carries`.' }),
    fires_at: angles(1, 'Crank angles at which the coil fires within one cycle, degrees, rising.'),
  },
  'A coil of a listed ignition.',
);

const dwellAbout = { description: 'Dwell asked for: how long the coil is charged.' };
const dwellRow = map(
  {
    supply: quantity(RANGES.supply, { description: 'Supply voltage of this row.' }),
    dwell: quantity(RANGES.dwell, dwellAbout),
  },
  'A row of the dwell table.',
);

const dwellTable = list(dwellRow, [1, 24], {
  of: 'rows',
  start: '{ supply: 14 V, dwell: 2.8 ms }',
  description: 'Dwell over supply voltage.',
});

const sparks = map(
  {
    count: count(RANGES.sparks, { description: 'Sparks of one firing, the first one included: 3.' }),
    below: quantity(RANGES.speed, { description: 'They are made at points below this engine speed.' }),
    charge: quantity(RANGES.dwell, {
      description: 'How long the coil is charged before each further spark.',
    }),
    burn: quantity(RANGES.rest, {
      description: 'From a spark to the next charge.',
      preset: PRESETS.burn.text,
    }).optional(),
  },
  'Several sparks at low speed: their charges count in every load.',
);

export const ignition = map(
  {
    layout: word(LAYOUTS, {
      description:
        'How coils and cylinders belong together. coil_per_cylinder: one firing a cycle. wasted_coil_per_cylinder: each coil fires again 360 deg later. coil_per_pair: one coil for two cylinders 360 deg apart. single_coil: one coil and a distributor. listed: `coils` gives each coil and its angles.',
    }),
    coils: list(listedCoil, [1, MOST_COILS], {
      of: 'coils',
      start: '{ id: front, fires_at: [0, 240] }',
      description: 'Coils and their crank angles, for the layout `listed` only.',
    }).optional(),
    dwell: z
      .union([quantity(RANGES.dwell, dwellAbout), dwellTable], {
        error: notOne(
          RANGES.dwell,
          'or a list of rows, each with a dash: "- { supply: 14 V, dwell: 2.8 ms }"',
        ),
      })
      .meta({
        description: 'Dwell asked for: one value, or a table over supply voltage (held at its ends).',
      }),
    rest: quantity(RANGES.rest, {
      description: 'Least time between the end of a spark and the next charge of that coil.',
      preset: PRESETS.rest.text,
    }).optional(),
    sparks: sparks.optional(),
  },
  'Coils and dwell.',
);

const testPoint = map(
  {
    supply: quantity(RANGES.supply, { description: 'Supply voltage of the test.' }),
    dwell: quantity(RANGES.dwell, { description: 'Dwell of the test.' }),
    peak: quantity(RANGES.coil_current, { description: 'Primary current at the end of that dwell.' }),
    temperature: quantity(RANGES.temperature, {
      description: 'Temperature of the coil in the test, whatever it is later.',
      preset: PRESETS.test_temperature.text,
    }).optional(),
  },
  'One bench measurement, from which the inductance follows. Give this, or inductance, or peak.',
);

const seriesResistor = map(
  {
    value: quantity(RANGES.series_resistor, { description: 'Its resistance, hot.' }),
    bypassed_at: list(name({ description: 'Name of a point.' }), [0, 24], {
      of: 'names of points',
      start: 'cranking',
      description: 'Points at which it is bridged: [cranking]. Left out: none.',
    }).optional(),
  },
  'A resistor before each coil; it is in the path of the current, not in the coil.',
);

/** Name of a part of the shop's file. */
export const use = (part: string) =>
  name({
    description: `Name of ${/^[aeiou]/.test(part) ? 'an' : 'a'} ${part} of the shop’s file; what stands beside it takes the place of the shop’s value.`,
  }).optional();

export const coil = map(
  {
    resistance: quantity(RANGES.coil_resistance, {
      description:
        'Primary resistance at 20 degC. It may be left out beside a peak: what a driver that stays on draws is then not known.',
    }).optional(),
    inductance: quantity(RANGES.inductance, {
      description: 'Primary inductance. Give this, or test_point, or peak.',
    }).optional(),
    test_point: testPoint.optional(),
    peak: quantity(RANGES.coil_current, {
      description:
        'Peak current, when nothing else is known: the loads are then an upper bound. Give this, or inductance, or test_point.',
    }).optional(),
    driver_drop: quantity(RANGES.lost, {
      description: 'Voltage across the driver when it conducts.',
      preset: PRESETS.driver_drop.text,
    }).optional(),
    current_limit: quantity(RANGES.coil_current, {
      description: 'Limit of the coil or its driver; left out: none.',
    }).optional(),
    temperature: quantity(RANGES.temperature, {
      description: 'Temperature of the coil for the load.',
      preset: PRESETS.temperature.text,
    }).optional(),
    series_resistor: seriesResistor.optional(),
    max_dwell: quantity(RANGES.dwell, { description: 'Longest dwell of the data sheet.' }).optional(),
    max_duty: share(RANGES.share, { description: 'Largest duty of the data sheet.' }).optional(),
    max_peak: quantity(RANGES.coil_current, {
      description: 'Largest peak current of the data sheet.',
    }).optional(),
    min_supply: quantity(RANGES.supply, { description: 'Lowest supply of the data sheet.' }).optional(),
    use: use('coil'),
  },
  'The coil; all coils are alike.',
);

export const supply = map(
  {
    source_resistance: quantity(RANGES.source, {
      description: 'Resistance of battery and its posts, for fault currents.',
    }).optional(),
    cold_cranking: quantity(RANGES.cold_cranking, {
      description:
        'In place of source_resistance: what the 12 V battery delivers for 30 s at −18 degC with 7.2 V (SAE J537).',
    }).optional(),
    alternator: quantity(RANGES.alternator, { description: 'What the alternator delivers.' }).optional(),
    other_load: quantity(RANGES.load, {
      description:
        'What everything else draws from the alternator. It counts in its balance only: for a load in a run of the feed, see the run.',
    }).optional(),
    resting: quantity(RANGES.supply, {
      description:
        'Voltage of the battery at rest, at which a relay that closes before cranking must pull in: 12.66 V full, 12.15 V a quarter charged; left out: 12.0 V, or 24.0 V.',
    }).optional(),
  },
  'Battery and alternator.',
);
