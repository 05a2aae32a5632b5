/** An install as found, as JSON: the result of its rules, and beside it readings and what explains them. */

import type { Checked } from '../readings/check.ts';
import type { Cause } from '../readings/diagnose.ts';
import { type Expected, expectedReadings } from '../readings/expected.ts';
import { instrumentWords, probesOf, subjectOf } from '../readings/places.ts';
import { causeSentence, heatOf, readingSentence } from '../readings/words.ts';
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
  const cause = (found: Cause) => {
    switch (found.kind) {
      case 'resistance':
        return {
          kind: found.kind,
          subject: found.wire === null ? 'source' : subjectOf(design, { wire: found.wire, coil: null }),
          excess_ohm: found.ohm,
          within_ohm: found.within,
          heat_W: heatOf(e, found.wire, found.ohm),
        };
      case 'draw':
        return {
          kind: found.kind,
          subject: found.coil === null ? 'all coils' : subjectOf(design, { wire: null, coil: found.coil }),
          factor: found.factor,
        };
      case 'instrument':
        return { kind: found.kind, reading: found.reading, taken_with: found.instrument };
    }
  };
  return {
    ...toJson(c.result, remedies),
    verdict: c.verdict,
    check: {
      mend: c.mend,
      readings: c.readings.map((judged) => ({
        ...where(judged.expected),
        value: judged.reading.value,
        stands: judged.stands,
        ratio: judged.ratio,
        excess_ohm: judged.excess,
        would_be: judged.wouldBe,
        text: readingSentence(judged),
      })),
      causes: c.diagnosis.causes.map((explained) => ({
        ...cause(explained.cause),
        or_else: explained.orElse.map(cause),
        text: causeSentence(e, explained),
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
