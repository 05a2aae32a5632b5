/**
 * The inputs that matter most and what follows from them, as designed beside as it is now. What was designed is kept as
 * values; what is now is live. No second model: the cells compare the one there is with what it once came to.
 */
import { address } from '../../basis/address.ts';
import { printSize } from '../../basis/print.ts';
import { type At, bareLabel, type Quantity } from '../../basis/quantity.ts';
import { convert, printUnit } from '../../basis/units.ts';
import type { Design } from '../../design/design.ts';
import { type Cell, entryUnit, inputValue, put, type Sheet } from '../../engine/cell.ts';
import { entryAddress } from '../../engine/cells.ts';
import { CHANGED } from '../../engine/entered/sheet.ts';
import { type Evaluation, evaluate } from '../../engine/evaluate.ts';
import type { Grid } from '../../engine/translate.ts';
import { findings, overall } from '../../findings/read.ts';
import { QUANTITIES, type QuantityName } from '../../model/model.ts';
import { ownOf } from '../../own/evaluate.ts';
import { hasOwn } from '../../own/found.ts';
import { VERDICT_WORDS } from '../verdict.ts';
import { VERDICT_CELL } from './feed-sheet.ts';
import { live } from './figures.ts';
import { heading, unitOf } from './links.ts';
import { type Column, opening, type Page, section, table, warned, words } from './page.ts';
import type { Weighed } from './weighed.ts';

const NAME = 'WhatIf';
const WIDTHS = [46, 20, 15, 15, 8, 4, 15];
const WIDE = WIDTHS.length;
const AT = { kept: 2, now: 3 } as const;

export function whatIfPage(grid: Grid, design: Design, weighed: Weighed | null): Page {
  const cells: Sheet = [];
  const first = opening(
    cells,
    'What if',
    'Change any input on Inputs and compare: as designed, and as it is now. ≠ marks what differs.',
  );
  warned(cells);
  const e = evaluate(design);
  let row = section(cells, first, 'What follows', WIDE);
  row = table(cells, row, COLUMNS('Figure'), numbered(results(grid, e, weighed), row + 1));
  row = section(cells, row, 'Inputs that matter most', WIDE);
  row = table(cells, row, COLUMNS('Input', 'Change it at'), numbered(inputs(grid, design), row + 1));
  put(cells, row - 1, 0, {
    role: 'text',
    formula: `IF(${CHANGED}=0,"No input differs from the design.",IF(${CHANGED}=1,"One input differs from the design, in all.",${CHANGED}&" inputs differ from the design, in all."))`,
    span: WIDE,
  });
  return {
    name: NAME,
    kind: 'shown',
    cells,
    widths: WIDTHS,
    frozen: [2, 0],
    landscape: false,
    tall: 1,
    looks: [],
  };
}

const COLUMNS = (what: string, ...where: string[]): Column[] =>
  [what, 'of', 'As designed', 'Now', 'Unit', '', ...where].map((title) => ({ title }));

/** Adds the mark of what differs, which names the cells of its row; the first of them stands in row `top`. */
const numbered = (rows: readonly Cell[][], top: number): Cell[][] =>
  rows.map((cells, i) => {
    const [kept, now] = [AT.kept, AT.now].map((column) => address(top + i, column));
    const same = `IF(ISNUMBER(${kept})*ISNUMBER(${now}),ABS(${kept}-${now})<=1e-9*ABS(${kept}),EXACT(${kept},${now}))`;
    const mark: Cell = { role: 'warning', formula: `IF(${same},"","≠")` };
    return [...cells.slice(0, 5), mark, ...cells.slice(5)];
  });

/** Words stand at the right, as the numbers above and below them do. */
const given = (value: number | string | null, unit = 'exact'): Cell => ({
  role: 'given',
  value: value ?? '',
  unit: typeof value === 'string' ? 'exact' : unit,
});

/** What people ask first. */
const FIGURES: readonly QuantityName[] = ['worst_drop', 'least_kept', 'worst_total', 'copper_total'];

function results(grid: Grid, e: Evaluation, weighed: Weighed | null): Cell[][] {
  const { design } = e;
  const own = hasOwn(design) ? ownOf(e).found : [];
  const ruled = design.unknowns.length > 0 ? [] : findings(e);
  const verdict = VERDICT_WORDS[overall([...ruled, ...own, ...(weighed === null ? [] : [weighed])])];
  const of = (name: QuantityName, run?: number): Cell[] => {
    const q: Quantity = QUANTITIES[name];
    const at: At = run === undefined ? {} : { run };
    return [
      words(run === undefined ? q.label : (q.short ?? q.label)),
      words(run === undefined ? '' : (design.runs[run]?.name ?? '')),
      given(asShown(e, name, at), q.exact ? 'exact' : unitOf(name, design.units)),
      q.unit === 'text' ? { ...live(grid, design, name, at), unit: 'exact' } : live(grid, design, name, at),
      { role: 'unit', value: q.unit === 'text' ? '' : heading(name, design.units) },
    ];
  };
  const runs = [...design.runs.keys()];
  return [
    [
      words('Verdict'),
      words(''),
      given(verdict),
      { role: 'verdict', formula: VERDICT_CELL, unit: 'exact' },
      words(''),
    ],
    ...FIGURES.map((name) => of(name)),
    ...runs.map((run) => of('gauge', run)),
    ...runs.filter((run) => design.runs[run]?.fuse).map((run) => of('fuse_rating', run)),
    ...runs.filter((run) => design.runs[run]?.relay).map((run) => of('relay_rating', run)),
  ];
}

/** A result in the unit in which it is shown, as the live cell beside it has it. */
function asShown(e: Evaluation, name: QuantityName, at: At): number | string | null {
  const value = e.value(name, at);
  const { unit } = QUANTITIES[name];
  if (typeof value === 'string') return printSize(value);
  return value === null ? null : value * convert(unit, unitOf(name, e.design.units));
}

/** Inputs of the first and the last run of the feed, of the coil, and of the point with most supply. */
function inputs(grid: Grid, design: Design): Cell[][] {
  const feed = design.runs.flatMap(({ side }, run) => (side === 'feed' ? [run] : []));
  const ends = [...new Set([feed[0] as number, feed.at(-1) as number])];
  const wire = (run: number): number => design.wires.findIndex((one) => one.run === run);
  const supplies = design.points.map(({ supply }) => supply);
  const point = supplies.lastIndexOf(Math.max(...supplies));
  const asked: [QuantityName, At][] = [
    ...ends.map((run): [QuantityName, At] => ['wire_length', { wire: wire(run) }]),
    ...ends.map((run): [QuantityName, At] => ['run_gauge', { run }]),
    ...ends.map((run): [QuantityName, At] => ['run_ambient', { run }]),
    ['fuse_given', { run: feed[0] as number }],
    ['dwell_time', { dwell_row: 0 }],
    ['coil_ohm_20', {}],
    ['coil_L_given', {}],
    ['point_rpm', { point }],
    ['point_supply', { point }],
    ['drop_limit', {}],
    ['source_given', {}],
  ];
  return asked.flatMap(([name, at]) => {
    const q = QUANTITIES[name] as Quantity;
    if (q.kind !== 'input' || !grid.placement.entries.has(name)) return [];
    const cell = entryAddress(grid, name, at);
    const of = (q.per ?? []).map((axis) => grid.axes[axis][at[axis] as number]);
    const { system } = grid.placement.entering;
    const unit = entryUnit(q, system);
    const shown = unit === 'in' ? 'entered_in' : 'exact';
    return [
      [
        words(bareLabel(q.label)),
        words(of.join(', ')),
        given(inputValue(design, q, at, system), shown),
        { role: 'formula', formula: `IF(${cell}="","",${cell})`, unit: shown },
        { role: 'unit', value: unit === 'text' ? '' : printUnit(unit) },
        { role: 'member', formula: `"Inputs!${cell.split('!')[1]?.replace(/\$|\d/g, '')}"&ROW(${cell})` },
      ],
    ];
  });
}
