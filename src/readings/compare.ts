/** Two feeds side by side: currents, supply and energy at the worst coil, heat, copper, parts, findings. */
import type { At } from '../basis/quantity.ts';
import type { Evaluation } from '../engine/evaluate.ts';
import { open as isOpen } from '../findings/finding.ts';
import type { Result } from '../findings/result.ts';
import type { RuleId } from '../findings/rules.ts';
import { WORDS } from '../findings/words.ts';

export interface Sided {
  /** Short, such as A. */
  readonly name: string;
  readonly title: string;
  readonly result: Result;
}

/** What is set side by side. Units of the model; the second one is what people read. */
export const FIGURES = {
  average: { label: 'Average current of all coils', unit: 'A', shown: 'A' },
  effective: { label: 'Effective current, first run', unit: 'A', shown: 'A' },
  peak: { label: 'Peak current, first run', unit: 'A', shown: 'A' },
  supply: { label: 'Supply at the worst coil', unit: 'V', shown: 'V' },
  energy: { label: 'Energy of the worst coil', unit: 'J', shown: 'mJ' },
  kept: { label: 'Energy kept', unit: '1', shown: '%' },
  dwell: { label: 'Dwell that makes up for it', unit: 's', shown: 'ms' },
  heat: { label: 'Heat in the wiring', unit: 'W', shown: 'W' },
} as const;
export type Figure = keyof typeof FIGURES;
export const FIGURE_NAMES = Object.keys(FIGURES) as Figure[];

type Pair<T> = readonly [T, T];

export interface AtPoint {
  readonly name: string;
  readonly figures: Readonly<Record<Figure, Pair<number | null>>>;
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
  /** Points that only one has. */
  readonly alone: Pair<readonly string[]>;
  readonly copper: Pair<number | null>;
  readonly drop: Pair<number | null>;
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
  return {
    sides,
    points: names[0]
      .filter((name) => names[1].includes(name))
      .map((name) => ({ name, figures: figuresAt(both, name) })),
    alone: [
      names[0].filter((name) => !names[1].includes(name)),
      names[1].filter((name) => !names[0].includes(name)),
    ],
    copper: both((e) => e.number('copper_total')),
    drop: both((e) => e.number('worst_drop')),
    parts: both(partsOf),
    vanish: changes.filter((change) => open(change, 0) && !open(change, 1)),
    appear: changes.filter((change) => !open(change, 0) && open(change, 1)),
    stay: changes.filter((change) => open(change, 0) && open(change, 1)),
  };
}

function figuresAt(both: <T>(of: (e: Evaluation) => T) => Pair<T>, name: string): AtPoint['figures'] {
  const at = (figure: Figure): Pair<number | null> => both((e) => figureOf(e, figure, pointOf(e, name)));
  return Object.fromEntries(FIGURE_NAMES.map((figure) => [figure, at(figure)])) as AtPoint['figures'];
}

export const pointOf = ({ design }: Evaluation, name: string): number =>
  design.points.findIndex((point) => point.name === name);

/** Index of the coil that is left with least at a point. */
function worstCoil(e: Evaluation, point: number): number {
  const supplies = e.design.coils.map((_, coil) => e.number('coil_supply', { coil, point }) ?? 0);
  return supplies.indexOf(Math.min(...supplies));
}

/** A figure of one side at a point; null when it is not known. */
export function figureOf(e: Evaluation, figure: Figure, point: number): number | null {
  const coil = (): At => ({ coil: worstCoil(e, point), point });
  switch (figure) {
    case 'average':
      return e.number('total_average', { point });
    case 'effective':
      return e.number('effective', { wire: 0, point });
    case 'peak':
      return e.number('peak_current', { wire: 0, point });
    case 'supply':
      return e.number('coil_supply', coil());
    case 'energy':
      return e.number('coil_energy', coil());
    case 'kept':
      return e.number('energy_kept', coil());
    case 'dwell':
      return e.number('coil_winning_dwell', coil());
    case 'heat':
      return e.design.wires.reduce(
        (sum, _, wire) =>
          sum + (e.number('wire_ohm', { wire }) ?? 0) * (e.number('effective', { wire, point }) ?? 0) ** 2,
        0,
      );
  }
}

/** `6 × 10 AWG, 2.7 m`, `20 A fuse, type E`, `40 A relay`, `22 joints` */
function partsOf(e: Evaluation): string[] {
  const { wires, runs } = e.design;
  const lengths = new Map<string, { count: number; metres: number }>();
  for (const { run, length } of wires) {
    const size = String(e.value('gauge', { run })).replace('mm2', 'mm²');
    const known = lengths.get(size) ?? { count: 0, metres: 0 };
    lengths.set(size, { count: known.count + 1, metres: known.metres + length });
  }
  const joints = wires.reduce((sum, { run }) => sum + (runs[run]?.joints ?? 0), 0);
  return [
    ...[...lengths].map(([size, { count, metres }]) => `${count} × ${size}, ${metres.toFixed(1)} m`),
    ...runs.flatMap((r, run) =>
      r.fuse ? [`${e.number('fuse_rating', { run })} A fuse, type ${r.fuse.type}`] : [],
    ),
    ...runs.flatMap((r, run) => (r.relay ? [`${e.number('relay_rating', { run })} A relay`] : [])),
    `${joints} joints`,
  ];
}

function changesOf(a: Result, b: Result): Change[] {
  const open = ({ findings }: Result, rule: RuleId): string[] =>
    findings.filter((f) => f.rule === rule && isOpen(f)).map(({ subject }) => subject);
  const rules = [...new Set([...a.findings, ...b.findings].filter(isOpen).map((f) => f.rule))];
  return rules.map((rule) => ({ rule, title: WORDS[rule].title, subjects: [open(a, rule), open(b, rule)] }));
}
