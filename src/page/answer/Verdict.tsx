/** The verdict, and the figures of the whole feed. */
import type { View } from '../protocol.ts';
import { useBenchState, usePicture, useShown } from '../state/use.ts';
import { cellOf } from './Figures.tsx';
import { Mark } from './Mark.tsx';
import { Origin } from './Origin.tsx';

/** Remedies wait for a longer pause in typing [ms]. */
const SLOW = 800;

export function VerdictPanel({ view }: { readonly view: View }) {
  const { json } = view;
  // What was tried on an earlier design says nothing of this one.
  const { answers } = useBenchState();
  const { findings, feed } = useShown(view);
  const count = (verdict: string): number => findings.filter((f) => f.verdict === verdict).length;
  const marginal = findings.filter((f) => f.marginal).length;
  return (
    <section class={`verdict ${json.verdict}`} aria-labelledby="verdict">
      <h2 id="verdict">{json.title}</h2>
      <p class="word" role="status">
        <Mark verdict={json.verdict} />
        <span class="quiet">
          {count('fail')} fail, {count('unknown')} unknown,{' '}
          {count('advice') > 0 ? `${count('advice')} advice, ` : ''}
          {count('pass')} pass
          {marginal > 0 ? `, ${marginal} of them within 10 % of the limit` : ''}
        </span>
      </p>
      {json.verdict === 'fail' ? <Remedies key={answers} view={view} /> : null}
      <dl class="figures">
        {feed.heads.map(({ key, label, quantity }, i) => (
          <div key={key}>
            <dt>{label}</dt>
            <dd>
              <span class="big">
                {quantity === null ? (
                  cellOf(feed, 0, i)
                ) : (
                  <Origin of={{ quantity, at: {} }} label={`${label} ${cellOf(feed, 0, i)}`}>
                    {cellOf(feed, 0, i)}
                  </Origin>
                )}
              </span>
              <span class="quiet">{aboutOf(key, view)}</span>
            </dd>
          </div>
        ))}
      </dl>
    </section>
  );
}

/** What was tried and helps, least change first. */
function Remedies({ view }: { readonly view: View }) {
  const { system } = useBenchState();
  const found = usePicture('remedies', null, 'remedies', SLOW);
  const told = found?.[system === 'design' ? view.design.units : system];
  return (
    <>
      <h3>What would pass</h3>
      {told === undefined ? <p class="quiet">Being tried …</p> : null}
      {told?.length === 0 ? <p>No single change that was tried helps.</p> : null}
      <ul>
        {told?.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
    </>
  );
}

/** Where a figure of the whole feed arises. */
function aboutOf(key: string, { json: { totals } }: View): string {
  switch (key) {
    case 'drop_V':
      return `coil ${totals.worst_coil ?? '–'} at ${totals.worst_point ?? '–'}`;
    case 'energy_kept':
      return 'where least is left';
    case 'average_A':
      return 'of all coils, at the worst point';
    case 'copper_kg':
      return 'in all conductors';
    default:
      return '';
  }
}
