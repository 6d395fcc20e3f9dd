import { latentHeatOfVaporisation } from '../../core/latentHeat.js';
import { saturationTemperature } from '../../core/saturation.js';
import { BadInput } from '../../errors.js';
import { defineModel, type Model } from '../../model.js';
import { nusseltCylinder, nusseltFlatPlate, nusseltHorizontalCylinder, nusseltVerticalPlate } from '../heat/convection.js';
import { effectiveness, logMeanDifference, mixedTemperature, type Arrangement } from '../heat/exchange.js';
import { laminarPipeDrop, pumpWarming, workWarming } from '../heat/mechanical.js';
import { nonNegative, positive, series, temperature } from './inputs.js';

const arrangement = {
  key: 'arrangement',
  unit: '1',
  meaning: 'direction of the streams',
  kind: 'choice',
  choices: ['counterflow', 'parallel'],
  default: 'counterflow',
} as const;
const nusselt = { key: 'nusselt', unit: '1', meaning: 'Nusselt number' } as const;
const coefficient = {
  key: 'heat_transfer_coefficient_w_m2_k',
  unit: 'W/(m² K)',
  meaning: 'coefficient, where size and conductivity are given',
} as const;
const prandtl = positive('prandtl', '1', 'Prandtl number', { default: 0.71 });
const size = nonNegative('length_m', 'm', 'length or diameter; 0 to leave the coefficient out', { default: 0 });
const gas = positive('fluid_conductivity_w_m_k', 'W/(m K)', 'conductivity of the fluid', { default: 0.026 });

function answer(value: number, x: { readonly length_m: number; readonly fluid_conductivity_w_m_k: number }) {
  return {
    nusselt: value,
    ...(x.length_m > 0 ? { heat_transfer_coefficient_w_m2_k: (value * x.fluid_conductivity_w_m_k) / x.length_m } : {}),
  };
}

export const heatModels: readonly Model[] = [
  defineModel({
    id: 'heat_exchanger.log_mean_difference',
    title: 'Heat exchanger by the logarithmic mean temperature difference',
    about: 'LMTD = (ΔT1 - ΔT2)/ln(ΔT1/ΔT2); Q = U A LMTD.',
    inputs: [
      arrangement,
      temperature('hot_in_c', 'hot stream in'),
      temperature('hot_out_c', 'hot stream out'),
      temperature('cold_in_c', 'cold stream in'),
      temperature('cold_out_c', 'cold stream out'),
      nonNegative('conductance_w_k', 'W/K', 'U times A; 0 to leave the heat out', { default: 0 }),
    ],
    outputs: [
      { key: 'log_mean_difference_k', unit: 'K', meaning: 'logarithmic mean temperature difference' },
      { key: 'heat_w', unit: 'W', meaning: 'heat passed' },
    ],
    sources: ['cengel-11'],
    standing: 'found',
    run: (x) => {
      const counter = x.arrangement === 'counterflow';
      const lmtd = logMeanDifference(
        x.hot_in_c - (counter ? x.cold_out_c : x.cold_in_c),
        x.hot_out_c - (counter ? x.cold_in_c : x.cold_out_c),
      );
      return { log_mean_difference_k: lmtd, ...(x.conductance_w_k > 0 ? { heat_w: x.conductance_w_k * lmtd } : {}) };
    },
  }),
  defineModel({
    id: 'heat_exchanger.effectiveness',
    title: 'Effectiveness of a heat exchanger from its transfer units',
    about: 'Counterflow (1 - e^-N(1-c))/(1 - c e^-N(1-c)); parallel (1 - e^-N(1+c))/(1 + c).',
    inputs: [
      arrangement,
      nonNegative('transfer_units', '1', 'U A by the smaller heat capacity rate'),
      { key: 'capacity_ratio', unit: '1', meaning: 'smaller by larger heat capacity rate', possible: [0, 1] },
    ],
    outputs: [{ key: 'effectiveness', unit: '1', meaning: 'heat passed over the most that could be' }],
    sources: ['cengel-11'],
    standing: 'found',
    run: (x) => ({ effectiveness: effectiveness(x.arrangement as Arrangement, x.transfer_units, x.capacity_ratio) }),
  }),
  defineModel({
    id: 'convection.flat_plate',
    title: 'Heat transfer from a stream to a flat surface (mean)',
    about: 'Nu = 0.664 Re^1/2 Pr^1/3 to Re 5e5; (0.037 Re^0.8 - 871) Pr^1/3 beyond.',
    inputs: [nonNegative('reynolds', '1', 'Reynolds number on the length', { fitted: [1000, 1e8] }), prandtl, size, gas],
    outputs: [nusselt, coefficient],
    sources: ['incropera-7'],
    standing: 'memory',
    run: (x) => answer(nusseltFlatPlate(x.reynolds, x.prandtl), x),
  }),
  defineModel({
    id: 'convection.cylinder_in_cross_flow',
    title: 'Heat transfer from a stream to a cylinder across it',
    about: 'Churchill and Bernstein.',
    inputs: [nonNegative('reynolds', '1', 'Reynolds number on the diameter', { fitted: [100, 1e7] }), prandtl, size, gas],
    outputs: [nusselt, coefficient],
    sources: ['churchill-bernstein-1977'],
    standing: 'memory',
    run: (x) => answer(nusseltCylinder(x.reynolds, x.prandtl), x),
  }),
  defineModel({
    id: 'convection.free_vertical_plate',
    title: 'Free convection at a vertical surface',
    about: 'Churchill and Chu.',
    inputs: [nonNegative('rayleigh', '1', 'Rayleigh number on the height', { fitted: [0.1, 1e12] }), prandtl, size, gas],
    outputs: [nusselt, coefficient],
    sources: ['churchill-chu-1975'],
    standing: 'memory',
    run: (x) => answer(nusseltVerticalPlate(x.rayleigh, x.prandtl), x),
  }),
  defineModel({
    id: 'convection.free_horizontal_cylinder',
    title: 'Free convection at a horizontal cylinder',
    about: 'Churchill and Chu.',
    inputs: [nonNegative('rayleigh', '1', 'Rayleigh number on the diameter', { fitted: [1e-5, 1e12] }), prandtl, size, gas],
    outputs: [nusselt, coefficient],
    sources: ['churchill-chu-1975'],
    standing: 'memory',
    run: (x) => answer(nusseltHorizontalCylinder(x.rayleigh, x.prandtl), x),
  }),
  defineModel({
    id: 'steam.requirement',
    title: 'Steam to heat a mass and to evaporate water from it',
    about: 'Condensing steam gives its latent heat; the condensate leaves at steam temperature.',
    inputs: [
      nonNegative('mass_kg', 'kg', 'mass to heat'),
      positive('specific_heat_j_kg_k', 'J/(kg K)', 'its specific heat', { default: 2400 }),
      { key: 'temperature_rise_k', unit: 'K', meaning: 'its temperature rise', possible: [0, 1000] },
      nonNegative('evaporated_kg', 'kg', 'water to evaporate', { default: 0 }),
      temperature('boiling_temperature_c', 'temperature of evaporation', { default: 100, possible: [0.01, 370] }),
      positive('steam_pressure_pa', 'Pa', 'absolute pressure of the steam', { default: 700_000, possible: [1000, 2.2e7] }),
    ],
    outputs: [
      { key: 'heat_mj', unit: 'MJ', meaning: 'heat to the mass' },
      { key: 'steam_kg', unit: 'kg', meaning: 'steam' },
    ],
    sources: ['iapws-if97'],
    standing: 'found',
    run: (x) => {
      const heat =
        x.mass_kg * x.specific_heat_j_kg_k * x.temperature_rise_k +
        (x.evaporated_kg > 0 ? x.evaporated_kg * latentHeatOfVaporisation(x.boiling_temperature_c) : 0);
      return { heat_mj: heat / 1e6, steam_kg: heat / latentHeatOfVaporisation(saturationTemperature(x.steam_pressure_pa)) };
    },
  }),
  defineModel({
    id: 'mixing.temperature',
    title: 'Temperature of a mix',
    about: 'Each part weighs by mass times specific heat; no heat of solution, melting or reaction.',
    inputs: [
      series('masses_kg', 'kg', 'masses', { possible: [0, 1e12] }),
      series('specific_heats_j_kg_k', 'J/(kg K)', 'specific heats', { possible: [1, 1e5] }),
      series('temperatures_c', '°C', 'temperatures', { possible: [-273.15, 3000] }),
    ],
    outputs: [{ key: 'temperature_c', unit: '°C', meaning: 'temperature of the mix' }],
    sources: ['heat-balance'],
    standing: 'memory',
    run: (x) => {
      const { masses_kg: masses, specific_heats_j_kg_k: heats, temperatures_c: temperatures } = x;
      if (masses.length !== heats.length || masses.length !== temperatures.length) {
        throw new BadInput(
          `A mix needs lists of one length; came ${masses.length} masses, ${heats.length} heats, ${temperatures.length} temperatures`,
        );
      }
      return {
        temperature_c: mixedTemperature(masses.map((mass, i) => ({ mass, specificHeat: heats[i]!, temperature: temperatures[i]! }))),
      };
    },
  }),
  defineModel({
    id: 'mixing.mechanical_heating',
    title: 'Warming of a mass by mixing or pumping',
    about: 'Work without loss: E/(m cp), and Δp/(ρ cp) through a pipe, pump or whip.',
    inputs: [
      nonNegative('power_w', 'W', 'shaft power into the mass', { default: 0 }),
      nonNegative('time_s', 's', 'time', { default: 0 }),
      positive('mass_kg', 'kg', 'mass', { default: 1 }),
      positive('specific_heat_j_kg_k', 'J/(kg K)', 'specific heat', { default: 2000 }),
      nonNegative('pressure_drop_pa', 'Pa', 'pressure drop it is pumped through', { default: 0 }),
      positive('density_kg_m3', 'kg/m³', 'density', { default: 1330 }),
    ],
    outputs: [{ key: 'temperature_rise_k', unit: 'K', meaning: 'temperature rise' }],
    sources: ['heat-balance'],
    standing: 'memory',
    run: (x) => ({
      temperature_rise_k:
        workWarming(x.power_w * x.time_s, x.mass_kg, x.specific_heat_j_kg_k) +
        pumpWarming(x.pressure_drop_pa, x.density_kg_m3, x.specific_heat_j_kg_k),
    }),
  }),
  defineModel({
    id: 'pipe.laminar_pressure_drop',
    title: 'Pressure drop of a syrup or caramel in a pipe',
    about: 'Hagen-Poiseuille, Newtonian and laminar.',
    inputs: [
      positive('viscosity_pa_s', 'Pa·s', 'viscosity'),
      nonNegative('flow_kg_h', 'kg/h', 'flow'),
      positive('density_kg_m3', 'kg/m³', 'density', { default: 1330 }),
      positive('diameter_m', 'm', 'inner diameter'),
      positive('length_m', 'm', 'length'),
    ],
    outputs: [
      { key: 'pressure_drop_pa', unit: 'Pa', meaning: 'pressure drop' },
      { key: 'reynolds', unit: '1', meaning: 'Reynolds number; laminar below 2100' },
    ],
    sources: ['hagen-poiseuille'],
    standing: 'memory',
    run: (x) => {
      const flow = x.flow_kg_h / 3600 / x.density_kg_m3;
      const speed = flow / ((Math.PI / 4) * x.diameter_m ** 2);
      return {
        pressure_drop_pa: laminarPipeDrop(x.viscosity_pa_s, flow, x.diameter_m, x.length_m),
        reynolds: (x.density_kg_m3 * speed * x.diameter_m) / x.viscosity_pa_s,
      };
    },
    remarks: (x) => {
      const reynolds = (4 * x.flow_kg_h) / 3600 / (Math.PI * x.diameter_m * x.viscosity_pa_s);
      return reynolds > 2100
        ? [{ code: 'NOT_LAMINAR', message: `Reynolds number ${reynolds.toFixed(0)} is above 2100: the drop is larger` }]
        : [];
    },
  }),
];
