/** What to buy: size and length of every run, its fuse and its relay. */
import { printNumber } from '../../basis/print.ts';
import type { View } from '../protocol.ts';
import { useBenchState } from '../state/use.ts';
import { inUnits, showRating, showSize } from '../units.ts';
import { worstWires } from './facts.ts';
import { Table } from './Table.tsx';

const COLUMNS = [
  { title: 'Run' },
  { title: 'Size', whole: true },
  { title: 'Insulation' },
  { title: 'Length', whole: true },
  { title: 'In it', whole: true },
];

export function Buy({ view: { json, design } }: { readonly view: View }) {
  const { system } = useBenchState();
  const rows = worstWires(json).map(({ run: name, gauge, gauge_chosen }) => {
    const lengths = json.runs.filter(({ run }) => run === name).map(({ length_m }) => length_m);
    const [least, most] = [Math.min(...lengths), Math.max(...lengths)];
    const range = least === most ? printNumber(least) : `${printNumber(least)}–${printNumber(most)}`;
    const fuse = json.fuses.find(({ run }) => run === name || run.startsWith(`${name}.`));
    const relay = json.relays.find(({ run }) => run === name || run.startsWith(`${name}.`));
    const parts = [
      fuse && `fuse ${showRating(fuse.rating_A)}, type ${fuse.type}${fuse.rating_chosen ? ' (chosen)' : ''}`,
      relay && `relay ${showRating(relay.rating_A)}${relay.rating_chosen ? ' (chosen)' : ''}`,
    ].filter(Boolean);
    return {
      key: name,
      cells: [
        name,
        <span key="size">
          <strong>{showSize(gauge)}</strong> <span class="quiet">{gauge_chosen ? 'chosen' : 'stated'}</span>
        </span>,
        design.runs.find((run) => run.name === name)?.insulation ?? '',
        inUnits(`${lengths.length} × ${range} m`, system),
        parts.join('; '),
      ],
    };
  });
  return <Table caption="What to buy" told columns={COLUMNS} rows={rows} />;
}
