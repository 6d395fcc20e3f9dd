import { requireRange } from '../../errors.js';
import { negativeBinomialCdf } from '../../statistics/counts.js';
import { gammaIncomplete } from '../../statistics/gamma.js';
import { normalPdf } from '../../statistics/normal.js';
import { almondVariance, cornVariance, shelledPeanutVariance } from '../data/aflatoxin.js';

export type AflatoxinCommodity = 'shelled peanut' | 'almond' | 'corn';

/** One test procedure: a ground sample, a portion of it, one or more analyses of the extract. */
export interface AflatoxinTest {
  /** g */ readonly sampleMass: number;
  /** g */ readonly portionMass: number;
  readonly analyses: number;
  /** Accepted at or below, ng/g. */ readonly limit: number;
  /** Samples that must all comply. */ readonly samples: number;
}

export interface VarianceParts {
  readonly sampling: number;
  readonly preparation: number;
  readonly analysis: number;
  readonly total: number;
}

/**
 * Variance of one test result about the mean of the lot, by its parts, (ng/g)².
 *
 * @param c - mean aflatoxin of the lot, ng/g, 0 or more
 * @throws OutOfRange for a negative concentration, no sample, no analysis, or NaN
 */
export function testVariance(commodity: AflatoxinCommodity, c: number, test: Omit<AflatoxinTest, 'limit' | 'samples'>): VarianceParts {
  requireRange('aflatoxin_ng_g', c, [0, 1e7], 'an aflatoxin test');
  requireRange('sample_mass', test.sampleMass, [1, 1e9], 'an aflatoxin test');
  requireRange('portion_mass', test.portionMass, [0.01, test.sampleMass], 'a portion of that sample');
  requireRange('analyses', test.analyses, [1, 1000], 'an aflatoxin test');
  const [s, p, a, sampleMass, portionMass] = atReference(commodity, c);
  const sampling = (s * sampleMass) / test.sampleMass;
  const preparation = (p * portionMass) / test.portionMass;
  const analysis = a / test.analyses;
  return { sampling, preparation, analysis, total: sampling + preparation + analysis };
}

function atReference(commodity: AflatoxinCommodity, c: number): readonly [number, number, number, number, number] {
  if (commodity === 'corn') {
    const { at20, exponents, sampleMass, portionMass } = cornVariance.values;
    const grow = (i: 0 | 1 | 2) => at20[i] * (c / 20) ** exponents[i];
    return [grow(0), grow(1), grow(2), sampleMass, portionMass];
  }
  const v = (commodity === 'almond' ? almondVariance : shelledPeanutVariance).values;
  const power = ([factor, exponent]: readonly [number, number]) => factor * c ** exponent;
  return [power(v.sampling), power(v.preparation), power(v.analysis), v.sampleMass, v.portionMass];
}

/**
 * Probability that one test result is at or below a limit: negative binomial by moments, k = C²/(S² - C), in whole ng/g.
 * Where the variance is not above the mean the law does not exist and a gamma law of the same moments is taken up to half a unit above.
 *
 * @param c - mean of the lot, ng/g
 * @param variance - of the test result, (ng/g)²
 * @param limit - ng/g
 */
export function resultBelow(c: number, variance: number, limit: number): number {
  requireRange('variance', variance, [0, 1e14], 'an aflatoxin test');
  if (c === 0) return 1;
  if (variance === 0) return c <= limit ? 1 : 0;
  return variance > c ? negativeBinomialCdf(limit, c, (c * c) / (variance - c)) : gammaBelow(c, variance, Math.floor(limit) + 0.5);
}

/** As `resultBelow` with a gamma law of the same moments. */
export function gammaBelow(c: number, variance: number, limit: number): number {
  return limit <= 0 ? 0 : gammaIncomplete((c * c) / variance, (limit * c) / variance);
}

/** Probability that a lot of mean c passes a plan whose samples must all comply. */
export function planAcceptance(commodity: AflatoxinCommodity, c: number, test: AflatoxinTest): number {
  return resultBelow(c, testVariance(commodity, c, test).total, test.limit) ** test.samples;
}

/**
 * Probability that the lot's mean exceeds a legal limit, given one test result and what is believed of such lots beforehand
 * (log-normal about `priorMedian`), by Bayes' rule on a grid of ln C.
 *
 * @param result - test result, ng/g, 0 or more
 * @param legal - limit for the lot mean, ng/g
 * @param priorMedian - ng/g, of lots of this supplier and season
 * @param priorSpread - standard deviation of ln C
 */
export function chanceLotExceeds(
  commodity: AflatoxinCommodity,
  result: number,
  test: AflatoxinTest,
  legal: number,
  priorMedian: number,
  priorSpread: number,
): number {
  requireRange('test_result_ng_g', result, [0, 1e6], 'an aflatoxin test');
  requireRange('prior_median_ng_g', priorMedian, [1e-6, 1e6], 'a log-normal belief');
  requireRange('prior_spread', priorSpread, [0.01, 5], 'a log-normal belief');
  let above = 0;
  let all = 0;
  const steps = 600;
  for (let i = 0; i <= steps; i++) {
    const z = -6 + (12 * i) / steps;
    const c = priorMedian * Math.exp(z * priorSpread);
    const variance = testVariance(commodity, c, test).total;
    // A gamma law here, so that results below a whole ng/g are told apart too.
    const half = Math.max(0.5, 0.05 * result);
    const likelihood = gammaBelow(c, variance, result + half) - gammaBelow(c, variance, result - half);
    const weight = normalPdf(z) * Math.max(likelihood, 0);
    all += weight;
    if (c > legal) above += weight;
  }
  return all === 0 ? NaN : above / all;
}
