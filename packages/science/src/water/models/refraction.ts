import { BadInput } from '../../errors.js';
import { defineModel } from '../../model.js';
import { dissolvedInputs, mixtureOf, waterInput } from '../mixture.js';
import {
  refractionTemperatures,
  refractiveIndex,
  refractometerReading,
  solidsOfReading,
  solidsOfRefractiveIndex,
  waterRefractiveIndex,
} from '../refraction.js';
import { dissolvedSolids } from '../solution.js';

const temperature = {
  key: 'temperature_c',
  unit: '°C',
  meaning: 'temperature of the sample on the prism',
  possible: refractionTemperatures,
  fitted: [15, 60],
  default: 20,
} as const;
const compensated = {
  key: 'temperature_compensated',
  unit: '1',
  kind: 'flag',
  meaning: 'the refractometer corrects its reading to 20 °C as for sucrose',
  default: true,
} as const;
const index = { key: 'refractive_index', unit: '1', meaning: 'refractive index at 589 nm' } as const;
const within = (value: number, spread: number) => ({ value, low: value - spread, high: value + spread });

export const sucroseRefractionModel = defineModel({
  id: 'sucrose.refractive_index',
  title: 'Refractive index of a sucrose solution',
  about: 'Specific refraction of sucrose and water (Lorentz and Lorenz) with the ICUMSA density.',
  inputs: [{ key: 'solids', unit: '1', meaning: 'sucrose, mass fraction', possible: [0, 0.95], fitted: [0, 0.85] }, temperature],
  outputs: [index],
  sources: ['icumsa-sps-3', 'icumsa-sucrose-density'],
  standing: 'memory',
  run: ({ solids, temperature_c }) => ({
    refractive_index: within(
      solids === 0 ? waterRefractiveIndex(temperature_c) : refractiveIndex({ water: 1 - solids, sucrose: solids }, temperature_c),
      // The two tables in use, of 1942 and 1974, part by 0.0006 at 80 %.
      0.0001 + 1e-5 * Math.abs(temperature_c - 20) + 0.004 * Math.max(0, solids - 0.65),
    ),
  }),
});

export const syrupRefractionModel = defineModel({
  id: 'syrup.refractive_index',
  title: 'Refractive index of a mixed syrup and what a refractometer shows',
  about: 'Specific refractions add by mass; the density closes it. The reading is the sucrose solution of the same index.',
  inputs: [waterInput, ...dissolvedInputs, temperature, compensated],
  outputs: [
    index,
    { key: 'reading_brix', unit: '%', meaning: 'reading of a refractometer with a sucrose scale' },
    { key: 'solids', unit: '1', meaning: 'true dissolved solids, mass fraction' },
    { key: 'correction', unit: '%', meaning: 'true solids less reading, in points' },
  ],
  sources: ['icumsa-sps-3', 'iso-1743', 'crc-102-solutions'],
  standing: 'secondhand',
  run: (x) => {
    const solution = mixtureOf(x);
    const dry = dissolvedSolids(solution);
    const solids = dry / (dry + solution.water);
    const value = dry === 0 ? waterRefractiveIndex(x.temperature_c) : refractiveIndex(solution, x.temperature_c);
    const reading = dry === 0 ? 0 : refractometerReading(solution, x.temperature_c, x.temperature_compensated);
    return {
      refractive_index: within(value, 0.0012),
      reading_brix: within(100 * reading, 0.5),
      solids,
      correction: within(100 * (solids - reading), 0.5),
    };
  },
});

export const refractometerModel = defineModel({
  id: 'syrup.solids_from_refractometer',
  title: 'True solids of a syrup from a refractometer',
  about:
    'The concentration of these solids at which the refractive index (or the reading on a sucrose scale) is what was seen. Give the solids of the ' +
    'syrup at hand in any masses; only their ratio counts. Fat, protein and air are not seen rightly by a refractometer.',
  inputs: [
    ...dissolvedInputs,
    {
      key: 'reading_brix',
      unit: '%',
      meaning: 'reading on the sucrose scale; 0 where the refractive index is given',
      possible: [0, 95],
      default: 0,
    },
    {
      key: 'refractive_index',
      unit: '1',
      meaning: 'index at the temperature of the sample; 0 where the reading is given',
      possible: [0, 1.6],
      default: 0,
    },
    temperature,
    compensated,
  ],
  outputs: [
    { key: 'solids', unit: '1', meaning: 'true dissolved solids, mass fraction' },
    { key: 'moisture', unit: '1', meaning: 'water, mass fraction of the solution' },
    { key: 'correction', unit: '%', meaning: 'true solids less reading, in points' },
  ],
  sources: ['icumsa-sps-3', 'iso-1743', 'crc-102-solutions'],
  standing: 'secondhand',
  run: (x) => {
    if (x.reading_brix > 0 === x.refractive_index > 0) {
      throw new BadInput('syrup.solids_from_refractometer takes one of reading_brix and refractive_index; the other is left out');
    }
    const solution = mixtureOf(x);
    const solids =
      x.refractive_index > 0
        ? solidsOfRefractiveIndex(solution, x.refractive_index, x.temperature_c)
        : solidsOfReading(solution, x.reading_brix / 100, x.temperature_c, x.temperature_compensated);
    return {
      solids: within(solids, 0.005),
      moisture: within(1 - solids, 0.005),
      ...(x.reading_brix > 0 ? { correction: within(100 * solids - x.reading_brix, 0.5) } : {}),
    };
  },
});
