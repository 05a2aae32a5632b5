/** The labels: one at each end of every wire, one at every part that a person looks for. */
import { printQuantity } from '../views/print.ts';
import { type Job, shortDigest } from './job.ts';
import type { End, Piece, Spot } from './places.ts';

export interface Label {
  readonly kind: 'wire end' | 'part' | 'kit';
  /** Wire or part. */
  readonly of: string;
  /** Where it is stuck. */
  readonly at: string;
  /** Lines of the label, the first one larger. */
  readonly lines: readonly string[];
}

/** `coil 3:15`, `F1` */
export const endName = ({ spot, terminal }: End): string =>
  terminal === null ? spot.id : `${spot.id}:${terminal}`;

/** Lines of the label at an end: the wire, then this end and where the other one is. */
export const wireLines = (piece: Piece, end: 'from' | 'to'): readonly [string, string] => [
  piece.id,
  `${endName(piece[end])} → ${endName(piece[end === 'from' ? 'to' : 'from'])}`,
];

export function labels(job: Job): Label[] {
  const wires = job.harness.pieces.flatMap((piece) =>
    (['from', 'to'] as const).map(
      (end): Label => ({
        kind: 'wire end',
        of: piece.id,
        at: endName(piece[end]),
        lines: wireLines(piece, end),
      }),
    ),
  );
  const parts = job.harness.spots.flatMap((spot): Label[] => {
    const lines = partLines(spot, job);
    return lines === null ? [] : [{ kind: 'part', of: spot.id, at: spot.id, lines: [spot.id, ...lines] }];
  });
  return [...wires, ...parts, ...kitLabels(job)];
}

/** More of a title is more than a label holds [characters]. */
const LONGEST = 60;

/** Which kit it is: one for each serial number, or one to write on. */
function kitLabels(job: Job): Label[] {
  const { title, shop } = job.result.evaluation.design;
  const { name, contact, revision } = shop?.shop ?? {};
  const known = (parts: readonly (string | undefined)[]): string[] =>
    parts.some((part) => part !== undefined) ? [parts.filter((part) => part !== undefined).join(', ')] : [];
  const numbers = job.serials.length === 0 ? ['serial no. ______'] : job.serials;
  return numbers.map((serial) => ({
    kind: 'kit',
    of: serial,
    at: 'fuse holder or lid of the box',
    lines: [
      serial,
      title.slice(0, LONGEST),
      ...known([`design ${shortDigest(job)}`, revision === undefined ? undefined : `revision ${revision}`]),
      ...known([name, contact]),
    ],
  }));
}

/** Null for what needs no label of its own. */
function partLines(spot: Spot, { result: { evaluation: e } }: Job): string[] | null {
  const run = e.design.wires[spot.wire ?? -1]?.run ?? 0;
  if (spot.kind === 'fuse')
    return [
      `FUSE ${printQuantity('fuse_rating', e.number('fuse_rating', { run }))}, type ${e.design.runs[run]?.fuse?.type}`,
      'never a larger one',
    ];
  if (spot.kind === 'relay')
    return [`RELAY ${printQuantity('relay_rating', e.number('relay_rating', { run }))}`, 'ignition coils'];
  if (spot.kind === 'ground') return ['ground, coils', 'do not remove'];
  return null;
}
