/**
 * A formula as it was worked out for the members at hand: of each `IF` the branch that was taken, of each look-up the value
 * that was found, and which quantities went into it in which way.
 */
import type { Reference } from '../basis/formula.ts';
import type { At, Axis } from '../basis/quantity.ts';
import { type Area, areaOf, type Chosen, chosen } from '../engine/choose.ts';
import { compileTree } from '../engine/compile.ts';
import { frame } from '../engine/frame.ts';
import { Fault, needed, type Scalar, scalar } from '../engine/node.ts';
import { parse, type Tree } from '../engine/parse.ts';
import { referred } from '../engine/reference.ts';
import type { Stores } from '../engine/store.ts';
import type { QuantityName } from '../model/model.ts';

/** It enters the value, decides which branch is taken, or picks a row or a column. */
export type Role = 'enters' | 'decides' | 'picks';

/** Values of one quantity that were asked for. */
export interface Use {
  readonly name: QuantityName;
  readonly role: Role;
  /** One value, or all of a range. */
  readonly members: readonly At[];
}

export interface Reduced {
  /** The formula that is left, over the names of quantities. */
  readonly text: string;
  /** In the order of the formula; each quantity with the same members once. */
  readonly uses: readonly Use[];
}

/** The formula of a quantity as it is for some members, which must be there. */
export function reduce(stores: Stores, name: QuantityName, formula: string, at: At): Reduced {
  const { axes, nos } = frame(name);
  const { hand } = stores;
  const before = [...hand];
  axes.forEach((axis, k) => {
    hand[nos[k] as number] = at[axis] as number;
  });
  try {
    const reducer = new Reducer(stores, axes);
    const text = printed(reducer.taken(parse(formula), 'enters'));
    return { text, uses: reducer.uses };
  } finally {
    hand.set(before);
  }
}

/** The strongest role first: what enters need not be told as what decides. */
const ROLES: readonly Role[] = ['enters', 'decides', 'picks'];

class Reducer {
  private readonly found = new Map<string, Use>();
  private readonly stores: Stores;
  private readonly home: readonly Axis[];

  constructor(stores: Stores, home: readonly Axis[]) {
    this.stores = stores;
    this.home = home;
  }

  get uses(): Use[] {
    return [...this.found.values()];
  }

  /** What is left of a part; notes the quantities in it. */
  taken(tree: Tree, role: Role): Tree {
    switch (tree.kind) {
      case 'number':
      case 'text':
        return tree;
      case 'reference':
        this.note(tree.reference, role);
        return tree;
      case 'negative':
        return { ...tree, of: this.taken(tree.of, role) };
      case 'operation':
        return { ...tree, left: this.taken(tree.left, role), right: this.taken(tree.right, role) };
      case 'call':
        return this.call(tree, role);
    }
  }

  private call(tree: Tree & { kind: 'call' }, role: Role): Tree {
    const [first, second, third] = tree.args as [Tree, Tree, Tree];
    if (tree.name === 'IF') {
      this.taken(first, 'decides');
      const yes = this.number(first);
      return yes === null ? tree : this.taken(yes !== 0 ? second : third, role);
    }
    if (tree.name === 'IFERROR') return this.taken(this.fails(first) ? second : first, role);
    if (tree.name === 'INDEX' && first.kind === 'reference') {
      const [row, column] = [this.number(second), this.number(third)];
      this.taken(second, 'picks');
      this.taken(third, 'picks');
      if (row === null || column === null) return tree;
      this.note(first.reference, role, [row, column]);
      return { kind: 'reference', reference: { name: first.reference.name, selectors: [] } };
    }
    if (tree.name === 'MATCH') {
      this.taken(first, role);
      this.taken(second, 'picks');
      return tree;
    }
    // It only makes every program take the argument of the other function as a range.
    if (tree.name === 'SUMPRODUCT' && first.kind === 'call' && first.name === 'MAX')
      return this.taken(first, role);
    if (tree.name === 'SUMPRODUCT' || tree.name === 'MMULT') {
      const references = tree.args.flatMap((arg) => (arg.kind === 'reference' ? [arg.reference] : []));
      if (references.length > 1 && references.length === tree.args.length) {
        this.noteProduct(references, role);
        return tree;
      }
    }
    return { ...tree, args: tree.args.map((arg) => this.taken(arg, role)) };
  }

  /** Of ranges that are multiplied value by value only what does not come to nothing; all where all of it does. */
  private noteProduct(references: readonly Reference[], role: Role): void {
    const ranges = references.map((reference) => {
      const meant = chosen(reference, this.home);
      return { name: meant.name, members: membersOf(this.stores, meant) };
    });
    const counts = ranges[0]?.members.map((_, i) =>
      ranges.every(({ name, members }) => {
        const store = this.stores.of(name);
        return members[i] !== undefined && store.number(store.index(members[i])) !== 0;
      }),
    );
    const none = counts?.every((one) => !one);
    for (const { name, members } of ranges)
      this.keep({ name, role, members: none ? members : members.filter((_, i) => counts?.[i]) });
  }

  private compiled(tree: Tree): Scalar {
    return scalar(compileTree(tree, (reference) => referred(reference, this.home)));
  }

  /** Null when it comes to an error. */
  private number(tree: Tree): number | null {
    try {
      return needed(this.compiled(tree))(this.stores);
    } catch (error) {
      if (error instanceof Fault) return null;
      throw error;
    }
  }

  private fails(tree: Tree): boolean {
    try {
      this.compiled(tree).number(this.stores);
      return false;
    } catch (error) {
      if (error instanceof Fault) return true;
      throw error;
    }
  }

  /** `picked` is a place within the range, row and column counted from 1. */
  private note(reference: Reference, role: Role, picked?: readonly [number, number]): void {
    const meant = chosen(reference, this.home);
    this.keep({ name: meant.name, role, members: membersOf(this.stores, meant, picked) });
  }

  private keep(use: Use): void {
    const key = `${use.name} ${JSON.stringify(use.members)}`;
    const known = this.found.get(key);
    if (known === undefined || ROLES.indexOf(known.role) > ROLES.indexOf(use.role)) this.found.set(key, use);
  }
}

function membersOf(stores: Stores, meant: Chosen, picked?: readonly [number, number]): At[] {
  const { axes } = frame(meant.name);
  const { counts, columns } = stores.of(meant.name);
  if (meant.list !== undefined) return meant.list(stores).map((i) => atOf(i, axes, counts));
  const whole = areaOf(meant, counts, stores);
  if (whole === null) return [];
  const area: Area = picked === undefined ? whole : placeIn(whole, picked);
  const members: At[] = [];
  for (let row = area.top; row <= area.bottom; row++)
    for (let column = area.left; column <= area.right; column++)
      members.push(atOf(row * columns + column, axes, counts));
  return members;
}

const placeIn = ({ top, left }: Area, [row, column]: readonly [number, number]): Area => ({
  top: top + row - 1,
  bottom: top + row - 1,
  left: left + column - 1,
  right: left + column - 1,
});

/** The members of a value by its number among those of its quantity. */
function atOf(index: number, axes: readonly Axis[], counts: readonly number[]): At {
  const at: At = {};
  let rest = index;
  for (let k = axes.length - 1; k >= 0; k--) {
    const count = counts[k] as number;
    at[axes[k] as Axis] = rest % count;
    rest = Math.floor(rest / count);
  }
  return at;
}

/** How tightly an operator binds. */
const TIGHT: Readonly<Record<string, number>> = { '+': 1, '-': 1, '*': 2, '/': 2, '^': 3 };

/** A part of a formula as text; `least` is how tightly it must bind to stand without brackets. */
function printed(tree: Tree, least = 0): string {
  switch (tree.kind) {
    case 'number':
      return String(tree.value);
    case 'text':
      return `"${tree.value}"`;
    case 'reference':
      return tree.reference.name;
    case 'negative':
      return `-${printed(tree.of, 4)}`;
    case 'operation': {
      const own = TIGHT[tree.sign] ?? 0;
      const sign = own < 2 ? ` ${tree.sign} ` : tree.sign;
      const text = `${printed(tree.left, own)}${sign}${printed(tree.right, own + 1)}`;
      return own < least ? `(${text})` : text;
    }
    case 'call':
      return `${tree.name}(${tree.args.map((arg) => printed(arg)).join(', ')})`;
  }
}
