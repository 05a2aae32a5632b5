/** Whether a value of a design was filled in or stated. */
import type { Design } from './design.ts';

/** Paths of the file name a list and its place; those of the model a run. */
const asInModel = (path: string): string => path.replace(/^(?:feed|return)\[\d+\]/, 'runs.{run}');

/** Whether the value at a path of the model, such as `limits.drop` or `runs.{run}.relay.contact`, was filled in anywhere. */
export const wasFilled = (design: Design, path: string): boolean =>
  design.assumed.some((one) => asInModel(one.path) === path);
