import { saturationTemperature } from '../../core/saturation.js';
import { defineModel } from '../../model.js';
import { waterActivity } from '../activity.js';
import { boilingPoint, boilingPressures, boilingSensitivity, waterForBoiling } from '../boiling.js';
import { freezingPoint } from '../freezing.js';
import { brineBeyond, dissolvedInputs, driedBeyond, mixtureOf, singleSolution, soluteInput, waterInput } from '../mixture.js';
import { dissolvedSolids, type Solution } from '../solution.js';
import { activityEstimate, boilingEstimate } from '../spread.js';

const pressure = {
  key: 'pressure_pa',
  unit: 'Pa',
  meaning: 'absolute pressure above the syrup',
  possible: boilingPressures,
  default: 101_325,
} as const;
const single = { key: 'solids', unit: '1', meaning: 'dissolved solids, mass fraction of the solution', possible: [0, 0.995] } as const;
const boils = { key: 'boiling_point_c', unit: '°C', meaning: 'boiling point' } as const;
const elevation = { key: 'elevation_k', unit: 'K', meaning: 'boiling point less that of water at the same pressure' } as const;
const sensitivity = { key: 'sensitivity_k_per_kpa', unit: 'K/kPa', meaning: 'shift of the boiling point per kPa of pressure' } as const;
const roomActivity = {
  key: 'water_activity_25c',
  unit: '1',
  meaning: 'water activity of the same syrup at 25 °C, nothing crystallised',
} as const;

function boilingOutputs(solution: Solution, pressure_pa: number, of: 'sucrose' | 'one solute' | 'mixture') {
  const kind = of === 'mixture' ? of : 'one solute';
  const t = boilingPoint(solution, pressure_pa);
  const rise = t - saturationTemperature(pressure_pa);
  const dry = dissolvedSolids(solution);
  const solids = dry / (dry + solution.water);
  return {
    boiling_point_c: boilingEstimate(t, rise, kind, solids),
    elevation_k: boilingEstimate(rise, rise, kind, solids),
    ...(pressure_pa > boilingPressures[0] && pressure_pa < boilingPressures[1]
      ? { sensitivity_k_per_kpa: boilingSensitivity(solution, pressure_pa) }
      : {}),
    water_activity_25c: activityEstimate(waterActivity(solution, 25), of),
  };
}

export const sucroseBoilingModel = defineModel({
  id: 'sucrose.boiling_point',
  title: 'Boiling point of a sucrose solution',
  about: 'Water activity times the vapour pressure of pure water equals the pressure above the syrup.',
  inputs: [{ ...single, fitted: [0, 0.95] }, pressure],
  outputs: [boils, elevation, sensitivity, roomActivity],
  sources: ['starzak-peacock-1997', 'iapws-if97'],
  standing: 'found',
  run: ({ solids, pressure_pa }) => boilingOutputs({ water: 1 - solids, sucrose: solids }, pressure_pa, 'sucrose'),
});

export const soluteBoilingModel = defineModel({
  id: 'solution.boiling_point',
  title: 'Boiling point of one sugar, polyol or salt in water',
  about: 'As sucrose.boiling_point, with the activity equation of the solute.',
  inputs: [soluteInput, { ...single, fitted: [0, 0.9] }, pressure],
  outputs: [boils, elevation, sensitivity, roomActivity],
  sources: ['starzak-peacock-1997', 'norrish-1966', 'miner-dalton-1953', 'tang-1986', 'iapws-if97'],
  standing: 'memory',
  run: ({ solute, solids, pressure_pa }) => boilingOutputs(singleSolution(solute, solids), pressure_pa, 'one solute'),
  remarks: ({ solute, solids }) => brineBeyond(solute, solids),
});

export const syrupBoilingModel = defineModel({
  id: 'syrup.boiling_point',
  title: 'Boiling point of a mixed syrup',
  about:
    'The dissolved phase boils: leave out fat, protein, crystals and what is added later. In real recipes the result is good to a kelvin or two; a ' +
    'plant calibrates its own offset.',
  inputs: [waterInput, ...dissolvedInputs, pressure],
  outputs: [boils, elevation, sensitivity, roomActivity],
  sources: ['zsr', 'starzak-peacock-1997', 'norrish-1966', 'pancoast-junk-1980', 'iapws-if97'],
  standing: 'memory',
  run: (x) => boilingOutputs(mixtureOf(x), x.pressure_pa, 'mixture'),
  remarks: (x) => driedBeyond(mixtureOf(x), 0.97),
});

export const syrupSolidsModel = defineModel({
  id: 'syrup.solids_from_boiling_point',
  title: 'Solids of a syrup cooked to a temperature',
  about: 'The inverse of syrup.boiling_point: water left in the dissolved phase when it boils at the end temperature.',
  inputs: [
    ...dissolvedInputs,
    { key: 'temperature_c', unit: '°C', meaning: 'end temperature of the cook', possible: [2, 200], fitted: [60, 150] },
    pressure,
  ],
  outputs: [
    { key: 'solids', unit: '1', meaning: 'dissolved solids, mass fraction of the solution' },
    { key: 'moisture', unit: '1', meaning: 'water, mass fraction of the solution' },
    { key: 'water', unit: 'kg', meaning: 'water, in the unit of the solids given' },
    { key: 'moisture_per_kelvin', unit: '1/K', meaning: 'change of the moisture per kelvin of end temperature' },
    roomActivity,
  ],
  sources: ['zsr', 'starzak-peacock-1997', 'norrish-1966', 'pancoast-junk-1980', 'iapws-if97'],
  standing: 'memory',
  run: (x) => {
    const solution = mixtureOf(x);
    const dry = dissolvedSolids(solution);
    const moistureAt = (t: number): number => {
      const water = waterForBoiling(solution, t, x.pressure_pa);
      return water / (water + dry);
    };
    const pure = saturationTemperature(x.pressure_pa);
    const water = waterForBoiling(solution, x.temperature_c, x.pressure_pa);
    const moisture = water / (water + dry);
    const { low, high } = boilingEstimate(x.temperature_c, x.temperature_c - pure, 'mixture', 1 - moisture);
    const moist = moistureAt(Math.max(low!, pure + 1e-4));
    const dryEnd = moistureAt(Math.min(high!, 200));
    const step = Math.min(0.05, (x.temperature_c - pure) / 2, 200 - x.temperature_c || 0.05);
    return {
      solids: { value: 1 - moisture, low: 1 - moist, high: 1 - dryEnd },
      moisture: { value: moisture, low: dryEnd, high: moist },
      water,
      moisture_per_kelvin: (moisture - moistureAt(x.temperature_c - step)) / step,
      water_activity_25c: activityEstimate(waterActivity({ ...solution, water }, 25), 'mixture'),
    };
  },
});

export const freezingModel = defineModel({
  id: 'solution.freezing_point',
  title: 'Freezing point of one sugar, polyol or salt in water',
  about: 'Where the water activity of the solution equals that of ice.',
  inputs: [soluteInput, { ...single, possible: [0, 0.7], fitted: [0, 0.55] }],
  outputs: [
    { key: 'freezing_point_c', unit: '°C', meaning: 'temperature at which ice begins to form' },
    { key: 'depression_k', unit: 'K', meaning: 'how far below that of water' },
  ],
  sources: ['starzak-peacock-1997', 'norrish-1966', 'miner-dalton-1953', 'tang-1986', 'murphy-koop-2005'],
  standing: 'memory',
  run: ({ solute, solids }) => {
    const value = freezingPoint(singleSolution(solute, solids));
    const spread = 0.02 - 0.03 * value;
    return {
      freezing_point_c: { value, low: value - spread, high: Math.min(0, value + spread) },
      depression_k: { value: -value, low: Math.max(0, -value - spread), high: spread - value },
    };
  },
});

export const syrupFreezingModel = defineModel({
  id: 'syrup.freezing_point',
  title: 'Freezing point of a mixed syrup',
  about: 'As solution.freezing_point, for the dissolved phase of a mixture.',
  inputs: [waterInput, ...dissolvedInputs],
  outputs: [{ key: 'freezing_point_c', unit: '°C', meaning: 'temperature at which ice begins to form' }],
  sources: ['zsr', 'starzak-peacock-1997', 'norrish-1966', 'murphy-koop-2005'],
  standing: 'memory',
  run: (x) => {
    const value = freezingPoint(mixtureOf(x));
    return { freezing_point_c: { value, low: 1.06 * value - 0.03, high: Math.min(0, 0.94 * value + 0.03) } };
  },
});
