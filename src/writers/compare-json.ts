/** Two feeds side by side as JSON: SI numbers, the unit as the last part of a key. */
import { type AtPoint, type Change, type Compared, FIGURE_NAMES, type Figure } from '../readings/compare.ts';

export const COMPARE_FORMAT = 'coilfeed-compare/1';

const KEYS: Readonly<Record<Figure, string>> = {
  average: 'average_A',
  effective: 'rms_A',
  peak: 'peak_A',
  supply: 'supply_V',
  energy: 'energy_J',
  kept: 'energy_kept',
  dwell: 'dwell_to_win_back_s',
  heat: 'heat_W',
};

/** Pairs are lists of two, in the order of the sides. */
export function compareJson(c: Compared) {
  const change = ({ rule, subjects }: Change) => ({ rule, subjects });
  const point = ({ name, figures }: AtPoint) => ({
    name,
    ...Object.fromEntries(FIGURE_NAMES.map((figure) => [KEYS[figure], figures[figure]])),
  });
  return {
    format: COMPARE_FORMAT,
    sides: c.sides.map(({ name, title, result }) => ({ name, title, verdict: result.verdict })),
    points: c.points.map(point),
    alone: c.alone,
    totals: { copper_kg: c.copper, drop_V: c.drop },
    parts: c.parts,
    findings: { vanish: c.vanish.map(change), appear: c.appear.map(change), stay: c.stay.map(change) },
  };
}
