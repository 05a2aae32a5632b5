/** The verdict, and the figures that one looks at first. */
import type { View } from '../protocol.ts';
import { useBenchState } from '../state/use.ts';
import { show } from '../units.ts';
import { leastKept, worstCoil } from './facts.ts';
import { Mark } from './Mark.tsx';

const count = (view: View, verdict: string): number =>
  view.findings.filter((f) => f.verdict === verdict).length;

export function VerdictPanel({ view }: { readonly view: View }) {
  const { system } = useBenchState();
  const { json, design, findings } = view;
  const { totals } = json;
  const marginal = findings.filter((f) => f.marginal).length;
  const drop = findings.find((f) => f.rule === 'drop');
  return (
    <section class={`verdict ${json.verdict}`} aria-labelledby="verdict">
      <h2 id="verdict">{json.title}</h2>
      <p class="word" role="status">
        <Mark verdict={json.verdict} />
        <span class="quiet">
          {count(view, 'fail')} fail, {count(view, 'unknown')} unknown,{' '}
          {count(view, 'advice') > 0 ? `${count(view, 'advice')} advice, ` : ''}
          {count(view, 'pass')} pass
          {marginal > 0 ? `, ${marginal} of them within 10 % of the limit` : ''}
        </span>
      </p>
      <dl class="figures">
        <Figure
          label="Drop, worst path"
          value={show(totals.drop_V, 'V', system)}
          about={`of ${show(design.limits.drop, 'V', system)} allowed${drop?.marginal ? ', close to it' : ''}; coil ${totals.worst_coil ?? '–'} at ${totals.worst_point ?? '–'}`}
        />
        <Figure
          label="Spark energy kept"
          value={show(leastKept(json), '1', system, '%')}
          about={`of coil ${worstCoil(json)?.id ?? '–'}, where least is left`}
        />
        <Figure
          label="Average current"
          value={show(totals.average_A, 'A', system)}
          about={
            totals.alternator_share === null
              ? 'at the worst point'
              : `at the worst point, ${show(totals.alternator_share, '1', system, '%')} of what the alternator has left`
          }
        />
        <Figure label="Copper" value={show(totals.copper_kg, 'kg', system, 'g')} about="in all conductors" />
      </dl>
    </section>
  );
}

function Figure({
  label,
  value,
  about,
}: {
  readonly label: string;
  readonly value: string;
  readonly about: string;
}) {
  return (
    <div>
      <dt>{label}</dt>
      <dd>
        <span class="big">{value}</span>
        <span class="quiet">{about}</span>
      </dd>
    </div>
  );
}
