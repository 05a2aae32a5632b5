/** Every finding: what fails, is unknown or is advice in sentences, what passes by its margin. */
import { hasOwn } from '../../own/found.ts';
import type { FindingText, View } from '../protocol.ts';
import { ownOf } from '../state/bench.ts';
import { useOf, useShown, useVerdict } from '../state/use.ts';
import { Margin } from './Margin.tsx';
import { Mark } from './Mark.tsx';
import { byArrows, Origin } from './Origin.tsx';

export function Findings({ view }: { readonly view: View }) {
  const { findings } = useShown(view);
  const verdict = useVerdict();
  const open = findings.filter((f) => f.verdict !== 'pass');
  const passing = findings.filter((f) => f.verdict === 'pass');
  return (
    <section aria-labelledby="findings" class="part-findings">
      <h3 id="findings">Findings</h3>
      {open.every((f) => f.verdict === 'advice') && verdict === 'pass' ? (
        <p>Nothing fails, and everything is known.</p>
      ) : null}
      <List of={open} />
      <Own view={view} />
      <details>
        <summary>{passing.length} pass, the one with the least margin first</summary>
        <List of={passing} />
      </details>
    </section>
  );
}

/** Values and rules of the author’s own. */
function Own({ view }: { readonly view: View }) {
  const own = useOf(ownOf);
  if (!hasOwn(view.design)) return null;
  return (
    <>
      <h4>The author’s own</h4>
      {own === null ? <p class="quiet">Being worked out …</p> : null}
      {own === null || own.judged !== null ? null : (
        <p class="problem">This could not be worked out: {own.why}.</p>
      )}
      <ul class="findings">
        {own?.judged?.rows.map(({ verdict, text }, i) => (
          <li key={i} class={verdict ?? ''}>
            <p>
              {verdict === null ? null : <Mark verdict={verdict} />} {text}
            </p>
          </li>
        ))}
      </ul>
    </>
  );
}

/** Sentences of the command line name keys of the design between backticks: here they stand in letters of their own. */
const Words = ({ text }: { readonly text: string }) => (
  <>{text.split('`').map((part, i) => (i % 2 === 0 ? part : <code key={i}>{part}</code>))}</>
);

const List = ({ of }: { readonly of: readonly FindingText[] }) => (
  <ul class="findings" onKeyDown={byArrows}>
    {of.map((f) => (
      <li key={`${f.rule} ${f.subject}`} class={f.verdict}>
        <Head f={f} />
        <p>
          <Words text={f.sentence} />
        </p>
        <p class="source">{f.source}</p>
      </li>
    ))}
  </ul>
);

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
