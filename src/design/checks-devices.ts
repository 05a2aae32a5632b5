/** Checks between fields: fuses and relays. */
import { pullInFor } from './by-system.ts';
import type { Partially } from './draft.ts';
import type { Path, Report } from './problems.ts';
import type { RunOfFile } from './schema.ts';
import { UNKNOWN } from './schema-runs.ts';
import type { Tree } from './tree.ts';

type RunDraft = Partially<RunOfFile>;
export interface Placed {
  run: RunDraft | undefined;
  side: 'feed' | 'return';
  path: Path;
}

/** A fuse's own curve starts above its rating; with more current it takes less time. */
function checkCurve(fuse: RunDraft['fuse'], path: Path, report: Report): void {
  const points = fuse?.curve;
  if (!fuse || !points) return;
  for (const [i, point] of points.entries()) {
    const before = i === 0 ? { current: fuse.rating, within: Number.POSITIVE_INFINITY } : points[i - 1];
    const at = [...path, 'curve', i];
    if (
      point?.current !== undefined &&
      typeof before?.current === 'number' &&
      point.current <= before.current
    )
      report(
        [...at, 'current'],
        `${point.current} A, not above ${i === 0 ? 'the rating' : 'the point before'}, ${before.current} A`,
        `allowed: above ${before.current} A`,
      );
    if (point?.within !== undefined && before?.within !== undefined && point.within >= before.within)
      report(
        [...at, 'within'],
        `${point.within} s, not below the point before, ${before.within} s`,
        `allowed: below ${before.within} s`,
      );
  }
}

/** `highest` is the highest supply of the points, undefined when it could not be known. */
export function checkDevices(placed: Placed, highest: number | undefined, tree: Tree, report: Report): void {
  const { run, side, path } = placed;
  for (const device of ['fuse', 'relay'] as const)
    if (side === 'return' && tree.has([...path, device]))
      report(
        [...path, device],
        `found a ${device} in a return run`,
        `put it into a feed run: opened in the return, it leaves the coils live`,
        'key',
      );
  checkCurve(run?.fuse, [...path, 'fuse'], report);
  if (run?.fuse?.type === UNKNOWN && run.fuse.rating === 'auto')
    report(
      [...path, 'fuse', 'rating'],
      'a rating to be chosen for a fuse of an unknown type',
      'give the rating that is printed on it',
    );
  checkRows(run?.fuse?.rerating, 'share', [...path, 'fuse', 'rerating'], report);
  checkRelay(placed, highest, tree, report);
}

function checkRelay({ run, path }: Placed, highest: number | undefined, tree: Tree, report: Report): void {
  const relay = run?.relay === UNKNOWN ? undefined : run?.relay;
  if (relay === undefined) return;
  const preset = highest === undefined || tree.has([...path, 'relay', 'pull_in']) ? null : pullInFor(highest);
  const pullIn = relay.pull_in ?? preset?.value ?? undefined;
  const { drop_out: dropOut, coil_max: most, rating, derating } = relay;
  const at = (key: string): Path => [...path, 'relay', key];
  if (pullIn !== undefined && highest !== undefined && pullIn >= highest)
    report(
      at('pull_in'),
      `${pullIn} V, not below the highest supply of the points, ${highest} V`,
      `allowed: below ${highest} V, or the relay cannot close`,
    );
  if (pullIn !== undefined && dropOut !== undefined && dropOut >= pullIn)
    report(
      at('drop_out'),
      `${dropOut} V, not below the pull-in voltage of ${pullIn} V`,
      `allowed: below ${pullIn} V`,
    );
  if (pullIn !== undefined && most !== undefined && most <= pullIn)
    report(
      at('coil_max'),
      `${most} V, not above the pull-in voltage of ${pullIn} V`,
      `allowed: above ${pullIn} V`,
    );
  if (rating === 'auto' && derating !== undefined)
    report(
      at('derating'),
      'the contact currents of a relay whose rating is to be chosen',
      'state the rating of that relay',
      'key',
    );
  checkRows(derating, 'rating', at('derating'), report);
}

/** Rows by temperature: it rises, and what is carried does not. */
function checkRows<K extends string>(
  rows:
    | readonly (({ at?: number | undefined } & { [key in K]?: number | undefined }) | undefined)[]
    | undefined,
  key: K,
  path: Path,
  report: Report,
): void {
  for (const [i, row] of (rows ?? []).entries()) {
    const before = i === 0 ? undefined : rows?.[i - 1];
    if (row?.at !== undefined && before?.at !== undefined && row.at <= before.at)
      report(
        [...path, i, 'at'],
        `${row.at} degC after ${before.at} degC`,
        `allowed: above ${before.at} degC`,
      );
    const [now, then] = [row?.[key], before?.[key]];
    if (now !== undefined && then !== undefined && now > then)
      report([...path, i, key], 'more than in the row before', 'allowed: as much or less');
  }
}
