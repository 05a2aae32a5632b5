/**
 * What of an install can be otherwise than its papers say, each as one number that is 0 when it is as expected, with the
 * deviation that the tolerances give it; and the circuit of a point with such numbers put in.
 *
 * A tolerance is the half of a range in which no value is likelier than another: its standard deviation is that half over √3.
 */
import type { Sense } from '../design/design.ts';
import type { Evaluation } from '../engine/evaluate.ts';
import type { QuantityName } from '../model/model.ts';
import { type Circuit, circuitAt } from '../transient/circuit.ts';
import { acrossOhm } from './across.ts';
import type { Where } from './expected.ts';

export type Knob =
  /** Resistance beyond the expected one [ohm]; number of wires: the source. */
  | { readonly of: 'wire'; readonly wire: number }
  /** The same of one place within a wire that a reading tells of. */
  | { readonly of: 'within'; readonly wire: number; readonly across: string }
  /** ln of a factor: resistance, inductance of one coil; resistance of all by their warmth; dwell; limit. */
  | { readonly of: 'ohm' | 'henry'; readonly coil: number }
  | { readonly of: 'warmth' | 'dwell' | 'limit' | 'unplugged' }
  /** At the posts [V]. */
  | { readonly of: 'supply'; readonly point: number }
  /** ln of what an instrument shows over what there is. */
  | { readonly of: 'gain'; readonly sense: Sense };

export interface Parts {
  readonly e: Evaluation;
  /** The expected circuit of each point that is asked for: conductors, then the source, then a wire without resistance for each coil. */
  readonly circuits: ReadonlyMap<number, Circuit>;
  readonly source: number;
  readonly knobs: readonly Knob[];
  /** Standard deviation of each. */
  readonly spread: readonly number[];
  readonly index: ReadonlyMap<string, number>;
  /** Resistance of each conductor when cold and unhooked, as expected [ohm]. */
  readonly cold: readonly number[];
  /** Primary resistance of an unplugged coil, as expected [ohm]: cold, or still warm from work. */
  readonly primary: number;
  /** Places within conductors that readings tell of. */
  readonly within: readonly Within[];
  /** Of each conductor: what is copper [ohm]. */
  readonly copper: readonly number[];
  /** Of each conductor how warm it gets. */
  readonly warms: readonly Warms[];
}

export interface Warms {
  /** Rise of the conductor itself, for each square ampere [K/A²]. */
  readonly square: number;
  /** Rise of a hot place, for each watt [K/W]. */
  readonly watt: number;
  /** Largest resistance in one place, as expected [ohm]. */
  readonly ohm: number;
}

export interface Within {
  readonly wire: number;
  /** `fuse`, `joint 2` */
  readonly across: string;
  /** Expected, of all conductors of the run together where there are several in parallel [ohm]. */
  readonly ohm: number;
}

export const keyOf = (knob: Knob): string =>
  knob.of === 'wire'
    ? `wire ${knob.wire}`
    : knob.of === 'within'
      ? `within ${knob.wire} ${knob.across}`
      : knob.of === 'ohm' || knob.of === 'henry'
        ? `${knob.of} ${knob.coil}`
        : knob.of === 'supply'
          ? `supply ${knob.point}`
          : knob.of === 'gain'
            ? `gain ${knob.sense}`
            : knob.of;

/** Half of an even range over its standard deviation, √3, and over the whole range. */
export const HALF = Math.sqrt(3);
const WHOLE = 2 * HALF;

/** Resistance of a source that nothing is said of [ohm], as far as it sags within a cycle. Arbitrary. */
const SOURCE = 5e-3;
/** Share of an instrument's error that is the same in all of its readings; the variances add up to the whole. Arbitrary. */
export const STEADY = 0.8;

/** `readings`: those that are weighed; a place within a conductor is a part of its own only where one of them tells of it. */
export function partsOf(
  e: Evaluation,
  points: readonly number[],
  readings: readonly Pick<Where, 'wire' | 'across'>[] = e.design.measured,
): Parts {
  const { design } = e;
  const { tolerance: t } = design;
  const need = (name: QuantityName, at: Parameters<Evaluation['number']>[1] = {}): number =>
    e.number(name, at) ?? 0;
  const source = design.wires.length;
  const within: Within[] = [];
  for (const { wire, across } of readings)
    if (wire !== null && across && !within.some((one) => one.wire === wire && one.across === across))
      within.push({ wire, across, ohm: acrossOhm(e, wire, across) });
  const inFuse = ({ wire, across }: Within): boolean =>
    across === 'holder' && within.some((one) => one.wire === wire && one.across === 'fuse');
  const wires = design.wires.map(({ run }, wire) => {
    const ambient = need('run_ambient', { run });
    const alpha = need('alpha_20');
    const atRef = need('T_ref');
    const hot = e.number('wire_T', { wire }) ?? ambient;
    const warmed = (celsius: number): number => 1 + alpha * (celsius - atRef);
    const coldest = Math.min(atRef, ambient);
    const copper = need('wire_copper_ohm', { wire }) / warmed(hot);
    const fixed = need('fixed_ohm', { run });
    // Places with a part of their own move by themselves.
    const rest = within.reduce(
      (left, one) => (one.wire === wire && !inFuse(one) ? left - one.ohm : left),
      fixed,
    );
    const mean = copper * warmed((coldest + hot) / 2) + fixed;
    const spread = Math.hypot(
      (copper * warmed(hot) - copper * warmed(coldest)) / WHOLE,
      (copper * t.length) / HALF,
      (Math.max(0, rest) * t.joint_resistance) / HALF,
    );
    return { mean, spread, copper: mean - fixed, cold: copper + fixed };
  });
  const alpha = need('alpha_20');
  const warmed = (celsius: number): number => 1 + alpha * (celsius - need('T_ref'));
  const { temperature } = design.coil;
  // A coil is expected half as much warmer as it may be.
  const warmer = warmed(temperature + t.coil_warmer / 2) / warmed(temperature);
  const coils = design.coils.map((_, coil) => coil);
  const circuits = new Map(
    points.map((point) => {
      const circuit = circuitAt(e, point);
      const series = e.number('series_ohm', { speed: point }) ?? 0;
      const ohm = (circuit.ohm - series) * warmer + series;
      return [
        point,
        {
          ...circuit,
          ohm,
          wires: [
            ...circuit.wires.map((wire, i) => ({ ...wire, ohm: wires[i]?.mean ?? 0 })),
            { coils, ohm: 0, also: 0 },
            ...coils.map((coil) => ({ coils: [coil], ohm: 0, also: 0 })),
          ],
        },
      ] as const;
    }),
  );
  const stated = e.number('source_ohm');
  const knobs: [Knob, number][] = [
    ...wires.map(({ spread }, wire): [Knob, number] => [{ of: 'wire', wire }, spread]),
    ...within.map(({ wire, across, ohm }): [Knob, number] => [
      { of: 'within', wire, across },
      (ohm * t.joint_resistance) / HALF,
    ]),
    [{ of: 'wire', wire: source }, Math.max(SOURCE, stated ?? 0)],
    ...coils.map((coil): [Knob, number] => [{ of: 'ohm', coil }, t.coil_resistance / HALF]),
    ...coils.map((coil): [Knob, number] => [{ of: 'henry', coil }, t.coil_inductance / HALF]),
    [{ of: 'warmth' }, Math.log(warmed(temperature + t.coil_warmer) / warmed(temperature)) / WHOLE],
    [{ of: 'dwell' }, t.dwell / HALF],
    [{ of: 'unplugged' }, Math.log(warmed(temperature + t.coil_warmer) / warmed(need('T_ref'))) / WHOLE],
    [{ of: 'limit' }, t.current_limit / HALF],
    ...points.map((point): [Knob, number] => [
      { of: 'supply', point },
      (t.supply * (design.points[point]?.supply ?? 0)) / HALF,
    ]),
    ...(Object.keys(design.instruments) as Sense[]).map((sense): [Knob, number] => [
      { of: 'gain', sense },
      (STEADY * design.instruments[sense].share) / HALF,
    ]),
  ];
  return {
    e,
    circuits,
    source,
    knobs: knobs.map(([knob]) => knob),
    spread: knobs.map(([, spread]) => spread),
    index: new Map(knobs.map(([knob], i) => [keyOf(knob), i])),
    cold: wires.map(({ cold }) => cold),
    within,
    primary: need('coil_ohm_20') * ((warmed(need('T_ref')) + warmed(temperature + t.coil_warmer)) / 2),
    copper: wires.map(({ copper }) => copper),
    warms: design.wires.map(({ run }) => {
      const most = need('rating', { run }) - need('run_ambient', { run });
      const amps = need('amps_together', { run });
      return {
        square: amps > 0 ? most / amps ** 2 : 0,
        watt: need('place_rise', { run }),
        ohm: need('hottest_ohm', { run }),
      };
    }),
  };
}

/** The state in which everything is as expected. */
export const asExpected = ({ knobs }: Parts): number[] => knobs.map(() => 0);

/** The circuit of a point in a state. No resistance falls below 0. */
export function circuitIn(parts: Parts, state: readonly number[], point: number): Circuit {
  const circuit = parts.circuits.get(point) as Circuit;
  const of = (knob: Knob): number => state[parts.index.get(keyOf(knob)) ?? -1] ?? 0;
  const series = parts.e.number('series_ohm', { speed: point }) ?? 0;
  const warmth = of({ of: 'warmth' });
  const more = of({ of: 'supply', point });
  const dwell = dwellIn(parts.e, circuit, Math.exp(of({ of: 'dwell' })), point);
  return {
    ...circuit,
    supply: circuit.supply + more,
    drive: circuit.drive + more,
    dwell,
    // Further sparks have a charge of their own.
    firings: circuit.firings.map((firing) => (firing.further ? firing : { ...firing, dwell })),
    limit: circuit.limit * Math.exp(of({ of: 'limit' })),
    own: Array.from({ length: circuit.coils }, (_, coil) => ({
      ohm: (circuit.ohm - series) * Math.exp(of({ of: 'ohm', coil }) + warmth) + series,
      henry: circuit.henry * Math.exp(of({ of: 'henry', coil })),
    })),
    wires: circuit.wires.map((own, wire) =>
      wire > parts.source ? own : { ...own, ohm: Math.max(0, own.ohm + moreIn(parts, state, wire)) },
    ),
  };
}

/** What a conductor has beyond its expected resistance, anywhere along it [ohm]. */
export function moreIn({ index, within }: Parts, state: readonly number[], wire: number): number {
  const of = (knob: Knob): number => state[index.get(keyOf(knob)) ?? -1] ?? 0;
  return within.reduce(
    (sum, { wire: own, across }) => (own === wire ? sum + of({ of: 'within', wire, across }) : sum),
    of({ of: 'wire', wire }),
  );
}

/** A dwell that is longer than asked for still leaves the coil its rest. */
function dwellIn(e: Evaluation, { dwell }: Circuit, factor: number, point: number): number {
  if (factor === 1) return dwell;
  const speed = { speed: point };
  const asked = e.number('dwell_asked', speed) ?? dwell;
  return Math.max(0, Math.min(asked * factor, e.number('dwell_room', speed) ?? Number.POSITIVE_INFINITY));
}
