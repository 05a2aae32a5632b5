/** Small dense linear algebra for least squares with a covariance: a few dozen readings, a few unknowns. */

/** Solves A·X = B for several right sides by elimination with pivots. Throws when A is singular. */
export function solve(a: readonly (readonly number[])[], b: readonly (readonly number[])[]): number[][] {
  const n = a.length;
  const rows = a.map((row, i) => [...row, ...(b[i] as readonly number[])]);
  for (let k = 0; k < n; k++) {
    let best = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(at(rows, i, k)) > Math.abs(at(rows, best, k))) best = i;
    [rows[k], rows[best]] = [rows[best] as number[], rows[k] as number[]];
    const pivot = at(rows, k, k);
    if (pivot === 0) throw new Error('the readings leave an unknown open');
    for (let i = k + 1; i < n; i++) {
      const factor = at(rows, i, k) / pivot;
      if (factor !== 0)
        for (let j = k; j < (rows[i] as number[]).length; j++)
          (rows[i] as number[])[j] = at(rows, i, j) - factor * at(rows, k, j);
    }
  }
  const width = b[0]?.length ?? 0;
  const x = a.map(() => Array.from({ length: width }, () => 0));
  for (let k = n - 1; k >= 0; k--)
    for (let c = 0; c < width; c++) {
      let sum = at(rows, k, n + c);
      for (let j = k + 1; j < n; j++) sum -= at(rows, k, j) * at(x, j, c);
      (x[k] as number[])[c] = sum / at(rows, k, k);
    }
  return x;
}

const at = (m: readonly (readonly number[])[], i: number, j: number): number => m[i]?.[j] as number;

export interface Fit {
  /** Unknowns. */
  readonly values: readonly number[];
  /** Standard deviation of each. */
  readonly within: readonly number[];
  /** Sum of squares that is left, each in its own deviation. */
  readonly left: number;
}

/** What readings may be off by, without a cause: each by itself, and many together. */
export interface Errors {
  /** Variance of each reading by itself; above 0. */
  readonly own: readonly number[];
  /** For each thing that moves many readings: by how much it moves each, at one standard deviation. */
  readonly common: readonly (readonly number[])[];
}

/**
 * The covariance's inverse times each column, by the formula of Woodbury: the matrix to be solved has a row for each
 * common error, not for each reading.
 */
function weigh(columns: readonly (readonly number[])[], { own, common }: Errors): number[][] {
  const sum = (a: readonly number[], b: readonly number[]): number =>
    a.reduce((total, value, i) => total + (value * (b[i] as number)) / (own[i] as number), 0);
  if (common.length === 0) return columns.map((c) => c.map((value, i) => value / (own[i] as number)));
  const inner = common.map((a, i) => common.map((b, j) => sum(a, b) + (i === j ? 1 : 0)));
  const moved = solve(
    inner,
    common.map((a) => columns.map((column) => sum(a, column))),
  );
  return columns.map((column, c) =>
    column.map((value, i) => {
      const taken = common.reduce((total, a, k) => total + (a[i] as number) * at(moved, k, c), 0);
      return (value - taken) / (own[i] as number);
    }),
  );
}

/**
 * Generalised least squares: unknowns x so that `apart` − `columns`·x is least under the errors. `columns` holds one
 * list for each unknown. Null when the readings leave an unknown open.
 */
export function leastSquares(
  apart: readonly number[],
  columns: readonly (readonly number[])[],
  errors: Errors,
): Fit | null {
  const weighted = weigh([apart, ...columns], errors);
  const dot = (a: readonly number[], column: number): number =>
    a.reduce((sum, value, i) => sum + value * at(weighted, column, i), 0);
  const all = dot(apart, 0);
  if (columns.length === 0) return { values: [], within: [], left: all };
  const normal = columns.map((column) => columns.map((_, j) => dot(column, j + 1)));
  if (normal.some((row, i) => !((row[i] as number) > 0))) return null;
  const toApart = columns.map((column) => dot(column, 0));
  try {
    const unit = columns.map((_, i) => columns.map((__, j) => (i === j ? 1 : 0)));
    const inverse = solve(normal, unit);
    const values = inverse.map((row) => row.reduce((sum, v, j) => sum + v * (toApart[j] as number), 0));
    const within = inverse.map((row, i) => Math.sqrt(Math.max(0, row[i] as number)));
    const explained = values.reduce((sum, v, i) => sum + v * (toApart[i] as number), 0);
    return values.every(Number.isFinite) ? { values, within, left: all - explained } : null;
  } catch {
    return null;
  }
}
