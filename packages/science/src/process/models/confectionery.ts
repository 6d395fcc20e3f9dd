import { composition, type Composition } from '../../composition.js';
import { defineModel, type Estimate, type Model } from '../../model.js';
import { requireRange } from '../../errors.js';
import { foamConductivity } from '../foam.js';
import { density, specificHeat, thermalConductivity } from '../thermal.js';
import { massShare, temperature, volumeShare } from './inputs.js';

const keys = [
  'water',
  'sucrose',
  'glucose',
  'fructose',
  'maltose',
  'higher_saccharides',
  'lactose',
  'polyols',
  'starch',
  'fibre',
  'protein',
  'salt',
  'ash',
] as const;

const inputs = [
  massShare('water', 'water, mass fraction of the whole', { default: 0 }),
  massShare('sucrose', 'sucrose, dissolved and crystal', { default: 0 }),
  massShare('glucose', 'glucose (dextrose)', { default: 0 }),
  massShare('fructose', 'fructose', { default: 0 }),
  massShare('maltose', 'maltose', { default: 0 }),
  massShare('higher_saccharides', 'saccharides of three and more units, from glucose syrup', { default: 0 }),
  massShare('lactose', 'lactose, anhydrous', { default: 0 }),
  massShare('polyols', 'polyols', { default: 0 }),
  massShare('starch', 'starch', { default: 0 }),
  massShare('fibre', 'fibre', { default: 0 }),
  massShare('fat', 'fat of every kind, liquid', { default: 0 }),
  massShare('protein', 'protein', { default: 0 }),
  massShare('salt', 'salt', { default: 0 }),
  massShare('ash', 'ash without salt', { default: 0 }),
  { key: 'crystalline_sucrose_share', unit: 'kg/kg', meaning: 'share of the sucrose that is crystal', possible: [0, 1], default: 0 },
  { key: 'fat_continuous', unit: '1', meaning: 'fat is the continuous phase, as in chocolate', kind: 'flag', default: false },
  volumeShare('air_fraction', 'share of the volume that is gas', { default: 0, fitted: [0, 0.64], possible: [0, 0.95] }),
  temperature('temperature_c', 'temperature', { default: 20, possible: [-40, 180], fitted: [0, 100] }),
] as const;

type Inputs = Readonly<Record<(typeof keys)[number] | 'fat', number>> & {
  readonly crystalline_sucrose_share: number;
  readonly fat_continuous: boolean;
  readonly temperature_c: number;
  readonly air_fraction: number;
};

function vectorOf(x: Inputs): Composition {
  const sum = total(x);
  requireRange('sum of the constituents', sum, [Number.MIN_VALUE, Number.MAX_VALUE], 'mass balance');
  return composition({
    water: x.water / sum,
    sucrose: x.sucrose / sum,
    glucose: x.glucose / sum,
    fructose: x.fructose / sum,
    maltose: x.maltose / sum,
    higher_saccharides: x.higher_saccharides / sum,
    lactose: x.lactose / sum,
    polyols: x.polyols / sum,
    starch: x.starch / sum,
    fibre: x.fibre / sum,
    vegetable_fat: x.fat / sum,
    milk_protein: x.protein / sum,
    salt: x.salt / sum,
    ash: x.ash / sum,
  });
}

function total(x: Inputs): number {
  return keys.reduce((sum, key) => sum + x[key], x.fat);
}

function normalised(x: Inputs) {
  const sum = total(x);
  if (Math.abs(sum - 1) <= 0.005) return [];
  return [{ code: 'NORMALISED', message: `The constituents sum to ${sum.toFixed(4)}; they were scaled to 1` }];
}

const around = (value: number, share: number): Estimate => ({ value, low: value * (1 - share), high: value * (1 + share) });

function properties(x: Inputs) {
  const of = vectorOf(x);
  const state = { crystallineSucrose: x.crystalline_sucrose_share, fatContinuous: x.fat_continuous };
  const t = x.temperature_c;
  return {
    rho: density(of, t, state) * (1 - x.air_fraction),
    cp: specificHeat(of, t, state),
    k: foamConductivity(thermalConductivity(of, t, state), x.air_fraction),
  };
}

const common = { inputs, standing: 'found', remarks: normalised } as const;

export const confectioneryModels: readonly Model[] = [
  defineModel({
    ...common,
    id: 'confectionery.density',
    title: 'Density of a confectionery mass, with or without gas',
    about:
      'Volumes add: water (Kell), dissolved sugars at their apparent volume (ICUMSA, ratio per sugar), crystals, the rest Choi-Okos; times 1 - air.',
    sources: ['icumsa-sucrose-density', 'kell-1975', 'crc-102-solutions', 'choi-okos-1986', 'mohos-2010-app'],
    outputs: [{ key: 'density_kg_m3', unit: 'kg/m³', meaning: 'density' }],
    run: (x) => ({ density_kg_m3: around(properties(x).rho, 0.015) }),
  }),
  defineModel({
    ...common,
    id: 'confectionery.specific_heat',
    title: 'Specific heat of a confectionery mass',
    about:
      'Mass-weighted: dissolved sugars 1673 + 7.5 T (sugar liquor), crystals on their own line, the rest Choi-Okos; no heat of melting.',
    sources: ['sugar-liquor-thermal', 'choi-okos-1986', 'mohos-2010-app'],
    outputs: [{ key: 'specific_heat_j_kg_k', unit: 'J/(kg K)', meaning: 'specific heat' }],
    run: (x) => ({ specific_heat_j_kg_k: around(properties(x).cp, 0.08) }),
  }),
  defineModel({
    ...common,
    id: 'confectionery.thermal_conductivity',
    title: 'Thermal conductivity of a confectionery mass, with or without gas',
    about:
      'Syrup (sugar-liquor correlation) or fat as the continuous phase, the rest (Choi-Okos), crystals and air as spheres in it (Maxwell-Eucken).',
    sources: ['sugar-liquor-thermal', 'choi-okos-1986', 'maxwell-eucken'],
    outputs: [{ key: 'thermal_conductivity_w_m_k', unit: 'W/(m K)', meaning: 'thermal conductivity' }],
    run: (x) => ({ thermal_conductivity_w_m_k: around(properties(x).k, 0.12) }),
  }),
  defineModel({
    ...common,
    id: 'confectionery.thermal_diffusivity',
    title: 'Thermal diffusivity of a confectionery mass, with or without gas',
    about: 'k / (rho cp) of the three models above.',
    sources: ['sugar-liquor-thermal', 'icumsa-sucrose-density', 'choi-okos-1986', 'maxwell-eucken'],
    outputs: [{ key: 'thermal_diffusivity_m2_s', unit: 'm²/s', meaning: 'thermal diffusivity' }],
    run: (x) => {
      const { rho, cp, k } = properties(x);
      return { thermal_diffusivity_m2_s: around(k / (rho * cp), 0.15) };
    },
  }),
];
