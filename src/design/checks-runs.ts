/** Checks between fields: runs, their conductors, fuses and relays. */
import { checkDevices, type Placed } from './checks-devices.ts';
import { reportRepeated } from './checks-names.ts';
import type { Draft, Partially } from './draft.ts';
import type { CoilAt } from './layout.ts';
import { nearest } from './nearest.ts';
import { listed, type Path, quote, type Report } from './problems.ts';
import { MOST_RUNS, type RunOfFile } from './schema.ts';
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
  }
  if (!ids) return;
  checkReached(placed, ids, base, tree, report);
  const conductors = conductorsOf(placed, ids);
  // `drop.1` may be the name of a run and the conductor of coil 1 in the run `drop`.
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
