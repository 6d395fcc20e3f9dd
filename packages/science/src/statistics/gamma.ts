import { NoSolution, requireRange } from '../errors.js';

const HALF_LOG_TWO_PI = 0.5 * Math.log(2 * Math.PI);
/** Bernoulli terms B2k / (2k (2k - 1)) of Stirling's series, k = 1 to 7. */
const STIRLING = [1 / 12, -1 / 360, 1 / 1260, -1 / 1680, 1 / 1188, -691 / 360360, 1 / 156];

/**
 * Natural logarithm of the gamma function, by Stirling's series after shifting the argument to 15 and above.
 *
 * @param x - above 0
 * @returns ln Γ(x), absolute error about 1e-14 for x below 100, relative 1e-15 above
 * @throws OutOfRange for x at or below 0, or NaN
 * @see abramowitz-stegun-1964 eq. 6.1.41
 */
export function logGamma(x: number): number {
  requireRange('x', x, [Number.MIN_VALUE, Number.MAX_VALUE], 'the logarithm of the gamma function');
  let shift = 1;
  let z = x;
  while (z < 15) {
    shift *= z;
    z += 1;
  }
  const reciprocalSquare = 1 / (z * z);
  let series = 0;
  for (let k = STIRLING.length - 1; k >= 0; k--) series = series * reciprocalSquare + STIRLING[k]!;
  return (z - 0.5) * Math.log(z) - z + HALF_LOG_TWO_PI + series / z - Math.log(shift);
}

/** ln(n! / (k! (n - k)!)) for whole n >= k >= 0. */
export function logChoose(n: number, k: number): number {
  return k === 0 || k === n ? 0 : logGamma(n + 1) - logGamma(k + 1) - logGamma(n - k + 1);
}

/**
 * Regularised lower incomplete gamma function P(a, x): the chi-square and Poisson sums. By series below a + 1, else by continued fraction.
 *
 * @param a - shape, above 0
 * @param x - 0 or more, Infinity allowed
 * @returns P(a, x), 0 to 1, rising with x
 * @throws OutOfRange outside these ranges
 * @see abramowitz-stegun-1964 eq. 6.5.29 and 6.5.31
 * @example gammaIncomplete(1, 1) // 1 - 1/e = 0.6321
 */
export function gammaIncomplete(a: number, x: number): number {
  checkGamma(a, x);
  if (x === 0) return 0;
  if (x === Infinity) return 1;
  return x < a + 1 ? lowerSeries(a, x) : 1 - upperFraction(a, x);
}

/** Regularised upper incomplete gamma function Q = 1 - P, without loss of digits where it is small. Arguments as above. */
export function gammaIncompleteUpper(a: number, x: number): number {
  checkGamma(a, x);
  if (x === 0) return 1;
  if (x === Infinity) return 0;
  return x < a + 1 ? 1 - lowerSeries(a, x) : upperFraction(a, x);
}

function checkGamma(a: number, x: number): void {
  requireRange('a', a, [Number.MIN_VALUE, Number.MAX_VALUE], 'the incomplete gamma function');
  requireRange('x', x, [0, Infinity], 'the incomplete gamma function');
}

function prefactor(a: number, x: number): number {
  return Math.exp(a * Math.log(x) - x - logGamma(a));
}

function lowerSeries(a: number, x: number): number {
  let term = 1 / a;
  let sum = term;
  for (let n = 1; n < 1_000_000; n++) {
    term *= x / (a + n);
    sum += term;
    if (term < sum * 1e-16) return prefactor(a, x) * sum;
  }
  throw new NoSolution(`The incomplete gamma series does not converge at a ${a}, x ${x}`);
}

/** Legendre's continued fraction by the modified Lentz method. */
function upperFraction(a: number, x: number): number {
  const tiny = 1e-300;
  let b = x + 1 - a;
  let c = 1 / tiny;
  let d = 1 / b;
  let h = d;
  for (let n = 1; n < 1_000_000; n++) {
    const an = -n * (n - a);
    b += 2;
    d = 1 / nonZero(an * d + b);
    c = nonZero(b + an / c);
    const delta = d * c;
    h *= delta;
    if (Math.abs(delta - 1) < 3e-16) return prefactor(a, x) * h;
  }
  throw new NoSolution(`The incomplete gamma fraction does not converge at a ${a}, x ${x}`);
}

function nonZero(value: number): number {
  return Math.abs(value) < 1e-300 ? 1e-300 : value;
}
