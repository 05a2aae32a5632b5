/**
 * An install with parts that nobody knows, judged as far as it goes.
 *
 * Each unknown takes every value that is possible, or that readings leave possible, one after the other, the others
 * standing at their most likely one; then all stand at one end and at the other. What holds for all of them is judged; where it
 * depends on the unknown the verdict is unknown, and the unknown that decides most is the one to look at first.
 */

import { BUNDLE } from '../data/ampacity.ts';
import { FUSE_RATINGS } from '../data/fuse-ratings.ts';
import type { Design, Measured, Unknown } from '../design/design.ts';
import { FUSE_TYPES, SIZES } from '../design/names.ts';
import type { Evaluation } from '../engine/evaluate.ts';
import { type Finding, VERDICTS } from '../findings/finding.ts';
import { findings } from '../findings/read.ts';
import { RULES, type Rule, type RuleId } from '../findings/rules.ts';
import { expectedAt } from './expected.ts';
import { copperBySize } from './sizes.ts';

/** From these counts on a bundle has another factor. */
const BUNDLES = BUNDLE.rows.map(({ from }) => from);

export interface Open {
  readonly unknown: Unknown;
  readonly run: string;
  /** What it may be, in order: thinnest first, fewest first. Empty for a relay. */
  readonly options: readonly string[];
  /** The options that readings leave; null where none was taken that tells. */
  readonly consistent: readonly string[] | null;
  /** Options with which everything passes that hangs on it: of sizes the thinnest, of bundles the largest, of types all. */
  readonly offered: readonly string[];
  /** Rules, with their subjects, whose verdict hangs on it. */
  readonly decides: readonly { readonly rule: RuleId; readonly subject: string }[];
  /** What to look at. */
  readonly look: string;
}

const LOOKS: Readonly<Record<Unknown['kind'], string>> = {
  gauge:
    'the size printed on the insulation, or the diameter of the bare strands; a drop over the run narrows it down',
  bundle: 'how many wires that carry current lie in the same sleeve or tie',
  fuse_type: 'the shape of the fuse: miniature, medium or large blade, or bolted strip',
  relay:
    'the rating printed on the case, and the data sheet for its temperature, pull-in voltage and suppression',
};

/** Rules that only a known relay can pass. */
const OF_RELAY: readonly RuleId[] = [
  'relay_contact',
  'relay_inductive',
  'relay_pull_in',
  'relay_again',
  'relay_holds',
  'relay_holds_unsaid',
  'relay_coil',
  'relay_coil_long',
  'relay_listed',
  'relay_worn',
  'relay_tab_wire',
  'relay_suppression',
  'relay_tab',
  'relay_make',
];

export interface Settled {
  readonly findings: readonly Finding[];
  /** The one that decides most first. */
  readonly open: readonly Open[];
}

/** Judges what unknown parts leave open. Sets the inputs of the evaluation to what is most likely. */
export function settle(e: Evaluation): Settled {
  const { unknowns } = e.design;
  if (unknowns.length === 0) return { findings: findings(e), open: [] };
  const choices = unknowns.map((unknown) => choicesOf(e, unknown));
  const put = (i: number, option: number): void => {
    const { unknown, options } = choices[i] as Choices;
    const value = options[option];
    if (value !== undefined && unknown.kind !== 'relay')
      e.set(INPUT[unknown.kind], { run: unknown.run }, unknown.kind === 'bundle' ? Number(value) : value);
  };
  choices.forEach(({ likely }, i) => {
    put(i, likely);
  });
  const base = findings(e);
  const seen: (readonly Finding[])[] = [base];
  const alone = choices.map(({ options, likely, possible }, i) => {
    const judged = options.map((_, option) => {
      put(i, option);
      const found = findings(e);
      if (possible.includes(option)) seen.push(found);
      return found;
    });
    put(i, likely);
    return judged;
  });
  for (const end of [0, -1]) {
    choices.forEach(({ possible }, i) => {
      const option = possible.at(end);
      if (option !== undefined) put(i, option);
    });
    seen.push(findings(e));
  }
  choices.forEach(({ likely }, i) => {
    put(i, likely);
  });
  const relays = unknowns.filter(({ kind }) => kind === 'relay').map(({ run }) => e.design.runs[run]?.name);
  return {
    findings: base
      .map((f) => merged(f, seen, relays))
      .sort((a, b) => VERDICTS.indexOf(a.verdict) - VERDICTS.indexOf(b.verdict)),
    open: choices
      .map((own, i) => openOf(e.design, own, alone[i] ?? [], base))
      .sort((a, b) => b.decides.length - a.decides.length),
  };
}

const INPUT = { gauge: 'run_gauge', bundle: 'run_bundle', fuse_type: 'fuse_type' } as const;

interface Choices {
  readonly unknown: Unknown;
  readonly options: readonly string[];
  /** Indices of the options that readings leave, all when none tells. */
  readonly possible: readonly number[];
  /** Index of the option that stands in. */
  readonly likely: number;
  readonly told: boolean;
}

function choicesOf(e: Evaluation, unknown: Unknown): Choices {
  const all = (options: readonly string[], likely = 0): Choices => ({
    unknown,
    options,
    possible: [...options.keys()],
    likely,
    told: false,
  });
  switch (unknown.kind) {
    case 'relay':
      return all([]);
    case 'bundle':
      return all(BUNDLES.map(String));
    case 'fuse_type': {
      const rating = e.design.runs[unknown.run]?.fuse?.rating;
      const types = FUSE_RATINGS.rows.filter((row) => row.rating === rating).map((row) => row.type);
      // Of a rating that is on no list it may be any.
      return all(types.length > 0 ? [...new Set(types)] : FUSE_TYPES);
    }
    case 'gauge':
      return gauges(e, unknown);
  }
}

/** Sizes of the design's series, and which of them the drops over the run leave. */
function gauges(e: Evaluation, unknown: Unknown): Choices {
  const { series } = e.design.sizes;
  const options = SIZES[series].map((size) => `${size} ${series}`);
  const told = e.design.measured.filter(
    (m) =>
      m.wire !== null &&
      !m.across &&
      e.design.wires[m.wire]?.run === unknown.run &&
      (m.what === 'drop' || m.what === 'resistance'),
  );
  const chosen = options.indexOf(String(e.value('gauge', { run: unknown.run })));
  if (told.length === 0)
    return { unknown, options, possible: [...options.keys()], likely: Math.max(0, chosen), told: false };
  const fits = options.map((size) => told.map((m) => fitOf(e, m, size)));
  const possible = [...options.keys()].filter((i) => (fits[i] ?? []).every((fit) => fit?.within === true));
  const off = (i: number): number => (fits[i] ?? []).reduce((sum, fit) => sum + (fit?.off ?? 9), 0);
  const likely = [...options.keys()].reduce((a, b) => (off(b) < off(a) ? b : a));
  return { unknown, options, possible: possible.length > 0 ? possible : [likely], likely, told: true };
}

/** Whether a reading is within what this size would show, and how far from what is expected of it (logarithm). */
function fitOf(e: Evaluation, m: Measured, size: string): { within: boolean; off: number } | null {
  const wire = m.wire as number;
  const { run } = e.design.wires[wire] as Design['wires'][number];
  const own = copperBySize(e, wire).find((one) => one.size === size);
  const now = e.number('wire_copper_ohm', { wire });
  const x = expectedAt(e, m);
  const whole = e.number('wire_ohm', { wire });
  if (!own || !now || !whole || x.expected === null || x.low === null || x.high === null) return null;
  const fixed = e.number('fixed_ohm', { run }) ?? 0;
  const { length, joint_resistance: joint } = e.design.tolerance;
  // The currents hardly hang on this run: the reading goes with the resistance.
  const amps = m.what === 'resistance' ? 1 : x.expected / whole;
  const [least, most] =
    m.what === 'resistance'
      ? [1, 1]
      : [
          x.low / (e.number('spread_wire_ohm', { spread: 0, wire }) ?? 1),
          x.high / (e.number('spread_wire_ohm', { spread: 2, wire }) ?? 1),
        ];
  const cold = (e.number('expected_ohm', { spread: 1, wire }) ?? whole) - fixed;
  const copper = (own.ohm / now) * cold;
  const low = (copper * (1 - length) + fixed * (1 - joint)) * least;
  const high = (own.ohm * (1 + length) + fixed * (1 + joint)) * most;
  return {
    within: m.value >= low && m.value <= high,
    off: Math.abs(Math.log(m.value / ((own.ohm + fixed) * amps))),
  };
}

/** Whether there is nothing to compare. */
const untold = ({ value, limit }: Finding): boolean => value === null || limit === null;

/** What holds for all possibilities stays; what hangs on an unknown is unknown. */
function merged(
  f: Finding,
  seen: readonly (readonly Finding[])[],
  relays: readonly (string | undefined)[],
): Finding {
  const same = ({ rule, subject }: Finding): boolean => rule === f.rule && subject === f.subject;
  const verdicts = new Set(seen.map((found) => found.find(same)?.verdict));
  const unsure = verdicts.size > 1 || (OF_RELAY.includes(f.rule) && relays.includes(f.subject) && !untold(f));
  return unsure
    ? {
        ...f,
        verdict: (RULES[f.rule] as Rule).advice ? 'advice' : 'unknown',
        value: null,
        margin: null,
        marginal: false,
      }
    : f;
}

function openOf(
  design: Design,
  { unknown, options, possible, told }: Choices,
  judged: readonly (readonly Finding[])[],
  base: readonly Finding[],
): Open {
  const run = design.runs[unknown.run]?.name ?? '';
  const verdict = (found: readonly Finding[], f: Finding) =>
    found.find(({ rule, subject }) => rule === f.rule && subject === f.subject)?.verdict;
  const among = possible.map((i) => judged[i] ?? []);
  const decides =
    unknown.kind === 'relay'
      ? base.filter(({ rule, subject }) => OF_RELAY.includes(rule) && subject === run)
      : base.filter((f) => new Set(among.map((found) => verdict(found, f))).size > 1);
  const passing = possible.filter((i) => decides.every((f) => verdict(judged[i] ?? [], f) === 'pass'));
  const names = passing.map((i) => options[i] as string);
  return {
    unknown,
    run,
    options,
    consistent: told ? possible.map((i) => options[i] as string) : null,
    offered:
      unknown.kind === 'gauge' ? names.slice(0, 1) : unknown.kind === 'bundle' ? names.slice(-1) : names,
    decides: decides.map(({ rule, subject }) => ({ rule, subject })),
    look: LOOKS[unknown.kind],
  };
}
