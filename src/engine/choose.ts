/** Which members a reference means, for cells and for functions alike: the one meaning of `[wire of run]` and the like. */
import type { Reference, Selector } from '../basis/formula.ts';
import { type At, AXES, type Axis, type Quantity } from '../basis/quantity.ts';
import type { Design } from '../design/design.ts';
import { QUANTITIES, type QuantityName } from '../model/model.ts';
import { before, protectorOf } from '../model/route.ts';
import { type Members, members, OWNERS, type Owner } from './axes.ts';

/** Axes by number: what is looked up for every value. */
export const AXIS_NO = Object.fromEntries(AXES.map((axis, i) => [axis, i])) as Readonly<Record<Axis, number>>;

/** What a design has several of, and who belongs to whom. */
export interface Shape {
  readonly axes: Members;
  /** Members of each axis, by its number. */
  readonly counts: readonly number[];
  /** For an owned axis, by its number: the owner of each member, and the first and last member of each owner. */
  readonly owners: readonly (Ownership | undefined)[];
  /** For each conductor those between the battery and it, from the battery outward. */
  readonly ahead: readonly (readonly number[])[];
  /** For each conductor the run whose fuse protects it; −1 when there is none. */
  readonly guard: readonly number[];
}

interface Ownership {
  readonly owner: readonly number[];
  readonly first: readonly number[];
  readonly last: readonly number[];
}

export function shapeOf(design: Design): Shape {
  const axes = members(design);
  const owned = (axis: Axis, owner: readonly number[]): Ownership => {
    const whose = axes[(OWNERS[axis] as Owner).axis].map((_, i) => i);
    return {
      owner,
      first: whose.map((i) => owner.indexOf(i)),
      last: whose.map((i) => owner.lastIndexOf(i)),
    };
  };
  const events = owned(
    'event',
    design.events.map((e) => e.coil),
  );
  const own: Partial<Record<Axis, Ownership>> = {
    wire: owned(
      'wire',
      design.wires.map((w) => w.run),
    ),
    event: events,
    event2: events,
  };
  return {
    axes,
    counts: AXES.map((axis) => axes[axis].length),
    owners: AXES.map((axis) => own[axis]),
    ahead: design.wires.map((_, wire) => before(wire, design)),
    guard: design.wires.map((_, wire) => design.wires[protectorOf(wire, design)]?.run ?? -1),
  };
}

/** A shape and the members at hand: an index for each axis, by its number. */
export interface Here {
  readonly shape: Shape;
  readonly hand: Int32Array;
}

export function here(shape: Shape, at: At): Here {
  const hand = new Int32Array(AXES.length);
  for (const axis of Object.keys(at) as Axis[]) hand[AXIS_NO[axis]] = at[axis] as number;
  return { shape, hand };
}

/** The members along one axis: from `first` to `last`, −1 when there is none. One only where it is `single`. */
export interface Choice {
  readonly single: boolean;
  readonly first: Index;
  readonly last: Index;
}
export type Index = Coded<number>;

type Coded<T> = ((here: Here) => T) & {
  /** The same as JavaScript, of `shape` and of the members at hand: `h0` is that along the first axis of the home. */
  readonly code: string;
};

const coded = <T>(code: string, of: (here: Here) => T): Coded<T> => Object.assign(of, { code });

/** A reference of a quantity with the axes `home`: what it names, and which members of it. */
export interface Chosen {
  readonly name: QuantityName;
  readonly rows: readonly Choice[];
  readonly across?: Choice;
  /** In place of rows: conductors as a list. */
  readonly list?: Coded<readonly number[]>;
}

/** Throws when the formula names what does not exist or leaves an axis open: formulas are written by us. */
export function chosen({ name, selectors }: Reference, home: readonly Axis[]): Chosen {
  if (!Object.hasOwn(QUANTITIES, name)) throw new Error(`"${name}" is no quantity`);
  const target = name as QuantityName;
  const { per = [], across }: Quantity = QUANTITIES[target];
  const stray = selectors.find((s) => s.axis !== across && !per.includes(s.axis as Axis));
  if (stray) throw new Error(`${name} has no axis ${stray.axis}`);
  if (selectors.some((s) => s.how === 'ahead')) {
    const wire = indexAlong('wire', home);
    if (wire === undefined || per.join() !== 'wire') throw new Error('only conductors stand ahead of one');
    const ahead = (h: Here): readonly number[] => h.shape.ahead[wire(h)] as readonly number[];
    return { name: target, rows: [], list: coded(`shape.ahead[${wire.code}]`, ahead) };
  }
  const along = (axis: Axis): Choice => {
    const found = choose(
      axis,
      selectors.find((s) => s.axis === axis),
      home,
    );
    if (found === undefined) throw new Error(`${name}: the axis ${axis} is left open`);
    return found;
  };
  return { name: target, rows: per.map(along), ...(across === undefined ? {} : { across: along(across) }) };
}

const one = (index: Index): Choice => ({ single: true, first: index, last: index });

/** How a reference chooses along one axis; undefined when it does not. */
function choose(axis: Axis, selector: Selector | undefined, home: readonly Axis[]): Choice | undefined {
  const index = indexAlong(axis, home);
  const no = AXIS_NO[axis];
  const count = ({ shape }: Here): number => shape.counts[no] as number;
  const counted = `shape.counts[${no}]`;
  switch (selector?.how) {
    case 'all':
      return {
        single: false,
        first: coded('0', () => 0),
        last: coded(`(${counted}-1)`, (h) => count(h) - 1),
      };
    case 'owned':
      return owned(axis, selector.owner as Axis, home);
    case 'as': {
      const other = selector.other as Axis;
      return home.includes(other) ? one(direct(other, home)) : undefined;
    }
    case 'ahead':
      return undefined;
    case 'guard': {
      const wire = indexAlong('wire', home);
      return wire && one(coded(`shape.guard[${wire.code}]`, (h) => h.shape.guard[wire(h)] as number));
    }
    case 'before':
      return index && one(coded(`(${index.code}-1)`, (h) => index(h) - 1));
    case 'after':
      return (
        index &&
        one(
          coded(`(${index.code}+1<${counted}?${index.code}+1:-1)`, (h) =>
            index(h) + 1 < count(h) ? index(h) + 1 : -1,
          ),
        )
      );
    case undefined:
      return index && one(index);
  }
}

/** The members of an axis that belong to the member of another one at hand. */
function owned(axis: Axis, by: Axis, home: readonly Axis[]): Choice | undefined {
  const owner = OWNERS[axis];
  const index = indexAlong(by, home);
  if (owner?.axis !== by || index === undefined) return undefined;
  const no = AXIS_NO[axis];
  // One member at most, such as the feed run that a run is.
  if (owner.same)
    return one(
      coded(`(${index.code}<shape.counts[${no}]?${index.code}:-1)`, (h) =>
        index(h) < (h.shape.counts[no] as number) ? index(h) : -1,
      ),
    );
  const end = (which: 'first' | 'last'): Index =>
    coded(
      `shape.owners[${no}].${which}[${index.code}]`,
      (h) => (h.shape.owners[no] as Ownership)[which][index(h)] as number,
    );
  return { single: false, first: end('first'), last: end('last') };
}

const direct = (axis: Axis, home: readonly Axis[]): Index => {
  const no = AXIS_NO[axis];
  return coded(`h${home.indexOf(axis)}`, ({ hand }) => hand[no] as number);
};

/** Index on `axis` of the member at hand, or of the owner of a member at hand. */
function indexAlong(axis: Axis, home: readonly Axis[]): Index | undefined {
  if (home.includes(axis)) return direct(axis, home);
  const member = home.find((a) => OWNERS[a]?.axis === axis);
  if (member === undefined) return undefined;
  const index = direct(member, home);
  const no = AXIS_NO[member];
  if (OWNERS[member]?.same) return index;
  return coded(
    `shape.owners[${no}].owner[${index.code}]`,
    (h) => (h.shape.owners[no] as Ownership).owner[index(h)] as number,
  );
}

/** Rows and columns of a quantity's values, counted from 0, both ends included. */
export interface Area {
  readonly top: number;
  readonly bottom: number;
  readonly left: number;
  readonly right: number;
}

/** One value, at all hands. */
export const isSingle = ({ rows, across, list }: Chosen): boolean =>
  list === undefined && rows.every((c) => c.single) && across?.single !== false;

/** The area that a reference means; null where a member is not there, or where the design has none of its kind. Throws when it would have gaps. */
export function areaOf({ name, rows, across }: Chosen, counts: readonly number[], at: Here): Area | null {
  let [top, bottom, wide] = [0, 0, false];
  for (const [i, choice] of rows.entries()) {
    const first = choice.first(at);
    const last = choice.last(at);
    if (first < 0 || last < first) return null;
    const count = counts[i] as number;
    if (wide && !(first === 0 && last === count - 1)) throw new Error(`a range of ${name} has gaps`);
    wide ||= first !== last;
    top = top * count + first;
    bottom = bottom * count + last;
  }
  const left = across?.first(at) ?? 0;
  return left < 0 ? null : { top, bottom, left, right: across?.last(at) ?? 0 };
}
