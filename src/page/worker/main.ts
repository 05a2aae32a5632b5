/** The worker: takes what the page asks, and answers in order. */
import './no-eval.ts';
import { printProblem } from '../../design/problems.ts';
import { wiringDiagram } from '../../kit/diagram.ts';
import { fuseCurves } from '../../pictures/curve-lines.ts';
import { curvesPicture } from '../../pictures/curves.ts';
import { dropPicture } from '../../pictures/drop.ts';
import { speedLines } from '../../pictures/speed-lines.ts';
import { run } from '../../run.ts';
import { fromShelf } from '../../shop/choose.ts';
import type { Ask, Calls, Given, Kind, LateKind, Reply, Tell } from '../protocol.ts';
import { explained } from './explain.ts';
import { cardOf } from './feed.ts';
import { readGiven } from './given.ts';
import { Live } from './live.ts';
import { testCardOf } from './test-card.ts';
import { traceAt } from './trace.ts';
import { viewOf } from './view.ts';

const live = new Live();

/** With what the shop's file decides, as the command has it. */
export const designOf = (given: Given) => {
  const read = readGiven(given);
  if (!read.ok) throw new Error(read.problems.map(printProblem).join('\n'));
  return fromShelf(read.design, run);
};

type Answers<K extends Kind> = {
  readonly [One in K]: (
    ask: Calls[One]['ask'],
    tell: Tell,
  ) => Calls[One]['reply'] | Promise<Calls[One]['reply']>;
};

const LIVE: Answers<Exclude<Kind, LateKind>> = {
  design: (given) => live.answer(given, given.good, given.units),
  kept: (given) => {
    const read = readGiven(given);
    return read.ok ? viewOf(run(fromShelf(read.design, run))) : null;
  },
  speed: () => speedLines(live.evaluation) ?? { why: 'The design has no sweep.' },
  trace: ({ speed }) => traceAt(live.evaluation, speed),
  drop: () => dropPicture(live.evaluation),
  curves: () => {
    const found = fuseCurves(live.evaluation);
    if (found.curves === null) return { why: found.why };
    return found.curves.map((curves) => curvesPicture(curves, live.evaluation.design.title));
  },
  card: ({ kind, id, units }) => cardOf(live.evaluation, kind, id, units),
  explain: (asked) => explained(live.evaluation, asked),
  testcard: () => testCardOf(live.evaluation),
  diagram: () => wiringDiagram(live.result),
};

const answers: Partial<Answers<Kind>> = { ...LIVE };

/** What this worker can answer besides. */
export const answersToo = (late: Answers<LateKind>): void => {
  Object.assign(answers, late);
};

/** A worker's own names, which the types of a page do not have. */
const worker = globalThis as unknown as {
  onmessage: ((event: { data: Ask }) => void) | null;
  postMessage(reply: Reply): void;
};

worker.onmessage = async ({ data: { id, kind, ask } }) => {
  try {
    const answer = answers[kind] as (ask: unknown, tell: Tell) => unknown;
    worker.postMessage({ id, reply: await answer(ask, (stage) => worker.postMessage({ id, stage })) });
  } catch (error) {
    worker.postMessage({ id, failed: error instanceof Error ? error.message : String(error) });
  }
};
