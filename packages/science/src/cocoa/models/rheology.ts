import { defineModel, type Model } from '../../model.js';
import { cheapestCorrection, pgprLimit } from '../flow-correction.js';
import { fitBingham, fitCasson, flowPoints, type FlowFit } from '../flow-fit.js';
import { fitHerschelBulkley, fitWindhab } from '../flow-fit-nonlinear.js';
import { stressOf, type FlowLaw } from '../flow-laws.js';
import { flowReport } from '../flow-report.js';
import { flowShift, type FlowEffects } from '../flow-shift.js';
import { cassonPipeDrop, powerLawPipeDrop, powerLawReynolds } from '../pipe.js';
import { nonNegative, positive, series, share } from './inputs.js';

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
    remarks: (x) =>
      law === 'casson' && x.shear_rate_s.some((rate) => rate < 5)
        ? [{ code: 'BELOW_CASSON_RANGE', message: 'the Casson law fits 5 to 60 1/s; points below 5 1/s pull the yield value' }]
        : [],
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

const fatRange = { possible: [0.2, 0.6], fitted: [0.24, 0.45] } as const;
const lecithinRange = { possible: [0, 0.03], fitted: [0, 0.012], default: 0.0045 } as const;
const pgprRange = { possible: [0, 0.02], fitted: [0, 0.01], default: 0 } as const;
const moistureRange = { possible: [0, 0.03], fitted: [0.003, 0.02], default: 0.007 } as const;
const recipe = [
  share('fat', 'total fat', fatRange),
  share('lecithin', 'lecithin', lecithinRange),
  share('pgpr', 'E476', pgprRange),
  share('moisture', 'water, wet basis', moistureRange),
  { key: 'd90_um', unit: 'µm', possible: [5, 200], fitted: [15, 60], default: 25, meaning: '90 % of the particle volume is finer' },
] as const;

/** The sizes a plant measures first; 0 leaves the published middle. */
const ladder = [
  nonNegative('plant_yield_factor_per_point_pgpr', '1', "plant ladder: factor on the yield value at +0.1 % E476; 0 for the trade's value", {
    possible: [0, 1],
    default: 0,
  }),
  nonNegative('plant_fineness_exponent_yield', '1', 'plant ladder: exponent of 1/d90 in the yield value; 0 for the published range', {
    default: 0,
  }),
  nonNegative('plant_lecithin_butter', '1', 'plant ladder: parts of butter that one part of lecithin replaces; 0 for 10', { default: 0 }),
] as const;

function effectsFrom(x: {
  readonly plant_yield_factor_per_point_pgpr: number;
  readonly plant_fineness_exponent_yield: number;
  readonly plant_lecithin_butter: number;
}): Partial<FlowEffects> {
  const effects: { -readonly [K in keyof FlowEffects]?: FlowEffects[K] } = {};
  if (x.plant_yield_factor_per_point_pgpr > 0) {
    effects.pgprFloor = 0;
    effects.pgprScale = 0.001 / Math.max(1e-9, -Math.log(x.plant_yield_factor_per_point_pgpr));
  }
  if (x.plant_fineness_exponent_yield > 0) effects.finenessYield = x.plant_fineness_exponent_yield;
  if (x.plant_lecithin_butter > 0) effects.lecithinButter = x.plant_lecithin_butter;
  return effects;
}

export const shiftModel: Model = defineModel({
  id: 'rheology.composition_shift',
  title: 'Yield value and plastic viscosity after a change of recipe',
  about:
    'Factors on the present values: fat and water through the packing of particles (Krieger-Dougherty), lecithin as 10 parts butter up to its optimum and a rising yield value beyond, E476 on the yield value, fineness as a power of d90. Directions are published; sizes are ranges until the plant enters its own ladder.',
  inputs: [
    ...recipe,
    share('new_fat', 'total fat after the change', fatRange),
    share('new_lecithin', 'lecithin after', lecithinRange),
    share('new_pgpr', 'E476 after', pgprRange),
    share('new_moisture', 'water after', moistureRange),
    { key: 'new_d90_um', unit: 'µm', possible: [5, 200], fitted: [15, 60], default: 25, meaning: 'fineness after' },
    nonNegative('yield_value_pa', 'Pa', 'present Casson yield value', { default: 9.5 }),
    nonNegative('plastic_viscosity_pa_s', 'Pa·s', 'present Casson plastic viscosity', { default: 2.3 }),
    ...ladder,
  ],
  outputs: [
    { key: 'new_yield_value_pa', unit: 'Pa', meaning: 'yield value after the change' },
    { key: 'new_plastic_viscosity_pa_s', unit: 'Pa·s', meaning: 'plastic viscosity after the change' },
    { key: 'yield_factor', unit: '1', meaning: 'after over before' },
    { key: 'plastic_factor', unit: '1', meaning: 'after over before' },
  ],
  sources: ['krieger-dougherty-1959', 'chocolate-flow-trends', 'afoakwa-2008', 'schantz-rohm-2005', 'pombal-2024'],
  standing: 'memory',
  run: (x) => {
    const shift = flowShift(
      { fat: x.fat, lecithin: x.lecithin, pgpr: x.pgpr, moisture: x.moisture, d90: x.d90_um },
      { fat: x.new_fat, lecithin: x.new_lecithin, pgpr: x.new_pgpr, moisture: x.new_moisture, d90: x.new_d90_um },
      effectsFrom(x),
    );
    const times = (base: number, f: { value: number; low: number; high: number }) => ({
      value: base * f.value,
      low: base * f.low,
      high: base * f.high,
    });
    return {
      new_yield_value_pa: times(x.yield_value_pa, shift.yieldValue),
      new_plastic_viscosity_pa_s: times(x.plastic_viscosity_pa_s, shift.plastic),
      yield_factor: shift.yieldValue,
      plastic_factor: shift.plastic,
    };
  },
});

export const correctionModel: Model = defineModel({
  id: 'rheology.cheapest_correction',
  title: 'Cheapest way to a target yield value and plastic viscosity',
  about:
    'Tries every combination of cocoa butter (0.1 % steps), lecithin (0.02 %) and E476 (0.01 %) within the limits given and the legal 0.5 % E476, and takes the cheapest that meets both targets, else the nearest. "Nothing" is tried too.',
  inputs: [
    ...recipe,
    positive('yield_value_pa', 'Pa', 'present Casson yield value'),
    positive('plastic_viscosity_pa_s', 'Pa·s', 'present Casson plastic viscosity'),
    positive('target_yield_pa', 'Pa', 'wanted yield value'),
    positive('target_plastic_pa_s', 'Pa·s', 'wanted plastic viscosity'),
    share('yield_tolerance', 'relative half-width that counts as met', { default: 0.05 }),
    share('plastic_tolerance', 'relative half-width that counts as met', { default: 0.1 }),
    nonNegative('cocoa_butter_price_kg', '1/kg', 'price of cocoa butter'),
    nonNegative('lecithin_price_kg', '1/kg', 'price of lecithin'),
    nonNegative('pgpr_price_kg', '1/kg', 'price of E476'),
    nonNegative('chocolate_price_kg', '1/kg', 'value of the chocolate that is displaced'),
    share('most_cocoa_butter', 'largest addition of cocoa butter', { default: 0.03, possible: [0, 0.2] }),
    share('most_lecithin', 'largest lecithin in the end', { default: 0.005, possible: [0, 0.02] }),
    share('most_pgpr', 'largest E476 in the end; never above the legal limit', { default: 0.005, possible: [0, 0.02] }),
    ...ladder,
  ],
  outputs: [
    { key: 'add_cocoa_butter', unit: 'kg/kg', meaning: 'to add per kg of present chocolate' },
    { key: 'add_lecithin', unit: 'kg/kg', meaning: 'to add' },
    { key: 'add_pgpr', unit: 'kg/kg', meaning: 'to add' },
    { key: 'new_yield_value_pa', unit: 'Pa', meaning: 'yield value expected' },
    { key: 'new_plastic_viscosity_pa_s', unit: 'Pa·s', meaning: 'plastic viscosity expected' },
    { key: 'extra_cost_kg', unit: '1/kg', meaning: 'extra cost per kg of corrected chocolate' },
    { key: 'meets_target', unit: '-', meaning: 'whether both targets are met' },
  ],
  sources: ['chocolate-flow-trends', 'krieger-dougherty-1959', 'eu-1333-2008'],
  standing: 'memory',
  run: (x) => {
    const c = cheapestCorrection(
      {
        recipe: { fat: x.fat, lecithin: x.lecithin, pgpr: x.pgpr, moisture: x.moisture, d90: x.d90_um },
        yieldValue: x.yield_value_pa,
        plasticViscosity: x.plastic_viscosity_pa_s,
        targetYield: x.target_yield_pa,
        targetPlastic: x.target_plastic_pa_s,
        yieldTolerance: x.yield_tolerance,
        plasticTolerance: x.plastic_tolerance,
        price: {
          cocoaButter: x.cocoa_butter_price_kg,
          lecithin: x.lecithin_price_kg,
          pgpr: x.pgpr_price_kg,
          chocolate: x.chocolate_price_kg,
        },
        most: { cocoaButter: x.most_cocoa_butter, lecithin: x.most_lecithin, pgpr: x.most_pgpr },
      },
      effectsFrom(x),
    );
    const band = (base: number, f: { value: number; low: number; high: number }) => ({
      value: base * f.value,
      low: base * f.low,
      high: base * f.high,
    });
    return {
      add_cocoa_butter: c.cocoaButter,
      add_lecithin: c.lecithin,
      add_pgpr: c.pgpr,
      new_yield_value_pa: band(x.yield_value_pa, c.yieldFactor),
      new_plastic_viscosity_pa_s: band(x.plastic_viscosity_pa_s, c.plasticFactor),
      extra_cost_kg: c.cost,
      meets_target: { value: c.meets },
    };
  },
  remarks: (x) => [
    ...(x.pgpr > pgprLimit
      ? [{ code: 'E476_OVER_LIMIT', message: `E476 is ${(x.pgpr * 100).toFixed(2)} %, above 0.5 % (EU 1333/2008)` }]
      : []),
    {
      code: 'CHECK_THE_NAME',
      message: 'added butter dilutes milk solids and non-fat cocoa: run law.chocolate_names on the corrected chocolate',
    },
  ],
});

export const pipeCassonModel: Model = defineModel({
  id: 'rheology.pipe_casson',
  title: 'Pressure drop of chocolate in a pipe',
  about: 'Laminar flow of a Casson fluid in a round pipe, solved for the pressure drop. Below the starting drop nothing flows.',
  inputs: [
    nonNegative('yield_value_pa', 'Pa', 'Casson yield value at pipe temperature'),
    positive('plastic_viscosity_pa_s', 'Pa·s', 'Casson plastic viscosity'),
    positive('diameter_m', 'm', 'inner diameter'),
    positive('length_m', 'm', 'length'),
    nonNegative('speed_m_s', 'm/s', 'mean speed', { possible: [0, 100] }),
    positive('available_pressure_pa', 'Pa', 'pressure at hand, to tell whether it flows', { default: 1e5 }),
  ],
  outputs: [
    { key: 'pressure_drop_pa', unit: 'Pa', meaning: 'drop at that speed' },
    { key: 'starting_drop_pa', unit: 'Pa', meaning: 'drop that just starts the flow' },
    { key: 'flows', unit: '-', meaning: 'whether the pressure at hand starts the flow' },
  ],
  sources: ['steffe-1996'],
  standing: 'memory',
  run: (x) => {
    const start = cassonPipeDrop(x.yield_value_pa, x.plastic_viscosity_pa_s, x.diameter_m, x.length_m, 0);
    return {
      pressure_drop_pa: cassonPipeDrop(x.yield_value_pa, x.plastic_viscosity_pa_s, x.diameter_m, x.length_m, x.speed_m_s),
      starting_drop_pa: start,
      flows: { value: x.available_pressure_pa > start },
    };
  },
});

export const pipePowerLawModel: Model = defineModel({
  id: 'rheology.pipe_power_law',
  title: 'Pressure drop of a power-law fluid in a pipe',
  about: "Laminar, Metzner and Reed: Δp = 4 K'(L/D)(8V/D)ⁿ with the generalised consistency K'.",
  inputs: [
    positive('generalised_consistency', 'Pa·sⁿ', "K' = K((3n + 1)/4n)ⁿ"),
    positive('flow_index', '1', 'n', { possible: [0.05, 3] }),
    positive('diameter_m', 'm', 'inner diameter'),
    positive('length_m', 'm', 'length'),
    nonNegative('speed_m_s', 'm/s', 'mean speed'),
    positive('density_kg_m3', 'kg/m³', 'density'),
  ],
  outputs: [
    { key: 'pressure_drop_pa', unit: 'Pa', meaning: 'drop' },
    { key: 'reynolds', unit: '1', meaning: 'generalised Reynolds number; laminar below about 2100' },
  ],
  sources: ['geankoplis-transport'],
  standing: 'secondhand',
  run: (x) => ({
    pressure_drop_pa: powerLawPipeDrop(x.generalised_consistency, x.flow_index, x.diameter_m, x.length_m, x.speed_m_s),
    reynolds: powerLawReynolds(x.generalised_consistency, x.flow_index, x.diameter_m, x.speed_m_s, x.density_kg_m3),
  }),
});
