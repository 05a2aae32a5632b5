/** A snapshot of an earlier answer beside the live one. */
import { hasRules } from '../../own/found.ts';
import type { Shown, View } from '../protocol.ts';
import { onKnown } from '../state/bench.ts';
import { useBench, useBenchState, useShown, useVerdict } from '../state/use.ts';
import { cellOf } from './Figures.tsx';
import { LiveMark, Mark } from './Mark.tsx';
import { Original } from './Original.tsx';
import { Table } from './Table.tsx';

export function Compare({ view }: { readonly view: View }) {
  const bench = useBench();
  const { snapshot } = useBenchState('snapshot');
  return (
    <section
      class={`compare ${snapshot === null && view.design.original === null ? 'bare' : ''}`}
      aria-labelledby="compare"
    >
      <h3 id="compare">Compare</h3>
      <p class="buttons">
        <button type="button" onClick={() => bench.keep()}>
          {snapshot === null ? 'Compare with this state' : 'Compare with the present state instead'}
        </button>
        {snapshot === null ? null : (
          <button type="button" onClick={() => bench.drop()}>
            end comparing
          </button>
        )}
      </p>
      {snapshot === null ? (
        <p class="quiet">
          Keeps the present answer beside the live one, in figures and in the chart over speed.
        </p>
      ) : (
        <Beside view={view} snapshot={snapshot} />
      )}
      {view.design.original === null ? null : <Original />}
    </section>
  );
}

function Beside({ view, snapshot }: { readonly view: View; readonly snapshot: View }) {
  const [now, then] = [useShown(view), useShown(snapshot)];
  const verdict = useVerdict();
  const was = onKnown(snapshot, snapshot.json.verdict);
  return (
    <Table
      caption={`Now beside the snapshot of “${snapshot.json.title}”`}
      columns={[
        { title: 'Figure' },
        { title: 'now', number: true },
        { title: 'snapshot', number: true },
        { title: 'change', number: true },
      ]}
      rows={[
        {
          key: 'verdict',
          cells: [
            'Verdict',
            verdict === 'open' ? 'being worked out' : <LiveMark key="now" verdict={verdict} />,
            <span key="then">
              <Mark verdict={was} />
              {aside(snapshot) ? ' without the author’s own rules' : ''}
            </span>,
            aside(snapshot) || verdict === 'open' ? '–' : verdict === was ? 'same' : 'another',
          ],
        },
        ...now.feed.heads.map(({ key, label }, i) => ({
          key,
          cells: [label, cellOf(now.feed, 0, i), cellOf(then.feed, 0, i), change(key, view, snapshot)],
        })),
        ...parts(now, then),
      ]}
    />
  );
}

/** Whether rules of the author are not judged in it. */
const aside = ({ design, json }: View): boolean => json.own.length === 0 && hasRules(design);

/** `+3.1 %`, by the numbers and not by their printed digits. */
function change(key: string, view: View, snapshot: View): string {
  const of = ({ json }: View): unknown => json.totals[key as keyof typeof json.totals];
  const [now, then] = [of(view), of(snapshot)];
  if (now === then) return 'same';
  if (typeof now !== 'number' || typeof then !== 'number') return '–';
  return then === 0 ? 'another' : `${now > then ? '+' : '−'}${Math.abs((now / then - 1) * 100).toFixed(1)} %`;
}

/** Size and parts of every run. */
function parts(now: Shown, then: Shown) {
  const text = (shown: Shown, run: string): string => {
    const found = shown.bought.find((one) => one.run === run);
    return found === undefined ? '–' : [found.size, ...found.parts].join('; ');
  };
  return now.bought.map(({ run }) => {
    const [a, b] = [text(now, run), text(then, run)];
    return { key: `run ${run}`, cells: [run, a, b, a === b ? 'same' : 'another'] };
  });
}
