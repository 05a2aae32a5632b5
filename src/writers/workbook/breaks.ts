/** Where a page ends on paper, so that no table and no chart is cut if it fits on a page of its own. */
import type { Sheet } from '../../engine/cell.ts';
import { BESIDE, DIGIT, height, roomIn } from './measure.ts';
import type { Page } from './page.ts';
import { MARGINS } from './paper.ts';

/** Sizes of the two papers, the shorter side first [pt]. */
const PAPERS = [
  [595, 842],
  [612, 792],
] as const;
const POINTS_PER_INCH = 72;
/** Height of a row without cells [pt]. */
const EMPTY = 15;
/** Programs differ a little in how tall they draw a row. */
const SAFE = 0.98;

type Laid = Pick<Page, 'cells' | 'widths' | 'frozen' | 'repeated' | 'landscape' | 'hidden'>;

/** Height of a row, as far as its texts tell; results of formulas count as one line [pt]. */
function tall(cells: Sheet, widths: readonly number[], row: number): number {
  const own = cells[row]?.map((cell, column) => {
    if (cell === undefined || column >= widths.length) return 0;
    const width = roomIn(widths.slice(column, column + (cell.span ?? 1)));
    return height(cell, typeof cell.value === 'string' ? cell.value : '', width, column === 0);
  });
  return Math.max(0, ...(own ?? []).filter((points) => points !== undefined)) || EMPTY;
}

/** By how much columns are made smaller to stand beside each other on a paper. */
function scaleOn(
  [short, long]: readonly [number, number],
  widths: readonly number[],
  landscape: boolean,
): number {
  const wide = widths.reduce((sum, width) => sum + width * DIGIT + BESIDE, 0);
  const across = (landscape ? long : short) - POINTS_PER_INCH * (MARGINS.left + MARGINS.right);
  return Math.min(1, across / wide);
}

/** The same on the narrower of the two papers. */
export const scaleOf = (widths: readonly number[], landscape: boolean): number =>
  Math.min(...PAPERS.map((paper) => scaleOn(paper, widths, landscape)));

/** Height that is free for what follows the frozen rows on the first page, and the repeated ones on others, on the less tall of the two papers [pt]. */
function rooms({ cells, widths, frozen: [top], repeated = top, landscape }: Laid): [number, number] {
  const free = PAPERS.map((paper) => {
    const h = landscape ? paper[0] : paper[1];
    return (h - POINTS_PER_INCH * (MARGINS.top + MARGINS.bottom)) / scaleOn(paper, widths, landscape);
  });
  const above = (from: number): number => {
    let sum = 0;
    for (let row = from; row < top; row++) sum += tall(cells, widths, row);
    return Math.min(...free) * SAFE - sum;
  };
  return [above(0), above(top - repeated)];
}

/** Rows before which a page ends; `starts` are the first rows of what should stay together, in order. */
export function breaksOf(page: Laid, starts: readonly number[]): number[] {
  const [first, others] = rooms(page);
  const breaks: number[] = [];
  let used = 0;
  starts.forEach((start, i) => {
    let own = 0;
    for (let row = start; row < (starts[i + 1] ?? page.cells.length); row++)
      if (!page.hidden?.has(row)) own += tall(page.cells, page.widths, row);
    const most = breaks.length === 0 ? first : others;
    if (i > 0 && used + own > most && used > 0) {
      breaks.push(start);
      used = 0;
    }
    used = (used + own) % (breaks.length === 0 ? first : others);
  });
  return breaks;
}
