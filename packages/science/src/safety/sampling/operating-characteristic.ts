import { BadInput, requireRange } from '../../errors.js';
import { betaIncomplete, betaQuantile } from '../../statistics/beta.js';
import { binomialCdf, hypergeometricCdf, poissonCdf } from '../../statistics/counts.js';

/** binomial: a share of a long run; poisson: defects per item; hypergeometric: an isolated lot of known size. */
export type AttributeLaw = 'binomial' | 'poisson' | 'hypergeometric';

/** A single attribute plan: n items are drawn, the lot is accepted with at most c of them faulty. */
export interface AttributePlan {
  readonly n: number;
  readonly c: number;
}

/**
 * Probability that a lot is accepted: one point of the operating characteristic.
 *
 * @param p - share faulty (binomial, hypergeometric) or faults per item (poisson), 0 or more
 * @param lot - items in the lot; needed for the hypergeometric law, which takes the nearest whole number of faulty items
 * @returns 0 to 1, falling with p
 * @throws OutOfRange for a share outside 0 to 1, or a sample above the lot
 */
export function acceptance(plan: AttributePlan, p: number, law: AttributeLaw = 'binomial', lot = Infinity): number {
  if (law !== 'poisson' && !(plan.c < plan.n))
    throw new BadInput(`An acceptance number of ${plan.c} with a sample of ${plan.n} accepts every lot; it must be below the sample size`);
  if (law === 'poisson') return poissonCdf(plan.c, plan.n * p);
  requireRange('fraction_defective', p, [0, 1], 'a share');
  if (law === 'binomial') return binomialCdf(plan.c, plan.n, p);
  requireRange('lot', lot, [plan.n, Number.MAX_SAFE_INTEGER], 'a lot from which that sample is drawn');
  return hypergeometricCdf(plan.c, plan.n, Math.round(p * lot), lot);
}

/** Share faulty at which a plan accepts with a given probability (binomial): 0.95 the producer's point, 0.10 the consumer's. */
export function qualityAt(plan: AttributePlan, probability: number): number {
  requireRange('probability', probability, [0, 1], 'a probability');
  return plan.c >= plan.n ? 1 : 1 - betaQuantile(plan.n - plan.c, plan.c + 1, probability);
}

/** Mean share faulty after rejected lots were sorted and sampled items replaced: Pa p (N - n) / N. */
export function averageOutgoing(plan: AttributePlan, p: number, lot: number): number {
  return (acceptance(plan, p) * p * (lot - plan.n)) / lot;
}

/** Mean number of items inspected per lot when rejected lots are sorted: n + (1 - Pa)(N - n). */
export function averageInspection(plan: AttributePlan, p: number, lot: number): number {
  return plan.n + (1 - acceptance(plan, p)) * (lot - plan.n);
}

/**
 * Share outside one limit estimated from mean and standard deviation of a sample (s method, symmetric beta).
 *
 * @param q - (limit - mean) / s, any number
 * @param n - sample size, 3 or more
 */
export function variablesShare(q: number, n: number): number {
  requireRange('sample_size', n, [3, Number.MAX_SAFE_INTEGER], 'the s method');
  const x = Math.min(1, Math.max(0, 0.5 - (q * Math.sqrt(n)) / (2 * (n - 1))));
  return betaIncomplete(n / 2 - 1, n / 2 - 1, x);
}

/**
 * Probability that n portions are all free of an organism or a particle spread at random.
 *
 * @param perKilogram - mean number per kg
 * @param portion - kg each
 */
export function allNegative(perKilogram: number, portion: number, n: number): number {
  return Math.exp(-perKilogram * portion * n);
}
