import { defineModel, type Estimate, type Model } from '../../model.js';
import { foodConductivity, foodDensity, foodSpecificHeat, proximateKeys, type Proximate } from '../choi-okos.js';
import { massShare, temperature } from './inputs.js';

const inputs = [
  massShare('water', 'water, mass fraction', { default: 0 }),
  massShare('protein', 'protein, mass fraction', { default: 0 }),
  massShare('fat', 'fat, mass fraction', { default: 0 }),
  massShare('carbohydrate', 'digestible carbohydrate, mass fraction', { default: 0 }),
  massShare('fibre', 'fibre, mass fraction', { default: 0 }),
  massShare('ash', 'ash, mass fraction', { default: 0 }),
  temperature('temperature_c', 'temperature', { default: 20, possible: [-40, 200], fitted: [0, 150] }),
] as const;

/** About 95 %, from the scatter of measured foods about these lines that the authors and later users report (memory). */
const around = (value: number, share: number): Estimate => ({ value, low: value * (1 - share), high: value * (1 + share) });

function normalised(x: Proximate) {
  const sum = proximateKeys.reduce((total, key) => total + x[key], 0);
  if (Math.abs(sum - 1) <= 0.005) return [];
  return [{ code: 'NORMALISED', message: `The constituents sum to ${sum.toFixed(4)}; they were scaled to 1` }];
}

const common = {
  inputs,
  sources: ['choi-okos-1986'],
  standing: 'secondhand',
  remarks: normalised,
} as const;

export const foodModels: readonly Model[] = [
  defineModel({
    ...common,
    id: 'food.density',
    title: 'Density of a food from its proximate composition',
    about: '1/rho = sum of x_i/rho_i(T), Choi-Okos lines; no gas, no ice.',
    outputs: [{ key: 'density_kg_m3', unit: 'kg/m³', meaning: 'density without gas' }],
    run: (x) => ({ density_kg_m3: around(foodDensity(x, x.temperature_c), 0.03) }),
  }),
  defineModel({
    ...common,
    id: 'food.specific_heat',
    title: 'Specific heat of a food from its proximate composition',
    about: 'Mass-weighted Choi-Okos lines; no heat of melting. Syrups: see confectionery.specific_heat.',
    outputs: [{ key: 'specific_heat_j_kg_k', unit: 'J/(kg K)', meaning: 'specific heat' }],
    run: (x) => ({ specific_heat_j_kg_k: around(foodSpecificHeat(x, x.temperature_c), 0.08) }),
  }),
  defineModel({
    ...common,
    id: 'food.thermal_conductivity',
    title: 'Thermal conductivity of a food from its proximate composition',
    about: 'Choi-Okos lines weighted by volume (parallel).',
    outputs: [{ key: 'thermal_conductivity_w_m_k', unit: 'W/(m K)', meaning: 'thermal conductivity without gas' }],
    run: (x) => ({ thermal_conductivity_w_m_k: around(foodConductivity(x, x.temperature_c), 0.12) }),
  }),
  defineModel({
    ...common,
    id: 'food.thermal_diffusivity',
    title: 'Thermal diffusivity of a food from its proximate composition',
    about: 'k / (rho cp), each after Choi-Okos.',
    outputs: [{ key: 'thermal_diffusivity_m2_s', unit: 'm²/s', meaning: 'thermal diffusivity without gas' }],
    run: (x) => {
      const t = x.temperature_c;
      return { thermal_diffusivity_m2_s: around(foodConductivity(x, t) / (foodDensity(x, t) * foodSpecificHeat(x, t)), 0.15) };
    },
  }),
];
