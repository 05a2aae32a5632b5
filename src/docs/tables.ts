/** The reference page of all published tables and constants, with the source and the status of each. */
import { type Quantities, quantity } from '../basis/quantity.ts';
import { printCitation, SOURCES, type Source, type Status } from '../basis/sources.ts';
import { type AnyTable, type Cell, sourceOf } from '../basis/table.ts';
import { convert, printUnit } from '../basis/units.ts';
import { ALL_CONSTANTS, ALL_TABLES } from '../data/index.ts';
import { code, digits, grid, MADE } from './markdown.ts';

/** What the word in brackets behind a source means. */
const STATUSES: Readonly<Record<Exclude<Status, 'design'>, string>> = {
  printed: 'read in a copy of the source itself',
  quoted: 'read in a second publication that quotes it',
  'from memory': 'remembered, not seen in print; how sure the memory is stands behind it',
  calculated: 'arithmetic on a stated formula',
  'common practice': 'what the trade does; no publication is named',
  arbitrary: 'a choice of ours that could be another one',
  physics: 'a law of physics, or arithmetic',
  definition: 'what a quantity is called here: nothing is claimed',
};

const HEAD = `# Published tables and constants

Every table and every constant that the model, the rules or the tests use, with its source. The word in brackets says
how the value was seen:

${grid(['status', 'meaning'], Object.entries(STATUSES))}

A value that was not seen in print is no standard: check it against the document that holds where you are. Where a
row or a column comes from elsewhere than its table, that is said beside it. A dash marks a cell that the source
leaves empty.`;

/** Text of `docs/tables.md`. */
export function tablesPage(): string {
  const tables = Object.entries(ALL_TABLES).map(([name, table]) => tableText(name, table));
  const constants = Object.entries(ALL_CONSTANTS).map(
    ([name, group]) => `### ${name}\n\n${constantsText(group)}`,
  );
  const sources = grid(
    ['key', 'designation', 'what it is about'],
    Object.entries(SOURCES).map(([key, s]: [string, Source]) => [key, s.publisher, s.title]),
  );
  const parts = [
    MADE,
    HEAD,
    '## Tables',
    ...tables,
    '## Constants',
    ...constants,
    '## Sources',
    'No edition stands here unless it is known.',
    sources,
  ];
  return `${parts.join('\n\n')}\n`;
}

function tableText(name: string, table: AnyTable): string {
  const columns = Object.entries(table.columns);
  const usual = printCitation(table.source);
  const own = table.rows.map((row) => {
    const seen = columns.filter(([, c]) => c.source === undefined).map(([key]) => sourceOf(table, row, key));
    return [...new Set(seen.map(printCitation))].filter((text) => text !== usual).join('; ');
  });
  const told = own.some(Boolean);
  const titles = columns.map(([, c]) => (bare(c.unit) ? c.label : `${c.label} [${printUnit(c.unit)}]`));
  const rows = table.rows.map((row, i) => [
    ...columns.map(([key]) => cellText(row[key] as Cell)),
    ...(told ? [own[i] as string] : []),
  ]);
  const elsewhere = columns.flatMap(([, c]) =>
    c.source === undefined ? [] : [`"${c.label}": ${printCitation(c.source)}.`],
  );
  return [
    `### ${table.title}`,
    [`${code(name)}. Source: ${usual}.`, ...elsewhere, table.note ?? ''].filter(Boolean).join(' '),
    grid([...titles, ...(told ? ['this row'] : [])], rows),
  ].join('\n\n');
}

const bare = (unit: string): boolean => unit === '1' || unit === 'text';

const cellText = (cell: Cell): string =>
  cell === null ? '–' : typeof cell === 'number' ? digits(cell) : cell;

const constantsText = (group: Quantities): string =>
  grid(
    ['symbol', 'id', 'what it is', 'value', 'source', 'note'],
    Object.entries(group).map(([id, declared]) => {
      const q = quantity(declared);
      const unit = q.shown ?? q.unit;
      const value = q.kind === 'constant' ? q.value : Number.NaN;
      const text =
        typeof value === 'string'
          ? value
          : `${digits(value * convert(q.unit, unit))} ${printUnit(unit)}`.trim();
      return [q.symbol, code(id), q.label, text, q.source ? printCitation(q.source) : '', q.note ?? ''];
    }),
  );
