/**
 * Coils that differ. The model knows one coil; so each coil of an install is worked out as if all were like it, and what the
 * shared feed carries is put together from them:
 *
 *   currents at the instants of firing, charges      of each coil its own: exact
 *   average current of a conductor                   mean of the coils that it carries: exact
 *   square of its effective current                  the same mean: exact for one coil, and to first order for several
 *   what a coil is left with, a driver that stays on of each coil its own, behind the feed that all of them load
 */
import type { At, Axis } from '../basis/quantity.ts';
import type { Design } from '../design/design.ts';
import type { Entry, Held } from '../engine/evaluate.ts';
import type { QuantityName } from '../model/model.ts';

/** What is asked of a model, whichever engine evaluates it. */
export interface Model {
  number(name: QuantityName, at?: At): number | null;
  setAll(entries: readonly Entry[], held?: readonly Held[]): void;
}

/** What one coil has of its own. */
export interface Coil {
  /** [ohm]; null where it is not known. */
  readonly ohm: number | null;
  /** [H]; null where only a peak current is known. */
  readonly henry: number | null;
  readonly limit: number | null;
}

/** Values of a quantity along up to three axes, the last one running fastest; NaN for what is not known. */
class Values {
  readonly all: Float64Array;
  private readonly second: number;
  private readonly third: number;

  constructor([first, second = 1, third = 1]: readonly [number, number?, number?]) {
    this.second = second;
    this.third = third;
    this.all = new Float64Array(first * second * third);
  }

  index(a: number, b = 0, c = 0): number {
    return (a * this.second + b) * this.third + c;
  }
}

const held = (name: QuantityName, { all }: Values): Held => ({ name, values: all, how: 'held' });

export class Coils {
  private readonly design: Design;
  /** The model with all coils alike, and that of the feed. */
  private readonly alike: Model;
  private readonly feed: Model;
  private readonly points: readonly number[];
  private readonly lags: number;
  /** For each pair of firings the interval between them. */
  private readonly interval: readonly (readonly number[])[];
  private readonly known: boolean;
  private readonly speeds: number;
  /** Conductors through which the same coils and loads flow. */
  private readonly bundles: readonly {
    readonly wires: readonly number[];
    readonly carried: readonly number[];
  }[];

  constructor(design: Design, alike: Model, feed: Model, counts: Readonly<Record<Axis, number>>) {
    this.design = design;
    this.alike = alike;
    this.feed = feed;
    this.points = design.points.map((_, i) => i);
    this.lags = counts.lag;
    this.interval = design.events.map((_, event) =>
      design.events.map((__, event2) => (feed.number('interval_no', { event, event2 }) as number) - 1),
    );
    this.known = feed.number('coil_L') !== null;
    this.speeds = counts.speed;
    const bundles = new Map<string, { wires: number[]; carried: readonly number[] }>();
    design.wires.forEach(({ coils, run }, wire) => {
      const key = `${coils.join()} ${design.runs[run]?.also}`;
      const known = bundles.get(key);
      if (known) known.wires.push(wire);
      else bundles.set(key, { wires: [wire], carried: coils });
    });
    this.bundles = [...bundles.values()];
  }

  /** Puts these coils into the model of the feed, whose other inputs are set; `others` are set with them. */
  put(coils: readonly Coil[], entries: readonly Entry[], others: readonly Held[]): void {
    const { design, points, lags, speeds, interval } = this;
    const [count, events, wires] = [coils.length, design.events.length, design.wires.length];
    const flowing = new Values([count, points.length, lags]);
    const charges = new Values([count, points.length, lags]);
    const flowingAt = new Values([points.length, events, events]);
    const chargesAt = new Values([points.length, events, events]);
    const average = new Values([wires, points.length]);
    const square = new Values([wires, points.length]);
    const charge = new Values([speeds]);
    const peak = new Values([points.length]);
    // When coils are charged does not depend on what coils they are.
    const apart = new Uint8Array(speeds * lags);
    const nothing = new Values([speeds, lags]);
    charge.all.fill(Number.NaN);
    coils.forEach((coil, k) => {
      if (k === 0) {
        this.alike.setAll([...entries, ...own(coil)], [henry(coil)]);
        for (const point of points)
          for (let lag = 0; lag < lags; lag++)
            apart[point * lags + lag] = this.isApart({ point, speed: point, lag }) ? 1 : 0;
        // What charges have in common that do not meet is nothing: it is not worked out again for each coil.
        this.alike.setAll([], [{ ...held('product', nothing), only: apart }]);
      } else this.alike.setAll(own(coil), [henry(coil)]);
      for (const point of points) {
        const at = { point, speed: point };
        for (let lag = 0; lag < lags; lag++) {
          if (apart[point * lags + lag] === 1) continue;
          flowing.all[flowing.index(k, point, lag)] = this.ask('flowing', { ...at, lag });
          if (this.known)
            charges.all[charges.index(k, point, lag)] = this.ask('neighbour_charge', { ...at, lag });
        }
        const all = charge.all[point] as number;
        charge.all[point] = (Number.isNaN(all) ? 0 : all) + this.ask('charge', at) / count;
        peak.all[point] = Math.max(peak.all[point] as number, this.ask('peak', at));
      }
      for (const { wires: alike, carried } of this.bundles) {
        if (!carried.includes(k)) continue;
        for (const point of points) {
          const at = { wire: alike[0] as number, point };
          const [amps, squared] = [this.ask('average', at), this.ask('coils_square', at)];
          for (const wire of alike) {
            const i = average.index(wire, point);
            average.all[i] = (average.all[i] as number) + amps / carried.length;
            square.all[i] = (square.all[i] as number) + squared / carried.length;
          }
        }
      }
    });
    for (const point of points)
      for (let event = 0; event < events; event++)
        for (let event2 = 0; event2 < events; event2++) {
          const coil = design.events[event2]?.coil as number;
          const from = flowing.index(coil, point, interval[event]?.[event2] as number);
          const to = flowingAt.index(point, event, event2);
          flowingAt.all[to] = flowing.all[from] as number;
          chargesAt.all[to] = charges.all[from] as number;
        }
    const mean = meanOf(coils);
    this.feed.setAll(
      [...entries, ...own(mean)],
      [
        ...others,
        henry(mean),
        held('flowing_at', flowingAt),
        ...(this.known ? [held('neighbour_charge_at', chargesAt)] : []),
        held('average', average),
        held('coils_square', square),
        held('charge', charge),
        held('point_peak', peak),
      ],
    );
    this.deliver(coils, chargesAt);
  }

  /** What each coil is left with behind the feed, and what it draws when its driver stays on. */
  private deliver(coils: readonly Coil[], chargesAt: Values): void {
    const { design, points, feed } = this;
    const [count, events] = [coils.length, design.events.length];
    const one = (name: QuantityName): Held => {
      const values = new Values([events]);
      for (let event = 0; event < events; event++)
        values.all[event] = feed.number(name, { event }) ?? Number.NaN;
      return held(name, values);
    };
    const common = new Values([events, events]);
    for (let event = 0; event < events; event++)
      for (let event2 = 0; event2 < events; event2++)
        common.all[common.index(event, event2)] = feed.number('common_ohm', { event, event2 }) ?? Number.NaN;
    const behind = [
      held('common_ohm', common),
      one('path_ohm'),
      one('path_also'),
      one('path_cold'),
      ...(this.known ? [held('neighbour_charge_at', chargesAt)] : []),
    ];
    const delivered = new Values([points.length, events]);
    const [stuck, failed] = [new Values([events]), new Values([events])];
    const names = ['coil_peak', 'coil_energy', 'energy_kept'] as const;
    const left = names.map(() => new Values([count, points.length]));
    const least = new Values([points.length]);
    least.all.fill(Number.POSITIVE_INFINITY);
    coils.forEach((coil, k) => {
      const anew: Held = { name: 'delivered_peak', how: 'held', values: null };
      this.alike.setAll(own(coil), [henry(coil), ...(k === 0 ? behind : [anew])]);
      const reached = new Values([points.length, events]);
      design.events.forEach((event, i) => {
        if (event.coil !== k) return;
        stuck.all[i] = this.ask('stuck_amps', { event: i });
        failed.all[i] = this.ask('failed_amps', { event: i });
        for (const point of points) {
          const to = reached.index(point, i);
          reached.all[to] = this.ask('delivered_peak', { point, event: i });
          delivered.all[to] = reached.all[to] as number;
        }
      });
      // What the firings of the other coils would reach if they were like this one is not asked for: it counts for nothing.
      this.alike.setAll([], [held('delivered_peak', reached)]);
      for (const point of points) {
        names.forEach((name, n) => {
          const values = left[n] as Values;
          values.all[values.index(k, point)] = this.ask(name, { coil: k, point });
        });
        const energy = (left[1] as Values).all[k * points.length + point] as number;
        least.all[point] = Math.min(least.all[point] as number, energy);
      }
    });
    // The next install starts with a feed of its own.
    const over: Held[] = [
      ...behind,
      held('delivered_peak', delivered),
      { name: 'product', how: 'held', values: null },
    ];
    this.alike.setAll(
      [],
      over.map(({ name, how }) => ({ name, how, values: null })),
    );
    feed.setAll(
      [],
      [
        held('delivered_peak', delivered),
        held('stuck_amps', stuck),
        held('failed_amps', failed),
        ...names.map((name, n) => held(name, left[n] as Values)),
        held('least_energy', least),
      ],
    );
  }

  /** Charges at this interval do not meet: neither now, nor that of the cycle before. */
  private isApart(at: At): boolean {
    return this.ask('shared', at) === 0 && this.ask('begun', at) >= this.ask('dwell', at);
  }

  private ask(name: QuantityName, at: At): number {
    return this.alike.number(name, at) ?? Number.NaN;
  }
}

const own = ({ ohm, limit }: Coil): Entry[] => [
  ...(ohm === null ? [] : [{ name: 'coil_ohm_20' as const, at: {}, value: ohm }]),
  ...(limit === null ? [] : [{ name: 'current_limit' as const, at: {}, value: limit }]),
];

/** The inductance may follow from a bench test, so that it is no input. */
const henry = ({ henry: value }: Coil): Held => ({
  name: 'coil_L',
  values: value === null ? null : [value],
  how: 'held',
});

function meanOf(coils: readonly Coil[]): Coil {
  const mean = (of: (coil: Coil) => number | null): number | null =>
    coils.some((coil) => of(coil) === null)
      ? null
      : coils.reduce((sum, coil) => sum + (of(coil) as number), 0) / coils.length;
  return { ohm: mean(({ ohm }) => ohm), henry: mean((c) => c.henry), limit: mean((c) => c.limit) };
}
