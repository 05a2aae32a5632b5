/** A table of figures as the worker printed it. */
import type { Table as Printed } from '../../views/table.ts';
import { Origin } from './Origin.tsx';
import { Table } from './Table.tsx';

/** A cell with the unit of its column: `0.463 V`. */
export function cellOf({ heads, rows }: Printed, row: number, column: number): string {
  const text = rows[row]?.[column] ?? '–';
  return text === '–' ? text : `${text} ${heads[column]?.unit ?? ''}`.trim();
}

export const Figures = ({ table: { title, heads, rows, members } }: { readonly table: Printed }) => {
  const first = heads.findIndex(({ quantity }) => quantity !== null);
  return (
    <Table
      caption={title}
      columns={heads.map(({ label, unit, words }) => ({
        title: unit === '' ? label : `${label}, ${unit}`,
        number: !words,
      }))}
      rows={rows.map((cells, row) => ({
        key: cells.slice(0, 2).join(),
        cells: cells.map((text, i) => {
          const { quantity = null, label = '', unit = '' } = heads[i] ?? {};
          return quantity === null ? (
            text
          ) : (
            <Origin
              key={quantity}
              of={{ quantity, at: members[row] ?? {} }}
              label={`${label} ${text} ${unit}`.trim()}
              inner={i !== first}
            >
              {text}
            </Origin>
          );
        }),
      }))}
    />
  );
};
