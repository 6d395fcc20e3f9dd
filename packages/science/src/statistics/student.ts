import { requireRange } from '../errors.js';
import { betaIncomplete, betaQuantile } from './beta.js';
import { normalCdf, normalQuantile } from './normal.js';

/**
 * Distribution function of Student's t.
 *
 * @param t - any number
 * @param freedom - degrees of freedom, above 0; not necessarily whole; Infinity gives the normal law
 * @throws OutOfRange for freedom at or below 0, or NaN
 */
export function studentCdf(t: number, freedom: number): number {
  checkFreedom(freedom);
  if (freedom === Infinity) return normalCdf(t);
  if (t === Infinity || t === -Infinity) return t > 0 ? 1 : 0;
  const square = t * t;
  const tail =
    square < freedom
      ? 0.5 * (1 - betaIncomplete(0.5, freedom / 2, square / (freedom + square)))
      : 0.5 * betaIncomplete(freedom / 2, 0.5, freedom / (freedom + square));
  return t > 0 ? 1 - tail : tail;
}

/**
 * Student's t below which a share p lies.
 *
 * @param p - 0 to 1
 * @param freedom - degrees of freedom, above 0; Infinity gives the normal quantile
 * @throws OutOfRange outside these ranges, or NaN
 * @example studentQuantile(0.975, 10) // 2.228
 */
export function studentQuantile(p: number, freedom: number): number {
  requireRange('p', p, [0, 1], 'a probability');
  checkFreedom(freedom);
  if (freedom === Infinity || p === 0 || p === 1) return normalQuantile(p);
  const inside = Math.abs(2 * p - 1);
  const sign = p < 0.5 ? -1 : 1;
  if (inside === 0) return 0;
  if (inside < 0.5) {
    const y = betaQuantile(0.5, freedom / 2, inside);
    return sign * Math.sqrt((freedom * y) / (1 - y));
  }
  const x = betaQuantile(freedom / 2, 0.5, 2 * Math.min(p, 1 - p));
  return sign * Math.sqrt((freedom * (1 - x)) / x);
}

function checkFreedom(freedom: number): void {
  requireRange('freedom', freedom, [Number.MIN_VALUE, Infinity], "Student's t");
}
