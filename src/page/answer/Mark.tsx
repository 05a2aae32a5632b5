/** A verdict: a sign and a word, and a colour besides. */
import type { Verdict } from '../../findings/finding.ts';
import { useStanding } from '../state/use.ts';

const SIGNS: Readonly<Record<Verdict, string>> = { pass: '✓', fail: '✕', unknown: '?', advice: 'i' };

export const Mark = ({ verdict }: { readonly verdict: Verdict }) => (
  <span class={`mark ${verdict}`}>
    <span aria-hidden="true">{SIGNS[verdict]}</span> {verdict}
  </span>
);

/** Of the answer at hand: nobody takes a verdict for that of a text that is not answered. */
export function LiveMark({ verdict }: { readonly verdict: Verdict }) {
  const standing = useStanding();
  if (standing === 'current') return <Mark verdict={verdict} />;
  return standing === 'working' ? (
    <span class="mark working">Working</span>
  ) : (
    <span class="mark off">Not current</span>
  );
}
