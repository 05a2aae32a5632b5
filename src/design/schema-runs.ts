/** Schema of the runs of a design: a run, its fuse and its relay. */
import * as z from 'zod';
import { PRESETS } from './defaults.ts';
import type { FuseType } from './design.ts';
import { count, list, name, notOne, quantity, quantityOrAuto, share, spelled, word } from './fields.ts';
import { CLOSES, FUSE_TYPES, INSULATIONS, MATERIALS, SUPPRESSIONS } from './names.ts';
import { RANGES } from './ranges.ts';
import { MOST_COILS, map, use } from './schema-coils.ts';
import {
  fuseTaken,
  insulationTaken,
  readFuseType,
  readInsulation,
  readSize,
  readWord,
  sizeTaken,
} from './spellings.ts';

/** What stands in an install that is checked where nobody knows the part. */
export const UNKNOWN = 'unknown';

/** Points of a fuse's own curve: what the workings have rows for. */
export const MOST_CURVE_POINTS = 7;

const WORDS = ['auto', UNKNOWN] as const;
const SIZE_PATTERN = String.raw`\s*(\S.*)?\d.*([Aa][Ww][Gg]|[Ss][Aa][Ee]|[Gg][Aa].*|[Mm][Mm].*)\s*|\s*([Aa][Ww][Gg]|[Ss][Aa][Ee]|#)\s*\d.*`;

/** A size of conductor, normalised: `8 AWG`, `8 SAE`, `6 mm2`. */
export const size = (description: string) =>
  spelled(sizeTaken, readSize, { description, pattern: `^(${SIZE_PATTERN})$` });

const gauge = spelled(
  (input) => `${sizeTaken(input)}${/\?$/.test(sizeTaken(input)) ? ' Or' : '; or'} auto, unknown`,
  (text): string | null => readWord(text, WORDS) ?? readSize(text),
  {
    description:
      'Size of the conductor: auto, or a size such as 8 AWG, 8 SAE or 6 mm2; unknown in an install that is checked.',
    pattern: `^([Aa]uto|[Uu]nknown|${SIZE_PATTERN})$`,
  },
);

export const insulation = (description: string) =>
  spelled(insulationTaken, readInsulation, { description, enum: INSULATIONS });

const fuseType = spelled(
  fuseTaken,
  (text): FuseType | typeof UNKNOWN | null => readWord(text, [UNKNOWN]) ?? readFuseType(text),
  {
    description:
      'C: medium blade. F: miniature blade. E: high-current blade (ISO 8820-3). SF30: bolted strip (ISO 8820-5). unknown in an install that is checked.',
    enum: [...FUSE_TYPES, 'SF 30', UNKNOWN],
  },
);

const ambientOfRun = 'left out: the ambient of the run.';

/** What a part carries by temperature: a list of rows of one map. */
const byHeat = <S extends z.ZodRawShape>(row: S, start: string, description: string) =>
  list(
    map({ at: quantity(RANGES.temperature, { description: 'Ambient temperature.' }), ...row }, 'A row.'),
    [2, 6],
    {
      of: 'rows',
      start,
      description: `${description} Straight between the rows, held before the first; nothing beyond the last.`,
    },
  ).optional();

const curve = list(
  map(
    {
      current: quantity(RANGES.fault_current, { description: 'Current.' }),
      within: quantity(RANGES.clearing, { description: 'Longest total clearing time at that current.' }),
    },
    'One point of the curve.',
  ),
  [1, MOST_CURVE_POINTS],
  {
    of: 'points',
    start: '{ current: 40 A, within: 5 s }',
    description:
      'The maker’s own curve: longest total clearing times, currents rising, times falling. In place of the limits of the type’s standard.',
  },
);

export const fuse = map(
  {
    type: fuseType,
    rating: quantityOrAuto(RANGES.rating, { description: 'Rated current.' }),
    ambient: quantity(RANGES.temperature, { description: `Ambient of the fuse; ${ambientOfRun}` }).optional(),
    from_source: quantity(RANGES.place, {
      description: 'Length of conductor between the source and the fuse.',
    }).optional(),
    curve: curve.optional(),
    melting: quantity(RANGES.melting, { description: 'The maker’s melting energy I²t.' }).optional(),
    voltage: quantity(RANGES.supply, {
      description: 'Rated voltage, 32 V or 58 V; left out: the lower one.',
    }).optional(),
    rerating: byHeat(
      { share: share(RANGES.share, { description: 'What is left of the rating.' }) },
      '{ at: 25 degC, share: 100 % }',
      'Rating by temperature, of the maker; left out: 0.45 % less for each kelvin above 25 degC.',
    ),
    use: use('fuse'),
  },
  'A fuse at the start of this run. Feed runs only.',
);

export const relay = map(
  {
    rating: quantityOrAuto(RANGES.rating, { description: 'Rated contact current.' }),
    rated_at: quantity(RANGES.temperature, {
      description: 'Ambient for which the rating is given.',
    }).optional(),
    derating: byHeat(
      { rating: quantity(RANGES.rating, { description: 'What the contact carries there.' }) },
      '{ at: 23 degC, rating: 50 A }',
      'Contact current by temperature, of the maker; left out: 70 % at 85 degC and 30 % at 125 degC of the rating at 23 degC.',
    ),
    coil: quantity(RANGES.relay_coil, { description: 'Coil resistance at 20 degC.' }).optional(),
    pull_in: quantity(RANGES.relay_voltage, {
      description:
        'Voltage at which it surely closes, coil at 20 degC; left out: 8.0 V up to 16 V of supply, 16.0 V up to 32 V.',
    }).optional(),
    drop_out: quantity(RANGES.relay_voltage, {
      description: 'Voltage at which it may open when the supply falls, coil at 20 degC, at most.',
    }).optional(),
    coil_max: quantity(RANGES.relay_voltage, {
      description:
        'Largest continuous voltage of the coil; left out: 16 V of a 12 V relay, 32 V of a 24 V one.',
    }).optional(),
    closes: word(CLOSES, {
      description:
        'When it must close. `before cranking`: with the ignition switched on, at the resting battery.',
      preset: PRESETS.closes.text,
    }).optional(),
    contact: quantity(RANGES.joint, {
      description: 'Contact resistance.',
      preset: PRESETS.contact.text,
    }).optional(),
    ambient: quantity(RANGES.temperature, {
      description: `Ambient of the relay; ${ambientOfRun}`,
    }).optional(),
    coil_rise: quantity(RANGES.rise, {
      description: 'Rise of the energised relay coil above its ambient, a difference in kelvins.',
      preset: PRESETS.coil_rise.text,
    }).optional(),
    suppression: word(SUPPRESSIONS, { description: 'What takes up the spike of the relay coil.' }).optional(),
    trigger_drop: quantity(RANGES.lost, {
      description: 'Voltage lost in the wire that triggers the relay.',
      preset: PRESETS.trigger_drop.text,
    }).optional(),
    tab: quantity(RANGES.tab, { description: 'Width of the flat tabs of the contacts.' }).optional(),
    make: quantity(RANGES.make_current, {
      description: 'Largest current that the contact may make, into the capacitors of the harness.',
    }).optional(),
    use: use('relay'),
  },
  'A relay contact in this run. Feed runs only.',
);

/** Ids are text; a cylinder number may be written as a number. */
export const coilId = z
  .union(
    [
      name({ description: 'Id of a coil.' }),
      count(RANGES.coil_number, { description: 'Id of a coil.' }).transform(String),
    ],
    {
      error: 'takes the id of a coil',
    },
  )
  .meta({
    description: 'Id of a coil: the cylinder number, a+b for a pair, 1 for a single coil, or the listed id.',
  });

const length = quantity(RANGES.length, { description: 'Length of one conductor, one way.' });

const unknownPart = word([UNKNOWN], { description: 'Not known, in an install that is checked.' });

const bundle = z
  .union(
    [
      count(RANGES.bundle, {
        description: 'Current-carrying conductors bundled together, this one included.',
      }),
      unknownPart,
    ],
    { error: `takes a whole number, ${RANGES.bundle.text}, or unknown` },
  )
  .meta({
    description:
      'Current-carrying conductors bundled together, this one included; unknown in an install that is checked.',
    default: Number(PRESETS.bundle.text),
  });

export const run = map(
  {
    run: name({ description: 'Name of the run.' }),
    carries: z
      .union(
        [
          word(['all', 'each'], { description: 'All coils by one conductor, or each by its own.' }),
          list(coilId, [1, MOST_COILS], {
            of: 'coil ids',
            start: '[1, 3]',
            description: 'Coils of one conductor.',
          }),
        ],
        { error: 'takes all, each, or a list of coil ids: [1, 3]' },
      )
      .meta({
        description:
          'all: one conductor for all coils. each: one conductor for each coil. A list: one conductor for those coils.',
      }),
    length: z
      .union(
        [length, z.record(z.string(), length, { error: 'takes a length for each coil: {"1": 0.3 m}' })],
        { error: notOne(RANGES.length, 'with carries: each also one for each coil: {"1": 0.3 m}') },
      )
      .meta({ description: 'Length, one way. With `carries: each` also a map from coil id to length.' }),
    ambient: quantity(RANGES.temperature, { description: 'Ambient temperature of the run.' }),
    insulation: insulation('Temperature class of ISO 6722-1, A to H, or a type of SAE J1128 or J1127.'),
    bundle: bundle.optional(),
    gauge,
    smallest: size('Smallest size that may be chosen for this run; left out: sizes.smallest.').optional(),
    largest: size('Largest size that may be chosen for this run: what its terminals take.').optional(),
    like: name({
      description:
        'Name of the run whose size this one takes; none for a size of its own. Left out: runs that lie side by side and are made alike take one size.',
    }).optional(),
    material: word(MATERIALS, {
      description: 'What the insulation is made of, where its class does not say: PVC or cross-linked.',
    }).optional(),
    conductors: count(RANGES.parallel, {
      description: 'Conductors in parallel, each with its share of the current.',
      preset: '1',
    }).optional(),
    also: quantity(RANGES.load, { description: 'Another steady load in this run.' }).optional(),
    joints: count(RANGES.joints, {
      description: 'Crimps in series, limits.joint_resistance each.',
      preset: PRESETS.joints.text,
    }).optional(),
    contacts: count(RANGES.joints, {
      description:
        'Pairs of plug contacts in series, limits.contact_resistance each; the connector of a coil is one.',
      preset: PRESETS.contacts.text,
    }).optional(),
    capacitor: quantity(RANGES.capacitor, { description: 'Capacitor at the end of this run.' }).optional(),
    fuse: fuse.optional(),
    relay: z
      .union([relay, unknownPart], {
        error: `takes a map with the keys: ${Object.keys(relay.shape).join(', ')}; or unknown`,
      })
      .optional()
      .meta({
        description: 'A relay contact in this run, feed runs only; unknown in an install that is checked.',
      }),
  },
  'A run: one conductor, or one for each coil, between two places.',
);
