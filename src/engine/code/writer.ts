/** Writes the pieces of a formula as JavaScript: numbers as expressions, ranges as loops. */
import type { Reference } from '../../basis/formula.ts';
import { type Chosen, isSingle } from '../choose.ts';
import { frame } from '../frame.ts';
import type { Node } from '../node.ts';
import { isComparison } from '../operators.ts';
import type { Tree } from '../parse.ts';

/** What every function of the code takes: the values, and the members along the axes of the quantity. */
export const HANDS = 'all,h0,h1,h2';

/** What the code calls an operation. */
export const NAMES = {
  '+': 'add',
  '-': 'less',
  '*': 'times',
  '/': 'over',
  '^': 'power',
  '=': 'equal',
  '<>': 'unequal',
  '<': 'below',
  '>': 'above',
  '<=': 'most',
  '>=': 'least',
} as const;

/** Functions of ranges: what they start from, how a number goes in, and what they are without any. */
const FOLDS: Readonly<Record<string, { start: string; step: (value: string) => string; none: string }>> = {
  SUM: { start: '0', step: (v) => `f+=${v}`, none: '0' },
  MIN: { start: 'Infinity', step: (v) => `f=Math.min(f,${v})`, none: '0' },
  MAX: { start: '-Infinity', step: (v) => `f=Math.max(f,${v})`, none: '0' },
  COUNT: { start: '0', step: () => 'f+=1', none: '0' },
};

const OF_ONE: Readonly<Record<string, string>> = { SQRT: 'sqrt', EXP: 'exp', LN: 'log', ABS: 'abs' };

/** A range: statements that come first, how many rows and columns, and the value at a place `i`, row by row. */
interface Rows {
  readonly first: string;
  readonly rows: string;
  readonly columns: string;
  readonly at: string;
}

const sameShape = (a: Rows, b: Rows): string =>
  `if(${a.rows}!==${b.rows}||${a.columns}!==${b.columns})fault('ranges of different shape');`;

/** Statements that come first, and what they call the range. */
interface Named {
  readonly first: string;
  readonly name: string;
}

/** A member that is there for sure: that of the quantity itself. */
const SURE = /^h\d$/;

export class Writer {
  readonly kept: unknown[] = [];
  readonly functions: string[] = [];
  hands = false;
  private readonly nodes: ReadonlyMap<Tree, Node>;
  private readonly chosen: (reference: Reference) => Chosen;
  private names = 0;

  constructor(nodes: ReadonlyMap<Tree, Node>, of: (reference: Reference) => Chosen) {
    this.nodes = nodes;
    this.chosen = of;
  }

  /** Expression of a number, NaN for one that is not known. */
  number(tree: Tree): string {
    // A word is no number.
    if (tree.kind === 'text') return 'NaN';
    return this.written(tree) ?? this.called(tree);
  }

  private written(tree: Tree): string | null {
    const node = this.node(tree);
    if (node.kind === 'range' || node.type !== 'number') return null;
    switch (tree.kind) {
      case 'number':
        return String(tree.value);
      case 'negative':
        return `negative(${this.number(tree.of)})`;
      case 'operation': {
        const { sign, left, right } = tree;
        if (isComparison(sign) && (this.node(left).type !== 'number' || this.node(right).type !== 'number'))
          return null;
        return `${NAMES[sign]}(${this.number(left)},${this.number(right)})`;
      }
      case 'reference':
        return this.one(this.chosen(tree.reference));
      case 'call':
        return this.call(tree.name, tree.args);
      case 'text':
        return null;
    }
  }

  private call(name: string, args: readonly Tree[]): string | null {
    const [first, second, third] = args as [Tree, Tree, Tree];
    const need = (tree: Tree): string => `need(${this.number(tree)})`;
    if (name === 'PI') return 'Math.PI';
    if (name === 'IF') return `(${need(first)}!==0?${this.number(second)}:${this.number(third)})`;
    if (name === 'IFERROR') return `either(()=>${this.number(first)},()=>${this.number(second)},all)`;
    if (name === 'ISNUMBER') return `either(()=>(Number.isNaN(${this.number(first)})?0:1),()=>0,all)`;
    if (OF_ONE[name] !== undefined) return `sound(Math.${OF_ONE[name]}(${need(first)}))`;
    if (name === 'MATCH') return this.match(first, second, need(third));
    if (name === 'INDEX') return this.index(first, need(second), need(third));
    if (name === 'SUMPRODUCT')
      return this.node(first).kind === 'scalar' ? this.number(first) : this.products(args);
    const fold = FOLDS[name];
    if (fold === undefined || args.some((arg) => this.node(arg).kind === 'scalar' && name === 'COUNT'))
      return null;
    if (args.every((arg) => this.node(arg).kind === 'scalar')) {
      if (name === 'SUM') return `(${args.map(need).join('+')})`;
      return `Math.${name.toLowerCase()}(${args.map(need).join()})`;
    }
    return this.fold(fold, args);
  }

  /** Over all numbers of all arguments. */
  private fold({ start, step, none }: (typeof FOLDS)[string], args: readonly Tree[]): string {
    const loops = args.map((arg) => {
      if (this.node(arg).kind === 'scalar') return `{const v=need(${this.number(arg)});n+=1;${step('v')}}`;
      const { first, rows, columns, at } = this.range(arg);
      return `{${first}const m=${rows}*${columns};for(let i=0;i<m;i++){const v=${at};if(v===v){n+=1;${step('v')}}}}`;
    });
    return this.own(`let f=${start},n=0;${loops.join('')}return n===0?${none}:f`);
  }

  private products(args: readonly Tree[]): string {
    const parts = args.map((arg) => this.range(arg));
    const [one] = parts as [Rows];
    const check = parts
      .slice(1)
      .map((part) => sameShape(one, part))
      .join('');
    const product = parts.map(({ at }) => at).join('*');
    return this.own(
      `${parts.map(({ first }) => first).join('')}${check}let f=0;const m=${one.rows}*${one.columns};` +
        `for(let i=0;i<m;i++){const v=${product};if(v===v)f+=v}return f`,
    );
  }

  private match(key: Tree, among: Tree, kind: string): string | null {
    if (this.node(key).type !== 'number' || this.node(among).type !== 'number') return null;
    const { first, name } = this.block(this.range(among));
    const list = `${name}.data,${name}.data.length`;
    return this.own(`const key=need(${this.number(key)});${first}return matched(key,${list},${kind})`);
  }

  /** All values of a range, worked out. */
  private block({ first, rows, columns, at }: Rows): Named {
    const name = this.name('d');
    return {
      first:
        `${first}const ${name}={rows:${rows},columns:${columns},data:new Array(${rows}*${columns})};` +
        `for(let i=0;i<${name}.data.length;i++)${name}.data[i]=${at};`,
      name,
    };
  }

  /** A function of its own for what needs statements. */
  private own(body: string): string {
    const name = this.name('f');
    this.functions.push(`const ${name}=(${HANDS})=>{const shape=all.shape;${body}};`);
    return `${name}(${HANDS})`;
  }

  private range(tree: Tree): Rows {
    const node = this.node(tree);
    if (node.kind === 'scalar') {
      const name = this.name('c');
      return { first: `const ${name}=${this.number(tree)};`, rows: '1', columns: '1', at: name };
    }
    if (node.type === 'number') {
      if (tree.kind === 'reference') {
        const found = this.members(this.chosen(tree.reference));
        if (found !== null) return found;
      }
      if (tree.kind === 'negative') {
        const of = this.range(tree.of);
        return { ...of, at: `negative(${of.at})` };
      }
      if (tree.kind === 'call' && tree.name === 'ISNUMBER') {
        const of = this.range(tree.args[0] as Tree);
        return { ...of, at: `(Number.isNaN(${of.at})?0:1)` };
      }
      if (tree.kind === 'call' && tree.name === 'MMULT') {
        const [left, right] = tree.args.map((arg) => this.block(this.range(arg))) as [Named, Named];
        const name = this.name('d');
        const first = `${left.first}${right.first}const ${name}=multiplied(${left.name},${right.name});`;
        return { first, rows: `${name}.rows`, columns: `${name}.columns`, at: `${name}.data[i]` };
      }
      if (tree.kind === 'operation') {
        const numbers = this.node(tree.left).type === 'number' && this.node(tree.right).type === 'number';
        if (numbers || !isComparison(tree.sign)) return this.pairs(tree);
      }
    }
    const name = this.name('b');
    return {
      first: `const ${name}=${this.keep(node.block)}(all);`,
      rows: `${name}.rows`,
      columns: `${name}.columns`,
      at: `${name}.data[i]`,
    };
  }

  private pairs({ sign, left, right }: Extract<Tree, { kind: 'operation' }>): Rows {
    const [l, r] = [this.range(left), this.range(right)];
    const both = this.node(left).kind === 'range' && this.node(right).kind === 'range';
    const check = both ? sameShape(l, r) : '';
    const { rows, columns } = this.node(left).kind === 'range' ? l : r;
    return { first: l.first + r.first + check, rows, columns, at: `${NAMES[sign]}(${l.at},${r.at})` };
  }

  /** The members that a reference means; null where they are not one below the other. */
  private members(found: Chosen): Rows | null {
    const store = this.name('s');
    const first = `const ${store}=${this.store(found)};`;
    if (found.list !== undefined) {
      const list = this.name('l');
      return {
        first: `${first}const ${list}=${found.list.code};`,
        rows: `(${list}.length||1)`,
        columns: '1',
        at: `(${list}.length===0?0:${store}.number(${list}[i]))`,
      };
    }
    const area = this.area(found);
    if (area === null) return null;
    const [t, b, l, r, none] = ['t', 'b', 'l', 'r', 'n'].map((letter) => `${letter}${store}`) as [
      string,
      string,
      string,
      string,
      string,
    ];
    const value = found.across === undefined || found.across.single ? `(${t}+i)*${store}.columns+${l}` : null;
    const wide = `(${r}-${l}+1)`;
    return {
      first:
        `${first}const ${t}=${area.top},${b}=${area.bottom},${l}=${area.left},${r}=${area.right},` +
        `${none}=${t}<0||${b}<${t}||${l}<0;`,
      rows: `(${none}?1:${b}-${t}+1)`,
      columns: value === null ? `(${none}?1:${wide})` : '1',
      at: `(${none}?NaN:${store}.number(${value ?? `(${t}+Math.floor(i/${wide}))*${store}.columns+${l}+i%${wide}`}))`,
    };
  }

  /** Rows and columns; null where rows of several axes would have to be put together. */
  private area({ name, rows, across }: Chosen): Record<'top' | 'bottom' | 'left' | 'right', string> | null {
    const { nos } = frame(name);
    const before = rows
      .slice(0, -1)
      .map(({ single, first }) => (single && SURE.test(first.code) ? first.code : null));
    // Of several axes only the last one may be open, from its first member to its last.
    const whole =
      rows.length < 2 || SURE.test(rows.at(-1)?.first.code ?? '') || rows.at(-1)?.first.code === '0';
    if (!whole || before.includes(null)) return null;
    const end = (place: string | undefined): string =>
      [...before, ...(place === undefined ? [] : [place])].reduce<string>(
        (so_far, next, i) => (i === 0 ? `${next}` : `(${so_far}*shape.counts[${nos[i]}]+${next})`),
        '0',
      );
    return {
      top: end(rows.at(-1)?.first.code),
      bottom: end(rows.at(-1)?.last.code),
      left: across?.first.code ?? '0',
      right: across?.last.code ?? '0',
    };
  }

  private one({ name, rows, across }: Chosen): string | null {
    const { nos } = frame(name);
    const choices = across === undefined ? rows : [...rows, across];
    const store = this.store({ name });
    if (choices.length === 0) return `${store}.number(0)`;
    const places = choices.map(({ first }) => first.code);
    const index = places
      .slice(1)
      .reduce((so_far, place, i) => `(${so_far}*shape.counts[${nos[i + 1]}]+${place})`, places[0] as string);
    const absent = places.filter((place) => !SURE.test(place)).map((place) => `${place}<0`);
    if (absent.length === 0) return `${store}.number(${index})`;
    return `(${absent.join('||')}?NaN:${store}.number(${index}))`;
  }

  private index(range: Tree, row: string, column: string): string | null {
    if (range.kind !== 'reference' || this.node(range).type !== 'number') return null;
    const found = this.chosen(range.reference);
    if (found.list !== undefined || isSingle(found)) return null;
    const area = this.area(found);
    if (area === null) return null;
    const store = this.store(found);
    const { top, bottom, left, right } = area;
    return `${store}.number(picked(${top},${bottom},${left},${right},${row},${column},${store}.columns))`;
  }

  private store({ name }: Pick<Chosen, 'name'>): string {
    return `all.store(${this.keep(frame(name))})`;
  }

  /** What is left to the functions. */
  private called(tree: Tree): string {
    const node = this.node(tree);
    if (node.kind === 'range') throw new Error('a range stands where one value is needed');
    return `${this.keep(node.number)}(all)`;
  }

  private keep(value: unknown): string {
    if (typeof value === 'function') this.hands = true;
    const known = this.kept.indexOf(value);
    return `k${known >= 0 ? known : this.kept.push(value) - 1}`;
  }

  private name(letter: string): string {
    this.names += 1;
    return `${letter}_${this.names}`;
  }

  private node(tree: Tree): Node {
    return this.nodes.get(tree) as Node;
  }
}
