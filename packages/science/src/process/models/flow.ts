import { defineModel, type Estimate, type Model } from '../../model.js';
import { caramelViscosity, dispersedVolume, suspensionFactor } from '../flow/caramel.js';
import { extensionalViscosity, gravityStrainRate, strandBreakTime, strandForce } from '../flow/extension.js';
import { slump, slumpRanges } from '../flow/slump.js';
import { concentratedSyrupViscosity, syrupWater } from '../flow/syrup.js';
import { arrheniusFactor, vftViscosity, wlfShift } from '../flow/temperature.js';
import { syrupWlf } from '../data/syrup-viscosity.js';
import { glassTransition } from '../glass/mixture.js';
import { glassEstimate } from './glass.js';
import { compositionInputs, compositionOf, scaled, stateOf, type CompositionInput } from './composition.js';
import { fraction, nonNegative, positive, temperature } from './inputs.js';

const eta = { key: 'viscosity_pa_s', unit: 'Pa·s', meaning: 'viscosity' } as const;
const trouton = {
  key: 'trouton_ratio',
  unit: '1',
  meaning: 'extensional by shear viscosity: 3 Newtonian, 10 to 40 reported for caramel',
  possible: [3, 1e4],
  fitted: [3, 40],
  default: 3,
} as const;

/** A factor either way that covers about 95 %: 2.2 where it was fitted, 1.6 in thin syrups, more towards the glass. */
function byFactor(value: number, factor: number): Estimate {
  return { value, low: value / factor, high: value * factor };
}
const isFitted = (water: number, aboveGlass: number) => water >= 0.13 && aboveGlass >= 55;
function syrupEstimate(value: number, water: number, aboveGlass: number): Estimate {
  const { glass_viscosity } = syrupWlf.values;
  if (isFitted(water, aboveGlass)) return byFactor(value, water > 0.35 ? 1.6 : 2.2);
  // Below its transition a glass creeps by another law, some decades faster than the equation runs on.
  if (aboveGlass < 0) return { value, low: Math.min(value, glass_viscosity) / 10, high: value * 10 };
  return byFactor(value, 4);
}

export const flowModels: readonly Model[] = [
  defineModel({
    id: 'viscosity.wlf',
    title: 'Viscosity above a reference temperature after Williams, Landel and Ferry',
    about: 'log10(η/ηref) = -C1 (T - Tref)/(C2 + T - Tref); the constants over polymers are the default, syrups need their own.',
    inputs: [
      temperature('temperature_c', 'temperature'),
      temperature('reference_temperature_c', 'reference, as a rule the glass transition'),
      positive('c1', '1', 'constant C1', { default: 17.44 }),
      positive('c2_k', 'K', 'constant C2', { default: 51.6 }),
      positive('reference_viscosity_pa_s', 'Pa·s', 'viscosity at the reference', { default: 1e12 }),
    ],
    outputs: [eta, { key: 'log10_shift', unit: '1', meaning: 'log10 of viscosity over that at the reference' }],
    sources: ['wlf-1955'],
    standing: 'found',
    run: (x) => {
      const shift = wlfShift(x.temperature_c - x.reference_temperature_c, x.c1, x.c2_k);
      return { viscosity_pa_s: x.reference_viscosity_pa_s * 10 ** shift, log10_shift: shift };
    },
  }),
  defineModel({
    id: 'viscosity.vft',
    title: 'Viscosity after Vogel, Fulcher and Tammann',
    about: 'η = a exp(b/(T - T0)).',
    inputs: [
      temperature('temperature_c', 'temperature, above T0'),
      positive('a_pa_s', 'Pa·s', 'limit at high temperature'),
      positive('b_k', 'K', 'steepness b'),
      temperature('t0_c', 'temperature T0 at which the viscosity has its pole'),
    ],
    outputs: [eta],
    sources: ['vft'],
    standing: 'memory',
    run: (x) => ({ viscosity_pa_s: vftViscosity(x.temperature_c, x.a_pa_s, x.b_k, x.t0_c) }),
  }),
  defineModel({
    id: 'viscosity.arrhenius',
    title: 'Viscosity at another temperature from an activation energy of flow',
    about: 'η2 = η1 exp(Ea/R (1/T2 - 1/T1)); for a short range of temperature.',
    inputs: [
      temperature('temperature_c', 'temperature'),
      temperature('reference_temperature_c', 'temperature of the known viscosity'),
      positive('reference_viscosity_pa_s', 'Pa·s', 'known viscosity'),
      positive('activation_energy_kj_mol', 'kJ/mol', 'activation energy of flow; dulce de leche of household type 41.4', { default: 41.4 }),
    ],
    outputs: [eta],
    sources: ['rovedo-1991'],
    standing: 'found',
    run: (x) => ({
      viscosity_pa_s:
        x.reference_viscosity_pa_s / arrheniusFactor(x.activation_energy_kj_mol * 1000, x.reference_temperature_c, x.temperature_c),
    }),
  }),
  defineModel({
    id: 'viscosity.concentrated_syrup',
    title: 'Viscosity of the syrup phase of a confectionery mass, honey or syrup',
    about:
      'WLF from the glass transition of the mixture: C1 16.83, C2 45.8 - 37 w, fitted to sucrose solutions and one honey; times 10^(share of chains × ' +
      'log2(length/2)). From 20 to 35 % water it goes over into the sucrose solution of equal thickness (syrup.viscosity).',
    inputs: [...compositionInputs, temperature('temperature_c', 'temperature', { possible: [-60, 200], fitted: [10, 100] })],
    outputs: [
      eta,
      { key: 'glass_transition_c', unit: '°C', meaning: 'glass transition of the syrup phase' },
      { key: 'moisture', unit: '1', meaning: 'water by water and dissolved sugars' },
    ],
    sources: ['crc-102-solutions', 'gordon-taylor-table-2016', 'wlf-1955', 'corn-syrup-viscosities', 'genotelle-bubnik'],
    standing: 'memory',
    run: (x) => {
      const of = compositionOf(x);
      const tg = glassTransition(of, 'gordon_taylor', stateOf(x));
      const water = syrupWater(of, stateOf(x));
      return {
        viscosity_pa_s: syrupEstimate(concentratedSyrupViscosity(of, x.temperature_c, stateOf(x)), water, x.temperature_c - tg),
        glass_transition_c: glassEstimate(tg, 10),
        moisture: water,
      };
    },
    remarks: phaseRemarks,
  }),
  defineModel({
    id: 'caramel.viscosity',
    title: 'Viscosity of a caramel',
    about:
      'Syrup phase times fat, swollen protein and crystals as a suspension (Krieger-Dougherty) times the plant factor, measured over computed.',
    inputs: [
      ...compositionInputs,
      temperature('temperature_c', 'temperature', { possible: [-60, 200], fitted: [10, 100], default: 80 }),
      positive('plant_factor', '1', 'measured over computed viscosity of the plant’s own caramel', { default: 1 }),
    ],
    outputs: [
      eta,
      { key: 'syrup_viscosity_pa_s', unit: 'Pa·s', meaning: 'viscosity of its syrup phase' },
      { key: 'suspension_factor', unit: '1', meaning: 'thickening by fat, protein and crystals' },
      { key: 'dispersed_volume_fraction', unit: '1', meaning: 'volume of fat, swollen protein and crystals' },
    ],
    sources: ['crc-102-solutions', 'gordon-taylor-table-2016', 'krieger-dougherty-1959'],
    standing: 'memory',
    run: (x) => {
      const of = compositionOf(x);
      const volume = dispersedVolume(of, x.temperature_c, stateOf(x));
      const value = caramelViscosity(of, x.temperature_c, x.plant_factor, stateOf(x));
      return {
        viscosity_pa_s: x.plant_factor === 1 ? { value, low: value / 3, high: value * 30 } : byFactor(value, 2),
        syrup_viscosity_pa_s: concentratedSyrupViscosity(of, x.temperature_c, stateOf(x)),
        suspension_factor: suspensionFactor(volume),
        dispersed_volume_fraction: volume,
      };
    },
    remarks: (x) => [
      ...phaseRemarks(x),
      ...(x.plant_factor === 1
        ? [{ code: 'NOT_CALIBRATED', message: 'No plant factor: a network of milk protein can make a caramel ten times thicker than this' }]
        : []),
    ],
  }),
  defineModel({
    id: 'suspension.viscosity_factor',
    title: 'Thickening of a liquid by what is suspended in it',
    about: 'Krieger-Dougherty: (1 - φ/φm)^(-2.5 φm).',
    inputs: [
      fraction('volume_fraction', 'volume share of the suspended phase', { fitted: [0, 0.6] }),
      fraction('packing_fraction', 'densest packing', { default: 0.71 }),
    ],
    outputs: [{ key: 'factor', unit: '1', meaning: 'viscosity by that of the liquid' }],
    sources: ['krieger-dougherty-1959'],
    standing: 'memory',
    run: (x) => ({ factor: suspensionFactor(x.volume_fraction, x.packing_fraction) }),
  }),
  defineModel({
    id: 'caramel.stretch',
    title: 'Pull and tailing of a strand of caramel',
    about:
      'Extensional viscosity = Trouton ratio times η; force = that times strain rate times section; pinch-off time = r η / (0.0709 σ).',
    inputs: [
      positive('viscosity_pa_s', 'Pa·s', 'shear viscosity'),
      trouton,
      positive('strand_radius_m', 'm', 'radius of the strand', { default: 0.002 }),
      positive('strain_rate_per_s', '1/s', 'speed of pulling by length', { default: 1 }),
      positive('surface_tension_n_m', 'N/m', 'surface tension', { default: 0.05 }),
    ],
    outputs: [
      { key: 'extensional_viscosity_pa_s', unit: 'Pa·s', meaning: 'extensional viscosity' },
      { key: 'force_n', unit: 'N', meaning: 'pull on the strand' },
      { key: 'break_time_s', unit: 's', meaning: 'time to pinch off by surface tension alone' },
    ],
    sources: ['barra-2004', 'mckinley-tripathi-2000'],
    standing: 'memory',
    run: (x) => ({
      extensional_viscosity_pa_s: extensionalViscosity(x.viscosity_pa_s, x.trouton_ratio),
      force_n: strandForce(x.viscosity_pa_s, x.strain_rate_per_s, Math.PI * x.strand_radius_m ** 2, x.trouton_ratio),
      break_time_s: strandBreakTime(x.strand_radius_m, x.viscosity_pa_s, x.surface_tension_n_m),
    }),
  }),
  defineModel({
    id: 'caramel.slump',
    title: 'Cold flow: shape of a slab or bar that sags under its own weight',
    about:
      'Thin viscous layer that sticks to what it lies on, with a yield stress if it has one; strips of constant mass, implicit. No coat or wrapper holds it.',
    inputs: [
      positive('height_m', 'm', 'height at the start', { possible: slumpRanges.size }),
      positive('width_m', 'm', 'full width at the start', { possible: slumpRanges.size }),
      positive('viscosity_pa_s', 'Pa·s', 'viscosity at storage temperature', { possible: slumpRanges.viscosity }),
      nonNegative('yield_stress_pa', 'Pa', 'stress below which it stands', { default: 0, possible: slumpRanges.yieldStress }),
      positive('density_kg_m3', 'kg/m³', 'density', { default: 1330, possible: slumpRanges.density }),
      nonNegative('time_h', 'h', 'time', { possible: [0, 2e7] }),
      trouton,
    ],
    outputs: [
      { key: 'centre_height_m', unit: 'm', meaning: 'height in the middle' },
      { key: 'width_m', unit: 'm', meaning: 'full width at the foot' },
      { key: 'spread', unit: '1', meaning: 'width by width at the start, less 1' },
      { key: 'strain_rate_per_s', unit: '1/s', meaning: 'upper bound of the first rate at the foot, ρ g H/(Tr η)' },
      { key: 'profile_x_m', unit: 'm', meaning: 'middles of the strips, from the middle of the slab' },
      { key: 'profile_height_m', unit: 'm', meaning: 'their heights' },
    ],
    sources: ['huppert-1982', 'liu-mei-1989', 'barra-2004'],
    standing: 'memory',
    run: (x) => {
      const slab = {
        height: x.height_m,
        width: x.width_m,
        viscosity: x.viscosity_pa_s,
        density: x.density_kg_m3,
        yieldStress: x.yield_stress_pa,
      };
      const shape = slump(slab, x.time_h * 3600);
      return {
        centre_height_m: shape.centre,
        width_m: 2 * shape.front,
        spread: (2 * shape.front) / x.width_m - 1,
        strain_rate_per_s: gravityStrainRate(x.density_kg_m3, x.height_m, x.viscosity_pa_s, x.trouton_ratio),
        profile_x_m: { value: Array.from(shape.height, (_, i) => (shape.x[i]! + shape.x[i + 1]!) / 2) },
        profile_height_m: { value: Array.from(shape.height) },
      };
    },
    remarks: (x) =>
      x.height_m > x.width_m / 3
        ? [{ code: 'NOT_THIN', message: 'Height is above a third of the width: the thin-layer equation spreads it too fast' }]
        : [],
  }),
];

function phaseRemarks(x: CompositionInput & { readonly temperature_c: number }) {
  const of = compositionOf(x);
  const water = syrupWater(of, stateOf(x));
  const above = x.temperature_c - glassTransition(of, 'gordon_taylor', stateOf(x));
  const findings = scaled(x);
  if (!isFitted(water, above)) {
    findings.push({
      code: 'OUTSIDE_FITTED_RANGE',
      message: `Syrup phase with ${(100 * water).toFixed(1)} % water, ${above.toFixed(0)} K above its glass transition; fitted from 13 % and 55 K up${above < 0 ? ': it is a glass, and only the low end of the interval says how it may creep' : ''}`,
    });
  }
  return findings;
}
