/** What the sheets of the kit have in common. */
import { printSize } from '../../basis/print.ts';
import { inUnit } from '../../basis/shown.ts';
import type { Cell, Sheet } from '../../engine/cell.ts';
import { put } from '../../engine/cell.ts';
import type { Grid } from '../../engine/translate.ts';
import { laidOut } from '../../findings/judged.ts';
import { JUDGED_COLUMNS } from '../../findings/sheet.ts';
import { judgedColumn } from '../../writers/workbook/judged.ts';
import { opening, words } from '../../writers/workbook/page.ts';
import { type Job, shortDigest } from '../job.ts';
import { placesOf, systemOf } from '../lengths.ts';

export const formula = (text: string, unit?: string): Cell => ({
  role: 'formula',
  formula: text,
  ...(unit === undefined ? {} : { unit }),
});
export const given = (value: number | string | null, unit?: string): Cell => ({
  role: 'given',
  value,
  ...(unit === undefined ? {} : { unit }),
});
/** How lengths of a form stand on a sheet: in which unit, as which kind of number, and as what of a formula in metres. */
export interface Ruler {
  readonly unit: string;
  /** Unit by which the sheet shows as many decimals as the papers. */
  readonly shown: string;
  /** A length [m]; null is a place to write on. */
  readonly cell: (metres: number | null) => Cell;
  readonly of: (metres: string) => string;
}

const SHOWN: Readonly<Record<string, string>> = {
  'piece mm': 'cut mm',
  'piece in': 'cut in',
  'small in': 'cut in',
  'height mm': 'crimp mm',
  'height in': 'crimp in',
  'reel ft': 'reel ft',
};
/** From metres; a foot is 0.3048 m and an inch a twelfth of it, exactly. */
const FROM_METRES: Readonly<Record<string, string>> = { m: '', mm: '*1000', in: '/0.0254', ft: '/0.3048' };

export function ruler({ result }: Job, form: 'piece' | 'small' | 'height' | 'reel'): Ruler {
  const { unit } = placesOf(form, systemOf(result.evaluation.design.kit.units));
  const shown = SHOWN[`${form} ${unit}`] ?? unit;
  return {
    unit,
    shown,
    cell: (metres) => (metres === null ? open : given(inUnit(metres, 'm', unit), shown)),
    of: (metres) => `${metres}${FROM_METRES[unit]}`,
  };
}

/** A place to write on. */
export const open: Cell = { role: 'entry', value: null };
export const size = (gauge: string | null): Cell => words(printSize(gauge ?? ''));

/** Title, the loud word when the design does not pass, what the sheet is. */
export function begin(
  cells: Sheet,
  title: string,
  about: string,
  job: Job,
  grid: Grid,
  span: number,
): number {
  const { design } = job.result.evaluation;
  const row = opening(cells, `${title}: ${design.title}`, about);
  const verdicts = judgedColumn(laidOut(grid, design).length, JUDGED_COLUMNS.verdict);
  put(cells, row, 0, {
    role: 'title',
    span,
    formula: `IF(COUNTIF(${verdicts},"fail")+COUNTIF(${verdicts},"unknown")>0,"NOT RELEASED FOR BUILDING: see Findings","All checks of the calculation pass")`,
  });
  put(cells, row + 1, 0, { role: 'text', value: `Design ${shortDigest(job)}`, span });
  return row + 3;
}

export const AT_WRITING =
  'Rows, groups and texts are those of the design as it was written; numbers follow the inputs. After a change, make the kit again.';

/** A sheet before it is evaluated. */
export interface KitSheet {
  readonly cells: Sheet;
  readonly widths: readonly number[];
  readonly landscape: boolean;
}
