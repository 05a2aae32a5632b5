/**
 * Points that fill a cube of many dimensions more evenly than random ones: the sequence of Halton (1960, Numerische
 * Mathematik 2), each digit permuted at random (Owen 2017, "A randomized Halton algorithm in R", arXiv:1706.02808). A
 * point depends on its number and the seed alone, so that any thread can work any of them out.
 */

/** Digits are kept until the steps between values are finer than this. */
const FINE = 2 ** -32;

interface Dimension {
  readonly base: number;
  readonly digits: number;
  /** One permutation of the digits after the other. */
  readonly permuted: Uint16Array;
}

export class Sequence {
  private readonly of: readonly Dimension[];

  constructor(dimensions: number, seed: number) {
    this.of = primes(dimensions).map((base, i) => {
      const digits = Math.ceil(-Math.log(FINE) / Math.log(base));
      const permuted = new Uint16Array(digits * base);
      const random = randoms(seed, i);
      for (let k = 0; k < digits; k++) permute(permuted.subarray(k * base, (k + 1) * base), random);
      return { base, digits, permuted };
    });
  }

  /** The point of a number, from 0 on, each place between 0 and 1, ends excluded. */
  point(index: number, into: Float64Array): void {
    for (let d = 0; d < this.of.length; d++) {
      const { base, digits, permuted } = this.of[d] as Dimension;
      let [rest, scale, value] = [index, 1, 0];
      for (let k = 0; k < digits; k++) {
        const digit = rest % base;
        rest = (rest - digit) / base;
        scale /= base;
        value += (permuted[k * base + digit] as number) * scale;
      }
      into[d] = value + scale / 2;
    }
  }
}

function primes(count: number): number[] {
  const found: number[] = [];
  for (let n = 2; found.length < count; n++) if (found.every((p) => p * p > n || n % p !== 0)) found.push(n);
  return found;
}

/** In an order that is as likely as any other (Fisher and Yates). */
function permute(digits: Uint16Array, random: () => number): void {
  for (let i = 0; i < digits.length; i++) digits[i] = i;
  for (let i = digits.length - 1; i > 0; i--) {
    const other = Math.floor(random() * (i + 1));
    [digits[i], digits[other]] = [digits[other] as number, digits[i] as number];
  }
}

/** Numbers from 0 to 1 that look random: a counter of 32 bits, well mixed, for each seed and dimension. */
function randoms(seed: number, dimension: number): () => number {
  let state = mixed(mixed(seed >>> 0) ^ (dimension + 1));
  return () => {
    state = (state + 0x9e3779b9) >>> 0;
    return mixed(state) / 2 ** 32;
  };
}

function mixed(value: number): number {
  let x = value >>> 0;
  x = Math.imul(x ^ (x >>> 16), 0x85ebca6b);
  x = Math.imul(x ^ (x >>> 13), 0xc2b2ae35);
  return (x ^ (x >>> 16)) >>> 0;
}
