/** Every finding: what fails, is unknown or is advice in sentences, what passes by its margin. */
import type { FindingText, View } from '../protocol.ts';
import { useShown } from '../state/use.ts';
import { Mark } from './Mark.tsx';
import { byArrows, Origin } from './Origin.tsx';

export function Findings({ view }: { readonly view: View }) {
  const { findings } = useShown(view);
  const open = findings.filter((f) => f.verdict !== 'pass');
  const passing = findings.filter((f) => f.verdict === 'pass');
  return (
    <section aria-labelledby="findings">
      <h3 id="findings">Findings</h3>
      {open.every((f) => f.verdict === 'advice') ? <p>Nothing fails, and everything is known.</p> : null}
      <ul class="findings" onKeyDown={byArrows}>
        {open.map((f) => (
          <li key={keyOf(f)} class={f.verdict}>
            <Head f={f} />
            <p>{f.sentence}</p>
            <p class="source">{f.source}</p>
          </li>
        ))}
      </ul>
      <details>
        <summary>{passing.length} pass, the one with the least margin first</summary>
        <ul class="findings" onKeyDown={byArrows}>
          {passing.map((f) => (
            <li key={keyOf(f)} class="pass">
              <Head f={f} />
              <p>{f.sentence}</p>
              <p class="source">{f.source}</p>
            </li>
          ))}
        </ul>
      </details>
    </section>
  );
}

const keyOf = (f: FindingText): string => `${f.rule} ${f.subject}`;

function Head({ f }: { readonly f: FindingText }) {
  return (
    <div class="head">
      <Mark verdict={f.verdict} />
      <strong>
        {f.title}
        {f.subject === '' ? '' : `, ${f.subject}`}
      </strong>
      {f.value === '' ? null : (
        <span class="measure">
          <Origin of={f.origins.value} label={`${f.title} ${f.value}`}>
            {f.value}
          </Origin>{' '}
          <Origin of={f.origins.limit} label={`Limit ${f.limit}`} inner>
            {f.limit}
          </Origin>
        </span>
      )}
      {f.margin === null || !Number.isFinite(f.margin) ? null : (
        <Margin share={f.margin} marginal={f.marginal} />
      )}
    </div>
  );
}

/** The share of the limit that is left, as a bar and in figures. */
function Margin({ share, marginal }: { readonly share: number; readonly marginal: boolean }) {
  const left = Math.max(0, Math.min(1, share));
  return (
    <span class={`margin ${marginal ? 'close' : ''}`}>
      <svg viewBox="0 0 60 8" width="60" height="8" aria-hidden="true">
        <rect class="bar" x="0.5" y="0.5" width="59" height="7" />
        <rect class="left" x="0.5" y="0.5" width={59 * left} height="7" />
      </svg>
      {share < 0 ? 'over by' : 'margin'} {Math.abs(share * 100).toFixed(Math.abs(share) < 0.1 ? 1 : 0)} %
      {marginal ? ', close' : ''}
    </span>
  );
}
