/** Values that rest on sizes which only stand in, because none that would do were found: they are of no feed. */
import type { At } from '../basis/quantity.ts';
import { dependsOn, type Evaluation } from '../engine/evaluate.ts';
import type { QuantityName } from '../model/model.ts';

/** Whether this value does: that of a run by its own size, any other by those of all runs. */
export function standsIn(e: Evaluation, name: QuantityName, at: At = {}): boolean {
  if (!dependsOn(name, 'gauge_row')) return false;
  const runs = at.run === undefined ? [...e.design.runs.keys()] : [at.run];
  return runs.some((run) => e.number('undone', { run }) === 1);
}
