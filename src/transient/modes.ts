/**
 * The modes of the coils that charge freely at the same time.
 *
 * For them  L·dI/dt = u − M·I,  M = R·1 + shared resistances: symmetric, and positive definite since R > 0. With the
 * eigenvectors q and eigenvalues λ of M the circuit falls apart into single coils: qᵀI tends to qᵀu/λ with the rate
 * λ/L. This is exact; no step of time is involved.
 */
import type { Circuit } from './circuit.ts';
import { type Eigen, eigen } from './eigen.ts';
import type { Exponentials } from './exponentials.ts';

/**
 * Currents [A] of the coils `free` from the instant at which they are `now`, driven by `push` [V]; all three in the
 * same order. What comes out has that order, too.
 */
export type Solve = (
  free: readonly number[],
  now: readonly number[],
  push: readonly number[],
) => Exponentials[];

/** A solver for one circuit. The modes of a set of coils are computed once, however often it recurs. */
export function modesOf({ ohm, henry }: Circuit, shared: readonly (readonly number[])[]): Solve {
  const known = new Map<number, Eigen>();
  const modes = (free: readonly number[]): Eigen => {
    const key = free.reduce((bits, coil) => bits | (1 << coil), 0);
    const found =
      known.get(key) ??
      eigen(free.map((a) => free.map((b) => (shared[a]?.[b] as number) + (a === b ? ohm : 0))));
    known.set(key, found);
    return found;
  };
  return (free, now, push) => {
    const { values, vectors } = modes(free);
    const rates = values.map((value) => value / henry);
    const along = (vector: readonly number[], x: readonly number[]): number =>
      vector.reduce((total, v, i) => total + v * (x[i] as number), 0);
    const ends = vectors.map((vector, k) => along(vector, push) / (values[k] as number));
    const starts = vectors.map((vector) => along(vector, now));
    return free.map((_, i) => ({
      level: vectors.reduce((total, vector, k) => total + (vector[i] as number) * (ends[k] as number), 0),
      amounts: vectors.map(
        (vector, k) => (vector[i] as number) * ((starts[k] as number) - (ends[k] as number)),
      ),
      rates,
    }));
  };
}
