/** Lays conductors between places, cut where a fuse or a relay sits in them. */
import type { Design, Wire } from '../design/design.ts';
import type { Evaluation } from '../engine/evaluate.ts';
import type { End, Link, Piece, PlaceKind, Spot } from './places.ts';

/** DIN 72552: see `TERMINALS` in the tables. */
const SWITCHED = '15';
const DIRECT = '30';
const GROUND = '31';
const MAKE = '87';
const COIL_IN = '86';
const COIL_OUT = '85';

export class Builder {
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
    const piece = (id: string, from: End, to: End, own: typeof kit.relay_ground): Piece => ({
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
