/** Checks between fields: readings, against the runs, coils and points that they name. */
import type { Instrument } from './design.ts';
import type { Draft } from './draft.ts';
import type { CoilAt } from './layout.ts';
import { INSTRUMENTS } from './names.ts';
import { nearest } from './nearest.ts';
import { listed, type Path, quote, type Report } from './problems.ts';
import type { Tree } from './tree.ts';

const KEYS = Object.keys(INSTRUMENTS) as Instrument[];

/** What is needed of a run to name its conductors. */
interface Named {
  readonly run?: string | undefined;
  readonly carries?: 'all' | 'each' | readonly (string | undefined)[] | undefined;
}

/**
 * Id of the conductor that a reading names: by itself (`branch.3`), by its run where that has only one, or by run and
 * coil. Null when there is none such; the run's own name when it has several and the coil is missing.
 */
export function conductorNamed(
  name: string,
  coil: string | undefined,
  runs: readonly (Named | undefined)[],
  ids: readonly string[],
): string | null {
  const own = runs.find((run) => run?.run === name);
  if (own) {
    if (own.carries !== 'each') return name;
    return coil === undefined ? name : ids.includes(coil) ? `${name}.${coil}` : null;
  }
  const each = runs.some((run) => run?.carries === 'each' && ids.some((id) => `${run.run}.${id}` === name));
  return each ? name : null;
}

export function checkMeasured(
  draft: Draft,
  coils: readonly CoilAt[] | undefined,
  tree: Tree,
  report: Report,
): void {
  const ids = coils?.map(({ id }) => id);
  draft.measured?.forEach((entry, i) => {
    if (!entry) return;
    const path = ['measured', i];
    checkInstruments(entry, path, tree, report);
    checkPoint(draft, entry, path, tree, report);
    if (ids) checkPlace(draft, entry, ids, path, tree, report);
  });
}

type Entry = NonNullable<NonNullable<Draft['measured']>[number]>;

function checkInstruments(entry: Entry, path: Path, tree: Tree, report: Report): void {
  const given = KEYS.filter((key) => tree.has([...path, key]));
  const { what } = entry;
  if (what === undefined) return;
  const taken = KEYS.filter((key) => INSTRUMENTS[key].includes(what));
  if (given.length === 0) report(path, 'no reading', `give ${taken.join(' or ')} for what: ${what}`);
  for (const key of given)
    if (!taken.includes(key))
      report([...path, key], `found ${key} for what: ${what}`, `give ${taken.join(' or ')}`, 'key');
}

function checkPoint(draft: Draft, entry: Entry, path: Path, tree: Tree, report: Report): void {
  const given = tree.has([...path, 'point']);
  if (entry.what === 'resistance') {
    if (given)
      report(
        [...path, 'point'],
        'found a point for a resistance',
        'leave it out: a resistance is read with the run disconnected',
        'key',
      );
    return;
  }
  if (!given) {
    if (entry.what !== undefined) report(path, 'no point', 'name the operating point at which it was read');
    return;
  }
  const names = draft.points?.map((p) => p?.name) ?? [];
  if (entry.point === undefined || names.includes(entry.point) || names.includes(undefined)) return;
  const known = names.filter((n) => n !== undefined);
  const near = nearest(entry.point, known);
  report(
    [...path, 'point'],
    `the unknown point ${quote(entry.point)}`,
    near === null ? `there are: ${known.join(', ')}` : `did you mean "${near}"?`,
  );
}

function checkPlace(
  draft: Draft,
  entry: Entry,
  ids: readonly string[],
  path: Path,
  tree: Tree,
  report: Report,
): void {
  const [hasRun, hasCoil] = [tree.has([...path, 'run']), tree.has([...path, 'coil'])];
  const { what, coil, run: name } = entry;
  if (coil !== undefined && !ids.includes(coil)) {
    report([...path, 'coil'], `the unknown coil ${quote(coil)}`, `there are: ${ids.join(', ')}`);
    return;
  }
  if (what === 'supply') {
    if (hasRun)
      report(
        [...path, 'run'],
        'found a run for a supply',
        'name a coil, or neither for the battery posts',
        'key',
      );
    return;
  }
  if (!hasRun) {
    const needed =
      what === 'current' ? 'name the run, or the coil, around which it was read' : 'name the run';
    if (what !== undefined && !(what === 'current' && hasCoil)) report(path, 'no run', needed);
    return;
  }
  const runs = [...(draft.feed ?? []), ...(draft.return ?? [])];
  // A run whose name could not be read may be the one that is meant.
  if (name === undefined || runs.some((run) => run?.run === undefined || run.carries === undefined)) return;
  const found = conductorNamed(name, coil, runs, ids);
  if (found === null) {
    const known = runs.map((run) => run?.run ?? '');
    const near = nearest(name, known);
    report(
      [...path, 'run'],
      `the unknown run ${quote(name)}`,
      near === null ? `there are: ${known.join(', ')}` : `did you mean "${near}"?`,
    );
    return;
  }
  const own = runs.find((run) => run?.run === name);
  if (!own) return;
  if (own.carries === 'each') {
    if (!hasCoil)
      report(
        [...path, 'run'],
        `found ${quote(name)}, a run of ${ids.length} conductors`,
        `name one of them: ${listed(ids.map((id) => `${name}.${id}`))}`,
      );
  } else if (coil !== undefined && Array.isArray(own.carries) && !own.carries.includes(coil))
    report(
      [...path, 'coil'],
      `coil ${quote(coil)}, which ${quote(name)} does not carry`,
      'name one that it carries',
    );
}
