/** Currents and energy over engine speed, in the units in which they are drawn: the sweep of a design. */
import type { Evaluation } from '../engine/evaluate.ts';
import { circuitAt, whyNoTrace } from '../transient/circuit.ts';
import { coilFigures, wireFigures } from '../transient/figures.ts';
import { type Course, steady } from '../transient/steady.ts';
import { labelOf } from '../views/print.ts';

/** One speed of the sweep. */
export interface AtSpeed {
  readonly rpm: number;
  /** Of the first conductor of the feed [A]. */
  readonly average: number;
  readonly effective: number;
  readonly peak: number;
  /** Energy of one coil on a stiff supply [mJ]; null when only a peak current is known of the coil. */
  readonly stiff: number | null;
  /** Energy of the weakest firing of all behind this feed, exact [mJ]; null as above. */
  readonly delivered: number | null;
  /** The dwell is cut short at this speed. */
  readonly clipped: boolean;
}

/** The sweep of one design. */
export interface SpeedLines {
  /** What tells it from another one in the same picture. */
  readonly name: string;
  readonly speeds: readonly AtSpeed[];
  /** Supply of the sweep [V]. */
  readonly supply: number;
  /** Name of the first feed run, rating of its fuse and its ampacity [A]; null where there is none. */
  readonly run: string;
  readonly fuse: number | null;
  readonly ampacity: number | null;
  /** What the axes are called. */
  readonly axes: { readonly speed: string; readonly energy: string };
}

/**
 * The lines of a design; null when it has no sweep. `name` is the design's title when it is left out. Currents are those that
 * the model counts on a stiff supply, or the `exact` ones, which tell two feeds of the same coils apart.
 */
export function speedLines(e: Evaluation, name?: string, exact = false): SpeedLines | null {
  const { design } = e;
  if (design.sweep === null) return null;
  const computed = whyNoTrace(e) === null;
  return {
    name: name ?? design.title,
    speeds: Array.from({ length: design.sweep.rows }, (_, i) =>
      atSpeed(e, design.points.length + i, computed, exact && computed),
    ),
    supply: design.sweep.supply,
    run: design.runs[0]?.name ?? '',
    fuse: e.number('fuse_rating', { run: 0 }),
    ampacity: e.number('ampacity', { run: 0 }),
    axes: { speed: labelOf('speed'), energy: labelOf('energy') },
  };
}

function atSpeed(e: Evaluation, speed: number, computed: boolean, exact: boolean): AtSpeed {
  const known = (value: number | null): number => {
    if (value === null) throw new Error('a value of the sweep is not known');
    return value;
  };
  const energy = e.number('energy', { speed });
  const course = computed ? steady(circuitAt(e, speed)) : null;
  const main = exact && course ? wireFigures(course, 0) : null;
  return {
    rpm: known(e.number('speed', { speed })),
    average: main?.average ?? known(e.number('main_average', { speed })),
    effective: main?.effective ?? known(e.number('main_effective', { speed })),
    peak: main?.peak ?? known(e.number('main_peak', { speed })),
    stiff: energy === null ? null : energy * 1e3,
    delivered: course ? weakest(course) * 1e3 : null,
    clipped: e.number('clipped', { speed }) === 1,
  };
}

/** Energy of the weakest firing [J]. */
const weakest = (course: Course): number =>
  Math.min(...Array.from({ length: course.circuit.coils }, (_, coil) => coilFigures(course, coil).energy));
