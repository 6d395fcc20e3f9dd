/** A source of 32 random bits at a time. */
export type RandomBits = () => number;

/**
 * The generator xoshiro128** of D. Blackman and S. Vigna, Scrambled linear pseudorandom number generators, ACM Trans. Math.
 * Softw. 47 (2021) 36, its state filled from the seed by a Weyl sequence with the mixing of murmur3. The same seed gives the
 * same numbers on every machine.
 *
 * @param seed - any number; its integer part counts, modulo 2³²
 */
export function randomBits(seed: number): RandomBits {
  let weyl = seed | 0;
  const word = () => {
    weyl = (weyl + 0x9e3779b9) | 0;
    let z = weyl;
    z = Math.imul(z ^ (z >>> 16), 0x85ebca6b);
    z = Math.imul(z ^ (z >>> 13), 0xc2b2ae35);
    return z ^ (z >>> 16);
  };
  let [a, b, c, d] = [word(), word(), word(), word()];
  return () => {
    const product = Math.imul(b, 5);
    const result = Math.imul((product << 7) | (product >>> 25), 9);
    const shifted = b << 9;
    c ^= a;
    d ^= b;
    b ^= c;
    a ^= d;
    c ^= shifted;
    d = (d << 11) | (d >>> 21);
    return result >>> 0;
  };
}
