/** What to buy: size and length of every run, its fuse and its relay. */
import { takenText } from '../../writers/taken.ts';
import type { View } from '../protocol.ts';
import { useCurrent, useShown, useVerdict } from '../state/use.ts';
import { Table } from './Table.tsx';

const COLUMNS = [
  { title: 'Run' },
  { title: 'Size', whole: true },
  { title: 'Length', whole: true },
  { title: 'In it', whole: true },
];

export function Buy({ view }: { readonly view: View }) {
  const current = useCurrent();
  const verdict = useVerdict();
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
  // What fails, or is not what the design says now, is not to be bought.
  if (!current) return <p>Not current: nothing is listed to buy.</p>;
  if (view.design.unknowns.length > 0) return <p>Parts are not known: nothing is listed to buy.</p>;
  if (verdict === 'open')
    return <p>The author’s own rules are still being worked out: nothing is listed to buy.</p>;
  if (verdict === 'fail') return <p>Something fails: nothing is listed to buy.</p>;
  return (
    <>
      <Table caption="What to buy" told columns={COLUMNS} rows={rows} />
      <Price shop={view.json.shop} />
    </>
  );
}

/** Which fuses of the shop it gets, and its price by the shop's file, with what of it has none. */
function Price({ shop }: { readonly shop: View['json']['shop'] }) {
  if (!shop) return null;
  const { price, currency } = shop;
  const open = price?.without.length ? `; no price: ${price.without.join('; ')}` : '';
  return (
    <>
      {shop.fuses.map((taken) => (
        <p key={taken.run}>
          Of the shop in {taken.run}: {takenText(taken)}
        </p>
      ))}
      {price === null || currency === null ? null : (
        <p>
          Price of wire, fuses and relays: {price.total.toFixed(2)} {currency}
          {open}
        </p>
      )}
    </>
  );
}
