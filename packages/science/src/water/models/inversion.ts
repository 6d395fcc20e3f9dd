import { BadInput } from '../../errors.js';
import { defineModel } from '../../model.js';
import { boilingPoint } from '../boiling.js';
import { inverted, invertedShare, inversionRate, waterConcentration } from '../inversion.js';

const ph = {
  key: 'ph',
  unit: '1',
  meaning: 'pH of the syrup at its temperature (a cold reading is a little higher)',
  possible: [1, 10],
  fitted: [3, 8],
} as const;

export const inversionRateModel = defineModel({
  id: 'sucrose.inversion_rate',
  title: 'Rate of inversion of sucrose',
  about: 'log10 k = 16.91 + log10(water, g/mL) - 5670/T - pH: first order in sucrose, k per minute.',
  inputs: [
    { key: 'temperature_c', unit: '°C', meaning: 'temperature', possible: [20, 180], fitted: [60, 130] },
    ph,
    { key: 'water_g_ml', unit: 'g/mL', meaning: 'water per millilitre of syrup', possible: [0, 1], fitted: [0.1, 0.9] },
  ],
  outputs: [
    { key: 'rate_per_min', unit: '1/min', meaning: 'share of the sucrose inverted per minute, at the start' },
    { key: 'half_time_min', unit: 'min', meaning: 'time in which half is inverted' },
  ],
  sources: ['vukov-1965'],
  standing: 'secondhand',
  run: ({ temperature_c, ph: pH, water_g_ml }) => {
    const k = inversionRate(temperature_c, pH, water_g_ml);
    return {
      rate_per_min: { value: k, low: k / 1.3, high: k * 1.3 },
      ...(k > 0 ? { half_time_min: { value: Math.LN2 / k, low: Math.LN2 / k / 1.3, high: (Math.LN2 / k) * 1.3 } } : {}),
    };
  },
});

export const inversionModel = defineModel({
  id: 'sucrose.inversion',
  title: 'Sucrose inverted along a cook or a hold',
  about:
    'Vukov’s rate over a logged history of temperature, straight lines between its points. Solids stay as given, or follow the boiling point of a ' +
    'sucrose syrup while the log is above it.',
  inputs: [
    { key: 'time_min', unit: 'min', kind: 'series', meaning: 'times of the log, rising', possible: [0, 1e6] },
    { key: 'temperature_c', unit: '°C', kind: 'series', meaning: 'temperatures at those times', possible: [20, 180], fitted: [60, 130] },
    ph,
    { key: 'solids', unit: '1', meaning: 'solids of the syrup, mass fraction', possible: [0, 0.99], fitted: [0.1, 0.85] },
    { key: 'boiling', unit: '1', kind: 'flag', meaning: 'solids rise as the syrup boils at 101 325 Pa', default: false },
  ],
  outputs: [
    { key: 'inverted_share', unit: '1', meaning: 'share of the sucrose that has inverted' },
    { key: 'invert_of_solids', unit: '1', meaning: 'invert sugar by mass of the sucrose fed' },
  ],
  sources: ['vukov-1965', 'icumsa-sucrose-density'],
  standing: 'secondhand',
  run: (x) => {
    if (x.solids >= 0.9 && x.boiling)
      throw new BadInput('sucrose.inversion, solids: with boiling give the solids before the cook, below 0.9');
    const waterAt = (_: number, t: number): number => {
      const solids = x.boiling ? Math.max(x.solids, solidsBoilingAt(t)) : x.solids;
      return waterConcentration({ water: 1 - solids, sucrose: solids }, solids, t);
    };
    const value = invertedShare(x.time_min, x.temperature_c, x.ph, waterAt);
    const scaled = (factor: number): number => 1 - (1 - value) ** factor;
    const after = inverted({ water: 1, sucrose: 1 }, value);
    return {
      inverted_share: { value, low: scaled(1 / 1.3), high: scaled(1.3) },
      invert_of_solids: after.glucose! + after.fructose!,
    };
  },
});

/** Solids of a sucrose syrup that boils at t at sea level; 0 below 100.5 °C. */
function solidsBoilingAt(t: number): number {
  if (t < 100.5) return 0;
  let low = 0.3;
  let high = 0.985;
  for (let step = 0; step < 24; step++) {
    const middle = (low + high) / 2;
    if (boilingPoint({ water: 1 - middle, sucrose: middle }, 101_325) < t) low = middle;
    else high = middle;
  }
  return low;
}
