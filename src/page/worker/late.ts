/**
 * What takes long, and reads or writes workbooks: a part of its own behind the program of the worker, which the first answer
 * does not wait for.
 */
import { unknownIn } from '../../design/unknown.ts';
import { run } from '../../run.ts';
import { runLaid } from '../../run-laid.ts';
import { readSaved } from '../../saved/read.ts';
import { archive } from '../../saved/seal/archive.ts';
import { canDigest } from '../../saved/seal/digest.ts';
import { showWith, toWorkbook } from '../../writers/workbook/workbook.ts';
import { againstOriginal } from './against.ts';
import { answersToo, designOf } from './main.ts';
import { ownJudged } from './own.ts';
import { kitBook, papersOf } from './papers.ts';
import { checkOf } from './readings.ts';
import { remediesShown } from './remedies.ts';
import { STAGES, staged } from './stages.ts';

answersToo({
  own: ownJudged,
  check: (given) => checkOf(designOf(given), given.own),
  against: (given) => againstOriginal(designOf(given), given.own),
  remedies: (given) => remediesShown(run(designOf(given))),
  papers: (given) => papersOf(designOf(given), given, given.logo, given.own),
  kitbook: (given, tell) => kitBook(designOf(given), given, tell),
  workbook: (given, tell) => {
    tell(STAGES.design);
    const design = designOf(given);
    const unknown = unknownIn(design);
    if (unknown !== null) throw new Error(unknown);
    const result = run(design);
    const told = result.verdict === 'fail' ? remediesShown(result)[design.units] : null;
    const whole = runLaid(design, staged(showWith(told), tell));
    tell(STAGES.file);
    const bytes = toWorkbook(whole);
    // Sealed as the command seals it, so that the command knows later whether somebody edited it.
    return canDigest() ? archive.seal(bytes) : bytes;
  },
  saved: async ({ bytes, file }) => {
    const read = await readSaved(bytes, file);
    return read.ok ? { ok: true, text: read.design.text.toString() } : read;
  },
});
