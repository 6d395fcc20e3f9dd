import { defineModel, type Model } from '../../model.js';
import {
  chocolateConductivity,
  chocolateDensity,
  chocolateSpecificHeat,
  forms,
  latentHeatAt,
  origins,
  polymorph,
  solidFat,
  solidFatSpread,
  temperatureOfSolidFat,
  type ButterOrigin,
  type FatBlend,
  type Form,
} from '../fat.js';
import { avrami, foubert } from '../kinetics.js';
import { celsius, nonNegative, positive, share } from './inputs.js';

export const milkFatShare = share('milk_fat_share', 'milk fat over total fat', { default: 0, fitted: [0, 0.35] });
export const oilShare = share('oil_share', 'liquid oil (nut oil, emulsifier) over total fat', { default: 0, fitted: [0, 0.2] });
export const origin = {
  key: 'origin',
  unit: '-',
  kind: 'choice',
  choices: origins,
  default: 'west-africa',
  meaning: 'origin of the cocoa butter',
} as const;

export function blendOf(x: { readonly milk_fat_share: number; readonly oil_share: number; readonly origin?: string }): FatBlend {
  const blend = { milkFat: x.milk_fat_share, oil: x.oil_share };
  return x.origin === undefined ? blend : { ...blend, origin: x.origin as ButterOrigin };
}

function spread(value: number): { value: number; low: number; high: number } {
  const half = solidFatSpread(value);
  return { value, low: Math.max(0, value - half), high: Math.min(1, value + half) };
}

export const solidFatModel: Model = defineModel({
  id: 'fat.solid_fat_content',
  title: 'Solid fat of tempered chocolate fat',
  about:
    'Cocoa butter (form V, stabilised), 1 - m - o of the fat, read at T + 15 m + 20 o; milk fat, m, read at T + 15 (1 - m - o) + 20 o; o liquid oil. Each softens the other. From memory: put your own NMR in its place.',
  inputs: [celsius('temperature_c', 'temperature', { possible: [-40, 120], fitted: [5, 36] }), milkFatShare, oilShare, origin],
  outputs: [
    { key: 'solid_fat_content', unit: '1', meaning: 'solid share of the fat' },
    { key: 'melting_end_c', unit: '°C', meaning: 'temperature at which 1 % is left solid' },
  ],
  sources: ['cocoa-butter-sfc', 'milk-fat-sfc'],
  standing: 'memory',
  run: (x) => {
    const blend = blendOf(x);
    const solids = solidFat(x.temperature_c, blend);
    return {
      solid_fat_content: spread(solids),
      ...(blend.milkFat + blend.oil < 0.9 && { melting_end_c: temperatureOfSolidFat(0.01, blend) }),
    };
  },
});

export const sfcNmrModel: Model = defineModel({
  id: 'fat.solid_fat_nmr',
  title: 'Solid fat from pulsed NMR signals, indirect method',
  about: 'SFC = 1 - (R60 · ST)/(S60 · RT): liquid signals of sample S and reference oil R at 60 °C and at T.',
  inputs: [
    positive('reference_signal_60', '1', 'reference at 60 °C'),
    positive('sample_signal_60', '1', 'sample at 60 °C'),
    positive('reference_signal_t', '1', 'reference at T'),
    nonNegative('sample_signal_t', '1', 'sample at T'),
  ],
  outputs: [{ key: 'solid_fat_content', unit: '1', meaning: 'solid share of the fat' }],
  sources: ['nmr-sfc-method'],
  standing: 'found',
  run: (x) => ({ solid_fat_content: 1 - (x.reference_signal_60 * x.sample_signal_t) / (x.sample_signal_60 * x.reference_signal_t) }),
});

export const polymorphModel: Model = defineModel({
  id: 'fat.polymorph',
  title: 'Crystal forms of cocoa butter',
  about:
    'Melting points of the six forms of Wille and Lutton; heats of melting from memory, ±10 %; melting points over six laboratories as the interval. Tempering aims at form V; form VI grows in store (bloom).',
  inputs: [{ key: 'form', unit: '-', kind: 'choice', choices: forms, default: 'V', meaning: 'crystal form' }],
  outputs: [
    { key: 'melting_point_c', unit: '°C', meaning: 'melting point' },
    { key: 'heat_of_melting_j_kg', unit: 'J/kg', meaning: 'heat of melting of the solid' },
  ],
  sources: ['wille-lutton-1966'],
  standing: 'secondhand',
  run: (x) => {
    const { meltingPoint, lowest, highest, heat, heatSpread } = polymorph(x.form as Form);
    return {
      melting_point_c: { value: meltingPoint, low: lowest, high: highest },
      heat_of_melting_j_kg: { value: heat, low: (1 - heatSpread) * heat, high: (1 + heatSpread) * heat },
    };
  },
});

export const thermalModel: Model = defineModel({
  id: 'chocolate.thermal_properties',
  title: 'Specific heat, conductivity and heat of melting of chocolate',
  about:
    'Specific heat by mass from solid and liquid butter, crystalline sugar and other solids, without melting; heat of melting = fat × solid fat × 157 kJ/kg; conductivity of sugar and other particles in the fat around them (Maxwell-Eucken). Do not add melting to an effective specific heat that already holds it.',
  inputs: [
    celsius('temperature_c', 'temperature', { possible: [-40, 120], fitted: [5, 60] }),
    share('fat', 'total fat', { default: 0.31 }),
    share('sucrose', 'crystalline sugar', { default: 0.46 }),
    milkFatShare,
    oilShare,
    { key: 'melted', unit: '-', kind: 'flag', default: false, meaning: 'liquid fat at any temperature: not yet crystallised' },
  ],
  outputs: [
    { key: 'specific_heat_j_kg_k', unit: 'J/(kg K)', meaning: 'without heat of melting' },
    { key: 'thermal_conductivity_w_m_k', unit: 'W/(m K)', meaning: 'of the composition, ±15 % between works' },
    { key: 'heat_of_melting_j_kg', unit: 'J/kg', meaning: 'to melt what is solid at this temperature, per kg chocolate' },
    { key: 'solid_fat_content', unit: '1', meaning: 'solid share of the fat' },
    { key: 'density_kg_m3', unit: 'kg/m³', meaning: 'from densities of fat, sugar and rest' },
  ],
  sources: ['beckett-constants-2009', 'mohos-2010-app', 'cocoa-butter-sfc', 'choi-okos-1986', 'maxwell-eucken'],
  standing: 'secondhand',
  run: (x) => {
    const blend = blendOf(x);
    const solids = x.melted ? 0 : solidFat(x.temperature_c, blend);
    const cp = chocolateSpecificHeat(x.fat, x.sucrose, x.temperature_c, solids);
    const latent = x.melted ? 0 : latentHeatAt(x.fat, x.temperature_c, blend);
    const k = chocolateConductivity(x.fat, x.sucrose, x.temperature_c, solids);
    const rho = chocolateDensity(x.fat, x.sucrose, x.temperature_c, solids);
    return {
      specific_heat_j_kg_k: { value: cp, low: 0.94 * cp, high: 1.06 * cp },
      thermal_conductivity_w_m_k: { value: k, low: 0.85 * k, high: 1.15 * k },
      heat_of_melting_j_kg: { value: latent, low: 0.85 * latent, high: 1.15 * latent },
      solid_fat_content: solids,
      density_kg_m3: { value: rho, low: 0.97 * rho, high: 1.03 * rho },
    };
  },
});

export const foubertModel: Model = defineModel({
  id: 'fat.crystallisation_foubert',
  title: 'Isothermal crystallisation of fat, Foubert',
  about: 'dh/dt = K(hⁿ - h), h = (a - f)/a, in closed form f = a[1 - (1 + (h0^(1-n) - 1) e^((n-1)Kt))^(1/(1-n))].',
  inputs: [
    positive('final_solids', '1', 'solid fat in the end, any unit', { default: 1 }),
    positive('start_solids', '1', 'solid fat at the start, same unit'),
    positive('order', '1', 'n, above 1', { possible: [1.0001, 20], default: 2 }),
    nonNegative('rate_per_h', '1/h', 'K'),
    nonNegative('time_h', 'h', 'time'),
  ],
  outputs: [{ key: 'solids', unit: '1', meaning: 'solid fat, unit of the end value' }],
  sources: ['foubert-2002'],
  standing: 'found',
  run: (x) => ({ solids: foubert(x.final_solids, x.start_solids, x.order, x.rate_per_h, x.time_h) }),
});

export const avramiModel: Model = defineModel({
  id: 'fat.crystallisation_avrami',
  title: 'Isothermal crystallisation of fat, Avrami',
  about:
    'Crystallised share 1 - exp(-k tⁿ). Exponents of cocoa butter are reported from 1.2 to 2.9; seeded chocolate grows in one dimension.',
  inputs: [
    nonNegative('avrami_k', '1/minⁿ', 'rate constant'),
    positive('avrami_n', '1', 'exponent', { possible: [0.1, 6], fitted: [1.2, 2.94] }),
    nonNegative('time_min', 'min', 'time'),
  ],
  outputs: [
    { key: 'crystallised', unit: '1', meaning: 'share of the final solid' },
    { key: 'half_time_min', unit: 'min', meaning: 'time of one half' },
  ],
  sources: ['avrami-1940'],
  standing: 'memory',
  run: (x) => ({
    crystallised: avrami(x.avrami_k, x.avrami_n, x.time_min),
    ...(x.avrami_k > 0 && { half_time_min: (Math.LN2 / x.avrami_k) ** (1 / x.avrami_n) }),
  }),
});
