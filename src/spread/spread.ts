/** Many installs of one design, gathered: how figures lie, which rules hold in which share of them, what matters most. */
import type { Design } from '../design/design.ts';
import { evaluate } from '../engine/evaluate.ts';
import type { Overall } from '../findings/finding.ts';
import type { RuleId } from '../findings/rules.ts';
import { BUILT, builtOf } from './built.ts';
import { type Figure, isAdvice } from './figures.ts';
import type { Input } from './inputs.ts';
import { Installs } from './install.ts';
import { Quantiles } from './quantiles.ts';
import { Sequence } from './sequence.ts';
import { Shares } from './shares.ts';

export const USUAL_SAMPLES = 10_000;
export const MOST_SAMPLES = 1_000_000;

/** The installs of a design, ready to be worked out. */
export function installsOf(design: Design): Installs {
  const built = builtOf(evaluate(design));
  const [feed, alike] = [evaluate(built), evaluate(built)];
  for (const model of [feed, alike]) model.fix(BUILT);
  return new Installs(built, feed.grid, alike, feed);
}

/** Outcomes of installs one after the other. */
export interface Block {
  readonly figures: Float64Array;
  readonly passes: Uint8Array;
  readonly weakest: Int16Array;
}

/** Works out the installs `from` to `to`, the last one excluded. */
export function blockOf(installs: Installs, sequence: Sequence, from: number, to: number): Block {
  const { figures, judged, inputs } = installs;
  const block = {
    figures: new Float64Array((to - from) * figures.length),
    passes: new Uint8Array((to - from) * judged.length),
    weakest: new Int16Array(to - from),
  };
  const places = new Float64Array(inputs.length);
  for (let index = from; index < to; index++) {
    sequence.point(index, places);
    const outcome = installs.outcome(places);
    block.figures.set(outcome.figures, (index - from) * figures.length);
    block.passes.set(outcome.passes, (index - from) * judged.length);
    block.weakest[index - from] = outcome.weakest;
  }
  return block;
}

/** A figure over all installs. */
export interface Told {
  readonly figure: Figure;
  /** As the design has it. */
  readonly nominal: number | null;
  /** Null where nothing is known. */
  readonly median: number | null;
  readonly low: number | null;
  readonly high: number | null;
  readonly least: number | null;
  readonly most: number | null;
  /** First-order shares of its variance, by group of inputs, the largest first. */
  readonly shares: readonly { readonly group: string; readonly share: number }[];
}

export interface Spread {
  readonly design: Design;
  readonly seed: number;
  readonly samples: number;
  readonly inputs: readonly Input[];
  /** The verdict on the design as it is. */
  readonly verdict: Overall;
  readonly figures: readonly Told[];
  /** Share of installs that pass every rule but advice. */
  readonly passing: number;
  /** Share of installs in which a rule holds for all that it applies to. */
  readonly rules: readonly { readonly rule: RuleId; readonly advice: boolean; readonly share: number }[];
  /** Share of installs in which each coil is left with least. */
  readonly weakest: readonly { readonly coil: string; readonly share: number }[];
}

/** Takes blocks in their order. */
export class Gathering {
  private readonly design: Design;
  private readonly seed: number;
  private readonly verdict: Overall;
  private readonly installs: Installs;
  private readonly sequence: Sequence;
  private readonly quantiles: Quantiles[];
  private readonly shares: Shares[];
  private readonly rules: readonly RuleId[];
  private readonly holds: number[];
  private readonly weakest: number[];
  private passing = 0;
  private samples = 0;
  private readonly places: Float64Array;
  private readonly nominal: Float64Array;

  constructor(design: Design, verdict: Overall, seed: number, expected: number) {
    this.design = design;
    this.seed = seed;
    this.verdict = verdict;
    this.installs = installsOf(design);
    const { inputs, figures, judged } = this.installs;
    this.sequence = new Sequence(inputs.length, seed);
    this.quantiles = figures.map(() => new Quantiles());
    this.shares = figures.map(() => new Shares(inputs.length, expected));
    this.rules = [...new Set(judged.map(({ rule }) => rule))];
    this.holds = this.rules.map(() => 0);
    this.weakest = design.coils.map(() => 0);
    this.places = new Float64Array(inputs.length);
    // As designed: a coil is as warm as stated, everything else in the middle.
    this.nominal = this.installs.outcome(
      inputs.map(({ kind }) => (kind === 'coil_warmer' ? 0 : 0.5)),
    ).figures;
  }

  get figures(): readonly Figure[] {
    return this.installs.figures;
  }

  take(block: Block): void {
    const { figures, judged } = this.installs;
    block.weakest.forEach((coil, k) => {
      this.sequence.point(this.samples, this.places);
      this.samples += 1;
      figures.forEach((_, i) => {
        const value = block.figures[k * figures.length + i] as number;
        this.quantiles[i]?.add(value);
        this.shares[i]?.add(this.places, value);
      });
      const broken = new Set(
        judged.flatMap(({ rule }, i) => (block.passes[k * judged.length + i] === 0 ? [rule] : [])),
      );
      this.rules.forEach((rule, i) => {
        if (!broken.has(rule)) this.holds[i] = (this.holds[i] as number) + 1;
      });
      if ([...broken].every(isAdvice)) this.passing += 1;
      if (coil >= 0) this.weakest[coil] = (this.weakest[coil] as number) + 1;
    });
  }

  /** What came of all that was taken. */
  spread(): Spread {
    const { design, installs, samples } = this;
    const { inputs, figures } = installs;
    const part = (count: number): number => (samples === 0 ? 0 : count / samples);
    return {
      design,
      seed: this.seed,
      samples,
      inputs,
      verdict: this.verdict,
      figures: figures.map((figure, i) => {
        const own = this.quantiles[i] as Quantiles;
        const nominal = this.nominal[i] as number;
        return {
          figure,
          nominal: Number.isFinite(nominal) ? nominal : null,
          median: own.at(0.5),
          low: own.at(0.05),
          high: own.at(0.95),
          least: own.count === 0 ? null : own.least,
          most: own.count === 0 ? null : own.most,
          shares: grouped(inputs, this.shares[i]?.shares() ?? []),
        };
      }),
      passing: part(this.passing),
      rules: this.rules.map((rule, i) => ({
        rule,
        advice: isAdvice(rule),
        share: part(this.holds[i] as number),
      })),
      weakest: design.coils.map(({ id }, i) => ({ coil: id, share: part(this.weakest[i] as number) })),
    };
  }
}

/** Shares of inputs that are told together add up: the inputs are independent of each other. */
function grouped(inputs: readonly Input[], shares: readonly number[]): { group: string; share: number }[] {
  const sums = new Map<string, number>();
  for (const [i, { group }] of inputs.entries())
    sums.set(group, (sums.get(group) ?? 0) + (shares[i] as number));
  return [...sums]
    .map(([group, share]) => ({ group, share: Math.min(1, Math.max(0, share)) }))
    .sort((a, b) => b.share - a.share);
}
