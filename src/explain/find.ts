/** The quantity and the members that a person means: `ampacity main`, `I_a`, `coil_supply`, `Energy kept`. */
import type { At, Axis, Quantity } from '../basis/quantity.ts';
import { nearest } from '../design/nearest.ts';
import { listed, quote } from '../design/problems.ts';
import type { Evaluation } from '../engine/evaluate.ts';
import { frame } from '../engine/frame.ts';
import { QUANTITIES, type QuantityName } from '../model/model.ts';
import { worstWire } from '../views/table.ts';
import { fieldsOf, keyOf, quantityOf, type View } from '../views/view.ts';
import { VIEWS } from '../views/views.ts';

export interface Found {
  readonly name: QuantityName;
  readonly at: At;
  /** Other quantities that go by the same words. */
  readonly also: readonly QuantityName[];
}

/** In small letters, with blanks between the words. */
const plain = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[_\s–-]+/g, ' ')
    .replace(/[^\p{L}\p{N} .²₀-₉]/gu, '')
    .trim();

interface Names {
  readonly id: QuantityName;
  /** People read it in a view. */
  readonly read: boolean;
  readonly symbol: string;
  /** Id, keys in JSON, labels; all plain. */
  readonly exact: readonly string[];
  readonly words: readonly string[];
}

const NAMES: readonly Names[] = (() => {
  const keys = new Map<QuantityName, string[]>();
  const read = new Set<QuantityName>();
  for (const view of Object.values(VIEWS) as View[]) {
    for (const field of fieldsOf(view)) {
      const id = quantityOf(field);
      keys.set(id, [...(keys.get(id) ?? []), keyOf(field)]);
    }
    for (const field of view.read) read.add(quantityOf(field));
  }
  return (Object.entries(QUANTITIES) as [QuantityName, Quantity][]).map(([id, { symbol, label, short }]) => {
    const exact = [id, ...(keys.get(id) ?? []), label, ...(short === undefined ? [] : [short])].map(plain);
    return { id, read: read.has(id), symbol, exact, words: exact.flatMap((text) => text.split(' ')) };
  });
})();

/** What people read first, then what has the fewest words. */
const better = (a: Names, b: Names): number =>
  Number(b.read) - Number(a.read) || a.words.length - b.words.length;

/** Quantities that a text names, the likeliest first; none when it names none. */
function named(text: string): QuantityName[] {
  const asked = plain(text);
  if (asked === '') return [];
  const words = asked.split(' ');
  const tests: ((names: Names) => boolean)[] = [
    ({ id }) => id === text.trim(),
    ({ symbol }) => symbol === text.trim(),
    ({ exact }) => exact.includes(asked),
    (names) => words.every((word) => names.words.includes(word)),
    (names) => words.every((word) => word.length > 2 && names.words.some((own) => own.startsWith(word))),
  ];
  for (const test of tests) {
    const found = NAMES.filter(test).sort(better);
    if (found.length > 0) return found.map(({ id }) => id);
  }
  return [];
}

/** The names of all members that a person may give, and of which axis they are. */
function membersOf({ grid, design }: Evaluation): { name: string; axis: Axis; index: number }[] {
  const all = (Object.keys(grid.axes) as Axis[]).flatMap((axis) =>
    grid.axes[axis].map((name, index) => ({ name, axis, index })),
  );
  const coils = design.coils.map(({ id }, index) => ({ name: `coil ${id}`, axis: 'coil' as const, index }));
  return [...all, ...coils];
}

/**
 * What a text means, with members named in it or in `asked`; where an axis is left open, the worst of it. Else what is wrong,
 * as a sentence that names the nearest.
 */
export function find(
  e: Evaluation,
  text: string,
  asked: readonly string[],
): Found | { readonly wrong: string } {
  const members = membersOf(e);
  const unknown = asked.find((name) => !members.some((one) => same(one.name, name)));
  if (unknown !== undefined) {
    const near = nearest(unknown, [...new Set(members.map(({ name }) => name))]);
    return {
      wrong: `The design has no run, coil or point ${quote(unknown)}.${near === null ? '' : ` Did you mean ${quote(near)}?`}`,
    };
  }
  const [whole, ...others] = named(text);
  if (whole !== undefined) return placed(e, whole, others, asked);
  // Else some of the words name a member: the longest such names first.
  const inside = [...new Set(members.map(({ name }) => name))]
    .filter((name) => ` ${plain(text)} `.includes(` ${plain(name)} `))
    .sort((a, b) => b.length - a.length);
  let [rest, given]: [string, string[]] = [plain(text), [...asked]];
  for (const name of inside) {
    const without = ` ${rest} `.replace(` ${plain(name)} `, ' ').trim();
    if (without === rest || without === '') continue;
    [rest, given] = [without, [...given, name]];
    const [found, ...more] = named(rest);
    if (found !== undefined) return placed(e, found, more, given);
  }
  const near = nearestOf(rest);
  return {
    wrong: `There is no quantity ${quote(text)}.${near.length === 0 ? ' docs/quantities.md lists them all.' : ` Did you mean ${listed(near).replace(' and ', ' or ')}?`}`,
  };
}

const same = (a: string, b: string): boolean => a.toLowerCase() === b.trim().toLowerCase();

/** Ids and labels that are near to a text, a few. */
function nearestOf(text: string): string[] {
  const words = plain(text).split(' ');
  const id = nearest(text.replaceAll(' ', '_'), Object.keys(QUANTITIES));
  const label = nearest(
    text,
    Object.values(QUANTITIES).map((q: Quantity) => q.short ?? q.label),
  );
  const partly = NAMES.map((names) => ({
    names,
    hits: words.filter((word) => word.length > 3 && names.words.includes(word)).length,
  }))
    .filter(({ hits }) => hits > 0)
    .sort((a, b) => b.hits - a.hits || better(a.names, b.names))
    .slice(0, 3)
    .map(({ names }) => names.id as string);
  return [
    ...new Set([...(id === null ? [] : [id]), ...(label === null ? [] : [quote(label)]), ...partly]),
  ].slice(0, 4);
}

function placed(
  e: Evaluation,
  name: QuantityName,
  also: readonly QuantityName[],
  asked: readonly string[],
): Found | { readonly wrong: string } {
  const { axes } = frame(name);
  const at: At = {};
  for (const text of asked) {
    const own = membersOf(e).filter((one) => same(one.name, text));
    const direct = own.find(({ axis }) => axes.includes(axis));
    const [axis, index] = direct === undefined ? (byOwner(e, axes, own) ?? []) : [direct.axis, direct.index];
    if (axis === undefined || index === undefined) {
      const has = axes.length === 0 ? 'it is one value' : `it is for each ${listed(axes)}`;
      return { wrong: `${name} has no value for ${quote(text)}: ${has}.` };
    }
    at[axis] = index;
  }
  for (const axis of axes) at[axis] ??= worst(e, axis, at);
  return { name, at, also: also.slice(0, FEW) };
}

/** Quantities of the same name that are told. */
const FEW = 3;

type Member = ReturnType<typeof membersOf>[number];

/** A run stands for its conductor that carries most, a conductor for its run, a coil for its first firing. */
function byOwner(e: Evaluation, axes: readonly Axis[], own: readonly Member[]): [Axis, number] | null {
  const { design } = e;
  for (const { axis, index } of own) {
    if (axis === 'run' && axes.includes('wire')) return ['wire', worstWire(e, index)];
    if (axis === 'wire' && axes.includes('run')) return ['run', design.wires[index]?.run ?? 0];
    if (axis === 'point' && axes.includes('speed')) return ['speed', index];
    if (axis === 'coil' && axes.includes('event'))
      return ['event', design.events.findIndex(({ coil }) => coil === index)];
  }
  return null;
}

/** The member to look at where none is named. */
function worst(e: Evaluation, axis: Axis, at: At): number {
  const number = (name: QuantityName, members: At = {}): number => (e.number(name, members) ?? 1) - 1;
  switch (axis) {
    case 'point':
    case 'speed':
      return at.wire === undefined ? number('worst_drop_point') : number('worst_point', { wire: at.wire });
    case 'coil':
      return number('worst_coil');
    case 'event':
      return number('worst_event');
    case 'candidate':
      return at.run === undefined ? 0 : number('chosen', { run: at.run });
    case 'spread':
      return 1;
    default:
      return 0;
  }
}
