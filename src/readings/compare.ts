/** Two feeds side by side: currents, supply and energy at the worst coil, heat, copper, parts, findings. */
import type { At } from '../basis/quantity.ts';
import type { Evaluation } from '../engine/evaluate.ts';
import { open as isOpen } from '../findings/finding.ts';
import type { Result } from '../findings/result.ts';
import type { RuleId } from '../findings/rules.ts';
import { WORDS } from '../findings/words.ts';
import { bought } from '../views/buy.ts';
import { labelOf, say } from '../views/print.ts';
import { type Row, rowOf } from '../views/view.ts';
import { COMPARED, FEED } from '../views/views.ts';
import { type Exact, exactOf } from './exact.ts';
import { gainOf } from './gain.ts';

export interface Sided {
  /** Short, such as A. */
  readonly name: string;
  readonly title: string;
  readonly result: Result;
}

type Pair<T> = readonly [T, T];

export interface AtPoint {
  readonly name: string;
  /** Engine speed, and supply at the battery posts of the second feed [V]. */
  readonly rpm: number | null;
  readonly volts: number | null;
  /** A row of the view for each side, and where it stands in each. */
  readonly figures: Pair<Row<typeof COMPARED>>;
  readonly at: Pair<At>;
  /** By the exact currents; null where only a peak current is known of the coil. */
  readonly exact: Pair<Exact | null>;
}

/** A rule that does not pass on one side. */
export interface Change {
  readonly rule: RuleId;
  readonly title: string;
  /** Runs or points where it fails or is unknown, by side. */
  readonly subjects: Pair<readonly string[]>;
}

export interface Compared {
  readonly sides: Pair<Sided>;
  /** Points that both have, in the order of the first. */
  readonly points: readonly AtPoint[];
  /** What the second gives that the first does not, for a customer; null where no energy is known. */
  readonly gain: string | null;
  /** Points that only one has. */
  readonly alone: Pair<readonly string[]>;
  readonly totals: Pair<Row<typeof FEED>>;
  readonly parts: Pair<readonly string[]>;
  /** Rules that do not pass with the first and do with the second; and the other way round; and with both. */
  readonly vanish: readonly Change[];
  readonly appear: readonly Change[];
  readonly stay: readonly Change[];
}

export function compare(a: Sided, b: Sided): Compared {
  const sides: Pair<Sided> = [a, b];
  const both = <T>(of: (e: Evaluation) => T): Pair<T> => [of(a.result.evaluation), of(b.result.evaluation)];
  const names = both((e) => e.design.points.map(({ name }) => name));
  const changes = changesOf(a.result, b.result);
  const open = (change: Change, side: 0 | 1): boolean => change.subjects[side].length > 0;
  const points = names[0]
    .filter((name) => names[1].includes(name))
    .map((name) => {
      const at = both((e) => placeOf(e, name));
      const second = b.result.evaluation;
      return {
        name,
        rpm: second.number('speed', at[1]),
        volts: second.number('supply', at[1]),
        at,
        figures: both((e) => rowOf(COMPARED, e, placeOf(e, name))),
        exact: both((e) => exactOf(e, pointOf(e, name))),
      };
    });
  return {
    sides,
    points,
    gain: gainOf(points),
    alone: [
      names[0].filter((name) => !names[1].includes(name)),
      names[1].filter((name) => !names[0].includes(name)),
    ],
    totals: both((e) => rowOf(FEED, e, {})),
    parts: both(partsOf),
    vanish: changes.filter((change) => open(change, 0) && !open(change, 1)),
    appear: changes.filter((change) => !open(change, 0) && open(change, 1)),
    stay: changes.filter((change) => open(change, 0) && open(change, 1)),
  };
}

export const pointOf = ({ design }: Evaluation, name: string): number =>
  design.points.findIndex((point) => point.name === name);

const placeOf = (e: Evaluation, name: string): At => ({ point: pointOf(e, name), speed: pointOf(e, name) });

/** `6 × 10 AWG, class C: 2.7 m`, `20 A fuse, type E`, `50 A relay`, `22 joints`; runs of the same size apart. */
function partsOf(e: Evaluation): string[] {
  const all = bought(e);
  return [
    ...all.map(({ run, size, lengths }) => `${run}: ${size}, ${lengths}`),
    ...all.flatMap(({ parts }) => parts),
    `${labelOf('joints_total')}: ${say(e, 'joints_total')}`,
  ];
}

function changesOf(a: Result, b: Result): Change[] {
  const open = ({ findings }: Result, rule: RuleId): string[] =>
    findings.filter((f) => f.rule === rule && isOpen(f)).map(({ subject }) => subject);
  const rules = [...new Set([...a.findings, ...b.findings].filter(isOpen).map((f) => f.rule))];
  return rules.map((rule) => ({ rule, title: WORDS[rule].title, subjects: [open(a, rule), open(b, rule)] }));
}
