import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  betaIncomplete,
  betaQuantile,
  binomialCdf,
  binomialPmf,
  chiSquareCdf,
  chiSquareQuantile,
  clopperPearson,
  erf,
  erfc,
  fisherCdf,
  fisherQuantile,
  gammaIncomplete,
  gammaIncompleteUpper,
  hypergeometricCdf,
  logGamma,
  negativeBinomialCdf,
  normalCdf,
  normalQuantile,
  poissonCdf,
  poissonInterval,
  studentCdf,
  studentQuantile,
} from '../../src/statistics/index.js';
import { OutOfRange } from '../../src/errors.js';

// Tables printed in every handbook of statistics (Abramowitz and Stegun ch. 6, 7, 26, from memory); half a digit of the print.
describe('published tables', () => {
  it.each([
    [0.5, 0.5723649429],
    [1, 0],
    [2, 0],
    [1.5, -0.1207822376],
    [10, 12.8018274801],
    [100, 359.1342053696],
    [1e-5, 11.5129196929],
  ])('ln Γ(%d) is %d', (x, expected) => expect(logGamma(x)).toBeCloseTo(expected, 9));
  it.each([
    [0.5, 0.5204998778],
    [1, 0.8427007929],
    [2, 0.995322265],
  ])('erf(%d) is %d', (x, expected) => expect(erf(x)).toBeCloseTo(expected, 10));
  it('erfc keeps its digits in the tail', () => {
    expect(erfc(3) / 2.209049699858544e-5).toBeCloseTo(1, 12);
    expect(erfc(10) / 2.088487583762545e-45).toBeCloseTo(1, 11);
    expect(erfc(-1)).toBeCloseTo(1.8427007929, 10);
  });
  it.each([
    [0.9, 1.281552],
    [0.95, 1.644854],
    [0.975, 1.959964],
    [0.99, 2.326348],
    [0.995, 2.575829],
    [0.999, 3.090232],
    [1e-6, -4.753424],
  ])('normal quantile of %d is %d', (p, z) => expect(Math.abs(normalQuantile(p) - z)).toBeLessThan(6e-7));
  it.each([
    [0.975, 1, 12.706],
    [0.975, 2, 4.303],
    [0.975, 5, 2.571],
    [0.975, 10, 2.228],
    [0.95, 30, 1.697],
    [0.995, 120, 2.617],
    [0.6, 7, 0.263],
  ])('t at %d with %d degrees of freedom is %d', (p, freedom, t) => expect(Math.abs(studentQuantile(p, freedom) - t)).toBeLessThan(6e-4));
  it.each([
    [0.95, 1, 3.841],
    [0.95, 5, 11.07],
    [0.95, 10, 18.307],
    [0.95, 100, 124.342],
    [0.05, 10, 3.94],
    [0.01, 20, 8.26],
    [0.995, 2, 10.597],
  ])('chi-square at %d with %d degrees of freedom is %d', (p, freedom, x) =>
    expect(Math.abs(chiSquareQuantile(p, freedom) - x)).toBeLessThan(6e-4),
  );
  it.each([
    [0.95, 1, 10, 4.965],
    [0.95, 5, 20, 2.711],
    [0.95, 10, 10, 2.978],
    [0.99, 3, 12, 5.953],
  ])('F at %d with %d and %d degrees of freedom is %d', (p, n, m, f) => expect(Math.abs(fisherQuantile(p, n, m) - f)).toBeLessThan(6e-4));
  it('the beta sum of small whole arguments', () => {
    expect(betaIncomplete(2, 3, 0.4)).toBeCloseTo(0.5248, 10);
    expect(betaIncomplete(1, 4, 0.3)).toBeCloseTo(1 - 0.7 ** 4, 12);
  });
  it('Clopper and Pearson for 0 of 300 is the closed form 1 - 0.025^(1/300)', () => {
    expect(clopperPearson(0, 300)).toEqual({ low: 0, high: expect.closeTo(1 - 0.025 ** (1 / 300), 12) });
    // 10 of 100 in the published tables: 4.90 to 17.62 %.
    expect(clopperPearson(10, 100).low).toBeCloseTo(0.049, 3);
    expect(clopperPearson(10, 100).high).toBeCloseTo(0.1762, 4);
  });
  it('Poisson interval of a count of 10 is 4.795 to 18.390', () => {
    expect(poissonInterval(10).low).toBeCloseTo(4.795, 3);
    expect(poissonInterval(10).high).toBeCloseTo(18.39, 3);
    expect(poissonInterval(0).high).toBeCloseTo(3.689, 3);
  });
});

describe('identities', () => {
  const share = fc.double({ min: 1e-12, max: 1 - 1e-12, noNaN: true });
  const middle = fc.double({ min: 1e-3, max: 0.999, noNaN: true });
  const shape = fc.double({ min: 0.5, max: 5000, noNaN: true });
  it('quantiles are undone by their distribution function', () => {
    fc.assert(
      fc.property(share, shape, shape, (p, a, b) => {
        expect(Math.abs(normalCdf(normalQuantile(p)) / p - 1)).toBeLessThan(1e-12);
        expect(Math.abs(studentCdf(studentQuantile(p, a), a) - p)).toBeLessThan(1e-9);
        expect(Math.abs(chiSquareCdf(chiSquareQuantile(p, a), a) - p)).toBeLessThan(1e-9);
        const x = betaQuantile(a, b, p);
        const steps = [betaIncomplete(a, b, Math.max(0, x - 1e-15)), betaIncomplete(a, b, Math.min(1, x + 1e-15))];
        expect(p).toBeGreaterThan(steps[0]! - 1e-9);
        expect(p).toBeLessThan(steps[1]! + 1e-9);
      }),
      { numRuns: 300 },
    );
  });
  it('gamma recurrence, complements and the duality of Student and F', () => {
    fc.assert(
      fc.property(shape, fc.double({ min: 0, max: 8000, noNaN: true }), middle, (a, x, p) => {
        expect(Math.abs(logGamma(a + 1) - logGamma(a) - Math.log(a))).toBeLessThan(1e-10);
        expect(gammaIncomplete(a, x) + gammaIncompleteUpper(a, x)).toBeCloseTo(1, 12);
        expect(betaIncomplete(a, 2, p) + betaIncomplete(2, a, 1 - p)).toBeCloseTo(1, 9);
      }),
    );
    expect(fisherQuantile(0.95, 1, 12)).toBeCloseTo(studentQuantile(0.975, 12) ** 2, 8);
    expect(fisherCdf(2.711, 5, 20)).toBeCloseTo(0.95, 4);
    expect(studentQuantile(0.975, Infinity)).toBe(normalQuantile(0.975));
  });
  it('sums of point probabilities are the distribution functions', () => {
    let sum = 0;
    for (let k = 0; k <= 7; k++) sum += binomialPmf(k, 50, 0.12);
    expect(binomialCdf(7, 50, 0.12)).toBeCloseTo(sum, 12);
    expect(poissonCdf(2, 1.5)).toBeCloseTo(Math.exp(-1.5) * (1 + 1.5 + 1.125), 12);
    expect(hypergeometricCdf(0, 5, 10, 50)).toBeCloseTo((40 * 39 * 38 * 37 * 36) / (50 * 49 * 48 * 47 * 46), 12);
    expect(negativeBinomialCdf(0, 2, 0.5)).toBeCloseTo((1 + 2 / 0.5) ** -0.5, 12);
    expect(negativeBinomialCdf(3, 2, 1e7)).toBeCloseTo(poissonCdf(3, 2), 5);
    expect(hypergeometricCdf(2, 50, 5000, 100000)).toBeCloseTo(binomialCdf(2, 50, 0.05), 3);
  });
});

describe('edges', () => {
  it('ends of the range are exact', () => {
    expect(normalQuantile(0)).toBe(-Infinity);
    expect(chiSquareQuantile(1, 3)).toBe(Infinity);
    expect(betaQuantile(2, 2, 0)).toBe(0);
    expect(studentQuantile(0.5, 3)).toBe(0);
    expect(binomialCdf(5, 5, 1)).toBe(1);
    expect(binomialCdf(4, 5, 1)).toBe(0);
    expect(clopperPearson(5, 5).high).toBe(1);
  });
  it.each([NaN, -0.1, 1.1])('a probability of %d is refused', (p) => {
    expect(() => normalQuantile(p)).toThrow(OutOfRange);
    expect(() => studentQuantile(p, 3)).toThrow(OutOfRange);
    expect(() => chiSquareQuantile(p, 3)).toThrow(OutOfRange);
    expect(() => betaIncomplete(1, 1, p)).toThrow(OutOfRange);
  });
  it('refuses shapes at or below 0', () => {
    expect(() => logGamma(0)).toThrow(OutOfRange);
    expect(() => studentCdf(1, 0)).toThrow(OutOfRange);
    expect(() => gammaIncomplete(1, -1)).toThrow(OutOfRange);
  });
});
