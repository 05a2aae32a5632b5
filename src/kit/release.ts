/** Whether the papers may be built from: only when everything is judged and nothing fails. */
import { type Finding, open as isOpen } from '../findings/finding.ts';
import type { Result } from '../findings/result.ts';
import type { OwnFound } from '../own/found.ts';

export interface Release {
  readonly ok: boolean;
  /** What stands on every first page, and in every row of a table for machines. */
  readonly words: string;
  /** What fails or is not known. */
  readonly open: readonly Finding[];
  /** Rules of the author’s own that fail or come to an error. */
  readonly broken: readonly OwnFound[];
}

export const RELEASED = 'the calculation passes';
const HELD = 'NOT RELEASED FOR BUILDING';

export function released({ findings, own = [], verdict }: Result): Release {
  const open = findings.filter(isOpen);
  const broken = own.filter((one) => one.verdict === 'fail' || one.verdict === 'unknown');
  if (verdict === 'pass') return { ok: true, words: RELEASED, open, broken };
  const what = open.some((f) => f.verdict === verdict) ? 'the design' : 'a rule of the author’s own';
  const why =
    verdict === 'fail' ? `${what} fails` : `${what} cannot be judged${open.length > 0 ? ' in full' : ''}`;
  return { ok: false, words: `${HELD}: ${why}`, open, broken };
}
