/** Where a number comes from: the tree of its formula, with values, units and sources, down to what the design says. */
import type { At, Axis, Quantity } from '../basis/quantity.ts';
import { printCitation } from '../basis/sources.ts';
import type { Design } from '../design/design.ts';
import { keyText, type Path } from '../design/problems.ts';
import { partOf, type Used } from '../design/shop/shop.ts';
import type { Evaluation, Value } from '../engine/evaluate.ts';
import { frame } from '../engine/frame.ts';
import { QUANTITIES, type QuantityName } from '../model/model.ts';
import { measuredOf } from '../model/tables.ts';
import { keyOf } from '../saved/keys.ts';
import { say } from '../views/print.ts';
import { type Reduced, type Role, reduce } from './reduce.ts';

/** One value of a quantity, and what it is made from. */
export interface Told {
  readonly id: QuantityName;
  readonly label: string;
  readonly symbol: string;
  readonly at: At;
  /** Names of the members that it is for: `main`, `branch.3, limiter`. */
  readonly of: string;
  /** In the unit of the model; null when it is not known. */
  readonly value: Value;
  readonly unit: string;
  /** As a person reads it, with its unit. */
  readonly text: string;
  readonly kind: Quantity['kind'];
  /** What it rests on: a source, the place in the design, why it was taken. */
  readonly source: string;
  readonly note: string;
  /** The formula as it was worked out; empty where there is none. */
  readonly formula: string;
  readonly parts: readonly Part[];
  /** It is told further up, or lies deeper than was asked for. */
  readonly cut: 'told above' | 'deeper' | null;
}

/** Several values of one quantity that go in together; those that are told one by one stand in `told`. */
export interface Part {
  readonly id: QuantityName;
  readonly role: Role;
  readonly count: number;
  /** Least and largest of more values than are told, as a person reads them; empty for words. */
  readonly span: string;
  readonly told: readonly Told[];
}

/** So many values of a range are told one by one. Arbitrary: as many as one takes in at a glance. */
const FEW = 8;

/** The tree of a value, `depth` levels of formulas deep. */
export function explain(e: Evaluation, name: QuantityName, at: At, depth = Number.POSITIVE_INFINITY): Told {
  return new Teller(e).tell(name, at, depth);
}

class Teller {
  private readonly seen = new Set<string>();
  private readonly e: Evaluation;

  constructor(e: Evaluation) {
    this.e = e;
  }

  tell(name: QuantityName, at: At, depth: number): Told {
    const { e } = this;
    const q: Quantity = QUANTITIES[name];
    const key = `${name} ${JSON.stringify(at)}`;
    const inside = q.kind === 'formula';
    const again = inside && this.seen.has(key);
    const deep = inside && !again && depth <= 0;
    if (inside && !deep) this.seen.add(key);
    const reduced = inside && !again && !deep ? reduce(e.stores, name, q.formula, at) : null;
    return {
      id: name,
      label: q.label,
      symbol: q.symbol,
      at,
      of: membersText(e, name, at),
      value: e.value(name, at),
      unit: q.unit,
      text: say(e, name, at),
      kind: q.kind,
      source: sourceOf(e, q, at),
      note: q.note ?? '',
      formula: reduced?.text ?? '',
      parts: reduced === null ? [] : this.parts(reduced, e.value(name, at), depth),
      cut: again ? 'told above' : deep ? 'deeper' : null,
    };
  }

  private parts({ text, uses }: Reduced, result: Value, depth: number): Part[] {
    return uses.map(({ name, role, members }) => {
      // Of the largest or the least of many values the one that it is.
      const one = new RegExp(`\\b(?:MAX|MIN)\\(${name}\\)`).test(text);
      const own =
        one && members.length > 1
          ? members.filter((at) => this.e.value(name, at) === result).slice(0, 1)
          : members.length <= FEW
            ? members
            : [];
      const few = role === 'picks' && members.length > 1 ? [] : own;
      return {
        id: name,
        role,
        count: members.length,
        span: few.length === members.length ? '' : this.span(name, members),
        told: few.map((at) => this.tell(name, at, role === 'enters' ? depth - 1 : 0)),
      };
    });
  }

  private span(name: QuantityName, members: readonly At[]): string {
    const known = members
      .map((at) => [this.e.value(name, at), at] as const)
      .filter((one): one is readonly [number, At] => typeof one[0] === 'number')
      .sort(([a], [b]) => a - b);
    const [least, most] = [known[0], known.at(-1)];
    if (least === undefined || most === undefined) return '';
    return least[0] === most[0]
      ? `all ${say(this.e, name, least[1])}`
      : `${say(this.e, name, least[1])} to ${say(this.e, name, most[1])}`;
  }
}

const membersText = ({ grid }: Evaluation, name: QuantityName, at: At): string =>
  frame(name)
    .axes.map((axis: Axis) => grid.axes[axis][at[axis] ?? 0] ?? '')
    .join(', ');

/** The part of the shop's file that a value of the design came from; null where the design says it itself. */
function shopPart({ used }: Design, path: Path): Used | null {
  const whole = keyText(path);
  return (
    used.find(
      (one) =>
        one.path === whole ||
        path.some((key, n) => one.keys.includes(String(key)) && one.path === keyText(path.slice(0, n))),
    ) ?? null
  );
}

/** What a value that no formula works out comes from; of a formula what it rests on. */
function sourceOf({ design, grid }: Evaluation, q: Quantity, at: At): string {
  if (q === QUANTITIES.measured_ohm || q === QUANTITIES.measured_T) {
    const size = grid.axes.size[at.size ?? -1] ?? '';
    const insulation = grid.axes.insulation[at.insulation ?? -1] ?? '';
    const from = measuredOf(size, insulation, design.shelf)?.from ?? null;
    return `the shop’s file ${design.shop?.file}, wire ${size}, ${insulation}${from === null ? '' : `, from ${from}`}`;
  }
  if (q.kind === 'structure') return 'the layout of the feed';
  if (q.kind !== 'input') return q.source === undefined ? '' : printCitation(q.source);
  const key = keyOf(design, q.path, at);
  const path = keyText(key);
  const used = shopPart(design, key);
  if (used !== null) return `the shop’s file ${design.shop?.file}, ${partOf(used)} (${path})`;
  const taken = [...design.assumed, ...design.tolerance_assumed].find((one) => one.path === path);
  return taken === undefined
    ? `the design, ${path}`
    : `taken where the design says nothing (${path}): ${taken.why}`;
}
