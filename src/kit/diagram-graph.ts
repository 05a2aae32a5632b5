/** The harness as a graph for the layout: sizes of symbols and labels, ports, and who is joined to whom. All in mm. */
import type { ElkExtendedEdge, ElkNode, ElkPort } from 'elkjs/lib/elk-api.js';
import type { Evaluation } from '../engine/evaluate.ts';
import { printQuantity } from '../findings/words.ts';
import { pieceLength } from './lengths.ts';
import type { Harness, Piece, Spot } from './places.ts';
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
  [gauge?.replace('mm2', 'mm²') ?? 'size ____', insulation].filter(Boolean).join(' ');

/** What stands above a wire: its name, its size with the colour, its length. */
const labelOf = (piece: Piece, e: Evaluation, room: number): string[] => [
  ...lines(piece.id, room),
  ...lines([sizeOf(piece), piece.colour].filter(Boolean).join(', '), room),
  ...lines(piece.length === null ? 'length ____' : pieceLength(piece.length, e.design.kit.units), room),
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

/** Size of a symbol with its words. The layout puts symbols at whole millimetres, so wires meet them there as well. */
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

const port = (node: string, side: 'WEST' | 'EAST', x: number, y: number, name: string): ElkPort => ({
  id: `${node} ${name}`,
  x,
  y,
  width: 0,
  height: 0,
  layoutOptions: { 'elk.port.side': side },
});

const nodeOf = (id: string, symbol: Shape): ElkNode => ({
  id,
  width: symbol.width,
  height: symbol.height,
  ports: [
    port(id, 'WEST', 0, symbol.at, 'in'),
    port(id, 'EAST', symbol.width, symbol.at, 'out'),
    ...(symbol.spot.kind === 'relay'
      ? [
          port(id, 'WEST', 0, symbol.below, 'coil in'),
          port(id, 'EAST', symbol.width, symbol.below, 'coil out'),
        ]
      : []),
  ],
  layoutOptions: { 'elk.portConstraints': 'FIXED_POS' },
});

export interface Drawn {
  readonly graph: ElkNode;
  readonly symbols: ReadonlyMap<string, Shape>;
  readonly labels: ReadonlyMap<string, readonly string[]>;
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
export function graphOf(h: Harness, e: Evaluation, rooms: Rooms): Drawn {
  const symbols = new Map(
    h.spots.map((spot) => [spot.id, symbolOf(spot, e, spot.kind === 'coil' ? rooms.each : rooms.alone)]),
  );
  const keys = new Map(h.spots.map((spot, i) => [spot, `n${i}`]));
  const key = (spot: Spot): string => keys.get(spot) as string;
  const node = (spot: Spot): ElkNode => nodeOf(key(spot), symbols.get(spot.id) as Shape);
  const crowded = ({ wire }: Piece): boolean => (e.design.wires[wire ?? -1]?.coils.length ?? 2) === 1;
  const labels = new Map<string, readonly string[]>();
  const edges: ElkExtendedEdge[] = h.pieces.map((piece, i) => {
    const text = labelOf(piece, e, crowded(piece) ? rooms.each : rooms.alone);
    const id = `e${i}`;
    labels.set(id, text);
    const side = (terminal: string | null, coil: string, plain: string): string =>
      terminal === '85' || terminal === '86' ? coil : plain;
    return {
      id,
      sources: [`${key(piece.from.spot)} ${side(piece.from.terminal, 'coil out', 'out')}`],
      targets: [`${key(piece.to.spot)} ${side(piece.to.terminal, 'coil in', 'in')}`],
      labels: [{ text: text.join('\n'), width: widest(text) + 2, height: text.length * LINE + 0.5 }],
    };
  });
  h.links.forEach((link, i) => {
    const text = link.open ? ['return: not in', 'this design'] : [];
    const id = `l${i}`;
    labels.set(id, text);
    edges.push({
      id,
      sources: [`${key(link.from)} out`],
      targets: [`${key(link.to)} in`],
      ...(text.length > 0 && i === h.links.findIndex((l) => l.open)
        ? { labels: [{ text: text.join('\n'), width: widest(text) + 2, height: text.length * LINE + 0.5 }] }
        : {}),
    });
  });
  return {
    graph: { id: 'feed', children: h.spots.map(node), edges, layoutOptions: OPTIONS },
    symbols,
    labels,
  };
}

const OPTIONS = {
  'elk.algorithm': 'layered',
  'elk.direction': 'RIGHT',
  'elk.edgeRouting': 'ORTHOGONAL',
  'elk.randomSeed': '1',
  'elk.spacing.nodeNode': '2.5',
  'elk.spacing.edgeNode': '1.5',
  'elk.spacing.edgeEdge': '2',
  'elk.spacing.edgeLabel': '0.3',
  'elk.layered.spacing.nodeNodeBetweenLayers': '2.5',
  'elk.layered.spacing.edgeNodeBetweenLayers': '1.5',
  'elk.layered.spacing.edgeEdgeBetweenLayers': '1.5',
  'elk.layered.edgeLabels.sideSelection': 'ALWAYS_UP',
  'elk.layered.considerModelOrder.strategy': 'NODES_AND_EDGES',
  'elk.layered.nodePlacement.strategy': 'NETWORK_SIMPLEX',
  'elk.padding': '[top=0,left=0,bottom=0,right=0]',
} as const;
