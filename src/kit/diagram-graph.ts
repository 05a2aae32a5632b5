/** The harness as a graph for the layout: sizes of symbols and labels, and who is joined to whom. All in mm. */
import type { Suppression } from '../design/design.ts';
import type { Evaluation } from '../engine/evaluate.ts';
import { printQuantity } from '../views/print.ts';
import { onPaper } from './lengths.ts';
import type { Harness, Piece, Spot } from './places.ts';
import { printedSize } from './terminals.ts';
import { textWidth, wrapText } from './text-size.ts';

/** Height of the letters [mm], that is 8.5 points. */
export const FONT = 3;
export const LINE = 3.5;
/** Room for a terminal number inside a symbol [mm]. */
export const TERMINAL = 4.5;
/** Widest line [mm]: one that leaves most lines whole, and a narrow one for a harness of many parts in a row. */
const WIDE = 34;
const NARROW = 25;
const LEAST = 17.6;
/** Ways to break lines: of what stands alone in its layer, and of what stands there once for each coil. */
export interface Rooms {
  readonly alone: number;
  /** Of what stands upright before the first splice, where that is not as wide as the rest. */
  readonly head?: number;
  readonly each: number;
  /** Whether lengths stand on the wires of single coils, and not in the table alone. */
  readonly lengths: boolean;
}
export const ROOMS: readonly Rooms[] = [
  { alone: WIDE, each: WIDE, lengths: true },
  { alone: NARROW, each: WIDE, lengths: true },
  { alone: WIDE, each: WIDE, lengths: false },
  { alone: NARROW, each: WIDE, lengths: false },
  { alone: LEAST, each: WIDE, lengths: false },
  { alone: NARROW, each: NARROW, lengths: true },
  { alone: NARROW, each: NARROW, lengths: false },
];
/** Where letters would be too small otherwise: lines break more often; a length such as `(23.62 in)` stays whole. */
export const TIGHT: Rooms = { alone: 15.5, head: 28, each: WIDE, lengths: false };

/** Wires and parts that stand upright within one shape. */
export interface Inner {
  /** Wires with the left edge of their labels. */
  readonly wires: readonly {
    readonly edge: Edge;
    readonly way: readonly { readonly x: number; readonly y: number }[];
    readonly label: { readonly x: number; readonly y: number };
  }[];
  readonly parts: readonly { readonly shape: Shape; readonly x: number; readonly y: number }[];
}

export interface Shape {
  readonly spot: Spot;
  readonly width: number;
  readonly height: number;
  /** Height at which the wires meet the symbol: the feed, and the relay's coil. */
  readonly at: number;
  readonly below: number;
  readonly lines: readonly string[];
  /** Wires and parts that are folded into it. */
  readonly inner?: Inner;
  /** Drawn upright, in what is folded. */
  readonly upright?: boolean;
}

export const lines = (text: string, room: number): string[] => wrapText(text, room / FONT);
/** The first line is bold, and wider by so much. */
export const BOLD = 1.13;
export const widest = (texts: readonly string[]): number =>
  Math.max(0, ...texts.map((t, i) => textWidth(t) * FONT * (i === 0 ? BOLD : 1)));

/** `10 AWG C`, `6 mm² TXL` */
const sizeOf = ({ gauge, insulation }: Piece): string =>
  [printedSize(gauge), insulation].filter(Boolean).join(' ');

/** What stands at a wire: its name, its size with the colour, its length. */
export type Labels = (piece: Piece, e: Evaluation, room: number, lengths: boolean) => string[];

const wiring: Labels = (piece, e, room, lengths) => [
  ...lines(piece.id, room),
  ...lines([sizeOf(piece), piece.colour].filter(Boolean).join(', '), room),
  ...(lengths
    ? lines(piece.length === null ? 'length ____' : onPaper(piece.length, 'piece', e.design.kit.units), room)
    : []),
];

const SUPPRESSED: Readonly<Record<Suppression, string>> = {
  none: 'no suppression',
  diode: 'diode: + to 86',
  resistor: 'resistor',
  diode_zener: 'diode + zener: + to 86',
};

function wordsOf(spot: Spot, e: Evaluation, room: number): string[] {
  const run = e.design.wires[spot.wire ?? -1]?.run ?? 0;
  const of = e.design.runs[run];
  switch (spot.kind) {
    case 'plus':
      return ['BAT+', 'behind any', 'master switch'];
    case 'minus':
      return ['BAT−', 'battery −'];
    case 'fuse':
      return [
        spot.id,
        printQuantity('fuse_rating', e.number('fuse_rating', { run })),
        `type ${of?.fuse?.type}`,
      ];
    case 'relay':
      return [
        spot.id,
        `${printQuantity('relay_rating', e.number('relay_rating', { run }))} relay`,
        ...(of?.relay?.suppression ? lines(SUPPRESSED[of.relay.suppression], room) : ['suppression ____']),
      ];
    case 'coil':
      return lines(spot.id, room);
    case 'trigger':
      return [spot.id, 'original ignition', 'wire, kill switch'];
    case 'chassis':
      return [spot.id, 'engine ground'];
    default:
      return [spot.id];
  }
}

/** Size of a symbol with its words. */
function symbolOf(spot: Spot, e: Evaluation, room: number): Shape {
  const texts = wordsOf(spot, e, room);
  const width = widest(texts);
  const height = texts.length * LINE;
  const made = (w: number, h: number, at: number, below = at, beside = 0): Shape => ({
    spot,
    width: Math.max(w, width + 2 + beside),
    height: h,
    at,
    below,
    lines: texts,
  });
  switch (spot.kind) {
    case 'fuse':
      return made(12, 5.5 + height, 3);
    case 'relay':
      return made(30, 20 + height, 5, 15);
    case 'splice':
    case 'ground':
      return made(6, 5 + height, height + 3);
    case 'chassis':
      return made(10, 7 + height, 2);
    default: {
      const half = Math.ceil((height + 3) / 2);
      return made(12, 2 * half, half, undefined, 2 * TERMINAL);
    }
  }
}

/** A wire, or ends that meet without one. */
export interface Edge {
  readonly from: Spot;
  readonly to: Spot;
  /** Name of its piece. */
  readonly piece: string;
  /** What stands above it. */
  readonly lines: readonly string[];
  /** Index of the conductor; null for the wires of a relay's coil, and where there is none. */
  readonly wire: number | null;
  /** To or from the coil of a relay. */
  readonly control: boolean;
  /** The way back is not known. */
  readonly open: boolean;
}

export interface Graph {
  readonly symbols: ReadonlyMap<Spot, Shape>;
  readonly edges: readonly Edge[];
  /** Where the layout starts; the battery where nothing is folded. */
  readonly start?: Spot;
}

/** Groups of coils, each on a conductor of its own; none when the groups are not apart from each other. */
export function banks(e: Evaluation): { name: string; coils: Set<number> }[] {
  const { wires, runs, coils } = e.design;
  const found = wires
    .filter((w) => runs[w.run]?.side === 'feed' && w.coils.length > 1 && w.coils.length < coils.length)
    // Of conductors one behind the other that carry the same coils, the last one is the group's own.
    .filter((w, i, all) => all.findLastIndex((o) => o.coils.join() === w.coils.join()) === i)
    .map((w) => ({ name: w.id, coils: new Set(w.coils) }));
  // Groups that share a coil cannot be drawn as frames beside each other.
  const shared = found.some((a, i) =>
    found.some((b, j) => i !== j && [...a.coils].some((coil) => b.coils.has(coil))),
  );
  return shared ? [] : found;
}

/** The graph of a harness, with lines of text that are as wide as `rooms` says. */
export function graphOf(h: Harness, e: Evaluation, rooms: Rooms, labels: Labels = wiring): Graph {
  const all = e.design.coils.length;
  const crowded = ({ wire }: Piece): boolean => (e.design.wires[wire ?? -1]?.coils.length ?? 2) === 1;
  const roomOf = (piece: Piece): number => {
    if (crowded(piece)) return rooms.each;
    if (piece.to.spot.kind === 'splice') return rooms.alone;
    const own = e.design.wires[piece.wire ?? -1];
    const first = own === undefined || (own.coils.length === all && e.design.runs[own.run]?.side === 'feed');
    return first ? (rooms.head ?? rooms.alone) : rooms.alone;
  };
  const firstOpen = h.links.findIndex((link) => link.open);
  return {
    symbols: new Map(
      h.spots.map((spot) => [spot, symbolOf(spot, e, spot.kind === 'coil' ? rooms.each : rooms.alone)]),
    ),
    edges: [
      ...h.pieces.map((piece) => ({
        from: piece.from.spot,
        to: piece.to.spot,
        lines: labels(piece, e, roomOf(piece), rooms.lengths || !crowded(piece)),
        piece: piece.id,
        wire: piece.wire,
        control: piece.from.terminal === '85' || piece.to.terminal === '86',
        open: false,
      })),
      ...h.links.map(({ from, to, open }, i) => ({
        from,
        to,
        lines: i === firstOpen ? ['return: not in', 'this design'] : [],
        piece: `link ${i + 1}`,
        wire: null,
        control: false,
        open,
      })),
    ],
  };
}
