/**
 * Remedies that were tried.
 *
 *   what fails ─► changes ─► evaluate each ─► those with which less fails and nothing new ─► at most three
 *                                                    │
 *                                                    └─ none mends all: the best one, and on from there
 */
import type { Finding } from '../findings/finding.ts';
import type { Result } from '../findings/result.ts';
import { say } from '../views/print.ts';
import { changesFor } from './changes.ts';
import type { Change, Judge, Kind, Remedy } from './remedy.ts';

/** Remedies that are told, and changes that are put together at most. Arbitrary. */
const MOST = 3;
const STEPS = 4;
/** Changes that are evaluated at a time, the least effort first: a few seconds for a large design. Arbitrary. */
const EVALUATED = 120;

/** Kinds of change that leave sizes to be chosen. */
const ANEW: readonly Kind[] = ['fuse and size', 'size'];

const failing = ({ findings }: Result): Finding[] => findings.filter(({ verdict }) => verdict === 'fail');
const keyOf = ({ rule, subject }: Finding): string => `${rule} ${subject}`;

interface Tried {
  readonly change: Change;
  readonly result: Result;
  readonly left: readonly Finding[];
}

/** Changes with which the most pressing failure passes, or fewer fail, and nothing fails that did not; the best first. */
function tryAll(result: Result, judge: Judge): Tried[] {
  const before = failing(result);
  const known = new Set(before.map(keyOf));
  const { runs } = result.evaluation.design;
  const open = !solved(result);
  const subjects = [...runs.keys()].filter((run) =>
    before.some(({ subject }) => subject === runs[run]?.name),
  );
  // A drop is not of one run: any may have the size that is too thin.
  const whole = before.some(({ subject }) => !runs.some(({ name }) => name === subject));
  const changes = changesFor(result, whole ? [...runs.keys()] : subjects).sort((a, b) => a.effort - b.effort);
  const tried: Tried[] = [];
  const enough = new Set<Kind>();
  for (const change of changes.slice(0, EVALUATED)) {
    if (enough.has(change.kind)) continue;
    const found = judge(change.design);
    const left = failing(found);
    if (left.length >= before.length || left.some((f) => !known.has(keyOf(f)))) continue;
    // A size that stands in where none was found is none.
    if (ANEW.includes(change.kind) && left.some(({ rule }) => rule === 'size_found')) continue;
    if (barely(before, found)) continue;
    tried.push({ change, result: found, left });
    // Of its kind it is the least change that mends all; where it decides what others become, all are weighed.
    if (left.length === 0 && !(open && change.kind === 'size')) enough.add(change.kind);
    if (enough.size >= MOST) break;
  }
  return (open ? leanest(tried) : tried).sort(
    (a, b) => a.left.length - b.left.length || a.change.effort - b.change.effort,
  );
}

const solved = ({ evaluation }: Result): boolean => evaluation.number('solved') === 1;

/** Of the sizes that mend all only that with which the whole has least copper. */
function leanest(tried: readonly Tried[]): Tried[] {
  const copper = ({ result: { evaluation: e } }: Tried): number => e.number('copper_total') ?? Infinity;
  const whole = tried.filter(({ change, left }) => change.kind === 'size' && left.length === 0);
  const least = Math.min(...whole.map(copper));
  const best = whole.find((one) => copper(one) === least);
  return tried.filter((one) => one === best || !whole.includes(one));
}

/**
 * Whether a fuse that could not break a short now can only because it has more resistance than the one before: nobody
 * relies on that.
 */
const barely = (before: readonly Finding[], { findings }: Result): boolean =>
  before.some(
    (f) =>
      f.rule === 'breaking' &&
      findings.some((g) => keyOf(g) === keyOf(f) && g.verdict === 'pass' && (g.limit ?? 0) <= (f.limit ?? 0)),
  );

/** Of each kind of change the first. */
const different = (found: readonly Tried[]): Tried[] =>
  found.filter(({ change }, i) => found.findIndex((other) => other.change.kind === change.kind) === i);

/** At most three remedies of a design that fails, the least change first; none where nothing that was tried helps. */
export function remediesOf(result: Result, judge: Judge): Remedy[] {
  if (result.verdict !== 'fail') return [];
  const singles = tryAll(result, judge);
  const all = different(singles.filter(({ left }) => left.length === 0));
  if (all.length > 0)
    return all
      .sort((a, b) => a.change.effort - b.change.effort)
      .slice(0, MOST)
      .map((one) => remedy(result, [one]));
  const chained = chain(result, singles, judge);
  const parts = different(singles)
    .slice(0, MOST - (chained === null ? 0 : 1))
    .map((one) => remedy(result, [one]));
  return [...(chained === null ? [] : [chained]), ...parts];
}

/** Several changes together: each time the one that leaves least. Null where they do not mend all. */
function chain(result: Result, singles: readonly Tried[], judge: Judge): Remedy | null {
  const steps: Tried[] = [];
  let now = singles;
  while (steps.length < STEPS) {
    const [best] = now;
    if (best === undefined) return null;
    steps.push(best);
    if (best.left.length === 0) return remedy(result, steps);
    now = tryAll(best.result, judge);
  }
  return null;
}

function remedy(before: Result, steps: readonly Tried[]): Remedy {
  const last = steps.at(-1) as Tried;
  const left = new Set(last.left.map(keyOf));
  const moved = (name: 'copper_total' | 'worst_drop'): number | null => {
    const [a, b] = [before.evaluation.number(name), last.result.evaluation.number(name)];
    return a === null || b === null ? null : b - a;
  };
  // Sizes that stand in where none were found are no copper to compare with.
  const anew = !solved(before) && solved(last.result);
  const { evaluation: e } = last.result;
  return {
    says: steps.map(({ change }) => change.says(last.result)),
    mends: failing(before)
      .filter((f) => !left.has(keyOf(f)))
      .map(({ rule, subject }) => ({ rule, subject })),
    verdict: last.result.verdict,
    failing: last.left.length,
    copper: anew ? null : moved('copper_total'),
    chosen: e.design.runs.flatMap(({ name }, run) =>
      anew && before.evaluation.design.runs[run]?.gauge === 'auto' && e.number('auto', { run }) === 1
        ? [`${say(e, 'gauge', { run })} for ${name}`]
        : [],
    ),
    copperInAll: anew ? e.number('copper_total') : null,
    drop: anew ? null : moved('worst_drop'),
    parts: steps.flatMap(({ change }) => change.parts),
    design: last.change.design,
  };
}
