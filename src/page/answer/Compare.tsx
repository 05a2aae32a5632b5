/** A snapshot of an earlier answer beside the live one. */
import type { View } from '../protocol.ts';
import { useBench, useBenchState } from '../state/use.ts';
import { type System, show, showSize } from '../units.ts';
import { atWorst, leastKept, worstWires } from './facts.ts';
import { Mark } from './Mark.tsx';
import { Table } from './Table.tsx';

type Read = (view: View) => number | null;

interface Line {
  readonly label: string;
  readonly read: Read;
  readonly unit: string;
  readonly shown?: string;
}

const LINES: readonly Line[] = [
  { label: 'Drop, worst path', read: ({ json }) => json.totals.drop_V, unit: 'V' },
  { label: 'Spark energy kept', read: ({ json }) => leastKept(json), unit: '1', shown: '%' },
  { label: 'Average current', read: ({ json }) => json.totals.average_A, unit: 'A' },
  { label: 'Effective current, first run', read: ({ json }) => effective(json), unit: 'A' },
  { label: 'First fuse', read: ({ json }) => json.fuses[0]?.rating_A ?? null, unit: 'A' },
  { label: 'Copper', read: ({ json }) => json.totals.copper_kg, unit: 'kg', shown: 'g' },
];

function effective(json: View['json']): number | null {
  const first = json.runs[0];
  return first === undefined ? null : (atWorst(first)?.rms_A ?? null);
}

export function Compare({ view }: { readonly view: View }) {
  const bench = useBench();
  const { snapshot, system } = useBenchState();
  return (
    <section class="compare" aria-labelledby="compare">
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
                <Mark key="now" verdict={view.json.verdict} />,
                <Mark key="then" verdict={snapshot.json.verdict} />,
                view.json.verdict === snapshot.json.verdict ? 'same' : 'another',
              ],
            },
            ...LINES.map((line) => rowOf(line, view, snapshot, system)),
            ...sizes(view, snapshot),
          ]}
        />
      )}
    </section>
  );
}

function rowOf({ label, read, unit, shown }: Line, view: View, snapshot: View, system: System) {
  const [now, then] = [read(view), read(snapshot)];
  const change =
    now === null || then === null
      ? '–'
      : now === then
        ? 'same'
        : then === 0
          ? 'another'
          : `${now > then ? '+' : '−'}${Math.abs((now / then - 1) * 100).toFixed(1)} %`;
  return {
    key: label,
    cells: [label, show(now, unit, system, shown), show(then, unit, system, shown), change],
  };
}

function sizes(view: View, snapshot: View) {
  const before = new Map(worstWires(snapshot.json).map(({ run, gauge }) => [run, gauge]));
  return worstWires(view.json).map(({ run, gauge }) => {
    const then = before.get(run) ?? null;
    return {
      key: `size ${run}`,
      cells: [`Size of ${run}`, showSize(gauge), showSize(then), gauge === then ? 'same' : 'another'],
    };
  });
}
