/** What each end of a wire takes, and every kind of crimp of a kit: a terminal on a wire, with a die of its own, proved once for a batch. */
import { printSize } from '../basis/print.ts';
import type { Job } from './job.ts';
import type { End, Piece } from './places.ts';

export interface Crimp {
  /** `T1`: it stands in the cut list and on the formboard. */
  readonly code: string;
  readonly what: string;
  readonly gauge: string | null;
  readonly insulation: string | null;
  /** In one kit. */
  readonly count: number;
  /** By the shop's file: bared length [m], height [m], force [N], largest wire, die. Null is a blank. */
  readonly strip: number | null;
  readonly height: number | null;
  readonly pull: number | null;
  readonly largest: string | null;
  readonly stock: string | null;
  readonly tool: string | null;
}

export const printedSize = (gauge: string | null): string =>
  gauge === null ? 'size ____' : printSize(gauge);

const runOf = (job: Job, { wire }: Piece) => {
  const { runs, wires } = job.result.evaluation.design;
  return runs[wires[wire ?? -1]?.run ?? -1];
};

/** What an end of a wire needs. Null where it goes into a splice, which is a part of its own. */
export function terminalFor(
  piece: Piece,
  end: 'from' | 'to',
  { result }: Pick<Job, 'result'>,
): string | null {
  const own = end === 'from' ? piece.fromTerminal : piece.toTerminal;
  if (own !== null) return own;
  const { spot, terminal }: End = piece[end];
  const { design } = result.evaluation;
  switch (spot.kind) {
    case 'splice':
      return null;
    case 'plus':
      return 'ring for the battery post or stud, hole ____';
    case 'minus':
      return 'ring for the battery post or ground stud, hole ____';
    case 'ground':
      return 'ring for the common ground point, hole ____';
    case 'chassis':
      return 'ring for engine ground, hole ____';
    case 'fuse':
      return design.kit.parts.fuse_terminal ?? 'terminal of the fuse holder';
    case 'coil':
      return 'contact of the coil connector';
    case 'trigger':
      return 'joint with the original ignition wire';
    default: {
      const tab = design.runs[design.wires[spot.wire ?? -1]?.run ?? 0]?.relay?.tab;
      const load = terminal === '30' || terminal === '87';
      const width = load ? (tab ?? '____') : '____';
      if (load && design.kit.parts.relay_terminal !== null) return design.kit.parts.relay_terminal;
      return `receptacle for a relay tab of ${width} mm`;
    }
  }
}

const keyOf = (what: string, { gauge, insulation }: Pick<Piece, 'gauge' | 'insulation'>): string =>
  JSON.stringify([what, gauge, insulation]);

/** A kit's terminals as they are met along the wires. Ends in a splice are crimped there and are none of these. */
export function crimpKinds(job: Job): Crimp[] {
  const { design } = job.result.evaluation;
  const found = new Map<string, Crimp>();
  for (const piece of job.harness.pieces)
    for (const end of ['from', 'to'] as const) {
      const what = terminalFor(piece, end, job);
      if (what === null) continue;
      const key = keyOf(what, piece);
      const before = found.get(key);
      if (before) {
        found.set(key, { ...before, count: before.count + 1 });
        continue;
      }
      const own = design.shop?.terminals?.find((terminal) => terminal.name === what);
      const crimp = own?.crimps?.find(({ size }) => size === piece.gauge);
      found.set(key, {
        code: `T${found.size + 1}`,
        what,
        gauge: piece.gauge,
        insulation: piece.insulation,
        count: 1,
        strip: own?.strip ?? piece.strip,
        height: crimp?.height === undefined ? null : crimp.height / 1000,
        pull: crimp?.pull ?? null,
        // With a shop's file the bound of a run may be that of its other terminal, or of the coil's connector.
        largest: own?.largest ?? (design.shop === null ? (runOf(job, piece)?.largest ?? null) : null),
        stock: own?.stock ?? null,
        tool: own?.tool ?? null,
      });
    }
  return [...found.values()];
}

/** Which of them an end takes; null where it goes into a splice. */
export function crimpOf(all: readonly Crimp[], piece: Piece, end: 'from' | 'to', job: Job): Crimp | null {
  const what = terminalFor(piece, end, job);
  if (what === null) return null;
  return (
    all.find((c) => c.what === what && c.gauge === piece.gauge && c.insulation === piece.insulation) ?? null
  );
}

/** Bared length of an end [m]: of its terminal, of the shop's splice where it goes into one, else as the kit states it. */
export function stripOf(kind: Crimp | null, piece: Piece, { result }: Pick<Job, 'result'>): number | null {
  const { kit, shop, used } = result.evaluation.design;
  const isShops = kind === null && used.some(({ path }) => path === 'kit.parts.splice');
  const splice = isShops ? shop?.splices?.find(({ name }) => name === kit.parts.splice) : undefined;
  return kind?.strip ?? splice?.strip ?? piece.strip;
}
