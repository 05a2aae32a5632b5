/** An install as found: what fails, what was read, and what explains it. */

import { judgedAlone } from '../design/names.ts';
import type { Overall } from '../findings/finding.ts';
import { overall } from '../findings/read.ts';
import type { Result } from '../findings/result.ts';
import { mendsByThemselves } from './by-itself.ts';
import { type Diagnosis, diagnose, SURE } from './diagnose.ts';
import { atPosts, type Where } from './expected.ts';
import { type Judged, judge } from './judge.ts';
import { HARMS, type Mend, toMend } from './mend.ts';
import { blindReading, type Next, nextReading } from './next.ts';
import { type Open, settle } from './unknowns.ts';
import { type Unseen, unseen } from './unseen.ts';

export interface Checked {
  readonly result: Result;
  /** Of rules and readings together. */
  readonly verdict: Overall;
  /** Of the readings by themselves; passes where none were taken. */
  readonly read: Overall;
  readonly readings: readonly Judged[];
  readonly diagnosis: Diagnosis;
  readonly mend: readonly Mend[];
  /** Of each part the smallest fault that these readings would show; empty where none were weighed. */
  readonly unseen: readonly Unseen[];
  /** The reading that would tell most; null when none would. */
  readonly next: Next | null;
  /** Where nothing is suspected and some run is not seen at all: the drop over it. */
  readonly blind: Where | null;
  /** Parts that nobody knows, the one that decides most first. */
  readonly open: readonly Open[];
}

/** Readings that are out of range, or do not go together, and nothing that explains them. */
function unexplained(off: readonly Judged[], { found, explained }: Diagnosis): Mend[] {
  if (found.length > 0 || (off.length === 0 && explained)) return [];
  return [
    {
      harm: 'note',
      subject: 'readings',
      says:
        off.length > 0
          ? 'Some readings are out of range, and together they do not say why.'
          : 'Each reading is within its range, but together they do not fit any install like this one.',
      detail:
        'Read again, and read more: the supply at the battery posts, the drop over every run at idle and at speed, the current in the first run.',
      rule: null,
      cost: null,
    },
  ];
}

/**
 * Judges an install. The evaluation of the result must hold the subject `readings`; inputs that stand for unknown parts are
 * set to what is most likely.
 */
export function checked(given: Result): Checked {
  const { evaluation: e } = given;
  const { findings, open } = settle(e);
  const result = { ...given, findings, verdict: overall([...findings, ...(given.own ?? [])]) };
  const readings = e.design.measured.map((reading) => judge(e, reading));
  const diagnosis = diagnose(e);
  const off = readings.filter(({ stands }) => stands === 'low' || stands === 'high');
  const feed = off.filter(({ reading }) => !judgedAlone(reading));
  const alone = mendsByThemselves(e, readings);
  const mend = [...toMend(e, findings, diagnosis), ...alone, ...unexplained(feed, diagnosis)].sort(
    (a, b) => HARMS.indexOf(a.harm) - HARMS.indexOf(b.harm),
  );
  // Another supply at the posts than stated is by itself no fault of the feed: everything else is judged by it.
  const posts = off.some(({ reading }) => atPosts(reading));
  const wrong =
    diagnosis.found.length > 0 ||
    !diagnosis.explained ||
    alone.length > 0 ||
    off.some(({ reading }) => !atPosts(reading));
  const read: Overall = wrong ? 'fail' : posts ? 'unknown' : 'pass';
  const { inference } = diagnosis;
  const hidden = inference === null ? [] : unseen(e, inference);
  const clear = diagnosis.found.length === 0 && diagnosis.sound >= SURE;
  return {
    result,
    verdict: overall([{ verdict: read }, result]),
    read,
    readings,
    diagnosis,
    mend,
    unseen: hidden,
    blind: clear ? blindReading(e, hidden) : null,
    next: nextReading(e, diagnosis),
    open,
  };
}
