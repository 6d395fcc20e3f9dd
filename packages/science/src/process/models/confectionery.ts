import { defineModel, type Estimate, type Model } from '../../model.js';
import { foamConductivity } from '../foaming/foam.js';
import { density, specificHeat, thermalConductivity } from '../thermal.js';
import { compositionInputs, compositionOf, scaled, stateOf, type CompositionInput } from './composition.js';
import { fraction, temperature } from './inputs.js';

const inputs = [
  ...compositionInputs,
  { key: 'fat_continuous', unit: '1', meaning: 'fat is the continuous phase, as in chocolate', kind: 'flag', default: false },
  fraction('air_fraction', 'share of the volume that is gas', { default: 0, fitted: [0, 0.64], possible: [0, 0.95] }),
  temperature('temperature_c', 'temperature', { default: 20, possible: [-40, 200], fitted: [0, 100] }),
] as const;

type Inputs = CompositionInput & { readonly fat_continuous: boolean; readonly temperature_c: number; readonly air_fraction: number };

const around = (value: number, share: number): Estimate => ({ value, low: value * (1 - share), high: value * (1 + share) });

function properties(x: Inputs) {
  const of = compositionOf(x);
  const state = { ...stateOf(x), fatContinuous: x.fat_continuous };
  const t = x.temperature_c;
  return {
    rho: density(of, t, state) * (1 - x.air_fraction),
    cp: specificHeat(of, t, state),
    k: foamConductivity(thermalConductivity(of, t, state), x.air_fraction),
  };
}

const common = { inputs, standing: 'found', remarks: scaled } as const;

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
