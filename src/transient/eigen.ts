/** Eigenvalues and eigenvectors of a small symmetric matrix, by Jacobi's rotations. */

export interface Eigen {
  /** n values. */
  readonly values: readonly number[];
  /** n × n; vectors[k] belongs to values[k], has length 1 and is at right angles to the others. */
  readonly vectors: readonly (readonly number[])[];
}

/**
 * Decomposes a symmetric n × n matrix. Each sweep turns every pair of axes so that their off-diagonal element
 * vanishes; the rest shrinks with the square from sweep to sweep, so that sixteen rows need fewer than ten.
 * Throws when the matrix holds something that is no number.
 */
export function eigen(matrix: readonly (readonly number[])[]): Eigen {
  const n = matrix.length;
  const a = matrix.map((row) => [...row]);
  const v = a.map((_, i) => a.map((__, j) => (i === j ? 1 : 0)));
  const at = (m: number[][], i: number, j: number): number => (m[i] as number[])[j] as number;
  const size = a.flat().reduce((total, x) => total + x * x, 0);
  if (!Number.isFinite(size)) throw new Error('the resistance matrix is not finite');
  for (;;) {
    let rest = 0;
    for (let i = 0; i < n; i++) for (let j = 0; j < i; j++) rest += at(a, i, j) ** 2;
    if (rest <= 1e-32 * size) break;
    for (let p = 0; p < n; p++) for (let q = p + 1; q < n; q++) if (at(a, p, q) !== 0) rotate(a, v, p, q);
  }
  return { values: a.map((_, k) => at(a, k, k)), vectors: v };
}

/** Turns axes p and q of the matrix `a`, and with them the vectors `v`, so that a[p][q] becomes 0. */
function rotate(a: number[][], v: number[][], p: number, q: number): void {
  const [rowP, rowQ] = [a[p] as number[], a[q] as number[]];
  const theta = ((rowQ[q] as number) - (rowP[p] as number)) / (2 * (rowP[q] as number));
  const t = (theta < 0 ? -1 : 1) / (Math.abs(theta) + Math.hypot(theta, 1));
  const c = 1 / Math.hypot(t, 1);
  const s = t * c;
  for (const row of a) turn(row, p, q, c, s);
  for (let k = 0; k < a.length; k++) {
    const [x, y] = [rowP[k] as number, rowQ[k] as number];
    rowP[k] = c * x - s * y;
    rowQ[k] = s * x + c * y;
  }
  // What is left there is rounding.
  rowP[q] = 0;
  rowQ[p] = 0;
  const [vP, vQ] = [v[p] as number[], v[q] as number[]];
  for (let k = 0; k < v.length; k++) {
    const [x, y] = [vP[k] as number, vQ[k] as number];
    vP[k] = c * x - s * y;
    vQ[k] = s * x + c * y;
  }
}

/** Turns the coordinates p and q of one row. */
function turn(row: number[], p: number, q: number, c: number, s: number): void {
  const [x, y] = [row[p] as number, row[q] as number];
  row[p] = c * x - s * y;
  row[q] = s * x + c * y;
}
