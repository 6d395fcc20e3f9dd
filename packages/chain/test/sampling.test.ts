import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Kept } from '../src/sampling/kept.js';
import { normalQuantile, shapeNormal } from '../src/sampling/normal.js';
import { orderStatistics } from '../src/sampling/order-statistics.js';
import { randomBits } from '../src/sampling/random.js';
import { directionNumbers, ScrambledSobol, SOBOL_DIMENSIONS } from '../src/sampling/sobol.js';
import { studentQuantile } from '../src/sampling/student.js';

describe('directionNumbers', () => {
  // The first points in three dimensions as printed in S. Joe and F. Y. Kuo, Notes on generating Sobol sequences (2008),
  // section 2; from memory, in the Gray code order used here.
  it('gives the first points of the published sequence', () => {
    const points = [
      [0, 0, 0],
      [0.5, 0.5, 0.5],
      [0.75, 0.25, 0.25],
      [0.25, 0.75, 0.75],
      [0.375, 0.375, 0.625],
      [0.875, 0.875, 0.125],
      [0.625, 0.125, 0.875],
      [0.125, 0.625, 0.375],
      [0.1875, 0.3125, 0.9375],
      [0.6875, 0.8125, 0.4375],
    ];
    const words = [0, 0, 0];
    const directions = [0, 1, 2].map(directionNumbers);
    points.forEach((point, n) => {
      expect(words.map((word) => (word >>> 0) / 2 ** 32)).toEqual(point);
      const change = 31 - Math.clz32((n + 1) & -(n + 1));
      directions.forEach((v, d) => (words[d]! ^= v[change]!));
    });
  });
  it('holds well-formed numbers for at least 64 dimensions: the k-th has its last bit set at place k', () => {
    expect(SOBOL_DIMENSIONS).toBeGreaterThanOrEqual(64);
    for (let d = 0; d < SOBOL_DIMENSIONS; d++) directionNumbers(d).forEach((word, k) => expect(word << k).toBe(1 << 31));
  });
  it('uses a different polynomial and start in each dimension', () => {
    const all = Array.from({ length: SOBOL_DIMENSIONS }, (_, d) => directionNumbers(d).join());
    expect(new Set(all).size).toBe(SOBOL_DIMENSIONS);
  });
});

describe('ScrambledSobol', () => {
  const draw = (dimensions: number, seed: number, count: number) => {
    const columns = Array.from({ length: dimensions }, () => new Float64Array(count));
    new ScrambledSobol(dimensions, seed).next(columns, count);
    return columns;
  };
  it('puts one of 2^k points in each of 2^k equal parts of every dimension', () => {
    for (const column of draw(SOBOL_DIMENSIONS, 3, 256)) expect(new Set(column.map((u) => Math.floor(u * 256))).size).toBe(256);
  });
  it('fills the square of the first two dimensions as a (0, m, 2) net: one point in each box of area 2^-m', () => {
    const [x, y] = draw(2, 11, 64);
    for (let k = 0; k <= 6; k++) {
      const [wide, high] = [2 ** k, 2 ** (6 - k)];
      expect(new Set(x!.map((u, i) => Math.floor(u * wide) * high + Math.floor(y![i]! * high))).size).toBe(64);
    }
  });
  it('goes on where it stopped, whatever the blocks', () => {
    const whole = draw(5, 7, 96);
    const points = new ScrambledSobol(5, 7);
    const parts = [32, 1, 63].map((count) => {
      const columns = Array.from({ length: 5 }, () => new Float64Array(count));
      points.next(columns, count);
      return columns;
    });
    expect(parts.flatMap((columns) => [...columns[4]!])).toEqual([...whole[4]!]);
  });
  it('is another set for another seed and the same for the same', () => {
    expect(draw(3, 1, 16)).toEqual(draw(3, 1, 16));
    expect(draw(3, 1, 16)).not.toEqual(draw(3, 2, 16));
  });
  it('errs far less than random draws on a smooth product, on average over scrambles', () => {
    const count = 1024;
    const error = (columns: readonly Float64Array[]) => {
      let sum = 0;
      for (let i = 0; i < count; i++) sum += columns.reduce((product, column) => product * (0.5 + column[i]!), 1);
      return (sum / count - 1) ** 2;
    };
    const random = (seed: number) => {
      const bits = randomBits(seed);
      return Array.from({ length: 6 }, () => Float64Array.from({ length: count }, () => (bits() + 0.5) / 2 ** 32));
    };
    const mean = (one: (seed: number) => number) => Array.from({ length: 30 }, (_, seed) => one(seed)).reduce((a, b) => a + b, 0) / 30;
    expect(mean((seed) => error(draw(6, seed, count)))).toBeLessThan(mean((seed) => error(random(seed))) / 100);
  });
  it('pads dimensions beyond the table with random numbers', () => {
    const column = draw(SOBOL_DIMENSIONS + 1, 5, 4096)[SOBOL_DIMENSIONS]!;
    expect(column.reduce((a, b) => a + b, 0) / 4096).toBeCloseTo(0.5, 1);
    expect(new Set(column).size).toBe(4096);
  });
});

describe('normalQuantile', () => {
  // Abramowitz and Stegun, Handbook of Mathematical Functions (1964), table 26.5 and common tables (from memory).
  it.each([
    [0.5, 0],
    [0.75, 0.674489750196],
    [0.975, 1.95996398454],
    [0.999, 3.090232306168],
    [1e-9, -5.997807015],
  ])('of %d is %d', (p, z) => expect(normalQuantile(p)).toBeCloseTo(z, 9));
  it('is odd about one half', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 0.5, noNaN: true }), (p) => {
        expect(normalQuantile(1 - p)).toBeCloseTo(-normalQuantile(p), 8);
      }),
    );
  });
});

describe('shapeNormal', () => {
  it('gives the exact quantile to 7e-10 of a deviation, all the way into the tails', () => {
    const bits = randomBits(2);
    const shares = Float64Array.from({ length: 50_000 }, (_, i) =>
      i < 40_000 ? (bits() + 0.5) / 2 ** 32 : 2 ** (-32 * ((i - 40_000) / 10_000)),
    );
    const shaped = shares.slice(0, 49_999).map((u) => Math.min(u, 1 - 2 ** -33));
    const exact = shaped.map((u) => 3 + 2 * normalQuantile(u));
    shapeNormal(shaped, shaped.length, 3, 2);
    shaped.forEach((z, i) => expect(Math.abs(z - exact[i]!)).toBeLessThan(1.4e-9));
  });
});
describe('studentQuantile', () => {
  // NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.2, critical values of Student's t (from memory), three digits.
  it.each([
    [0.975, 1, 12.706],
    [0.975, 2, 4.303],
    [0.975, 3, 3.182],
    [0.975, 5, 2.571],
    [0.975, 10, 2.228],
    [0.975, 30, 2.042],
    [0.975, 100, 1.984],
    [0.975, Infinity, 1.96],
    [0.95, 7, 1.895],
    [0.995, 3, 5.841],
    [0.999, 20, 3.552],
  ])('of %d with %d degrees of freedom is %d', (p, freedom, t) => expect(Math.abs(studentQuantile(p, freedom) - t)).toBeLessThan(6e-4));
  it('is the tangent with one degree of freedom (Cauchy)', () => {
    for (const p of [0.51, 0.6, 0.9, 0.9999]) expect(studentQuantile(p, 1) / Math.tan(Math.PI * (p - 0.5))).toBeCloseTo(1, 10);
  });
  it('has its closed form with two degrees of freedom', () => {
    for (const p of [0.6, 0.8, 0.975, 0.99999]) {
      const a = 2 * p - 1;
      expect(studentQuantile(p, 2) / (a * Math.sqrt(2 / (1 - a * a)))).toBeCloseTo(1, 9);
    }
  });
  it('approaches the normal one', () => expect(studentQuantile(0.975, 1e6)).toBeCloseTo(normalQuantile(0.975), 5));
  it('is odd', () => expect(studentQuantile(0.1, 4)).toBe(-studentQuantile(0.9, 4)));
});

describe('orderStatistics and Kept', () => {
  const blocks = (values: Float64Array, see: (block: Float64Array) => void) => {
    for (let start = 0; start < values.length; start += 1000) see(values.subarray(start, start + 1000));
  };
  const check = (values: Float64Array) => {
    const sorted = values.slice().sort();
    const ranks = [...new Set([0, 0.025, 0.05, 0.5, 0.95, 0.975, 1].map((p) => Math.round(p * (values.length - 1))))];
    const found = orderStatistics(values, ranks);
    expect([...found]).toEqual(ranks.map((rank) => sorted[rank]));
    const shares = () => ranks.map((rank) => [rank / values.length, rank / values.length] as const);
    // Told nothing, it keeps nothing beyond the first samples and must look again.
    for (const options of [{ shares }, {}]) {
      const kept = new Kept(values.length, sorted[values.length >> 1]!, options);
      blocks(values, (block) => kept.add(block, block.length));
      if (!kept.holds(ranks)) {
        kept.lookAgain(ranks);
        blocks(values, (block) => kept.addAgain(block, block.length));
      }
      expect(kept.holds(ranks)).toBe(true);
      expect([...kept.at(ranks)]).toEqual(ranks.map((rank) => sorted[rank]));
    }
  };
  it('leaves samples without a value out', () => {
    for (const samples of [3000, 30_000]) {
      const kept = new Kept(samples, 0.5, { shares: () => [[0, 1]], window: { low: 100, high: samples - 11 } });
      blocks(
        Float64Array.from({ length: samples }, (_, i) => (i % 3 === 0 ? NaN : i)),
        (block) => kept.add(block, block.length),
      );
      const count = (samples * 2) / 3;
      expect(kept.moments(1)).toMatchObject({ count, mean: samples / 2 });
      expect(kept.outside()).toEqual({ low: 66 / count, high: 7 / count });
      expect(kept.holds([0, 1, count - 1])).toBe(true);
      expect([...kept.at([0, 1, count - 1])]).toEqual([1, 2, samples - 1]);
    }
  });
  it('keeps few samples, and those that are asked for, where draws do not drift', () => {
    const values = Float64Array.from({ length: 100_000 }, () => u() + u() + u());
    const kept = new Kept(values.length, 1.5, { shares: () => [[0.05, 0.05], [0.5, 0.5]] }); // prettier-ignore
    blocks(values, (block) => kept.add(block, block.length));
    expect(kept.holds([5000, 50_000])).toBe(true);
    expect(kept.holds([5000, 80_000])).toBe(false);
    expect(kept.size).toBeLessThan(15_000);
  });
  const even = randomBits(5);
  const u = () => (even() + 0.5) / 2 ** 32;
  it.each([
    ['evenly spread values', 40_000, () => u()],
    ['bell-shaped values', 40_000, () => u() + u() + u()],
    ['a far outlier', 40_000, (i: number) => (i === 17 ? 1e300 : u())],
    ['a far outlier among the last', 40_000, (i: number) => (i === 39_017 ? 1e300 : u())],
    ['an outlier whose bin would not fit into 32 bits', 40_000, (i: number) => (i === 39_017 ? 2 ** 32 : u())],
    ['values that fall, and the first all one', 40_000, (i: number) => Math.min(0, 9000 - i)],
    ['many ties', 40_000, () => Math.floor(u() * 3)],
    ['values over many powers of ten', 40_000, () => 10 ** (u() * 600 - 300)],
    ['one value throughout', 40_000, () => 7],
    ['neighbouring doubles', 5_000, () => 1 + Math.floor(u() * 9) * Number.EPSILON],
    ['both ends of the range of numbers', 5_000, () => (u() < 0.5 ? -1.7e308 : 1.7e308)],
    ['values that rise all the time', 40_000, (i: number) => i],
    ['few values', 7, () => u()],
    ['one value', 1, () => u()],
  ])('finds what sorting finds: %s', (_, count, value) => check(Float64Array.from({ length: count }, (__, i) => value(i))));
});
