/**
 * The harness as one builds it: places, and pieces of wire between them.
 *
 *   battery + ── fuse ── relay ── splice ─┬─ coil ─┬─ ground point ── battery −
 *                          │              └─ coil ─┘
 *                    original ignition wire
 *
 * It follows from the runs of the design: a conductor begins where the nearest earlier one that carries all of its
 * coils ends. A conductor with a fuse or a relay in it is cut there.
 */
import type { Design, Wire } from '../design/design.ts';
import type { Evaluation } from '../engine/evaluate.ts';

export type PlaceKind =
  | 'plus'
  | 'fuse'
  | 'relay'
  | 'splice'
  | 'coil'
  | 'ground'
  | 'minus'
  | 'trigger'
  | 'chassis';

/** A part or a point at which wires end. */
export interface Spot {
  /** Designation on drawing and labels: `F1`, `K1`, `S1`, `G1`, `BAT+`. */
  readonly id: string;
  readonly kind: PlaceKind;
  /** Index of the conductor that holds a fuse or a relay. */
  readonly wire: number | null;
  /** Index of a coil. */
  readonly coil: number | null;
}

export interface End {
  readonly spot: Spot;
  /** Terminal number of DIN 72552 where the part has one. */
  readonly terminal: string | null;
}

/** One piece of wire. */
export interface Piece {
  /** `drop.1`, or `main/2` when the conductor is cut into several. */
  readonly id: string;
  /** Index of the conductor, null for the wires of a relay coil, which are no part of the calculation. */
  readonly wire: number | null;
  readonly run: string;
  readonly from: End;
  readonly to: End;
  readonly gauge: string | null;
  readonly insulation: string | null;
  readonly colour: string | null;
  /** [m]; null when the design does not say where the conductor is cut. */
  readonly length: number | null;
  readonly strip: number | null;
  readonly fromTerminal: string | null;
  readonly toTerminal: string | null;
}

/** Ends that meet without a wire of their own in the design. */
export interface Link {
  readonly from: Spot;
  readonly to: Spot;
  /** True where the design has no return, and the way back is not known. */
  readonly open: boolean;
}

export interface Harness {
  readonly spots: readonly Spot[];
  readonly pieces: readonly Piece[];
  readonly links: readonly Link[];
}

/** DIN 72552: see `TERMINALS` in the tables. */
const SWITCHED = '15';
const DIRECT = '30';
const GROUND = '31';
const MAKE = '87';
const COIL_IN = '86';
const COIL_OUT = '85';

const carriesAll = (outer: Wire, inner: Wire): boolean =>
  inner.coils.every((coil) => outer.coils.includes(coil));

class Builder {
  readonly spots: Spot[] = [];
  readonly pieces: Piece[] = [];
  readonly links: Link[] = [];
  private readonly e: Evaluation;
  private readonly design: Design;
  private readonly counts = new Map<string, number>();

  constructor(e: Evaluation) {
    this.e = e;
    this.design = e.design;
  }

  spot(kind: PlaceKind, id: string, about: { wire?: number; coil?: number } = {}): Spot {
    const made: Spot = { id, kind, wire: about.wire ?? null, coil: about.coil ?? null };
    this.spots.push(made);
    return made;
  }

  /** `S1`, `S2`, … */
  numbered(kind: PlaceKind, letter: string, wire: number): Spot {
    const count = (this.counts.get(letter) ?? 0) + 1;
    this.counts.set(letter, count);
    return this.spot(kind, `${letter}${count}`, { wire });
  }

  sideOf(side: 'feed' | 'return'): number[] {
    return this.design.wires.flatMap((w, i) => (this.design.runs[w.run]?.side === side ? [i] : []));
  }

  wire(i: number): Wire {
    return this.design.wires[i] as Wire;
  }

  /** The pieces of a conductor between two ends, cut at its fuse and its relay. */
  lay(i: number, from: Spot, to: Spot): void {
    const { wire, kit } = { wire: this.wire(i), kit: this.design.kit };
    const run = this.design.runs[wire.run] as Design['runs'][number];
    const stops: { end: [End, End]; at: number | null }[] = [];
    if (run.fuse) {
      const fuse = this.numbered('fuse', 'F', i);
      const end: End = { spot: fuse, terminal: null };
      const given = kit.fuse_at.get(run.name) ?? (from.kind === 'plus' ? run.fuse.from_source : null);
      // A source farther away than the whole run is no place in this run.
      stops.push({ end: [end, end], at: given !== null && given <= wire.length ? given : null });
    }
    if (run.relay) {
      const relay = this.numbered('relay', 'K', i);
      const at = kit.relay_at.get(run.name) ?? null;
      stops.push({
        end: [
          { spot: relay, terminal: DIRECT },
          { spot: relay, terminal: MAKE },
        ],
        at,
      });
    }
    const bare = (spot: Spot): End => ({ spot, terminal: terminalOf(spot, run.side) });
    const ends: [End, End][] = [[bare(from), bare(from)], ...stops.map((s) => s.end), [bare(to), bare(to)]];
    const places: (number | null)[] = [0, ...stops.map((s) => s.at), wire.length];
    const several = ends.length > 2;
    for (let n = 0; n + 1 < ends.length; n++) {
      const [a, b] = [places[n] ?? null, places[n + 1] ?? null];
      const own = kit.terminals.get(run.name);
      this.pieces.push({
        id: several ? `${wire.id}/${n + 1}` : wire.id,
        wire: i,
        run: run.name,
        from: (ends[n] as [End, End])[1],
        to: (ends[n + 1] as [End, End])[0],
        gauge: String(this.e.value('gauge', { run: wire.run }) ?? '') || null,
        insulation: run.insulation,
        colour: kit.colours.get(run.name) ?? null,
        length: a === null || b === null ? null : b - a,
        strip: kit.strip.get(run.name) ?? null,
        fromTerminal: n === 0 ? (own?.from ?? null) : null,
        toTerminal: n + 2 === ends.length ? (own?.to ?? null) : null,
      });
    }
    for (const { end } of stops) if (end[0].spot.kind === 'relay') this.coilOf(end[0].spot, i);
  }

  /** The relay's own coil: from the original ignition wire, and to ground. */
  private coilOf(relay: Spot, wire: number): void {
    const { kit } = this.design;
    const number = relay.id.slice(1);
    const trigger = this.spot('trigger', `IGN${number}`, { wire });
    const ground = this.spot('chassis', `GND${number}`, { wire });
    const piece = (id: string, from: End, to: End, own: typeof kit.trigger): Piece => ({
      id,
      wire: null,
      run: id,
      from,
      to,
      ...own,
      strip: null,
      fromTerminal: null,
      toTerminal: null,
    });
    this.pieces.push(
      piece(
        `relay trigger ${relay.id}`,
        { spot: trigger, terminal: SWITCHED },
        { spot: relay, terminal: COIL_IN },
        kit.trigger,
      ),
      piece(
        `relay ground ${relay.id}`,
        { spot: relay, terminal: COIL_OUT },
        { spot: ground, terminal: GROUND },
        kit.relay_ground,
      ),
    );
  }
}

const terminalOf = (spot: Spot, side: 'feed' | 'return'): string | null => {
  if (spot.kind === 'plus') return DIRECT;
  if (spot.kind === 'minus') return GROUND;
  if (spot.kind === 'coil') return side === 'feed' ? SWITCHED : GROUND;
  return null;
};

/** Place of each coil when they are counted by number: 1, 2, 10; names that are no numbers keep their order. */
function ranksOf(ids: readonly string[]): number[] {
  const order = ids.map((id, i) => ({ i, number: Number.parseInt(id, 10) }));
  order.sort((a, b) =>
    Number.isNaN(a.number) || Number.isNaN(b.number) || a.number === b.number
      ? a.i - b.i
      : a.number - b.number,
  );
  const ranks: number[] = [];
  order.forEach(({ i }, rank) => {
    ranks[i] = rank;
  });
  return ranks;
}

/** The harness of an evaluated design. */
export function harnessOf(e: Evaluation): Harness {
  const { design } = e;
  const b = new Builder(e);
  const feed = b.sideOf('feed');
  const back = b.sideOf('return');

  const parent = (i: number): number | undefined =>
    feed.findLast((o) => b.wire(o).run < b.wire(i).run && carriesAll(b.wire(o), b.wire(i)));
  const next = (i: number): number | undefined =>
    back.find((o) => b.wire(o).run > b.wire(i).run && carriesAll(b.wire(o), b.wire(i)));
  const parents = new Map(feed.map((i) => [i, parent(i)]));
  const nexts = new Map(back.map((i) => [i, next(i)]));

  const rank = ranksOf(design.coils.map((coil) => coil.id));
  /** Run by run, and within a run by the number of the coil. */
  const inOrder = (wires: readonly number[]): number[] =>
    wires.toSorted(
      (p, q) =>
        b.wire(p).run - b.wire(q).run ||
        (rank[b.wire(p).coils[0] ?? 0] as number) - (rank[b.wire(q).coils[0] ?? 0] as number),
    );

  const plus = b.spot('plus', 'BAT+');
  const coils = new Map<number, Spot>();
  const coilSpot = (coil: number): Spot => {
    const known = coils.get(coil);
    if (known) return known;
    const made = b.spot('coil', `coil ${design.coils[coil]?.id}`, { coil });
    coils.set(coil, made);
    return made;
  };

  const feedFrom = (i: number, from: Spot): void => {
    const children = inOrder(feed.filter((o) => parents.get(o) === i));
    const direct = b.wire(i).coils.filter((coil) => children.every((o) => !b.wire(o).coils.includes(coil)));
    const [only] = direct;
    if (children.length === 0 && direct.length === 1) {
      b.lay(i, from, coilSpot(only as number));
      return;
    }
    // The place is made behind fuse and relay of the conductor, so that designations follow the current.
    const splice: Spot = b.numbered('splice', 'S', i);
    b.lay(i, from, splice);
    for (const child of children) feedFrom(child, splice);
    for (const coil of direct) b.links.push({ from: splice, to: coilSpot(coil), open: false });
  };
  for (const i of inOrder(feed.filter((o) => parents.get(o) === undefined))) feedFrom(i, plus);

  const minus = b.spot('minus', 'BAT−');
  const starts = new Map<number, Spot>();
  for (const i of back) {
    const before = back.filter((o) => nexts.get(o) === i);
    const direct = b.wire(i).coils.filter((coil) => before.every((o) => !b.wire(o).coils.includes(coil)));
    if (before.length === 0 && direct.length === 1) {
      starts.set(i, coilSpot(direct[0] as number));
      continue;
    }
    const ground = b.numbered('ground', 'G', i);
    starts.set(i, ground);
    for (const coil of direct) b.links.push({ from: coilSpot(coil), to: ground, open: false });
  }
  for (const i of inOrder(back)) {
    const after = nexts.get(i);
    b.lay(i, starts.get(i) as Spot, after === undefined ? minus : (starts.get(after) as Spot));
  }
  const returned = new Set(back.flatMap((i) => b.wire(i).coils));
  for (const [coil, spot] of coils)
    if (!returned.has(coil)) b.links.push({ from: spot, to: minus, open: true });
  return { spots: b.spots, pieces: b.pieces, links: b.links };
}
