/** Checks between fields: runs, their conductors, fuses and relays. */
import { checkDevices, type Placed } from './checks-devices.ts';
import { reportRepeated } from './checks-names.ts';
import type { Draft, Partially } from './draft.ts';
import type { CoilAt } from './layout.ts';
import { LIKE_NONE, SIZES } from './names.ts';
import { nearest } from './nearest.ts';
import { listed, type Path, quote, type Report } from './problems.ts';
import { MOST_RUNS, type RunOfFile } from './schema.ts';
import { seriesOf } from './spellings.ts';
import type { Tree } from './tree.ts';

type RunDraft = Partially<RunOfFile>;

/** Conductors of all runs together: what the workbook holds. */
const MOST_CONDUCTORS = 64;

/** Ids of coils that a run names, with the place of each, those that could not be read left out. */
function named(run: RunDraft, path: Path): { id: string; path: Path }[] {
  if (!Array.isArray(run.carries)) return [];
  return run.carries.flatMap((id, i) => (id === undefined ? [] : [{ id, path: [...path, 'carries', i] }]));
}

function reportUnknownCoil(
  id: string,
  path: Path,
  ids: readonly string[],
  on: 'key' | 'value',
  report: Report,
): void {
  const near = ids.length > 6 ? nearest(id, ids) : null;
  const taken =
    near === null ? `there are: ${ids.join(', ')}` : `did you mean "${near}"? there are ${ids.join(', ')}`;
  report(path, `the unknown coil ${quote(id)}`, taken, on);
}

function checkCarried({ run, path }: Placed, ids: readonly string[] | undefined, report: Report): void {
  if (!run) return;
  const seen = new Set<string>();
  for (const { id, path: at } of named(run, path)) {
    if (ids && !ids.includes(id)) reportUnknownCoil(id, at, ids, 'value', report);
    else if (seen.has(id)) report(at, `coil ${quote(id)} a second time`, 'name each coil once');
    seen.add(id);
  }
  if (typeof run.length !== 'object' || run.carries === undefined) return;
  const at = [...path, 'length'];
  if (run.carries !== 'each') {
    report(at, 'found a length for each coil', 'give one length; one for each coil goes with carries: each');
    return;
  }
  if (!ids) return;
  const lengths = run.length;
  for (const id of Object.keys(lengths))
    if (!ids.includes(id)) reportUnknownCoil(id, [...at, id], ids, 'key', report);
  const missing = ids.filter((id) => !Object.hasOwn(lengths, id));
  if (missing.length > 0) report(at, `no length for ${listed(missing)}`, 'give one for each coil');
}

/** What a run says of its size: whose it takes, and between which it lies. */
function checkSize({ run, path }: Placed, placed: readonly Placed[], report: Report): void {
  if (!run) return;
  const { like, smallest, largest } = run;
  const others = placed.flatMap(({ run: other }) =>
    other?.run === undefined || other === run ? [] : [other.run],
  );
  if (like !== undefined && like !== LIKE_NONE && !others.includes(like))
    report([...path, 'like'], `no other run ${quote(like)}`, `takes none, or one of: ${others.join(', ')}`);
  else if (like !== undefined && like !== LIKE_NONE && run.gauge !== undefined && run.gauge !== 'auto')
    report(
      [...path, 'like'],
      `a size of its own, ${quote(run.gauge)}, besides`,
      'takes gauge: auto with like',
    );
  if (smallest !== undefined && largest !== undefined && seriesOf(smallest) === seriesOf(largest)) {
    const names = SIZES[seriesOf(smallest)];
    const [low, high] = [smallest, largest].map((size) => names.indexOf(size.split(' ')[0] as string));
    if ((low as number) > (high as number))
      report(
        [...path, 'largest'],
        `${largest}, below the smallest, ${smallest}`,
        'takes a size not below it',
      );
  }
}

/**
 * All coils of a conductor come from one and the same conductor before it, in the return they go into one behind it:
 * current that has divided does not join again.
 */
function checkPaths(placed: readonly Placed[], ids: readonly string[], report: Report): void {
  for (const side of ['feed', 'return'] as const) {
    const own = placed.filter((one) => one.side === side);
    const order = side === 'feed' ? own : own.toReversed();
    // The conductor that each coil has come through last.
    const last = new Map<string, string>();
    for (const { run, path } of order) {
      if (run?.run === undefined || run.carries === undefined) return;
      if (Array.isArray(run.carries) && run.carries.some((id) => id === undefined || !ids.includes(id)))
        return;
      const { run: name, carries } = run;
      const conductors =
        carries === 'each'
          ? ids.map((id) => ({ id: `${name}.${id}`, coils: [id] }))
          : [{ id: name, coils: carries === 'all' ? ids : (carries as string[]) }];
      for (const { id, coils } of conductors) {
        const from = [...new Set(coils.map((coil) => last.get(coil) ?? ''))];
        if (from.length > 1)
          report(
            [...path, 'carries'],
            `coils that ${side === 'feed' ? 'come from' : 'go on into'} ${from.map((f) => (f === '' ? 'the battery' : quote(f))).join(' and ')}`,
            'takes coils of one conductor: what has divided does not join again',
          );
        for (const coil of coils) last.set(coil, id);
      }
    }
  }
}

/** Every coil must be reached by the feed, and by the return when there is one. */
function checkReached(
  placed: readonly Placed[],
  ids: readonly string[],
  base: Path,
  tree: Tree,
  report: Report,
): void {
  for (const side of ['feed', 'return'] as const) {
    const runs = placed.filter((p) => p.side === side);
    // A run whose `carries` could not be read may carry anything.
    if (!tree.has([...base, side]) || runs.length === 0) continue;
    if (
      runs.some(
        ({ run }) =>
          run?.carries === undefined || (Array.isArray(run.carries) && run.carries.includes(undefined)),
      )
    )
      continue;
    const left = ids.filter((id) =>
      runs.every(({ run }) => Array.isArray(run?.carries) && !run.carries.includes(id)),
    );
    if (left.length > 0)
      report(
        [...base, side],
        `no ${side} run carries ${left.length === 1 ? 'coil' : 'the coils'} ${listed(left)}`,
        'every coil needs one',
        'key',
      );
  }
}

/** Ids of the conductors, as far as they can be known, each with the place of its run's name. */
function conductorsOf(placed: readonly Placed[], ids: readonly string[]): { id: string; path: Path }[] {
  return placed.flatMap(({ run, path }) => {
    if (run?.run === undefined || run.carries === undefined) return [];
    const at = [...path, 'run'];
    return run.carries === 'each'
      ? ids.map((id) => ({ id: `${run.run}.${id}`, path: at }))
      : [{ id: run.run, path: at }];
  });
}

/** `coils` is undefined when they could not be known; `base` is where feed and return stand in the file. */
export function checkRuns(
  draft: Draft,
  coils: readonly CoilAt[] | undefined,
  tree: Tree,
  report: Report,
  base: Path = [],
): void {
  const sideOf = (side: 'feed' | 'return'): Placed[] =>
    (draft[side] ?? []).map((run, i) => ({ run, side, path: [...base, side, i] }));
  const placed = [...sideOf('feed'), ...sideOf('return')];
  const ids = coils?.map((coil) => coil.id);
  const supplies = draft.points?.map((p) => p?.supply);
  // With a supply that could not be read the highest is not known.
  const highest =
    supplies && supplies.length > 0 && !supplies.includes(undefined)
      ? Math.max(...(supplies as number[]))
      : undefined;

  if (
    placed.length > MOST_RUNS &&
    (draft.feed?.length ?? 0) <= MOST_RUNS &&
    (draft.return?.length ?? 0) <= MOST_RUNS
  )
    report(
      [...base, 'return'],
      `${placed.length} runs`,
      `allowed: at most ${MOST_RUNS}, feed and return together`,
      'key',
    );
  const unique = reportRepeated(
    placed.map(({ run }) => run?.run),
    (i) => [...(placed[i]?.path ?? []), 'run'],
    report,
  );
  for (const one of placed) {
    checkCarried(one, ids, report);
    checkDevices(one, highest, tree, report);
    checkSize(one, placed, report);
  }
  if (!ids) return;
  checkReached(placed, ids, base, tree, report);
  checkPaths(placed, ids, report);
  const conductors = conductorsOf(placed, ids);
  // `branch.1` may be the name of a run and the conductor of coil 1 in the run `branch`.
  if (unique)
    reportRepeated(
      conductors.map((c) => c.id),
      (i) => conductors[i]?.path ?? [],
      report,
    );
  if (conductors.length > MOST_CONDUCTORS)
    report(
      [...base, 'feed'],
      `${conductors.length} conductors`,
      `allowed: at most ${MOST_CONDUCTORS}, feed and return together`,
      'key',
    );
}
