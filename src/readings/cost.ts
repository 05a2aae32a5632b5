/** What a cause costs: heat in the part, energy of the weakest coil, with it in and with it mended, by the exact currents. */
import type { Evaluation } from '../engine/evaluate.ts';
import { coilFigures, wireFigures } from '../transient/figures.ts';
import { type Course, steady } from '../transient/steady.ts';
import type { Cause } from './diagnose.ts';
import { asExpected, circuitIn, type Knob, keyOf, type Parts, partsOf } from './parts.ts';

export interface Cost {
  /** At the point at which it matters most: heat in the conductor [W]; null when the part is none. */
  readonly heat: Pair | null;
  /** Energy of the coil that is left with least, at the point where the cause takes most of it [J]; null when it takes none. */
  readonly energy: (Pair & { readonly point: number }) | null;
}

/** Less than this share of the energy is nothing that anybody would notice. Arbitrary. */
const NOTICED = 0.005;

interface Pair {
  readonly now: number;
  readonly after: number;
}

/** Share of what there would be that is lost. */
export const lostOf = ({ now, after }: Pair): number => (after > 0 ? 1 - now / after : 0);

/** What a cause moves, as a state of the parts; null for what is no part of the install. */
function stateOf(parts: Parts, { part, how, size }: Cause): number[] | null {
  const state = asExpected(parts);
  const put = (knob: Knob, value: number): void => {
    const i = parts.index.get(keyOf(knob));
    if (i !== undefined) state[i] = value;
  };
  const { wires, coils, points } = parts.e.design;
  const coil = (c: number): void => {
    if (how === 'ohm' || how === 'open' || how === 'turns') put({ of: 'ohm', coil: c }, Math.log(size));
    if (how === 'henry') put({ of: 'henry', coil: c }, Math.log(size));
    if (how === 'turns') put({ of: 'henry', coil: c }, 2 * Math.log(size));
  };
  switch (part.is) {
    case 'wire':
      put({ of: 'wire', wire: part.wire }, size);
      break;
    case 'within':
      put({ of: 'within', wire: part.wire, across: part.across }, size);
      break;
    case 'source':
      put({ of: 'wire', wire: parts.source }, size);
      break;
    case 'run':
      wires.forEach(({ run }, wire) => {
        if (run === part.run) put({ of: 'wire', wire }, (size - 1) * (parts.copper[wire] as number));
      });
      break;
    case 'coil':
      coil(part.coil);
      break;
    case 'coils':
      for (const c of coils.keys()) coil(c);
      break;
    case 'dwell':
      put({ of: 'dwell' }, Math.log(size));
      break;
    case 'supply':
      for (const point of points.keys())
        if (part.point === null || part.point === point) put({ of: 'supply', point }, size);
      break;
    default:
      return null;
  }
  return state;
}

/** Null for what is no part of the install. */
export function costOf(e: Evaluation, cause: Cause): Cost | null {
  const points = [...e.design.points.keys()];
  const parts = partsOf(e, points);
  const state = stateOf(parts, cause);
  if (state === null) return null;
  const [now, after] = [state, asExpected(parts)].map((s) =>
    points.map((p) => steady(circuitIn(parts, s, p))),
  ) as [Course[], Course[]];
  const { part } = cause;
  const heats = (courses: Course[], wire: number): number[] =>
    courses.map(
      (course) => wireFigures(course, wire).effective ** 2 * (course.circuit.wires[wire]?.ohm ?? 0),
    );
  const worst = (values: number[]): number => values.indexOf(Math.max(...values));
  const heat = (wire: number): Pair => {
    const hot = heats(now, wire);
    const i = worst(hot);
    return { now: hot[i] as number, after: heats(after, wire)[i] as number };
  };
  const least = (course: Course): number =>
    Math.min(...e.design.coils.map((_, coil) => coilFigures(course, coil).energy));
  const energies = points.map((point, i) => ({
    now: least(now[i] as Course),
    after: least(after[i] as Course),
    point,
  }));
  const most = energies.reduce((a, b) => (lostOf(b) > lostOf(a) ? b : a));
  return {
    heat: part.is === 'wire' || part.is === 'within' ? heat(part.wire) : null,
    energy: lostOf(most) > NOTICED ? most : null,
  };
}
