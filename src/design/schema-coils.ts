/** Schema of the first half of a design: engine, ignition, coil, supply. */
import * as z from 'zod';
import { PRESETS } from './defaults.ts';
import { angle, type Bounds, count, name, quantity, share, valueTaken, word } from './fields.ts';
import { LAYOUTS } from './names.ts';

/** Limits that only catch slips of the unit or the decimal point; each is beyond anything built. */
export const VOLTS: Bounds = { over: 0, to: 60 };
export const VOLTS_OR_NONE: Bounds = { from: 0, to: 60 };
export const AMPS: Bounds = { over: 0, to: 1000 };
export const RPM: Bounds = { over: 0, to: 30_000 };
export const SECONDS: Bounds = { over: 0, to: 1 };
/** From the coldest start to past the 6 h overload limit of the best insulation. */
export const CELSIUS: Bounds = { from: -60, to: 300 };

export const MOST_CYLINDERS = 16;
export const MOST_COILS = 16;

/** A map of the file. Its keys are all there may be. */
export const map = <S extends z.ZodRawShape>(shape: S, description: string) =>
  z
    .strictObject(shape, { error: `takes a map with the keys: ${Object.keys(shape).join(', ')}` })
    .meta({ description });

export const engine = map(
  {
    cylinders: count(1, MOST_CYLINDERS, { description: 'Number of cylinders.' }),
    stroke: z
      .literal([2, 4], { error: 'takes 2 or 4' })
      .meta({ description: '4: one cycle is two turns, 720 deg of crank. 2: one turn, 360 deg.' }),
    firing_order: z
      .array(count(1, MOST_CYLINDERS, { description: 'Number of a cylinder.' }), {
        error: 'takes a list of cylinder numbers',
      })
      .max(MOST_CYLINDERS, { error: `takes at most ${MOST_CYLINDERS} cylinders` })
      .meta({ description: 'Cylinder numbers in the order in which they fire, each once.' }),
    firing_angles: z
      .array(angle({ description: 'Crank angle of a firing, degrees.' }), {
        error: 'takes a list of crank angles',
      })
      .max(MOST_CYLINDERS, { error: `takes at most ${MOST_CYLINDERS} angles` })
      .optional()
      .meta({
        description:
          'Crank angles of those firings in degrees, rising, from 0 to below the cycle. Left out: even firing.',
      }),
  },
  'The engine: what fires, in which order, at which crank angles.',
);

const listedCoil = map(
  {
    id: name({ description: 'Name of the coil, for `carries`.' }),
    fires_at: z
      .array(angle({ description: 'Crank angle of a firing, degrees.' }), {
        error: 'takes a list of crank angles',
      })
      .min(1, { error: 'takes at least one crank angle' })
      .max(MOST_CYLINDERS, { error: `takes at most ${MOST_CYLINDERS} angles` })
      .meta({ description: 'Crank angles at which the coil fires within one cycle, degrees, rising.' }),
  },
  'A coil of a listed ignition.',
);

const dwellAbout = { description: 'Dwell asked for: how long the coil is charged.' };
const dwellRow = map(
  {
    supply: quantity('V', VOLTS, { description: 'Supply voltage of this row.' }),
    dwell: quantity('s', SECONDS, dwellAbout),
  },
  'A row of the dwell table.',
);

export const ignition = map(
  {
    layout: word(LAYOUTS, {
      description:
        'How coils and cylinders belong together. coil_per_cylinder: one firing a cycle. wasted_coil_per_cylinder: each coil fires again 360 deg later. coil_per_pair: one coil for two cylinders 360 deg apart. single_coil: one coil and a distributor. listed: `coils` gives each coil and its angles.',
    }),
    coils: z
      .array(listedCoil, { error: 'takes a list of coils: {id: front, fires_at: [0, 240]}' })
      .min(1, { error: 'takes at least one coil' })
      .max(MOST_COILS, { error: `takes at most ${MOST_COILS} coils` })
      .optional()
      .meta({ description: 'Coils and their crank angles, for the layout `listed` only.' }),
    dwell: z
      .union(
        [
          quantity('s', SECONDS, dwellAbout),
          z
            .array(dwellRow, { error: 'takes a list of {supply, dwell}' })
            .min(1, { error: 'takes at least one row {supply, dwell}' })
            .max(24, { error: 'takes at most 24 rows' }),
        ],
        { error: `${valueTaken('s')}; or a list of {supply, dwell}` },
      )
      .meta({
        description: 'Dwell asked for: one value, or a table over supply voltage (held at its ends).',
      }),
    rest: quantity(
      's',
      { from: 0, to: 1 },
      {
        description: 'Least time between the end of a spark and the next charge of that coil.',
        preset: PRESETS.rest.text,
      },
    ).optional(),
  },
  'Coils and dwell.',
);

const testPoint = map(
  {
    supply: quantity('V', VOLTS, { description: 'Supply voltage of the test.' }),
    dwell: quantity('s', SECONDS, { description: 'Dwell of the test.' }),
    peak: quantity('A', AMPS, { description: 'Primary current at the end of that dwell.' }),
  },
  'One bench measurement, from which the inductance follows. Give this, or inductance, or peak.',
);

export const coil = map(
  {
    resistance: quantity('ohm', { over: 0, to: 1000 }, { description: 'Primary resistance at 20 degC.' }),
    inductance: quantity(
      'H',
      { over: 0, to: 10 },
      {
        description: 'Primary inductance. Give this, or test_point, or peak.',
      },
    ).optional(),
    test_point: testPoint.optional(),
    peak: quantity('A', AMPS, {
      description:
        'Peak current, when nothing else is known: the loads are then an upper bound. Give this, or inductance, or test_point.',
    }).optional(),
    driver_drop: quantity('V', VOLTS_OR_NONE, {
      description: 'Voltage across the driver when it conducts.',
      preset: PRESETS.driver_drop.text,
    }).optional(),
    current_limit: quantity('A', AMPS, {
      description: 'Limit of the coil or its driver; left out: none.',
    }).optional(),
    temperature: quantity('degC', CELSIUS, {
      description: 'Temperature of the coil for the load; a cold coil draws most.',
      preset: PRESETS.temperature.text,
    }).optional(),
    max_dwell: quantity('s', SECONDS, { description: 'Longest dwell of the data sheet.' }).optional(),
    max_duty: share({ description: 'Largest duty of the data sheet.' }).optional(),
    max_peak: quantity('A', AMPS, { description: 'Largest peak current of the data sheet.' }).optional(),
    min_supply: quantity('V', VOLTS, { description: 'Lowest supply of the data sheet.' }).optional(),
  },
  'The coil; all coils are alike.',
);

export const supply = map(
  {
    source_resistance: quantity(
      'ohm',
      { from: 0, to: 10 },
      {
        description: 'Resistance of battery and its posts, for fault currents.',
      },
    ).optional(),
    alternator: quantity('A', AMPS, { description: 'What the alternator delivers.' }).optional(),
    other_load: quantity(
      'A',
      { from: 0, to: 1000 },
      {
        description:
          'What everything else draws from the alternator. It counts in its balance only: for a load in a run of the feed, see the run.',
      },
    ).optional(),
    resting: quantity('V', VOLTS, {
      description:
        'Voltage of the battery at rest, at which a relay that closes before cranking must pull in: 12.66 V full, 12.15 V a quarter charged; left out: 12.0 V, or 24.0 V.',
    }).optional(),
  },
  'Battery and alternator.',
);
