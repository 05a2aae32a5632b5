/** Two feeds side by side, for the terminal. At most 80 columns. */

import { printNumber } from '../basis/print.ts';
import type { At } from '../basis/quantity.ts';
import type { Evaluation } from '../engine/evaluate.ts';
import type { Change, Compared } from '../readings/compare.ts';
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
    ...c.points.map((point) => `At ${point.name}\n${figures(c, COMPARED, point.at)}`),
    ...alone(c),
    `${FEED.title}\n${figures(c, FEED, [{}, {}])}`,
    ...c.sides.map(({ name }, i) => `Parts of ${name}\n${(c.parts[i] ?? []).map(bullet).join('\n')}`),
    findings(`Does not pass with ${a.name}, passes with ${b.name}`, c.vanish),
    findings(`Passes with ${a.name}, does not with ${b.name}`, c.appear),
    ...(c.stay.length > 0 ? [findings('Does not pass with either', c.stay)] : []),
  ];
  return `${sections.join('\n\n')}\n`;
}

const titles = ({ sides: [a, b] }: Pick<Compared, 'sides'>) =>
  ['', a.name, b.name, `${b.name} to ${a.name}`].map((title, i) => ({
    title,
    align: i === 0 ? ('left' as const) : ('right' as const),
  }));

/** A line for each quantity of a view. */
function figures({ sides }: Compared, view: View, at: readonly [At, At]): string {
  const [a, b] = sides.map(({ result }) => result.evaluation) as [Evaluation, Evaluation];
  return columns(
    titles({ sides }),
    view.read.map(quantityOf).map((name) => {
      const unit = unitAbove(name, a.design.units);
      const number = (e: Evaluation, place: At): number | null => {
        const value = e.value(name, place);
        return typeof value === 'number' ? value : null;
      };
      return [
        `${labelOf(name)}${unit === '' ? '' : `, ${unit}`}`.padEnd(ROOM),
        cellText(a, name, at[0]),
        cellText(b, name, at[1]),
        against(number(a, at[0]), number(b, at[1])),
      ];
    }),
  );
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
  return [
    title,
    ...changes.map(({ title: what, subjects }) => {
      const where = [...new Set(subjects.flat())].filter((subject) => subject !== 'feed');
      return bullet(`${what}${where.length > 0 ? ` (${where.join(', ')})` : ''}`);
    }),
  ].join('\n');
}
