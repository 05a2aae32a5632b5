/** Checks between the `kit` block and the runs that it names. */
import { leastBehind } from '../data/trigger-wire.ts';
import type { Draft } from './draft.ts';
import { SIZES } from './names.ts';
import { nearest } from './nearest.ts';
import { quote, type Report } from './problems.ts';

const MAPS = ['strip', 'colours', 'terminals', 'fuse_at', 'relay_at'] as const;

export function checkKit(draft: Draft, report: Report): void {
  const kit = draft.kit;
  if (!kit) return;
  const runs = [...(draft.feed ?? []), ...(draft.return ?? [])];
  // With a name that could not be read, any may be meant.
  if (runs.some((run) => run?.run === undefined)) return;
  const names = runs.map((run) => run?.run as string);
  for (const key of MAPS) {
    const given = kit[key];
    if (typeof given !== 'object') continue;
    for (const name of Object.keys(given)) {
      if (names.includes(name)) continue;
      const near = nearest(name, names);
      report(
        ['kit', key, name],
        `the unknown run ${quote(name)}`,
        near === null ? `there are: ${names.join(', ')}` : `did you mean "${near}"?`,
        'key',
      );
    }
  }
  checkTrigger(kit.trigger, report);
  runs.forEach((run) => {
    const name = run?.run as string;
    const at = { fuse: lengthFor(kit.fuse_at, name), relay: lengthFor(kit.relay_at, name) };
    for (const device of ['fuse', 'relay'] as const) {
      const metres = at[device];
      if (metres === undefined) continue;
      const path = ['kit', `${device}_at`, name];
      if (!run?.[device])
        report(path, `a place for the ${device} of ${quote(name)}`, `name runs that have a ${device}`, 'key');
      const shortest = shortestOf(run?.length);
      if (shortest !== undefined && metres > shortest)
        report(path, `${metres} m in a run of ${shortest} m`, `allowed: 0 to ${shortest} m`);
    }
    if (at.fuse !== undefined && at.relay !== undefined && at.relay < at.fuse)
      report(
        ['kit', 'relay_at', name],
        `${at.relay} m, before the fuse at ${at.fuse} m`,
        `allowed: from ${at.fuse} m, behind the fuse`,
      );
  });
}

/** The wire to the relay is protected by the fuse of the original ignition wire alone. Sizes of other series are not judged. */
function checkTrigger(trigger: NonNullable<Draft['kit']>['trigger'], report: Report): void {
  const { gauge, fuse } = trigger ?? {};
  if (gauge === undefined || fuse === undefined) return;
  const least = leastBehind(fuse);
  if (least === null) {
    report(['kit', 'trigger', 'fuse'], `${fuse} A before a relay coil`, 'fit a smaller fuse for this wire');
    return;
  }
  const rank = (size: string): number => SIZES.AWG.indexOf(size.replace(' AWG', ''));
  if (rank(gauge) >= 0 && rank(gauge) < rank(least))
    report(['kit', 'trigger', 'gauge'], `${gauge} behind a fuse of ${fuse} A`, `takes at least ${least}`);
}

const lengthFor = (given: Readonly<Record<string, number | undefined>> | undefined, name: string) =>
  given && Object.hasOwn(given, name) ? given[name] : undefined;

function shortestOf(length: unknown): number | undefined {
  if (typeof length === 'number') return length;
  if (typeof length !== 'object' || length === null) return undefined;
  const known = Object.values(length).filter((one): one is number => typeof one === 'number');
  return known.length > 0 ? Math.min(...known) : undefined;
}
