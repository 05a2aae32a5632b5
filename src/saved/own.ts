/** What a person added to a workbook: rows of the sheet Own, and sheets of their own, as a design holds them. */
import { address } from '../basis/address.ts';
import type { Design, OwnRow } from '../design/design.ts';
import { MOST_ADDED, MOST_OWN } from '../design/schema-own.ts';
import { LONGEST, MOST_COLUMNS, MOST_ROWS, withRows } from '../own/formula.ts';
import { OWN_COLUMN, OWN_TOP, quoted, SIGNS } from '../own/rows.ts';
import type { Book, Found } from './book.ts';
import { strangeIn } from './book.ts';
import type { Edit, Plain } from './document.ts';
import { OWN_ROWS } from './mark.ts';
import type { Area } from './parts.ts';

/** What cannot be taken, with its cell. */
export interface OwnProblem {
  readonly cell: string;
  readonly found: string;
  readonly taken: string;
}

export interface Added {
  /** The changes of the text of the design; none where all is as it was. */
  readonly edits: readonly Edit[];
  readonly problems: readonly OwnProblem[];
  /** What is lost: cells that hold what a design cannot. */
  readonly behind: readonly string[];
}

type OwnPlain = Record<string, string | number>;

export function addedIn(book: Book, made: Design): Added {
  const problems: OwnProblem[] = [];
  const behind: string[] = [];
  const area = book.names.get(OWN_ROWS);
  const rows = area ? rowsIn(book, area, problems) : [];
  const sheets = strangeIn(book.names, book.sheets).map((sheet) => ({
    sheet,
    cells: cellsIn(book, sheet, behind),
  }));
  const count = sheets.reduce((sum, { cells }) => sum + Object.keys(cells).length, 0);
  if (count > MOST_ADDED)
    problems.push({
      cell: '',
      found: `${count} cells on sheets that were added`,
      taken: `takes at most ${MOST_ADDED}`,
    });
  if (rows.length > MOST_OWN)
    problems.push({ cell: '', found: `${rows.length} rows on Own`, taken: `takes at most ${MOST_OWN}` });
  // Rows that were left empty close up: the formulas go with the rows that they name.
  const to = new Map(rows.map(({ at }, i) => [at, OWN_TOP + i]));
  const moved = (formula: string, home: boolean): string =>
    area ? withRows(formula, area.sheet, home, (row) => to.get(row) ?? row) : formula;
  const own = rows.map(({ row }) => ({ ...row, formula: moved(String(row.formula), true) }));
  const added = Object.fromEntries(
    sheets.flatMap(({ sheet, cells }) => {
      const kept = Object.entries(cells).map(([at, content]): [string, string | number] => [
        at,
        typeof content === 'string' && content.startsWith('=') ? moved(content, false) : content,
      ]);
      return kept.length === 0 ? [] : [[sheet, Object.fromEntries(kept)]];
    }),
  );
  const was = {
    own: made.own.map(plainOf),
    added: Object.fromEntries([...made.added].map(([sheet, cells]) => [sheet, Object.fromEntries(cells)])),
  };
  const edit = (key: 'own' | 'added', now: Plain, empty: boolean): Edit[] =>
    JSON.stringify(now) === JSON.stringify(was[key]) ? [] : [{ key: [key], value: empty ? undefined : now }];
  return {
    edits: [...edit('own', own, own.length === 0), ...edit('added', added, Object.keys(added).length === 0)],
    problems,
    behind,
  };
}

/** A row as a design file has it. */
const plainOf = ({ label, formula, unit, sense, limit, words }: OwnRow): OwnPlain => ({
  label,
  ...(unit === '' ? {} : { unit }),
  ...(sense === null || limit === null ? {} : { [sense]: limit }),
  ...(words === '' ? {} : { words }),
  formula,
});

function rowsIn(book: Book, area: Area, problems: OwnProblem[]): { at: number; row: OwnPlain }[] {
  const found: { at: number; row: OwnPlain }[] = [];
  for (let at = area.top; at <= Math.min(area.bottom, area.top + 10 * MOST_OWN); at++) {
    const cell = (column: keyof typeof OWN_COLUMN): Found =>
      book.cell(area.sheet, at, area.left + OWN_COLUMN[column]);
    const name = (column: keyof typeof OWN_COLUMN): string =>
      `${quoted(area.sheet)}!${address(at, area.left + OWN_COLUMN[column], false, false)}`;
    const say = (column: keyof typeof OWN_COLUMN, taken: string): void => {
      problems.push({ cell: name(column), found: saidOf(cell(column)), taken });
    };
    const text = (column: 'label' | 'unit' | 'words'): string => {
      const { is, ...rest } = cell(column);
      if (is === 'formula' || is === 'other') say(column, 'takes words');
      return 'value' in rest ? String(rest.value) : '';
    };
    const value = cell('value');
    const [label, unit, words] = [text('label'), text('unit'), text('words')];
    const [sign, limit] = [cell('sense'), cell('limit')];
    if ([value, sign, limit].every(({ is }) => is === 'empty') && `${unit}${words}` === '') continue;
    if (value.is !== 'formula' && value.is !== 'number') say('value', 'takes a formula, or a number');
    const sense = sign.is === 'text' ? SIGNS[sign.value.trim()] : undefined;
    if (sign.is !== 'empty' && sense === undefined) say('sense', 'takes ≤ or ≥, or nothing');
    if (limit.is !== 'number' && (sense !== undefined || limit.is !== 'empty'))
      say('limit', 'takes a number, beside ≤ or ≥');
    const formula = value.is === 'formula' || value.is === 'number' ? String(value.value) : '';
    found.push({
      at,
      row: plainOf({
        label: label === '' ? formula.slice(0, 80) : label,
        unit,
        sense: sense ?? null,
        limit: limit.is === 'number' ? limit.value : null,
        words,
        formula,
      }),
    });
  }
  return found;
}

const saidOf = (found: Found): string =>
  found.is === 'empty'
    ? 'left empty'
    : found.is === 'formula'
      ? `the formula ${JSON.stringify(`=${found.value}`)}`
      : `found ${JSON.stringify(found.value)}`;

/** Cells of a sheet that a person added, as a design holds them. */
function cellsIn(book: Book, sheet: string, behind: string[]): Record<string, string | number> {
  const cells: Record<string, string | number> = Object.create(null);
  for (const { row, column, found } of book.cells(sheet)) {
    const at = address(row, column, false, false);
    const named = `${quoted(sheet)}!${at}`;
    if (row >= MOST_ROWS || column >= MOST_COLUMNS) behind.push(`${named}, which is too far out`);
    else if (found.is === 'other') behind.push(`${named} (${found.value})`);
    else if (found.is === 'text' && (found.value.length > LONGEST || found.value.startsWith('=')))
      behind.push(`${named}, a text that is too long or starts with an equals sign`);
    else if (found.is !== 'empty') cells[at] = found.is === 'formula' ? `=${found.value}` : found.value;
  }
  return cells;
}
