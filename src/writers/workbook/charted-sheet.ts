/**
 * The values behind the charts that stand in no other cell: the horizontal lines of fuse and ampacity, marks at the fault
 * currents, and times without a gap.
 */

import { address } from '../../basis/address.ts';
import type { Design } from '../../design/design.ts';
import { type Cell, put, type Sheet } from '../../engine/cell.ts';
import type { Grid } from '../../engine/translate.ts';
import type { QuantityName } from '../../model/model.ts';
import { protectorOf } from '../../model/route.ts';
import { NAMES } from '../../pictures/names.ts';
import { labelOf } from '../../views/print.ts';
import { cellFor } from './links.ts';
import { opening, section, words } from './page.ts';

export const CHARTED = 'Charted';

const formula = (text: string): Cell => ({ role: 'formula', formula: text });
const label = (value: string): Cell => ({ role: 'label', value });

/** Run that holds a fuse, and the feed runs that it protects, itself first. */
export interface Group {
  readonly fuse: number;
  readonly runs: readonly number[];
}

export const groups = (design: Design): Group[] =>
  design.runs.flatMap((run, fuse) => {
    if (run.fuse === null) return [];
    const behind = design.wires.flatMap((wire, i) =>
      design.wires[protectorOf(i, design)]?.run === fuse ? [wire.run] : [],
    );
    return [{ fuse, runs: [...new Set(behind)] }];
  });

/** Rows of the parts of the sheet, counted from 0. */
function rowsOf(grid: Grid, design: Design) {
  const lines = 5;
  const marks = lines + LINES.length + 3;
  const perGroup = groups(design).map(({ runs }) => runs.length + 1);
  const curves = marks + perGroup.reduce((a, b) => a + b, 0) + 3;
  return { lines, marks, curves, steps: grid.axes.grid.length };
}

/** Horizontal lines in the chart of the currents, from the first to the last speed of the sweep. */
export const LINES = ['fuse_rating', 'ampacity'] as const satisfies readonly QuantityName[];
export const MARKS = { smallest: 1, largest: 3 } as const;

/** `Charted!$B$5:$B$9`, or a single cell. */
const range = (top: number, left: number, bottom = top, right = left): string => {
  const [first, last] = [address(top, left), address(bottom, right)];
  return `${CHARTED}!${first === last ? first : `${first}:${last}`}`;
};

/** A cell with a name, and the cells with the values of both axes. */
export interface Drawn {
  readonly name: string;
  readonly x: string;
  readonly y: string;
}

/** What is charted. */
export interface Charted {
  /** Two points of a horizontal line. */
  readonly line: (which: (typeof LINES)[number]) => Drawn;
  /** Currents and times of the faults of the runs behind a fuse. */
  readonly marks: (group: number, which: keyof typeof MARKS) => Drawn;
  readonly stuck: (group: number) => Drawn;
  /** Times over the currents of a run. */
  readonly curve: (which: Curve, run: number) => Drawn;
}

type Curve = 'curve_withstood' | 'curve_slowest' | 'curve_fastest';

/** Columns of the times: of the conductors of all feed runs, then of the fuses. */
const curveColumns = (grid: Grid, design: Design): (readonly [Curve, number])[] => [
  ...grid.axes.feed.map((_, run) => ['curve_withstood', run] as const),
  ...groups(design).flatMap(({ fuse }) =>
    (['curve_slowest', 'curve_fastest'] as const).map((name) => [name, fuse] as const),
  ),
];

export function charted(grid: Grid, design: Design): Charted {
  const rows = rowsOf(grid, design);
  const columns = curveColumns(grid, design);
  const all = groups(design);
  const firstOf = (group: number): number =>
    rows.marks + all.slice(0, group).reduce((sum, { runs }) => sum + runs.length + 1, 0);
  const stepsOf = (name: QuantityName, run: number): string => {
    const cell = (step: number): string => cellFor(grid, name, { grid: step, feed: run });
    return `${cell(0)}:${cell(rows.steps - 1).split('!')[1]}`;
  };
  return {
    line: (which) => {
      const row = rows.lines + LINES.indexOf(which);
      return { name: range(row, 0), x: range(row, 1, row, 2), y: range(row, 3, row, 4) };
    },
    marks: (group, which) => {
      const [top, left] = [firstOf(group), MARKS[which]];
      const bottom = top + (all[group] as Group).runs.length - 1;
      return {
        name: range(rows.marks - 1, left),
        x: range(top, left, bottom),
        y: range(top, left + 1, bottom),
      };
    },
    stuck: (group) => {
      const row = firstOf(group) + (all[group] as Group).runs.length;
      return { name: range(row, 0), x: range(row, 1), y: range(row, 2) };
    },
    curve: (which, run) => {
      const at = 1 + columns.findIndex(([name, r]) => name === which && r === run);
      return {
        name: range(rows.curves - 1, at),
        x: stepsOf('curve_current', run),
        y: range(rows.curves, at, rows.curves + rows.steps - 1),
      };
    },
  };
}

/**
 * A time for an axis that has no zero: what is not known is drawn beyond the upper end, where nothing shows, and a
 * time of 0 far below the lower end.
 */
const drawn = (time: string): string => `IF(ISNUMBER(${time}),MAX(1e-9,${time}),no_end)`;
/** A current for an axis that has no zero. */
const current = (amps: string): string => `IF(ISNUMBER(${amps}),${amps},1)`;

export function chartedSheet(grid: Grid, design: Design): Sheet {
  const sheet: Sheet = [];
  opening(sheet, 'Values behind the charts', 'What the charts draw and no other sheet shows.');
  lines(sheet, grid, design);
  marks(sheet, grid, design);
  curves(sheet, grid, design);
  return sheet;
}

function lines(sheet: Sheet, grid: Grid, design: Design): void {
  if (design.sweep === null) return;
  const { lines: top } = rowsOf(grid, design);
  section(sheet, top - 2, 'Lines over engine speed: first conductor of the feed', 6);
  ['Line', 'from [rpm]', 'to [rpm]', 'at [A]', 'at [A]'].forEach((title, i) => {
    put(sheet, top - 1, i, label(title));
  });
  const [first, last] = [design.points.length, design.points.length + design.sweep.rows - 1];
  const speed = (at: number): string => `${cellFor(grid, 'speed', { speed: at })}`;
  const lowest = cellFor(grid, 'main_average', { speed: first });
  LINES.forEach((name, i) => {
    const value = cellFor(grid, name, { run: 0 });
    const known = (yes: string, no: string): Cell => formula(`IF(ISNUMBER(${value}),${yes},${no})`);
    put(sheet, top + i, 0, words(labelOf(name)));
    put(sheet, top + i, 1, formula(speed(first)));
    // What is not known becomes a point on another line, where it does not show.
    put(sheet, top + i, 2, known(speed(last), speed(first)));
    put(sheet, top + i, 3, known(value, lowest));
    put(sheet, top + i, 4, known(value, lowest));
  });
}

function marks(sheet: Sheet, grid: Grid, design: Design): void {
  const { marks: top, steps } = rowsOf(grid, design);
  section(sheet, top - 2, 'Marks on the curves of the fuses: currents [A] and times', 6);
  ['Run', NAMES.farEnd, 'opens after [s]', NAMES.nearEnd, 'opens after [s]'].forEach((title, i) => {
    put(sheet, top - 1, i, label(title));
  });
  let row = top;
  for (const { fuse, runs } of groups(design)) {
    for (const run of runs) {
      const end = steps - 1;
      const at = (name: QuantityName): string => cellFor(grid, name, { run });
      put(sheet, row, 0, words(design.runs[run]?.name ?? ''));
      put(sheet, row, 1, formula(current(at('end_fault'))));
      put(sheet, row, 2, formula(drawn(at('end_opening'))));
      put(sheet, row, 3, formula(current(cellFor(grid, 'curve_current', { grid: end, feed: run }))));
      put(sheet, row, 4, formula(drawn(cellFor(grid, 'curve_slowest', { grid: end, feed: run }))));
      row += 1;
    }
    put(sheet, row, 0, words(NAMES.stuck));
    put(sheet, row, 1, formula(current('stuck_most')));
    put(sheet, row, 2, formula(drawn(cellFor(grid, 'stuck_opening', { run: fuse }))));
    row += 1;
  }
}

const CURVE_TITLES: Readonly<Record<Curve, (run: string) => string>> = {
  curve_withstood: NAMES.atLimit,
  curve_slowest: () => NAMES.latest,
  curve_fastest: () => NAMES.earliest,
};

function curves(sheet: Sheet, grid: Grid, design: Design): void {
  const { curves: top, steps } = rowsOf(grid, design);
  section(sheet, top - 2, 'Times [s] over the currents of the sheet Curves', 6);
  put(sheet, top - 1, 0, label('Step'));
  curveColumns(grid, design).forEach(([name, run], i) => {
    put(sheet, top - 1, 1 + i, label(CURVE_TITLES[name](design.runs[run]?.name ?? '')));
    for (let step = 0; step < steps; step++)
      put(sheet, top + step, 1 + i, formula(drawn(cellFor(grid, name, { grid: step, feed: run }))));
  });
  for (let step = 0; step < steps; step++)
    put(sheet, top + step, 0, { role: 'given', value: step + 1, unit: 'count' });
}
