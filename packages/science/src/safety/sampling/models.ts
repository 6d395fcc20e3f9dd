import { defineModel, type Model } from '../../model.js';
import { codeLetter, singlePlan, type InspectionLevel } from './attribute-plan.js';
import {
  acceptance,
  allNegative,
  averageInspection,
  averageOutgoing,
  qualityAt,
  variablesShare,
  type AttributeLaw,
} from './operating-characteristic.js';

const planInputs = [
  { key: 'sample_size', unit: '1', meaning: 'Items drawn', possible: [1, 1e9] },
  { key: 'acceptance_number', unit: '1', meaning: 'The lot is accepted with at most so many faulty items', possible: [0, 1e9] },
] as const;

export const operatingCharacteristic = defineModel({
  id: 'sampling.operating_characteristic',
  title: 'Operating characteristic of a single attribute plan',
  about:
    'Probability of acceptance: binomial sum for a share of a long run, Poisson for faults per item, hypergeometric for an isolated lot.',
  inputs: [
    ...planInputs,
    { key: 'fraction_defective', unit: '1', meaning: 'True share faulty, or faults per item for the Poisson law', possible: [0, 1000] },
    {
      key: 'law',
      unit: '',
      meaning: 'Distribution',
      kind: 'choice',
      choices: ['binomial', 'poisson', 'hypergeometric'],
      default: 'binomial',
    },
    { key: 'lot_size', unit: '1', meaning: 'Items in the lot; needed for the hypergeometric law', possible: [1, 1e12], default: 1e12 },
  ],
  outputs: [
    { key: 'acceptance_probability', unit: '1', meaning: 'Probability that the lot is accepted' },
    { key: 'producer_quality', unit: '1', meaning: 'Share faulty accepted with probability 0.95 (binomial)' },
    { key: 'limiting_quality', unit: '1', meaning: 'Share faulty accepted with probability 0.10 (binomial)' },
    { key: 'limiting_quality_5', unit: '1', meaning: 'Share faulty accepted with probability 0.05 (binomial)' },
  ],
  sources: ['iso-2859-1', 'abramowitz-stegun-1964'],
  standing: 'memory',
  run: (x) => {
    const plan = { n: x.sample_size, c: x.acceptance_number };
    return {
      acceptance_probability: acceptance(plan, x.fraction_defective, x.law as AttributeLaw, x.lot_size),
      producer_quality: qualityAt(plan, 0.95),
      limiting_quality: qualityAt(plan, 0.1),
      limiting_quality_5: qualityAt(plan, 0.05),
    };
  },
});

export const rectifyingInspection = defineModel({
  id: 'sampling.rectifying_inspection',
  title: 'Outgoing quality and inspection load with sorting of rejected lots',
  about: 'AOQ = Pa p (N - n) / N; ATI = n + (1 - Pa)(N - n), Pa by the binomial law.',
  inputs: [
    ...planInputs,
    { key: 'fraction_defective', unit: '1', meaning: 'True share faulty', possible: [0, 1] },
    { key: 'lot_size', unit: '1', meaning: 'Items in the lot', possible: [1, 1e12] },
  ],
  outputs: [
    { key: 'average_outgoing_quality', unit: '1', meaning: 'Mean share faulty after sorting' },
    { key: 'average_total_inspection', unit: '1', meaning: 'Mean number of items inspected per lot' },
  ],
  sources: ['iso-2859-1'],
  standing: 'memory',
  run: (x) => {
    const plan = { n: x.sample_size, c: x.acceptance_number };
    return {
      average_outgoing_quality: averageOutgoing(plan, x.fraction_defective, x.lot_size),
      average_total_inspection: averageInspection(plan, x.fraction_defective, x.lot_size),
    };
  },
});

export const attributePlan = defineModel({
  id: 'sampling.attribute_plan',
  title: 'Single attribute plan of a lot size and a quality level, normal inspection',
  about: 'Code letter by lot size and level, then sample size and acceptance number along the diagonals of the table, arrows followed.',
  inputs: [
    { key: 'lot_size', unit: '1', meaning: 'Items in the lot', possible: [2, 1e12] },
    { key: 'level', unit: '', meaning: 'General inspection level', kind: 'choice', choices: ['I', 'II', 'III'], default: 'II' },
    { key: 'aql_percent', unit: '%', meaning: 'Acceptable quality level, one of the printed steps', possible: [0.01, 10], default: 1 },
    {
      key: 'letter',
      unit: '',
      meaning: 'Code letter to use instead of that of the lot size; empty: by lot size',
      kind: 'choice',
      default: '',
    },
  ],
  outputs: [
    { key: 'code_letter', unit: '', meaning: 'Code letter of the lot size' },
    { key: 'plan_letter', unit: '', meaning: 'Letter of the plan after the arrows' },
    { key: 'sample_size', unit: '1', meaning: 'Items to draw' },
    { key: 'acceptance_number', unit: '1', meaning: 'Accepted with at most so many' },
    { key: 'rejection_number', unit: '1', meaning: 'Rejected with so many or more' },
    { key: 'limiting_quality', unit: '1', meaning: 'Share faulty that is still accepted once in ten lots' },
  ],
  sources: ['mil-std-105e', 'iso-2859-1'],
  standing: 'secondhand',
  run: (x) => {
    const letter = x.letter === '' ? codeLetter(x.lot_size, x.level as InspectionLevel) : x.letter;
    const plan = singlePlan(letter, x.aql_percent);
    return {
      code_letter: { value: letter },
      plan_letter: { value: plan.letter },
      sample_size: plan.n,
      acceptance_number: plan.accept,
      rejection_number: plan.reject,
      limiting_quality: qualityAt({ n: plan.n, c: plan.accept }, 0.1),
    };
  },
  remarks: (x) => {
    const letter = x.letter === '' ? codeLetter(x.lot_size, x.level as InspectionLevel) : x.letter;
    const { n } = singlePlan(letter, x.aql_percent);
    return n >= x.lot_size
      ? [{ code: 'INSPECT_ALL', message: `The sample of ${n} is not below the lot of ${x.lot_size}: inspect every item` }]
      : [];
  },
});

export const variablesEstimate = defineModel({
  id: 'sampling.variables_estimate',
  title: 'Share outside a limit from mean and standard deviation of a sample',
  about: 'Symmetric beta of the s method: I_x(n/2 - 1, n/2 - 1), x = 1/2 - Q √n / (2 (n - 1)).',
  inputs: [
    { key: 'quality_index', unit: '1', meaning: '(limit - mean) / standard deviation', possible: [-100, 100] },
    { key: 'sample_size', unit: '1', meaning: 'Items measured', possible: [3, 1e9] },
  ],
  outputs: [{ key: 'fraction_defective', unit: '1', meaning: 'Estimated share outside the limit' }],
  sources: ['mil-std-414'],
  standing: 'memory',
  run: (x) => ({ fraction_defective: variablesShare(x.quality_index, x.sample_size) }),
});

export const presenceAbsence = defineModel({
  id: 'sampling.presence_absence',
  title: 'What a set of negative portions says about an organism or a foreign body',
  about: 'Spread at random: P(all n negative) = exp(-n m C). With clumps the sample says less than this.',
  inputs: [
    { key: 'portions', unit: '1', meaning: 'Portions tested', possible: [1, 1e6], default: 10 },
    { key: 'portion_g', unit: 'g', meaning: 'Mass of a portion', possible: [0.001, 1e7], default: 25 },
    { key: 'organisms_per_kg', unit: '1/kg', meaning: 'True mean number per kg', possible: [0, 1e12] },
  ],
  outputs: [
    { key: 'acceptance_probability', unit: '1', meaning: 'Probability that every portion is negative' },
    { key: 'upper_limit_per_kg', unit: '1/kg', meaning: 'Mean that all negative portions exclude with 95 % confidence' },
  ],
  sources: ['icmsf-7'],
  standing: 'memory',
  run: (x) => ({
    acceptance_probability: allNegative(x.organisms_per_kg, x.portion_g / 1000, x.portions),
    upper_limit_per_kg: -Math.log(0.05) / ((x.portions * x.portion_g) / 1000),
  }),
  remarks: () => [
    {
      code: 'TESTING_IS_NOT_CONTROL',
      message: 'Negative portions do not prove a lot safe; a validated kill step and hygiene carry the weight.',
    },
  ],
});

export const samplingModels: readonly Model[] = [
  operatingCharacteristic,
  rectifyingInspection,
  attributePlan,
  variablesEstimate,
  presenceAbsence,
];
