/**
 * The same coils fed in the ways of the trade, each evaluated in full: one fuse, one for each bank, one for each coil, the
 * two sizes of wire that a shop would take, and, where the stock is stated, any size.
 */
import type { Design, Fuse, FuseType, Run } from '../design/design.ts';
import { LIKE_NONE } from '../design/names.ts';
import type { Result } from '../findings/result.ts';
import type { Judge } from './remedy.ts';
import { typesOf } from './shelf.ts';

export interface Alternative {
  readonly name: string;
  /** What was evaluated, in words; empty for the design as it is. */
  readonly what: string;
  readonly result: Result;
}

/** The design as it is first, then those ways that differ from it and that its runs allow. */
export function alternativesOf(design: Design, judge: Judge): Alternative[] {
  const feed = design.runs.flatMap((run, i) => (run.side === 'feed' ? [i] : []));
  const carried = (run: number): number =>
    Math.max(...design.wires.filter((wire) => wire.run === run).map(({ coils }) => coils.length));
  const [main = 0] = feed;
  const whole = carried(main) === design.coils.length;
  const banks = feed.filter((run) => run !== main && carried(run) > 1 && carried(run) < design.coils.length);
  const each = feed.filter((run) => run !== main && carried(run) === 1);
  const small = typeFor(design, TYPE);
  const heads = (runs: readonly number[]): string =>
    `type ${small.type} fuses at the heads of ${runs.map((run) => design.runs[run]?.name).join(', ')}${small.order ? ', to order' : ''}`;
  const one = whole ? fusedAt(design, []) : null;
  const { stock } = design.sizes;
  const ways: readonly (readonly [string, string, Design | null])[] = [
    ['as designed', '', design],
    [
      'any size',
      design.shelf === null
        ? 'as designed, from every size, not only those in stock'
        : 'as designed, from every size, not only those on the shelf, others to order',
      stock === null && design.shelf === null
        ? null
        : { ...design, shelf: null, pins: null, sizes: { ...design.sizes, stock: null } },
    ],
    [
      'one main fuse',
      `a fuse at the head of ${design.runs[main]?.name} and no other${design.runs[main]?.fuse || !typeFor(design, MAIN).order ? '' : ', to order'}`,
      one,
    ],
    [
      'two sizes of wire',
      'one main fuse, one size for all runs of several coils, another for all runs of one coil, of each insulation, as a shop would buy two reels',
      one && twoSizes(one, carried),
    ],
    ['fuse for each bank', heads(banks), banks.length === 0 ? null : fusedAt(design, banks)],
    ['fuse for each coil', heads(each), each.length === 0 ? null : fusedAt(design, each)],
  ];
  const seen = new Set<string>();
  const found = ways.flatMap(([name, what, way]) => {
    if (way === null) return [];
    const key = JSON.stringify([way.runs, way.sizes, way.shelf]);
    if (seen.has(key)) return [];
    seen.add(key);
    return [{ name, what, result: judge(way) }];
  });
  // Where the shelf has what would be chosen from everything, it is no other way.
  return found.filter(
    ({ result }, i) =>
      i === 0 || result.evaluation.design.shelf === design.shelf || !isSame(result, found[0]),
  );
}

const isSame = ({ evaluation: a }: Result, other: Alternative | undefined): boolean =>
  a.design.runs.every(
    (_, run) => a.value('gauge', { run }) === other?.result.evaluation.value('gauge', { run }),
  );

/** Type of the fuses that are added. Arbitrary: the list of it goes down to the load of one coil. */
const TYPE = 'C';
/** Type of a main fuse where none is stated. Arbitrary: its list goes up to the load of all coils. */
const MAIN: FuseType = 'E';

/** Where the shop lists fuses, one of its types, the usual one first; else the usual one. */
const typeFor = (design: Design, usual: FuseType) =>
  typesOf(design, [usual, 'C', 'E', 'F'])[0] as ReturnType<typeof typesOf>[number];

const added = ({ ambient }: Run, type: FuseType): Fuse => ({
  use: null,
  type,
  rating: 'auto',
  ambient,
  from_source: null,
  curve: null,
  melting: null,
  voltage: null,
  rerating: null,
});

/** Fuses in the first run of the feed, as it is, and at the heads of these runs, whose sizes are chosen anew. */
function fusedAt(design: Design, heads: readonly number[]): Design {
  return {
    ...design,
    runs: design.runs.map((run, i): Run => {
      if (run.side !== 'feed') return run;
      if (i === 0)
        return heads.length > 0 || run.fuse ? run : { ...run, fuse: added(run, typeFor(design, MAIN).type) };
      const fuse = heads.includes(i) ? (run.fuse ?? added(run, typeFor(design, TYPE).type)) : null;
      return { ...run, fuse, gauge: fuse !== null && run.fuse === null ? 'auto' : run.gauge };
    }),
  };
}

/** One size for all runs of several coils, one for those of a single coil, of each insulation; stated sizes stay. */
function twoSizes(design: Design, carried: (run: number) => number): Design {
  const leaders = new Map<string, string>();
  return {
    ...design,
    runs: design.runs.map((run, i): Run => {
      if (run.gauge !== 'auto') return run;
      const reel = `${run.insulation} ${carried(i) > 1}`;
      const like = leaders.get(reel) ?? LIKE_NONE;
      if (like === LIKE_NONE) leaders.set(reel, run.name);
      return { ...run, like };
    }),
  };
}
