/** A first design from a few answers, and a shop's file to start from. */
import { SAE_TYPES } from '../design/names.ts';
import { typesOffered } from '../design/shop/fuses.ts';
import type { Shop } from '../design/shop/shop.ts';
import { seriesOf } from '../design/spellings.ts';
import { starter } from '../design/starter.ts';

/** What a first design is asked for. */
export interface Asked {
  readonly cylinders: number;
  readonly stroke: 2 | 4;
  readonly layout: string;
  /** Cylinder numbers with hyphens; null: the first of the usual ones. */
  readonly order: string | null;
  /** Name of the shop's file as the design names it, and of the coil in it. */
  readonly shop: string | null;
  readonly coil: string | null;
  /** Dwell of the coil's bench test, as it is written. */
  readonly dwell: string | null;
  /** Its parts, where it lists any. */
  readonly has: Pick<Shop, 'coils' | 'wire' | 'fuses' | 'relays'> | null;
}

type Swap = readonly [find: RegExp, put: string];

/** What the starter takes, where the shop has it; else the first that the shop has. Each says that it is the shop's. */
function fromShelf({ coils = [], wire = [], fuses, relays = [] }: NonNullable<Asked['has']>): Swap[] {
  const types = typesOffered({ fuses }) ?? [];
  const type = types.includes('C') ? 'C' : types[0];
  const insulation = (wire.find((one) => one.insulation === 'C') ?? wire[0])?.insulation;
  const own = wire.filter((one) => one.insulation === insulation);
  // A type says by which numbers it is sold.
  const series = SAE_TYPES.includes(insulation ?? '') ? 'SAE' : seriesOf(own[0]?.size ?? '18 AWG');
  return [
    ...(type === undefined
      ? []
      : [
          [
            /^ {4}# Types: (?:.*\n) {4}#.*\n {4}fuse: \{ type: C(.*)$/m,
            `    # auto: the smallest rating that serves among the shop's fuses of type ${type}\n    fuse: { type: ${type}$1`,
          ] as const,
        ]),
    ...(relays.length === 0
      ? []
      : [
          [
            /^ {4}relay:.*\n(?: {6}.*\n)+/m,
            "    relay: { rating: auto, ambient: 60 degC }  # the smallest of the shop's relays that serves\n",
          ] as const,
        ]),
    ...(coils.length === 0
      ? []
      : [
          [
            /^(coil:.*\n)/m,
            `$1  # In place of all this, a coil of the shop: use: ${coils.map(({ name }) => JSON.stringify(name)).join(' or ')}\n`,
          ] as const,
        ]),
    ...(insulation === undefined
      ? []
      : [
          [
            /^# gauge: auto .*\nsizes: .*$/m,
            `# gauge: auto chooses among the shop's wire of this series, with the insulation of the run.\nsizes: { series: ${series}, aim: copper }   # aim: price for the cheapest that serves`,
          ] as const,
          [
            /^( {4}insulation: )C.*\n((?: {4}(?:material|bundle).*\n)*? {4}gauge: auto)/gm,
            `$1${insulation}           # of the shop's wire\n$2`,
          ] as const,
          // A type says what it is made of.
          ...(insulation.length > 1 ? [[/^ {4}material: .*\n/gm, ''] as const] : []),
        ]),
  ];
}

/** Layouts that need no more than the firing order. */
export const LAYOUTS_ASKED = [
  'coil_per_cylinder',
  'wasted_coil_per_cylinder',
  'coil_per_pair',
  'single_coil',
] as const;

/** Usual firing orders by number of cylinders, common practice; which one an engine has is stamped on it or in its manual. */
export const USUAL_ORDERS: Readonly<Record<number, readonly string[]>> = {
  1: ['1'],
  2: ['1-2'],
  3: ['1-3-2', '1-2-3'],
  4: ['1-3-4-2', '1-2-4-3', '1-3-2-4', '1-4-3-2'],
  5: ['1-2-4-5-3'],
  6: ['1-5-3-6-2-4', '1-4-2-5-3-6', '1-2-3-4-5-6', '1-6-5-4-3-2'],
  8: ['1-8-4-3-6-5-7-2', '1-5-4-2-6-3-7-8', '1-3-7-2-6-5-4-8', '1-5-4-8-6-3-7-2'],
  10: ['1-6-5-10-2-7-3-8-4-9', '1-10-9-4-3-6-5-8-7-2'],
  12: ['1-7-5-11-3-9-6-12-2-8-4-10', '1-12-5-8-3-10-6-7-2-11-4-9'],
};

/** The order that is taken where none is given: the first usual one, else in turn. */
export const orderFor = (cylinders: number): string =>
  USUAL_ORDERS[cylinders]?.[0] ?? Array.from({ length: cylinders }, (_, i) => i + 1).join('-');

/** One coil for all charges at every firing: it must be charged between two of them. */
const SINGLE = { rpm: 6000, share: 0.6 };

/** Longest dwell of a single coil up to the limiter [ms], so that a share of the interval is left. */
const singleDwell = (cylinders: number, stroke: number): number =>
  Number(((SINGLE.share * 60_000 * (stroke / 2)) / SINGLE.rpm / cylinders).toPrecision(2));

/** The starter with these answers. It is checked by whoever writes it. */
export function firstDesign({ cylinders, stroke, layout, order, shop, coil, dwell, has }: Asked): string {
  const usual = USUAL_ORDERS[cylinders] ?? [];
  const single = layout === 'single_coil';
  const asked = dwell ?? (single ? `${Math.min(2.8, singleDwell(cylinders, stroke))} ms` : '2.8 ms');
  const swaps: readonly Swap[] = [
    ...(has === null ? [] : fromShelf(has)),
    [
      /^title: .*$/m,
      `title: ${cylinders === 1 ? '1 cylinder' : `${cylinders} cylinders`}, ${layout.replaceAll('_', ' ')}${shop === null ? '' : `\nshop: ${shop}`}`,
    ],
    [/^ {2}cylinders: .*$/m, `  cylinders: ${cylinders}`],
    [/^ {2}stroke: .*$/m, `  stroke: ${stroke}`],
    [
      /^ {2}firing_order: .*$/m,
      `  firing_order: ${order ?? (cylinders === 1 ? '[1]' : orderFor(cylinders))}${
        usual.length === 0
          ? cylinders < 3
            ? ''
            : `\n  # In turn; no order is usual with ${cylinders}: your engine's is in its manual.`
          : `\n  # Usual with ${cylinders}: ${usual.join(', ')} (common practice); your engine's is in its manual.`
      }`,
    ],
    [
      /^ {2}# firing_angles: .*$/m,
      '  # firing_angles: crank degrees in that order; leave it out for even firing',
    ],
    [/^ {2}layout: .*$/m, `  layout: ${layout}`],
    [/^ {2}dwell: .*$/m, `  dwell: ${asked}`],
    // One length for every coil, whatever it is called.
    [/^ {4}length: \{.*\}$/m, '    length: 0.5 m            # or one for each coil: { "1": 0.6 m, … }'],
    ...(single
      ? [
          [/^(.*name: limiter, rpm: )\S+( rpm.*)$/m, `$1${SINGLE.rpm}$2`] as const,
          [/from: 1000 rpm, to: 7000 rpm/, `from: 1000 rpm, to: ${SINGLE.rpm} rpm`] as const,
        ]
      : []),
    ...(coil === null
      ? []
      : [
          [
            /^coil:.*\n(?: .*\n)+/m,
            `coil:\n  use: ${JSON.stringify(coil)}\n  temperature: 20 degC      # a cold coil draws most\n`,
          ] as const,
        ]),
  ];
  return swaps.reduce((text, [find, put]) => text.replace(find, put), starter());
}

/** A shop's file to start from: it can be read as it is, and every part in it is invented. */
export const shopStarter =
  (): string => `# A shop's own file: parts, stock and prices for all its designs. docs/shop.md has every key.
# Everything here is invented: replace it with what lies on your shelf and stands in your data sheets.
shop:
  name: Your shop
  address: [1 Main Street, Anytown]
  contact: 555-0100
  # logo: logo.svg          # beside this file
  revision: A
  warranty: Say here what you warrant, and for how long.

currency: EUR               # of all prices

coils:
  - name: example coil
    resistance: 0.5 ohm     # primary, at 20 degC
    # Give exactly one of inductance, test_point and peak.
    test_point: { supply: 13.5 V, dwell: 2.8 ms, peak: 9.5 A }
    driver_drop: 1.0 V
    connector: four pins
    largest: 12 AWG         # largest wire that the connector takes
    from: bench test of 2031-05-28
    price: 60 EUR

wire:                       # gauge: auto then chooses from these alone
${WIRE.map(([size, price]) => `  - { size: ${size}, insulation: C, colours: [red, black], price: ${price} EUR/m }`).join('\n')}

fuses:                      # rating: auto then chooses from these alone
${FUSES.map((amps) => `  - { name: blade ${amps}, type: C, rating: ${amps} A, price: 40 EUR/100 }`).join('\n')}

relays:
  - name: power 40
    rating: 40 A
    rated_at: 85 degC
    coil: 90 ohm
    pull_in: 7.2 V
    drop_out: 1.2 V
    coil_max: 16 V
    contact: 5 mohm
    coil_rise: 20 K
    suppression: resistor
    tab: 6.3 mm
    price: 6.50 EUR

terminals:
  - name: ring M8
    smallest: 12 AWG
    largest: 8 AWG
    strip: 9 mm
    crimps:
      - { size: 12 AWG, height: 1.8 mm, pull: 310 N }
      - { size: 10 AWG, height: 2.2 mm, pull: 360 N }
      - { size: 8 AWG, height: 2.8 mm, pull: 400 N }
    stud: M8
    price: 0.40 EUR

instruments:
  - { name: bench meter, kind: meter, accuracy: 0.5 % + 2 digits }
`;

const WIRE = [
  ['18 AWG', '0.35'],
  ['16 AWG', '0.45'],
  ['14 AWG', '0.65'],
  ['12 AWG', '0.95'],
  ['10 AWG', '1.40'],
  ['8 AWG', '2.30'],
  ['6 AWG', '3.60'],
  ['4 AWG', '5.50'],
] as const;
const FUSES = [5, 7.5, 10, 15, 20, 25, 30, 40] as const;
