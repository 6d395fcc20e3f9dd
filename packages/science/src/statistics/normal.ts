import { requireRange } from '../errors.js';
import { gammaIncomplete, gammaIncompleteUpper } from './gamma.js';
import { ppnd16 } from './data/ppnd16.js';

/** Error function, -1 to 1. */
export function erf(x: number): number {
  return x < 0 ? -gammaIncomplete(0.5, x * x) : gammaIncomplete(0.5, x * x);
}

/** Complementary error function 1 - erf(x), with full relative precision in the right tail. */
export function erfc(x: number): number {
  return x < 0 ? 1 + gammaIncomplete(0.5, x * x) : gammaIncompleteUpper(0.5, x * x);
}

/** Density of the standard normal distribution. */
export function normalPdf(z: number): number {
  return Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI);
}

/**
 * Distribution function of the standard normal law: the share of values below z.
 *
 * @param z - any number, infinities included
 * @returns Φ(z), 0 to 1
 * @throws OutOfRange for NaN
 * @see abramowitz-stegun-1964 eq. 26.2.29: Φ(z) = erfc(-z / √2) / 2
 * @example normalCdf(1.959964) // 0.975
 */
export function normalCdf(z: number): number {
  return 0.5 * erfc(-z / Math.SQRT2);
}

/**
 * Standard normal deviate below which a share p lies, by Wichura's rational approximation PPND16 (relative error about 1e-16).
 *
 * @param p - 0 to 1; 0 gives -Infinity, 1 gives Infinity
 * @throws OutOfRange outside 0 to 1, or NaN
 * @see wichura-1988
 * @example normalQuantile(0.975) // 1.959964
 */
export function normalQuantile(p: number): number {
  requireRange('p', p, [0, 1], 'a probability');
  if (p === 0) return -Infinity;
  if (p === 1) return Infinity;
  const { a, b, c, d, e, f } = ppnd16.values;
  const q = p - 0.5;
  if (Math.abs(q) <= 0.425) return q * ratio(0.180625 - q * q, a, b);
  const r = Math.sqrt(-Math.log(q < 0 ? p : 1 - p));
  const z = r <= 5 ? ratio(r - 1.6, c, d) : ratio(r - 5, e, f);
  return q < 0 ? -z : z;
}

function ratio(x: number, over: readonly number[], under: readonly number[]): number {
  let numerator = 0;
  let denominator = 0;
  for (let i = over.length - 1; i >= 0; i--) {
    numerator = numerator * x + over[i]!;
    denominator = denominator * x + under[i]!;
  }
  return numerator / denominator;
}
