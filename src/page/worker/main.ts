/** The worker: takes what the page asks, and answers in order. */
import './no-eval.ts';
import { printProblem } from '../../design/problems.ts';
import { readDesign } from '../../design/read.ts';
import { wiringDiagram } from '../../kit/diagram.ts';
import { fuseCurves } from '../../pictures/curve-lines.ts';
import { curvesPicture } from '../../pictures/curves.ts';
import { dropPicture } from '../../pictures/drop.ts';
import { speedLines } from '../../pictures/speed-lines.ts';
import { run } from '../../run.ts';
import { runLaid } from '../../run-laid.ts';
import { readSaved } from '../../saved/read.ts';
import { archive } from '../../saved/seal/archive.ts';
import { canDigest } from '../../saved/seal/digest.ts';
import { showWith, toWorkbook } from '../../writers/workbook/workbook.ts';
import type { Ask, Calls, Given, Kind, Reply } from '../protocol.ts';
import { againstOriginal } from './against.ts';
import { explained } from './explain.ts';
import { cardOf } from './feed.ts';
import { formOf } from './form.ts';
import { Live } from './live.ts';
import { kitBook, papersOf } from './papers.ts';
import { checkOf, testCardOf } from './readings.ts';
import { remediesShown } from './remedies.ts';
import { traceAt } from './trace.ts';
import { viewOf } from './view.ts';

const live = new Live();

const readGiven = ({ text, file, shop }: Given) => readDesign(text, file, shop ?? undefined);

const designOf = (given: Given) => {
  const read = readGiven(given);
  if (!read.ok) throw new Error(read.problems.map(printProblem).join('\n'));
  return read.design;
};

const ANSWERS: { [K in Kind]: (ask: Calls[K]['ask']) => Calls[K]['reply'] | Promise<Calls[K]['reply']> } = {
  form: formOf,
  design: (given) => live.answer(given, given.good, given.units),
  kept: (given) => {
    const read = readGiven(given);
    return read.ok ? viewOf(run(read.design)) : null;
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
  check: (given) => checkOf(designOf(given)),
  against: (given) => againstOriginal(designOf(given)),
  remedies: (given) => remediesShown(run(designOf(given))),
  papers: (given) => papersOf(designOf(given), given.serials, given.logo),
  kitbook: (given) => kitBook(designOf(given), given.serials),
  workbook: (given) => {
    const design = designOf(given);
    const result = run(design);
    const told = result.verdict === 'fail' ? remediesShown(result)[design.units] : null;
    const bytes = toWorkbook(runLaid(design, showWith(told)));
    // Sealed as the command seals it, so that the command knows later whether somebody edited it.
    return canDigest() ? archive.seal(bytes) : bytes;
  },
  saved: async ({ bytes, file }) => {
    const read = await readSaved(bytes, file);
    return read.ok ? { ok: true, text: read.design.text } : read;
  },
};

/** A worker's own names, which the types of a page do not have. */
const worker = globalThis as unknown as {
  onmessage: ((event: { data: Ask }) => void) | null;
  postMessage(reply: Reply): void;
};

worker.onmessage = async ({ data: { id, kind, ask } }) => {
  try {
    const answer = ANSWERS[kind] as (ask: unknown) => unknown;
    worker.postMessage({ id, reply: await answer(ask) });
  } catch (error) {
    worker.postMessage({ id, failed: error instanceof Error ? error.message : String(error) });
  }
};
