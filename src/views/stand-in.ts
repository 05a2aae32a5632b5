/** Values that rest on sizes which only stand in, because none that would do were found: they are of no feed. */
import type { At } from '../basis/quantity.ts';
import { dependsOn, type Evaluation } from '../engine/evaluate.ts';
import type { QuantityName } from '../model/model.ts';

export const ofSizes = (name: QuantityName): boolean => dependsOn(name, 'gauge_row');

/** Whether this value does: that of a run by its own size, any other by those of all runs. */
export function standsIn({ design, number }: Evaluation, name: QuantityName, { run }: At = {}): boolean {
  if (!ofSizes(name)) return false;
  const open = (at: number): boolean => number('undone', { run: at }) === 1;
  return run === undefined ? design.runs.some((_, at) => open(at)) : open(run);
}
