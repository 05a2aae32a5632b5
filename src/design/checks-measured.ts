/** Checks between fields: readings, against the runs, coils and points that they name. */
import { ACROSS_WORDS, acrossCount, acrossKind } from './across.ts';
import { between, PLACES } from './between.ts';
import type { Instrument, What } from './design.ts';
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
    checkAcross(draft, entry, path, tree, report);
    checkAmbient(entry, path, tree, report);
    if (ids) checkPlace(draft, entry, ids, path, tree, report);
  });
}

/** Whether every run says what it carries: else a place cannot be looked for. */
const readable = ({ feed, return: back }: Draft): boolean =>
  [...(feed ?? []), ...(back ?? [])].every((run) => run?.run !== undefined && run.carries !== undefined);

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

/** What is read without an operating point, and why. */
const POINTLESS: Readonly<Partial<Record<What, readonly [string, string]>>> = {
  resistance: ['a resistance', 'a resistance is read with the run disconnected'],
  inductance: ['an inductance', 'it is the same at all points'],
  resting: ['a resting battery', 'the battery is read with everything off'],
};

function checkPoint(draft: Draft, entry: Entry, path: Path, tree: Tree, report: Report): void {
  const given = tree.has([...path, 'point']);
  const none = entry.what === undefined ? undefined : POINTLESS[entry.what];
  if (none !== undefined) {
    if (given) report([...path, 'point'], `found a point for ${none[0]}`, `leave it out: ${none[1]}`, 'key');
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

/** A temperature says nothing without that of the air around. */
function checkAmbient(entry: Entry, path: Path, tree: Tree, report: Report): void {
  const given = tree.has([...path, 'ambient']);
  if (entry.what === 'temperature' && !given)
    report(path, 'no ambient', 'give the temperature of the air around it: ambient: 30 degC');
  else if (entry.what !== undefined && entry.what !== 'temperature' && given)
    report([...path, 'ambient'], `found ambient for what: ${entry.what}`, 'leave it out', 'key');
}

/** The place within a run must be one that the run has. */
function checkAcross(draft: Draft, entry: Entry, path: Path, tree: Tree, report: Report): void {
  const at = [...path, 'across'];
  if (!tree.has(at)) return;
  if (entry.what !== undefined && entry.what !== 'drop' && entry.what !== 'temperature') {
    report(
      at,
      `found across for what: ${entry.what}`,
      'leave it out, or say what: drop, or what: temperature',
      'key',
    );
    return;
  }
  if (entry.across === undefined) return;
  const place = acrossKind(entry.across);
  if (place === null) {
    report(at, `the unknown place ${quote(entry.across)}`, `takes ${ACROSS_WORDS}`);
    return;
  }
  if (entry.what === 'temperature' && place.kind === 'relay')
    report(at, 'a temperature of a relay', 'read the joint at one of its terminals: its own coil warms it');
  const runs = [...(draft.feed ?? []), ...(draft.return ?? [])];
  const named = entry.run;
  const own = runs.find(
    (run) => run?.run !== undefined && (named === run.run || named?.startsWith(`${run.run}.`)),
  );
  if (own === undefined) return;
  const count = acrossCount(own, place.kind);
  if (place.no < 1 || place.no > count)
    report(
      at,
      `${quote(entry.across)} of ${quote(own.run as string)}, which has ${count === 0 ? 'none' : `${count}`}`,
      count > 1 ? `name one of 1 to ${count}` : 'name a place that the run has',
    );
}

const PLACELESS = {
  dwell: ['a dwell', 'all coils have one dwell'],
  resting: ['a resting battery', 'it is read at the battery posts'],
} as const;

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
  // What was read decides what is taken here; that it is missing is said already.
  if (what === undefined) return;
  if (what === 'voltage') {
    const [from, to] = [tree.has([...path, 'from']), tree.has([...path, 'to'])];
    for (const key of ['run', 'coil'] as const)
      if (tree.has([...path, key]))
        report([...path, key], `found a ${key} for a voltage`, 'name its two places: from, to', 'key');
    if (!from || !to) report(path, `no ${from ? 'to' : 'from'}`, `name both places: ${PLACES}`);
    else if (entry.from !== undefined && entry.to !== undefined && readable(draft))
      if (between(entry.from, entry.to, draft.feed ?? [], draft.return ?? [], ids) === null)
        report(
          [...path, 'from'],
          `no way of the current from ${quote(entry.from)} to ${quote(entry.to)}`,
          `both on the feed or both on the return, the place nearer to battery positive first: ${PLACES}`,
        );
    return;
  }
  for (const key of ['from', 'to'] as const)
    if (tree.has([...path, key]))
      report([...path, key], `found ${key} for what: ${what}`, 'leave it out, or say what: voltage', 'key');
  if (what === 'dwell' || what === 'resting') {
    const [of, why] = PLACELESS[what];
    for (const key of ['run', 'coil'] as const)
      if (tree.has([...path, key]))
        report([...path, key], `found a ${key} for ${of}`, `leave it out: ${why}`, 'key');
    return;
  }
  if (what === 'inductance' || (what === 'resistance' && hasCoil && !hasRun)) {
    if (!hasCoil) report(path, 'no coil', `name one: ${ids.join(', ')}`);
    if (hasRun) report([...path, 'run'], 'found a run for an inductance', 'name the coil', 'key');
    return;
  }
  if (what === 'resistance' && tree.has([...path, 'ohmmeter']) && hasRun)
    report(
      [...path, 'ohmmeter'],
      'found ohmmeter for a run',
      'give value: a hand-held meter does not resolve the milliohms of a run',
      'key',
    );
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
  if (what === 'trigger' && !runs.find((run) => run?.run === name || name.startsWith(`${run?.run}.`))?.relay)
    report([...path, 'run'], `${quote(name)}, which has no relay`, 'name the run whose relay was read');
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
