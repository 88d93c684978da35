/** Numbers from 0 up to 1, the same for the same seed. */
export type Random = () => number;

/**
 * The generator xoshiro128** of D. Blackman and S. Vigna ("Scrambled linear pseudorandom number generators",
 * ACM Transactions on Mathematical Software 47 (2021) 4), its state filled from the seed by splitmix32.
 */
export function randomFrom(seed: number): Random {
  let filling = seed | 0;
  const fill = (): number => {
    filling = (filling + 0x9e3779b9) | 0;
    let mixed = filling ^ (filling >>> 16);
    mixed = Math.imul(mixed, 0x21f0aaad);
    mixed ^= mixed >>> 15;
    mixed = Math.imul(mixed, 0x735a2d97);
    return mixed ^ (mixed >>> 15);
  };
  const next = scrambled(fill(), fill(), fill(), fill());
  return () => next() / 2 ** 32;
}

/** Whole numbers from 0 up to 2³², from a state of four 32-bit words that are not all 0. */
export function scrambled(s0: number, s1: number, s2: number, s3: number): () => number {
  return () => {
    const result = Math.imul(rotated(Math.imul(s1, 5), 7), 9);
    const shifted = s1 << 9;
    s2 ^= s0;
    s3 ^= s1;
    s1 ^= s2;
    s0 ^= s3;
    s2 ^= shifted;
    s3 = rotated(s3, 11);
    return result >>> 0;
  };
}

const rotated = (x: number, by: number): number => (x << by) | (x >>> (32 - by));

/** Normally distributed, mean 0 and standard deviation 1 (Box and Müller, Ann. Math. Statist. 29 (1958) 610–611). */
export function normalFrom(random: Random): Random {
  return () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}
