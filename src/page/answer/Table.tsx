/** A table that can be scrolled by keyboard where it is wider than its place. */
import type { ComponentChildren } from 'preact';
import { byArrows } from './Origin.tsx';

export interface Column {
  readonly title: string;
  readonly number?: boolean;
  /** On one line. */
  readonly whole?: boolean;
}

interface TableProps {
  readonly caption: string;
  /** The heading above says the same. */
  readonly told?: boolean;
  readonly columns: readonly Column[];
  readonly rows: readonly { readonly key: string; readonly cells: readonly ComponentChildren[] }[];
}

export function Table({ caption, told = false, columns, rows }: TableProps) {
  return (
    <>
      {told ? null : <p class="caption">{caption}</p>}
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard */}
      <section class="scroll" tabIndex={0} aria-label={`${caption}, table`}>
        <table aria-label={caption}>
          <thead>
            <tr>
              {columns.map(({ title, number }) => (
                <th key={title} scope="col" class={number ? 'n' : ''}>
                  {title}
                </th>
              ))}
            </tr>
          </thead>
          <tbody onKeyDown={byArrows}>
            {rows.map(({ key, cells }) => (
              <tr key={key}>
                {cells.map((cell, i) => {
                  const column = columns[i];
                  const looks = {
                    key: column?.title ?? i,
                    // On a narrow page each value stands behind its heading.
                    'data-head': column?.title ?? '',
                    class: column?.number ? 'n' : column?.whole ? 'whole' : '',
                  };
                  return i === 0 ? (
                    <th scope="row" {...looks}>
                      {cell}
                    </th>
                  ) : (
                    <td {...looks}>{cell}</td>
                  );
                })}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </>
  );
}
