import { defineModel, type Model } from '../../model.js';
import { lumpedTemperature, lumpedTimeConstant } from '../conduction/lumped.js';
import { semiInfiniteConvection, semiInfiniteFlux, semiInfiniteStep } from '../conduction/semi-infinite.js';
import { eigenvalue, fourierAtRatio, meanTemperatureRatio, seriesCoefficient, temperatureRatio, type Shape } from '../conduction/solid.js';
import { nonNegative, positive, temperature } from './inputs.js';

const start = temperature('start_temperature_c', 'temperature of the body at the start');
const medium = temperature('medium_temperature_c', 'temperature of the medium');
const coefficient = positive('heat_transfer_coefficient_w_m2_k', 'W/(m² K)', 'surface heat transfer coefficient');
const conductivity = positive('thermal_conductivity_w_m_k', 'W/(m K)', 'conductivity of the body');
const rho = positive('density_kg_m3', 'kg/m³', 'density of the body');
const cp = positive('specific_heat_j_kg_k', 'J/(kg K)', 'specific heat of the body');
const time = nonNegative('time_s', 's', 'time since the start');

function solidModel(shape: Shape, id: string, title: string, lengthKey: 'half_thickness_m' | 'radius_m', length: string): Model {
  return defineModel({
    id,
    title,
    about:
      'Series of Carslaw and Jaeger in Bi = h L/k and Fo = αt/L²; half-space while the middle is untouched. Constant properties and medium.',
    inputs: [
      positive(lengthKey, 'm', length),
      start,
      medium,
      coefficient,
      conductivity,
      rho,
      cp,
      time,
      {
        key: 'position',
        unit: '1',
        meaning: 'distance from the centre (or insulated face) by the length, 0 to 1',
        possible: [0, 1],
        default: 0,
      },
    ],
    outputs: [
      { key: 'temperature_c', unit: '°C', meaning: 'temperature at the position' },
      { key: 'centre_temperature_c', unit: '°C', meaning: 'temperature of the centre or insulated face' },
      { key: 'surface_temperature_c', unit: '°C', meaning: 'temperature of the surface' },
      { key: 'mean_temperature_c', unit: '°C', meaning: 'mean over the volume' },
      { key: 'biot', unit: '1', meaning: 'h L / k' },
      { key: 'fourier', unit: '1', meaning: 'α t / L²' },
      { key: 'ratio', unit: '1', meaning: '(T - T∞)/(T0 - T∞) at the position' },
    ],
    sources: ['carslaw-jaeger-1959', 'cengel-4'],
    standing: 'found',
    run: (x) => {
      const size = x[lengthKey];
      const biot = (x.heat_transfer_coefficient_w_m2_k * size) / x.thermal_conductivity_w_m_k;
      const fourier = (x.thermal_conductivity_w_m_k * x.time_s) / (x.density_kg_m3 * x.specific_heat_j_kg_k * size * size);
      const at = (ratio: number) => x.medium_temperature_c + (x.start_temperature_c - x.medium_temperature_c) * ratio;
      const ratio = temperatureRatio(shape, biot, fourier, x.position);
      return {
        temperature_c: at(ratio),
        centre_temperature_c: at(temperatureRatio(shape, biot, fourier, 0)),
        surface_temperature_c: at(temperatureRatio(shape, biot, fourier, 1)),
        mean_temperature_c: at(meanTemperatureRatio(shape, biot, fourier)),
        biot,
        fourier,
        ratio,
      };
    },
  });
}

const shape = {
  key: 'shape',
  unit: '1',
  meaning: 'slab (half thickness), long cylinder or sphere (radius)',
  kind: 'choice',
  choices: ['slab', 'cylinder', 'sphere'],
  default: 'slab',
} as const;
const biot = positive('biot', '1', 'h L / k, L the half thickness or radius');

export const conductionModels: readonly Model[] = [
  solidModel(
    'slab',
    'conduction.plane_wall',
    'Heating or cooling of a slab in a medium, both faces alike or one insulated',
    'half_thickness_m',
    'half the thickness, or the whole where one face is insulated',
  ),
  solidModel('cylinder', 'conduction.cylinder', 'Heating or cooling of a long cylinder in a medium', 'radius_m', 'radius'),
  solidModel('sphere', 'conduction.sphere', 'Heating or cooling of a sphere in a medium', 'radius_m', 'radius'),
  defineModel({
    id: 'conduction.one_term',
    title: 'First eigenvalue and coefficient of the transient conduction series',
    about: 'Slab λ tan λ = Bi, cylinder λ J1/J0 = Bi, sphere 1 - λ cot λ = Bi; one term is enough for Fo above 0.2.',
    inputs: [shape, biot],
    outputs: [
      { key: 'eigenvalue', unit: 'rad', meaning: 'first root λ1' },
      { key: 'coefficient', unit: '1', meaning: 'A1' },
    ],
    sources: ['cengel-4', 'carslaw-jaeger-1959'],
    standing: 'found',
    run: (x) => {
      const root = eigenvalue(x.shape as Shape, x.biot, 0);
      return { eigenvalue: root, coefficient: seriesCoefficient(x.shape as Shape, root) };
    },
  }),
  defineModel({
    id: 'conduction.dimensionless',
    title: 'Unaccomplished change in a body from Biot and Fourier numbers',
    about: '(T - T∞)/(T0 - T∞) by the full series; serves heat and, by analogy, moisture. mean_ratio is 1 less the fractional uptake.',
    inputs: [
      shape,
      biot,
      nonNegative('fourier', '1', 'α t / L²'),
      { key: 'position', unit: '1', meaning: 'distance from the centre by L', possible: [0, 1], default: 0 },
    ],
    outputs: [
      { key: 'ratio', unit: '1', meaning: 'at the position' },
      { key: 'mean_ratio', unit: '1', meaning: 'mean over the volume' },
    ],
    sources: ['carslaw-jaeger-1959', 'cengel-4'],
    standing: 'found',
    run: (x) => ({
      ratio: temperatureRatio(x.shape as Shape, x.biot, x.fourier, x.position),
      mean_ratio: meanTemperatureRatio(x.shape as Shape, x.biot, x.fourier),
    }),
  }),
  defineModel({
    id: 'conduction.time_to_temperature',
    title: 'Time until a place in a slab, cylinder or sphere reaches a temperature',
    about: 'The series solved for the Fourier number.',
    inputs: [
      shape,
      positive('length_m', 'm', 'half thickness (whole where one face is insulated) or radius'),
      start,
      medium,
      temperature('target_temperature_c', 'temperature to reach, between start and medium'),
      coefficient,
      conductivity,
      rho,
      cp,
      { key: 'position', unit: '1', meaning: 'distance from the centre by the length', possible: [0, 1], default: 0 },
    ],
    outputs: [
      { key: 'time_s', unit: 's', meaning: 'time' },
      { key: 'fourier', unit: '1', meaning: 'Fourier number at that time' },
    ],
    sources: ['carslaw-jaeger-1959', 'cengel-4'],
    standing: 'found',
    run: (x) => {
      const size = x.length_m;
      const number = (x.heat_transfer_coefficient_w_m2_k * size) / x.thermal_conductivity_w_m_k;
      const ratio = (x.target_temperature_c - x.medium_temperature_c) / (x.start_temperature_c - x.medium_temperature_c);
      const fourier = fourierAtRatio(x.shape as Shape, number, ratio, x.position);
      return { time_s: (fourier * size * size * x.density_kg_m3 * x.specific_heat_j_kg_k) / x.thermal_conductivity_w_m_k, fourier };
    },
  }),
  defineModel({
    id: 'conduction.semi_infinite',
    title: 'Heating or cooling of a thick body from one face',
    about:
      'Half-space: a jump of the surface temperature, a medium through a coefficient, or a constant flux. Valid while the far side is untouched.',
    inputs: [
      {
        key: 'boundary',
        unit: '1',
        meaning: 'what is held at the surface',
        kind: 'choice',
        choices: ['surface_temperature', 'convection', 'flux'],
        default: 'surface_temperature',
      },
      nonNegative('depth_m', 'm', 'depth below the surface'),
      positive('thermal_diffusivity_m2_s', 'm²/s', 'diffusivity of the body'),
      time,
      { ...start, default: 20 },
      { ...medium, meaning: 'temperature of the surface or of the medium', default: 0 },
      { ...coefficient, default: 10 },
      { ...conductivity, default: 0.3 },
      { key: 'flux_w_m2', unit: 'W/m²', meaning: 'heat into the surface', default: 0 },
    ],
    outputs: [
      { key: 'temperature_c', unit: '°C', meaning: 'temperature at the depth' },
      { key: 'ratio', unit: '1', meaning: '(T - T∞)/(T0 - T∞); not for a flux' },
    ],
    sources: ['carslaw-jaeger-1959', 'incropera-5'],
    standing: 'memory',
    run: (x) => {
      const a = x.thermal_diffusivity_m2_s;
      if (x.boundary === 'flux') {
        return {
          temperature_c: x.start_temperature_c + semiInfiniteFlux(x.depth_m, a, x.time_s, x.flux_w_m2, x.thermal_conductivity_w_m_k),
        };
      }
      const number = x.heat_transfer_coefficient_w_m2_k / x.thermal_conductivity_w_m_k; // per metre: depths and √(αt) in metres
      const ratio =
        x.boundary === 'convection' ? semiInfiniteConvection(x.depth_m, a * x.time_s, number) : semiInfiniteStep(x.depth_m, a, x.time_s);
      return { temperature_c: x.medium_temperature_c + (x.start_temperature_c - x.medium_temperature_c) * ratio, ratio };
    },
  }),
  defineModel({
    id: 'conduction.lumped',
    title: 'Heating or cooling of a body of even temperature',
    about: 'exp(-t/τ), τ = rho cp (V/A)/h; fit for use while h (V/A)/k is below 0.1.',
    inputs: [positive('volume_by_surface_m', 'm', 'volume by surface'), start, medium, coefficient, conductivity, rho, cp, time],
    outputs: [
      { key: 'temperature_c', unit: '°C', meaning: 'temperature' },
      { key: 'ratio', unit: '1', meaning: '(T - T∞)/(T0 - T∞)' },
      { key: 'time_constant_s', unit: 's', meaning: 'time constant' },
      { key: 'biot', unit: '1', meaning: 'h (V/A) / k' },
    ],
    sources: ['incropera-5', 'cengel-4'],
    standing: 'found',
    run: (x) => {
      const tau = lumpedTimeConstant(x.density_kg_m3, x.specific_heat_j_kg_k, x.volume_by_surface_m, x.heat_transfer_coefficient_w_m2_k);
      return {
        temperature_c: lumpedTemperature(x.start_temperature_c, x.medium_temperature_c, tau, x.time_s),
        ratio: Math.exp(-x.time_s / tau),
        time_constant_s: tau,
        biot: (x.heat_transfer_coefficient_w_m2_k * x.volume_by_surface_m) / x.thermal_conductivity_w_m_k,
      };
    },
    remarks: (x) => {
      const number = (x.heat_transfer_coefficient_w_m2_k * x.volume_by_surface_m) / x.thermal_conductivity_w_m_k;
      if (number <= 0.1) return [];
      return [
        { code: 'BIOT_ABOVE_0_1', message: `Biot number ${number.toPrecision(3)} is above 0.1: the body is not even in temperature` },
      ];
    },
  }),
];
