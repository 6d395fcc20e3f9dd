import { requireRange } from '../errors.js';
import { betaIncomplete, betaQuantile } from './beta.js';
import { gammaIncomplete, logGamma } from './gamma.js';
import { normalQuantile } from './normal.js';
import { rootOf } from './root.js';

/** Distribution function of chi-square; x 0 or more, freedom above 0. */
export function chiSquareCdf(x: number, freedom: number): number {
  return gammaIncomplete(freedom / 2, x / 2);
}

/**
 * Chi-square value below which a share p lies.
 *
 * @param p - 0 to 1; 0 gives 0, 1 gives Infinity
 * @param freedom - degrees of freedom, above 0, not necessarily whole
 * @throws OutOfRange outside these ranges, or NaN
 * @example chiSquareQuantile(0.95, 10) // 18.307
 */
export function chiSquareQuantile(p: number, freedom: number): number {
  return 2 * gammaQuantile(p, freedom / 2);
}

/** x at which P(shape, x) = p, for a gamma law of scale 1. Starts from Wilson and Hilferty's cube. */
export function gammaQuantile(p: number, shape: number): number {
  requireRange('p', p, [0, 1], 'a probability');
  requireRange('shape', shape, [Number.MIN_VALUE, Number.MAX_VALUE], 'the gamma law');
  if (p === 0) return 0;
  if (p === 1) return Infinity;
  const cube = 1 - 1 / (9 * shape) + normalQuantile(p) / (3 * Math.sqrt(shape));
  const small = Math.exp((Math.log(p) + logGamma(shape + 1)) / shape);
  const start = cube > 0.2 ? shape * cube ** 3 : Math.max(small, Number.MIN_VALUE);
  let high = Math.max(start, shape) * 2;
  while (gammaIncomplete(shape, high) < p && high < 1e300) high *= 2;
  const scale = logGamma(shape);
  return rootOf(
    (x) => gammaIncomplete(shape, x) - p,
    (x) => Math.exp((shape - 1) * Math.log(x) - x - scale),
    0,
    high,
    start,
  );
}

/** Distribution function of Fisher's F: ratio of two mean squares with these degrees of freedom. */
export function fisherCdf(f: number, numerator: number, denominator: number): number {
  requireRange('f', f, [0, Infinity], "Fisher's F");
  if (f === Infinity) return 1;
  return betaIncomplete(numerator / 2, denominator / 2, (numerator * f) / (numerator * f + denominator));
}

/** Fisher's F below which a share p lies. */
export function fisherQuantile(p: number, numerator: number, denominator: number): number {
  requireRange('p', p, [0, 1], 'a probability');
  // The complement keeps its digits where the share of the numerator is close to 1.
  const rest = betaQuantile(denominator / 2, numerator / 2, 1 - p);
  return (denominator * (1 - rest)) / (numerator * rest);
}
