/** What instruments show of an install in some state, by the exact currents. */
import { largest } from '../transient/crossing.ts';
import { integralOf, squareIntegralOf } from '../transient/exponentials.ts';
import { currentOf, supplyBefore } from '../transient/figures.ts';
import { type Course, steady } from '../transient/steady.ts';
import { acrossOhm } from './across.ts';
import { atPosts, type Where } from './expected.ts';
import { circuitIn, keyOf, moreIn, type Parts } from './parts.ts';

/** Asked for places, one after the other; the currents of a point are computed when the first of its places is. */
export type Show = (where: Where) => number;

export function showIn(parts: Parts, state: readonly number[]): Show {
  const points = new Map<number, Figures>();
  const at = (point: number): Figures => {
    const known = points.get(point) ?? new Figures(steady(circuitIn(parts, state, point)));
    points.set(point, known);
    return known;
  };
  return (where) =>
    where.coil !== null && (where.what === 'resistance' || where.what === 'inductance')
      ? unplugged(parts, state, where)
      : where.what === 'resistance'
        ? Math.max(
            0,
            (parts.cold[where.wire as number] as number) + moreIn(parts, state, where.wire as number),
          )
        : where.what === 'temperature'
          ? temperatureIn(parts, state, where, at(where.point as number))
          : where.across
            ? acrossIn(parts, state, where, where.across) *
              shown(at(where.point as number), parts.source, { ...where, what: 'current' })
            : shown(at(where.point as number), parts.source, where);
}

/** Resistance of a place within a conductor [ohm]. */
function acrossIn(parts: Parts, state: readonly number[], { wire }: Where, across: string): number {
  const own = parts.within.find((one) => one.wire === wire && one.across === across);
  const of = (place: string): number =>
    state[parts.index.get(keyOf({ of: 'within', wire: wire as number, across: place })) ?? -1] ?? 0;
  // Across a fuse is across its holder, too.
  const more = of(across) + (across === 'fuse' ? of('holder') : 0);
  return Math.max(0, (own?.ohm ?? acrossOhm(parts.e, wire as number, across)) + more);
}

/** Of the hottest place: all that a conductor has too much is taken to be there [degC], without an ambient [K]. */
function temperatureIn(parts: Parts, state: readonly number[], where: Where, figures: Figures): number {
  const wire = where.wire as number;
  const { square, watt, ohm } = parts.warms[wire] as Parts['warms'][number];
  const there = where.across
    ? acrossIn(parts, state, where, where.across)
    : Math.max(0, ohm + moreIn(parts, state, wire));
  return (where.ambient ?? 0) + (square + watt * there) * figures.effective(wire) ** 2;
}

/** A coil by itself: its resistance, or its inductance. */
function unplugged({ index, primary, circuits }: Parts, state: readonly number[], where: Where): number {
  const of = (key: string): number => state[index.get(key) ?? -1] ?? 0;
  if (where.what === 'resistance') return primary * Math.exp(of(`ohm ${where.coil}`) + of('unplugged'));
  const [circuit] = circuits.values();
  return (circuit?.henry ?? 0) * Math.exp(of(`henry ${where.coil}`));
}

function shown(f: Figures, source: number, where: Where): number {
  const { circuit } = f.course;
  const { what, instrument, wire, coil } = where;
  const ohm = (i: number): number => circuit.wires[i]?.ohm ?? 0;
  const averages = instrument === 'meter' || instrument === 'clamp_average';
  const amps = (i: number): number =>
    averages ? f.average(i) : instrument === 'clamp_effective' ? f.effective(i) : f.peak(i);
  if (what === 'dwell') return circuit.dwell;
  if (where.between) return where.between.reduce((sum, one) => sum + ohm(one) * amps(one), 0);
  if (what === 'drop') return ohm(wire as number) * amps(wire as number);
  if (what === 'current') return amps(wire ?? source + 1 + (coil as number));
  // The supply of the circuit is that of the posts on average; a source that is soft lets it sag below that.
  if (atPosts(where)) return circuit.supply - ohm(source) * amps(source);
  if (averages)
    return circuit.wires.reduce(
      (volts, { coils }, i) =>
        i <= source && coils.includes(coil as number) ? volts - ohm(i) * f.average(i) : volts,
      circuit.supply,
    );
  const firings = circuit.firings.flatMap((firing, i) =>
    firing.coil === coil && !firing.further ? [i] : [],
  );
  return Math.min(...firings.map((firing) => supplyBefore(f.course, firing)));
}

/** Averages, effective values and peaks of conductors, each worked out when it is asked for [A]. */
class Figures {
  readonly course: Course;
  readonly #coils: number[] = [];
  readonly #kept = new Map<string, number>();

  constructor(course: Course) {
    this.course = course;
  }

  average(wire: number): number {
    const { segments, circuit } = this.course;
    const of = (coil: number): number => {
      this.#coils[coil] ??=
        segments.reduce(
          (sum, { currents, from, to, on }) =>
            on.includes(coil)
              ? sum + integralOf(currents[coil] as (typeof currents)[number], to - from)
              : sum,
          0,
        ) / circuit.cycle;
      return this.#coils[coil] as number;
    };
    const { coils, also } = circuit.wires[wire] as (typeof circuit.wires)[number];
    return coils.reduce((sum, coil) => sum + of(coil), also);
  }

  effective(wire: number): number {
    return this.#keep(`e${wire}`, () => {
      const { segments, circuit } = this.course;
      const square = segments.reduce(
        (sum, segment) =>
          sum + squareIntegralOf(currentOf(this.course, wire, segment), segment.to - segment.from),
        0,
      );
      return Math.sqrt(Math.max(0, square) / circuit.cycle);
    });
  }

  peak(wire: number): number {
    return this.#keep(`p${wire}`, () =>
      this.course.segments.reduce(
        (most, segment) =>
          segment.on.length === 0
            ? most
            : Math.max(most, largest(currentOf(this.course, wire, segment), segment.to - segment.from)),
        0,
      ),
    );
  }

  #keep(key: string, work: () => number): number {
    const known = this.#kept.get(key) ?? work();
    this.#kept.set(key, known);
    return known;
  }
}
