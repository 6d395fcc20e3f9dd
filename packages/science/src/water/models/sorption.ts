import { defineModel } from '../../model.js';
import { betFromLine, fitGab, gabActivity, gabMoisture, wetBasis, type Gab } from '../isotherm.js';
import {
  oilySeedMoisture,
  sorbedMoisture,
  sorptionActivity,
  sorptionMaterials,
  sorptionRange,
  type SorptionMaterial,
} from '../materials.js';

const activity = { key: 'water_activity', unit: '1', meaning: 'water activity', possible: [0, 0.999] } as const;
const temperature = {
  key: 'temperature_c',
  unit: '°C',
  meaning: 'temperature',
  possible: [-20, 100],
  fitted: [10, 45],
  default: 25,
} as const;
const dryBasis = { key: 'moisture_dry_basis', unit: 'kg/kg', meaning: 'water per kg of dry matter' } as const;
const moisture = { key: 'moisture', unit: '1', meaning: 'water, mass fraction of the whole' } as const;
const material = { key: 'material', unit: '1', kind: 'choice', meaning: 'what takes up water', choices: sorptionMaterials } as const;
const oil = { key: 'oil', unit: '1', meaning: 'oil of the dry matter, for oily_seed', possible: [0, 0.8], default: 0.48 } as const;
const constants = [
  { key: 'monolayer', unit: 'kg/kg', meaning: 'monolayer, per kg dry', possible: [1e-6, 1] },
  { key: 'c', unit: '1', meaning: 'constant C', possible: [1e-6, 1e6] },
  { key: 'k', unit: '1', meaning: 'constant K; 1 is the BET isotherm', possible: [0.01, 3], fitted: [0.3, 1.2] },
] as const;
const around = (value: number, spread: number) => ({ value, low: value * (1 - spread), high: value * (1 + spread) });

export const gabModel = defineModel({
  id: 'sorption.gab',
  title: 'Sorption isotherm of Guggenheim, Anderson and de Boer',
  about: 'm = m0 C K a/((1 - K a)(1 - K a + C K a)); with K = 1 that of Brunauer, Emmett and Teller.',
  inputs: [activity, ...constants],
  outputs: [dryBasis, moisture],
  sources: ['gab'],
  standing: 'memory',
  run: ({ water_activity, monolayer, c, k }) => {
    const m = gabMoisture([monolayer, c, k], water_activity);
    return { moisture_dry_basis: m, moisture: wetBasis(m) };
  },
});

export const gabInverseModel = defineModel({
  id: 'sorption.gab_water_activity',
  title: 'Water activity by a GAB isotherm',
  about: 'The isotherm turned round: a quadratic in K a.',
  inputs: [{ key: 'moisture_dry_basis', unit: 'kg/kg', meaning: 'water per kg of dry matter', possible: [0, 5] }, ...constants],
  outputs: [{ key: 'water_activity', unit: '1', meaning: 'water activity' }],
  sources: ['gab'],
  standing: 'memory',
  run: ({ moisture_dry_basis, monolayer, c, k }) => ({ water_activity: gabActivity([monolayer, c, k], moisture_dry_basis) }),
});

export const gabFitModel = defineModel({
  id: 'sorption.gab_fit',
  title: 'GAB constants from measured points',
  about: 'Least squares of a/m as a parabola in a: the plant’s own isotherm from its own desiccators.',
  inputs: [
    { key: 'water_activity', unit: '1', kind: 'series', meaning: 'activities, three or more', possible: [0.01, 0.999] },
    { key: 'moisture_dry_basis', unit: 'kg/kg', kind: 'series', meaning: 'moistures at those activities', possible: [1e-6, 10] },
  ],
  outputs: [
    { key: 'monolayer', unit: 'kg/kg', meaning: 'monolayer, per kg dry' },
    { key: 'c', unit: '1', meaning: 'constant C' },
    { key: 'k', unit: '1', meaning: 'constant K' },
    { key: 'mean_deviation', unit: '1', meaning: 'mean relative deviation of the points from the curve' },
  ],
  sources: ['gab'],
  standing: 'memory',
  run: ({ water_activity, moisture_dry_basis }) => {
    const fit: Gab = fitGab(water_activity, moisture_dry_basis);
    const deviation =
      water_activity.reduce((sum, aw, i) => sum + Math.abs(gabMoisture(fit, aw) / moisture_dry_basis[i]! - 1), 0) / water_activity.length;
    return { monolayer: fit[0], c: fit[1], k: fit[2], mean_deviation: deviation };
  },
});

export const betModel = defineModel({
  id: 'sorption.bet_constants',
  title: 'BET constants from the straight plot',
  about: 'a/((1 - a) m) = intercept + slope a: monolayer 1/(slope + intercept), C = slope/intercept + 1.',
  inputs: [
    { key: 'slope', unit: 'kg/kg', meaning: 'slope of the plot', possible: [0, 1e9] },
    { key: 'intercept', unit: 'kg/kg', meaning: 'intercept of the plot', possible: [1e-12, 1e9] },
  ],
  outputs: [
    { key: 'monolayer', unit: 'kg/kg', meaning: 'monolayer, per kg dry' },
    { key: 'c', unit: '1', meaning: 'constant C' },
  ],
  sources: ['bet-1938'],
  standing: 'memory',
  run: ({ slope, intercept }) => {
    const { monolayer, C } = betFromLine(slope, intercept);
    return { monolayer, c: C };
  },
});

const sorptionSources = [
  'gab',
  'oswin',
  'bull-1944',
  'cocoa-isotherm-study',
  'lactose-isotherms',
  'material-data-pasta',
  'cereal-grains-storage',
  'asae-d245',
  'cromarty-1982',
  'biscuit-isotherm-2016',
] as const;

/** Isotherms of one material by several authors: within 20 %; seeds, roasted or not, and baked goods within 30 %. */
const scattered: ReadonlySet<string> = new Set(['cocoa_bean', 'cocoa_shell', 'wafer', 'biscuit', 'peanut_kernel', 'oily_seed']);
const spreadOf = (name: string): number => (scattered.has(name) ? 0.3 : 0.2);

function outside(name: string, aw: number) {
  const range = sorptionRange[name as SorptionMaterial];
  if (!range || (aw >= range[0] && aw <= range[1])) return [];
  return [
    {
      code: 'OUTSIDE_FITTED_RANGE',
      message: `the isotherm of ${name} covers water activities ${range[0]} to ${range[1]}; above that amorphous lactose crystallises and holds less`,
    },
  ];
}

export const sorptionModel = defineModel({
  id: 'sorption.moisture',
  title: 'Equilibrium moisture of a material',
  about:
    'Isotherm of the material (GAB, BET, Oswin, modified Henderson, modified Chung-Pfost, oily seed; milk powder and wafer as sums of their parts).',
  inputs: [material, { ...activity, fitted: [0.1, 0.9] }, temperature, oil],
  outputs: [dryBasis, moisture],
  sources: [...sorptionSources],
  standing: 'secondhand',
  run: (x) => {
    const m = sorbedMoisture(x.material as SorptionMaterial, x.water_activity, x.temperature_c, x.oil);
    const spread = spreadOf(x.material);
    return { moisture_dry_basis: around(m, spread), moisture: around(wetBasis(m), spread) };
  },
  remarks: (x) => outside(x.material, x.water_activity),
});

export const sorptionActivityModel = defineModel({
  id: 'sorption.water_activity',
  title: 'Water activity of a material at a moisture',
  about: 'The isotherm of the material turned round.',
  inputs: [
    material,
    { key: 'moisture', unit: '1', meaning: 'water, mass fraction of the whole', possible: [0, 0.7], fitted: [0.005, 0.25] },
    temperature,
    oil,
  ],
  outputs: [{ key: 'water_activity', unit: '1', meaning: 'water activity' }, dryBasis],
  sources: [...sorptionSources],
  standing: 'secondhand',
  run: (x) => {
    const m = x.moisture / (1 - x.moisture);
    const at = (factor: number): number => sorptionActivity(x.material as SorptionMaterial, m * factor, x.temperature_c, x.oil);
    return { water_activity: { value: at(1), low: at(0.87), high: at(1.15) }, moisture_dry_basis: m };
  },
});

export const oilySeedModel = defineModel({
  id: 'sorption.oily_seed',
  title: 'Equilibrium moisture of nuts by their oil content',
  about: '1 - aw = exp(-(M (1.1 + t/90)/(1 - oil))²/440), M per cent of dry matter. Raw seed; roasted nuts hold less.',
  inputs: [
    { ...activity, fitted: [0.1, 0.9] },
    { ...temperature, fitted: [0, 45] },
    { ...oil, meaning: 'oil of the dry matter: peanut 0.48, almond 0.52, hazelnut 0.62' },
  ],
  outputs: [dryBasis, moisture],
  sources: ['cromarty-1982'],
  standing: 'found',
  run: (x) => {
    const m = oilySeedMoisture(x.water_activity, x.temperature_c, x.oil);
    return { moisture_dry_basis: around(m, spreadOf('oily_seed')), moisture: around(wetBasis(m), spreadOf('oily_seed')) };
  },
});
