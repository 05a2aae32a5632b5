/** What is read off a result in several places of the page. */
import type { CoilJson, ResultJson, RunJson, RunPointJson } from '../result-json.ts';

/** Figures of a conductor at the point where its effective current is largest. */
export const atWorst = ({ points, worst_point }: RunJson): RunPointJson | undefined =>
  points.find(({ name }) => name === worst_point) ?? points[0];

/** Of each run the conductor with the largest effective current, in the order of the design. */
export function worstWires(json: ResultJson): RunJson[] {
  const byRun = new Map<string, RunJson>();
  for (const wire of json.runs) {
    const there = byRun.get(wire.run);
    const load = (one: RunJson): number => atWorst(one)?.rms_A ?? 0;
    if (there === undefined || load(wire) > load(there)) byRun.set(wire.run, wire);
  }
  return [...byRun.values()];
}

export const worstCoil = ({ coils, totals }: ResultJson): CoilJson | undefined =>
  coils.find(({ id }) => id === totals.worst_coil) ?? coils[0];

/** Energy that is left of the worst coil's, at the point where least is left [1]; null when it is not known. */
export function leastKept(json: ResultJson): number | null {
  const kept =
    worstCoil(json)?.points.flatMap(({ energy_kept: share }) => (share === null ? [] : [share])) ?? [];
  return kept.length === 0 ? null : Math.min(...kept);
}
