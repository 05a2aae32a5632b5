/** What is checked on the first piece of a reel, and the forces that a crimp must withstand. */

import { type Citation, printCitation } from '../basis/sources.ts';
import { PULL_OUT_MIL, PULL_OUT_UL } from '../data/crimps.ts';
import { type Cut, cutList, type Reel, reelKey } from './cut.ts';
import type { Job } from './job.ts';

/** A force and where it is from; null where the table has no such size. */
export interface Force {
  /** [lbf] held for one minute */
  readonly pounds: number | null;
  readonly source: string;
}

export interface CheckRow {
  readonly reel: Reel;
  /** The piece that is cut first. */
  readonly first: Cut;
}

const TABLES = { ul: PULL_OUT_UL, mil: PULL_OUT_MIL };

/** The tables go by AWG. An SAE or metric size holds other copper, so nothing is read from them for it. */
export function forceOf(gauge: string | null, which: 'ul' | 'mil'): Force {
  const table = TABLES[which];
  const [size, series] = gauge?.split(' ') ?? [];
  const row = series === 'AWG' ? table.rows.find((r) => r.gauge === size) : undefined;
  const source: Citation = row?.source ?? table.source;
  return { pounds: row?.force ?? null, source: row === undefined ? '' : printCitation(source) };
}

/** One row for each reel. Its first piece in the cut list that has a length is the first piece of the batch. */
export function checks(job: Job): CheckRow[] {
  const rows = new Map<string, CheckRow>();
  for (const first of cutList(job)) {
    const key = reelKey(first.reel);
    const known = rows.get(key);
    if (known === undefined || (known.first.cut === null && first.cut !== null))
      rows.set(key, { reel: first.reel, first });
  }
  return [...rows.values()];
}
