/** Schema of the `kit` block: what the shop needs to know that the calculation does not. */
import * as z from 'zod';
import { UNITS } from '../basis/shown.ts';
import { KIT_PRESETS } from './defaults.ts';
import { count, line, quantity, share, word } from './fields.ts';
import { DELIVERED, FITTING, type Fitting } from './kit.ts';
import { RANGES } from './ranges.ts';
import { map, use } from './schema-coils.ts';
import { insulation, size } from './schema-runs.ts';

/** A share that may be nothing at all. */
const percent = (description: string, preset: string) => share(RANGES.extra, { description, preset });

const part = (description: string) => line(80, { description }).optional();

/** A part as the shop calls it: in words, or by its name in the shop's file. */
const usable = (what: string, description: string) =>
  z
    .union(
      [
        line(80, { description }),
        map({ use: use(what).unwrap() }, `A ${what} of the shop’s file.`).transform((given) => given.use),
      ],
      { error: `takes text on one line, or { use: NAME } of a ${what} of the shop’s file` },
    )
    .meta({ description: `${description} Text, or { use: NAME } of a ${what} of the shop’s file.` })
    .optional();

const perRun = <T extends z.ZodType>(value: T, description: string) =>
  z
    .record(z.string(), value, { error: 'takes a map from the name of a run to its value' })
    .meta({ description });

const strip = quantity(RANGES.short, { description: 'Length of bared conductor.' });

const ends = map(
  {
    from: usable('terminal', 'Terminal at the end towards the battery; of a return run towards the coil.'),
    to: usable('terminal', 'Terminal at the other end.'),
  },
  'Terminals of the conductors of a run, as the shop calls them.',
);

const WIRE = {
  gauge: size('Size of the conductor.').optional(),
  insulation: insulation('Class or type of its insulation.').optional(),
  length: quantity(RANGES.length, { description: 'Length, one way.' }).optional(),
  colour: part('Colour of its insulation.'),
};

const pins = map(
  {
    supply: part('Pin of the supply.'),
    ground: part('Pin of the ground.'),
    control: part('Pin of the wire that tells the coil when to fire.'),
  },
  'Pins of the coil’s connector, as its maker names them.',
);

const FITTING_WORDS: Readonly<Record<Fitting, string>> = {
  battery_torque: 'Torque of the battery terminals.',
  ground_torque: 'Torque of the ground points.',
  heat_shrink: 'Heat-shrink or other seal of crimps and splices.',
  bend_radius: 'Least bend radius of the wires.',
  clip_spacing: 'Distance between clips.',
  fuse_place: 'Where the fuse is mounted.',
  relay_place: 'Where the relay is mounted.',
  ground_place: 'Where the ground points are.',
  trigger_place: 'Where the original ignition wire is picked up.',
};

const fitting = map(
  Object.fromEntries(FITTING.map((key) => [key, part(FITTING_WORDS[key])])) as Record<
    Fitting,
    ReturnType<typeof part>
  >,
  'What the shop says about fitting, in its own words, torques and all.',
);

const insulation_test = map(
  {
    voltage: quantity(RANGES.insulation_volts, {
      description: 'Direct voltage of the tester.',
      preset: KIT_PRESETS.insulation_volts.text,
    }).optional(),
    least: quantity(RANGES.apart, {
      description: 'Least resistance.',
      preset: KIT_PRESETS.insulation_least.text,
    }).optional(),
  },
  'Insulation test of a harness that is made up, coils unplugged and relay out.',
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
    fuse_holder: usable('holder', 'Fuse holder.'),
    relay: part('Relay.'),
    relay_socket: usable('holder', 'Socket of the relay.'),
    fuse_terminal: usable('terminal', 'Terminal of a wire in the fuse holder.'),
    relay_terminal: usable('terminal', 'Terminal of a wire on a load tab of the relay.'),
    splice: usable('splice', 'Splice of the feed.'),
    ground: usable('terminal', 'Common ground point of the return.'),
    coil_connector: part('Connector of a coil.'),
    control_contact: part('Contact in it for the wire that tells the coil when to fire.'),
    sleeve: usable('sleeve', 'Sleeve or conduit over the conductors.'),
    label: usable('label', 'Label or marker of a wire.'),
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
    delivered: word(DELIVERED, {
      description:
        'loose: wire and terminals apart, crimped where they are fitted. crimped: wires cut, with their terminals. assembled: the whole harness made up.',
      preset: KIT_PRESETS.delivered.text,
    }).optional(),
    allowance: percent(
      'Extra length of every piece, share of its length; trimmed when loose wire is fitted. 0 % when the kit is not delivered loose.',
      KIT_PRESETS.allowance.text,
    ).optional(),
    end_allowance: quantity(RANGES.short, {
      description:
        'Extra length at each end of a piece, for stripping and for one more crimp. 0 mm when the kit is not delivered loose.',
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
      description: 'Crimps that are pulled apart in each batch, for each terminal on each wire.',
      preset: KIT_PRESETS.samples.text,
    }).optional(),
    sample_length: quantity(RANGES.short, {
      description: 'Wire of one of them.',
      preset: KIT_PRESETS.sample_length.text,
    }).optional(),
    continuity: quantity(RANGES.through, {
      description: 'By a hand meter, its leads deducted: the most from end to end of a wire.',
      preset: KIT_PRESETS.continuity.text,
    }).optional(),
    isolation: quantity(RANGES.apart, {
      description: 'By a hand meter: the least between wires that are not joined, and to ground.',
      preset: KIT_PRESETS.isolation.text,
    }).optional(),
    insulation_test: insulation_test.optional(),
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
    trigger: map(
      {
        ...WIRE,
        fuse: quantity(RANGES.test_current, {
          description: 'Fuse of the original ignition wire: the wire to the relay must suit it.',
        }).optional(),
      },
      'The wire from the original ignition feed to the relay coil.',
    ).optional(),
    relay_ground: map(WIRE, 'The wire from the relay coil to ground.').optional(),
    pins: pins.optional(),
    fitting: fitting.optional(),
    spares: spares.optional(),
    parts: parts.optional(),
  },
  'What the papers of the kit need: allowances, colours, terminals. Nothing of it enters the calculation.',
);
