/**
 * Readings that are normally distributed: each with an error of its own, and all moved together by what nobody knows of
 * the parts. Their covariance is S = N + U·Uᵀ, N diagonal, a column of U for each thing that moves several readings, as
 * much as one standard deviation of it does. Everything goes by the formula of Woodbury: what has to be solved has a row
 * for each column of U, not for each reading.
 */

export interface Gauss {
  /** ln of the determinant of S. */
  readonly lnDet: number;
  /** S⁻¹·v. */
  weigh(v: readonly number[]): number[];
  /** What the columns most likely are, in their own deviations, when the readings are `r` off. */
  likely(r: readonly number[]): number[];
  /** Variance that is left of column p, in its own. */
  variance(p: number): number;
}

/** What moves a reading by less than this share of its own deviation counts as nothing: most columns hold a few readings only. */
const NOTHING = 1e-3;

export function gaussOf(own: readonly number[], all: readonly (readonly number[])[]): Gauss {
  const least = own.map((v) => NOTHING * Math.sqrt(v));
  // Of each column the readings that it moves, and by how much over their variances.
  const held: number[][] = [];
  const weights: number[][] = [];
  const columns = all.map((column) => {
    const kept = new Float64Array(column.length);
    const [at, over]: [number[], number[]] = [[], []];
    for (let i = 0; i < column.length; i++) {
      const u = column[i] as number;
      if (Math.abs(u) <= (least[i] as number)) continue;
      kept[i] = u;
      at.push(i);
      over.push(u / (own[i] as number));
    }
    held.push(at);
    weights.push(over);
    return kept;
  });
  const sparse = (p: number, v: ArrayLike<number>): number => {
    let sum = 0;
    const [at, over] = [held[p] as number[], weights[p] as number[]];
    for (let j = 0; j < at.length; j++) sum += (over[j] as number) * (v[at[j] as number] as number);
    return sum;
  };
  const inner = columns.map((a, p) => {
    const row: number[] = [];
    for (let q = 0; q <= p; q++)
      row.push(
        (held[q]?.length ?? 0) < (held[p]?.length ?? 0)
          ? sparse(q, a)
          : sparse(p, columns[q] as Float64Array),
      );
    row[p] = (row[p] as number) + 1;
    return row;
  });
  const { lower, lnDet } = cholesky(inner);
  const likely = (r: readonly number[]): number[] =>
    solved(
      lower,
      columns.map((_, p) => sparse(p, r)),
    );
  return {
    lnDet: lnDet + own.reduce((sum, v) => sum + Math.log(v), 0),
    likely,
    variance: (p) =>
      solved(
        lower,
        columns.map((_, q) => (p === q ? 1 : 0)),
      )[p] as number,
    weigh(v) {
      const theta = likely(v);
      const out = v.map((value, i) => value / (own[i] as number));
      theta.forEach((t, p) => {
        const [at, over] = [held[p] as number[], weights[p] as number[]];
        for (let j = 0; j < at.length; j++) {
          const i = at[j] as number;
          out[i] = (out[i] as number) - t * (over[j] as number);
        }
      });
      return out;
    },
  };
}

export function dot(a: readonly number[], b: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += (a[i] as number) * (b[i] as number);
  return sum;
}

/** Rounding of sums of products. */
const ROUNDING = 1e-14;

/** Lower triangle of a positive definite matrix, given by its own lower triangle; and ln of its determinant. */
function cholesky(matrix: readonly (readonly number[])[]): { lower: number[][]; lnDet: number } {
  const lower: number[][] = [];
  let lnDet = 0;
  matrix.forEach((row, p) => {
    const made: number[] = [];
    for (let q = 0; q <= p; q++) {
      const other = q === p ? made : (lower[q] as number[]);
      let sum = row[q] as number;
      for (let j = 0; j < q; j++) sum -= (made[j] as number) * (other[j] as number);
      // What rounding takes off a large diagonal.
      if (q === p && sum < ROUNDING * (row[p] as number)) sum = ROUNDING * (row[p] as number);
      if (q === p && !(sum > 0)) throw new Error('a covariance that is not positive');
      made.push(q === p ? Math.sqrt(sum) : sum / (other[q] as number));
    }
    lnDet += 2 * Math.log(made[p] as number);
    lower.push(made);
  });
  return { lower, lnDet };
}

/** x of L·Lᵀ·x = b. */
function solved(lower: readonly (readonly number[])[], b: readonly number[]): number[] {
  const y: number[] = [];
  lower.forEach((row, p) => {
    let sum = b[p] as number;
    for (let j = 0; j < p; j++) sum -= (row[j] as number) * (y[j] as number);
    y.push(sum / (row[p] as number));
  });
  for (let p = y.length - 1; p >= 0; p--) {
    let sum = y[p] as number;
    for (let j = p + 1; j < y.length; j++) sum -= (lower[j]?.[p] as number) * (y[j] as number);
    y[p] = sum / (lower[p]?.[p] as number);
  }
  return y;
}

/** Inverse of a small symmetric positive definite matrix; null when it is not. */
export function inverse(matrix: readonly (readonly number[])[]): number[][] | null {
  try {
    const { lower } = cholesky(matrix.map((row, p) => row.slice(0, p + 1)));
    return matrix.map((_, i) =>
      solved(
        lower,
        matrix.map((__, j) => (i === j ? 1 : 0)),
      ),
    );
  } catch {
    return null;
  }
}
