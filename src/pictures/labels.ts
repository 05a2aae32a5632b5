/** Labels in a column: each where it wants to be where there is room, moved apart where there is none. */

/**
 * Places of labels that want to stand at `wanted` [px from the top], in the same order: at least `gap` apart, within
 * `height` as long as there is room, and as near as that allows. Labels that want the same place keep their order.
 */
export function spread(wanted: readonly number[], height: number, gap: number): number[] {
  const order = wanted
    .map((at, i) => ({ i, at: Math.min(height, Math.max(0, at)) }))
    .sort((a, b) => a.at - b.at || a.i - b.i);
  const inside = (top: number, count: number): number =>
    Math.max(0, Math.min(top, height - (count - 1) * gap));
  // Groups of labels that touch; each stands around the mean of where its labels want to be.
  const groups: { first: number; count: number; top: number }[] = [];
  order.forEach(({ at }, place) => {
    groups.push({ first: place, count: 1, top: inside(at, 1) });
    for (;;) {
      const [upper, lower] = groups.slice(-2);
      if (!upper || !lower || upper.top + upper.count * gap <= lower.top) break;
      const { first } = upper;
      const count = upper.count + lower.count;
      const sum = order.slice(first, first + count).reduce((all, one, k) => all + one.at - k * gap, 0);
      groups.splice(-2, 2, { first, count, top: inside(sum / count, count) });
    }
  });
  const found = wanted.map(() => 0);
  for (const { first, count, top } of groups)
    for (let k = 0; k < count; k++) found[order[first + k]?.i as number] = top + k * gap;
  return found;
}
