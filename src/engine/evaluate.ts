/** Evaluates the model of one design in process: what is asked for, and what that depends on. */
import { namesIn } from '../basis/formula.ts';
import type { At } from '../basis/quantity.ts';
import type { Design } from '../design/design.ts';
import { QUANTITIES, type QuantityName } from '../model/model.ts';
import { type Shape, shapeOf } from './choose.ts';
import { Fault } from './node.ts';
import { type Store, Stores, type Value } from './store.ts';

export type { Value } from './store.ts';

/** An input for some members, in the unit of its entry. */
export interface Entry {
  readonly name: QuantityName;
  readonly at: At;
  readonly value: Value;
}

/** The model of one design. */
export interface Evaluation {
  readonly design: Design;
  readonly grid: Shape;
  /** Where the values are kept; for whoever reads formulas piece by piece. */
  readonly stores: Stores;
  /** Value in the model's unit; null when it is not known. Throws a `ModelError` when it comes to an error. */
  value(name: QuantityName, at?: At): Value;
  /** The same as a number; null when it is not known. Throws when it is a word. */
  number(name: QuantityName, at?: At): number | null;
  /** The same for whoever asks for it again and again. */
  asker(name: QuantityName, at?: At): () => number | null;
  /** Writes an input in the unit of its entry; what depends on it is worked out anew when it is asked for. */
  set(name: QuantityName, at: At, value: Value): void;
  /** Writes several inputs; `held` are values that take the place of formulas. */
  setAll(entries: readonly Entry[], held?: readonly Held[]): void;
  /** Keeps what these come to now, whatever is written later: for what the design fixes. */
  fix(names: readonly QuantityName[]): void;
}

/** Values of all members of a quantity that take the place of what its formula comes to, or are added to it. */
export interface Held {
  readonly name: QuantityName;
  readonly values: ArrayLike<number> | null;
  readonly how: 'held' | 'added';
  /** 1 where they are held; the formula stays elsewhere. Everywhere when it is left out. */
  readonly only?: ArrayLike<number>;
}

/** Thrown when a value comes to an error: a fault of the tool, not of the design. */
export class ModelError extends Error {}

export function evaluate(design: Design): Evaluation {
  const shape = shapeOf(design);
  const stores = new Stores(shape, design);
  const read = (name: QuantityName, at: At): (() => Value) => {
    const store = stores.of(name);
    const i = store.index(at);
    return () => {
      try {
        const number = store.number(i);
        return Number.isNaN(number) ? store.word(i) || null : number;
      } catch (error) {
        if (!(error instanceof Fault)) throw error;
        throw new ModelError(`${name} at ${JSON.stringify(at)}: ${error.what} (in ${error.place})`);
      }
    };
  };
  const asker = (name: QuantityName, at: At = {}): (() => number | null) => {
    const value = read(name, at);
    return () => {
      const found = value();
      if (typeof found === 'string') throw new ModelError(`${name} is "${found}" where a number is needed`);
      return found;
    };
  };
  const setAll = (entries: readonly Entry[], held: readonly Held[] = []): void => {
    const names = new Set<QuantityName>();
    for (const { name, at, value: entry } of entries) {
      const store = stores.of(name);
      if (store.frame.q.kind !== 'input') throw new Error(`${name} is no input`);
      store.write(store.index(at), entry);
      names.add(name);
    }
    for (const { name, values, how, only } of held) {
      stores.of(name).hold(values, how, only);
      names.add(name);
    }
    for (const store of affected(names)) store.forget();
  };
  const fixed = new Set<QuantityName>();
  /** Stores that depend on these quantities, found again when others were made since. */
  const known = new Map<string, { readonly made: number; readonly stores: readonly Store[] }>();
  const affected = (names: ReadonlySet<QuantityName>): readonly Store[] => {
    const key = [...names].join();
    const before = known.get(key);
    if (before?.made === stores.made.length) return before.stores;
    const changed = allDependents(names, fixed);
    const found = stores.made.filter((store) => changed.has(store.frame.name));
    known.set(key, { made: stores.made.length, stores: found });
    return found;
  };
  return {
    design,
    grid: shape,
    stores,
    value: (name, at = {}) => read(name, at)(),
    number: (name, at) => asker(name, at)(),
    asker,
    set: (name, at, entry) => setAll([{ name, at, value: entry }]),
    setAll,
    fix(names) {
      for (const name of names) {
        stores.of(name).workAll();
        fixed.add(name);
      }
      known.clear();
    },
  };
}

const users = new Map<string, QuantityName[]>();
const reached = new Map<QuantityName, ReadonlySet<QuantityName>>();

/** A quantity and everything whose formula names it, or names what does. */
function dependents(name: QuantityName): ReadonlySet<QuantityName> {
  const known = reached.get(name);
  if (known !== undefined) return known;
  const found = allDependents(new Set([name]));
  reached.set(name, found);
  return found;
}

/** The same for several, but for what is fixed and what depends on them by that alone. */
function allDependents(
  names: ReadonlySet<QuantityName>,
  fixed: ReadonlySet<QuantityName> = new Set(),
): ReadonlySet<QuantityName> {
  if (users.size === 0) {
    for (const user of Object.keys(QUANTITIES) as QuantityName[]) {
      const q = QUANTITIES[user];
      if (q.kind !== 'formula') continue;
      for (const used of namesIn(q.formula)) users.set(used, [...(users.get(used) ?? []), user]);
    }
  }
  const found = new Set(names);
  for (const one of found) for (const user of users.get(one) ?? []) if (!fixed.has(user)) found.add(user);
  return found;
}

/** Whether the formula of a quantity names another one, or names what does. */
export const dependsOn = (name: QuantityName, other: QuantityName): boolean => dependents(other).has(name);
