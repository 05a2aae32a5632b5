/**
 * The values of all quantities of one design, each worked out when it is first asked for.
 *
 * A quantity has one array of numbers, a row for each member (or pair of members) of `per`, a column for each member of
 * `across`. Its formula is compiled once for all designs; nothing is made for a single value.
 */
import { type At, AXES, type Axis } from '../basis/quantity.ts';
import type { Design } from '../design/design.ts';
import type { QuantityName } from '../model/model.ts';
import { inputValue } from './cell.ts';
import { AXIS_NO, type Shape } from './choose.ts';
import type { Code } from './code/code.ts';
import { type Frame, frame } from './frame.ts';
import { codeFor, functionsOf } from './functions.ts';
import { type Column, Fault, type Values } from './node.ts';

/** A value that a quantity can have: an unknown one is null. */
export type Value = number | string | null;

const TODO = 0;
const DOING = 1;
const DONE = 2;

export class Store implements Column {
  readonly frame: Frame;
  /** Members along each axis, the last one running fastest, and how many values one step along it is. */
  readonly counts: readonly number[];
  private readonly steps: readonly number[];
  /** Columns of a row: 1 where the quantity does not go across. */
  readonly columns: number;
  private readonly numbers: Float64Array;
  /** Only where the quantity has words; empty where it has none. */
  private words: string[] | null = null;
  private readonly state: Uint8Array;
  private faults: Map<number, Fault> | null = null;
  /** Inputs written over those of the design, in the unit of the entry. */
  private written: Map<number, Value> | null = null;
  /** In place of the formula: the values of all members, NaN for what is not known; or what is added to them. */
  private held: ArrayLike<number> | null = null;
  /** Where values are held; everywhere when it is null. */
  private only: ArrayLike<number> | null = null;
  private added: ArrayLike<number> | null = null;
  private readonly all: Stores;
  /** Its formula as code; null where that is left to functions. */
  private readonly code: Code | null;

  constructor(of: Frame, all: Stores) {
    const { axes, across } = of;
    this.frame = of;
    this.all = all;
    this.counts = axes.map((axis) => all.shape.axes[axis].length);
    const steps = new Array<number>(axes.length);
    let size = 1;
    for (let a = axes.length - 1; a >= 0; a--) {
      steps[a] = size;
      size *= this.counts[a] as number;
    }
    this.steps = steps;
    this.columns = across ? (this.counts.at(-1) as number) : 1;
    this.numbers = new Float64Array(size);
    this.state = new Uint8Array(size);
    if (of.text) this.words = new Array<string>(size).fill('');
    this.code = codeFor(of);
  }

  /** NaN where it is no number. Throws a `Fault` where the formula comes to an error. */
  number(i: number): number {
    if (this.state[i] !== DONE) {
      if (this.held !== null && (this.only === null || this.only[i] === 1)) return this.held[i] as number;
      this.fill(i);
    }
    return this.numbers[i] as number;
  }

  /** Null for a number, empty where it is not known. */
  word(i: number): string | null {
    const value = this.number(i);
    if (!Number.isNaN(value)) return null;
    return this.words === null ? '' : (this.words[i] as string);
  }

  /** Index of the value for the members `at`. Throws a `RangeError` where there is no such member. */
  index(at: At): number {
    const { axes, name } = this.frame;
    let index = 0;
    for (let k = 0; k < axes.length; k++) {
      const axis = axes[k] as Axis;
      const i = at[axis] ?? -1;
      const count = this.counts[k] as number;
      if (!(i >= 0 && i < count)) throw new RangeError(`${name}: ${axis} ${at[axis]} of ${count}`);
      index = index * count + i;
    }
    return index;
  }

  write(i: number, value: Value): void {
    this.written ??= new Map();
    this.written.set(i, value);
  }

  /** Takes values in place of what the formula comes to, or adds them to it; null ends that. */
  hold(values: ArrayLike<number> | null, how: 'held' | 'added', only: ArrayLike<number> | null = null): void {
    if (values !== null && values.length !== this.numbers.length)
      throw new Error(`${this.frame.name} has ${this.numbers.length} values, not ${values.length}`);
    this[how] = values;
    if (how === 'held') this.only = only;
  }

  workAll(): void {
    for (let i = 0; i < this.numbers.length; i++) this.number(i);
  }

  forget(): void {
    this.state.fill(TODO);
    this.faults = null;
  }

  private fill(i: number): void {
    const { chain } = this.frame;
    if (chain >= 0) {
      // In their order, so that a long chain needs no deep stack.
      const step = this.steps[chain] as number;
      const first = i - (Math.floor(i / step) % (this.counts[chain] as number)) * step;
      for (let before = first; before < i; before += step) if (this.state[before] === TODO) this.work(before);
    }
    this.work(i);
  }

  private work(i: number): void {
    const known = this.faults?.get(i);
    if (known !== undefined) throw known;
    if (this.state[i] === DOING) throw new Error(`${this.frame.name} depends on itself`);
    this.state[i] = DOING;
    try {
      if (this.code === null) this.atHand(i, null);
      else if (this.code.hands) this.atHand(i, this.code);
      else this.run(i, this.code);
      this.state[i] = DONE;
    } catch (error) {
      this.state[i] = TODO;
      if (error instanceof Fault) {
        if (error.place === '') error.place = this.frame.name;
        this.faults ??= new Map();
        this.faults.set(i, error);
      }
      throw error;
    }
  }

  private run(i: number, { run }: Code): void {
    const step0 = this.steps[0] ?? 1;
    const step1 = this.steps[1] ?? 1;
    const h0 = Math.floor(i / step0);
    const rest = i - h0 * step0;
    const h1 = Math.floor(rest / step1);
    this.numbers[i] = run(this.all, h0, h1, rest - h1 * step1) + this.addedAt(i);
  }

  /** With its members at hand; puts those back that were. */
  private atHand(i: number, code: Code | null): void {
    const { hand } = this.all;
    const { nos } = this.frame;
    const before0 = hand[nos[0] as number] as number;
    const before1 = hand[nos[1] as number] as number;
    const before2 = hand[nos[2] as number] as number;
    let rest = i;
    for (let a = 0; a < nos.length; a++) {
      const step = this.steps[a] as number;
      const index = Math.floor(rest / step);
      hand[nos[a] as number] = index;
      rest -= index * step;
    }
    try {
      if (code === null) this.keep(i);
      else this.run(i, code);
    } finally {
      if (nos.length > 0) hand[nos[0] as number] = before0;
      if (nos.length > 1) hand[nos[1] as number] = before1;
      if (nos.length > 2) hand[nos[2] as number] = before2;
    }
  }

  private keep(i: number): void {
    const { q } = this.frame;
    if (q.kind !== 'formula') {
      this.put(i, this.given(i));
      return;
    }
    const functions = functionsOf(this.frame, q.formula);
    if (functions.type === 'text') this.put(i, functions.word(this.all) ?? functions.number(this.all));
    else this.numbers[i] = functions.number(this.all) + this.addedAt(i);
  }

  private addedAt(i: number): number {
    return this.added === null ? 0 : (this.added[i] as number);
  }

  private put(i: number, value: Value): void {
    this.numbers[i] = typeof value === 'number' ? value : Number.NaN;
    if (typeof value !== 'string' && this.words === null) return;
    this.words ??= new Array<string>(this.numbers.length).fill('');
    this.words[i] = typeof value === 'string' ? value : '';
  }

  /** What no formula works out. */
  private given(i: number): Value {
    const { q, factor } = this.frame;
    switch (q.kind) {
      case 'constant':
        return q.value;
      case 'column': {
        const row = q.values[Math.floor(i / this.columns)];
        return ((Array.isArray(row) ? row[i % this.columns] : row) ?? null) as Value;
      }
      case 'structure':
        return q.value(this.all.at(this.frame.axes) as Required<At>, this.all.design);
      case 'input': {
        const written = this.written?.get(i);
        const entry =
          written === undefined ? inputValue(this.all.design, q, this.all.at(this.frame.axes)) : written;
        if (factor === 1) return entry;
        if (typeof entry !== 'number') return null;
        return factor < 1 ? entry / (1 / factor) : entry * factor;
      }
      case 'formula':
        throw new Error(`${this.frame.name} has a formula`);
    }
  }
}

export class Stores implements Values {
  readonly shape: Shape;
  readonly design: Design;
  readonly hand = new Int32Array(AXES.length);
  private readonly stores: (Store | undefined)[] = [];
  /** Those that were asked for, in that order. */
  readonly made: Store[] = [];

  constructor(shape: Shape, design: Design) {
    this.shape = shape;
    this.design = design;
  }

  of(name: QuantityName): Store {
    return this.store(frame(name));
  }

  store(of: Frame): Store {
    let found = this.stores[of.no];
    if (found === undefined) {
      found = new Store(of, this);
      this.stores[of.no] = found;
      this.made.push(found);
    }
    return found;
  }

  at(axes: readonly Axis[]): At {
    const at: At = {};
    for (const axis of axes) at[axis] = this.hand[AXIS_NO[axis]] as number;
    return at;
  }
}
