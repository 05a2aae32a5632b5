/** Two feeds side by side, for the terminal. At most 80 columns. */

import { asRead, printNumber } from '../basis/print.ts';
import type { At, Quantity } from '../basis/quantity.ts';
import type { Evaluation } from '../engine/evaluate.ts';
import { QUANTITIES, type QuantityName } from '../model/model.ts';
import type { Change, Compared } from '../readings/compare.ts';
import type { Exact } from '../readings/exact.ts';
import { cellText, labelOf, unitAbove } from '../views/print.ts';
import { quantityOf, type View } from '../views/view.ts';
import { COMPARED, FEED } from '../views/views.ts';
import { bullet, columns, fold, WIDTH } from './columns.ts';
import { VERDICT_WORDS } from './verdict.ts';

export function compareReport(c: Compared): string {
  const [a, b] = c.sides;
  const head = c.sides.map(({ name, title, result }) =>
    fold(`${name}  ${VERDICT_WORDS[result.verdict]}  ${title}`, WIDTH, '   ').trimStart(),
  );
  const sections = [
    head.join('\n'),
    ...(c.gain === null ? [] : [fold(c.gain, WIDTH, '')]),
    ...c.points.map(
      (point) =>
        `At ${point.name}${point.exact.includes(null) ? '' : ', by the exact currents'}\n${figures(c, COMPARED, point.at, point.exact)}`,
    ),
    ...alone(c),
    `${FEED.title}\n${figures(c, FEED, [{}, {}])}`,
    ...c.sides.map(({ name }, i) => `Parts of ${name}\n${(c.parts[i] ?? []).map(bullet).join('\n')}`),
    findings(`Does not pass with ${a.name}, passes with ${b.name}`, c.vanish),
    findings(`Passes with ${a.name}, does not with ${b.name}`, c.appear),
    ...(c.stay.length > 0 ? [findings('Does not pass with either', c.stay)] : []),
  ];
  return `${sections.join('\n\n')}\n`;
}

/** Where an exact value stands in place of the closed form, which counts currents on a stiff supply: alike for every feed. */
const EXACT: Partial<Record<QuantityName, keyof Exact>> = {
  total_average: 'average',
  main_effective: 'effective',
  main_peak: 'peak',
  least_supply: 'supply',
  weakest_energy: 'energy',
  weakest_kept: 'kept',
  coils_power: 'power',
  wiring_heat: 'heat',
};

const titles = ({ sides: [a, b] }: Pick<Compared, 'sides'>) =>
  ['', a.name, b.name, `${b.name} to ${a.name}`].map((title, i) => ({
    title,
    align: i === 0 ? ('left' as const) : ('right' as const),
  }));

/** A line for each quantity of a view. */
const figures = (...of: Parameters<typeof comparedRows>): string =>
  columns(
    titles(of[0]),
    comparedRows(...of).map(([label = '', ...rest]) => [label.padEnd(ROOM), ...rest]),
  );

/** Of each quantity of a view its name with the unit, both values, and the second against the first. */
export function comparedRows(
  { sides }: Compared,
  view: View,
  at: readonly [At, At],
  exact: readonly [Exact | null, Exact | null] = [null, null],
): string[][] {
  const [a, b] = sides.map(({ result }) => result.evaluation) as [Evaluation, Evaluation];
  return view.read.map(quantityOf).map((name) => {
    const unit = unitAbove(name, a.design.units);
    const key = exact.includes(null) ? undefined : EXACT[name];
    const number = (side: 0 | 1): number | null => {
      if (key !== undefined) return exact[side]?.[key] ?? null;
      const value = [a, b][side]?.value(name, at[side]);
      return typeof value === 'number' ? value : null;
    };
    const text = (side: 0 | 1): string => {
      const { unit: own, shown }: Quantity = QUANTITIES[name];
      return key === undefined
        ? cellText([a, b][side] as Evaluation, name, at[side])
        : asRead(number(side), own, shown)[0];
    };
    return [
      `${labelOf(name)}${unit === '' ? '' : `, ${unit}`}`,
      text(0),
      text(1),
      against(number(0), number(1)),
    ];
  });
}

const ROOM = 34;

/** `+12 %` */
export function against(a: number | null, b: number | null): string {
  if (a === null || b === null || a === 0) return '–';
  const percent = (b / a - 1) * 100;
  const text = printNumber(Math.abs(percent), 2);
  return Number(text) === 0 ? '0 %' : `${percent < 0 ? '−' : '+'}${text} %`;
}

const alone = ({ sides, alone: names }: Compared): string[] => {
  const told = names.flatMap((own, i) =>
    own.length > 0 ? [bullet(`Only ${sides[i]?.name} has the points ${own.join(', ')}.`)] : [],
  );
  return told.length > 0 ? [told.join('\n')] : [];
};

function findings(title: string, changes: readonly Change[]): string {
  if (changes.length === 0) return `${title}\n  - nothing`;
  return [title, ...changes.map((change) => bullet(changeText(change)))].join('\n');
}

/** `Fuse rating (main, branch)` */
export function changeText({ title, subjects }: Change): string {
  const where = [...new Set(subjects.flat())].filter((subject) => subject !== 'feed');
  return `${title}${where.length > 0 ? ` (${where.join(', ')})` : ''}`;
}
