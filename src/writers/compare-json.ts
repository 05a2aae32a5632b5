/** Two feeds side by side as JSON: SI numbers, the unit as the last part of a key. */
import type { Change, Compared } from '../readings/compare.ts';

export const COMPARE_FORMAT = 'coilfeed-compare/1';

type Paired<R> = { readonly [K in keyof R]: readonly [R[K], R[K]] };

/** Two rows of a view as one of pairs. */
function paired<R extends object>([a, b]: readonly [R, R]): Paired<R> {
  const pairs: { [K in keyof R]?: readonly [R[K], R[K]] } = {};
  for (const key of Object.keys(a) as (keyof R)[]) pairs[key] = [a[key], b[key]];
  return pairs as Paired<R>;
}

/** Pairs are lists of two, in the order of the sides. */
export function compareJson(c: Compared) {
  const change = ({ rule, subjects }: Change) => ({ rule, subjects });
  return {
    format: COMPARE_FORMAT,
    sides: c.sides.map(({ name, title, result }) => ({ name, title, verdict: result.verdict })),
    gain: c.gain,
    points: c.points.map(({ name, figures, exact }) => ({
      name,
      ...paired(figures),
      exact: exact.map(
        (one) =>
          one && {
            average_A: one.average,
            rms_A: one.effective,
            peak_A: one.peak,
            supply_V: one.supply,
            energy_J: one.energy,
            energy_kept: one.kept,
            power_W: one.power,
            heat_W: one.heat,
          },
      ),
    })),
    alone: c.alone,
    totals: paired(c.totals),
    parts: c.parts,
    findings: { vanish: c.vanish.map(change), appear: c.appear.map(change), stay: c.stay.map(change) },
  };
}
