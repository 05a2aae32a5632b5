/**
 * The way from the battery to the first relay, and the last wire back, stand upright at the sides of the drawing: coils
 * need its height, and nothing else does. What is folded is one shape for the layout, with its own wires inside. In mm.
 *
 *   BAT+                                       ──┐
 *    │ main/1                     ─ S1 ─ …  G1   │ strap
 *    F1                                        BAT−
 *    │ main/2
 *    K1 ── main/3 …
 */
import { type Edge, type Graph, type Inner, LINE, type Shape, widest } from './diagram-graph.ts';
import type { Spot } from './places.ts';

/** The relay upright: its box, the height of terminal 87 at its right, of 86 and 85 at its left. */
export const UPRIGHT = { width: 26, height: 24, make: 18, coilIn: 5, coilOut: 20, middle: 13 };
/** A fuse upright. */
export const FUSE = { width: 4, height: 8.5 };
/** Room at the left of the relay for the wires of its coil, and where they run. */
const LEFT = 14;
const [TRIGGER_X, GROUND_X] = [2, 9];
/** Between a wire and its label. */
const BESIDE = 1.5;
/** The row of fuse and switches under the words of the original ignition wire. */
const SWITCHES = 6;
/** Ground symbol. */
const EARTH = 5;

const tall = (lines: readonly string[]): number => lines.length * LINE;

export function folded(graph: Graph): Graph {
  return foldTail(foldHead(graph));
}

const plain = (graph: Graph, spot: Spot, end: 'from' | 'to'): Edge[] =>
  graph.edges.filter((edge) => edge[end] === spot && !edge.control);

/** Battery, fuses and the first relay, as long as one wire follows the other. */
function headOf(graph: Graph): Spot[] {
  const plus = [...graph.symbols.keys()].find(({ kind }) => kind === 'plus');
  if (plus === undefined) return [];
  const head = [plus];
  for (let at = plus; ; ) {
    const next = plain(graph, at, 'from');
    const to = next[0]?.to;
    if (next.length !== 1 || to === undefined || (to.kind !== 'fuse' && to.kind !== 'relay')) return head;
    head.push(to);
    if (to.kind === 'relay') return head;
    at = to;
  }
}

function foldHead(graph: Graph): Graph {
  const head = headOf(graph);
  const last = head.at(-1);
  if (last === undefined || head.length < 2) return graph;
  const upright = last.kind === 'relay';
  const middle = upright ? LEFT + UPRIGHT.middle : 12;
  const shape = (spot: Spot): Shape => {
    const own = graph.symbols.get(spot) as Shape;
    const [first = '', ...more] = own.lines;
    // Beside an upright fuse there is room for its rating and type on one line.
    return spot.kind === 'fuse' ? { ...own, lines: [first, more.join(', ')] } : own;
  };
  const wires: Inner['wires'][number][] = [];
  const parts: Inner['parts'][number][] = [];
  let [y, width] = [0, 0];
  const reach = (x: number, lines: readonly string[]): void => {
    width = Math.max(width, x + widest(lines) + 1);
  };
  head.forEach((spot, i) => {
    const own = shape(spot);
    if (i > 0) {
      const edge = plain(graph, spot, 'to')[0] as Edge;
      const below = y + Math.max(6, tall(edge.lines) + 1.5);
      wires.push({
        edge,
        way: [
          { x: middle, y },
          { x: middle, y: below },
        ],
        label: { x: middle + BESIDE, y: y + 0.6 },
      });
      reach(middle + BESIDE, edge.lines);
      y = below;
    }
    const [w, h] =
      spot.kind === 'fuse'
        ? [FUSE.width, FUSE.height]
        : spot.kind === 'relay'
          ? [UPRIGHT.width, UPRIGHT.height]
          : [own.width, own.height];
    parts.push({ shape: { ...own, width: w, height: h, upright: true }, x: middle - w / 2, y });
    if (spot.kind !== 'plus') reach(middle + w / 2 + BESIDE, own.lines);
    else width = Math.max(width, middle + w / 2);
    y += h;
  });
  const at = upright ? y - UPRIGHT.height + UPRIGHT.make : y + 3;
  // The way out has its label in here as well, below it.
  const out = plain(graph, last, 'from')[0];
  const exit = upright ? LEFT + UPRIGHT.width : middle;
  reach(exit + BESIDE, out?.lines ?? []);
  const control = graph.edges.filter((edge) => edge.control && (edge.from === last || edge.to === last));
  let bottom = Math.max(upright ? y : at + 1, at + 0.8 + tall(out?.lines ?? []));
  // The wire to ground first, since it is the inner one.
  for (const edge of control.toSorted((a) => (a.to.kind === 'chassis' ? -1 : 1))) {
    const ground = edge.to.kind === 'chassis';
    const end = ground ? edge.to : edge.from;
    const [x, port] = ground
      ? [GROUND_X, y - UPRIGHT.height + UPRIGHT.coilOut]
      : [TRIGGER_X, y - UPRIGHT.height + UPRIGHT.coilIn];
    const own = shape(end);
    const top = bottom + tall(edge.lines) + 2.5;
    const way = [
      { x: LEFT, y: port },
      { x, y: port },
      { x, y: top },
    ];
    wires.push({
      edge,
      way: ground ? way : way.toReversed(),
      label: { x: x + BESIDE, y: bottom + 1.2 },
    });
    reach(x + BESIDE, edge.lines);
    const h = ground ? Math.max(EARTH, tall(own.lines)) : tall(own.lines) + SWITCHES;
    parts.push({
      shape: { ...own, height: h, upright: true },
      x: ground ? x - own.width / 2 : 0,
      y: top,
    });
    if (ground) reach(x + 5.5, own.lines);
    else width = Math.max(width, own.width);
    bottom = top + h;
  }
  // The way out, to the right edge.
  width = Math.max(width, exit + 3);
  if (out !== undefined)
    wires.push({
      edge: out,
      way: upright
        ? [
            { x: exit, y: at },
            { x: width, y: at },
          ]
        : [
            { x: middle, y },
            { x: middle, y: at },
            { x: width, y: at },
          ],
      label: { x: exit + BESIDE, y: at + 0.8 },
    });
  const gone = new Set([...head.slice(0, -1), ...control.flatMap(({ from, to }) => [from, to])]);
  gone.delete(last);
  const inside = new Set(wires.slice(0, out === undefined ? undefined : -1).map(({ edge }) => edge));
  const made: Shape = { ...shape(last), width, height: bottom, at, below: at, inner: { wires, parts } };
  return {
    symbols: new Map(
      [...graph.symbols]
        .filter(([spot]) => !gone.has(spot))
        .map(([spot, own]) => [spot, spot === last ? made : own]),
    ),
    edges: graph.edges
      .filter((edge) => !inside.has(edge))
      .map((edge) => (edge === out ? { ...edge, lines: [] } : edge)),
    start: last,
  };
}

/** The last wire, where it is one: down at the right. */
function foldTail(graph: Graph): Graph {
  const minus = [...graph.symbols.keys()].find(({ kind }) => kind === 'minus');
  const into = minus === undefined ? [] : plain(graph, minus, 'to');
  const [edge] = into;
  if (minus === undefined || edge === undefined || into.length !== 1 || edge.from.kind !== 'ground')
    return graph;
  const own = graph.symbols.get(minus) as Shape;
  const x = own.width / 2;
  const top = tall(edge.lines) + 3;
  const inner: Inner = {
    wires: [
      {
        edge,
        way: [
          { x: 0, y: 0 },
          { x, y: 0 },
          { x, y: top },
        ],
        label: { x: x + BESIDE, y: 1.2 },
      },
    ],
    parts: [{ shape: { ...own, upright: true }, x: 0, y: top }],
  };
  const made: Shape = {
    ...own,
    width: Math.max(own.width, x + BESIDE + widest(edge.lines)),
    height: top + own.height,
    at: 0,
    below: 0,
    inner,
  };
  return {
    ...graph,
    symbols: new Map([...graph.symbols].map(([spot, shape]) => [spot, spot === minus ? made : shape])),
    edges: graph.edges.map((one) => (one === edge ? { ...edge, lines: [] } : one)),
  };
}
