/** The same coils fed in the ways of the trade, each evaluated in full: one fuse, one for each bank, one for each coil. */
import type { Design, Fuse, Run } from '../design/design.ts';
import type { Result } from '../findings/result.ts';
import type { Judge } from './remedy.ts';

export interface Alternative {
  readonly name: string;
  readonly result: Result;
}

/** The design as it is first, then those ways that differ from it and that its runs allow. */
export function alternativesOf(design: Design, judge: Judge): Alternative[] {
  const feed = design.runs.flatMap((run, i) => (run.side === 'feed' ? [i] : []));
  const carried = (run: number): number =>
    Math.max(...design.wires.filter((wire) => wire.run === run).map(({ coils }) => coils.length));
  const [main = 0] = feed;
  const banks = feed.filter((run) => run !== main && carried(run) > 1 && carried(run) < design.coils.length);
  const each = feed.filter((run) => run !== main && carried(run) === 1);
  const ways: readonly (readonly [string, Design | null])[] = [
    ['as designed', design],
    ['one main fuse', fusedAt(design, [])],
    ['fuse for each bank', banks.length === 0 ? null : fusedAt(design, banks)],
    ['fuse for each coil', each.length === 0 ? null : fusedAt(design, each)],
  ];
  const seen = new Set<string>();
  return ways.flatMap(([name, way]) => {
    if (way === null) return [];
    const key = JSON.stringify(way.runs);
    if (seen.has(key)) return [];
    seen.add(key);
    return [{ name, result: judge(way) }];
  });
}

/** Type of the fuses that are added. Arbitrary: the list of it goes down to the load of one coil. */
const TYPE = 'C';

/** Fuses in the first run of the feed, as it is, and at the heads of these runs, whose sizes are chosen anew. */
function fusedAt(design: Design, heads: readonly number[]): Design {
  return {
    ...design,
    runs: design.runs.map((run, i): Run => {
      if (run.side !== 'feed' || i === 0) return run;
      const fuse = heads.includes(i)
        ? (run.fuse ?? ({ type: TYPE, rating: 'auto', ambient: run.ambient, from_source: null } as Fuse))
        : null;
      return { ...run, fuse, gauge: fuse !== null && run.fuse === null ? 'auto' : run.gauge };
    }),
  };
}
