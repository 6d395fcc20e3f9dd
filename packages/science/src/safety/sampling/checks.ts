import type { Check } from '../../check.js';

const oc = (
  id: string,
  n: number,
  c: number,
  p: number,
  expected: number,
  tolerance: number,
  rest: Pick<Check, 'kind' | 'source' | 'standing'> & Partial<Check>,
  more: Record<string, unknown> = {},
): Check => ({
  id,
  model: 'sampling.operating_characteristic',
  inputs: { sample_size: n, acceptance_number: c, fraction_defective: p, ...more },
  output: 'acceptance_probability',
  expected,
  tolerance,
  ...rest,
});

const plan = (id: string, inputs: Record<string, unknown>, output: string, expected: number | string): Check => ({
  id,
  model: 'sampling.attribute_plan',
  inputs,
  output,
  expected,
  tolerance: 0,
  kind: 'published',
  source: 'mil-std-105e',
  standing: 'secondhand',
  note: 'Rows of the printed table; the model holds the table as diagonals, so the row tests the arrows and the reading.',
});

const nist = {
  kind: 'published',
  source: 'nist-e-handbook',
  standing: 'memory',
  note: 'Example n 52, c 3 of section 6.2.3.2, three digits.',
} as const;
const usda = { kind: 'published', source: 'cfr-7-42-140', standing: 'found' } as const;
const exact = { kind: 'code', source: 'abramowitz-stegun-1964', standing: 'memory' } as const;
const ukTable = { kind: 'published', source: 'uk-si-1996-2636', standing: 'found', note: 'Printed to 0.1 %.' } as const;

export const samplingChecks: readonly Check[] = [
  oc('sampling-oc-nist-1', 52, 3, 0.01, 0.998, 0.0006, nist),
  oc('sampling-oc-nist-2', 52, 3, 0.02, 0.98, 0.0006, nist),
  oc('sampling-oc-nist-5', 52, 3, 0.05, 0.739, 0.001, {
    ...nist,
    note: 'Remembered print; the binomial sum is 0.7383, so the last digit is rough.',
  }),
  oc('sampling-oc-nist-8', 52, 3, 0.08, 0.394, 0.0006, nist),
  oc('sampling-oc-nist-12', 52, 3, 0.12, 0.115, 0.0006, nist),
  oc('sampling-oc-usda', 500, 3, 0.01, 0.26, 0.01, { ...usda, note: 'About 26 % in the print.' }, { law: 'poisson' }),
  oc('sampling-oc-poisson', 500, 3, 0.01, 0.2650259153, 1e-8, exact, { law: 'poisson' }),
  oc('sampling-oc-binomial', 200, 5, 0.015, 0.9176083023, 1e-8, exact),
  oc('sampling-oc-lot-60', 13, 0, 0.05, 0.4738457043, 1e-8, exact, { law: 'hypergeometric', lot_size: 60 }),
  oc('sampling-oc-lot-500', 50, 1, 0.02, 0.7365025091, 1e-8, exact, { law: 'hypergeometric', lot_size: 500 }),
  ...(
    [
      ['sampling-lq-80', 80, 1, 'limiting_quality_5', 0.058, 0.0006],
      ['sampling-lq-125', 125, 2, 'limiting_quality_5', 0.05, 0.0006],
      ['sampling-sql-125', 125, 2, 'producer_quality', 0.0065, 0.0002],
    ] as const
  ).map(([id, n, c, output, expected, tolerance]): Check => ({
    id,
    model: 'sampling.operating_characteristic',
    inputs: { sample_size: n, acceptance_number: c, fraction_defective: 0.01 },
    output,
    expected,
    tolerance,
    ...ukTable,
  })),
  plan('sampling-plan-5000-2.5-n', { lot_size: 5000, aql_percent: 2.5 }, 'sample_size', 200),
  plan('sampling-plan-5000-2.5-c', { lot_size: 5000, aql_percent: 2.5 }, 'acceptance_number', 10),
  plan('sampling-plan-5000-0.65', { lot_size: 5000, aql_percent: 0.65 }, 'acceptance_number', 3),
  plan('sampling-plan-800-4', { lot_size: 800, aql_percent: 4 }, 'acceptance_number', 7),
  plan('sampling-plan-300-1.5', { lot_size: 300, aql_percent: 1.5 }, 'sample_size', 50),
  plan('sampling-plan-200-0.65', { lot_size: 200, aql_percent: 0.65 }, 'plan_letter', 'F'),
  plan('sampling-plan-40000-1.5', { lot_size: 40000, aql_percent: 1.5 }, 'acceptance_number', 14),
  plan('sampling-plan-J-0.065', { lot_size: 800, letter: 'J', aql_percent: 0.065 }, 'sample_size', 200),
  plan('sampling-plan-L-0.1', { lot_size: 5000, letter: 'L', aql_percent: 0.1 }, 'sample_size', 125),
  plan('sampling-letter-120-I', { lot_size: 120, level: 'I' }, 'code_letter', 'D'),
  plan('sampling-letter-325000-III', { lot_size: 325000, level: 'III' }, 'code_letter', 'Q'),
  {
    id: 'sampling-aoq',
    model: 'sampling.rectifying_inspection',
    inputs: { sample_size: 80, acceptance_number: 2, fraction_defective: 0.01, lot_size: 1000 },
    output: 'average_outgoing_quality',
    expected: 0.008771710691,
    tolerance: 1e-9,
    ...exact,
  },
  {
    id: 'sampling-ati',
    model: 'sampling.rectifying_inspection',
    inputs: { sample_size: 80, acceptance_number: 2, fraction_defective: 0.02, lot_size: 1000 },
    output: 'average_total_inspection',
    expected: 278.334624,
    tolerance: 1e-5,
    ...exact,
  },
  {
    id: 'sampling-variables-5',
    model: 'sampling.variables_estimate',
    inputs: { quality_index: 1.59, sample_size: 5 },
    output: 'fraction_defective',
    expected: 0.0219,
    tolerance: 0.0001,
    kind: 'published',
    source: 'mil-std-414',
    standing: 'secondhand',
    note: 'Table B-5 at Q 1.59, n 5, as quoted.',
  },
];
