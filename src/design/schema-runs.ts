/** Schema of the runs of a design: a run, its fuse and its relay. */
import * as z from 'zod';
import { PRESETS } from './defaults.ts';
import { type Bounds, count, name, quantity, quantityOrAuto, share, valueTaken, word } from './fields.ts';
import { CLOSES, FUSE_TYPES, INSULATIONS, readSize, SUPPRESSIONS, sizesTaken } from './names.ts';
import { AMPS, CELSIUS, MOST_COILS, map, VOLTS, VOLTS_OR_NONE } from './schema-coils.ts';

/** What stands in an install that is checked where nobody knows the part. */
export const UNKNOWN = 'unknown';

/** Points of a fuse's own curve: what the workings have rows for. */
export const MOST_CURVE_POINTS = 7;

const METRES: Bounds = { over: 0, to: 100 };
const SIZE_PATTERN = String.raw`\s*[\d.]+(/0)?\s*([Aa][Ww][Gg]|[Ss][Aa][Ee]|[Mm][Mm](2|²|\^2))\s*`;

/** A size of conductor, normalised: `8 AWG`, `8 SAE`, `6 mm2`. */
export const size = (description: string) =>
  z
    .string({ error: 'takes a size such as 8 AWG, 8 SAE or 6 mm2' })
    .transform((text, ctx): string => {
      const known = text.length > 40 ? null : readSize(text);
      if (known !== null) return known;
      ctx.issues.push({ code: 'custom', message: `takes one of: ${sizesTaken}`, input: text });
      return z.NEVER;
    })
    .meta({ description, pattern: `^${SIZE_PATTERN}$` });

const gauge = z
  .string({ error: 'takes auto, unknown, or a size such as 8 AWG, 8 SAE or 6 mm2' })
  .transform((text, ctx): string => {
    if (text === 'auto' || text === UNKNOWN) return text;
    const known = text.length > 40 ? null : readSize(text);
    if (known !== null) return known;
    ctx.issues.push({
      code: 'custom',
      message: `takes auto, unknown, or one of: ${sizesTaken}`,
      input: text,
    });
    return z.NEVER;
  })
  .meta({
    description:
      'Size of the conductor: auto, or a size such as 8 AWG, 8 SAE or 6 mm2; unknown in an install that is checked.',
    pattern: `^(auto|unknown|${SIZE_PATTERN})$`,
  });

/** SF30 is often written with a gap. */
const fuseType = z
  .string({ error: `takes one of: ${FUSE_TYPES.join(', ')}, unknown` })
  .transform((text, ctx) => {
    if (text === UNKNOWN) return UNKNOWN;
    const known = FUSE_TYPES.find((type) => type === (text === 'SF 30' ? 'SF30' : text));
    if (known) return known;
    ctx.issues.push({
      code: 'custom',
      message: `takes one of: ${FUSE_TYPES.join(', ')}, unknown`,
      input: text,
    });
    return z.NEVER;
  })
  .meta({
    description:
      'C: medium blade. F: miniature blade. E: high-current blade (ISO 8820-3). SF30: bolted strip (ISO 8820-5). unknown in an install that is checked.',
    enum: [...FUSE_TYPES, 'SF 30', UNKNOWN],
  });

const ambientOfRun = 'left out: the ambient of the run.';

/** What a part carries by temperature: a list of rows of one map. */
const byHeat = <S extends z.ZodRawShape>(row: S, example: string, description: string) =>
  z
    .array(
      map({ at: quantity('degC', CELSIUS, { description: 'Ambient temperature.' }), ...row }, 'A row.'),
      {
        error: `takes a list of rows: ${example}`,
      },
    )
    .min(2, { error: `takes at least two rows: ${example}` })
    .max(6, { error: 'takes at most 6 rows' })
    .optional()
    .meta({
      description: `${description} Straight between the rows, held before the first; nothing beyond the last.`,
    });

const fuse = map(
  {
    type: fuseType,
    rating: quantityOrAuto('A', AMPS, { description: 'Rated current.' }),
    ambient: quantity('degC', CELSIUS, { description: `Ambient of the fuse; ${ambientOfRun}` }).optional(),
    from_source: quantity(
      'm',
      { from: 0, to: 100 },
      {
        description: 'Length of conductor between the source and the fuse.',
      },
    ).optional(),
    curve: z
      .array(
        map(
          {
            current: quantity('A', { over: 0, to: 1e5 }, { description: 'Current.' }),
            within: quantity(
              's',
              { over: 0, to: 1e6 },
              { description: 'Longest total clearing time at that current.' },
            ),
          },
          'One point of the curve.',
        ),
        { error: 'takes a list of points: [{current: 40 A, within: 5 s}]' },
      )
      .min(1, { error: 'takes at least one point' })
      .max(MOST_CURVE_POINTS, { error: `takes at most ${MOST_CURVE_POINTS} points` })
      .optional()
      .meta({
        description:
          'The maker’s own curve: longest total clearing times, currents rising, times falling. In place of the limits of the type’s standard.',
      }),
    melting: quantity(
      'A2s',
      { over: 0, to: 1e9 },
      { description: 'The maker’s melting energy I²t.' },
    ).optional(),
    voltage: quantity('V', VOLTS, {
      description: 'Rated voltage, 32 V or 58 V; left out: the lower one.',
    }).optional(),
    rerating: byHeat(
      { share: share({ description: 'What is left of the rating.' }) },
      '[{at: 25 degC, share: 100 %}, {at: 85 degC, share: 75 %}]',
      'Rating by temperature, of the maker; left out: 0.45 % less for each kelvin above 25 degC.',
    ),
  },
  'A fuse at the start of this run. Feed runs only.',
);

const relay = map(
  {
    rating: quantityOrAuto('A', AMPS, { description: 'Rated contact current.' }),
    rated_at: quantity('degC', CELSIUS, { description: 'Ambient for which the rating is given.' }).optional(),
    derating: byHeat(
      { rating: quantity('A', AMPS, { description: 'What the contact carries there.' }) },
      '[{at: 23 degC, rating: 50 A}, {at: 85 degC, rating: 35 A}]',
      'Contact current by temperature, of the maker; left out: 70 % at 85 degC and 30 % at 125 degC of the rating at 23 degC.',
    ),
    coil: quantity(
      'ohm',
      { over: 0, to: 100_000 },
      { description: 'Coil resistance at 20 degC.' },
    ).optional(),
    pull_in: quantity('V', VOLTS, {
      description:
        'Voltage at which it surely closes, coil at 20 degC; left out: 8.0 V up to 16 V of supply, 16.0 V up to 32 V.',
    }).optional(),
    drop_out: quantity('V', VOLTS_OR_NONE, {
      description: 'Voltage at which it may open when the supply falls, coil at 20 degC, at most.',
    }).optional(),
    coil_max: quantity('V', VOLTS, {
      description:
        'Largest continuous voltage of the coil; left out: 16 V of a 12 V relay, 32 V of a 24 V one.',
    }).optional(),
    closes: word(CLOSES, {
      description:
        'When it must close. `before cranking`: with the ignition switched on, at the resting battery.',
      preset: PRESETS.closes.text,
    }).optional(),
    contact: quantity(
      'ohm',
      { from: 0, to: 1 },
      {
        description: 'Contact resistance.',
        preset: PRESETS.contact.text,
      },
    ).optional(),
    ambient: quantity('degC', CELSIUS, { description: `Ambient of the relay; ${ambientOfRun}` }).optional(),
    coil_rise: quantity(
      'K',
      { from: 0, to: 200 },
      {
        description: 'Rise of the energised relay coil above its ambient, a difference in kelvins.',
        preset: PRESETS.coil_rise.text,
      },
    ).optional(),
    suppression: word(SUPPRESSIONS, { description: 'What takes up the spike of the relay coil.' }).optional(),
    trigger_drop: quantity('V', VOLTS_OR_NONE, {
      description: 'Voltage lost in the wire that triggers the relay.',
      preset: PRESETS.trigger_drop.text,
    }).optional(),
    tab: quantity(
      'mm',
      { over: 0, to: 50 },
      { description: 'Width of the flat tabs of the contacts.' },
    ).optional(),
    make: quantity('A', AMPS, {
      description: 'Largest current that the contact may make, into the capacitors of the harness.',
    }).optional(),
  },
  'A relay contact in this run. Feed runs only.',
);

/** Ids are text; a cylinder number may be written as a number. */
export const coilId = z
  .union(
    [
      name({ description: 'Id of a coil.' }),
      count(1, 99, { description: 'Id of a coil.' }).transform(String),
    ],
    {
      error: 'takes the id of a coil',
    },
  )
  .meta({
    description: 'Id of a coil: the cylinder number, a+b for a pair, 1 for a single coil, or the listed id.',
  });

const length = quantity('m', METRES, { description: 'Length of one conductor, one way.' });

const bundle = z
  .union(
    [
      count(1, 200, { description: 'Current-carrying conductors laid together, this one counted.' }),
      z.literal(UNKNOWN),
    ],
    { error: 'takes a whole number, 1 to 200, or unknown' },
  )
  .meta({
    description:
      'Current-carrying conductors laid together, this one counted; unknown in an install that is checked.',
    default: Number(PRESETS.bundle.text),
  });

export const run = map(
  {
    run: name({ description: 'Name of the run.' }),
    carries: z
      .union(
        [
          z.enum(['all', 'each'], { error: 'takes all, each, or a list of coil ids' }),
          z
            .array(coilId, { error: 'takes all, each, or a list of coil ids' })
            .min(1, { error: 'takes at least one coil id' })
            .max(MOST_COILS, { error: `takes at most ${MOST_COILS} coil ids` }),
        ],
        { error: 'takes all, each, or a list of coil ids' },
      )
      .meta({
        description:
          'all: one conductor for all coils. each: one conductor for each coil. A list: one conductor for those coils.',
      }),
    length: z
      .union(
        [length, z.record(z.string(), length, { error: 'takes a length for each coil: {"1": 0.3 m}' })],
        {
          error: `${valueTaken('m')}; with carries: each also one for each coil: {"1": 0.3 m}`,
        },
      )
      .meta({ description: 'Length, one way. With `carries: each` also a map from coil id to length.' }),
    ambient: quantity('degC', CELSIUS, { description: 'Ambient temperature of the run.' }),
    insulation: word(INSULATIONS, {
      description: 'Temperature class of ISO 6722-1, A to H, or a type of SAE J1128 or J1127.',
    }),
    bundle: bundle.optional(),
    gauge,
    joints: count(0, 100, {
      description: 'Crimps in series, limits.joint_resistance each.',
      preset: PRESETS.joints.text,
    }).optional(),
    contacts: count(0, 100, {
      description:
        'Pairs of plug contacts in series, limits.contact_resistance each; the connector of a coil is one.',
      preset: PRESETS.contacts.text,
    }).optional(),
    capacitor: quantity(
      'uF',
      { over: 0, to: 1e6 },
      { description: 'Capacitor at the end of this run.' },
    ).optional(),
    fuse: fuse.optional(),
    relay: z
      .union([relay, z.literal(UNKNOWN)], { error: 'takes a map, or unknown' })
      .optional()
      .meta({
        description: 'A relay contact in this run, feed runs only; unknown in an install that is checked.',
      }),
  },
  'A run: one conductor, or one for each coil, between two places.',
);
