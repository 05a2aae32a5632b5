/** The cut list: every piece with its length on the bench, reel after reel. */

import type { Series } from '../design/design.ts';
import { SIZES } from '../design/names.ts';
import type { Job } from './job.ts';
import { onPaper } from './lengths.ts';
import type { Piece } from './places.ts';
import { crimpKinds } from './terminals.ts';

/** Wire that comes from one reel: size, insulation and colour. */
export interface Reel {
  /** Null where the design does not say. */
  readonly gauge: string | null;
  readonly insulation: string | null;
  readonly colour: string | null;
}

export interface Cut {
  readonly piece: Piece;
  readonly reel: Reel;
  /** Length with the allowances [m]; null when the length is not known. */
  readonly cut: number | null;
  /** Why the length is not known, and what is known instead. */
  readonly note: string;
}

export interface ReelTotal {
  readonly reel: Reel;
  readonly pieces: number;
  /** For one kit, allowances counted [m]; null when some piece is not known even in sum. */
  readonly kit: number | null;
  /** For the crimps that are pulled apart, first one and samples, once for a batch [m]. */
  readonly samples: number;
  /** For the batch, with what is lost and the samples [m]. */
  readonly batch: number | null;
}

/** The same for whatever comes from one reel. */
export const reelKey = ({ gauge, insulation, colour }: Reel): string =>
  JSON.stringify([gauge, insulation, colour]);

/** Place of a size in the lists: thick before thin, what is not known last. */
function rank(gauge: string | null): number {
  if (gauge === null) return Number.POSITIVE_INFINITY;
  const [size = '', series = ''] = gauge.split(' ');
  const list = SIZES[series as Series] ?? [];
  return list.length - list.indexOf(size);
}

const byText = (a: string | null, b: string | null): number => {
  const [p, q] = [a ?? '\uffff', b ?? '\uffff'];
  return p < q ? -1 : p > q ? 1 : 0;
};

/** With both ends' allowance and the slack. */
export const withAllowance = (metres: number, pieces: number, { result }: Pick<Job, 'result'>): number => {
  const { allowance, end_allowance } = result.evaluation.design.kit;
  return metres * (1 + allowance) + 2 * end_allowance * pieces;
};

/** Every piece; the machine changes its reel as seldom as there are reels, and within one its set-up seldom. */
export function cutList(job: Job): Cut[] {
  const { design } = job.result.evaluation;
  const cuts = job.harness.pieces.map((piece): Cut => {
    const { gauge, insulation, colour, length } = piece;
    const cut = length === null ? null : withAllowance(length, 1, job);
    return { piece, reel: { gauge, insulation, colour }, cut, note: cut === null ? noteOf(piece, job) : '' };
  });
  const order = new Map(cuts.map((cut, i) => [cut, i]));
  return cuts.toSorted(
    (a, b) =>
      compareRanks(rank(a.reel.gauge), rank(b.reel.gauge)) ||
      byText(a.reel.insulation, b.reel.insulation) ||
      byText(a.reel.colour, b.reel.colour) ||
      (b.piece.strip ?? 0) - (a.piece.strip ?? 0) ||
      (design.wires[a.piece.wire ?? -1]?.run ?? 99) - (design.wires[b.piece.wire ?? -1]?.run ?? 99) ||
      (order.get(a) as number) - (order.get(b) as number),
  );
}

const compareRanks = (a: number, b: number): number => (a === b ? 0 : a < b ? -1 : 1);

/** Pieces of a conductor whose lengths are not known, and what they measure together [m]; null for a wire beside the design. */
export function unparted(
  { wire: index }: Piece,
  { result, harness }: Job,
): { readonly pieces: readonly Piece[]; readonly left: number } | null {
  const wire = result.evaluation.design.wires[index ?? -1];
  if (wire === undefined) return null;
  const own = harness.pieces.filter((p) => p.wire === index);
  return {
    pieces: own.filter((p) => p.length === null),
    left: wire.length - own.reduce((sum, p) => sum + (p.length ?? 0), 0),
  };
}

function noteOf(piece: Piece, job: Job): string {
  const open = unparted(piece, job);
  if (open === null) return 'not in the design';
  const left = onPaper(open.left, 'piece', job.result.evaluation.design.kit.units).replaceAll('\u00a0', ' ');
  const others = open.pieces.filter((p) => p !== piece).map((p) => p.id);
  return `with ${others.join(', ')} ${left}, no allowance counted; where to part them is not in the design`;
}

/** Crimps of one kind that are pulled apart: the first one, and the samples of the batch. */
export const pulled = ({ result }: Pick<Job, 'result'>): number => 1 + result.evaluation.design.kit.samples;

/** What each reel must hold, in the order of the cut list. */
export function reels(job: Job): ReelTotal[] {
  const { design } = job.result.evaluation;
  const groups = new Map<string, Cut[]>();
  const kinds = crimpKinds(job);
  for (const cut of cutList(job)) {
    const key = reelKey(cut.reel);
    groups.set(key, [...(groups.get(key) ?? []), cut]);
  }
  return [...groups.values()].map((cuts) => {
    // A conductor that is cut at an unknown place is known in sum.
    const wires = new Set(cuts.map((cut) => cut.piece.wire));
    let kit: number | null = 0;
    for (const wire of wires) {
      const own = cuts.filter((cut) => cut.piece.wire === wire);
      const length: number | null =
        wire === null
          ? own.reduce<number | null>(
              (sum, { piece }) => (sum === null || piece.length === null ? null : sum + piece.length),
              0,
            )
          : (design.wires[wire]?.length ?? null);
      kit = kit === null || length === null ? null : kit + withAllowance(length, own.length, job);
    }
    const { reel } = cuts[0] as Cut;
    // Where wires of two colours take the same terminal, the first reel gives the samples.
    const own = kinds.filter((kind) => kind.gauge === reel.gauge && kind.insulation === reel.insulation);
    for (const kind of own) kinds.splice(kinds.indexOf(kind), 1);
    const samples = own.length * pulled(job) * design.kit.sample_length;
    return {
      reel,
      pieces: cuts.length,
      kit,
      samples,
      batch: kit === null ? null : kit * job.batch * (1 + design.kit.waste) + samples,
    };
  });
}
