/** A design evaluated over a grid of values: each point is the whole design with these values in it, read and judged anew. */

import { readAs } from '../basis/print.ts';
import type { At, Axis, Quantity } from '../basis/quantity.ts';
import { type Units, unitIn } from '../basis/shown.ts';
import type { Design } from '../design/design.ts';
import { printProblem } from '../design/problems.ts';
import type { Evaluation } from '../engine/evaluate.ts';
import { find } from '../explain/find.ts';
import { type Overall, open } from '../findings/finding.ts';
import type { Result } from '../findings/result.ts';
import { heading } from '../findings/words.ts';
import { QUANTITIES, type QuantityName } from '../model/model.ts';
import { withSettings } from '../saved/set.ts';
import { cellText, labelOf, unitAbove } from '../views/print.ts';
import { plainValue } from '../views/view.ts';
import type { Vary } from './values.ts';

/** A quantity that is shown of each point. */
export interface Shown {
  /** As it was asked for: members that it leaves open are the worst of each point. */
  readonly asked: string;
  readonly name: QuantityName;
  readonly label: string;
  /** Above a column; empty where it stands with the value. */
  readonly unit: string;
  /** A word, or a number of a list such as a rating: it stays for a while and then turns. */
  readonly steps: boolean;
  /** Unit of the model, and unit in which it is drawn. */
  readonly from: string;
  readonly as: string;
}

export interface Row {
  /** The values, in the order of what is varied. */
  readonly values: readonly string[];
  /** `refused`: there is no such design. */
  readonly verdict: Overall | 'refused';
  /** What keeps it from passing; empty where it passes. */
  readonly why: readonly string[];
  /** As JSON has them, and as a person reads them. */
  readonly found: readonly (number | string | boolean | null)[];
  readonly texts: readonly string[];
}

export interface Study {
  readonly design: Design;
  readonly vary: readonly Vary[];
  readonly shown: readonly Shown[];
  readonly rows: readonly Row[];
}

/** The values of a point of the grid, the last input running fastest. */
export function valuesAt(vary: readonly Vary[], index: number): string[] {
  const values: string[] = [];
  let rest = index;
  for (const { values: own } of vary.toReversed()) {
    values.unshift(own[rest % own.length] as string);
    rest = Math.floor(rest / own.length);
  }
  return values;
}

export const pointsOf = (vary: readonly Vary[]): number =>
  vary.reduce((count, { values }) => count * values.length, 1);

/** What is shown when nobody says what: the sizes that are chosen, what is lost, what is bought. */
export function usualOf({ runs }: Design): string[] {
  const chosen = runs.filter(({ gauge }) => gauge === 'auto').map(({ name }) => `gauge ${name}`);
  const fused = runs.filter(({ fuse }) => fuse?.rating === 'auto').map(({ name }) => `fuse_rating ${name}`);
  return ['worst_drop', 'least_kept', ...chosen.slice(0, MOST_SIZES), ...fused.slice(0, 1), 'copper_total'];
}
const MOST_SIZES = 4;

/** The quantities that a call asks for, or why one of them is none. */
export function shownOf(e: Evaluation, asked: readonly string[]): Shown[] | string {
  const shown: Shown[] = [];
  for (const text of asked) {
    const found = find(e, text, []);
    if ('wrong' in found) return found.wrong;
    const { name, at } = found;
    const named = membersIn(e, at, text);
    const { unit, exact, flag, names, shown: own }: Quantity = QUANTITIES[name];
    const steps = unit === 'text' || exact === true || flag === true || names !== undefined;
    const { units } = e.design;
    shown.push({
      asked: text,
      name,
      label: `${labelOf(name)}${named}`,
      unit: unitAbove(name, units),
      steps,
      from: unit,
      as: unitIn(readAs(unit, own), units === 'us' ? 'us' : 'metric'),
    });
  }
  return shown;
}

/** The members of a value that the words themselves name. */
function membersIn(e: Evaluation, at: At, text: string): string {
  const names = (Object.entries(at) as [Axis, number][]).map(
    ([axis, index]) => e.grid.axes[axis][index] ?? '',
  );
  const own = names.filter(
    (name) => name !== '' && ` ${text.toLowerCase()} `.includes(` ${name.toLowerCase()} `),
  );
  return own.length === 0 ? '' : `, ${own.join(', ')}`;
}

/** Evaluates one point. */
export function pointOf(
  design: Design,
  units: Units,
  vary: readonly Vary[],
  asked: readonly string[],
  values: readonly string[],
  judge: (design: Design) => Result,
): Row {
  const read = withSettings(
    design,
    vary.map(({ path }, i) => ({ path, value: values[i] as string })),
  );
  if (!read.ok) {
    const none = asked.map(() => null);
    return {
      values,
      verdict: 'refused',
      why: read.problems.map(printProblem),
      found: none,
      texts: none.map(() => '–'),
    };
  }
  const { evaluation: e, findings, verdict } = judge({ ...read.design, units });
  const found = asked.map((text) => find(e, text, []));
  return {
    values,
    verdict,
    why: findings.filter(open).map((f) => `${heading(f)}${f.verdict === 'unknown' ? ' (unknown)' : ''}`),
    found: found.map((one) => ('wrong' in one ? null : plainValue(e, one.name, one.at))),
    texts: found.map((one) => ('wrong' in one ? '–' : cellText(e, one.name, one.at))),
  };
}
