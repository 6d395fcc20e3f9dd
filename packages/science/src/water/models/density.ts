import { defineModel } from '../../model.js';
import { sucroseSolutionDensity } from '../../process/sugar-solution.js';
import { baume, brixOfDensity, densityTemperatures, gravityOfBaume, solutionDensity, specificGravity } from '../density.js';
import { glucoseSyrup } from '../glucoseSyrup.js';
import { rootOfIncreasing } from '../interpolate.js';
import { dissolvedInputs, mixtureOf, waterInput } from '../mixture.js';

const temperature = {
  key: 'temperature_c',
  unit: '°C',
  meaning: 'temperature',
  possible: densityTemperatures,
  fitted: [0, 100],
  default: 20,
} as const;
const density = { key: 'density_kg_m3', unit: 'kg/m³', meaning: 'density without air' } as const;
const within = (value: number, spread: number) => ({ value, low: value - spread, high: value + spread });

export const sucroseDensityModel = defineModel({
  id: 'sucrose.density',
  title: 'Density of a sucrose solution',
  about: 'ICUMSA polynomial in mass fraction and temperature.',
  inputs: [{ key: 'solids', unit: '1', meaning: 'sucrose, mass fraction', possible: [0, 1], fitted: [0, 0.95] }, temperature],
  outputs: [density, { key: 'specific_gravity', unit: '1', meaning: 'density over that of water, both at 20 °C' }],
  sources: ['icumsa-sucrose-density', 'kell-1975'],
  standing: 'found',
  run: ({ solids, temperature_c }) => ({
    density_kg_m3: within(
      sucroseSolutionDensity(solids, temperature_c),
      0.6 + 0.01 * Math.abs(temperature_c - 20) + 3 * Math.max(0, solids - 0.6),
    ),
    specific_gravity: specificGravity(solids),
  }),
});

export const syrupDensityModel = defineModel({
  id: 'syrup.density',
  title: 'Density of a mixed syrup',
  about: 'Volumes of water and solutes add; each solute at its share of the apparent volume of sucrose at that concentration.',
  inputs: [waterInput, ...dissolvedInputs, temperature],
  outputs: [density],
  sources: ['icumsa-sucrose-density', 'crc-102-solutions', 'corn-syrup-77-density'],
  standing: 'secondhand',
  run: (x) => {
    const value = solutionDensity(mixtureOf(x), x.temperature_c);
    return { density_kg_m3: { value, low: value * 0.994, high: value * 1.006 } };
  },
});

/** Tables of densities part by 0.5 kg/m³, above 70 % by up to 1. */
const densityBrix = (brix: number) => within(brix, 0.1 + 0.006 * Math.max(0, brix - 70));

export const brixModel = defineModel({
  id: 'brix.from_density',
  title: 'Degrees Brix of a density',
  about: 'The sucrose solution that has that density: ICUMSA polynomial turned round.',
  inputs: [
    { key: 'density_kg_m3', unit: 'kg/m³', meaning: 'density without air', possible: [900, 1600] },
    { ...temperature, possible: [0, 100] },
  ],
  outputs: [{ key: 'brix', unit: '%', meaning: 'grams of sucrose per 100 g of solution' }],
  sources: ['icumsa-sucrose-density'],
  standing: 'found',
  run: ({ density_kg_m3, temperature_c }) => ({ brix: densityBrix(100 * brixOfDensity(density_kg_m3, temperature_c)) }),
});

export const baumeModel = defineModel({
  id: 'baume.from_brix',
  title: 'Degrees Baumé of a sucrose solution',
  about: 'Be = 145 - 145/SG at 20 °C, SG from the ICUMSA polynomial.',
  inputs: [{ key: 'brix', unit: '%', meaning: 'grams of sucrose per 100 g of solution', possible: [0, 95] }],
  outputs: [
    { key: 'baume', unit: '°Bé', meaning: 'degrees Baumé, modulus 145' },
    { key: 'specific_gravity', unit: '1', meaning: 'density over that of water, both at 20 °C' },
  ],
  sources: ['baume-145', 'icumsa-sucrose-density'],
  standing: 'found',
  run: ({ brix }) => {
    const gravity = specificGravity(brix / 100);
    return { baume: within(baume(gravity), 0.05), specific_gravity: gravity };
  },
});

/** Commercial Baumé is read at 60 °C (140 °F) against water at 15.6 °C, and 1 is added. */
function commercialBaume(solids: number, dextroseEquivalent: number): number {
  const s = glucoseSyrup(solids, dextroseEquivalent);
  const solution = {
    water: s.water!,
    glucose: s.glucose!,
    maltose: s.maltose!,
    higherSaccharides: s.higher_saccharides!,
    higherSaccharidesMol: s.higher_saccharides_mol!,
  };
  return baume(solutionDensity(solution, 60) / 999.04) + 1;
}

export const syrupBaumeModel = defineModel({
  id: 'glucose_syrup.solids_from_baume',
  title: 'Dry solids of a glucose syrup from commercial Baumé',
  about: 'Commercial Baumé: 145 - 145/SG read at 60 °C against water at 15.6 °C, plus 1; density of the syrup by its composition.',
  inputs: [
    { key: 'baume', unit: '°Bé', meaning: 'commercial degrees Baumé', possible: [2, 48], fitted: [28, 46] },
    { key: 'dextrose_equivalent', unit: '1', meaning: 'per cent of the dry substance', possible: [3, 100], fitted: [20, 70], default: 42 },
  ],
  outputs: [
    { key: 'solids', unit: '1', meaning: 'dry substance, mass fraction' },
    { key: 'specific_gravity', unit: '1', meaning: '145/(145 - Bé), the hydrometer scale itself' },
  ],
  sources: ['baume-145', 'junk-pancoast-1973', 'crc-102-solutions'],
  standing: 'secondhand',
  run: ({ baume: degrees, dextrose_equivalent }) => ({
    solids: within(
      rootOfIncreasing((solids) => commercialBaume(solids, dextrose_equivalent) - degrees, 0, 0.95),
      0.008,
    ),
    specific_gravity: gravityOfBaume(degrees),
  }),
});
