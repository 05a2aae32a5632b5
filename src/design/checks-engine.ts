/** Checks between fields: engine and ignition, up to the coils that follow from them. */
import { reportRepeated, whole } from './checks-names.ts';
import type { Draft } from './draft.ts';
import { type CoilAt, coilsOf, cycleOf, evenAngles, type Firings, pairsOf } from './layout.ts';
import { listed, type Path, type Report } from './problems.ts';
import type { Tree } from './tree.ts';

/** Angles that rise and lie within the cycle. Reports the first that does not. */
function risingWithin(angles: readonly number[], cycle: number, path: Path, report: Report): boolean {
  for (const [i, angle] of angles.entries()) {
    const before = angles[i - 1];
    if (angle >= cycle) {
      report([...path, i], `found ${angle} deg`, `allowed: below ${cycle} deg, the cycle`);
      return false;
    }
    if (before !== undefined && angle <= before) {
      report(
        [...path, i],
        `angles out of order: ${angle} deg after ${before} deg`,
        'list the angles as they rise',
      );
      return false;
    }
  }
  return true;
}

/** The firings of the engine, or undefined when they cannot be known. */
export function checkEngine(draft: Draft, tree: Tree, report: Report): Firings | undefined {
  const { cylinders, stroke, firing_order, firing_angles } = draft.engine ?? {};
  const order = whole(firing_order);
  let sound = true;
  if (cylinders !== undefined && order) {
    const numbers = Array.from({ length: cylinders }, (_, i) => i + 1);
    const missing = numbers.filter((n) => !order.includes(n));
    const twice = [...new Set(order.filter((n, i) => order.indexOf(n) !== i))];
    const strange = order.filter((n) => n > cylinders);
    const wrong = [
      ...(missing.length > 0 ? [`without ${listed(missing)}`] : []),
      ...(twice.length > 0 ? [`with ${listed(twice)} more than once`] : []),
      ...(strange.length > 0 ? [`with ${listed(strange)}, above the number of cylinders`] : []),
    ];
    if (wrong.length > 0) {
      report(
        ['engine', 'firing_order'],
        `a firing order ${wrong.join(', ')}`,
        `name each of 1 to ${cylinders} once`,
      );
      sound = false;
    }
  }
  const angles = whole(firing_angles);
  if (angles) {
    const path = ['engine', 'firing_angles'];
    if (cylinders !== undefined && angles.length !== cylinders) {
      report(
        path,
        `${angles.length} angles for ${cylinders} cylinders`,
        'give one for each, or none at all for even firing',
      );
      sound = false;
    }
    if (stroke !== undefined && !risingWithin(angles, cycleOf(stroke), path, report)) sound = false;
  }
  const anglesGiven = tree.has(['engine', 'firing_angles']);
  if (!sound || !order || cylinders === undefined || stroke === undefined || (anglesGiven && !angles))
    return undefined;
  return { cylinders, stroke, firing_order: order, firing_angles: angles ?? evenAngles(cylinders, stroke) };
}

/** Firings of all coils together. The overlap of every pair of them is computed, at every point. */
const MOST_FIRINGS = 64;

/** The coils, or undefined when they cannot be known. */
export function checkIgnition(
  draft: Draft,
  firings: Firings | undefined,
  tree: Tree,
  report: Report,
): CoilAt[] | undefined {
  const { layout, coils, dwell } = draft.ignition ?? {};
  if (Array.isArray(dwell)) {
    const seen = new Set<number>();
    dwell.forEach((row, i) => {
      if (row?.supply === undefined) return;
      if (seen.has(row.supply))
        report(
          ['ignition', 'dwell', i, 'supply'],
          `a second row for ${row.supply} V`,
          'give each supply once',
        );
      seen.add(row.supply);
    });
  }
  if (layout === undefined) return undefined;
  const coilsGiven = tree.has(['ignition', 'coils']);
  const stroke = draft.engine?.stroke;
  if (layout !== 'listed') {
    if (coilsGiven)
      report(
        ['ignition', 'coils'],
        `found coils with the layout ${layout}`,
        'give coils with the layout listed only',
        'key',
      );
    if ((layout === 'wasted_coil_per_cylinder' || layout === 'coil_per_pair') && stroke === 2) {
      report(
        ['ignition', 'layout'],
        `found ${layout} on a 2-stroke engine`,
        'allowed on a 4-stroke engine only: the second spark falls one turn later',
      );
      return undefined;
    }
    if (layout === 'coil_per_pair') {
      const cylinders = draft.engine?.cylinders;
      if (cylinders !== undefined && cylinders % 2 === 1) {
        report(
          ['ignition', 'layout'],
          `found ${layout} with ${cylinders} cylinders`,
          'allowed: an even number of cylinders',
        );
        return undefined;
      }
      const alone = firings ? pairsOf(firings).alone : [];
      if (alone.length > 0) {
        const who = alone.length === 1 ? `cylinder ${alone[0]} has` : `cylinders ${listed(alone)} have`;
        report(
          ['ignition', 'layout'],
          `${who} no partner that fires 360 deg apart`,
          'give another layout, or firing angles in such pairs',
        );
        return undefined;
      }
    }
    return firings && coilsOf(layout, firings, []);
  }
  if (!coilsGiven) {
    report(
      ['ignition', 'coils'],
      'missing with the layout listed',
      'takes a list of coils: {id: front, fires_at: [0, 240]}',
    );
    return undefined;
  }
  let sound = reportRepeated(
    (coils ?? []).map((c) => c?.id),
    (i) => ['ignition', 'coils', i, 'id'],
    report,
  );
  let count = 0;
  const known: CoilAt[] = [];
  coils?.forEach((coil, i) => {
    const angles = whole(coil?.fires_at);
    count += angles?.length ?? 0;
    if (
      angles &&
      stroke !== undefined &&
      !risingWithin(angles, cycleOf(stroke), ['ignition', 'coils', i, 'fires_at'], report)
    )
      sound = false;
    if (coil?.id !== undefined) known.push({ id: coil.id, fires_at: angles ?? [] });
  });
  if (count > MOST_FIRINGS) {
    report(['ignition', 'coils'], `${count} firings in a cycle`, `allowed: at most ${MOST_FIRINGS}`);
    sound = false;
  }
  return sound && coils && known.length === coils.length
    ? coilsOf('listed', firings ?? NO_FIRINGS, known)
    : undefined;
}

/** Listed coils bring their own angles. */
const NO_FIRINGS: Firings = { cylinders: 0, stroke: 4, firing_order: [], firing_angles: [] };
