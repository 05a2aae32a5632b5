/** The verdict on the whole, as it heads a report. */
import type { Overall, Verdict } from '../findings/finding.ts';

export const VERDICT_WORDS: Readonly<Record<Overall, string>> = {
  pass: 'PASS',
  fail: 'FAIL',
  unknown: 'UNKNOWN',
};

interface Counted {
  readonly verdict: Verdict | null;
  readonly marginal?: boolean;
}

/**
 * What stands behind the word of the verdict: `4 fail, 0 unknown, 5 advice, 49 pass`, or `1 of the author’s own rules fails,
 * …`. `own` are the rules of the author, which count in the verdict as those of the tool do.
 */
export function verdictCounts(findings: readonly Counted[], own: readonly Counted[] = []): string {
  const of = (all: readonly Counted[], verdict: Verdict): number =>
    all.filter((one) => one.verdict === verdict).length;
  const both = (verdict: 'fail' | 'unknown', one: string, several: string): string => {
    const [ours, theirs] = [of(findings, verdict), of(own, verdict)];
    const authors = `${theirs} of the author’s own rules`;
    if (theirs > 0 && ours === 0) return `${authors} ${theirs === 1 ? one : several}`;
    return `${ours} ${verdict}${theirs === 0 ? '' : ` and ${authors}`}`;
  };
  const marginal = findings.filter((one) => one.marginal).length;
  return [
    both('fail', 'fails', 'fail'),
    both('unknown', 'is unknown', 'are unknown'),
    ...(of(findings, 'advice') > 0 ? [`${of(findings, 'advice')} advice`] : []),
    `${of(findings, 'pass')} pass`,
    ...(marginal > 0 ? [`${marginal} of them within 10 % of the limit`] : []),
  ].join(', ');
}
