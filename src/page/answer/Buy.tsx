/** What to buy: size and length of every run, its fuse and its relay. */
import type { View } from '../protocol.ts';
import { useShown } from '../state/use.ts';
import { Table } from './Table.tsx';

const COLUMNS = [
  { title: 'Run' },
  { title: 'Size', whole: true },
  { title: 'Length', whole: true },
  { title: 'In it', whole: true },
];

/** Under a verdict that fails there is nothing to buy. */
const Nothing = () => <p>Something fails: nothing is listed to buy.</p>;

export function Buy({ view }: { readonly view: View }) {
  const rows = useShown(view).bought.map(({ run, size, chosen, lengths, parts }) => ({
    key: run,
    cells: [
      run,
      <span key="size">
        <strong>{size}</strong> <span class="quiet">{chosen ? 'chosen' : 'stated'}</span>
      </span>,
      lengths,
      parts.join('; '),
    ],
  }));
  return view.json.verdict === 'fail' ? (
    <Nothing />
  ) : (
    <Table caption="What to buy" told columns={COLUMNS} rows={rows} />
  );
}
