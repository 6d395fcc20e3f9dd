import { NoSolution, requireRange } from '../errors.js';
import { logGamma } from './gamma.js';
import { rootOf } from './root.js';

/** ln B(a, b). */
export function logBeta(a: number, b: number): number {
  return logGamma(a) + logGamma(b) - logGamma(a + b);
}

/**
 * Regularised incomplete beta function I_x(a, b): the binomial, Student and F sums. By continued fraction, on the side where it converges fast.
 *
 * @param a - above 0
 * @param b - above 0
 * @param x - 0 to 1
 * @returns I_x(a, b), 0 to 1, rising with x
 * @throws OutOfRange outside these ranges, or NaN
 * @see abramowitz-stegun-1964 eq. 26.5.8
 * @example betaIncomplete(2, 3, 0.4) // 0.5248
 */
export function betaIncomplete(a: number, b: number, x: number): number {
  requireRange('a', a, [Number.MIN_VALUE, Number.MAX_VALUE], 'the incomplete beta function');
  requireRange('b', b, [Number.MIN_VALUE, Number.MAX_VALUE], 'the incomplete beta function');
  requireRange('x', x, [0, 1], 'the incomplete beta function');
  if (x === 0 || x === 1) return x;
  const front = Math.exp(a * Math.log(x) + b * Math.log1p(-x) - logBeta(a, b));
  return x < (a + 1) / (a + b + 2) ? (front * fraction(a, b, x)) / a : 1 - (front * fraction(b, a, 1 - x)) / b;
}

/**
 * x at which I_x(a, b) = p; a and b above 0, p 0 to 1.
 *
 * @throws OutOfRange outside these ranges, or NaN
 */
export function betaQuantile(a: number, b: number, p: number): number {
  requireRange('p', p, [0, 1], 'a probability');
  if (p === 0 || p === 1) return p;
  const scale = -logBeta(a, b);
  const density = (x: number): number => Math.exp(scale + (a - 1) * Math.log(x) + (b - 1) * Math.log1p(-x));
  return rootOf((x) => betaIncomplete(a, b, x) - p, density, 0, 1, a / (a + b));
}

function fraction(a: number, b: number, x: number): number {
  let c = 1;
  let d = 1 / nonZero(1 - ((a + b) * x) / (a + 1));
  let h = d;
  for (let m = 1; m < 100_000; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / nonZero(1 + even * d);
    c = nonZero(1 + even / c);
    h *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / nonZero(1 + odd * d);
    c = nonZero(1 + odd / c);
    const delta = d * c;
    h *= delta;
    if (Math.abs(delta - 1) < 3e-16) return h;
  }
  throw new NoSolution(`The incomplete beta fraction does not converge at a ${a}, b ${b}, x ${x}`);
}

function nonZero(value: number): number {
  return Math.abs(value) < 1e-300 ? 1e-300 : value;
}
