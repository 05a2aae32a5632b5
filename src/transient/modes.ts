/**
 * The modes of the coils that charge freely at the same time.
 *
 * For them  L·dI/dt = u − M·I,  L and R diagonal, M = R + shared resistances: symmetric, and positive definite since
 * R > 0. With y = √L·I it reads dy/dt = √L⁻¹·u − N·y, N = √L⁻¹·M·√L⁻¹, and with the eigenvectors q and eigenvalues λ of N
 * it falls apart into single coils: qᵀy tends to qᵀ√L⁻¹·u/λ with the rate λ. This is exact; no step of time is involved.
 */
import { type Circuit, primaryOf } from './circuit.ts';
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
export function modesOf(circuit: Circuit, shared: readonly (readonly number[])[]): Solve {
  const known = new Map<number, Eigen>();
  const coils = Array.from({ length: circuit.coils }, (_, coil) => primaryOf(circuit, coil));
  const roots = coils.map(({ henry }) => Math.sqrt(henry));
  const root = (coil: number): number => roots[coil] as number;
  const modes = (free: readonly number[]): Eigen => {
    const key = free.reduce((bits, coil) => bits | (1 << coil), 0);
    const found =
      known.get(key) ??
      eigen(
        free.map((a) =>
          free.map(
            (b) =>
              ((shared[a]?.[b] as number) + (a === b ? (coils[a]?.ohm as number) : 0)) / (root(a) * root(b)),
          ),
        ),
      );
    known.set(key, found);
    return found;
  };
  return (free, now, push) => {
    const { values: rates, vectors } = modes(free);
    const along = (vector: readonly number[], of: (i: number) => number): number =>
      vector.reduce((total, v, i) => total + v * of(i), 0);
    const ends = vectors.map(
      (vector, k) =>
        along(vector, (i) => (push[i] as number) / root(free[i] as number)) / (rates[k] as number),
    );
    const starts = vectors.map((vector) =>
      along(vector, (i) => (now[i] as number) * root(free[i] as number)),
    );
    return free.map((coil, i) => ({
      level: vectors.reduce((total, v, k) => total + (v[i] as number) * (ends[k] as number), 0) / root(coil),
      amounts: vectors.map(
        (vector, k) => ((vector[i] as number) * ((starts[k] as number) - (ends[k] as number))) / root(coil),
      ),
      rates,
    }));
  };
}
