/**
 * Where everything stands in the diagram of the feed: a column for each run, a row for each coil. A conductor lies in
 * its column at the middle of the coils that it carries.
 */
import type { ResultJson, RunJson } from '../../writers/json.ts';

export interface Laid {
  readonly wire: RunJson;
  readonly column: number;
  /** In rows. */
  readonly row: number;
}

/** From the end of one column to the start of a later one. */
interface Joint {
  readonly from: { readonly column: number; readonly row: number };
  readonly to: { readonly column: number; readonly row: number };
}

interface FeedLayout {
  /** Names of the runs in each column, with that of the coils between feed and return. */
  readonly columns: readonly (readonly string[])[];
  /** Index of the column of the coils. */
  readonly coilColumn: number;
  /** Coils from top to bottom. */
  readonly coils: readonly string[];
  readonly wires: readonly Laid[];
  readonly joints: readonly Joint[];
}

export function feedLayout({ runs, coil }: ResultJson): FeedLayout {
  const names = (side: RunJson['side']): string[] => [
    ...new Set(runs.filter((wire) => wire.side === side).map(({ run }) => run)),
  ];
  const [feed, back] = [names('feed'), names('return')];
  const coils = inGroups(coil.ids, [...feed, ...back], runs);
  const rowOf = new Map(coils.map((id, row) => [id, row]));
  const before = beside(feed, runs);
  const behind = beside(back, runs);
  const columns = [...before, ['coils'], ...behind];
  const wires = runs.map((wire): Laid => {
    const rows = wire.coils.map((id) => rowOf.get(id) ?? 0);
    const column = columns.findIndex((column) => column.includes(wire.run));
    return { wire, column, row: rows.reduce((a, b) => a + b, 0) / rows.length };
  });
  const middle = (coils.length - 1) / 2;
  const joints = new Map<string, Joint>();
  for (const id of coils) {
    const own = wires
      .filter(({ wire }) => wire.coils.includes(id))
      .map(({ column, row }) => ({ column, row }))
      .concat({ column: before.length, row: rowOf.get(id) ?? 0 })
      .sort((a, b) => a.column - b.column);
    const way = [
      { column: -1, row: middle },
      ...own,
      // Without a return the way back is not part of the design.
      ...(back.length > 0 ? [{ column: columns.length, row: middle }] : []),
    ];
    way.slice(1).forEach((to, i) => {
      const from = way[i] as Joint['from'];
      joints.set(JSON.stringify([from, to]), { from, to });
    });
  }
  return {
    columns,
    coilColumn: before.length,
    coils,
    wires,
    joints: [...joints.values()],
  };
}

/** Runs that follow each other and carry different coils, such as the trunks of two banks, share a column. */
function beside(names: readonly string[], runs: readonly RunJson[]): string[][] {
  const carried = (name: string): string[] => runs.flatMap(({ run, coils }) => (run === name ? coils : []));
  const columns: string[][] = [];
  for (const name of names) {
    const last = columns.at(-1);
    const there = last?.flatMap(carried) ?? [];
    if (last && !carried(name).some((coil) => there.includes(coil))) last.push(name);
    else columns.push([name]);
  }
  return columns;
}

/** Coils in an order in which those of one conductor lie together, as far as the runs agree. */
function inGroups(ids: readonly string[], order: readonly string[], runs: readonly RunJson[]): string[] {
  const ranks = new Map(
    ids.map((id) => [
      id,
      order.map((name) =>
        runs.filter(({ run }) => run === name).findIndex((wire) => wire.coils.includes(id)),
      ),
    ]),
  );
  // Runs with a conductor for each coil say nothing about groups.
  const telling = order.flatMap((name, i) =>
    runs.some((wire) => wire.run === name && wire.coils.length > 1) ? [i] : [],
  );
  return [...ids].sort((a, b) => {
    const [of, other] = [ranks.get(a) ?? [], ranks.get(b) ?? []];
    // What a conductor carries comes before what it does not.
    const differ = telling.find((i) => of[i] !== other[i]);
    return differ === undefined ? ids.indexOf(a) - ids.indexOf(b) : (other[differ] ?? 0) - (of[differ] ?? 0);
  });
}
