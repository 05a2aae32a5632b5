/** Whether the papers may be built from: only when everything is judged and nothing fails. */
import { type Finding, open as isOpen } from '../findings/finding.ts';
import type { Result } from '../findings/result.ts';

export interface Release {
  readonly ok: boolean;
  /** What stands on every first page, and in every row of a table for machines. */
  readonly words: string;
  /** What fails or is not known. */
  readonly open: readonly Finding[];
}

export const RELEASED = 'the calculation passes';
const HELD = 'NOT RELEASED FOR BUILDING';

export function released({ findings, verdict }: Result): Release {
  const open = findings.filter(isOpen);
  if (verdict === 'pass') return { ok: true, words: RELEASED, open };
  const why = verdict === 'fail' ? 'the design fails' : 'the design cannot be judged in full';
  return { ok: false, words: `${HELD}: ${why}`, open };
}
