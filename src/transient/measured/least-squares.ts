/** Least squares for a model that is not linear in its parameters: the method of Levenberg and Marquardt. */

/** Value of the model at x for parameters p. */
export type Model = (x: number, p: readonly number[]) => number;

export interface Fit {
  readonly p: readonly number[];
  /** Sum of the squared residuals. */
  readonly sum: number;
  /** Covariance of the parameters, from the residuals; null when the data do not determine them. */
  readonly covariance: readonly (readonly number[])[] | null;
}

const MOST_STEPS = 100;
/** A step that gains less than this share is the last one. */
const GAIN = 1e-10;

/**
 * Fits `model` to the points (x, y) from the parameters `start`. `size` is how large each parameter typically is: it sets
 * the steps of the numeric derivatives, and brings the parameters to one scale.
 */
export function leastSquares(
  model: Model,
  x: readonly number[],
  y: readonly number[],
  start: readonly number[],
  size: readonly number[],
): Fit {
  let p = [...start];
  let sum = sumOf(model, x, y, p);
  let damping = 1e-3;
  for (let step = 0; step < MOST_STEPS; step++) {
    const { normal, right } = equations(model, x, y, p, size);
    let better: { p: number[]; sum: number } | null = null;
    while (damping < 1e12) {
      const move = solved(
        normal.map((row, i) => row.map((v, j) => (i === j ? v * (1 + damping) + 1e-300 : v))),
        right,
      );
      const tried = move?.map((d, i) => (p[i] as number) + d * (size[i] as number));
      const reached = tried ? sumOf(model, x, y, tried) : Number.NaN;
      if (tried && reached <= sum) {
        better = { p: tried, sum: reached };
        damping = Math.max(damping / 10, 1e-12);
        break;
      }
      damping *= 10;
    }
    if (better === null) break;
    const gained = sum - better.sum;
    ({ p, sum } = better);
    if (gained <= GAIN * sum) break;
  }
  return { p, sum, covariance: covarianceOf(model, x, y, p, size, sum) };
}

const sumOf = (model: Model, x: readonly number[], y: readonly number[], p: readonly number[]): number => {
  let sum = 0;
  for (let i = 0; i < x.length; i++) sum += ((y[i] as number) - model(x[i] as number, p)) ** 2;
  return sum;
};

/** Normal equations for a step in parameters over `size`. */
function equations(
  model: Model,
  x: readonly number[],
  y: readonly number[],
  p: readonly number[],
  size: readonly number[],
): { normal: number[][]; right: number[] } {
  const n = p.length;
  const normal = Array.from({ length: n }, () => Array.from({ length: n }, () => 0));
  const right = Array.from({ length: n }, () => 0);
  // The cube root of the rounding error: best for a central difference.
  const h = 6e-6;
  const moved = size.map((s, j) =>
    [h, -h].map((d) => p.map((value, i) => (i === j ? value + d * s : value))),
  );
  const slopes: number[] = Array.from({ length: n }, () => 0);
  for (let k = 0; k < x.length; k++) {
    const at = x[k] as number;
    const rest = (y[k] as number) - model(at, p);
    for (let j = 0; j < n; j++) {
      const [up, down] = moved[j] as [number[], number[]];
      slopes[j] = (model(at, up) - model(at, down)) / (2 * h);
    }
    for (let i = 0; i < n; i++) {
      const row = normal[i] as number[];
      right[i] = (right[i] as number) + (slopes[i] as number) * rest;
      for (let j = 0; j < n; j++) row[j] = (row[j] as number) + (slopes[i] as number) * (slopes[j] as number);
    }
  }
  return { normal, right };
}

function covarianceOf(
  model: Model,
  x: readonly number[],
  y: readonly number[],
  p: readonly number[],
  size: readonly number[],
  sum: number,
): number[][] | null {
  const { normal } = equations(model, x, y, p, size);
  const columns = p.map((_, j) =>
    solved(
      normal,
      p.map((__, i) => (i === j ? 1 : 0)),
    ),
  );
  if (columns.some((column) => column === null) || x.length <= p.length) return null;
  const variance = sum / (x.length - p.length);
  return p.map((_, i) =>
    p.map((__, j) => variance * (columns[j]?.[i] as number) * (size[i] as number) * (size[j] as number)),
  );
}

/** Solves a small linear system by elimination with the largest pivot; null when it has no one solution. */
export function solved(matrix: readonly (readonly number[])[], right: readonly number[]): number[] | null {
  const n = right.length;
  const a = matrix.map((row, i) => [...row, right[i] as number]);
  for (let c = 0; c < n; c++) {
    let pivot = c;
    for (let r = c + 1; r < n; r++)
      if (Math.abs(a[r]?.[c] as number) > Math.abs(a[pivot]?.[c] as number)) pivot = r;
    const top = a[pivot] as number[];
    a[pivot] = a[c] as number[];
    a[c] = top;
    const head = top[c] as number;
    // Against the diagonal as it was: what is left below 1e-14 of it is rounding.
    if (!(Math.abs(head) > 1e-14 * Math.abs(matrix[c]?.[c] as number))) return null;
    for (let r = 0; r < n; r++) {
      if (r === c) continue;
      const row = a[r] as number[];
      const factor = (row[c] as number) / head;
      for (let k = c; k <= n; k++) row[k] = (row[k] as number) - factor * (top[k] as number);
    }
  }
  return a.map((row, i) => (row[n] as number) / (row[i] as number));
}
