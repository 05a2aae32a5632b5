/** An install as found, as JSON: the result of its rules, and beside it readings and what explains them. */

import type { How } from '../readings/causes.ts';
import type { Checked } from '../readings/check.ts';
import type { Cause } from '../readings/diagnose.ts';
import { type Expected, expectedAt, expectedReadings } from '../readings/expected.ts';
import { instrumentWords, probesOf, subjectOf } from '../readings/places.ts';
import { foundSentence, heatOf, nextSentence, placeOf, readingSentence } from '../readings/words.ts';
import type { Remedy } from '../remedies/remedy.ts';
import { toJson } from './json.ts';

/** The contract of the result, with the key `check`. */
export function checkJson(c: Checked, remedies: readonly Remedy[] = []) {
  const { evaluation: e } = c.result;
  const { design } = e;
  const where = (x: Expected) => ({
    what: x.what,
    subject: subjectOf(design, x),
    point: x.point === null ? null : (design.points[x.point]?.name ?? null),
    instrument: x.instrument,
    unit: x.unit,
    expected: x.expected,
    low: x.low,
    high: x.high,
  });
  const cause = ({ part, how, ways, size, low, high, share }: Cause) => ({
    kind: part.is,
    subject: placeOf(e, part),
    how,
    or_how: ways,
    share,
    ...sized(how, size, low, high),
    ...(how === 'resistance' && (part.is === 'wire' || part.is === 'within')
      ? { heat_W: heatOf(e, part.wire, size) }
      : {}),
  });
  return {
    ...toJson(c.result, remedies),
    verdict: c.verdict,
    check: {
      mend: c.mend.map(({ cost, ...mend }) => ({
        ...mend,
        heat_W: cost?.heat ?? null,
        energy_J: cost?.energy
          ? {
              now: cost.energy.now,
              after: cost.energy.after,
              point: design.points[cost.energy.point]?.name ?? null,
            }
          : null,
      })),
      readings: c.readings.map((judged) => ({
        ...where(judged.expected),
        value: judged.reading.value,
        stands: judged.stands,
        ratio: judged.ratio,
        excess_ohm: judged.excess,
        would_be: judged.wouldBe,
        text: readingSentence(judged),
      })),
      causes: c.diagnosis.found.map((found) => ({
        ...cause(found[0] as Cause),
        or_else: found.slice(1).map(cause),
        text: foundSentence(e, found),
      })),
      nothing_wrong_share: c.diagnosis.sound,
      suspects: c.diagnosis.suspects.map(cause),
      next:
        c.next === null
          ? null
          : {
              ...where(expectedAt(e, c.next.where)),
              probes: probesOf(design, c.next.where),
              set_to: instrumentWords(c.next.where),
              gain_nat: c.next.gain,
              text: nextSentence(e, c.next, c.diagnosis),
            },
      unseen: c.unseen.map(({ part, how, size, watts, volts }) => ({
        kind: part.is,
        subject: placeOf(e, part),
        how,
        smallest: size,
        heat_W: watts,
        drop_V: volts,
      })),
      no_diagnosis: c.diagnosis.why,
      expected: expectedReadings(e).map((x) => ({
        ...where(x),
        probes: probesOf(design, x),
        set_to: instrumentWords(x),
      })),
      unknown: c.open.map(({ unknown, run, consistent, offered, decides, look }) => ({
        path: unknown.path,
        kind: unknown.kind,
        run,
        consistent,
        offered,
        decides,
        look,
      })),
      tolerances_assumed: design.tolerance_assumed,
    },
  };
}

/** Size and band of a cause, by what it is a size of; nothing where there is none. */
function sized(how: How, size: number, low: number, high: number) {
  switch (how) {
    case 'resistance':
      return { excess_ohm: size, low_ohm: low, high_ohm: high };
    case 'supply':
      return { off_V: size, low_V: low, high_V: high };
    case 'taken':
    case 'misread':
    case 'open':
      return {};
    default:
      return { factor: size, low, high };
  }
}
