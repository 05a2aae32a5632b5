/** Schema of the `kit` block: what the shop needs to know that the calculation does not. */
import * as z from 'zod';
import { UNITS } from '../basis/shown.ts';
import { KIT_PRESETS } from './defaults.ts';
import { count, line, quantity, share, word } from './fields.ts';
import { RANGES } from './ranges.ts';
import { map } from './schema-coils.ts';
import { insulation, size } from './schema-runs.ts';

/** A share that may be nothing at all. */
const percent = (description: string, preset: string) => share(RANGES.extra, { description, preset });

const part = (description: string) => line(80, { description }).optional();

const perRun = <T extends z.ZodType>(value: T, description: string) =>
  z
    .record(z.string(), value, { error: 'takes a map from the name of a run to its value' })
    .meta({ description });

const strip = quantity(RANGES.short, { description: 'Length of bared conductor.' });

const ends = map(
  {
    from: part('Terminal at the end towards the battery; of a return run towards the coil.'),
    to: part('Terminal at the other end.'),
  },
  'Terminals of the conductors of a run, as the shop calls them.',
);

const wire = (what: string) =>
  map(
    {
      gauge: size('Size of the conductor.').optional(),
      insulation: insulation('Class or type of its insulation.').optional(),
      length: quantity(RANGES.length, { description: 'Length, one way.' }).optional(),
      colour: part('Colour of its insulation.'),
    },
    what,
  );

const spares = map(
  {
    fuse: count(RANGES.spares, {
      description: 'Spare fuses in each kit, for every fuse.',
      preset: KIT_PRESETS.spare_fuses.text,
    }).optional(),
    relay: count(RANGES.spares, {
      description: 'Spare relays in each kit, for every relay.',
      preset: KIT_PRESETS.spare_relays.text,
    }).optional(),
    terminals: count(RANGES.spares, {
      description: 'Spare terminals of each kind in each kit.',
      preset: KIT_PRESETS.spare_terminals.text,
    }).optional(),
  },
  'What goes into the box beyond need.',
);

const parts = map(
  {
    fuse: part('Fuse, as the shop orders it.'),
    fuse_holder: part('Fuse holder.'),
    relay: part('Relay.'),
    relay_socket: part('Socket of the relay.'),
    splice: part('Splice of the feed.'),
    ground: part('Common ground point of the return.'),
    coil_connector: part('Connector of a coil.'),
    sleeve: part('Sleeve or conduit over the conductors.'),
    label: part('Label or marker of a wire.'),
    tie: part('Ties and clips.'),
  },
  'Parts as the shop orders them; what is left out stays a blank to fill in.',
);

export const kit = map(
  {
    units: word(UNITS, {
      description:
        'Units of the papers. both: metric, and US customary behind it. Left out: those of the design when it states them, else both.',
    }).optional(),
    allowance: percent(
      'Extra length of every piece, share of its length; trimmed when it is fitted.',
      KIT_PRESETS.allowance.text,
    ).optional(),
    end_allowance: quantity(RANGES.short, {
      description: 'Extra length at each end of a piece, for stripping and for one more crimp.',
      preset: KIT_PRESETS.end_allowance.text,
    }).optional(),
    cut_tolerance: quantity(RANGES.short, {
      description: 'How far the cut length may be off, either way.',
      preset: KIT_PRESETS.cut_tolerance.text,
    }).optional(),
    strip_tolerance: quantity(RANGES.short, {
      description: 'How far the strip length may be off, either way.',
      preset: KIT_PRESETS.strip_tolerance.text,
    }).optional(),
    waste: percent('Wire of a reel that is lost, share of what is cut.', KIT_PRESETS.waste.text).optional(),
    samples: count(RANGES.spares, {
      description: 'Crimps that are pulled apart in each batch, for each size of conductor.',
      preset: KIT_PRESETS.samples.text,
    }).optional(),
    test_current: quantity(RANGES.test_current, {
      description: 'Steady current of the drop test on the bench.',
      preset: KIT_PRESETS.test_current.text,
    }).optional(),
    strip: z
      .union([strip, perRun(strip, 'Strip length by run.')], {
        error: 'takes a length, or one for each run: {main: 8 mm}',
      })
      .optional()
      .meta({
        description: 'Bared length at both ends of a piece: one value, or a map from run to value.',
      }),
    colours: perRun(line(40, { description: 'Colour.' }), 'Colour of the insulation by run.').optional(),
    terminals: perRun(ends, 'Terminals by run.').optional(),
    fuse_at: perRun(
      quantity(RANGES.place, { description: 'Length.' }),
      'Length of the run between its start and its fuse, by run. Left out: from_source of the fuse, in a run that starts at the battery.',
    ).optional(),
    relay_at: perRun(
      quantity(RANGES.place, { description: 'Length.' }),
      'Length of the run between its start and its relay, by run.',
    ).optional(),
    trigger: wire('The wire from the original ignition feed to the relay coil.').optional(),
    relay_ground: wire('The wire from the relay coil to ground.').optional(),
    spares: spares.optional(),
    parts: parts.optional(),
  },
  'What the papers of the kit need: allowances, colours, terminals. Nothing of it enters the calculation.',
);
