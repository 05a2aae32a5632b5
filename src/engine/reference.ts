/** What a name in a formula becomes: one value of a quantity, or a range of them. */
import type { Reference } from '../basis/formula.ts';
import type { Axis } from '../basis/quantity.ts';
import { type Area, areaOf, type Chosen, chosen, isSingle } from './choose.ts';
import { type Frame, frame } from './frame.ts';
import { type Block, fault, type Node, type Range, type Scalar, type Values } from './node.ts';

/** `home` are the axes of the quantity whose formula it is. */
export function referred(reference: Reference, home: readonly Axis[]): Node {
  const found = chosen(reference, home);
  const target = frame(found.name);
  if (found.list !== undefined) return listed(target, found.list);
  return isSingle(found) ? one(target, found) : ranged(target, found);
}

/** A single value; one of a member that is not there is not known. */
function one(target: Frame, { rows, across }: Chosen): Scalar {
  const index = place(target, across === undefined ? rows : [...rows, across]);
  return {
    kind: 'scalar',
    type: target.text ? 'text' : 'number',
    number: (at) => {
      const i = index(at);
      return i < 0 ? Number.NaN : at.store(target).number(i);
    },
    word: (at) => {
      const i = index(at);
      return i < 0 ? '' : at.store(target).word(i);
    },
  };
}

/** Index of a value among those of its quantity; −1 where a member is not there. */
function place({ nos }: Frame, choices: Chosen['rows']): (at: Values) => number {
  const [a, b] = choices.map((c) => c.first);
  if (a === undefined) return () => 0;
  if (b === undefined) return a;
  const second = nos[1] as number;
  if (choices.length === 2)
    return (at) => {
      const i = a(at);
      const j = b(at);
      return i < 0 || j < 0 ? -1 : i * (at.shape.counts[second] as number) + j;
    };
  return (at) => {
    let index = 0;
    for (let k = 0; k < choices.length; k++) {
      const i = (choices[k] as (typeof choices)[number]).first(at);
      if (i < 0) return -1;
      index = index * (at.shape.counts[nos[k] as number] as number) + i;
    }
    return index;
  };
}

/** Conductors one below the other; a single 0 when there are none. */
function listed(target: Frame, list: (at: Values) => readonly number[]): Range {
  return {
    kind: 'range',
    type: 'number',
    block: (at) => {
      const store = at.store(target);
      const data = list(at).map((i) => store.number(i));
      return data.length === 0 ? { rows: 1, columns: 1, data: [0] } : { rows: data.length, columns: 1, data };
    },
  };
}

const NOWHERE: Area = { top: -1, bottom: -1, left: -1, right: -1 };

/** Index of the value in this row and column of an area, both counted from 1, among values of so many columns. */
export function picked(
  top: number,
  bottom: number,
  left: number,
  right: number,
  row: number,
  column: number,
  columns: number,
): number {
  if (top < 0 || bottom < top || left < 0) return fault('a look-up where nothing is');
  const [r, c] = [top + row - 1, left + column - 1];
  if (r < top || r > bottom || c < left || c > right) return fault('a look-up outside of its range');
  return r * columns + c;
}

/** A member that is not there makes a range of one unknown value. */
const NOTHING: Block = { rows: 1, columns: 1, data: [Number.NaN] };

function ranged(target: Frame, found: Chosen): Range {
  const pick = (at: Values, row: number, column: number): number => {
    const { counts, columns } = at.store(target);
    const { top, bottom, left, right } = areaOf(found, counts, at) ?? NOWHERE;
    return picked(top, bottom, left, right, row, column, columns);
  };
  return {
    kind: 'range',
    type: target.text ? 'text' : 'number',
    block: (at) => {
      const store = at.store(target);
      const area = areaOf(found, store.counts, at);
      if (area === null) return NOTHING;
      const { top, bottom, left, right } = area;
      const columns = right - left + 1;
      const data = new Array<number>((bottom - top + 1) * columns);
      let next = 0;
      for (let r = top; r <= bottom; r++)
        for (let c = left; c <= right; c++) data[next++] = store.number(r * store.columns + c);
      return { rows: bottom - top + 1, columns, data };
    },
    words: (at) => {
      const store = at.store(target);
      const area = areaOf(found, store.counts, at);
      const words: string[] = [];
      if (area !== null)
        for (let r = area.top; r <= area.bottom; r++)
          for (let c = area.left; c <= area.right; c++) words.push(store.word(r * store.columns + c) ?? '');
      return words;
    },
    pick: (at, row, column) => at.store(target).number(pick(at, row, column)),
    pickWord: (at, row, column) => at.store(target).word(pick(at, row, column)),
  };
}
