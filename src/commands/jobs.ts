/** Work that goes in blocks, in this thread or in others: what a block of each kind of work is. */
import type { Units } from '../basis/shown.ts';
import type { Design } from '../design/design.ts';
import { readDesign } from '../design/read.ts';
import { codeOf } from '../engine/code/code.ts';
import { writeCode } from '../engine/functions.ts';
import { run as pipeline } from '../run.ts';
import { fromShelf } from '../shop/choose.ts';
import { Sequence } from '../spread/sequence.ts';
import { type Block, blockOf, installsOf } from '../spread/spread.ts';
import { pointOf, pointsOf, type Row, valuesAt } from '../study/study.ts';
import type { Vary } from '../study/values.ts';

/** Points of a study, and installs of a spread, in a block. */
export const STUDY_BLOCK = 8;
export const SPREAD_BLOCK = 50;

/** From so many installs on code is worth its making: about 1000 in each of two threads win back what it costs. */
const LONG = 3000;

export interface StudyJob {
  readonly kind: 'study';
  readonly text: string;
  readonly units: Units;
  readonly vary: readonly Vary[];
  readonly asked: readonly string[];
}

export interface SpreadJob {
  readonly kind: 'spread';
  readonly text: string;
  readonly seed: number;
  readonly samples: number;
}

export type Job = StudyJob | SpreadJob;
export type Done<J extends Job> = J extends StudyJob ? Row[] : Block;

/** The work of one kind, as a function of the number of the block. */
export function workerOf(job: Job): (block: number) => Row[] | Block {
  const read = readDesign(job.text, '');
  if (!read.ok) throw new Error('the design of a job cannot be read');
  return job.kind === 'study' ? studying(job, read.design) : spreading(job, read.design);
}

function studying({ units, vary, asked }: StudyJob, design: Design): (block: number) => Row[] {
  const points = pointsOf(vary);
  return (block) => {
    const from = block * STUDY_BLOCK;
    return Array.from({ length: Math.min(STUDY_BLOCK, points - from) }, (_, i) =>
      pointOf(design, units, vary, asked, valuesAt(vary, from + i), (one) =>
        pipeline(fromShelf(one, pipeline)),
      ),
    );
  };
}

function spreading({ seed, samples }: SpreadJob, design: Design): (block: number) => Block {
  if (samples >= LONG) writeCode(codeOf);
  const installs = installsOf(fromShelf(design, pipeline));
  const sequence = new Sequence(installs.inputs.length, seed);
  return (block) => {
    const from = block * SPREAD_BLOCK;
    return blockOf(installs, sequence, from, Math.min(from + SPREAD_BLOCK, samples));
  };
}
