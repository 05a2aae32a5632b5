/** A verdict: a sign and a word, and a colour besides. */
import type { Verdict } from '../../findings/finding.ts';

const SIGNS: Readonly<Record<Verdict, string>> = { pass: '✓', fail: '✕', unknown: '?', advice: 'i' };

export const Mark = ({ verdict }: { readonly verdict: Verdict }) => (
  <span class={`mark ${verdict}`}>
    <span aria-hidden="true">{SIGNS[verdict]}</span> {verdict}
  </span>
);
