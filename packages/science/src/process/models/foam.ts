import { defineModel, type Model } from '../../model.js';
import { foamStiffness, gasLosses } from '../data/foam.js';
import { densityAtFoamingPower, densityConsequence, stiffnessRatio } from '../foaming/consequence.js';
import { cupDensity, densityWithInclusions } from '../foaming/cup.js';
import { airFraction, foamConductivity, overrun } from '../foaming/foam.js';
import { whippedDensity, whippingPressure } from '../foaming/whipping.js';
import { fraction, nonNegative, positive, temperature } from './inputs.js';

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
  defineModel({
    id: 'foam.whipping',
    title: 'Density of a mass whipped under pressure, let out and cooled',
    about: 'Dry gas in the bubbles is kept (Boyle, Gay-Lussac, less water vapour aw psat); a share is lost to fat, pumping and sheeting.',
    inputs: [
      positive('gas_free_density_kg_m3', 'kg/m³', 'density of the mass without gas'),
      fraction('hold_up', 'gas by volume of foam inside the whip', { possible: [0, 0.95] }),
      positive('whipping_pressure_pa', 'Pa', 'absolute pressure in the whip'),
      temperature('whipping_temperature_c', 'temperature in the whip', { default: 90, possible: [0, 150] }),
      positive('pressure_pa', 'Pa', 'absolute pressure outside', { default: 101_325 }),
      temperature('temperature_c', 'temperature of the sheet', { default: 42, possible: [0, 150] }),
      fraction('water_activity', 'water activity of the mass', { default: 0.55 }),
      fraction('gas_kept', 'share of the gas that survives release, fat, pumping and sheeting', { default: 1 }),
      nonNegative('wanted_density_kg_m3', 'kg/m³', 'density to find the whipping pressure for; 0 for none', { default: 0 }),
    ],
    outputs: [
      { key: 'density_kg_m3', unit: 'kg/m³', meaning: 'density of the sheet' },
      { key: 'air_fraction', unit: '1', meaning: 'gas by volume of the sheet' },
      { key: 'overrun', unit: '1', meaning: 'gas by volume of the gas-free mass' },
      { key: 'needed_pressure_pa', unit: 'Pa', meaning: 'absolute whipping pressure for the wanted density at the same hold-up' },
    ],
    sources: ['ideal-gas', 'common-practice'],
    standing: 'memory',
    run: (x) => {
      const whip = { pressure: x.whipping_pressure_pa, temperature: x.whipping_temperature_c, waterActivity: x.water_activity };
      const after = { pressure: x.pressure_pa, temperature: x.temperature_c, waterActivity: x.water_activity };
      const foam = whippedDensity(x.hold_up, x.gas_free_density_kg_m3, whip, after, x.gas_kept);
      return {
        density_kg_m3: foam.density,
        air_fraction: foam.airFraction,
        overrun: foam.overrun,
        ...(x.wanted_density_kg_m3 > 0
          ? {
              needed_pressure_pa: whippingPressure(x.wanted_density_kg_m3, x.hold_up, x.gas_free_density_kg_m3, whip, after, x.gas_kept),
            }
          : {}),
      };
    },
    remarks: (x) => {
      if (x.gas_kept < 1) return [];
      const [fat, pump] = [gasLosses.values.fat_addition, gasLosses.values.pumping_and_sheeting];
      return [
        {
          code: 'NO_GAS_LOSS',
          message: `No loss assumed. Common practice, no source: fat takes ${100 * fat[0]} to ${100 * fat[1]} % of the gas, pumping and sheeting ${100 * pump[0]} to ${100 * pump[1]} %`,
        },
      ];
    },
  }),
  defineModel({
    id: 'foam.density_cup',
    title: 'Air fraction from a density cup',
    about: 'Net mass by volume of the cup; air fraction and overrun against the gas-free density; uncertainty of filling and weighing.',
    inputs: [
      positive('gross_mass_g', 'g', 'cup with mass'),
      nonNegative('tare_g', 'g', 'cup alone'),
      positive('cup_volume_ml', 'mL', 'volume of the cup'),
      positive('gas_free_density_kg_m3', 'kg/m³', 'density of the mass without gas'),
      fraction('fill_uncertainty', 'relative standard uncertainty of filling and levelling', { default: 0.01 }),
      positive('balance_uncertainty_g', 'g', 'standard uncertainty of a weighing', { default: 0.1 }),
    ],
    outputs: [
      { key: 'density_kg_m3', unit: 'kg/m³', meaning: 'density' },
      { key: 'air_fraction', unit: '1', meaning: 'gas by volume' },
      { key: 'overrun', unit: '1', meaning: 'gas by volume of the gas-free mass' },
    ],
    sources: ['foam-volume-balance'],
    standing: 'found',
    run: (x) => {
      const reading = cupDensity(
        x.gross_mass_g / 1000,
        x.tare_g / 1000,
        x.cup_volume_ml * 1e-6,
        x.fill_uncertainty,
        x.balance_uncertainty_g / 1000,
      );
      const rho0 = x.gas_free_density_kg_m3;
      const half = 1.96 * reading.uncertainty;
      return {
        density_kg_m3: { value: reading.density, low: reading.density - half, high: reading.density + half },
        air_fraction: {
          value: airFraction(reading.density, rho0),
          low: 1 - (reading.density + half) / rho0,
          high: 1 - (reading.density - half) / rho0,
        },
        overrun: overrun(reading.density, rho0),
      };
    },
  }),
  defineModel({
    id: 'foam.inclusions',
    title: 'Density of an aerated mass with pieces stirred in',
    about: 'Volumes add; no gas is lost.',
    inputs: [
      positive('foam_density_kg_m3', 'kg/m³', 'density of the aerated mass'),
      positive('inclusion_density_kg_m3', 'kg/m³', 'density of the pieces'),
      fraction('inclusion_share', 'mass share of the pieces'),
    ],
    outputs: [
      { key: 'density_kg_m3', unit: 'kg/m³', meaning: 'density of the whole' },
      { key: 'volume_l_per_100_kg', unit: 'L/100 kg', meaning: 'volume of 100 kg' },
    ],
    sources: ['foam-volume-balance'],
    standing: 'found',
    run: (x) => {
      const rho = densityWithInclusions(x.foam_density_kg_m3, x.inclusion_density_kg_m3, x.inclusion_share);
      return { density_kg_m3: rho, volume_l_per_100_kg: 1e5 / rho };
    },
  }),
  defineModel({
    id: 'foam.weak_albumen',
    title: 'What a weak foaming agent does to a layer at constant thickness or constant mass',
    about: 'Gas held in proportion to foaming power; mass = density times thickness.',
    inputs: [
      positive('planned_density_kg_m3', 'kg/m³', 'density as planned'),
      positive('gas_free_density_kg_m3', 'kg/m³', 'density without gas'),
      nonNegative('foaming_power', '1', 'gas held over gas held by a good lot', { possible: [0, 10], fitted: [0.5, 1.5] }),
      positive('layer_mass_g', 'g', 'planned mass of the layer in a bar'),
      positive('layer_thickness_mm', 'mm', 'planned thickness of the layer'),
    ],
    outputs: [
      { key: 'density_kg_m3', unit: 'kg/m³', meaning: 'density to expect' },
      { key: 'mass_at_constant_thickness_g', unit: 'g', meaning: 'layer mass if sheeted to the planned thickness' },
      { key: 'thickness_at_constant_mass_mm', unit: 'mm', meaning: 'layer thickness if the planned mass is kept' },
      { key: 'stiffness_ratio', unit: '1', meaning: 'stiffness over plan, (ρ - ρc)³ law' },
    ],
    sources: ['foam-volume-balance', 'decker-ziegler-2003'],
    standing: 'found',
    run: (x) => {
      const rho = densityAtFoamingPower(x.planned_density_kg_m3, x.gas_free_density_kg_m3, x.foaming_power);
      const { massRatio, thicknessRatio } = densityConsequence(x.planned_density_kg_m3, rho);
      const critical = (1 - foamStiffness.values.critical_air_fraction) * x.gas_free_density_kg_m3;
      return {
        density_kg_m3: rho,
        mass_at_constant_thickness_g: x.layer_mass_g * massRatio,
        thickness_at_constant_mass_mm: x.layer_thickness_mm * thicknessRatio,
        ...(rho > critical && x.planned_density_kg_m3 > critical
          ? { stiffness_ratio: stiffnessRatio(rho, x.planned_density_kg_m3, x.gas_free_density_kg_m3) }
          : {}),
      };
    },
  }),
  defineModel({
    id: 'foam.stiffness',
    title: 'Stiffness of an aerated mass against its density',
    about: 'Modulus goes as (ρ - ρc)³, ρc at an air fraction of 0.6.',
    inputs: [
      positive('density_kg_m3', 'kg/m³', 'density'),
      positive('reference_density_kg_m3', 'kg/m³', 'density to compare with'),
      positive('gas_free_density_kg_m3', 'kg/m³', 'density without gas', { default: 1400 }),
    ],
    outputs: [
      { key: 'stiffness_ratio', unit: '1', meaning: 'modulus over that at the reference' },
      { key: 'critical_density_kg_m3', unit: 'kg/m³', meaning: 'density at which stiffness vanishes' },
    ],
    sources: ['decker-ziegler-2003'],
    standing: 'found',
    run: (x) => ({
      stiffness_ratio: stiffnessRatio(x.density_kg_m3, x.reference_density_kg_m3, x.gas_free_density_kg_m3),
      critical_density_kg_m3: (1 - foamStiffness.values.critical_air_fraction) * x.gas_free_density_kg_m3,
    }),
  }),
];
