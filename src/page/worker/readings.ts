/** An install as found: what readings mean, in the words of the check on the command line. */
import { capital } from '../../basis/print.ts';
import type { Design } from '../../design/design.ts';
import type { OwnFound } from '../../own/found.ts';
import { type Checked, checked } from '../../readings/check.ts';
import { HARM_WORDS } from '../../readings/mend.ts';
import { subjectOf } from '../../readings/places.ts';
import {
  causeShort,
  costSentence,
  foundSentence,
  nextSentence,
  percent,
  readingSentence,
  unseenSentences,
} from '../../readings/words.ts';
import { run, withOwn } from '../../run.ts';
import { unknownSentence, verdictLine } from '../../writers/check-report.ts';
import type { CheckText } from '../protocol.ts';

export function checkOf(design: Design, own: readonly OwnFound[] = []): CheckText {
  const found: Checked = checked(withOwn(run(design), own));
  const { result, diagnosis, readings, mend, next, unseen } = found;
  const { evaluation: e } = result;
  return {
    verdict: found.verdict,
    line: verdictLine(found).split('  ').slice(1).join('  '),
    unknown: found.open.map((one) => capital(unknownSentence(one))),
    mend: mend.map(({ harm, subject, says, detail, cost }) => ({
      title: `${HARM_WORDS[harm]}${subject === 'feed' ? '' : `: ${subject}`}`,
      says,
      detail,
      cost: cost === null ? '' : costSentence(e, cost),
    })),
    causes: [
      // A sentence that names several has the share of each in it.
      ...diagnosis.found.map((one) => ({
        text: foundSentence(e, one),
        share: one.length === 1 ? percent(one[0]?.share ?? 0) : '',
      })),
      ...diagnosis.suspects.map((cause) => ({
        text: `${capital(causeShort(e, cause))}.`,
        share: percent(cause.share),
      })),
    ],
    sound: diagnosis.why === null ? percent(diagnosis.sound) : '',
    next: nextSentence(e, next, diagnosis, found.blind),
    unseen: unseenSentences(e, unseen),
    readings: readings.map((judged) => ({
      where: [
        `${judged.reading.what}, ${subjectOf(e.design, judged.reading)}`,
        judged.reading.point === null ? '' : (e.design.points[judged.reading.point]?.name ?? ''),
      ]
        .filter(Boolean)
        .join(', '),
      stands: judged.stands,
      text: readingSentence(judged),
    })),
    why: diagnosis.why ?? '',
  };
}
