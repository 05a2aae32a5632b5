/** One install: the design as built, with every part off by what was drawn for it. */
import { type At, AXES, type Axis, type Quantity } from '../basis/quantity.ts';
import type { Design, Spreading } from '../design/design.ts';
import { inputValue } from '../engine/cell.ts';
import type { Entry, Evaluation } from '../engine/evaluate.ts';
import { judged } from '../findings/judged.ts';
import { RULES, type RuleId } from '../findings/rules.ts';
import { judgeRule } from '../findings/verdict.ts';
import { QUANTITIES, type QuantityName } from '../model/model.ts';
import { type Ask, type Coil, Coils, type Model } from './coils.ts';
import { type Figure, figuresOf } from './figures.ts';
import { deviationOf, type Input, inputsOf } from './inputs.ts';

/** How an entry of the model follows a tolerance: its share more, or its kelvins more. */
const FOLLOWS: Partial<
  Record<Spreading, { readonly names: readonly QuantityName[]; readonly how: 'share' | 'plus' }>
> = {
  supply: { names: ['point_supply', 'point_dip', 'resting'], how: 'share' },
  coil_warmer: { names: ['coil_T'], how: 'plus' },
  ambient: { names: ['run_ambient', 'fuse_ambient', 'relay_ambient'], how: 'plus' },
};

/** What came of an install. */
export interface Outcome {
  /** In the order of the figures; NaN for what is not known. */
  readonly figures: Float64Array;
  /** In the order of the judged: 1 passes, 0 does not. */
  readonly passes: Uint8Array;
  /** Index of the coil that is left with least; −1 where no energy is known. */
  readonly weakest: number;
}

export class Installs {
  readonly inputs: readonly Input[];
  readonly figures: readonly Figure[];
  /** Rules and what they are applied to. */
  readonly judged: ReturnType<typeof judged>;
  private readonly design: Design;
  /** Value and limit of each of the judged; values of each figure that is no margin; energy of each coil at each point. */
  private readonly held: readonly (readonly [value: Ask, limit: Ask])[];
  private readonly values: readonly (readonly Ask[])[];
  private readonly energy: readonly (readonly Ask[])[];
  private readonly coils: Coils;
  private readonly nominal: ReadonlyMap<QuantityName, readonly Entry[]>;
  private readonly fixed: readonly number[];
  private readonly henry: number | null;

  /** `alike` and `feed` are two models of the same design, as it is built. */
  constructor(design: Design, grid: Evaluation['grid'], alike: Model, feed: Model) {
    this.design = design;
    this.inputs = inputsOf(design);
    this.figures = figuresOf(design);
    this.judged = judged(grid, design);
    this.held = this.judged.map(({ rule, at }) => {
      const { value, limit } = RULES[rule];
      return [orNull(feed.asker(value, at)), orNull(feed.asker(limit, at))] as const;
    });
    this.values = this.figures.map((figure) =>
      'rule' in figure ? [] : figure.at.map((at) => orNull(feed.asker(figure.name, at))),
    );
    this.energy = design.coils.map((_, coil) =>
      design.points.map((__, point) => feed.asker('coil_energy', { coil, point })),
    );
    const counts = Object.fromEntries(AXES.map((axis) => [axis, grid.axes[axis].length])) as Record<
      Axis,
      number
    >;
    this.coils = new Coils(design, alike, feed, counts);
    this.nominal = new Map(
      [...Object.values(FOLLOWS).flatMap(({ names }) => names), 'dwell_time', 'wire_length'].map((name) => [
        name as QuantityName,
        entriesOf(design, counts, name as QuantityName),
      ]),
    );
    this.fixed = design.wires.map(({ run }) => feed.asker('fixed_ohm', { run })() ?? 0);
    this.henry = feed.asker('coil_L')();
    // The resistance of each coil is known here: nothing is taken off it again for its tolerance.
    for (const model of [alike, feed]) model.setAll([{ name: 'tolerance_ohm', at: {}, value: 0 }]);
  }

  /** Works out the install with these places of the inputs, each between 0 and 1. */
  outcome(places: ArrayLike<number>): Outcome {
    const { entries, coils, added } = this.drawn(places);
    this.coils.put(coils, entries, [
      { name: 'wire_ohm', values: added, how: 'added' },
      { name: 'cold_ohm', values: added, how: 'added' },
    ]);
    const passes = new Uint8Array(this.judged.length);
    const margins = new Map<RuleId, number>();
    this.judged.forEach(({ rule }, i) => {
      const [value, limit] = this.held[i] as readonly [Ask, Ask];
      const { verdict, margin } = judgeRule(rule, value(), limit());
      passes[i] = verdict === 'pass' ? 1 : 0;
      const before = margins.get(rule) ?? Number.POSITIVE_INFINITY;
      margins.set(rule, margin === null ? Number.NaN : Math.min(before, margin));
    });
    const figures = Float64Array.from(this.figures, (figure, i) => {
      if ('rule' in figure) return margins.get(figure.rule) ?? Number.NaN;
      const values = (this.values[i] as readonly Ask[]).map((ask) => ask() ?? Number.NaN);
      return figure.least ? Math.min(...values) : Math.max(...values);
    });
    return { figures, passes, weakest: this.weakest() };
  }

  /** What is drawn: entries of the model, coils, and what joints add to each conductor [ohm]. */
  private drawn(places: ArrayLike<number>): { entries: Entry[]; coils: Coil[]; added: Float64Array } {
    const { design, nominal, fixed } = this;
    const { coil } = design;
    const coils = design.coils.map(() => ({
      ohm: coil.resistance,
      henry: this.henry,
      limit: coil.current_limit,
    }));
    const added = new Float64Array(design.wires.length);
    const entries: Entry[] = [];
    const moved = (name: QuantityName, change: (value: number) => number): void => {
      for (const entry of nominal.get(name) ?? [])
        if (typeof entry.value === 'number') entries.push({ ...entry, value: change(entry.value) });
    };
    this.inputs.forEach((input, i) => {
      const off = deviationOf(input, places[i] as number, design);
      const own = coils[input.index ?? 0] as (typeof coils)[number];
      const follows = FOLLOWS[input.kind];
      if (follows !== undefined)
        for (const name of follows.names)
          moved(name, (value) => (follows.how === 'share' ? value * (1 + off) : value + off));
      else if (input.kind === 'dwell') moved('dwell_time', (value) => value * (1 + off));
      else if (input.kind === 'length') {
        const entry = nominal.get('wire_length')?.[input.index ?? 0] as Entry;
        entries.push({ ...entry, value: (entry.value as number) * (1 + off) });
      } else if (input.kind === 'joint_resistance')
        added[input.index ?? 0] = (fixed[input.index ?? 0] as number) * off;
      else if (input.kind === 'coil_resistance') own.ohm = own.ohm === null ? null : own.ohm * (1 + off);
      else if (input.kind === 'coil_inductance')
        own.henry = own.henry === null ? null : own.henry * (1 + off);
      else if (input.kind === 'current_limit') own.limit = own.limit === null ? null : own.limit * (1 + off);
    });
    return { entries, coils, added };
  }

  /** The coil that is left with least energy at any point; the first of those that are as bad. */
  private weakest(): number {
    let [found, least] = [-1, Number.POSITIVE_INFINITY];
    this.energy.forEach((all, coil) => {
      for (const ask of all) {
        const energy = ask();
        if (energy !== null && energy < least) [found, least] = [coil, energy];
      }
    });
    return found;
  }
}

/** Null as well where it comes to an error. */
const orNull =
  (ask: Ask): Ask =>
  () => {
    try {
      return ask();
    } catch {
      return null;
    }
  };

/** All entries of an input, as the design has them. */
function entriesOf(design: Design, counts: Readonly<Record<Axis, number>>, name: QuantityName): Entry[] {
  const q: Quantity = QUANTITIES[name];
  if (q.kind !== 'input') throw new Error(`${name} is no input`);
  const [axis] = q.per ?? [];
  const members: At[] =
    axis === undefined ? [{}] : Array.from({ length: counts[axis] }, (_, i) => ({ [axis]: i }));
  return members.map((at) => ({ name, at, value: inputValue(design, q, at) }));
}
