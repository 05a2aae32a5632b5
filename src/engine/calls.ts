/** The functions of the dialect. */

import {
  type Block,
  blockOf,
  either,
  fault,
  type Node,
  needed,
  numeric,
  type Range,
  rangeOf,
  type Scalar,
  scalar,
  type Values,
} from './node.ts';
import { alike } from './operators.ts';

/** What a function makes of its arguments. Throws when it does not take such ones. */
export function call(name: string, args: readonly Node[]): Node {
  const make = CALLS[name];
  if (make === undefined) throw new Error(`the dialect has no function ${name}`);
  return make(args);
}

type Make = (args: readonly Node[]) => Node;

const range = (node: Node | undefined): Range => {
  if (node?.kind !== 'range') throw new Error('one value stands where a range is needed');
  return node;
};

/** A function of one number; a result that is none is a fault. */
const ofOne =
  (own: (value: number) => number): Make =>
  ([arg]) => {
    const value = needed(arg);
    return numeric((at) => {
      const found = own(value(at));
      return Number.isFinite(found) ? found : fault('no number comes of this');
    });
  };

/** Over all numbers of all arguments; what is no number is passed over in ranges, and is a fault by itself. */
const over =
  (start: number, step: (so_far: number, value: number) => number, none: number): Make =>
  (args) => {
    if (args.every((arg) => arg.kind === 'scalar') && args.length === 2) {
      const [a, b] = [needed(args[0]), needed(args[1])];
      return numeric((at) => step(a(at), b(at)));
    }
    const parts = args.map((arg) => (arg.kind === 'range' ? arg.block : single(arg)));
    return numeric((at) => {
      let [found, count] = [start, 0];
      for (const part of parts) {
        const { rows, columns, data } = part(at);
        for (let i = 0; i < rows * columns; i++) {
          const value = data[i] as number;
          if (Number.isNaN(value)) continue;
          found = step(found, value);
          count += 1;
        }
      }
      return count === 0 ? none : found;
    });
  };

const single = (node: Scalar): ((at: Values) => Block) => {
  const value = needed(node);
  return (at) => ({ rows: 1, columns: 1, data: [value(at)] });
};

/** The k-th number of a range, in an order. */
const ranked =
  (order: (a: number, b: number) => number): Make =>
  ([of, which]) => {
    const [{ block }, rank] = [range(of), needed(which)];
    return numeric((at) => {
      const numbers = Array.from(block(at).data).filter((value) => !Number.isNaN(value));
      return numbers.sort(order)[rank(at) - 1] ?? fault('there are not so many numbers');
    });
  };

const CALLS: Readonly<Record<string, Make>> = {
  IF: ([condition, yes, no]) => {
    const [test, a, b] = [needed(condition), scalar(yes), scalar(no)];
    return {
      kind: 'scalar',
      type: a.type === 'text' || b.type === 'text' ? 'text' : 'number',
      number: (at) => (test(at) !== 0 ? a.number(at) : b.number(at)),
      word: (at) => (test(at) !== 0 ? a.word(at) : b.word(at)),
    };
  },
  IFERROR: ([of, otherwise]) => {
    const [a, b] = [scalar(of), scalar(otherwise)];
    return {
      kind: 'scalar',
      type: a.type,
      number: (at) => either(a.number, b.number, at),
      word: (at) => either(a.word, b.word, at),
    };
  },
  ISNUMBER: ([of]) => {
    if (of?.kind === 'range')
      return rangeOf((at) => {
        const { rows, columns, data } = of.block(at);
        return { rows, columns, data: Array.from(data, (value) => (Number.isNaN(value) ? 0 : 1)) };
      });
    const { number } = scalar(of);
    const known = (at: Values): number => (Number.isNaN(number(at)) ? 0 : 1);
    return numeric((at) => either(known, () => 0, at));
  },
  MIN: over(Number.POSITIVE_INFINITY, Math.min, 0),
  MAX: over(Number.NEGATIVE_INFINITY, Math.max, 0),
  SUM: over(0, (a, b) => a + b, 0),
  COUNT: (args) => {
    const parts = args.map(blockOf);
    return numeric((at) => {
      let count = 0;
      for (const part of parts) {
        const { rows, columns, data } = part(at);
        for (let i = 0; i < rows * columns; i++) if (!Number.isNaN(data[i] as number)) count += 1;
      }
      return count;
    });
  },
  SMALL: ranked((a, b) => a - b),
  LARGE: ranked((a, b) => b - a),
  SQRT: ofOne(Math.sqrt),
  EXP: ofOne(Math.exp),
  LN: ofOne(Math.log),
  ABS: ofOne(Math.abs),
  PI: () => numeric(() => Math.PI),
  INDEX: ([of, row, column]) => {
    const { type, pick, pickWord } = range(of);
    if (pick === undefined || pickWord === undefined) throw new Error('INDEX takes the range of a quantity');
    const [r, c] = [needed(row), needed(column)];
    return {
      kind: 'scalar',
      type,
      number: (at) => pick(at, r(at), c(at)),
      word: (at) => pickWord(at, r(at), c(at)),
    };
  },
  MATCH: ([what, where, how]) => {
    const among = range(where);
    const kind = needed(how);
    const key = scalar(what);
    if (key.type === 'text') {
      const { words } = among;
      return numeric((at) => {
        if (kind(at) !== 0) return fault('words are looked up exactly');
        const [word, all] = [key.word(at) ?? '', words?.(at) ?? []];
        for (let i = 0; i < all.length; i++) if (alike(all[i] as string, word)) return i + 1;
        return fault(`"${word}" is not in the list`);
      });
    }
    const wanted = needed(key);
    return numeric((at) => {
      const value = wanted(at);
      const { rows, columns, data } = among.block(at);
      return matched(value, data, rows * columns, kind(at));
    });
  },
  SUMPRODUCT: (args) => {
    // Around another function it only makes every program take that one's argument as a range.
    if (args[0]?.kind === 'scalar') return args[0];
    const parts = args.map((arg) => range(arg).block);
    const only = parts[0];
    if (only === undefined) throw new Error('SUMPRODUCT takes a range');
    if (parts.length === 1)
      return numeric((at) => {
        const { rows, columns, data } = only(at);
        let sum = 0;
        for (let i = 0; i < rows * columns; i++)
          if (!Number.isNaN(data[i] as number)) sum += data[i] as number;
        return sum;
      });
    return numeric((at) => {
      const blocks = parts.map((part) => part(at));
      const { rows, columns } = blocks[0] as Block;
      if (blocks.some((b) => b.rows !== rows || b.columns !== columns))
        return fault('ranges of different shape');
      let sum = 0;
      for (let i = 0; i < rows * columns; i++) {
        let product = 1;
        for (const { data } of blocks) product *= data[i] as number;
        if (!Number.isNaN(product)) sum += product;
      }
      return sum;
    });
  },
  MMULT: ([left, right]) => {
    const [a, b] = [range(left).block, range(right).block];
    return rangeOf((at) => multiplied(a(at), b(at)));
  },
};

/** Place of a value among others, counted from 1: of the same one, or of the last that is not above it. */
export function matched(value: number, data: ArrayLike<number>, count: number, kind: number): number {
  const found = kind === 0 ? exactly(value, data, count) : below(value, data, count);
  return found < 0 ? fault('it is not in the list') : found + 1;
}

const exactly = (value: number, data: ArrayLike<number>, count: number): number => {
  for (let i = 0; i < count; i++) if (data[i] === value) return i;
  return -1;
};

/** The last of the numbers, which rise, that is not above `value`. */
function below(value: number, data: ArrayLike<number>, count: number): number {
  let [low, high] = [-1, count - 1];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((data[middle] as number) <= value) low = middle;
    else high = middle - 1;
  }
  return low;
}

export function multiplied(a: Block, b: Block): Block {
  if (a.columns !== b.rows) return fault('ranges that do not fit together');
  const data: number[] = [];
  for (let row = 0; row < a.rows; row++)
    for (let column = 0; column < b.columns; column++) {
      let sum = 0;
      for (let i = 0; i < a.columns; i++)
        sum += (a.data[row * a.columns + i] as number) * (b.data[i * b.columns + column] as number);
      data.push(Number.isFinite(sum) ? sum : fault('a range to be multiplied holds no number'));
    }
  return { rows: a.rows, columns: b.columns, data };
}
