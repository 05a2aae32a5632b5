/** Schema of a shop's own file: its parts, its stock, its prices, and who it is. */
import type * as z from 'zod';
import { SENSES } from '../accuracy.ts';
import type { Sense } from '../design.ts';
import { line, list, name, quantity, spelled, text } from '../fields.ts';
import { FUSE_TYPES } from '../names.ts';
import { RANGES } from '../ranges.ts';
import { coil as coilOfDesign, map } from '../schema-coils.ts';
import { fuse as fuseOfDesign, insulation, relay as relayOfDesign, size } from '../schema-runs.ts';
import { readFuseType, readWord } from '../spellings.ts';
import { metres, pieces, readCurrency } from './price.ts';

/** Parts of one kind in one file. Arbitrary: a large shop's shelf. */
const MOST = 200;
const words = (description: string) => line(120, { description }).optional();
const mm = (description: string) => quantity(RANGES.short, { description }).optional();

const stock = words('Number under which the shop stocks or orders it.');
const from = words('Where the values come from: the maker’s sheet, a measurement.');
const called = (what: string) => name({ description: `Name of the ${what}, by which a design uses it.` });

/** Keys of a coil of a design that belong to the coil itself, and not to its place. */
const coilShape = coilOfDesign.omit({ use: true, temperature: true, series_resistor: true }).shape;

const coil = map(
  {
    name: called('coil'),
    ...coilShape,
    connector: words('Its connector.'),
    largest: size('Largest wire that its connector takes.').optional(),
    from,
    stock,
    price: pieces(),
  },
  'A coil that the shop knows.',
);

const wire = map(
  {
    size: size('Size of the conductor.'),
    insulation: insulation('Class or type of its insulation.'),
    colours: list(line(40, { description: 'A colour.' }), [1, 40], {
      of: 'colours',
      start: '[red, black]',
      description: 'Colours of its insulation that are there.',
    }).optional(),
    resistance: quantity(RANGES.per_length, {
      description: 'Measured resistance by length, in place of that of the size.',
    }).optional(),
    measured_at: quantity(RANGES.temperature, {
      description: 'Temperature of the wire when it was measured; 20 degC where it is left out.',
    }).optional(),
    from,
    stock,
    price: metres(),
  },
  'A wire on the shelf.',
);

const plainRating = quantity(RANGES.rating, { description: 'Rated current.' });
const typeTaken = `takes one of: ${FUSE_TYPES.join(', ')}`;
const fuseType = spelled(typeTaken, readFuseType, { description: 'Type of its standard.', enum: FUSE_TYPES });

const fuse = map(
  {
    name: called('fuse'),
    ...fuseOfDesign.omit({ use: true, ambient: true, from_source: true }).shape,
    type: fuseType,
    rating: plainRating,
    from,
    stock,
    price: pieces(),
  },
  'A fuse of the shop.',
);

const holder = map(
  {
    name: called('holder'),
    type: fuseType.optional(),
    rating: plainRating.optional(),
    largest: size('Largest wire that it takes.').optional(),
    stock,
    price: pieces(),
  },
  'A holder of a fuse, or the socket of a relay.',
);

const relay = map(
  {
    name: called('relay'),
    ...relayOfDesign.omit({ use: true, ambient: true, closes: true, trigger_drop: true }).shape,
    rating: plainRating,
    from,
    stock,
    price: pieces(),
  },
  'A relay of the shop.',
);

const crimpOf = map(
  {
    size: size('Size of the wire.'),
    height: quantity(RANGES.crimp, { description: 'Height of the crimp.' }).optional(),
    pull: quantity(RANGES.force, { description: 'Force that it must withstand.' }).optional(),
  },
  'A crimp of one size of wire.',
);

const takes = {
  smallest: size('Smallest wire that it takes.').optional(),
  largest: size('Largest wire that it takes.').optional(),
};

const terminal = map(
  {
    name: called('terminal'),
    ...takes,
    strip: mm('Length to which the wire is bared for it.'),
    crimps: list(crimpOf, [1, 20], {
      of: 'crimps',
      start: '{ size: 14 AWG, height: 1.6 mm, pull: 220 N }',
      description: 'Height and pull-out force of its crimp by size of wire.',
    }).optional(),
    tab: quantity(RANGES.tab, { description: 'Width of the flat tab that it takes.' }).optional(),
    stud: words('Stud that it goes on: M8, 5/16 in.'),
    tool: words('Name of the tool that crimps it.'),
    stock,
    price: pieces(),
  },
  'A terminal of the shop.',
);

const splice = map(
  { name: called('splice'), ...takes, strip: mm('Bared length.'), stock, price: pieces() },
  'A splice.',
);

const sleeve = map(
  {
    name: called('sleeve'),
    inside: quantity(RANGES.inside, { description: 'Inside diameter as it is bought.' }).optional(),
    stock,
    price: metres(),
  },
  'A sleeve, tube or conduit, sold by length.',
);

const label = map({ name: called('label'), stock, price: pieces() }, 'A label or marker of a wire.');

const tool = map(
  { name: called('tool'), of: words('What it is for.'), calibrated: words('Day of its last check.') },
  'A tool of the bench.',
);

const KINDS = Object.keys(SENSES) as Sense[];
const instrument = map(
  {
    name: called('instrument'),
    kind: spelled(`takes one of: ${KINDS.join(', ')}`, (given) => readWord(given, KINDS), {
      description: 'What it reads: meter, scope, clamp, ohmmeter, trace, log or camera.',
      enum: KINDS,
    }),
    accuracy: line(60, { description: 'Its error, as its maker states it: 0.5 % + 2 digits.' }),
    calibrated: words('Day of its last calibration.'),
  },
  'An instrument of the bench.',
);

const shop = map(
  {
    name: line(120, { description: 'Name of the shop.' }),
    address: list(line(120, { description: 'A line.' }), [1, 8], {
      of: 'lines',
      start: '[1 Main Street, Anytown]',
      description: 'Address, line by line.',
    }).optional(),
    contact: words('Telephone, mail or web address.'),
    logo: words('File of its logo, SVG or PNG, beside this file.'),
    revision: words('Revision of the papers: C, 2031-05.'),
    warranty: text({ description: 'Conditions of the warranty, as text.' }).optional(),
  },
  'Who makes the kit.',
);

const parts = <T extends z.ZodType>(member: T, of: string, start: string) =>
  list(member, [0, MOST], { of, start, description: `The ${of} of the shop.` }).optional();

export const ShopFile = map(
  {
    file: line(200, {
      description: 'Name of the file that this was taken from; coilfeed writes it into a workbook.',
    }).optional(),
    insulations: list(insulation('Class or type of the insulation.'), [1, 40], {
      of: 'insulations',
      start: '[C, TXL]',
      description:
        'Insulations whose wire is listed; coilfeed writes it into a workbook, which leaves out that of others.',
    }).optional(),
    shop: shop.optional(),
    currency: spelled('takes three letters: EUR, USD', readCurrency, {
      description: 'The one currency of all prices, three letters.',
    }).optional(),
    coils: parts(coil, 'coils', '{ name: race twenty, resistance: 0.42 ohm, inductance: 2.4 mH }'),
    wire: parts(wire, 'wires', '{ size: 14 AWG, insulation: TXL, price: 0.85 EUR/m }'),
    fuses: parts(fuse, 'fuses', '{ name: blade 20, type: C, rating: 20 A }'),
    holders: parts(holder, 'holders', '{ name: blade holder, type: C }'),
    relays: parts(relay, 'relays', '{ name: power 50, rating: 50 A }'),
    terminals: parts(terminal, 'terminals', '{ name: ring M8, largest: 8 AWG }'),
    splices: parts(splice, 'splices', '{ name: splice yellow, largest: 10 AWG }'),
    sleeves: parts(sleeve, 'sleeves', '{ name: braid 10, inside: 10 mm }'),
    labels: parts(label, 'labels', '{ name: wrap label }'),
    tools: parts(tool, 'tools', '{ name: ratchet crimper }'),
    instruments: parts(instrument, 'instruments', '{ name: bench meter, kind: meter, accuracy: 0.5 % }'),
  },
  'The parts, stock and prices of a shop, for all its designs.',
);

/** What the schema makes of a shop's file that it accepts; `shop.ts` says what is in it. */
export type ShopFile = z.output<typeof ShopFile>;
