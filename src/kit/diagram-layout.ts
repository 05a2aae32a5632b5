/**
 * Where everything stands in the wiring diagram: a column for each step from the battery to the coils and back, a row for
 * each coil, parts in the middle of the rows that they serve. All in mm.
 *
 *   part ─┬─ label ── part …        on the way out a wire turns behind its part, on the way back before the next one,
 *         └─ label ── part …        so that every label has a row of its own: half of it above the wire, half below
 */
import { type Edge, type Graph, LINE, type Shape, widest } from './diagram-graph.ts';
import type { Spot } from './places.ts';

export interface Point {
  readonly x: number;
  readonly y: number;
}
export interface Wire {
  readonly edge: Edge;
  readonly way: readonly Point[];
  /** Where the middle of the label lies on the wire. */
  readonly label: Point;
}
export interface Placed {
  readonly width: number;
  readonly height: number;
  /** Upper left corner of each symbol. */
  readonly corners: ReadonlyMap<Spot, Point>;
  readonly wires: readonly Wire[];
  /** Where wires are joined. */
  readonly joints: readonly Point[];
}

/** Between rows, between a wire and what stands beside it, and from a part to a turn. */
const GAP = 1.2;
const CLEAR = 0.6;
const TURN = 1.5;

/** How far something reaches above and below its wire. */
interface Reach {
  readonly up: number;
  readonly down: number;
}

/** Which columns and rows the parts stand in, before the columns have their widths. */
interface Rows {
  readonly column: ReadonlyMap<Spot, number>;
  /** Height of the wire that meets a part. */
  readonly y: ReadonlyMap<Spot, number>;
  /** Parts on the way back. */
  readonly returns: ReadonlySet<Spot>;
}

export function placed(graph: Graph): Placed {
  const rows = rowsOf(graph);
  const columns = columnsOf(graph, rows);
  const wires = graph.edges.map((edge): Wire => wireOf(edge, graph, rows, columns));
  const corners = new Map(
    [...graph.symbols].map(([spot, shape]): [Spot, Point] => {
      const { left, width } = columns.parts[rows.column.get(spot) as number] as Part;
      return [spot, { x: left + (width - shape.width) / 2, y: (rows.y.get(spot) as number) - shape.at }];
    }),
  );
  const labelled = wires.filter(({ edge }) => edge.lines.length > 0);
  const top = Math.min(
    ...[...corners.values()].map(({ y }) => y),
    ...labelled.map(({ edge, label }) => label.y - labelUp(edge)),
  );
  const bottom = Math.max(
    ...[...corners].map(([spot, { y }]) => y + shapeOf(graph, spot).height),
    ...labelled.map(({ edge, label }) => label.y + labelDown(edge)),
  );
  const down = ({ x, y }: Point): Point => ({ x, y: y - top });
  return {
    width: columns.width,
    height: bottom - top,
    corners: new Map([...corners].map(([spot, corner]) => [spot, down(corner)])),
    wires: wires.map((wire) => ({ ...wire, way: wire.way.map(down), label: down(wire.label) })),
    joints: joints(graph, wires).map(down),
  };
}

const labelWidth = (lines: readonly string[]): number => (lines.length === 0 ? 0 : widest(lines) + 1);
const shapeOf = ({ symbols }: Graph, spot: Spot): Shape => symbols.get(spot) as Shape;
const ahead = ({ edges }: Graph, spot: Spot): Edge[] => edges.filter((e) => e.from === spot && !e.control);
const behind = ({ edges }: Graph, spot: Spot): Edge[] => edges.filter((e) => e.to === spot && !e.control);
const middle = (values: readonly number[]): number => (Math.min(...values) + Math.max(...values)) / 2;

/** Wires on the way out turn behind their part, those to a relay's coil and on the way back before the next one. */
const turnsEarly = ({ to, control }: Edge, returns: ReadonlySet<Spot>): boolean =>
  control ? to.kind === 'chassis' : !returns.has(to);

function rowsOf(graph: Graph): Rows {
  const column = new Map<Spot, number>();
  const y = new Map<Spot, number>();
  const plus = graph.start ?? ([...graph.symbols.keys()].find(({ kind }) => kind === 'plus') as Spot);
  out(graph, plus, 0, column);
  const coils = [...graph.symbols.keys()].filter(({ kind }) => kind === 'coil');
  const coilColumn = Math.max(...coils.map((coil) => column.get(coil) as number));
  for (const coil of coils) column.set(coil, coilColumn);
  settle(graph, plus, y);

  const steps = (spot: Spot): number => Math.max(0, ...ahead(graph, spot).map((e) => 1 + steps(e.to)));
  const returns = [...graph.symbols.keys()].filter(
    (spot) => !column.has(spot) && spot.kind !== 'trigger' && spot.kind !== 'chassis',
  );
  const last = coilColumn + Math.max(1, ...returns.map((spot) => steps(spot) + 1));
  for (const spot of returns) column.set(spot, last - steps(spot));
  for (const spot of returns.toSorted((a, b) => (column.get(a) as number) - (column.get(b) as number)))
    y.set(spot, freeRow(graph, spot, column, y));

  for (const { from, to, control } of graph.edges) {
    if (!control) continue;
    const [relay, part, side] = from.kind === 'relay' ? [from, to, 1] : [to, from, -1];
    column.set(part, (column.get(relay) as number) + side);
    y.set(part, (y.get(relay) as number) + controlDrop(graph, relay));
  }
  return { column, y, returns: new Set(returns) };
}

/** Columns from the battery on; the longest way decides. */
function out(graph: Graph, spot: Spot, at: number, column: Map<Spot, number>): void {
  column.set(spot, Math.max(at, column.get(spot) ?? 0));
  if (spot.kind === 'coil') return;
  const next = ahead(graph, spot);
  for (const { to } of next) {
    // Beside the wire of a relay's coil there must be no part that other rows pass.
    const apart = next.length > 1 && to.kind === 'relay' ? 2 : 1;
    out(graph, to, (column.get(spot) as number) + apart, column);
  }
}

/** A label is divided at its wire. */
export const above = (lines: readonly string[]): number => Math.ceil(lines.length / 2);
const room = (lines: number): number => (lines === 0 ? 0 : lines * LINE + CLEAR);
const labelUp = ({ lines }: Edge): number => room(above(lines));
const labelDown = ({ lines }: Edge): number => room(lines.length - above(lines));

/** How far below the wire of the feed the parts of a relay's coil stand: clear of label, fuse and splice beside it. */
function controlDrop(graph: Graph, relay: Spot): number {
  const shape = shapeOf(graph, relay);
  const own = graph.edges.filter((e) => e.control && (e.from === relay || e.to === relay));
  const beside = [...behind(graph, relay).map((e) => e.from), ...ahead(graph, relay).map((e) => e.to)];
  const down = Math.max(...beside.map((spot) => shapeOf(graph, spot).height - shapeOf(graph, spot).at));
  const up = own.map((e) => shapeOf(graph, e.from === relay ? e.to : e.from).at);
  const labels = [...behind(graph, relay), ...ahead(graph, relay)].map(labelDown);
  return Math.max(
    shape.below - shape.at,
    Math.max(0, ...labels) + Math.max(0, ...own.map(labelUp)),
    down + Math.max(0, ...up) + 1,
  );
}

function reachOf(graph: Graph, spot: Spot): Reach {
  const shape = shapeOf(graph, spot);
  const labels = spot.kind === 'coil' ? [...behind(graph, spot), ...ahead(graph, spot)] : behind(graph, spot);
  const control = graph.edges.filter((e) => e.control && (e.from === spot || e.to === spot));
  const drop = control.length === 0 ? 0 : controlDrop(graph, spot);
  const below = control.map((e) => {
    const part = shapeOf(graph, e.from === spot ? e.to : e.from);
    return drop + Math.max(part.height - part.at, labelDown(e));
  });
  return {
    up: Math.max(shape.at, ...labels.map(labelUp)),
    down: Math.max(shape.height - shape.at, ...labels.map(labelDown), ...below),
  };
}

/** Rows of a part and of everything behind it on the way out: what follows one below the other, the part in the middle. */
function settle(
  graph: Graph,
  spot: Spot,
  y: Map<Spot, number>,
): { top: number; bottom: number; moved: Spot[] } {
  const { up, down } = reachOf(graph, spot);
  const next =
    spot.kind === 'coil' ? [] : [...new Set(ahead(graph, spot).map((e) => e.to))].filter((to) => !y.has(to));
  let bottom = Number.NaN;
  let top = 0;
  const moved: Spot[] = [];
  for (const to of next) {
    const below = settle(graph, to, y);
    const shift = Number.isNaN(bottom) ? 0 : bottom + GAP - below.top;
    for (const one of below.moved) y.set(one, (y.get(one) as number) + shift);
    if (Number.isNaN(bottom)) top = below.top;
    bottom = below.bottom + shift;
    moved.push(...below.moved);
  }
  const own = next.length === 0 ? 0 : middle(next.map((to) => y.get(to) as number));
  y.set(spot, own);
  return {
    top: next.length === 0 ? -up : Math.min(top, own - up),
    bottom: next.length === 0 ? down : Math.max(bottom, own + down),
    moved: [...moved, spot],
  };
}

/** On the way back: the middle of what comes together, or the nearest height beside it that is free. */
function freeRow(
  graph: Graph,
  spot: Spot,
  column: ReadonlyMap<Spot, number>,
  y: ReadonlyMap<Spot, number>,
): number {
  const reach = (one: Spot): Reach => {
    const shape = shapeOf(graph, one);
    const labels = ahead(graph, one);
    return {
      up: Math.max(shape.at, ...labels.map(labelUp)),
      down: Math.max(shape.height - shape.at, ...labels.map(labelDown)),
    };
  };
  const own = reach(spot);
  const at = column.get(spot) as number;
  const taken = graph.edges.flatMap(({ from, to, control }) => {
    const row = y.get(from);
    if (control || row === undefined || to === spot) return [];
    const [a, b] = [column.get(from) as number, column.get(to) ?? at];
    return a < at && b > at ? [{ top: row - CLEAR, bottom: row + CLEAR }] : [];
  });
  for (const [other, row] of y) {
    if (column.get(other) !== at) continue;
    const { up, down } = reach(other);
    taken.push({ top: row - up, bottom: row + down });
  }
  const wanted = middle(behind(graph, spot).map((e) => y.get(e.from) as number));
  for (let away = 0; ; away += 0.5)
    for (const row of [wanted + away, wanted - away])
      if (taken.every((t) => row + own.down + CLEAR <= t.top || row - own.up - CLEAR >= t.bottom)) return row;
}

interface Part {
  readonly left: number;
  readonly width: number;
}
interface Columns {
  readonly parts: readonly Part[];
  readonly width: number;
  /** Middle of the labels behind each column. */
  readonly labels: readonly number[];
  /** Where the wires of a part turn, behind it or before it. */
  readonly early: ReadonlyMap<Spot, number>;
  readonly late: ReadonlyMap<Spot, number>;
}

/** Widths of the columns and of what lies between them: turns, labels, turns. */
function columnsOf(graph: Graph, { column, y, returns }: Rows): Columns {
  const count = Math.max(...column.values()) + 1;
  const widest = Array.from({ length: count }, (_, i) =>
    Math.max(0, ...[...graph.symbols].map(([spot, s]) => (column.get(spot) === i ? s.width : 0))),
  );
  const turning = graph.edges.filter((e) => portY(graph, e, 'from', y) !== portY(graph, e, 'to', y));
  const between = Array.from({ length: count }, (_, i) => {
    const labels = graph.edges.filter((e) => column.get(e.from) === i).map((e) => labelWidth(e.lines));
    return {
      early: tracks(
        turning.filter((e) => turnsEarly(e, returns) && column.get(e.from) === i),
        'from',
        graph,
        y,
      ),
      late: tracks(
        turning.filter((e) => !turnsEarly(e, returns) && column.get(e.to) === i + 1),
        'to',
        graph,
        y,
      ),
      label: Math.max(0, ...labels),
    };
  });
  const [early, late] = [new Map<Spot, number>(), new Map<Spot, number>()];
  const parts: Part[] = [];
  const labels: number[] = [];
  let x = 0;
  between.forEach((room, i) => {
    parts.push({ left: x, width: widest[i] as number });
    x += widest[i] as number;
    if (i === count - 1) return;
    for (const [spot, track] of room.early.of) early.set(spot, x + TURN * (track + 1));
    x += TURN * (room.early.count + 0.7);
    labels.push(x + room.label / 2);
    x += room.label;
    for (const [spot, track] of room.late.of) late.set(spot, x + TURN * (track + 0.7));
    x += TURN * (room.late.count + 0.7);
  });
  return { parts, width: x, labels, early, late };
}

/** Wires of one part turn together; those of two parts that would lie over each other turn side by side. */
function tracks(
  edges: readonly Edge[],
  end: 'from' | 'to',
  graph: Graph,
  y: ReadonlyMap<Spot, number>,
): { of: Map<Spot, number>; count: number } {
  const spans = new Map<Spot, [number, number]>();
  for (const edge of edges) {
    const rows = [portY(graph, edge, 'from', y), portY(graph, edge, 'to', y)];
    const [low, high] = spans.get(edge[end]) ?? [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
    spans.set(edge[end], [Math.min(low, ...rows), Math.max(high, ...rows)]);
  }
  const used: [number, number][][] = [];
  const of = new Map<Spot, number>();
  for (const [spot, [low, high]] of spans) {
    const free = used.findIndex((track) => track.every(([a, b]) => high + CLEAR < a || low - CLEAR > b));
    const track = free < 0 ? used.length : free;
    used[track] = [...(used[track] ?? []), [low, high]];
    of.set(spot, track);
  }
  return { of, count: used.length };
}

/** Height at which a wire leaves or meets a part. */
function portY(graph: Graph, edge: Edge, end: 'from' | 'to', y: ReadonlyMap<Spot, number>): number {
  const spot = edge[end];
  const shape = shapeOf(graph, spot);
  const lower = edge.control && spot.kind === 'relay' ? shape.below - shape.at : 0;
  return (y.get(spot) as number) + lower;
}

function wireOf(edge: Edge, graph: Graph, { column, y, returns }: Rows, columns: Columns): Wire {
  const early = turnsEarly(edge, returns);
  const side = (spot: Spot, right: boolean): number => {
    const part = columns.parts[column.get(spot) as number] as Part;
    return part.left + part.width / 2 + (shapeOf(graph, spot).width / 2) * (right ? 1 : -1);
  };
  const from = { x: side(edge.from, true), y: portY(graph, edge, 'from', y) };
  const to = { x: side(edge.to, false), y: portY(graph, edge, 'to', y) };
  const turn = (early ? columns.early.get(edge.from) : columns.late.get(edge.to)) ?? from.x;
  const way = from.y === to.y ? [from, to] : [from, { x: turn, y: from.y }, { x: turn, y: to.y }, to];
  return {
    edge,
    way,
    label: {
      x: columns.labels[column.get(edge.from) as number] as number,
      y: early ? to.y : from.y,
    },
  };
}

/** Where three or more ends of lines meet, other than at a part. */
function joints({ edges }: Graph, wires: readonly Wire[]): Point[] {
  const found = new Map<string, Point>();
  for (const end of ['from', 'to'] as const)
    for (const spot of new Set(edges.map((edge) => edge[end]))) {
      const own = wires.filter((wire) => wire.edge[end] === spot && !wire.edge.control);
      const [x] = own.flatMap(({ way }) => (way.length > 2 ? [(way[1] as Point).x] : []));
      if (x === undefined || own.length < 2) continue;
      // All of them share the height of the part; beyond the turn each has its own.
      const near = own.map(({ way }) => ((end === 'from' ? way[0] : way.at(-1)) as Point).y);
      const far = own.map(({ way }) => ((end === 'from' ? way.at(-1) : way[0]) as Point).y);
      const [low, high] = [Math.min(...near, ...far), Math.max(...near, ...far)];
      for (const row of new Set([...near, ...far])) {
        const arms = [near.includes(row), far.includes(row), row > low, row < high].filter(Boolean).length;
        if (arms > 2) found.set(`${x} ${row}`, { x, y: row });
      }
    }
  return [...found.values()];
}
