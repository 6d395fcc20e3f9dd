import type { Check } from '../../check.js';
import { molarMasses } from '../data/binary.js';
import { checksOf, type Origin } from './row.js';

/** Values of handbooks that were not looked at while the models were made, unless a note says so. */

const isopiestic: Origin = {
  kind: 'measured',
  source: 'robinson-stokes-1959',
  standing: 'memory',
  note: 'isopiestic osmotic coefficients',
};
const cold: Origin = { kind: 'measured', source: 'crc-102-solutions', standing: 'memory', note: 'not used in fitting' };
const crc: Origin = { kind: 'measured', source: 'crc-102-solutions', standing: 'memory' };
const m = molarMasses.values;

/** Activity at a molality from the osmotic coefficient; ions per formula. */
function osmotic(solute: string, molarMass: number, molality: number, phi: number, tolerance: number, ions = 1) {
  const solids = (molality * molarMass) / (1000 + molality * molarMass);
  return [
    `${solute}_${molality}_molal`,
    { solute, solids, temperature_c: 25 },
    Math.exp(-0.018015 * ions * molality * phi),
    tolerance,
  ] as const;
}

const single = 'solution.water_activity';
const ofSolution = (solute: string, solids: number) => ({ solute, solids });
const saturatedChloride = (solids: number) => ({ solute: 'calcium_chloride', solids, temperature_c: 25 });
const sorbitol70 = (solids: number) => ({ water: 1 - solids, sorbitol: solids, temperature_c: 20 });
const brix = (reading_brix: number, temperature_c: number) => ({
  sucrose: 1,
  reading_brix,
  temperature_c,
  temperature_compensated: false,
});
const elevation = (percent: number) => ({ solids: percent / 100 });

export const handbookChecks: readonly Check[] = [
  ...checksOf(single, 'water_activity', isopiestic, [
    osmotic('sucrose', m.sucrose, 0.5, 1.041, 0.0005),
    osmotic('sucrose', m.sucrose, 2, 1.189, 0.0015),
    osmotic('sucrose', m.sucrose, 4, 1.375, 0.003),
    osmotic('sucrose', m.sucrose, 5, 1.45, 0.003),
    osmotic('salt', m.sodiumChloride, 1, 0.9355, 0.0005, 2),
    osmotic('salt', m.sodiumChloride, 3, 1.0453, 0.0015, 2),
    osmotic('salt', m.sodiumChloride, 5, 1.1916, 0.0025, 2),
    osmotic('glucose', m.glucose, 1, 1.017, 0.001),
    osmotic('glucose', m.glucose, 3, 1.063, 0.002),
    osmotic('sorbitol', m.sorbitol, 1, 1.021, 0.001),
    osmotic('sorbitol', m.sorbitol, 3, 1.076, 0.002),
    osmotic('xylitol', m.xylitol, 1, 1.02, 0.001),
    osmotic('maltose', m.maltose, 1, 1.07, 0.001),
  ]),
  ...checksOf(single, 'water_activity', { ...isopiestic, kind: 'code', note: 'a row of the table in use' }, [
    osmotic('potassium_chloride', m.potassiumChloride, 1, 0.897, 0.0002, 2),
    osmotic('calcium_chloride', m.calciumChloride, 3, 1.779, 0.0005, 3),
  ]),
  ...checksOf(single, 'water_activity', { kind: 'measured', source: 'saturated-solutions', standing: 'memory', note: 'calibration salt' }, [
    ['saturated_potassium_chloride', { solute: 'potassium_chloride', solids: 0.264, temperature_c: 25 }, 0.843, 0.003],
    ['saturated_calcium_chloride', saturatedChloride(0.453), 0.285, 0.012],
  ]),
  ...checksOf('solution.freezing_point', 'depression_k', cold, [
    ['salt_15', ofSolution('salt', 0.15), 10.89, 0.15],
    ['glucose_10', ofSolution('glucose', 0.1), 1.16, 0.05],
    ['sucrose_10', ofSolution('sucrose', 0.1), 0.63, 0.03],
    ['sucrose_36', ofSolution('sucrose', 0.36), 3.59, 0.06],
    ['glycerol_30', ofSolution('glycerol', 0.3), 9.6, 0.25],
  ]),
  ...checksOf('solution.freezing_point', 'depression_k', { ...crc, note: 'used in fitting its change with temperature' }, [
    ['salt_10', ofSolution('salt', 0.1), 6.56, 0.1],
    ['salt_20', ofSolution('salt', 0.2), 16.46, 0.2],
  ]),
  ...checksOf('solution.boiling_point', 'boiling_point_c', { ...crc, note: 'saturated; used in fitting' }, [
    ['salt_saturated', ofSolution('salt', 0.284), 108.7, 0.3],
  ]),
  ...checksOf(
    'sucrose.boiling_point',
    'elevation_k',
    { kind: 'published', source: 'thieme-1934', standing: 'memory', note: 'sugar-works table as remembered' },
    [
      ['works_30', elevation(30), 0.6, 0.15],
      ['works_50', elevation(50), 1.8, 0.25],
      ['works_65', elevation(65), 3.9, 0.4],
      ['works_70', elevation(70), 5.2, 0.5],
      ['works_94', elevation(94), 30.5, 5],
    ],
  ),
  ...checksOf(
    'syrup.solids_from_boiling_point',
    'moisture',
    {
      kind: 'published',
      source: 'hard-candy-notes',
      standing: 'found',
      note: 'boiled sweets cooked to 148 to 152 °C hold 3 to 4 % of water; 58 parts of sucrose to 42 of syrup assumed',
    },
    [['hard_candy_150', { sucrose: 58, glucose_syrup_solids: 42, temperature_c: 150, pressure_pa: 101_325 }, [0.03, 0.04], 0.004]],
  ),
  ...checksOf(
    'sugar.solubility',
    'solids',
    { kind: 'published', source: 'erythritol-page', standing: 'found', note: 'gives 36 to 37 % at 20 and 25 °C, 75 % at 80 °C' },
    [
      ['erythritol_25', { sugar: 'erythritol', temperature_c: 25 }, 0.36, 0.02],
      ['erythritol_80', { sugar: 'erythritol', temperature_c: 80 }, 0.75, 0.02],
    ],
  ),
  ...checksOf('syrup.density', 'density_kg_m3', { ...crc, note: 'not used, but from the same handbook' }, [
    ['glucose_50', { water: 50, glucose: 50 }, 1227, 3],
    ['glycerol_50', { water: 50, glycerol: 50 }, 1126.3, 2.5],
    ['glycerol_80', { water: 20, glycerol: 80 }, 1208.5, 3],
    ['maltose_30', { water: 70, maltose: 30 }, 1126, 3],
  ]),
  ...checksOf('syrup.density', 'density_kg_m3', { ...crc, note: 'the room that salt takes was taken from it' }, [
    ['salt_10', { water: 90, salt: 10 }, 1070.7, 1.5],
    ['salt_20', { water: 80, salt: 20 }, 1147.8, 3],
  ]),
  ...checksOf(
    'syrup.density',
    'density_kg_m3',
    { kind: 'measured', source: 'sorbitol-70-analyses', standing: 'found', note: 'lots hold 6 to 7 % of other, denser sugars' },
    [
      ['sorbitol_70', sorbitol70(0.702), 1303, 12],
      ['sorbitol_70_second', sorbitol70(0.705), 1301, 12],
    ],
  ),
  ...checksOf(
    'syrup.refractive_index',
    'refractive_index',
    {
      kind: 'measured',
      source: 'sorbitol-70-analyses',
      standing: 'found',
      note: 'looked at when atomic refractions took the place of remembered values',
    },
    [
      ['sorbitol_70', sorbitol70(0.702), 1.4595, 0.0015],
      ['sorbitol_70_second', sorbitol70(0.705), 1.4601, 0.0015],
    ],
  ),
  ...checksOf(
    'syrup.refractive_index',
    'refractive_index',
    { kind: 'published', source: 'fructose-syrup-viscosities', standing: 'memory', note: 'data sheets at 20 °C, recalled; not used' },
    [
      ['fructose_syrup_42', { water: 29, fructose: 29.8, glucose: 37.6, maltose: 3.6 }, 1.4643, 0.0008],
      ['fructose_syrup_55', { water: 23, fructose: 42.4, glucose: 31.6, maltose: 3 }, 1.4789, 0.0008],
    ],
  ),
  ...checksOf('syrup.refractive_index', 'refractive_index', { ...crc, note: 'the room that salt takes was taken from its density' }, [
    ['salt_20', { water: 80, salt: 20 }, 1.3684, 0.0015],
  ]),
  ...checksOf('syrup.refractive_index', 'refractive_index', { ...crc, note: 'not used' }, [
    ['fructose_40', { water: 60, fructose: 40 }, 1.3988, 0.0015],
    ['glucose_30', { water: 70, glucose: 30 }, 1.3805, 0.0015],
    ['maltose_30', { water: 70, maltose: 30 }, 1.3812, 0.0015],
  ]),
  ...checksOf(
    'syrup.solids_from_refractometer',
    'solids',
    {
      kind: 'published',
      source: 'icumsa-temperature-correction',
      standing: 'memory',
      note: 'reading plus the correction of the international table; not used',
    },
    [
      ['30_brix_at_25', brix(30, 25), 0.3038, 0.0008],
      ['30_brix_at_30', brix(30, 30), 0.3078, 0.0008],
      ['50_brix_at_30', brix(50, 30), 0.508, 0.0008],
      ['70_brix_at_30', brix(70, 30), 0.7081, 0.0008],
      ['10_brix_at_30', brix(10, 30), 0.1071, 0.0008],
    ],
  ),
  ...checksOf(
    'sucrose.viscosity',
    'viscosity_pa_s',
    {
      kind: 'published',
      source: 'sucrose-viscosity-report',
      standing: 'secondhand',
      note: 'literature values quoted in a laboratory report',
    },
    [
      ['30_at_40', { solids: 0.3, temperature_c: 40 }, 1.833e-3, 0.11e-3],
      ['30_at_60', { solids: 0.3, temperature_c: 60 }, 1.2e-3, 0.08e-3],
      ['65_at_40', { solids: 0.65, temperature_c: 40 }, 44.36e-3, 3.5e-3],
      ['65_at_60', { solids: 0.65, temperature_c: 60 }, 17.9e-3, 1.4e-3],
    ],
  ),
  ...checksOf('syrup.viscosity', 'viscosity_pa_s', { ...crc, note: 'not used' }, [
    ['glucose_30', { water: 70, glucose: 30 }, 2.998e-3, 0.15e-3],
    ['glucose_40', { water: 60, glucose: 40 }, 5.48e-3, 0.3e-3],
    ['maltose_30', { water: 70, maltose: 30 }, 3.24e-3, 0.2e-3],
    ['salt_10', { water: 90, salt: 10 }, 1.193e-3, 0.06e-3],
    ['salt_20', { water: 80, salt: 20 }, 1.557e-3, 0.08e-3],
    ['glycerol_50', { water: 50, glycerol: 50 }, 6e-3, 0.5e-3],
  ]),
  ...checksOf(
    'sugar.diffusivity_in_water',
    'diffusivity_m2_s',
    { kind: 'code', source: 'ribeiro-2006', standing: 'found', note: 'the table in use' },
    [
      ['sucrose_25', { sugar: 'sucrose', temperature_c: 25 }, 0.523e-9, 1e-12],
      ['glucose_25', { sugar: 'glucose', temperature_c: 25 }, 0.679e-9, 1e-12],
      ['fructose_25', { sugar: 'fructose', temperature_c: 25 }, 0.686e-9, 1e-12],
      ['lactose_55', { sugar: 'lactose', temperature_c: 55 }, 1.056e-9, 1e-12],
    ],
  ),
  ...checksOf(
    'sugar.diffusivity_in_water',
    'diffusivity_m2_s',
    { kind: 'measured', source: 'gosting-morris-1949', standing: 'memory', note: 'another method; 1 °C lies 24 K below the table' },
    [
      ['sucrose_25_interference', { sugar: 'sucrose', temperature_c: 25 }, 0.5226e-9, 5e-12],
      ['sucrose_1', { sugar: 'sucrose', temperature_c: 1 }, 0.2423e-9, 12e-12],
      ['glucose_25_interference', { sugar: 'glucose', temperature_c: 25 }, 0.673e-9, 12e-12],
    ],
  ),
];
