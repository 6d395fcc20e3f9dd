import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exponential } from '../src/index.js';

/** How many doubles apart two positive ones are. */
const apart = (a: number, b: number) => {
  const bits = new BigInt64Array(Float64Array.of(a, b).buffer);
  return Math.abs(Number(bits[0]! - bits[1]!));
};

describe('exponential', () => {
  it('is within 2 units in the last place of Math.exp from -700 to 700', () => {
    const near = (x: number) => {
      expect(apart(exponential(x), Math.exp(x))).toBeLessThanOrEqual(2);
    };
    fc.assert(fc.property(fc.double({ min: -700, max: 700, noNaN: true }), near), { numRuns: 5000 });
    fc.assert(fc.property(fc.double({ min: -3, max: 3, noNaN: true }), near), { numRuns: 5000 });
    for (let k = -60_000; k <= 60_000; k += 7) near(((k + 0.5) * Math.LN2) / 64); // where the rounding turns
  });
  it('agrees at both ends of the range of numbers', () => {
    for (let x = -746; x < -700; x += 0.01) expect(Math.abs(exponential(x) - Math.exp(x)) <= 2 ** -1072 + Math.exp(x) * 4e-16).toBe(true);
    for (let x = 700; x < 709.7; x += 0.01) expect(apart(exponential(x), Math.exp(x))).toBeLessThanOrEqual(2);
    expect([709.8, 1e300, Infinity].map((x) => exponential(x))).toEqual([Infinity, Infinity, Infinity]);
    expect([-750, -1e300, -Infinity].map((x) => exponential(x))).toEqual([0, 0, 0]);
  });
  it('is exact at 0 and has no value for NaN', () => {
    expect([exponential(0), exponential(-0)]).toEqual([1, 1]);
    expect(exponential(NaN)).toBeNaN();
  });
  it('turns sums into products', () => {
    const shares = fc.double({ min: -300, max: 300, noNaN: true });
    fc.assert(
      fc.property(shares, shares, (a, b) => {
        expect((exponential(a) * exponential(b)) / exponential(a + b)).toBeCloseTo(1, 12);
      }),
    );
  });
});
