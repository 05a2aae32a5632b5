/** The circuit at one operating point, as the evaluated model gives it: coils, resistances, and when what switches. */
import type { Evaluation } from '../engine/evaluate.ts';
import type { QuantityName } from '../model/model.ts';

export interface Firing {
  readonly coil: number;
  /** In [0, cycle) [s]. */
  readonly at: number;
  /** Length of the charge before it [s], where it is not that of every first charge. */
  readonly dwell?: number;
  /** A spark after the first one of its firing. */
  readonly further?: true;
}

export interface Circuit {
  /** Supply at the battery posts [V]. */
  readonly supply: number;
  /** Supply less the drop of a driver that is on [V]. */
  readonly drive: number;
  /** Primary of one coil with the resistor before it [ohm], [H]. */
  readonly ohm: number;
  readonly henry: number;
  /** By coil, where one is not like the others; left out where all are alike. */
  readonly own?: readonly { readonly ohm: number; readonly henry: number }[];
  /** Current limit of coil or driver [A]; infinite when there is none. */
  readonly limit: number;
  /** Length of every first charge [s]. */
  readonly dwell: number;
  /** Time [s] and crank angle [deg] of one working cycle. */
  readonly cycle: number;
  readonly cycleAngle: number;
  /** How many coils there are. */
  readonly coils: number;
  /** Firings in the order of the design's events, then further sparks. */
  readonly firings: readonly Firing[];
  /** Conductors in the order of the design: the coils they carry, their whole resistance [ohm], another steady load [A]. */
  readonly wires: readonly {
    readonly coils: readonly number[];
    readonly ohm: number;
    readonly also: number;
  }[];
}

/** Primary of this coil [ohm], [H]. */
export const primaryOf = ({ own, ohm, henry }: Circuit, coil: number): { ohm: number; henry: number } =>
  own?.[coil] ?? { ohm, henry };

/** Why the currents in time of this design cannot be computed, as a sentence; null when they can. */
export function whyNoTrace(e: Evaluation): string | null {
  return e.number('bound') === 1
    ? 'Only a peak current is known of this coil, so that how its current rises is not: give coil.inductance or ' +
        'coil.test_point for a trace.'
    : null;
}

/** The sparks after the first one of a firing; at the speeds of the sweep, which come behind the points, there are none. */
function further(e: Evaluation, point: number, { coil, at }: Firing, cycle: number): Firing[] {
  const dwell = point < e.design.points.length ? (e.number('spark_length', { point }) ?? 0) : 0;
  const step = e.number('spark_step') ?? 0;
  return Array.from({ length: dwell > 0 ? (e.number('sparks_more') ?? 0) : 0 }, (_, i) => ({
    coil,
    at: (at + (i + 1) * step) % cycle,
    dwell,
    further: true,
  }));
}

/** The circuit of point number `point`. Throws where `whyNoTrace` has something to say. */
export function circuitAt(e: Evaluation, point: number): Circuit {
  const { design } = e;
  const why = whyNoTrace(e);
  if (why !== null) throw new Error(why);
  const need = (name: QuantityName, at: Parameters<Evaluation['number']>[1] = {}): number => {
    const value = e.number(name, at);
    if (value === null) throw new Error(`${name} is not known`);
    return value;
  };
  const speed = { speed: point };
  const cycle = need('cycle_time', speed);
  const cycleAngle = need('cycle_angle');
  const dwell = need('dwell', speed);
  const first = design.events.map(({ coil, angle }) => ({ coil, at: (angle / cycleAngle) * cycle }));
  return {
    supply: need('supply', speed),
    drive: need('drive', speed),
    ohm: need('charge_ohm', speed),
    henry: need('coil_L'),
    limit: e.number('current_limit') ?? Number.POSITIVE_INFINITY,
    dwell,
    cycle,
    cycleAngle,
    coils: design.coils.length,
    firings: [...first, ...first.flatMap((one) => further(e, point, one, cycle))],
    wires: design.wires.map(({ coils, run }, wire) => ({
      coils,
      ohm: need('wire_ohm', { wire }),
      also: need('run_also', { run }),
    })),
  };
}

/**
 * Resistance that the paths of two coils share [ohm], coils × coils: Aᵀ·diag(R)·A, A = 1 where conductor carries coil.
 * On its diagonal the whole path of a coil. Symmetric and not negative definite.
 */
export function sharedOhm({ coils, wires }: Circuit): number[][] {
  const shared = Array.from({ length: coils }, () => Array.from({ length: coils }, () => 0));
  for (const { coils: carried, ohm } of wires)
    for (const a of carried)
      for (const b of carried) {
        const row = shared[a] as number[];
        row[b] = (row[b] as number) + ohm;
      }
  return shared;
}

/** Drop that other steady loads make on the path of each coil [V]; they flow whether it is charged or not. */
export const alsoDrops = ({ coils, wires }: Circuit): number[] =>
  Array.from({ length: coils }, (_, coil) =>
    wires.reduce(
      (volts, { coils: carried, ohm, also }) => volts + (carried.includes(coil) ? ohm * also : 0),
      0,
    ),
  );
