/** Numbers from 0 up to, but never, 1, in multiples of 2^-53. */
export type Random = () => number;

/**
 * A generator of its own: the same seed gives the same numbers for ever. `seed` is a safe integer; anything else throws
 * RangeError, because it comes from code. Two words of xoshiro128** a number, its state from two steps of splitmix64.
 */
export function seededRandom(seed: number): Random {
  if (!Number.isSafeInteger(seed)) throw new RangeError(`seededRandom(${seed}): expected a safe integer`);
  const next = splitmix64(BigInt(seed));
  const [first, second] = [next(), next()];
  const word = xoshiro128([low(first), high(first), low(second), high(second)]);
  return () => ((word() >>> 5) * 2 ** 26 + (word() >>> 6)) / 2 ** 53;
}

/**
 * xoshiro128** 1.1: 32-bit words from a state that is not all zero. Source: D. Blackman, S. Vigna, Scrambled linear
 * pseudorandom number generators, ACM Trans. Math. Softw. 47 (2021), and the authors' public-domain C code.
 */
export function xoshiro128(state: readonly [number, number, number, number]): () => number {
  let [s0, s1, s2, s3] = state;
  return () => {
    const word = Math.imul(rotateLeft(Math.imul(s1, 5), 7), 9);
    const shifted = s1 << 9;
    s2 ^= s0;
    s3 ^= s1;
    s1 ^= s2;
    s0 ^= s3;
    s2 ^= shifted;
    s3 = rotateLeft(s3, 11);
    return word >>> 0;
  };
}

/**
 * splitmix64: 64-bit words, as the authors of xoshiro advise for its state. Source: G. L. Steele, D. Lea, C. H. Flood,
 * Fast splittable pseudorandom number generators, OOPSLA 2014.
 */
export function splitmix64(seed: bigint): () => bigint {
  let state = BigInt.asUintN(64, seed);
  return () => {
    state = BigInt.asUintN(64, state + 0x9e3779b97f4a7c15n);
    const mixed = BigInt.asUintN(64, (state ^ (state >> 30n)) * 0xbf58476d1ce4e5b9n);
    const again = BigInt.asUintN(64, (mixed ^ (mixed >> 27n)) * 0x94d049bb133111ebn);
    return again ^ (again >> 31n);
  };
}

function rotateLeft(word: number, by: number): number {
  return (word << by) | (word >>> (32 - by));
}

function low(word: bigint): number {
  return Number(BigInt.asUintN(32, word));
}

function high(word: bigint): number {
  return Number(word >> 32n);
}
