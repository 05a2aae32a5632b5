/** Every quantity of the model with its formula in words of the model, for the one who checks. */
import type { Quantity } from '../../basis/quantity.ts';
import { printCitation } from '../../basis/sources.ts';
import { printUnit } from '../../basis/units.ts';
import type { Sheet } from '../../engine/cell.ts';
import type { Grid } from '../../engine/translate.ts';
import { QUANTITIES, type QuantityName } from '../../model/model.ts';
import { opening, type Page, table, words } from './page.ts';

const WIDTHS = [22, 9, 34, 9, 12, 12, 58, 22, 32];
const TITLES = ['Name', 'Symbol', 'What it is', 'Unit', 'One for each', 'Sheet', 'Formula', 'Source', 'Note'];

export function quantitiesPage(grid: Grid): Page {
  const cells: Sheet = [];
  const about =
    'Every quantity, once. The names can be used in formulas; name[axis] stands for all members along that axis.';
  const top = opening(cells, 'Quantities', about);
  const laid = (Object.entries(QUANTITIES) as [QuantityName, Quantity][]).filter(
    ([name]) => grid.placement.places.has(name) || grid.placement.entries.has(name),
  );
  const rows = laid.map(([name, q]) =>
    [
      name,
      q.symbol,
      q.label,
      q.unit === 'text' ? 'words' : printUnit(q.unit),
      [...(q.per ?? []), ...(q.across === undefined ? [] : [q.across])].join(', '),
      grid.placement.places.get(name)?.sheet ?? '',
      formulaOf(q),
      q.source ? printCitation(q.source) : '',
      q.note ?? '',
    ].map(words),
  );
  table(
    cells,
    top,
    TITLES.map((title) => ({ title })),
    rows,
  );
  return {
    name: 'Quantities',
    kind: 'working',
    cells,
    widths: WIDTHS,
    frozen: [top + 1, 1],
    landscape: true,
    looks: [],
  };
}

function formulaOf(q: Quantity): string {
  switch (q.kind) {
    case 'formula':
      return q.formula;
    case 'input':
      return 'given in Inputs';
    case 'constant':
      return 'constant';
    case 'column':
      return 'table';
    case 'structure':
      return 'fixed by the layout of the feed';
  }
}
