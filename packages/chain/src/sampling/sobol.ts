import { joeKuo } from './data/joe-kuo.js';
import { randomBits, type RandomBits } from './random.js';

const BITS = 32;
const UNIT = 2 ** -BITS;

const lines = joeKuo
  .trim()
  .split('\n')
  .map((line) => line.split(' ').map(Number));

/** Dimensions with direction numbers; further ones are drawn at random, which is sound but converges like random draws. */
export const SOBOL_DIMENSIONS = lines.length + 1;

/**
 * Direction numbers of one dimension, from 0, each in the upper bits of a 32-bit word (I. M. Sobol', USSR Comput. Math.
 * Math. Phys. 7 (1967) 86; recurrence as in Joe and Kuo 2008, eq. 2 and 3).
 */
export function directionNumbers(dimension: number): Int32Array {
  const v = new Int32Array(BITS);
  if (dimension === 0) {
    for (let k = 0; k < BITS; k++) v[k] = 1 << (BITS - 1 - k);
    return v;
  }
  const [polynomial, ...m] = lines[dimension - 1]! as [number, ...number[]];
  const degree = m.length;
  for (let k = 0; k < BITS; k++) {
    if (k < degree) {
      v[k] = m[k]! << (BITS - 1 - k);
      continue;
    }
    let word = v[k - degree]! ^ (v[k - degree]! >>> degree);
    for (let i = 1; i < degree; i++) if ((polynomial >> (degree - i)) & 1) word ^= v[k - i]!;
    v[k] = word;
  }
  return v;
}

/**
 * A scrambled Sobol sequence: evenly spread points of the unit cube, random enough that independent scrambles tell the
 * error. Scrambled by a random lower triangular matrix for each dimension and a random digital shift (J. Matoušek, On the
 * L2-discrepancy for anchored boxes, J. Complexity 14 (1998) 527). Points lie strictly inside 0 to 1.
 */
export class ScrambledSobol {
  private readonly directions: Int32Array;
  private readonly words: Int32Array;
  private readonly padding: RandomBits;
  private changes = new Uint8Array(0);
  private index = 0;

  /**
   * @param dimensions - 1 or more; beyond SOBOL_DIMENSIONS padded with random numbers
   * @param seed - the same seed gives the same points
   */
  constructor(
    readonly dimensions: number,
    seed: number,
  ) {
    const bits = randomBits(seed);
    const tabulated = Math.min(dimensions, SOBOL_DIMENSIONS);
    this.directions = new Int32Array(tabulated * BITS);
    this.words = new Int32Array(tabulated);
    for (let d = 0; d < tabulated; d++) {
      this.directions.set(scrambled(directionNumbers(d), bits), d * BITS);
      this.words[d] = bits() | 0;
    }
    this.padding = bits;
  }

  /** Writes the next `count` points, one column for each dimension. */
  next(columns: readonly Float64Array[], count: number): void {
    if (this.changes.length < count) this.changes = new Uint8Array(count);
    const { changes, directions, words } = this;
    // In Gray code order each point differs from the one before by one direction number: that of the lowest bit set.
    for (let i = 0; i < count; i++) {
      const n = this.index + i + 1;
      changes[i] = 31 - Math.clz32(n & -n);
    }
    this.index += count;
    for (let d = 0; d < words.length; d++) {
      const column = columns[d]!;
      const base = d * BITS;
      let word = words[d]!;
      for (let i = 0; i < count; i++) {
        column[i] = ((word >>> 0) + 0.5) * UNIT;
        word ^= directions[base + changes[i]!]!;
      }
      words[d] = word;
    }
    for (let d = words.length; d < this.dimensions; d++) {
      const column = columns[d]!;
      for (let i = 0; i < count; i++) column[i] = (this.padding() + 0.5) * UNIT;
    }
  }
}

/** Multiplies each word by a random lower triangular matrix over the field of two elements, ones on its diagonal. */
function scrambled(directions: Int32Array, bits: RandomBits): Int32Array {
  const rows = Int32Array.from({ length: BITS }, (_, r) => {
    const diagonal = 1 << (BITS - 1 - r);
    return (bits() & ~((diagonal << 1) - 1)) | diagonal;
  });
  return directions.map((word) => {
    let out = 0;
    for (let r = 0; r < BITS; r++) {
      let parity = word & rows[r]!;
      parity ^= parity >>> 16;
      parity ^= parity >>> 8;
      parity ^= parity >>> 4;
      out = (out << 1) | ((0x6996 >>> (parity & 15)) & 1);
    }
    return out;
  });
}
