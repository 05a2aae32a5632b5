/** Makes the sheet of a page, ready to be written: values, looks, heights, and how it lies on paper. */
import { address } from '../../basis/address.ts';
import type { Cell } from '../../engine/cell.ts';
import type { Value } from '../../engine/evaluate.ts';
import { INPUTS } from '../../engine/sheets.ts';
import type { Laid } from '../../engine/spreadsheet.ts';
import type { Condition, Row, Sheet, Style, Cell as Written } from '../../ooxml/book.ts';
import { OWN } from '../../own/rows.ts';
import { height, roomIn } from './measure.ts';
import { namings } from './namings.ts';
import type { Look, Page } from './page.ts';
import { printOf } from './paper.ts';
import { styleOf, TAKEN, VERDICT_LOOKS } from './styles.ts';
import { clean } from './text.ts';
import { senses, validations } from './validation.ts';

const TABS = { shown: 'FF1F2933', inputs: 'FFE0B000', own: 'FF1F4E8C' } as const;

/** `workings` says whether the sheets of the calculation are in sight. */
export function sheetOf(page: Page, e: Laid, workings: boolean): Sheet {
  const { name, kind, cells, widths, frozen, looks, taken = [], charts = [] } = page;
  return {
    name,
    ...((kind === 'working' || page.aside) && !workings ? { hidden: true as const } : {}),
    ...(kind === 'working' ? {} : { tab: TABS[kind] }),
    lines: kind === 'working' || kind === 'own',
    ...(kind === 'own' ? { open: true as const } : {}),
    rows: cells.map((_, row) => rowOf(page, row, e)),
    widths,
    frozen,
    conditions: [...looks.map(conditionOf), ...taken.map(takenLook)],
    validations:
      name === INPUTS ? validations(e.grid, e.design) : name === OWN ? [senses(e.design)] : namings(cells),
    charts,
    print: printOf(page, e.design),
  };
}

function rowOf(page: Page, r: number, e: Laid): Row | undefined {
  let tallest = 0;
  // `from` passes over the places without a cell, too.
  const cells = Array.from(page.cells[r] ?? [], (cell, c): Written | undefined => {
    if (cell === undefined) return undefined;
    const value = shownIn(cell, page.name, r, c, e);
    const text = typeof value === 'string' ? value : '';
    const above = isHeading(cell) && numbersBelow(page, r, c, e);
    const { formula, span = 1 } = cell;
    tallest = Math.max(tallest, height(cell, text, widthOf(page, c, span), c === 0));
    return {
      value: typeof value === 'string' ? clean(value) : value,
      ...(formula === undefined ? {} : { formula }),
      style: styled(cell, isNumber(cell, value), above, c === 0),
      span,
    };
  });
  if (tallest === 0) return undefined;
  const { fitted: [first, last] = [1, 0] } = page;
  const hidden = page.hidden?.has(r) ? { hidden: true as const } : {};
  return { cells, height: tallest, fitted: r >= first && r <= last, ...hidden };
}

/** Styles that were asked for before, by what decides them. */
const known = new Map<string, Style>();

function styled(cell: Cell, number: boolean, above: boolean, first: boolean): Style {
  const key = `${cell.role} ${cell.unit ?? ''} ${number} ${above} ${first}`;
  const found = known.get(key) ?? styleOf(cell, number, above, first);
  known.set(key, found);
  return found;
}

const shownIn = (cell: Cell, name: string, row: number, column: number, e: Laid): Value =>
  cell.formula === undefined ? (cell.value ?? null) : (e.cached(name, row, column) ?? '');

/** A result or an entry that is empty now may become a number later: its unit tells. */
const isNumber = ({ formula, role, unit }: Cell, value: Value): boolean =>
  typeof value === 'number' ||
  // Among numbers a word may stand in place of one.
  unit === 'any' ||
  unit === 'exact' ||
  unit === 'margin' ||
  ((formula !== undefined || role === 'entry') &&
    (value === '' || value === null) &&
    unit !== undefined &&
    unit !== 'text');

const isHeading = ({ role }: Cell): boolean => role === 'label' || role === 'unit' || role === 'symbol';

/** Whether the next values under a heading are numbers: then it stands at the right, as they do. */
function numbersBelow(page: Page, row: number, column: number, e: Laid): boolean {
  for (let r = row + 1; r < page.cells.length; r++) {
    const cell = page.cells[r]?.[column];
    // Among the headings of the workings a row may have a gap.
    if (cell === undefined && r < page.frozen[0]) continue;
    if (cell === undefined) return false;
    if (isHeading(cell) || cell.role === 'source') continue;
    const value = shownIn(cell, page.name, r, column, e);
    if (isNumber(cell, value)) return true;
    if (value !== null && value !== '') return false;
  }
  return false;
}

const widthOf = ({ widths }: Page, column: number, span: number): number =>
  roomIn(widths.slice(column, column + span));

/** Makes cells follow the words of a verdict. */
function conditionOf({ rows, columns, word }: Look): Condition {
  const deciding = address(rows[0], word, false);
  return {
    where: `${address(rows[0], columns[0], false, false)}:${address(rows[1], columns[1], false, false)}`,
    // Upper and lower case count as the same in a comparison of texts.
    looks: Object.entries(VERDICT_LOOKS).map(([text, look]) => [`EXACT(${deciding},"${text}")`, look]),
  };
}

/** An entry is grey as long as it holds what was taken for it. */
function takenLook({ row, column, value }: NonNullable<Page['taken']>[number]): Condition {
  const where = address(row, column, false, false);
  const same = typeof value === 'number' ? `${where}=${value}` : `EXACT(${where},"${value}")`;
  return { where, looks: [[same, TAKEN]] };
}
