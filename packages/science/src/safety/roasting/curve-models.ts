import { defineModel } from '../../model.js';
import { browning } from '../data/roasting.js';
import { lightness, roastDegree, timeToLightness } from './colour.js';
import { coolingTime, pieceRate } from './heat.js';
import { roastCurve } from './log.js';

export const cooling = defineModel({
  id: 'roasting.cooling',
  title: 'Cooling of roasted product to a limit',
  about: 'Lump in a stream of air: T = Ta + (T0 - Ta) exp(-h A t/(m c)), h by Wakao for a bed. Carry-over roasting goes on meanwhile.',
  inputs: [
    { key: 'temperature_c', unit: '°C', meaning: 'Out of the roaster', possible: [0, 300] },
    { key: 'limit_c', unit: '°C', meaning: 'To be reached', possible: [0, 300], default: 35 },
    { key: 'air_temperature_c', unit: '°C', meaning: 'Cooling air', possible: [-40, 100], default: 20 },
    { key: 'air_velocity_m_s', unit: 'm/s', meaning: 'Superficial', possible: [0, 20], default: 1 },
    { key: 'diameter_mm', unit: 'mm', meaning: 'Sphere of equal volume', possible: [0.1, 100], default: 10.7 },
    { key: 'density_kg_m3', unit: 'kg/m³', meaning: 'Of the piece', possible: [100, 3000], default: 950 },
    { key: 'heat_capacity_j_kg_k', unit: 'J/(kg K)', meaning: 'Of the piece', possible: [500, 4200], default: 1950 },
    { key: 'bed_factor', unit: '1', meaning: 'Slower than a single piece by this factor in a deep bed', possible: [1, 100], default: 3 },
  ],
  outputs: [
    { key: 'time_min', unit: 'min', meaning: 'To the limit' },
    { key: 'rate_per_min', unit: '1/min', meaning: 'h A/(m c)' },
  ],
  sources: ['wakao-1979'],
  standing: 'memory',
  run: (x) => {
    const film = (x.temperature_c + x.air_temperature_c) / 2;
    const rate = pieceRate(x.diameter_mm / 1000, x.density_kg_m3, x.heat_capacity_j_kg_k, x.air_velocity_m_s, film) / x.bed_factor;
    return { time_min: coolingTime(x.temperature_c, x.limit_c, x.air_temperature_c, rate) / 60, rate_per_min: rate * 60 };
  },
});

export const degree = defineModel({
  id: 'roasting.degree',
  title: 'Roast degree and colour from a logged product temperature',
  about:
    'Minutes at the reference temperature that brown as much (Arrhenius); lightness falls with it (zero order) at the plant’s own rate.',
  inputs: [
    { key: 'time_min', unit: 'min', meaning: 'Times of the log, rising', kind: 'series', possible: [-1e9, 1e9] },
    { key: 'temperature_c', unit: '°C', meaning: 'Product temperature', kind: 'series', possible: [-40, 400], fitted: [15, 200] },
    { key: 'reference_temperature_c', unit: '°C', meaning: 'Reference', possible: [0, 300], default: 150 },
    { key: 'activation_energy_kj_mol', unit: 'kJ/mol', meaning: 'Of browning', possible: [1, 500], fitted: [60, 125], default: 90 },
    { key: 'lightness_start', unit: '1', meaning: 'L of the raw product', possible: [0, 100], default: 65 },
    {
      key: 'lightness_rate_per_min',
      unit: '1/min',
      meaning: 'Fall of L per minute at the reference, from the plant’s own roasts',
      possible: [0, 100],
      default: 0,
    },
    { key: 'lightness_end', unit: '1', meaning: 'L at which the roast ends', possible: [0, 100], default: 50 },
  ],
  outputs: [
    { key: 'roast_degree_min', unit: 'min', meaning: 'Equivalent minutes at the reference; low and high by the activation energy' },
    { key: 'lightness', unit: '1', meaning: 'L at the end of the log, with the plant’s rate' },
    { key: 'minutes_to_end', unit: 'min', meaning: 'Further minutes at the last temperature to the end lightness' },
  ],
  sources: ['furan-hazelnut-2020', 'poirier-2014'],
  standing: 'memory',
  run: (x) => {
    const of = (energy: number) => roastDegree(x.time_min, x.temperature_c, x.reference_temperature_c, energy);
    const energy = x.activation_energy_kj_mol * 1000;
    const value = of(energy);
    const ends = [of(browning.values.low), of(browning.values.high)];
    const now = lightness(x.lightness_start, x.lightness_rate_per_min, value);
    const rate = x.lightness_rate_per_min;
    return {
      roast_degree_min: { value, low: Math.min(...ends, value), high: Math.max(...ends, value) },
      lightness: { value: rate > 0 ? now : null },
      minutes_to_end: {
        value:
          rate > 0 && now > x.lightness_end
            ? timeToLightness(now, x.lightness_end, rate, x.temperature_c.at(-1)!, x.reference_temperature_c, energy)
            : rate > 0
              ? 0
              : null,
      },
    };
  },
  remarks: () => [
    { code: 'COLOUR_PROVES_NOTHING', message: 'Colour supports a roast record; it never proves a kill step (published R² 0.73).' },
  ],
});

export const roastLog = defineModel({
  id: 'roasting.log',
  title: 'Heating rate and stages found in a roast log',
  about:
    'Least-squares slope in a moving window; stretches above, within or below a still rate are heating, holding, cooling; the first fall is charging.',
  inputs: [
    { key: 'time_min', unit: 'min', meaning: 'Times of the log', kind: 'series', possible: [-1e9, 1e9] },
    { key: 'temperature_c', unit: '°C', meaning: 'Product temperature', kind: 'series', possible: [-100, 1000] },
    { key: 'still_k_min', unit: 'K/min', meaning: 'Slower than this is holding', possible: [0.001, 100], default: 1 },
  ],
  outputs: [
    { key: 'heating_rate_k_min', unit: 'K/min', meaning: 'Slope of the heating stages, weighted by their minutes' },
    { key: 'fastest_rate_k_min', unit: 'K/min', meaning: 'Largest smoothed rate' },
    { key: 'turning_point_min', unit: 'min', meaning: 'Lowest reading of the first half' },
    { key: 'turning_point_c', unit: '°C', meaning: 'Temperature there' },
    { key: 'peak_c', unit: '°C', meaning: 'Highest reading' },
    { key: 'peak_min', unit: 'min', meaning: 'Its time' },
    { key: 'stages', unit: '', meaning: 'Stages in order, with their minutes and rates' },
    { key: 'stage_count', unit: '1', meaning: 'Number of stages' },
  ],
  sources: ['common-practice'],
  standing: 'memory',
  run: (x) => {
    const curve = roastCurve(x.time_min, x.temperature_c, undefined, x.still_k_min);
    const heating = curve.stages.filter((s) => s.name === 'heating');
    const minutes = heating.reduce((sum, s) => sum + s.to - s.from, 0);
    const rate = heating.reduce((sum, s) => sum + s.rate * (s.to - s.from), 0) / minutes;
    const fixed = (n: number) => Number(n.toFixed(2));
    return {
      heating_rate_k_min: { value: minutes > 0 ? rate : null },
      fastest_rate_k_min: curve.fastest,
      turning_point_min: curve.turning.time,
      turning_point_c: curve.turning.temperature,
      peak_c: curve.peak.temperature,
      peak_min: curve.peak.time,
      stages: { value: curve.stages.map((s) => `${s.name} ${fixed(s.from)} to ${fixed(s.to)} min at ${fixed(s.rate)} K/min`).join('; ') },
      stage_count: curve.stages.length,
    };
  },
});
