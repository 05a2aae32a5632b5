/** The design as it would be built: sizes and ratings that it leaves open are those that were chosen. */
import type { Design } from '../design/design.ts';
import type { Evaluation } from '../engine/evaluate.ts';
import type { QuantityName } from '../model/model.ts';

/** What is built does not differ from install to install, though its formulas name what does. */
export const BUILT: readonly QuantityName[] = ['chosen', 'fuse_rating', 'relay_rating', 'fused', 'relayed'];

export function builtOf({ design, value, number }: Evaluation): Design {
  return {
    ...design,
    runs: design.runs.map((run, i) => {
      const at = { run: i };
      return {
        ...run,
        gauge: String(value('gauge', at) ?? run.gauge),
        fuse: run.fuse && { ...run.fuse, rating: number('fuse_rating', at) ?? run.fuse.rating },
        relay: run.relay && { ...run.relay, rating: number('relay_rating', at) ?? run.relay.rating },
      };
    }),
  };
}
