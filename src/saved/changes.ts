/** From the cells of a workbook to changes of its design: what differs from a design, and how that is written. */
import { isMap, isSeq } from 'yaml';
import { readValue } from '../basis/read-value.ts';
import type { Design } from '../design/design.ts';
import { rowsOf, runKey } from '../design/layout.ts';
import { keyText, type Path } from '../design/problems.ts';
import { inputValue } from '../engine/cell.ts';
import { documentOf, type Edit, nodeAt, type Plain } from './document.ts';
import type { Entry } from './entries.ts';
import { isSecondSpark } from './keys.ts';
import { asWritten, same } from './value.ts';

/** An entry with what a person left in it; null for nothing. */
export interface Filled extends Entry {
  readonly value: number | string | null;
}

/** What a design holds for an entry, in the unit in which it is written. */
export function valueIn(design: Design, entry: Entry, made: Design): number | string | null {
  // Firings may change their order; a cell stays that of its coil.
  if (!entry.q.path.startsWith('events.')) return inputValue(design, entry.q, entry.at, entry.system);
  const { coil } = made.events[entry.at.event as number] as Design['events'][number];
  const index = entry.key.at(-1) as number;
  if (made.ignition.layout === 'listed') return design.coils[coil]?.fires_at[index] ?? null;
  const own = design.engine.firing_angles[index] ?? null;
  if (!isSecondSpark(made, entry.at.event as number)) return own;
  return design.coils[coil]?.fires_at.find((other) => other !== own) ?? null;
}

const isLike = ({ runs }: Design, run: number): boolean => runs.some(({ name }) => name === runs[run]?.like);

/** Blocks that are there as a whole or not at all. */
const BLOCKS = /^(?:runs\.\{run\}\.(?:fuse|relay)|coil\.(?:test_point|series_resistor)|sweep)\./;

/** The changes of the text that bring these entries into it. `all` are all entries, `made` is what they were made from. */
export function editsOf(changed: readonly Filled[], all: readonly Filled[], made: Design): Edit[] {
  const edits = new Map<string, Edit>();
  const add: Add = (key, value, parts) => {
    edits.set(keyText(key), { key, value, ...(parts === undefined ? {} : { parts }) });
  };
  for (const entry of changed) {
    const [root] = entry.q.path.split('.');
    // The size of a run that is to be like another one follows from that one.
    if (entry.name === 'run_gauge' && isLike(made, entry.at.run ?? 0)) continue;
    if (root === 'wires') lengths(entry, all, made, add);
    else if (root === 'events') angles(entry, all, made, add);
    else if (entry.q.path.startsWith('ignition.dwell.')) dwell(all, made, add);
    else if (BLOCKS.test(entry.q.path) && isEmpty(entry, all)) {
      add(entry.key.slice(0, -1), undefined);
      place(entry, made, add);
    } else if (
      /^coil\.test_point\./.test(entry.q.path) &&
      nodeAt(documentOf(made.text.toString()), entry.key.slice(0, -1)) === undefined
    ) {
      // Beside a coil of the shop a bench test is stated as a whole.
      for (const one of all) if (one.q.path.startsWith('coil.test_point.')) add(one.key, written(one));
    } else {
      add(entry.key, written(entry));
      if (root === 'sweep') end(all, made, add);
    }
  }
  return [...edits.values()];
}

/** What was taken out of a run has no place in it any more. */
function place(entry: Filled, made: Design, add: Add): void {
  const key = ['kit', `${String(entry.key.at(-2))}_at`];
  const name = made.runs[entry.at.run ?? -1]?.name;
  const text = documentOf(made.text.toString());
  const [kit, given] = [nodeAt(text, ['kit']), nodeAt(text, key)];
  if (name === undefined || !isMap(kit) || !isMap(given) || !given.has(name)) return;
  // No map is left behind empty.
  if (given.items.length > 1) add([...key, name], undefined);
  else add(kit.items.length > 1 ? key : ['kit'], undefined);
}

type Add = (key: Path, value: Plain | undefined, parts?: readonly Edit[]) => void;

const written = (entry: Filled): Plain | undefined =>
  entry.value === null ? undefined : asWritten(entry.value, entry);

/** Whether nothing is left of the block that an entry belongs to. */
export const isEmpty = (entry: Filled, all: readonly Filled[]): boolean => {
  const block = keyText(entry.key.slice(0, -1));
  return all.every(({ key, value }) => value === null || keyText(key.slice(0, -1)) !== block);
};

/** One length for a run, or one for each of its conductors where they differ. */
function lengths(entry: Filled, all: readonly Filled[], made: Design, add: Add): void {
  const run = made.wires[entry.at.wire as number]?.run;
  const own = all.filter(
    ({ q, at }) => q.path === entry.q.path && made.wires[at.wire as number]?.run === run,
  );
  const key = [...runKey(made, run ?? 0), 'length'];
  const first = own[0] as Filled;
  if (entry.key.length === key.length) {
    add(key, written(entry));
    return;
  }
  const each = own.map((one): [string, Plain] => [String(one.key.at(-1)), written(one) ?? '']);
  const alike = own.every(({ value }) => same(value, first.value));
  add(key, alike ? written(first) : Object.fromEntries(each), partsOf(own));
}

/** All angles of a coil or of the engine: those that a design leaves out can only be given together. */
function angles(entry: Filled, all: readonly Filled[], made: Design, add: Add): void {
  const key = entry.key.slice(0, -1);
  const own = all.filter(
    (one) =>
      one.q.path === entry.q.path &&
      keyText(one.key.slice(0, -1)) === keyText(key) &&
      !isSecondSpark(made, one.at.event as number),
  );
  const list: Plain[] = [];
  for (const one of own) list[one.key.at(-1) as number] = written(one) ?? '';
  add(key, list, partsOf(own));
}

/** Those of the members that a person changed, each by itself. */
const partsOf = (own: readonly Filled[]): Edit[] =>
  own.filter(({ value, was }) => !same(value, was)).map((one) => ({ key: one.key, value: written(one) }));

/** The table of the dwell; one row without a supply is a constant. */
function dwell(all: readonly Filled[], made: Design, add: Add): void {
  const supplies = all.filter(({ name }) => name === 'dwell_supply');
  const times = all.filter(({ name }) => name === 'dwell_time');
  const rows = times.map((time, i) => ({
    ...given('supply', supplies[i]),
    ...given('dwell', time),
  }));
  const constant = rows.length === 1 && supplies[0]?.value === null;
  const parts = isRising(made.text.toString()) ? partsOf([...supplies, ...times]) : undefined;
  add(['ignition', 'dwell'], constant ? written(times[0] as Filled) : rows, parts);
}

function given(key: string, entry: Filled | undefined): Record<string, Plain> {
  const value = entry && written(entry);
  return value === undefined ? {} : { [key]: value };
}

/** Whether the rows of the dwell stand in the text as they do in the workbook, by their supply. */
function isRising(text: string): boolean {
  const rows = nodeAt(documentOf(text), ['ignition', 'dwell']);
  if (!isSeq(rows)) return false;
  const supplies = rows.items.map((row) => {
    const read = readValue(String(isMap(row) ? row.get('supply') : ''), 'V');
    return read.ok ? read.value : Number.NaN;
  });
  return supplies.every((supply, i) => i === 0 || supply > (supplies[i - 1] as number));
}

/** The last speed of a sweep has no cell: as many rows as there are must follow from it. */
function end(all: readonly Filled[], made: Design, add: Add): void {
  const of = (path: string): number => Number(all.find(({ q }) => q.path === path)?.value);
  const [from, step, sweep] = [of('sweep.from'), of('sweep.step'), made.sweep];
  if (sweep === null || !(step > 0) || rowsOf(from, sweep.to, step) === sweep.rows) return;
  add(['sweep', 'to'], `${Number((from + (sweep.rows - 1) * step).toPrecision(15))} rpm`);
}
