import { defineModel, type Model, type ModelFinding } from '../../model.js';
import { fitBingham, fitCasson, flowPoints, flowTableFault, type FlowFit } from '../flow-fit.js';
import { fitHerschelBulkley, fitWindhab } from '../flow-fit-nonlinear.js';
import { stressOf, type FlowLaw } from '../flow-laws.js';
import { flowReport } from '../flow-report.js';
import { nonNegative, positive, series } from './inputs.js';

const rates = series('shear_rate_s', '1/s', 'shear rates of the viscometer table', { possible: [1e-6, 1e5], fitted: [2, 60] });
const stresses = series('shear_stress_pa', 'Pa', 'stress at each rate', { possible: [1e-6, 1e7] });
const quality = [
  { key: 'residual_pa', unit: 'Pa', meaning: 'root mean square residual of the stress' },
  { key: 'r_squared', unit: '1', meaning: 'coefficient of determination of the stress' },
  { key: 'points', unit: '1', meaning: 'number of points' },
] as const;

const outputsOf = (fit: FlowFit) => ({ ...fit.parameters, residual_pa: fit.residual, r_squared: fit.r2, points: fit.points });

const named = {
  yield_value_pa: ['Pa', 'yield value τ0'],
  plastic_viscosity_pa_s: ['Pa·s', 'plastic viscosity η'],
  consistency_pa_sn: ['Pa·sⁿ', 'consistency K'],
  flow_index: ['1', 'flow index n'],
  structured_yield_pa: ['Pa', 'yield value τ1 extrapolated from the straight end'],
  breakdown_rate_s: ['1/s', 'shear rate γ* of structure breakdown'],
  end_viscosity_pa_s: ['Pa·s', 'end viscosity η∞'],
} as const;
const output = (key: keyof typeof named) => ({ key, unit: named[key][0], meaning: named[key][1] });

const faultsOf = (rate: readonly number[], stress: readonly number[]): ModelFinding[] => {
  const fault = flowTableFault(rate.map((r, i) => ({ rate: r, stress: stress[i]! })));
  return fault ? [fault] : [];
};

function fitModel(
  law: string,
  title: string,
  about: string,
  least: number,
  keys: readonly (keyof typeof named)[],
  sources: Model['sources'],
  fit: (points: ReturnType<typeof flowPoints>) => FlowFit,
): Model {
  return defineModel({
    id: `rheology.${law}_fit`,
    title,
    about,
    inputs: [rates, stresses],
    outputs: [...keys.map(output), ...quality],
    sources,
    standing: 'memory',
    run: (x) => outputsOf(fit(flowPoints(x.shear_rate_s, x.shear_stress_pa, least))),
    remarks: (x) => [
      ...faultsOf(x.shear_rate_s, x.shear_stress_pa),
      ...(law === 'casson' && x.shear_rate_s.some((rate) => rate < 5)
        ? [{ code: 'BELOW_CASSON_RANGE', message: 'the Casson law fits 5 to 60 1/s; points below 5 1/s pull the yield value' }]
        : []),
    ],
  });
}

export const cassonFitModel = fitModel(
  'casson',
  'Casson yield value and plastic viscosity from a viscometer table',
  '√τ = √τ0 + √(η γ), least squares of the roots; 95 % confidence limits from the residuals. Compare values of one instrument only: laboratories differed 7-fold in the yield value.',
  3,
  ['yield_value_pa', 'plastic_viscosity_pa_s'],
  ['casson-1959', 'aeschlimann-beckett-2000', 'de-graef-2011'],
  fitCasson,
);
export const binghamFitModel = fitModel(
  'bingham',
  'Bingham yield value and viscosity from a viscometer table',
  'τ = τ0 + η γ, least squares; 95 % confidence limits from the residuals.',
  3,
  ['yield_value_pa', 'plastic_viscosity_pa_s'],
  ['bergemann-2018'],
  fitBingham,
);
export const herschelBulkleyFitModel = fitModel(
  'herschel_bulkley',
  'Herschel-Bulkley parameters from a viscometer table',
  'τ = τ0 + K γⁿ, relative residuals; limits from the linearised covariance.',
  4,
  ['yield_value_pa', 'consistency_pa_sn', 'flow_index'],
  ['steffe-1996'],
  fitHerschelBulkley,
);
export const windhabFitModel = fitModel(
  'windhab',
  'Windhab parameters from a viscometer table',
  'τ = τ0 + (τ1 - τ0)(1 - exp(-γ/γ*)) + η∞ γ, relative residuals; limits from the linearised covariance.',
  5,
  ['yield_value_pa', 'structured_yield_pa', 'breakdown_rate_s', 'end_viscosity_pa_s'],
  ['ica-46-2000'],
  fitWindhab,
);

const laws = ['casson', 'bingham', 'herschel-bulkley', 'windhab'] as const;
export const shearStressModel: Model = defineModel({
  id: 'rheology.shear_stress',
  title: 'Stress of molten chocolate at a shear rate',
  about:
    'Evaluates a flow law. Casson √τ = √τ0 + √(ηγ); Bingham τ0 + ηγ; Herschel-Bulkley τ0 + Kγⁿ; Windhab τ0 + (τ1 - τ0)(1 - exp(-γ/γ*)) + η∞γ.',
  inputs: [
    { key: 'law', unit: '-', kind: 'choice', choices: laws, default: 'casson', meaning: 'flow law' },
    nonNegative('shear_rate_s', '1/s', 'shear rate', { fitted: [5, 60] }),
    nonNegative('yield_value_pa', 'Pa', 'yield value'),
    nonNegative('plastic_viscosity_pa_s', 'Pa·s', 'plastic viscosity; Herschel-Bulkley: consistency; Windhab: end viscosity'),
    positive('flow_index', '1', 'Herschel-Bulkley index', { default: 1, possible: [0.01, 3] }),
    nonNegative('structured_yield_pa', 'Pa', 'Windhab τ1', { default: 0 }),
    positive('breakdown_rate_s', '1/s', 'Windhab γ*', { default: 6 }),
  ],
  outputs: [
    { key: 'shear_stress_pa', unit: 'Pa', meaning: 'stress' },
    { key: 'apparent_viscosity_pa_s', unit: 'Pa·s', meaning: 'stress over rate' },
  ],
  sources: ['casson-1959', 'ica-46-2000', 'steffe-1996'],
  standing: 'memory',
  run: (x) => {
    const stress = stressOf(lawFrom(x), x.shear_rate_s);
    return { shear_stress_pa: stress, ...(x.shear_rate_s > 0 && { apparent_viscosity_pa_s: stress / x.shear_rate_s }) };
  },
});

function lawFrom(x: {
  readonly law: string;
  readonly yield_value_pa: number;
  readonly plastic_viscosity_pa_s: number;
  readonly flow_index: number;
  readonly structured_yield_pa: number;
  readonly breakdown_rate_s: number;
}): FlowLaw {
  const yieldValue = x.yield_value_pa;
  switch (x.law as (typeof laws)[number]) {
    case 'casson':
      return { law: 'casson', yieldValue, plasticViscosity: x.plastic_viscosity_pa_s };
    case 'bingham':
      return { law: 'bingham', yieldValue, plasticViscosity: x.plastic_viscosity_pa_s };
    case 'herschel-bulkley':
      return { law: 'herschel-bulkley', yieldValue, consistency: x.plastic_viscosity_pa_s, index: x.flow_index };
    case 'windhab':
      return {
        law: 'windhab',
        yieldValue,
        structuredYield: x.structured_yield_pa,
        breakdownRate: x.breakdown_rate_s,
        endViscosity: x.plastic_viscosity_pa_s,
      };
  }
}

export const interpolatedModel: Model = defineModel({
  id: 'rheology.interpolated_values',
  title: 'Interpolated values of a chocolate flow curve',
  about:
    'Stress at 5 1/s (proxy of the yield value), viscosity at 40 1/s, and the difference of the ramps up and down: what laboratories agree on, in place of fitted Casson values. Read between measured points, never beyond them.',
  inputs: [
    rates,
    stresses,
    series('shear_rate_down_s', '1/s', 'rates of the ramp down, if measured', { possible: [1e-6, 1e5], default: [] }),
    series('shear_stress_down_pa', 'Pa', 'stresses of the ramp down', { possible: [1e-6, 1e7], default: [] }),
  ],
  outputs: [
    { key: 'stress_at_5_pa', unit: 'Pa', meaning: 'stress at 5 1/s' },
    { key: 'viscosity_at_40_pa_s', unit: 'Pa·s', meaning: 'apparent viscosity at 40 1/s' },
    { key: 'two_point_yield_pa', unit: 'Pa', meaning: 'Casson yield value through 5 and the highest rate up to 50 1/s' },
    { key: 'two_point_plastic_pa_s', unit: 'Pa·s', meaning: 'Casson plastic viscosity through the same points' },
    { key: 'thixotropy_at_5_pa', unit: 'Pa', meaning: 'stress up less down at 5 1/s' },
    { key: 'thixotropy_at_40_pa_s', unit: 'Pa·s', meaning: 'viscosity up less down at 40 1/s' },
  ],
  sources: ['servais-2004', 'aeschlimann-beckett-2000', 'ica-46-2000'],
  standing: 'found',
  run: (x) => {
    const up = flowPoints(x.shear_rate_s, x.shear_stress_pa, 2);
    const down = x.shear_rate_down_s.length > 0 ? flowPoints(x.shear_rate_down_s, x.shear_stress_down_pa, 2) : [];
    const r = flowReport(up, down);
    const reproducible = (value: number) => ({ value, low: value * (1 - 1.96 * 0.08), high: value * (1 + 1.96 * 0.08) });
    return {
      stress_at_5_pa: reproducible(r.stressAt5),
      viscosity_at_40_pa_s: reproducible(r.viscosityAt40),
      two_point_yield_pa: r.twoPointYield,
      two_point_plastic_pa_s: r.twoPointPlastic,
      ...(r.thixotropyAt5 !== undefined && { thixotropy_at_5_pa: r.thixotropyAt5 }),
      ...(r.thixotropyAt40 !== undefined && { thixotropy_at_40_pa_s: r.thixotropyAt40 }),
    };
  },
});
