/** A study on the terminal: where something turns, then the table. */
import type { Row, Study } from '../study/study.ts';
import { type Turn, turnsOf, VERDICT } from '../study/turns.ts';
import { bullet, columns, tableText } from './columns.ts';

/** Rows that are printed; more of them go into a file. Arbitrary. */
const MOST_ROWS = 60;
/** Lines of turns that are told. */
const MOST_TURNS = 30;

/** Ends with a line break. */
export function studyReport(study: Study): string {
  const { design, vary, rows } = study;
  const counted = (['pass', 'fail', 'unknown', 'refused'] as const)
    .map((verdict) => [verdict, rows.filter((row) => row.verdict === verdict).length] as const)
    .filter(([, count]) => count > 0)
    .map(([verdict, count]) => `${count} ${verdict}`);
  const what = vary.map(({ path, values }) => `${path} (${values.length})`).join(' × ');
  const parts = [
    `${design.title}\n${what}: ${rows.length} points, ${counted.join(', ')}`,
    turnsText(study),
    ...(vary.length > 1 ? [mapText(study)] : []),
    rows.length <= MOST_ROWS
      ? tableText(tableOf(study))
      : `  The table has ${rows.length} rows: --out FILE.csv writes it.`,
    ...refusals(rows),
  ];
  return `${parts.filter((part) => part !== '').join('\n\n')}\n`;
}

/** What turns, in the order of the values: `Size, main: 8 SAE; from 2.5 m on 6 SAE; from 5 m on 4 SAE`. */
function turnsText(study: Study): string {
  // Over two inputs the map shows more than sentences could; there only the verdict is told.
  const turns = turnsOf(study).filter(({ what }) => study.vary.length === 1 || what === VERDICT);
  const kept = study.vary.length === 1 ? 'Sizes, ratings and verdict are' : 'The verdict is';
  if (turns.length === 0) return `${kept} the same at all points.`;
  const groups = new Map<string, Turn[]>();
  for (const turn of turns) {
    const key = `${turn.what}${turn.beside === null ? '' : ` at ${turn.beside}`}`;
    groups.set(key, [...(groups.get(key) ?? []), turn]);
  }
  const lines = [...groups].slice(0, MOST_TURNS).map(([what, own]) => {
    const first = own[0] as Turn;
    return bullet(
      `${what}: ${first.before}; ${own.map(({ value, after }) => `from ${value} on ${after}`).join('; ')}`,
    );
  });
  const more = groups.size > MOST_TURNS ? [`  ${groups.size - MOST_TURNS} more; --json tells all`] : [];
  return ['Where it turns', ...lines, ...more].join('\n');
}

const MARKS: Readonly<Record<Row['verdict'], string>> = {
  pass: 'pass',
  fail: 'FAIL',
  unknown: '?',
  refused: '–',
};

/** The verdict at each point: the first input downward, the second across. */
function mapText({ vary, rows }: Study): string {
  const [down, along] = vary as [Study['vary'][number], Study['vary'][number]];
  const across = along.values.length;
  if (across > MOST_ACROSS) return '';
  return columns(
    [{ title: down.path }, ...along.values.map((title) => ({ title, align: 'right' as const }))],
    down.values.map((value, i) => [
      value,
      ...rows.slice(i * across, (i + 1) * across).map(({ verdict }) => MARKS[verdict]),
    ]),
  );
}
/** Columns of the map that a terminal holds. */
const MOST_ACROSS = 8;

const tableOf = ({ vary, shown, rows }: Study) => ({
  heads: [
    ...vary.map(({ path }) => ({ label: path, unit: '', words: true })),
    { label: 'Verdict', unit: '', words: true },
    ...shown.map(({ label, unit, steps }) => ({ label, unit, words: steps && unit === '' })),
  ],
  rows: rows.map(({ values, verdict, texts }) => [...values, MARKS[verdict], ...texts]),
});

/** Why there is no design at some points, each reason once. */
function refusals(rows: readonly Row[]): string[] {
  const why = [...new Set(rows.filter(({ verdict }) => verdict === 'refused').flatMap((row) => row.why))];
  return why.length === 0
    ? []
    : [['There is no design at some points', ...why.slice(0, 4).map(bullet)].join('\n')];
}
