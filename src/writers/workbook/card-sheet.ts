/** The test card: what to measure, where, what is acceptable, a cell for what was read, and the verdict on it. */

import { address } from '../../basis/address.ts';
import type { At } from '../../basis/quantity.ts';
import { convert, printUnit } from '../../basis/units.ts';
import type { Design } from '../../design/design.ts';
import { asEntered, type Cell, put, type Sheet, turned } from '../../engine/cell.ts';
import type { Grid } from '../../engine/translate.ts';
import { QUANTITIES, type QuantityName } from '../../model/model.ts';
import { SPREADS } from '../../model/readings.ts';
import { cardPlaces, samePlace } from '../../readings/card.ts';
import { atPosts, quantityOf, type Where } from '../../readings/expected.ts';
import { FINEST, FINEST_AMPS, senseOf } from '../../readings/instruments.ts';
import { instrumentWords, probesOf, subjectOf } from '../../readings/places.ts';
import { CARD } from '../../saved/mark.ts';
import { cellFor, unitOf } from './links.ts';
import { opening, type Page, words } from './page.ts';

export const TEST_CARD = 'TestCard';
const TITLES = [
  'Point',
  'Where',
  'Probes, or clamp',
  'Instrument',
  'Expected',
  'Instrument ±',
  'from',
  'to',
  'Measured',
  'Unit',
  'Verdict',
  'mΩ too much',
  'Supply from',
  'to',
] as const;
/** Columns of the card. */
export const CARD_COLUMN = {
  expected: 4,
  error: 5,
  low: 6,
  high: 7,
  measured: 8,
  unit: 9,
  verdict: 10,
  excess: 11,
  least: 12,
  most: 13,
} as const;
const WIDTHS = [11, 15, 50, 20, 10, 11, 9, 9, 10, 6, 10, 9, 9, 8];
const TOP = 4;

/** Nothing where the evaluation does not hold the quantities of the readings. */
export function cardPage(grid: Grid, design: Design): Page | null {
  if (!grid.placement.places.has('expected_average')) return null;
  const cells: Sheet = [];
  opening(
    cells,
    'Test card',
    'Engine warm, at the speed and supply of the point. Fill in what you read: the verdict follows. Meters show averages, scopes show peaks. Read the supply first: the rest is judged by it.',
  );
  TITLES.forEach((value, column) => {
    put(cells, TOP - 1, column, { role: 'label', value });
  });
  const rows = cardPlaces(design);
  // The posts are read with the meter, once at each point.
  const posts = (point: number | null): number | null => {
    const i = rows.findIndex((row) => atPosts(row) && row.instrument === 'meter' && row.point === point);
    return i < 0 ? null : TOP + i;
  };
  rows.forEach((where, i) => {
    rowOf(grid, design, where, TOP + i, posts(where.point)).forEach((cell, column) => {
      put(cells, TOP + i, column, cell);
    });
  });
  return {
    name: TEST_CARD,
    kind: 'shown',
    cells,
    widths: WIDTHS,
    frozen: [TOP, 2],
    repeated: 1,
    landscape: true,
    names: [
      [
        CARD,
        `${TEST_CARD}!${address(TOP, CARD_COLUMN.measured)}:${address(TOP + rows.length - 1, CARD_COLUMN.measured)}`,
      ],
    ],
    looks: [
      {
        rows: [TOP, TOP + rows.length - 1],
        columns: [CARD_COLUMN.measured, CARD_COLUMN.verdict],
        word: CARD_COLUMN.verdict,
      },
    ],
  };
}

function rowOf(grid: Grid, design: Design, where: Where, row: number, posts: number | null): Cell[] {
  const name = quantityOf(where);
  const unit = name === null ? 'V' : unitOf(name);
  const here = (column: number): string => address(row, column, false);
  const [m, low, high] = [here(CARD_COLUMN.measured), here(CARD_COLUMN.low), here(CARD_COLUMN.high)];
  const formula = (text: string): Cell => ({ role: 'formula', unit, formula: text });
  const supply = cellFor(grid, 'supply', { speed: where.point ?? 0 });
  const dip = cellFor(grid, 'point_dip', { point: where.point ?? 0 });
  const stated = where.instrument === 'least' ? `IF(ISNUMBER(${dip}),${dip},${supply})` : supply;
  const error = here(CARD_COLUMN.error);
  const least = posts === null ? null : address(posts, CARD_COLUMN.least);
  const most = posts === null ? null : address(posts, CARD_COLUMN.most);
  const moved = (which: 'low' | 'high', supply: string | null): string => {
    const plain = end(grid, name as QuantityName, where, which);
    if (supply === null || where.point === null || UNMOVED.includes(where.what)) return plain;
    if (where.what === 'supply') return `${plain}+${supply}-${stated}`;
    return `${plain}*MAX(0,1+(${supply}-${stated})/(${stated}-${cellFor(grid, 'driver_drop', {})}))`;
  };
  const tolerance = cellFor(grid, 'tolerance_supply', {});
  const off = `IF(${tolerance}=0,0,${errorFormula(design, where, m, unit)})`;
  const read = name === null && where.instrument === 'meter';
  return [
    words(
      where.what === 'resting'
        ? 'off'
        : where.point === null
          ? 'disconnected'
          : (design.points[where.point]?.name ?? ''),
    ),
    words(subjectOf(design, where)),
    words(probesOf(design, where)),
    words(instrumentWords(where)),
    formula(name === null ? stated : end(grid, name, where, 'expected')),
    formula(errorFormula(design, where, here(CARD_COLUMN.expected), unit)),
    formula(`MAX(0,${name === null ? `${stated}*(1-${tolerance})` : moved('low', least)}-${error})`),
    formula(`${name === null ? `${stated}*(1+${tolerance})` : moved('high', most)}+${error}`),
    {
      role: 'entry',
      value: enteredOf(design, where),
      unit,
    },
    { role: 'unit', value: printUnit(unit) },
    {
      role: 'formula',
      formula: `IF(ISNUMBER(${m}),IF(ISNUMBER(${low}),IF(${m}<${low},"FAIL",IF(${m}>${high},"FAIL","pass")),"UNKNOWN"),"")`,
    },
    excess(grid, where, m, here(CARD_COLUMN.expected)),
    ...(read
      ? [
          formula(`IF(ISNUMBER(${m}),${m}-${off},${stated}*(1-${tolerance}))`),
          formula(`IF(ISNUMBER(${m}),${m}+${off},${stated}*(1+${tolerance}))`),
        ]
      : [NOTHING, NOTHING]),
  ];
}

/** What the supply does not move, or takes long to. */
const UNMOVED: readonly Where['what'][] = ['temperature', 'dwell'];
const NOTHING: Cell = { role: 'member', value: null, unit: 'any' };

/** A column of the card as a range. */
export const cardRange = (design: Design, column: number): string =>
  `${TEST_CARD}!${address(TOP, column)}:${address(TOP + cardPlaces(design).length - 1, column)}`;

/** Of each row its place, the cell of what was measured, and what stood there when the workbook was made; null where there is no card. */
export function cardTaken(
  grid: Grid,
  design: Design,
): { where: Where; value: number | null; cell: string }[] | null {
  if (!grid.placement.places.has('expected_average')) return null;
  return cardPlaces(design).map((where, i) => ({
    where,
    value: enteredOf(design, where),
    cell: `${TEST_CARD}!${address(TOP + i, CARD_COLUMN.measured)}`,
  }));
}

/** Largest error of the instrument at what is expected: a share, and digits whose size steps up by tens. */
function errorFormula({ instruments }: Design, where: Where, x: string, unit: string): string {
  const { share, digits, counts, least } = instruments[senseOf(where.instrument)];
  const base =
    where.what === 'current'
      ? 'A'
      : where.what === 'resistance'
        ? 'ohm'
        : where.what === 'temperature'
          ? 'K'
          : 'V';
  const entered = (value: number): number => Number((value / convert(unit, base)).toPrecision(12));
  const finest = where.what === 'current' ? FINEST_AMPS : FINEST;
  const digit = (times: number): string =>
    times >= 1000
      ? String(entered(finest * times))
      : `IF(${x}<${entered(finest * times * counts)},${entered(finest * times)},${digit(times * 10)})`;
  const parts = [
    ...(share > 0 ? [`${share}*${x}`] : []),
    ...(digits > 0 ? [`${digits}*${digit(1)}`] : []),
    ...(least > 0 ? [String(entered(least))] : []),
  ];
  return `IF(ISNUMBER(${x}),${parts.join('+') || '0'},"")`;
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

/** What the design says was read there, in the unit of the row. */
function enteredOf({ measured }: Design, where: Where): number | null {
  const taken = measured.find((m) => samePlace(m, where))?.value ?? null;
  const name = quantityOf(where);
  return taken === null || name === null ? taken : asEntered(taken, QUANTITIES[name]);
}
