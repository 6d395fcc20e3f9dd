import { defineModel, type Model } from '../../model.js';
import { airFraction, foamConductivity, overrun } from '../foam.js';
import { fraction, positive } from './inputs.js';

const densities = [
  positive('density_kg_m3', 'kg/m³', 'density of the foam'),
  positive('gas_free_density_kg_m3', 'kg/m³', 'density of the same mass without gas'),
] as const;

export const foamModels: readonly Model[] = [
  defineModel({
    id: 'foam.air_fraction',
    title: 'Share of a foam that is gas',
    about: '1 - rho/rho0; the mass of the gas is neglected.',
    inputs: densities,
    outputs: [{ key: 'air_fraction', unit: 'm³/m³', meaning: 'gas by volume of foam' }],
    sources: ['foam-volume-balance'],
    standing: 'found',
    run: (x) => ({ air_fraction: airFraction(x.density_kg_m3, x.gas_free_density_kg_m3) }),
  }),
  defineModel({
    id: 'foam.overrun',
    title: 'Overrun of a foam',
    about: '(rho0 - rho)/rho: volume of gas by volume of the mass without gas.',
    inputs: densities,
    outputs: [
      { key: 'overrun', unit: '1', meaning: 'overrun as a fraction; 1 is 100 %' },
      { key: 'overrun_percent', unit: '%', meaning: 'overrun in per cent' },
    ],
    sources: ['foam-volume-balance'],
    standing: 'found',
    run: (x) => {
      const fraction = overrun(x.density_kg_m3, x.gas_free_density_kg_m3);
      return { overrun: fraction, overrun_percent: 100 * fraction };
    },
  }),
  defineModel({
    id: 'foam.thermal_conductivity',
    title: 'Thermal conductivity of a foam with closed bubbles',
    about: 'Maxwell-Eucken: air (0.026 W/(m K)) as spheres in the mass.',
    inputs: [
      positive('gas_free_conductivity_w_m_k', 'W/(m K)', 'conductivity of the mass without gas'),
      fraction('air_fraction', 'gas by volume of foam', { fitted: [0, 0.64] }),
    ],
    outputs: [{ key: 'thermal_conductivity_w_m_k', unit: 'W/(m K)', meaning: 'conductivity of the foam' }],
    sources: ['maxwell-eucken'],
    standing: 'memory',
    run: (x) => ({ thermal_conductivity_w_m_k: foamConductivity(x.gas_free_conductivity_w_m_k, x.air_fraction) }),
  }),
];
