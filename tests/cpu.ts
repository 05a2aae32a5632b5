/**
 * How long something takes, as the time of the processor in this process: what other programs take meanwhile does not
 * count. A busy processor still is a slower one, so that a test compares two times and never holds one against a clock.
 */

/** Least time of a few runs of `work` [ms]. */
export function cpu(work: () => unknown, runs = 1): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < runs; i++) {
    const before = process.cpuUsage();
    work();
    const { user, system } = process.cpuUsage(before);
    least = Math.min(least, (user + system) / 1000);
  }
  return least;
}
