import { requireRange } from '../errors.js';
import { betaIncomplete, betaQuantile } from './beta.js';
import { chiSquareQuantile } from './chi-square.js';
import { gammaIncompleteUpper, logChoose, logGamma } from './gamma.js';

/** Probability of exactly k events in n trials of probability p. */
export function binomialPmf(k: number, n: number, p: number): number {
  if (k < 0 || k > n) return 0;
  if (p === 0) return k === 0 ? 1 : 0;
  if (p === 1) return k === n ? 1 : 0;
  return Math.exp(logChoose(n, k) + k * Math.log(p) + (n - k) * Math.log1p(-p));
}

/** Probability of at most k events in n trials of probability p (0 to 1). */
export function binomialCdf(k: number, n: number, p: number): number {
  requireRange('p', p, [0, 1], 'a probability');
  if (k < 0) return 0;
  const whole = Math.floor(k);
  if (whole >= n) return 1;
  return p === 1 ? 0 : betaIncomplete(n - whole, whole + 1, 1 - p);
}

/** Probability of exactly k events where the mean number is `mean`. */
export function poissonPmf(k: number, mean: number): number {
  if (k < 0) return 0;
  return mean === 0 ? (k === 0 ? 1 : 0) : Math.exp(k * Math.log(mean) - mean - logGamma(k + 1));
}

/** Probability of at most k events where the mean number is `mean` (0 or more). */
export function poissonCdf(k: number, mean: number): number {
  requireRange('mean', mean, [0, Number.MAX_VALUE], 'the Poisson law');
  return k < 0 ? 0 : gammaIncompleteUpper(Math.floor(k) + 1, mean);
}

/** Probability of exactly k marked items in a sample of n, drawn without return from a lot with `marked` among `lot`. */
export function hypergeometricPmf(k: number, n: number, marked: number, lot: number): number {
  if (k < Math.max(0, n + marked - lot) || k > Math.min(n, marked)) return 0;
  return Math.exp(logChoose(marked, k) + logChoose(lot - marked, n - k) - logChoose(lot, n));
}

/** Probability of at most k marked items in a sample of n, drawn without return. */
export function hypergeometricCdf(k: number, n: number, marked: number, lot: number): number {
  requireRange('marked', marked, [0, lot], 'a lot of that size');
  requireRange('n', n, [0, lot], 'a lot of that size');
  let sum = 0;
  for (let i = Math.max(0, n + marked - lot); i <= Math.min(Math.floor(k), n, marked); i++) sum += hypergeometricPmf(i, n, marked, lot);
  return Math.min(1, sum);
}

/**
 * Probability of at most k events for a negative binomial law (a Poisson mean that itself varies as a gamma law).
 *
 * @param mean - expected number, 0 or more
 * @param shape - the exponent k of the law, above 0; variance = mean + mean² / shape
 */
export function negativeBinomialCdf(k: number, mean: number, shape: number): number {
  requireRange('mean', mean, [0, Number.MAX_VALUE], 'the negative binomial law');
  requireRange('shape', shape, [Number.MIN_VALUE, Number.MAX_VALUE], 'the negative binomial law');
  if (k < 0) return 0;
  return mean === 0 ? 1 : betaIncomplete(shape, Math.floor(k) + 1, shape / (shape + mean));
}

export interface Interval {
  readonly low: number;
  readonly high: number;
}

/**
 * Exact two-sided confidence interval of a share from k events in n trials (Clopper and Pearson).
 *
 * @param k - events counted, whole, 0 to n
 * @param n - trials, 1 or more
 * @param confidence - 0 to 1, each side takes half of the rest
 * @throws OutOfRange outside these ranges, or NaN
 * @see clopper-pearson-1934
 * @example clopperPearson(0, 300) // 0 to 0.0122
 */
export function clopperPearson(k: number, n: number, confidence = 0.95): Interval {
  requireRange('n', n, [1, Number.MAX_SAFE_INTEGER], 'a count of trials');
  requireRange('k', k, [0, n], 'a count of events in that many trials');
  requireRange('confidence', confidence, [0, 1], 'a probability');
  const side = (1 - confidence) / 2;
  return {
    low: k === 0 ? 0 : betaQuantile(k, n - k + 1, side),
    high: k === n ? 1 : betaQuantile(k + 1, n - k, 1 - side),
  };
}

/** Exact two-sided confidence interval of the mean of a Poisson law from a count of k. */
export function poissonInterval(k: number, confidence = 0.95): Interval {
  requireRange('k', k, [0, Number.MAX_SAFE_INTEGER], 'a count');
  const side = (1 - confidence) / 2;
  return { low: k === 0 ? 0 : chiSquareQuantile(side, 2 * k) / 2, high: chiSquareQuantile(1 - side, 2 * k + 2) / 2 };
}
