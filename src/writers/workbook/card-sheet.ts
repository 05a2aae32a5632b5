/** The test card: what to measure, where, what is acceptable, a cell for what was read, and the verdict on it. */

import { address } from '../../basis/address.ts';
import type { At } from '../../basis/quantity.ts';
import { printUnit } from '../../basis/units.ts';
import type { Design, Measured } from '../../design/design.ts';
import { asEntered, type Cell, put, type Sheet } from '../../engine/cell.ts';
import type { Grid } from '../../engine/translate.ts';
import { QUANTITIES, type QuantityName } from '../../model/model.ts';
import { SPREADS } from '../../model/readings.ts';
import { onCard } from '../../readings/card.ts';
import { atPosts, placesOf, quantityOf, type Where } from '../../readings/expected.ts';
import { FINEST } from '../../readings/judge.ts';
import { instrumentWords, probesOf, subjectOf } from '../../readings/places.ts';
import { CARD } from '../../saved/mark.ts';
import { cellFor, turned, unitOf } from './links.ts';
import { opening, type Page, words } from './page.ts';

const NAME = 'TestCard';
const TITLES = [
  'Point',
  'Where',
  'Probes, or clamp',
  'Instrument',
  'Expected',
  'from',
  'to',
  'Measured',
  'Unit',
  'Verdict',
  'mΩ too much',
] as const;
const COLUMN = { expected: 4, low: 5, high: 6, measured: 7, unit: 8, verdict: 9, excess: 10 } as const;
const WIDTHS = [13, 16, 62, 23, 11, 10, 10, 12, 7, 11, 11];
const TOP = 4;

/** Nothing where the evaluation does not hold the quantities of the readings. */
export function cardPage(grid: Grid, design: Design): Page | null {
  if (!grid.placement.places.has('expected_average')) return null;
  const cells: Sheet = [];
  opening(
    cells,
    'Test card',
    'Engine warm, at the speed and the supply of the point. Fill in what was read: the verdict follows. Meters show averages, scopes peaks.',
  );
  TITLES.forEach((value, column) => {
    put(cells, TOP - 1, column, { role: 'label', value });
  });
  const rows = placesOf(design).filter((where) => onCard(design, where));
  rows.forEach((where, i) => {
    rowOf(grid, design, where, TOP + i).forEach((cell, column) => {
      put(cells, TOP + i, column, cell);
    });
  });
  return {
    name: NAME,
    kind: 'shown',
    cells,
    widths: WIDTHS,
    frozen: [TOP, 2],
    landscape: true,
    names: [
      [CARD, `${NAME}!${address(TOP, COLUMN.measured)}:${address(TOP + rows.length - 1, COLUMN.measured)}`],
    ],
    looks: [
      {
        rows: [TOP, TOP + rows.length - 1],
        columns: [COLUMN.measured, COLUMN.verdict],
        word: COLUMN.verdict,
      },
    ],
  };
}

function rowOf(grid: Grid, design: Design, where: Where, row: number): Cell[] {
  const name = quantityOf(where);
  const unit = name === null ? 'V' : unitOf(name);
  const here = (column: number): string => address(row, column, false);
  const [m, low, high] = [here(COLUMN.measured), here(COLUMN.low), here(COLUMN.high)];
  const value = (which: 'expected' | 'low' | 'high'): Cell => ({
    role: 'formula',
    unit,
    formula:
      name === null ? cellFor(grid, 'supply', { speed: where.point ?? 0 }) : end(grid, name, where, which),
  });
  const taken = takenOf(design, where);
  const finest = FINEST[where.what];
  const slack = (sign: '-' | '+'): string =>
    name === null || finest === 0 ? '' : `${sign}${asEntered(finest, QUANTITIES[name])}`;
  return [
    words(where.point === null ? 'disconnected' : (design.points[where.point]?.name ?? '')),
    words(subjectOf(design, where)),
    words(probesOf(design, where)),
    words(instrumentWords(where)),
    value('expected'),
    value('low'),
    value('high'),
    {
      role: 'entry',
      value: taken === null ? null : name === null ? taken : asEntered(taken, QUANTITIES[name]),
      unit,
    },
    { role: 'unit', value: printUnit(unit) },
    {
      role: 'formula',
      formula: atPosts(where)
        ? `IF(ISNUMBER(${m}),IF(ABS(${m}-${low})<=${low}/50,"pass","FAIL"),"")`
        : `IF(ISNUMBER(${m}),IF(ISNUMBER(${low}),IF(${m}<${low}${slack('-')},"FAIL",IF(${m}>${high}${slack('+')},"FAIL","pass")),"UNKNOWN"),"")`,
    },
    excess(grid, where, m, here(COLUMN.expected)),
  ];
}

/** Least or largest of the three cases: a supply is least where the currents are largest. */
function end(grid: Grid, name: QuantityName, where: Where, which: 'expected' | 'low' | 'high'): string {
  const at = (spread: number): At => ({
    spread,
    ...(where.wire === null ? {} : { wire: where.wire }),
    ...(where.coil === null ? {} : { coil: where.coil }),
    ...(where.point === null ? {} : { point: where.point }),
  });
  const cell = (spread: number): string => cellFor(grid, name, at(spread));
  const index = SPREADS.indexOf(which);
  const falls = where.what === 'supply' && which !== 'expected';
  return turned(cell(falls ? SPREADS.length - 1 - index : index), QUANTITIES[name].unit, unitOf(name));
}

/** What the reading says of the resistance of the run alone, the current as expected [mΩ]. */
function excess(grid: Grid, where: Where, m: string, expected: string): Cell {
  const { what, instrument, wire, point } = where;
  const when = (formula: string): Cell => ({
    role: 'formula',
    unit: 'mohm',
    formula: `IF(ISNUMBER(${m}),${formula},"")`,
  });
  if (what === 'resistance') return when(`${m}-${expected}`);
  if (what !== 'drop' || wire === null || point === null) return { role: 'member', value: null };
  const spread = SPREADS.indexOf('expected');
  const amps = cellFor(grid, instrument === 'meter' ? 'expected_average' : 'expected_peak', {
    spread,
    wire,
    point,
  });
  // Millivolts over amperes.
  return when(`IF(${amps}>0,(${m}-${expected})/${amps},"")`);
}

/** What the design says was read there. */
function takenOf({ measured }: Design, where: Where): number | null {
  const same = (m: Measured): boolean =>
    (['what', 'wire', 'coil', 'point', 'instrument'] as const).every((key) => m[key] === where[key]);
  return measured.find(same)?.value ?? null;
}
