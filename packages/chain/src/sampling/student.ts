import { normalQuantile } from './normal.js';

/**
 * Student's t below which a share p lies.
 * @param p - strictly between 0 and 1
 * @param freedom - degrees of freedom, above 0; Infinity gives the normal quantile
 * @example studentQuantile(0.975, 10) // 2.2281
 */
export function studentQuantile(p: number, freedom: number): number {
  if (p < 0.5) return -studentQuantile(1 - p, freedom);
  if (freedom === Infinity) return normalQuantile(p);
  // The upper tail falls all the way; it is bracketed, then halved on a logarithmic scale, exact for any tail.
  const tail = 1 - p;
  let low = 0;
  let high = 1;
  while (upperTail(high, freedom) > tail) [low, high] = [high, high * 2];
  for (let i = 0; i < 200; i++) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    if (upperTail(middle, freedom) > tail) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Share of Student's t above a positive t: half the incomplete beta function I_x(ν/2, 1/2) at x = ν / (ν + t²). */
function upperTail(t: number, freedom: number): number {
  return betaIncomplete(freedom / 2, 0.5, freedom / (freedom + t * t), (t * t) / (freedom + t * t)) / 2;
}

/**
 * Regularised incomplete beta function by its continued fraction (Abramowitz and Stegun, Handbook of Mathematical Functions,
 * 1964, 26.5.8), summed after Lentz; on the side where it converges quickly.
 * @param y - 1 − x, given apart because the difference loses digits
 */
function betaIncomplete(a: number, b: number, x: number, y: number): number {
  if (x <= 0) return 0;
  if (y <= 0) return 1;
  const front = Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log(y));
  return x < (a + 1) / (a + b + 2) ? (front * fraction(a, b, x)) / a : 1 - (front * fraction(b, a, y)) / b;
}

function fraction(a: number, b: number, x: number): number {
  const tiny = 1e-300;
  let c = 1;
  let d = 1 / nonzero(1 - ((a + b) * x) / (a + 1), tiny);
  let sum = d;
  for (let m = 1; m < 10_000; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / nonzero(1 + even * d, tiny);
    c = nonzero(1 + even / c, tiny);
    sum *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / nonzero(1 + odd * d, tiny);
    c = nonzero(1 + odd / c, tiny);
    sum *= d * c;
    if (Math.abs(d * c - 1) < 1e-15) break;
  }
  return sum;
}

function nonzero(x: number, tiny: number): number {
  return Math.abs(x) < tiny ? tiny : x;
}

/** ln Γ(x), x > 0: Stirling's series (Abramowitz and Stegun 6.1.41) after raising x above 10. */
function logGamma(x: number): number {
  let product = 1;
  while (x < 10) product *= x++;
  const r = 1 / (x * x);
  const series = (1 / 12 - r * (1 / 360 - r * (1 / 1260 - r * (1 / 1680 - r * (1 / 1188 - (r * 691) / 360360))))) / x;
  return (x - 0.5) * Math.log(x) - x + 0.5 * Math.log(2 * Math.PI) + series - Math.log(product);
}
