/** What a meter shows across the coil of a relay: the posts, less what the wire that triggers it may lose. */
import type { Measured } from '../design/design.ts';
import type { Evaluation } from '../engine/evaluate.ts';
import { statedAt } from './instruments.ts';

/** By a scope and by a meter that holds, which show the least, from the dip of the point where one is stated. */
export function triggerRange(
  { design }: Evaluation,
  { wire, point, instrument }: Pick<Measured, 'wire' | 'point' | 'instrument'>,
): { readonly expected: number | null; readonly low: number | null; readonly high: number | null } {
  const at = design.points[point ?? -1];
  const relay = design.runs[design.wires[wire ?? -1]?.run ?? -1]?.relay;
  if (at === undefined || !relay) return { expected: null, low: null, high: null };
  const posts = statedAt(at, instrument === 'scope' ? 'least' : instrument);
  const least = Math.max(0, posts - relay.trigger_drop);
  return { expected: least, low: least, high: at.supply };
}
