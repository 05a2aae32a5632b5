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

/** Asks a model for one value, again whenever it is called; null where it is not known. */
export type Ask = () => number | null;

/** What is asked of a model, whichever engine evaluates it. */
export interface Model {
  asker(name: QuantityName, at?: At): Ask;
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

/**
 * Values of a quantity along up to three axes, the last one running fastest; NaN for what is not known. They are made once
 * and filled for each install anew.
 */
class Values {
  readonly all: Float64Array;
  /** They take the place of what the formula comes to. */
  readonly held: Held;
  private readonly second: number;
  private readonly third: number;

  constructor(name: QuantityName, [first, second = 1, third = 1]: readonly [number, number?, number?]) {
    this.second = second;
    this.third = third;
    this.all = new Float64Array(first * second * third);
    this.held = { name, values: this.all, how: 'held' };
  }

  index(a: number, b = 0, c = 0): number {
    return (a * this.second + b) * this.third + c;
  }

  /** All that is asked, in the order of the values. */
  take(asked: readonly Ask[]): void {
    for (let i = 0; i < asked.length; i++) this.all[i] = known(asked[i] as Ask);
  }
}

const known = (ask: Ask): number => ask() ?? Number.NaN;
const free = ({ held: { name, how } }: Values): Held => ({ name, how, values: null });

/** What a coil is left with at a point. */
const LEFT = ['coil_peak', 'coil_energy', 'energy_kept'] as const;

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
  /** Conductors through which the same coils and loads flow, and at each point the currents that a coil brings. */
  private readonly bundles: readonly {
    readonly wires: readonly number[];
    readonly carried: readonly number[];
    readonly amps: readonly (readonly [average: Ask, square: Ask])[];
  }[];
  /** What a coil draws, at each point; `at` each interval between charges. */
  private readonly drawn: readonly {
    readonly charge: Ask;
    readonly peak: Ask;
    readonly at: readonly Record<'flowing' | 'neighbour' | 'shared' | 'begun' | 'dwell', Ask>[];
  }[];
  /** Of the feed, for each firing and each pair of them. */
  private readonly behind: readonly (readonly [Values, readonly Ask[]])[];
  /** Of a coil, for each firing; what it reaches at each point. */
  private readonly fired: readonly {
    readonly stuck: Ask;
    readonly failed: Ask;
    readonly reached: readonly Ask[];
  }[];
  /** For each coil, at each point. */
  private readonly left: readonly (readonly Record<(typeof LEFT)[number], Ask>[])[];
  /** What is put together, in the order of its making. */
  private readonly of;

  constructor(design: Design, alike: Model, feed: Model, counts: Readonly<Record<Axis, number>>) {
    const { coils, events, wires, runs } = design;
    this.design = design;
    this.alike = alike;
    this.feed = feed;
    const points = design.points.map((_, i) => i);
    this.points = points;
    this.lags = counts.lag;
    this.interval = events.map((_, event) =>
      events.map((__, event2) => (feed.asker('interval_no', { event, event2 })() as number) - 1),
    );
    this.known = feed.asker('coil_L')() !== null;
    const bundles = new Map<string, { wires: number[]; carried: readonly number[] }>();
    wires.forEach(({ coils: carried, run }, wire) => {
      const key = `${carried.join()} ${runs[run]?.also}`;
      const before = bundles.get(key);
      if (before) before.wires.push(wire);
      else bundles.set(key, { wires: [wire], carried });
    });
    this.bundles = [...bundles.values()].map((bundle) => ({
      ...bundle,
      amps: points.map((point) => {
        const at = { wire: bundle.wires[0] as number, point };
        return [alike.asker('average', at), alike.asker('coils_square', at)] as const;
      }),
    }));
    this.drawn = points.map((point) => {
      const at = { point, speed: point };
      return {
        charge: alike.asker('charge', at),
        peak: alike.asker('peak', at),
        at: Array.from({ length: counts.lag }, (_, lag) => ({
          flowing: alike.asker('flowing', { ...at, lag }),
          neighbour: alike.asker('neighbour_charge', { ...at, lag }),
          shared: alike.asker('shared', { ...at, lag }),
          begun: alike.asker('begun', { ...at, lag }),
          dwell: alike.asker('dwell', { ...at, lag }),
        })),
      };
    });
    this.behind = [
      [
        new Values('common_ohm', [events.length, events.length]),
        events.flatMap((_, event) => events.map((__, event2) => feed.asker('common_ohm', { event, event2 }))),
      ],
      ...(['path_ohm', 'path_also', 'path_cold'] as const).map(
        (name) =>
          [new Values(name, [events.length]), events.map((_, event) => feed.asker(name, { event }))] as const,
      ),
    ];
    this.fired = events.map((_, event) => ({
      stuck: alike.asker('stuck_amps', { event }),
      failed: alike.asker('failed_amps', { event }),
      reached: points.map((point) => alike.asker('delivered_peak', { point, event })),
    }));
    this.left = coils.map((_, coil) =>
      points.map((point) => {
        const at = { coil, point };
        return {
          coil_peak: alike.asker('coil_peak', at),
          coil_energy: alike.asker('coil_energy', at),
          energy_kept: alike.asker('energy_kept', at),
        };
      }),
    );
    const pairs = [points.length, events.length, events.length] as const;
    const charges = [coils.length, points.length, counts.lag] as const;
    const perCoil = [coils.length, points.length] as const;
    this.of = {
      flowing: new Values('flowing', charges),
      charges: new Values('neighbour_charge', charges),
      /** What charges have in common that do not meet. */
      nothing: new Values('product', [counts.speed, counts.lag]),
      apart: new Uint8Array(counts.speed * counts.lag),
      flowingAt: new Values('flowing_at', pairs),
      chargesAt: new Values('neighbour_charge_at', pairs),
      average: new Values('average', [wires.length, points.length]),
      square: new Values('coils_square', [wires.length, points.length]),
      charge: new Values('charge', [counts.speed]),
      peak: new Values('point_peak', [points.length]),
      reached: new Values('delivered_peak', [points.length, events.length]),
      delivered: new Values('delivered_peak', [points.length, events.length]),
      stuck: new Values('stuck_amps', [events.length]),
      failed: new Values('failed_amps', [events.length]),
      coil_peak: new Values('coil_peak', perCoil),
      coil_energy: new Values('coil_energy', perCoil),
      energy_kept: new Values('energy_kept', perCoil),
      least: new Values('least_energy', [points.length]),
    };
  }

  /** Puts these coils into the model of the feed, whose other inputs are set; `others` are set with them. */
  put(coils: readonly Coil[], entries: readonly Entry[], others: readonly Held[]): void {
    const { points, lags, alike, drawn } = this;
    const { flowing, charges, nothing, apart, average, square, charge, peak } = this.of;
    for (const { all } of [flowing, charges, average, square, peak]) all.fill(0);
    charge.all.fill(Number.NaN);
    coils.forEach((coil, k) => {
      if (k === 0) {
        alike.setAll([...entries, ...own(coil)], [henry(coil)]);
        // When coils are charged does not depend on what coils they are.
        drawn.forEach(({ at }, point) => {
          for (let lag = 0; lag < lags; lag++) {
            const { shared, begun, dwell } = at[lag] as (typeof at)[number];
            // Neither now, nor that of the cycle before.
            apart[point * lags + lag] = known(shared) === 0 && known(begun) >= known(dwell) ? 1 : 0;
          }
        });
        // What charges have in common that do not meet is nothing: it is not worked out again for each coil.
        alike.setAll([], [{ ...nothing.held, only: apart }]);
      } else alike.setAll(own(coil), [henry(coil)]);
      for (const point of points) {
        const of = drawn[point] as (typeof drawn)[number];
        for (let lag = 0; lag < lags; lag++) {
          if (apart[point * lags + lag] === 1) continue;
          const asked = of.at[lag] as (typeof of.at)[number];
          const i = flowing.index(k, point, lag);
          flowing.all[i] = known(asked.flowing);
          if (this.known) charges.all[i] = known(asked.neighbour);
        }
        const all = charge.all[point] as number;
        charge.all[point] = (Number.isNaN(all) ? 0 : all) + known(of.charge) / coils.length;
        peak.all[point] = Math.max(peak.all[point] as number, known(of.peak));
      }
      for (const { wires, carried, amps } of this.bundles) {
        if (!carried.includes(k)) continue;
        for (const point of points) {
          const [mean, squared] = (amps[point] as readonly Ask[]).map(known) as [number, number];
          for (const wire of wires) {
            const i = average.index(wire, point);
            average.all[i] = (average.all[i] as number) + mean / carried.length;
            square.all[i] = (square.all[i] as number) + squared / carried.length;
          }
        }
      }
    });
    this.together();
    const mean = meanOf(coils);
    const { flowingAt, chargesAt } = this.of;
    this.feed.setAll(
      [...entries, ...own(mean)],
      [
        ...others,
        henry(mean),
        ...[flowingAt, ...(this.known ? [chargesAt] : []), average, square, charge, peak].map(
          ({ held }) => held,
        ),
      ],
    );
    this.deliver(coils);
  }

  /** What flows in each coil when another one fires. */
  private together(): void {
    const { design, points, interval } = this;
    const { flowing, charges, flowingAt, chargesAt } = this.of;
    const events = design.events.length;
    for (const point of points)
      for (let event = 0; event < events; event++)
        for (let event2 = 0; event2 < events; event2++) {
          const coil = design.events[event2]?.coil as number;
          const from = flowing.index(coil, point, interval[event]?.[event2] as number);
          const to = flowingAt.index(point, event, event2);
          flowingAt.all[to] = flowing.all[from] as number;
          chargesAt.all[to] = charges.all[from] as number;
        }
  }

  /** What each coil is left with behind the feed, and what it draws when its driver stays on. */
  private deliver(coils: readonly Coil[]): void {
    const { design, points, feed, alike } = this;
    const { chargesAt, reached, delivered, stuck, failed, least, nothing } = this.of;
    for (const [values, asked] of this.behind) values.take(asked);
    const behind = [...this.behind.map(([values]) => values), ...(this.known ? [chargesAt] : [])];
    least.all.fill(Number.POSITIVE_INFINITY);
    coils.forEach((coil, k) => {
      alike.setAll(own(coil), [henry(coil), ...(k === 0 ? behind.map(({ held }) => held) : [free(reached)])]);
      reached.all.fill(0);
      design.events.forEach((event, i) => {
        if (event.coil !== k) return;
        const asked = this.fired[i] as (typeof this.fired)[number];
        stuck.all[i] = known(asked.stuck);
        failed.all[i] = known(asked.failed);
        for (const point of points) {
          const to = reached.index(point, i);
          reached.all[to] = known(asked.reached[point] as Ask);
          delivered.all[to] = reached.all[to] as number;
        }
      });
      // What the firings of the other coils would reach if they were like this one is not asked for: it counts for nothing.
      alike.setAll([], [reached.held]);
      for (const point of points) {
        const asked = this.left[k]?.[point] as Record<(typeof LEFT)[number], Ask>;
        const i = k * points.length + point;
        for (const name of LEFT) this.of[name].all[i] = known(asked[name]);
        least.all[point] = Math.min(least.all[point] as number, this.of.coil_energy.all[i] as number);
      }
    });
    // The next install starts with a feed of its own.
    alike.setAll([], [...behind, reached, nothing].map(free));
    feed.setAll(
      [],
      [delivered, stuck, failed, ...LEFT.map((name) => this.of[name]), least].map(({ held }) => held),
    );
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
