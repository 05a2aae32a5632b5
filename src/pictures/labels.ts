/** Labels in a column beside a plot: each at its line where there is room, moved apart where there is none. */

/** Places of labels on an axis, from a value to pixels from the top and back. */
export interface Axis {
  readonly toPixel: (value: number) => number;
  readonly toValue: (pixel: number) => number;
  /** Length of the axis [px]. */
  readonly height: number;
}

/** An axis from `least` at the bottom to `most` at the top. */
export const linear = (least: number, most: number, height: number): Axis => ({
  toPixel: (value) => ((most - value) / (most - least)) * height,
  toValue: (pixel) => most - (pixel / height) * (most - least),
  height,
});

/** The same with logarithms; both ends above 0. */
export const logarithmic = (least: number, most: number, height: number): Axis => {
  const ends = linear(Math.log(least), Math.log(most), height);
  return {
    toPixel: (value) => ends.toPixel(Math.log(value)),
    toValue: (pixel) => Math.exp(ends.toValue(pixel)),
    height,
  };
};

/**
 * Places for labels that stand at `values`, in the same order: at least `gap` [px] apart, inside of the axis as long as
 * there is room, and as near as that allows. Labels of the same value keep their order, the first one on top.
 */
export function spread(values: readonly number[], axis: Axis, gap: number): number[] {
  const order = values
    .map((value, i) => ({ i, at: Math.min(axis.height, Math.max(0, axis.toPixel(value))) }))
    .sort((a, b) => a.at - b.at || a.i - b.i);
  // Groups of labels that touch; each stands around the mean of where its labels want to be.
  const groups: { first: number; count: number; top: number }[] = [];
  order.forEach(({ at }, place) => {
    groups.push({ first: place, count: 1, top: inside(at, 1) });
    for (;;) {
      const [upper, lower] = groups.slice(-2);
      if (!upper || !lower || upper.top + upper.count * gap <= lower.top) break;
      groups.splice(-2, 2, together(upper.first, upper.count + lower.count));
    }
  });
  const found = values.map(() => 0);
  for (const { first, count, top } of groups)
    for (let k = 0; k < count; k++) found[order[first + k]?.i as number] = axis.toValue(top + k * gap);
  return found;

  function together(first: number, count: number) {
    const wanted = order.slice(first, first + count).reduce((sum, { at }, k) => sum + at - k * gap, 0);
    return { first, count, top: inside(wanted / count, count) };
  }
  function inside(top: number, count: number): number {
    return Math.max(0, Math.min(top, axis.height - (count - 1) * gap));
  }
}
