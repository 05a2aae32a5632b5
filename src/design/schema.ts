/** Schema of the design file as a whole. What no single field can tell is in the checks. */
import * as z from 'zod';
import { UNITS } from '../basis/shown.ts';
import { PRESETS } from './defaults.ts';
import { line, list, name, quantity, share, spelled, text, word } from './fields.ts';
import { AIMS, SERIES } from './names.ts';
import { RANGES } from './ranges.ts';
import { coil, engine, ignition, map, supply } from './schema-coils.ts';
import { kit } from './schema-kit.ts';
import { instruments, measured, tolerance } from './schema-measured.ts';
import { added, own, remarks } from './schema-own.ts';
import { run, size } from './schema-runs.ts';

export const MOST_RUNS = 24;

/** `2031-05-28`, a day of the calendar. */
function dayOf(text: string): string | null {
  const day = new Date(`${text.trim()}T00:00:00Z`);
  const written = Number.isNaN(day.getTime()) ? '' : day.toISOString().slice(0, 10);
  return written === text.trim() ? written : null;
}

const point = map(
  {
    name: name({ description: 'Name; `cranking` is the point at which the relay must close.' }),
    rpm: quantity(RANGES.speed, { description: 'Engine speed.' }),
    supply: quantity(RANGES.supply, { description: 'Voltage at the battery posts.' }),
    dip: quantity(RANGES.supply, {
      description:
        'Lowest instant of the supply while cranking, at which a relay must hold: 8 V for 15 ms is usual, 5 V the lowest of several standards for 12 V, 8 V for 24 V.',
    }).optional(),
  },
  'An operating point.',
);

const sweep = map(
  {
    from: quantity(RANGES.speed, { description: 'First engine speed.' }),
    to: quantity(RANGES.speed, { description: 'Engine speed that is not passed.' }),
    step: quantity(RANGES.speed, { description: 'Step of the engine speed.' }),
    supply: quantity(RANGES.supply, { description: 'Voltage at the battery posts.' }),
  },
  'A table and charts over engine speed, at most 200 rows.',
);

const sizes = map(
  {
    series: word(SERIES, {
      description: 'Series from which `gauge: auto` chooses.',
      preset: PRESETS.series.text,
    }).optional(),
    smallest: size('Never thinner than this. Left out: 18 AWG, 18 SAE or 0.75 mm2.').optional(),
    stock: list(size('A size.'), [1, 40], {
      of: 'sizes',
      start: '[18 AWG, 14 AWG]',
      description: 'The only sizes of the series to choose from. Left out: all of them.',
    }).optional(),
    aim: word(AIMS, {
      description:
        'What sizes are chosen for: the least copper, or the least price by the wire of the shop’s file.',
      preset: PRESETS.aim.text,
    }).optional(),
  },
  'Sizes for `gauge: auto`.',
);

const limits = map(
  {
    drop: quantity(RANGES.drop_limit, {
      description:
        'Largest drop of feed and return together, at a firing; left out: 0.5 V up to 16 V of supply, 1 V above.',
    }).optional(),
    energy: quantity(RANGES.energy, {
      description: 'Least energy of the weakest coil; below it a unit is likely wrong.',
      preset: PRESETS.energy.text,
    }).optional(),
    wire_load: share(RANGES.share, {
      description: 'Largest effective current of a conductor as a share of its ampacity.',
      preset: PRESETS.wire_load.text,
    }).optional(),
    fuse_load: share(RANGES.share, {
      description: 'Largest effective current of a fuse as a share of its rating at its ambient.',
      preset: PRESETS.fuse_load.text,
    }).optional(),
    joint_resistance: quantity(RANGES.joint, {
      description: 'Resistance of one crimp.',
      preset: PRESETS.joint_resistance.text,
    }).optional(),
    contact_resistance: quantity(RANGES.joint, {
      description: 'Resistance of one pair of plug contacts.',
      preset: PRESETS.contact_resistance.text,
    }).optional(),
  },
  'Limits of our own choice.',
);

const runs = (description: string) =>
  list(run, [1, MOST_RUNS], { of: 'runs', start: 'run: main', description });

const feed = runs('Feed runs in order, from the battery outward.');
const back = runs('Return runs in order, from the coil to battery negative.').optional();

const original = map(
  { feed, return: back },
  'Another feed of the same coils, such as the original wiring, for `coilfeed compare`.',
);

export const DesignFile = map(
  {
    coilfeed: z
      .literal(1, { error: 'takes 1, the version of the format that this program reads' })
      .meta({ description: 'Version of the format.' }),
    title: line(200, { description: 'What this design is.' }),
    notes: text({ description: 'Free text; it is handed through to the result.' }).optional(),
    date: spelled('takes a day that exists, such as 2031-05-28: year, month, day', dayOf, {
      description: 'Day of this state of the design, such as 2031-05-28; it stands on every printed page.',
    }).optional(),
    shop: z
      .union(
        [
          line(200, { description: 'Name of the file.' }),
          z
            .looseObject({}, { error: 'takes the name of a file' })
            .meta({ description: 'What such a file holds.' }),
        ],
        { error: 'takes the name of a file: shop.yaml' },
      )
      .meta({
        description:
          'The shop’s own file of parts, stock and prices, beside this one: shop.yaml. In a workbook what it holds stands in its place.',
      })
      .optional(),
    units: word(UNITS, {
      description:
        'Units in which results are shown: metric, us (feet, inches, ounces, degF), or both. Values are read in any unit.',
      preset: PRESETS.units.text,
    }).optional(),
    engine,
    ignition,
    coil,
    supply: supply.optional(),
    points: list(point, [1, 24], {
      of: 'points',
      start: '{ name: idle, rpm: 900 rpm, supply: 13.6 V }',
      description: 'Operating points, at least one.',
    }),
    sweep: sweep.optional(),
    sizes: sizes.optional(),
    feed,
    return: back,
    original: original.optional(),
    limits: limits.optional(),
    kit: kit.optional(),
    tolerance: tolerance.optional(),
    instruments: instruments.optional(),
    measured: measured.optional(),
    own: own.optional(),
    added: added.optional(),
    remarks: remarks.optional(),
  },
  'A design of the power feed of ignition coils.',
);

/** What the schema makes of a file that it accepts. */
export type DesignFile = z.output<typeof DesignFile>;
export type RunOfFile = DesignFile['feed'][number];
