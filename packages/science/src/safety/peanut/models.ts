import { BadInput } from '../../errors.js';
import { defineModel, type Model } from '../../model.js';
import { usOutgoing } from '../data/peanut-quality.js';
import { chanceLotExceeds, gammaBelow, planAcceptance, resultBelow, testVariance, type AflatoxinCommodity } from './aflatoxin.js';
import { kernelFaults, piecesVariation } from './quality.js';
import { afterBlanchAndSort, aflatoxinSortedOut, concentrationAfter } from './sorting.js';

const testInputs = [
  {
    key: 'commodity',
    unit: '',
    meaning: 'Variance functions to use',
    kind: 'choice',
    choices: ['shelled peanut', 'almond', 'corn'],
    default: 'shelled peanut',
  },
  {
    key: 'sample_kg',
    unit: 'kg',
    meaning: 'Mass of one laboratory sample, all of it ground',
    possible: [0.001, 1e6],
    fitted: [1, 70],
    default: 20,
  },
  {
    key: 'test_portion_g',
    unit: 'g',
    meaning: 'Portion of the ground sample taken for extraction',
    possible: [0.01, 1e6],
    fitted: [20, 1500],
    default: 100,
  },
  { key: 'analyses', unit: '1', meaning: 'Analyses of the extract, averaged', possible: [1, 1000], default: 1 },
] as const;
const planTail = [
  { key: 'limit_ug_kg', unit: 'µg/kg', meaning: 'A sample complies at or below', possible: [0, 1e5], default: 15 },
  { key: 'samples', unit: '1', meaning: 'Samples that must all comply', possible: [1, 20], default: 1 },
] as const;
function whole(key: string, value: number): number {
  if (!Number.isInteger(value)) throw new BadInput(`${key} is ${value}, but a whole number is expected`);
  return value;
}
const testOf = (x: { sample_kg: number; test_portion_g: number; analyses: number; limit_ug_kg: number; samples: number }) => ({
  sampleMass: x.sample_kg * 1000,
  portionMass: x.test_portion_g,
  analyses: whole('analyses', x.analyses),
  limit: x.limit_ug_kg,
  samples: whole('samples', x.samples),
});
const caution = {
  code: 'LOT_DECISION',
  message:
    'A certificate is one draw from a very wide distribution; the legal sampling plan of the market and an accredited laboratory decide.',
};

export const aflatoxinPlan = defineModel({
  id: 'peanut.aflatoxin_plan',
  title: 'Operating characteristic of an aflatoxin sampling plan',
  about: 'Variance = sampling + preparation + analysis, each a C^b scaled by mass; negative binomial by moments; all samples must comply.',
  inputs: [
    { key: 'aflatoxin_ug_kg', unit: 'µg/kg', meaning: 'True mean of the lot, total aflatoxin', possible: [0, 1e6], fitted: [1, 300] },
    ...testInputs,
    ...planTail,
  ],
  outputs: [
    { key: 'acceptance_probability', unit: '1', meaning: 'Probability that the lot passes the plan' },
    { key: 'rejection_probability', unit: '1', meaning: 'Probability that it is rejected' },
    { key: 'variance', unit: '(µg/kg)²', meaning: 'Of one test result' },
    { key: 'variance_sampling', unit: '(µg/kg)²', meaning: 'Part of sampling' },
    { key: 'variance_preparation', unit: '(µg/kg)²', meaning: 'Part of grinding and portioning' },
    { key: 'variance_analysis', unit: '(µg/kg)²', meaning: 'Part of the analysis' },
    { key: 'sampling_share', unit: '1', meaning: 'Share of sampling in the variance' },
    { key: 'preparation_share', unit: '1', meaning: 'Share of preparation in the variance' },
    { key: 'coefficient_of_variation', unit: '1', meaning: 'Of one test result' },
  ],
  sources: ['whitaker-1974', 'codex-treenut-plan', 'johansson-thesis', 'whitaker-slate-2012', 'codex-cxs-193', 'jaoac-2007-almond'],
  standing: 'memory',
  run: (x) => {
    const commodity = x.commodity as AflatoxinCommodity;
    const test = testOf(x);
    const v = testVariance(commodity, x.aflatoxin_ug_kg, test);
    const accept = planAcceptance(commodity, x.aflatoxin_ug_kg, test);
    // The variance of lots differs from the regression by about a third each way.
    const ends = [0.7, 1.4].map((factor) => resultBelow(x.aflatoxin_ug_kg, factor * v.total, test.limit) ** test.samples);
    const [low, high] = [Math.min(accept, ...ends), Math.max(accept, ...ends)];
    return {
      acceptance_probability: { value: accept, low, high },
      rejection_probability: { value: 1 - accept, low: 1 - high, high: 1 - low },
      variance: v.total,
      variance_sampling: v.sampling,
      variance_preparation: v.preparation,
      variance_analysis: v.analysis,
      sampling_share: { value: v.total > 0 ? v.sampling / v.total : null },
      preparation_share: { value: v.total > 0 ? v.preparation / v.total : null },
      coefficient_of_variation: { value: x.aflatoxin_ug_kg > 0 ? Math.sqrt(v.total) / x.aflatoxin_ug_kg : null },
    };
  },
  remarks: (x) => {
    const findings = [caution];
    if (x.commodity === 'corn' && Math.abs(x.aflatoxin_ug_kg - 20) > 1e-9) {
      findings.push({
        code: 'GROWTH_ASSUMED',
        message: 'For corn only 20 µg/kg is published; the growth with concentration is that remembered for peanuts.',
      });
    }
    return findings;
  },
});

export const aflatoxinAcceptance = defineModel({
  id: 'peanut.aflatoxin_acceptance',
  title: 'Probability that a test result lies at or below a limit, from mean and variance',
  about: 'Negative binomial, k = C²/(S² - C), whole ng/g; gamma with the same moments beside it. Several samples multiply.',
  inputs: [
    { key: 'aflatoxin_ug_kg', unit: 'µg/kg', meaning: 'True mean of the lot', possible: [0, 1e6] },
    { key: 'variance', unit: '(µg/kg)²', meaning: 'Of one test result', possible: [0, 1e14] },
    { key: 'limit_ug_kg', unit: 'µg/kg', meaning: 'Limit', possible: [0, 1e6] },
    { key: 'samples', unit: '1', meaning: 'Samples that must all comply', possible: [1, 20], default: 1 },
  ],
  outputs: [
    { key: 'negative_binomial', unit: '1', meaning: 'Probability of acceptance' },
    { key: 'gamma', unit: '1', meaning: 'Probability of acceptance' },
    { key: 'coefficient_of_variation', unit: '1', meaning: 'Of one test result' },
  ],
  sources: ['jaoac-2007-almond', 'whitaker-1992'],
  standing: 'found',
  run: (x) => ({
    negative_binomial: resultBelow(x.aflatoxin_ug_kg, x.variance, x.limit_ug_kg) ** x.samples,
    gamma:
      x.aflatoxin_ug_kg === 0 || x.variance === 0
        ? resultBelow(x.aflatoxin_ug_kg, x.variance, x.limit_ug_kg)
        : gammaBelow(x.aflatoxin_ug_kg, x.variance, x.limit_ug_kg) ** x.samples,
    coefficient_of_variation: { value: x.aflatoxin_ug_kg > 0 ? Math.sqrt(x.variance) / x.aflatoxin_ug_kg : null },
  }),
});

export const aflatoxinPosterior = defineModel({
  id: 'peanut.aflatoxin_lot_exceeds',
  title: 'Probability that a lot exceeds a legal limit, given a test result',
  about: 'Bayes: log-normal belief about lots of this supplier and season, times the likelihood of the result under the test.',
  inputs: [
    { key: 'test_result_ug_kg', unit: 'µg/kg', meaning: 'Result on the sample', possible: [0, 1e6] },
    { key: 'legal_limit_ug_kg', unit: 'µg/kg', meaning: 'Limit for the mean of the lot', possible: [0, 1e6], default: 4 },
    {
      key: 'prior_median_ug_kg',
      unit: 'µg/kg',
      meaning: 'Median of such lots, from the plant’s own records',
      possible: [1e-6, 1e6],
      default: 1,
    },
    { key: 'prior_spread', unit: '1', meaning: 'Standard deviation of ln(mean) among such lots', possible: [0.01, 5], default: 1.5 },
    ...testInputs,
  ],
  outputs: [{ key: 'probability_above_limit', unit: '1', meaning: 'That the mean of the lot is above the limit' }],
  sources: ['whitaker-1974'],
  standing: 'memory',
  run: (x) => ({
    probability_above_limit: chanceLotExceeds(
      x.commodity as AflatoxinCommodity,
      x.test_result_ug_kg,
      testOf({ ...x, limit_ug_kg: 0, samples: 1 }),
      x.legal_limit_ug_kg,
      x.prior_median_ug_kg,
      x.prior_spread,
    ),
  }),
  remarks: () => [caution],
});

export const sortEffect = defineModel({
  id: 'peanut.sort_effect',
  title: 'Aflatoxin left after electronic sorting or after blanching and sorting',
  about: 'Published share of aflatoxin against share rejected; and the mean of 8911 lots that were blanched and colour sorted.',
  inputs: [
    { key: 'aflatoxin_ug_kg', unit: 'µg/kg', meaning: 'Before', possible: [0, 1e6] },
    {
      key: 'removed',
      unit: '1',
      meaning: 'Share of kernels rejected by the sorter',
      possible: [0, 0.999],
      fitted: [0, 0.1],
      default: 0.05,
    },
  ],
  outputs: [
    { key: 'aflatoxin_removed', unit: '1', meaning: 'Share of the toxin that leaves with the rejects' },
    { key: 'after_sorting_ug_kg', unit: 'µg/kg', meaning: 'Concentration of what is kept' },
    { key: 'after_blanch_and_sort_ug_kg', unit: 'µg/kg', meaning: 'Mean outcome of blanching and colour sorting' },
    { key: 'blanch_and_sort_yield', unit: '1', meaning: 'Mass kept' },
  ],
  sources: ['peanut-science-1975-sort', 'peanut-science-1997-blanching'],
  standing: 'secondhand',
  run: (x) => {
    const removed = aflatoxinSortedOut(x.removed);
    const after = afterBlanchAndSort(x.aflatoxin_ug_kg);
    return {
      aflatoxin_removed: removed,
      after_sorting_ug_kg: concentrationAfter(x.aflatoxin_ug_kg, removed, x.removed),
      after_blanch_and_sort_ug_kg: after.concentration,
      blanch_and_sort_yield: after.yield,
    };
  },
  remarks: () => [{ code: 'RETEST', message: 'A mean over lots: sample and test the sorted lot again before use.' }],
});

export const kernelQuality = defineModel({
  id: 'peanut.quality',
  title: 'Moisture, peroxide value and free fatty acids of peanut kernels against usual limits',
  about: 'Outgoing moisture limit of the US order; the rest is common practice.',
  inputs: [
    { key: 'moisture', unit: '1', meaning: 'Wet basis', possible: [0, 1] },
    { key: 'peroxide_meq_kg', unit: 'meq/kg', meaning: 'Peroxide value of the oil', possible: [0, 1000] },
    { key: 'free_fatty_acids', unit: '1', meaning: 'Share of the oil, as oleic acid', possible: [0, 1] },
    { key: 'state', unit: '', meaning: 'State of the kernels', kind: 'choice', choices: ['raw', 'roasted'], default: 'raw' },
  ],
  outputs: [
    { key: 'verdict', unit: '', meaning: "'within' or sentences on what is outside" },
    { key: 'outgoing_moisture_limit', unit: '1', meaning: 'US outgoing limit' },
    { key: 'damage_limit', unit: '1', meaning: 'US outgoing limit of damaged kernels and minor defects' },
    { key: 'fall_through_limit', unit: '1', meaning: 'US outgoing limit through the 17/64 in round screen' },
  ],
  sources: ['cfr-7-996-31', 'common-practice'],
  standing: 'memory',
  run: (x) => {
    const faults = kernelFaults(
      { moisture: x.moisture, peroxide: x.peroxide_meq_kg, freeFattyAcids: x.free_fatty_acids },
      x.state as 'raw' | 'roasted',
    );
    return {
      verdict: { value: faults.length === 0 ? 'within' : faults.join('. ') },
      outgoing_moisture_limit: usOutgoing.values.moisture,
      damage_limit: usOutgoing.values.damage,
      fall_through_limit: usOutgoing.values.fallThrough,
    };
  },
});

export const piecesPerBar = defineModel({
  id: 'peanut.pieces_per_bar',
  title: 'Variation of nut mass per bar from the number of pieces',
  about: 'Compound Poisson: CV² = (1 + cv²)/λ. A good spreader is more even, clumps are less.',
  inputs: [
    { key: 'pieces_per_bar', unit: '1', meaning: 'Mean number', possible: [1e-6, 1e9] },
    { key: 'piece_mass_g', unit: 'g', meaning: 'Mean mass; runner kernels 0.67 to 0.79 g', possible: [1e-6, 1000], default: 0.73 },
    { key: 'piece_cv', unit: '1', meaning: 'Coefficient of variation of the piece mass', possible: [0, 10], default: 0.15 },
  ],
  outputs: [
    { key: 'coefficient_of_variation', unit: '1', meaning: 'Of nut mass per bar' },
    { key: 'mean_g', unit: 'g', meaning: 'Nut mass per bar' },
    { key: 'sd_g', unit: 'g', meaning: 'Standard deviation of nut mass per bar' },
  ],
  sources: ['cid-a-a-20164'],
  standing: 'found',
  run: (x) => {
    const cv = piecesVariation(x.pieces_per_bar, x.piece_cv);
    return { coefficient_of_variation: cv, mean_g: x.pieces_per_bar * x.piece_mass_g, sd_g: cv * x.pieces_per_bar * x.piece_mass_g };
  },
});

export const peanutModels: readonly Model[] = [
  aflatoxinPlan,
  aflatoxinAcceptance,
  aflatoxinPosterior,
  sortEffect,
  kernelQuality,
  piecesPerBar,
];
