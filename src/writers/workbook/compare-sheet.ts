/**
 * Two feeds side by side, as a sheet in the workbook of the second one. A workbook holds one model: the figures of the
 * first feed stand as numbers, those of the second follow its inputs, and so does the difference.
 */

import { address } from '../../basis/address.ts';
import type { At } from '../../basis/quantity.ts';
import { convert, printUnit } from '../../basis/units.ts';
import type { Design } from '../../design/design.ts';
import { type Cell, put, type Sheet } from '../../engine/cell.ts';
import type { Grid } from '../../engine/translate.ts';
import { open as isOpen } from '../../findings/finding.ts';
import type { Result } from '../../findings/result.ts';
import { heading as titleOf } from '../../findings/words.ts';
import type { QuantityName } from '../../model/model.ts';
import { FIGURE_NAMES, FIGURES, type Figure, figureOf, pointOf } from '../../readings/compare.ts';
import { cellFor, turned } from './links.ts';
import { opening, type Page, section, words } from './page.ts';

const NAME = 'Compare';
const WIDTHS = [22, 38, 12, 14, 14, 16];
const TITLES = ['Point', 'Figure', 'Unit', 'First', 'Second', 'Second to first'];

/** The page; `firstResult` is that of the feed that the workbook's own is set beside. */
export function comparePage(
  grid: Grid,
  design: Design,
  firstResult: Result,
  names: readonly [string, string],
): Page {
  const first = firstResult.evaluation;
  const cells: Sheet = [];
  const row = opening(
    cells,
    'Two feeds side by side',
    'First: as computed when this workbook was made. Second: the feed of this workbook, live.',
  );
  put(cells, row, 0, words('First'));
  put(cells, row, 1, { ...words(names[0]), span: 5 });
  put(cells, row + 1, 0, words('Second'));
  put(cells, row + 1, 1, { ...words(names[1]), span: 5 });
  let at = section(cells, row + 3, 'At the points that both have', WIDTHS.length);
  TITLES.forEach((value, column) => {
    put(cells, at, column, { role: 'label', value });
  });
  at += 1;
  design.points.forEach(({ name }, point) => {
    const other = pointOf(first, name);
    if (other < 0) return;
    for (const figure of FIGURE_NAMES) {
      lineOf(
        at,
        name,
        FIGURES[figure],
        figureOf(first, figure, other),
        live(grid, design, figure, point),
      ).forEach((cell, column) => {
        put(cells, at, column, cell);
      });
      at += 1;
    }
  });
  at = section(cells, at + 1, 'In all', WIDTHS.length);
  const totals: readonly [string, string, string, QuantityName][] = [
    ['Drop of the worst path', 'V', 'V', 'worst_drop'],
    ['Copper', 'kg', 'g', 'copper_total'],
  ];
  for (const [label, unit, shown, quantity] of totals) {
    lineOf(at, '', { label, unit, shown }, first.number(quantity), cellFor(grid, quantity, {})).forEach(
      (cell, column) => {
        put(cells, at, column, cell);
      },
    );
    at += 1;
  }
  const open = firstResult.findings.filter(isOpen);
  at = section(
    cells,
    at + 1,
    'What did not pass with the first; the sheet Findings has the second',
    WIDTHS.length,
  );
  for (const found of open.length === 0 ? [null] : open) {
    put(cells, at, 0, words(found === null ? '' : found.verdict));
    put(cells, at, 1, { ...words(found === null ? 'nothing' : titleOf(found)), span: 5 });
    at += 1;
  }
  return {
    name: NAME,
    kind: 'shown',
    cells,
    widths: WIDTHS,
    frozen: [3, 0],
    landscape: false,
    looks: [],
  };
}

function lineOf(
  row: number,
  point: string,
  { label, unit, shown }: { readonly label: string; readonly unit: string; readonly shown: string },
  first: number | null,
  second: string,
): Cell[] {
  const [a, b] = [address(row, 3, false), address(row, 4, false)];
  return [
    words(point),
    words(label),
    { role: 'unit', value: printUnit(shown) || '–' },
    { role: 'given', value: first === null ? null : first * convert(unit, shown), unit: shown },
    { role: 'formula', formula: turned(second, unit, shown), unit: shown },
    {
      role: 'formula',
      formula: `IF(ISNUMBER(${a}),IF(ISNUMBER(${b}),IF(${a}=0,"",${b}/${a}),""),"")`,
      unit: 'any',
    },
  ];
}

/** The figure of the workbook's own feed as a formula. */
function live(grid: Grid, design: Design, figure: Figure, point: number): string {
  const cell = (name: QuantityName, at: At): string => cellFor(grid, name, at);
  const coils = design.coils.map((_, coil) => coil);
  const supplies = coils.map((coil) => cell('coil_supply', { coil, point }));
  // Of the coil with the least supply, the first such one.
  const worst = (name: QuantityName): string =>
    coils
      .slice(0, -1)
      .reduceRight(
        (rest, coil) =>
          `IF(${supplies[coil]}=MIN(${supplies.join(',')}),${cell(name, { coil, point })},${rest})`,
        cell(name, { coil: coils.at(-1) as number, point }),
      );
  switch (figure) {
    case 'average':
      return cell('total_average', { point });
    case 'effective':
      return cell('effective', { wire: 0, point });
    case 'peak':
      return cell('peak_current', { wire: 0, point });
    case 'supply':
      return `MIN(${supplies.join(',')})`;
    case 'energy':
      return worst('coil_energy');
    case 'kept':
      return worst('energy_kept');
    case 'dwell':
      return worst('coil_winning_dwell');
    case 'heat':
      return design.wires
        .map((_, wire) => `${cell('wire_ohm', { wire })}*${cell('effective', { wire, point })}^2`)
        .join('+');
  }
}
