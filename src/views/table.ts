/** Views as tables of text, for the terminal and the page. */
import type { At, Quantity } from '../basis/quantity.ts';
import type { Evaluation } from '../engine/evaluate.ts';
import { QUANTITIES, type QuantityName } from '../model/model.ts';
import { cellText, labelOf, unitAbove } from './print.ts';
import { type Field, keyOf, quantityOf, type View } from './view.ts';
import { COIL, FAULT, FEED, FUSE, LOAD, POINT, RELAY, WIRE } from './views.ts';

/** What stands above a column. */
export interface Head {
  readonly label: string;
  readonly unit: string;
  /** Words and not numbers. */
  readonly words: boolean;
  /** Its key in JSON; empty for a column of names. */
  readonly key: string;
  /** Which it shows; null for a column of names. */
  readonly quantity: QuantityName | null;
}

export interface Table {
  readonly title: string;
  readonly heads: readonly Head[];
  readonly rows: readonly (readonly string[])[];
  /** The members that each row is about. */
  readonly members: readonly At[];
}

/** Members that a row is about: their names, as many as there are titles for them, and their places. */
interface Row {
  readonly names: readonly string[];
  readonly at: At;
}

const headOf = (field: Field, e: Evaluation): Head => {
  const name = quantityOf(field);
  const { unit, flag, names }: Quantity = QUANTITIES[name];
  const words = unit === 'text' || flag === true || names !== undefined;
  return {
    label: labelOf(name),
    unit: unitAbove(name, e.design.units),
    words,
    key: keyOf(field),
    quantity: name,
  };
};

function tableOf(
  e: Evaluation,
  view: View,
  titles: readonly string[],
  rows: readonly Row[],
  title = view.title,
): Table {
  const names = view.read.map(quantityOf);
  return {
    title,
    heads: [
      ...titles.map((label) => ({ label, unit: '', words: true, key: '', quantity: null })),
      ...view.read.map((field) => headOf(field, e)),
    ],
    rows: rows.map((row) => [...row.names, ...names.map((name) => cellText(e, name, row.at))]),
    members: rows.map(({ at }) => at),
  };
}

/** The conductor of a run with the largest effective current, by index. */
export function worstWire(e: Evaluation, run: number): number {
  const own = e.design.wires.flatMap((w, i) => (w.run === run ? [i] : []));
  const load = (wire: number): number => e.number('worst_effective', { wire }) ?? 0;
  return own.reduce((a, b) => (load(b) > load(a) ? b : a));
}

/** A row for each run of which this is true, about its conductor that carries most. */
const eachRun = (e: Evaluation, has: (run: number) => boolean = () => true): Row[] =>
  e.design.runs.flatMap(({ name }, run) =>
    has(run) ? [{ names: [name], at: { run, feed: run, window: 0, wire: worstWire(e, run) } }] : [],
  );

const eachPoint = (e: Evaluation): Row[] =>
  e.design.points.map(({ name }, point) => ({ names: [name], at: { point, speed: point } }));

export const pointTable = (e: Evaluation): Table => tableOf(e, POINT, ['Point'], eachPoint(e));

/** Index of the coil that is left with least. */
export const worstCoil = (e: Evaluation): number => (e.number('worst_coil') ?? 1) - 1;

/** Index of the point at which the drop is largest. */
export const worstDropPoint = (e: Evaluation): number => (e.number('worst_drop_point') ?? 1) - 1;

export function coilTable(e: Evaluation): Table {
  const coil = worstCoil(e);
  const rows = eachPoint(e).map(({ names, at }) => ({ names, at: { ...at, coil } }));
  return tableOf(e, COIL, ['Point'], rows, `${COIL.title}: coil ${e.design.coils[coil]?.id}`);
}

export const wireTable = (e: Evaluation): Table => tableOf(e, WIRE, ['Run'], eachRun(e));

export const loadTable = (e: Evaluation): Table =>
  tableOf(
    e,
    LOAD,
    ['Run', 'Point'],
    eachRun(e).flatMap((run) =>
      eachPoint(e).map((point) => ({
        names: [...run.names, ...point.names],
        at: { ...run.at, ...point.at },
      })),
    ),
  );

export const fuseTable = (e: Evaluation): Table =>
  tableOf(
    e,
    FUSE,
    ['Run'],
    eachRun(e, (run) => e.design.runs[run]?.fuse != null),
  );
export const relayTable = (e: Evaluation): Table =>
  tableOf(
    e,
    RELAY,
    ['Run'],
    eachRun(e, (run) => e.design.runs[run]?.relay != null),
  );
export const faultTable = (e: Evaluation): Table =>
  tableOf(
    e,
    FAULT,
    ['Run'],
    eachRun(e, (run) => e.design.runs[run]?.side === 'feed'),
  );
export const feedTable = (e: Evaluation): Table => tableOf(e, FEED, [], [{ names: [], at: {} }]);
