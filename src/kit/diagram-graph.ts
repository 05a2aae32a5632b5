/** The harness as a graph for the layout: sizes of symbols and labels, and who is joined to whom. All in mm. */
import type { Evaluation } from '../engine/evaluate.ts';
import { printQuantity } from '../views/print.ts';
import { onPaper } from './lengths.ts';
import type { Harness, Piece, Spot } from './places.ts';
import { printedSize } from './terminals.ts';
import { textWidth, wrapText } from './text-size.ts';

/** Height of the letters [mm], that is about 7 points. */
export const FONT = 2.5;
export const LINE = 3;
/** Room for a terminal number inside a symbol [mm]. */
export const TERMINAL = 4.5;
/** Widest line [mm]: one that leaves most lines whole, and a narrow one for a harness of many parts in a row. */
const WIDE = 34;
const NARROW = 19;
/** Ways to break lines: of what stands alone in its layer, and of what stands there once for each coil. */
export interface Rooms {
  readonly alone: number;
  readonly each: number;
}
export const ROOMS: readonly Rooms[] = [
  { alone: WIDE, each: WIDE },
  { alone: NARROW, each: WIDE },
  { alone: NARROW, each: NARROW },
];

export interface Shape {
  readonly spot: Spot;
  readonly width: number;
  readonly height: number;
  /** Height at which the wires meet the symbol: the feed, and the relay's coil. */
  readonly at: number;
  readonly below: number;
  readonly lines: readonly string[];
}

const lines = (text: string, room: number): string[] => wrapText(text, room / FONT);
export const widest = (texts: readonly string[]): number =>
  Math.max(0, ...texts.map((t) => textWidth(t) * FONT));

/** `10 AWG C`, `6 mm² TXL` */
const sizeOf = ({ gauge, insulation }: Piece): string =>
  [printedSize(gauge), insulation].filter(Boolean).join(' ');

/** What stands above a wire: its name, its size with the colour, its length. */
const labelOf = (piece: Piece, e: Evaluation, room: number): string[] => [
  ...lines(piece.id, room),
  ...lines([sizeOf(piece), piece.colour].filter(Boolean).join(', '), room),
  ...lines(piece.length === null ? 'length ____' : onPaper(piece.length, 'piece', e.design.kit.units), room),
];

function wordsOf(spot: Spot, e: Evaluation, room: number): string[] {
  const run = e.design.wires[spot.wire ?? -1]?.run ?? 0;
  const of = e.design.runs[run];
  switch (spot.kind) {
    case 'plus':
      return ['BAT+', 'battery +'];
    case 'minus':
      return ['BAT−', 'battery −'];
    case 'fuse':
      return [
        spot.id,
        `${printQuantity('fuse_rating', e.number('fuse_rating', { run }))}, type ${of?.fuse?.type}`,
      ];
    case 'relay':
      return [spot.id, `${printQuantity('relay_rating', e.number('relay_rating', { run }))} relay`];
    case 'coil': {
      const bank = banks(e).find(({ coils }) => coils.has(spot.coil ?? -1));
      return [...lines(spot.id, room), ...(bank ? lines(bank.name, room) : [])];
    }
    case 'trigger':
      return ['original ignition', 'wire, switched'];
    case 'chassis':
      return ['engine ground'];
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
      return made(16, 5.5 + height, 3);
    case 'relay':
      return made(28, 20 + height, 5, 15);
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
export function graphOf(h: Harness, e: Evaluation, rooms: Rooms): Graph {
  const crowded = ({ wire }: Piece): boolean => (e.design.wires[wire ?? -1]?.coils.length ?? 2) === 1;
  const firstOpen = h.links.findIndex((link) => link.open);
  return {
    symbols: new Map(
      h.spots.map((spot) => [spot, symbolOf(spot, e, spot.kind === 'coil' ? rooms.each : rooms.alone)]),
    ),
    edges: [
      ...h.pieces.map((piece) => ({
        from: piece.from.spot,
        to: piece.to.spot,
        lines: labelOf(piece, e, crowded(piece) ? rooms.each : rooms.alone),
        wire: piece.wire,
        control: piece.from.terminal === '85' || piece.to.terminal === '86',
        open: false,
      })),
      ...h.links.map(({ from, to, open }, i) => ({
        from,
        to,
        lines: i === firstOpen ? ['return: not in', 'this design'] : [],
        wire: null,
        control: false,
        open,
      })),
    ],
  };
}
