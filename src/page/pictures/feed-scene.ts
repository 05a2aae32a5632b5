/**
 * The picture of the feed as places: along it from battery to battery, across it from coil to coil. On a wide page along is
 * to the right, on a narrow one down.
 */

import type { ResultJson } from '../../writers/json.ts';
import type { PartOf } from '../protocol.ts';
import { feedLayout } from './feed-layout.ts';

/** A part with its place: ends along, middle across [px]. */
export interface Placed {
  readonly part: PartOf;
  readonly from: number;
  readonly to: number;
  readonly across: number;
  /** Its column, for what stands once for all conductors of a run. */
  readonly column: number;
}

export interface Line {
  readonly from: readonly [along: number, across: number];
  readonly bend: number;
  readonly to: readonly [along: number, across: number];
}

export interface Scene {
  readonly down: boolean;
  readonly length: number;
  readonly breadth: number;
  /** From one coil to the next [px]. */
  readonly pitch: number;
  readonly columns: readonly {
    readonly names: readonly string[];
    readonly from: number;
    readonly to: number;
  }[];
  readonly joints: readonly Line[];
  readonly parts: readonly Placed[];
  readonly ends: readonly { readonly sign: '+' | '−'; readonly along: number; readonly across: number }[];
}

/** Below this width the feed runs down the page [px]. */
const NARROW = 620;
/** Room for a battery at either end, between columns, for a row, and for a column of a feed that runs down [px]. */
const END = 34;
export const GAP = 20;
const ROW = 34;
/** Rows of many coils together, so that the sliders stay on the first screen; one is no lower than a figure and its line [px]. */
const ROWS = 352;
const LEAST_ROW = 22;
/** The same on paper, where the page is short, and for many coils [px]. */
const PAPER_ROW = 20;
const PAPER_ROW_OF_MANY = 14.5;
const MANY = 12;
const TIER = 70;
/** Of a feed that runs down: before a column, where its name stands above the bend of the joints, and behind it [px]. */
const ABOVE = 28;
const BELOW = 8;
/** What stands under the line of the lowest row has room [px]. */
const FOOT = 8;
/** A column is no narrower: a size and a share have room in it [px]. */
const LEAST = 62;
/** A device makes its column longer by this share of a plain one. */
const DEVICE = 0.7;
/** So much of a plain column is that of the coils: names and figures stand inside of them. */
const COILS = { down: 0.75, along: 1.25 } as const;
/** Length of a fuse or of a relay along its conductor [px]. */
const SYMBOL = 16;

export function sceneOf(json: ResultJson, parts: readonly PartOf[], width: number, paper = false): Scene {
  const layout = feedLayout(json);
  const down = width < NARROW;
  const count = layout.coils.length;
  const row = !paper
    ? Math.max(LEAST_ROW, Math.min(ROW, ROWS / count))
    : count > MANY
      ? PAPER_ROW_OF_MANY
      : PAPER_ROW;
  const wires = layout.wires.flatMap((laid) => {
    const own = parts.filter(({ kind, id }) => kind !== 'coil' && id === laid.wire.id);
    return own.length === 0 ? [] : [{ ...laid, own }];
  });
  const weights = layout.columns.map((_, i) =>
    i === layout.coilColumn
      ? COILS[down ? 'down' : 'along']
      : 1 +
        DEVICE * Math.max(0, ...wires.filter(({ column }) => column === i).map(({ own }) => own.length - 1)),
  );
  const whole = weights.reduce((a, b) => a + b, 0);
  const unit = down ? TIER : Math.max(LEAST, (width - 2 * END) / whole);
  const starts = weights.map((_, i) => END + weights.slice(0, i).reduce((a, b) => a + b, 0) * unit);
  const columns = layout.columns.map((names, i) => ({
    names,
    from: (starts[i] as number) + (down ? ABOVE : GAP / 2),
    to: (starts[i] as number) + (weights[i] as number) * unit - (down ? BELOW : GAP / 2),
  }));
  const length = 2 * END + whole * unit;
  const pitch = down ? (width - 8) / count : row;
  const breadth = down ? width : count * row + (count === 1 ? FOOT : 0);
  const across = (at: number): number => (down ? 4 : 0) + (at + 0.5) * pitch;
  const middle = across((count - 1) / 2);
  const column = (i: number) => columns[i] as (typeof columns)[number];
  const last = columns.length;
  return {
    down,
    length,
    breadth,
    pitch,
    columns,
    joints: layout.joints.map(({ from, to }) => {
      const start = from.column < 0 ? END - 8 : column(from.column).to;
      const end = to.column >= last ? length - END + 8 : column(to.column).from;
      return {
        from: [start, from.column < 0 ? middle : across(from.row)],
        bend: to.column >= last ? start + GAP / 2 : end - GAP / 2,
        to: [end, to.column >= last ? middle : across(to.row)],
      };
    }),
    parts: [
      ...wires.flatMap(({ own, row: place, column: at }) => placed(own, column(at), across(place), at)),
      ...parts
        .filter(({ kind }) => kind === 'coil')
        .map((part): Placed => {
          const { from, to } = column(layout.coilColumn);
          return { part, from, to, across: across(layout.coils.indexOf(part.id)), column: layout.coilColumn };
        }),
    ],
    ends: [
      { sign: '+', along: END - 20, across: middle },
      ...(json.runs.some(({ side }) => side === 'return')
        ? [{ sign: '−' as const, along: length - END + 20, across: middle }]
        : []),
    ],
  };
}

/** A conductor with what lies in it: the fuse near its start, the relay near its end. */
function placed(
  own: readonly PartOf[],
  { from, to }: { readonly from: number; readonly to: number },
  across: number,
  column: number,
): Placed[] {
  const at = { fuse: 0.16, relay: 0.84 } as const;
  return own.map((part): Placed => {
    if (part.kind !== 'fuse' && part.kind !== 'relay') return { part, from, to, across, column };
    const middle = from + at[part.kind] * (to - from);
    return { part, from: middle - SYMBOL / 2, to: middle + SYMBOL / 2, across, column };
  });
}

/** The next part in a direction, along or across; null at the end. */
export function nextTo(parts: readonly Placed[], now: Placed, along: number, across: number): Placed | null {
  const middle = ({ from, to }: Placed): number => (from + to) / 2;
  const ahead = (one: Placed): number =>
    along !== 0 ? (middle(one) - middle(now)) * along : (one.across - now.across) * across;
  const aside = (one: Placed): number =>
    Math.abs(along !== 0 ? one.across - now.across : middle(one) - middle(now));
  // Of those ahead the nearest column or row, and there what lies most nearly in line.
  return parts.reduce<Placed | null>((best, one) => {
    if (ahead(one) <= 1 || (across !== 0 && one.column !== now.column)) return best;
    if (best === null || ahead(one) < ahead(best) - 1) return one;
    return ahead(one) < ahead(best) + 1 && aside(one) < aside(best) ? one : best;
  }, null);
}
