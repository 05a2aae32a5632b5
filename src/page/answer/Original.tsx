/** The feed beside the one that it replaces, as the command compares them. */
import type { Against } from '../protocol.ts';
import { useSlow } from '../state/use.ts';
import { LiveMark } from './Mark.tsx';
import { Progress } from './Progress.tsx';
import { Table } from './Table.tsx';

export function Original() {
  const [found, stop] = useSlow('against', {}, '');
  if (found.is !== 'done') return <Progress of={found} what="Both feeds are being compared" stop={stop} />;
  return found.reply === null ? null : <Beside against={found.reply} />;
}

function Beside({ against: { sides, gain, tables, rules } }: { readonly against: Against }) {
  return (
    <>
      {sides.map(({ name, title, verdict }) => (
        <p key={name}>
          <b>{name}</b>: {title} <LiveMark verdict={verdict} />
        </p>
      ))}
      {gain === '' ? null : <p class="gain">{gain}</p>}
      {rules.map(({ title, names }) => (
        <div key={title}>
          <h4>{title}</h4>
          <ul>
            {names.map((name) => (
              <li key={name}>{name}</li>
            ))}
          </ul>
        </div>
      ))}
      {tables.map(({ title, heads, rows }) => (
        <Table
          key={title}
          caption={title}
          columns={heads.map((head, i) => ({ title: head === '' ? 'Figure' : head, number: i > 0 }))}
          rows={rows.map((cells) => ({ key: cells[0] ?? '', cells }))}
        />
      ))}
    </>
  );
}
