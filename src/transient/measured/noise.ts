/** How well an instrument resolves what it shows: its noise, and the steps of its converter. */

/** So many samples tell it. Arbitrary. */
const ENOUGH = 65536;

export const median = (values: Float64Array | readonly number[]): number =>
  Float64Array.from(values).sort()[values.length >> 1] ?? Number.NaN;

/** Standard deviation of white noise by the differences of neighbours: slow changes do not count. 1.4826: MAD to σ. */
export function noiseOf(values: Float64Array): number {
  const every = Math.ceil(values.length / ENOUGH);
  const steps = Float64Array.from({ length: Math.floor((values.length - 1) / every) }, (_, i) =>
    Math.abs((values[i * every + 1] as number) - (values[i * every] as number)),
  );
  return (1.4826 / Math.SQRT2) * median(steps);
}

/** The least step between two values; next to nothing where the converter is fine. */
export function stepOf(values: Float64Array): number {
  const every = Math.ceil(values.length / ENOUGH);
  const sorted = values.filter((_, i) => i % every === 0).sort();
  const range = (sorted.at(-1) as number) - (sorted[0] as number);
  let least = range;
  for (let i = 1; i < sorted.length; i++) {
    const step = (sorted[i] as number) - (sorted[i - 1] as number);
    if (step > 1e-9 * range && step < least) least = step;
  }
  return least;
}
