import { BadInput } from '../../errors.js';
import { defineModel } from '../../model.js';
import { waterActivity } from '../activity.js';
import { dissolvedInputs, mixtureOf, waterInput } from '../mixture.js';
import { grainAtEquilibrium, saturationCoefficient, saturationFunctionValue, type GrainingSugar } from '../saturation.js';
import {
  kelvinSolubilityRatio,
  lactoseAnomerRatio,
  lactoseFinalSolubility,
  lactoseInitialSolubility,
  solubility,
  solubilityRanges,
  sucroseSolubility,
  type SolubleSugar,
} from '../solubility.js';
import { dissolvedSolids } from '../solution.js';

const temperature = { key: 'temperature_c', unit: '°C', meaning: 'temperature', default: 20 } as const;
const relative = (value: number, spread: number) => ({ value, low: value * (1 - spread), high: value * (1 + spread) });

export const sucroseSolubilityModel = defineModel({
  id: 'sucrose.solubility',
  title: 'Solubility of sucrose in water',
  about: 'Polynomial of Vavrinecz to 80 °C, a table above; tables differ by half a per cent.',
  inputs: [{ ...temperature, possible: [0, 140], fitted: [0, 100] }],
  outputs: [
    { key: 'solids', unit: '1', meaning: 'sucrose of the saturated solution, mass fraction' },
    { key: 'sucrose_per_water', unit: 'kg/kg', meaning: 'sucrose per kg of water' },
    { key: 'water_activity', unit: '1', meaning: 'water activity of the saturated solution' },
  ],
  sources: ['vavrinecz-1962', 'sucrose-properties-page', 'starzak-peacock-1997'],
  standing: 'memory',
  run: ({ temperature_c }) => {
    const ratio = sucroseSolubility(temperature_c);
    const solids = ratio / (1 + ratio);
    return {
      solids: { value: solids, low: solids - 0.005, high: solids + 0.005 },
      sucrose_per_water: relative(ratio, 0.02),
      water_activity: waterActivity({ water: 1, sucrose: ratio }, temperature_c),
    };
  },
});

export const sugarSolubilityModel = defineModel({
  id: 'sugar.solubility',
  title: 'Solubility of one sugar or polyol in water',
  about: 'Tables per sugar, straight lines of ln(kg/kg) between their rows. Lactose: final, after mutarotation.',
  inputs: [
    {
      key: 'sugar',
      unit: '1',
      kind: 'choice',
      meaning: 'what is dissolved, counted as anhydrous',
      choices: Object.keys(solubilityRanges),
      default: 'sucrose',
    },
    { ...temperature, possible: [0, 140] },
  ],
  outputs: [
    { key: 'solids', unit: '1', meaning: 'of the saturated solution, mass fraction' },
    { key: 'per_water', unit: 'kg/kg', meaning: 'per kg of water' },
  ],
  sources: ['vavrinecz-1962', 'hartel-2011', 'gillis-1920', 'hudson-1908', 'polyol-solubilities'],
  standing: 'memory',
  run: ({ sugar, temperature_c }) => {
    const solids = solubility(sugar as SolubleSugar, temperature_c);
    // Tables of the common sugars differ by a point, commercial glucose by two, the others by three, sorbitol by five, lactose at the boil by four.
    const spread =
      sugar === 'sorbitol'
        ? 0.05
        : sugar === 'glucose'
          ? 0.02
          : measuredWell.has(sugar)
            ? 0.01 + 0.003 * Math.max(0, temperature_c - 89)
            : 0.03;
    const [low, high] = [Math.max(0, solids - spread), Math.min(0.999, solids + spread)];
    return {
      solids: { value: solids, low, high },
      per_water: { value: solids / (1 - solids), low: low / (1 - low), high: high / (1 - high) },
    };
  },
  remarks: ({ sugar, temperature_c }) => {
    const [low, high] = solubilityRanges[sugar as SolubleSugar];
    const measured = sugar === 'sucrose' ? ([0, 100] as const) : sugar === 'lactose' ? ([0, 89] as const) : ([low, high] as const);
    if (temperature_c >= measured[0] && temperature_c <= measured[1]) return [];
    return [
      {
        code: 'OUTSIDE_FITTED_RANGE',
        message: `temperature_c is ${temperature_c}; the table of ${sugar} runs from ${measured[0]} to ${measured[1]} °C`,
      },
    ];
  },
});

const measuredWell: ReadonlySet<string> = new Set(['sucrose', 'glucose', 'fructose', 'maltose', 'lactose']);

export const lactoseSolubilityModel = defineModel({
  id: 'lactose.solubility',
  title: 'Solubility of lactose in water',
  about: 'Final solubility by table; alpha/beta at equilibrium 1 : (1.64 - 0.0027 t), initial solubility of alpha = final/(1 + ratio).',
  inputs: [{ ...temperature, possible: [0, 100], fitted: [0, 89] }],
  outputs: [
    { key: 'final_per_water', unit: 'kg/kg', meaning: 'both forms, after mutarotation' },
    { key: 'alpha_initial_per_water', unit: 'kg/kg', meaning: 'alpha lactose that dissolves at once' },
    { key: 'beta_by_alpha', unit: '1', meaning: 'ratio of the forms in solution' },
  ],
  sources: ['hudson-1908', 'walstra-2006'],
  standing: 'found',
  run: ({ temperature_c }) => ({
    final_per_water: relative(lactoseFinalSolubility(temperature_c), 0.03),
    alpha_initial_per_water: relative(lactoseInitialSolubility(temperature_c), 0.07),
    beta_by_alpha: lactoseAnomerRatio(temperature_c),
  }),
});

export const supersaturationModel = defineModel({
  id: 'sucrose.supersaturation',
  title: 'Supersaturation of a sucrose solution',
  about:
    'kg of sucrose per kg of water over the same at saturation. On the basis of the solution the same state looks much smaller: not to be mixed.',
  inputs: [
    { key: 'solids', unit: '1', meaning: 'sucrose, mass fraction of the solution', possible: [0, 0.999] },
    { ...temperature, possible: [0, 140], fitted: [0, 100] },
  ],
  outputs: [
    { key: 'supersaturation', unit: '1', meaning: 'on water; above 1 it can crystallise' },
    { key: 'on_solution', unit: '1', meaning: 'ratio of the mass fractions, for comparison' },
  ],
  sources: ['vavrinecz-1962', 'coulson-richardson-2'],
  standing: 'memory',
  run: ({ solids, temperature_c }) => {
    const saturated = sucroseSolubility(temperature_c);
    return {
      supersaturation: relative(solids / (1 - solids) / saturated, 0.02),
      on_solution: (solids * (1 + saturated)) / saturated,
    };
  },
});

export const grainModel = defineModel({
  id: 'syrup.grain',
  title: 'Grain: sucrose or lactose above its solubility beside the other solids',
  about:
    'Supersaturation on water, and what crystallises until the syrup is saturated: the grain of a nougat, or the grain a smooth caramel must not get. ' +
    'Others lower the solubility by y = exp(0.61 ln y of the activity model).',
  inputs: [
    waterInput,
    ...dissolvedInputs,
    {
      key: 'sugar',
      unit: '1',
      kind: 'choice',
      meaning: 'the sugar that may grain; its mass above includes what is crystal now',
      choices: ['sucrose', 'lactose'],
      default: 'sucrose',
    },
    { ...temperature, possible: [0, 140], fitted: [15, 100] },
  ],
  outputs: [
    { key: 'supersaturation', unit: '1', meaning: 'of the syrup with all of the sugar dissolved; above 1 it can grain' },
    { key: 'saturation_coefficient', unit: '1', meaning: 'solubility per water beside the others over that in water alone' },
    { key: 'crystal_share', unit: '1', meaning: 'crystal at equilibrium, mass fraction of the mixture' },
    { key: 'crystallised_share', unit: '1', meaning: 'share of that sugar that is crystal at equilibrium' },
    { key: 'syrup_solids', unit: '1', meaning: 'solids of the syrup left between the crystals, mass fraction' },
    { key: 'water_activity', unit: '1', meaning: 'water activity at equilibrium with the crystals' },
    { key: 'water_activity_smooth', unit: '1', meaning: 'water activity while nothing has crystallised' },
    { key: 'verdict', unit: '1', meaning: 'clear; may grain, slowly or if seeded (metastable); grains by itself (labile)' },
  ],
  sources: ['zsr', 'vavrinecz-1962', 'hudson-1908', 'wiklund-vavrinecz', 'starzak-peacock-1997'],
  standing: 'memory',
  run: (x) => {
    const solution = mixtureOf(x);
    if (solution.water === 0) throw new BadInput('syrup.grain needs water: without it there is no solution to saturate');
    const sugar = x.sugar as GrainingSugar;
    const t = x.temperature_c;
    const state = grainAtEquilibrium(solution, sugar, t);
    const { activity, expected } = saturationCoefficient(solution, sugar, t);
    const total = solution.water + dissolvedSolids(solution);
    const left = dissolvedSolids(state.syrup);
    const S = state.supersaturation;
    return {
      supersaturation: { value: S, low: (0.98 * S * expected) / Math.min(1, 1.1 * expected), high: (1.02 * S * expected) / activity },
      saturation_coefficient: { value: expected, low: activity, high: Math.min(1, 1.1 * expected) },
      crystal_share: state.crystal / total,
      crystallised_share: solution[sugar]! > 0 ? state.crystal / solution[sugar]! : 0,
      syrup_solids: left / (left + state.syrup.water),
      water_activity: waterActivity(state.syrup, t),
      water_activity_smooth: waterActivity(solution, t),
      verdict: { value: S <= 1 ? 'clear' : S <= 1.2 ? 'metastable' : 'labile' },
    };
  },
  remarks: (x) => {
    const solution = mixtureOf(x);
    const doctor = dissolvedSolids(solution) - solution.sucrose! - solution.lactose!;
    if (x.sugar !== 'sucrose' || solution.sucrose === 0 || doctor >= 1.25 * solution.sucrose!) return [];
    return [
      {
        code: 'DOCTOR_BELOW_RULE',
        message:
          `other solids are ${(doctor / solution.sucrose!).toFixed(2)} parts per part of sucrose; the trade asks for at least 1.25 in a caramel ` +
          'that is to stay smooth (common practice, no source). Growth also needs a mobile syrup: a stiff one may stay smooth above saturation',
      },
    ];
  },
});

export const kelvinModel = defineModel({
  id: 'sucrose.kelvin_effect',
  title: 'Solubility of small sucrose crystals',
  about: 'ln S = 4 σ M/(ρ R T d): why fine grain dissolves while coarse grain grows.',
  inputs: [
    { key: 'diameter_m', unit: 'm', meaning: 'diameter of the crystal', possible: [1e-9, 1], fitted: [1e-8, 1e-3] },
    { ...temperature, possible: [0, 140] },
  ],
  outputs: [
    { key: 'solubility_ratio', unit: '1', meaning: 'solubility over that of a large crystal' },
    { key: 'rise', unit: '1', meaning: 'the same less 1' },
  ],
  sources: ['coulson-richardson-2'],
  standing: 'found',
  run: ({ diameter_m, temperature_c }) => {
    const ratio = kelvinSolubilityRatio(diameter_m, temperature_c);
    return { solubility_ratio: ratio, rise: ratio - 1 };
  },
});

export const saturationFunctionModel = defineModel({
  id: 'sucrose.saturation_function',
  title: 'Saturation function of the sugar works',
  about: 'y = m q + b + (1 - b) exp(c q), q other solids per water. Defaults for beet molasses, whose salts lift it above 1.',
  inputs: [
    { key: 'nonsugar_per_water', unit: 'kg/kg', meaning: 'other dissolved solids per kg of water', possible: [0, 20], fitted: [0, 4] },
    { key: 'm', unit: '1', meaning: 'slope', possible: [-5, 5], default: 0.194 },
    { key: 'b', unit: '1', meaning: 'intercept of the straight end', possible: [-5, 5], default: 0.771 },
    { key: 'c', unit: '1', meaning: 'exponent', possible: [-20, 5], default: -1.8 },
  ],
  outputs: [{ key: 'saturation_coefficient', unit: '1', meaning: 'sucrose per water at saturation over that of pure water' }],
  sources: ['wiklund-vavrinecz'],
  standing: 'found',
  run: ({ nonsugar_per_water, m, b, c }) => ({ saturation_coefficient: saturationFunctionValue(nonsugar_per_water, m, b, c) }),
});
