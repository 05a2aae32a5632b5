/** Two feeds side by side, for the terminal. At most 80 columns. */
import { asRead, printNumber } from '../basis/print.ts';
import { type AtPoint, type Change, type Compared, FIGURE_NAMES, FIGURES } from '../readings/compare.ts';
import { columns, fold } from './columns.ts';

const WIDTH = 80;
const bullet = (text: string): string => fold(text, WIDTH, '    ').replace('    ', '  - ');
const VERDICTS = { pass: 'PASS', fail: 'FAIL', unknown: 'UNKNOWN' } as const;

export function compareReport(c: Compared): string {
  const [a, b] = c.sides;
  const head = c.sides.map(({ name, title, result }) =>
    fold(`${name}  ${VERDICTS[result.verdict]}  ${title}`, WIDTH, '   ').trimStart(),
  );
  const sections = [
    head.join('\n'),
    ...c.points.map((point) => `At ${point.name}\n${figures(c, point)}`),
    ...alone(c),
    `In all\n${totals(c)}`,
    `Parts\n${columns([{ title: a.name }, { title: b.name }], parts(c))}`,
    findings(`Does not pass with ${a.name}, passes with ${b.name}`, c.vanish),
    findings(`Passes with ${a.name}, does not with ${b.name}`, c.appear),
    ...(c.stay.length > 0 ? [findings('Does not pass with either', c.stay)] : []),
  ];
  return `${sections.join('\n\n')}\n`;
}

const titles = ({ sides: [a, b] }: Compared) =>
  ['', a.name, b.name, `${b.name} to ${a.name}`].map((title, i) => ({
    title,
    align: i === 0 ? ('left' as const) : ('right' as const),
  }));

const ROOM = 34;

function figures(c: Compared, { figures: of }: AtPoint): string {
  return columns(
    titles(c),
    FIGURE_NAMES.map((figure) => {
      const { label, unit, shown } = FIGURES[figure];
      return rowOf(label, of[figure], unit, shown);
    }),
  );
}

function rowOf(
  label: string,
  [a, b]: readonly [number | null, number | null],
  unit: string,
  shown: string,
): string[] {
  const [read, printed] = asRead(a, unit, shown);
  return [`${label}, ${printed}`.padEnd(ROOM), read, asRead(b, unit, shown)[0], against(a, b)];
}

/** `+12 %` */
export function against(a: number | null, b: number | null): string {
  if (a === null || b === null || a === 0) return '–';
  const percent = (b / a - 1) * 100;
  const text = printNumber(Math.abs(percent), 2);
  return Number(text) === 0 ? '0 %' : `${percent < 0 ? '−' : '+'}${text} %`;
}

const totals = (c: Compared): string =>
  columns(titles(c), [
    rowOf('Drop of the worst path', c.drop, 'V', 'V'),
    rowOf('Copper', c.copper, 'kg', 'g'),
  ]);

const parts = ({ parts: [a, b] }: Compared): string[][] =>
  Array.from({ length: Math.max(a.length, b.length) }, (_, i) => [a[i] ?? '', b[i] ?? '']);

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
