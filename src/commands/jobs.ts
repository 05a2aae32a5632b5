/** Work that goes in blocks, in this thread or in others: what a block of each kind of work is. */
import type { Units } from '../basis/shown.ts';
import { readDesign } from '../design/read.ts';
import { run as pipeline } from '../run.ts';
import { pointOf, pointsOf, type Row, valuesAt } from '../study/study.ts';
import type { Vary } from '../study/values.ts';

/** Points of a study in a block. */
export const STUDY_BLOCK = 8;

export interface StudyJob {
  readonly kind: 'study';
  readonly text: string;
  readonly units: Units;
  readonly vary: readonly Vary[];
  readonly asked: readonly string[];
}

export type Job = StudyJob;
export type Done<J extends Job> = J extends StudyJob ? Row[] : never;

/** The work of one kind, as a function of the number of the block. */
export function workerOf(job: Job): (block: number) => Done<Job> {
  const read = readDesign(job.text, '');
  if (!read.ok) throw new Error('the design of a job cannot be read');
  const { design } = read;
  const points = pointsOf(job.vary);
  return (block) => {
    const from = block * STUDY_BLOCK;
    return Array.from({ length: Math.min(STUDY_BLOCK, points - from) }, (_, i) =>
      pointOf(design, job.units, job.vary, job.asked, valuesAt(job.vary, from + i), pipeline),
    );
  };
}
