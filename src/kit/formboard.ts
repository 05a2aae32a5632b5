/** The formboard: the harness with each wire by its name, its length on the bench and its terminals. Not to scale. */

import { withAllowance } from './cut.ts';
import { drawing } from './diagram.ts';
import { type Labels, lines } from './diagram-graph.ts';
import type { Job } from './job.ts';
import { onPaper, systemOf } from './lengths.ts';
import { titleBlock } from './shop-block.ts';
import { crimpKinds, crimpOf } from './terminals.ts';

const NOTES =
  'Not to scale. At each wire: its name, its length as it is cut, the terminals at its ends (T: see the list of first crimps; S: into the splice). ____: not in the design. The label at each end bears the name of the wire and both its ends, its own first. Route branches as drawn, tie at every joint, and check each length from joint to terminal before you tie.';

export function formboard(job: Job): string {
  const kinds = crimpKinds(job);
  const { units } = job.result.evaluation.design.kit;
  const labels: Labels = (piece, _, room) => {
    const [from, to] = (['from', 'to'] as const).map((end) => crimpOf(kinds, piece, end, job)?.code ?? 'S');
    // One unit: two would not fit.
    const length =
      piece.length === null ? '____' : onPaper(withAllowance(piece.length, 1, job), 'piece', systemOf(units));
    return [...lines(piece.id, room), ...lines(`${length} ${from}→${to}`, room)];
  };
  return drawing(job.result, { title: 'Formboard', notes: NOTES, labels }, titleBlock(job));
}
