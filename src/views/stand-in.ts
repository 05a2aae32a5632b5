/** Values that rest on sizes which only stand in, because none that would do were found: they are of no feed. */
import type { At } from '../basis/quantity.ts';
import { dependsOn, type Evaluation } from '../engine/evaluate.ts';
import type { QuantityName } from '../model/model.ts';

export const ofSizes = (name: QuantityName): boolean => dependsOn(name, 'chosen');

/** Whether this value does: that of a run by its own size, any other by those of all runs. */
export const standsIn = ({ number }: Evaluation, name: QuantityName, { run }: At = {}): boolean =>
  ofSizes(name) && (run === undefined ? number('solved') === 0 : number('undone', { run }) === 1);
