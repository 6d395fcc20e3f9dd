import { defineModel } from '../../model.js';
import { cornSyrup77 } from '../data/viscosity.js';
import { dissolvedInputs, mixtureOf, waterInput } from '../mixture.js';
import { dissolvedSolids, type Solution } from '../solution.js';
import { sucroseEquivalent, sucroseViscosity, syrupViscosity, thickest, viscosityTemperatures } from '../viscosity.js';

const temperature = {
  key: 'temperature_c',
  unit: '°C',
  meaning: 'temperature',
  possible: viscosityTemperatures,
  fitted: [10, 100],
  default: 20,
} as const;
const viscosity = { key: 'viscosity_pa_s', unit: 'Pa·s', meaning: 'dynamic viscosity, Newtonian' } as const;
/** 8 % to 74 %, then twice as wide for every 4 points; below 10 °C the equation runs 10 to 15 % above the old tables at 0 °C. */
const spread = (solids: number, t: number): number => (1.08 + 0.01 * Math.max(0, 10 - t)) * 2 ** Math.max(0, (solids - 0.76) / 0.04);
/**
 * Thickening powers were taken from solutions of 10 to 58 %: above half solids what is not sucrose adds up to a factor of 1.8 at 80 %. It
 * counts where it is more than what the thick sucrose solution itself leaves open.
 */
function syrupSpread(solution: Solution, equivalent: number, t: number): number {
  const dry = dissolvedSolids(solution);
  const others = dry > 0 ? 1 - (solution.sucrose ?? 0) / dry : 0;
  const carried = 1.08 * (1 + 0.8 * others * Math.max(0, (dry / (dry + solution.water) - 0.5) / 0.3));
  return 1.15 * Math.max(spread(equivalent, t), carried);
}
const around = (value: number, factor: number) => ({ value, low: value / factor, high: value * factor });

export const sucroseViscosityModel = defineModel({
  id: 'sucrose.viscosity',
  title: 'Viscosity of a sucrose solution',
  about: 'log10 η = 22.46 x - 0.114 + φ (1.1 + 43.1 x^1.25), x = W/(1900 - 18 W), φ = (30 - t)/(91 + t).',
  inputs: [{ key: 'solids', unit: '1', meaning: 'sucrose, mass fraction', possible: [0, thickest], fitted: [0, 0.78] }, temperature],
  outputs: [viscosity],
  sources: ['genotelle-bubnik'],
  standing: 'found',
  run: ({ solids, temperature_c }) => ({ viscosity_pa_s: around(sucroseViscosity(solids, temperature_c), spread(solids, temperature_c)) }),
});

export const syrupViscosityModel = defineModel({
  id: 'syrup.viscosity',
  title: 'Viscosity of a mixed syrup',
  about:
    'That of the sucrose solution equal to it in thickening: each solute counts as so much sucrose. Without air, crystals, fat and protein.',
  inputs: [waterInput, ...dissolvedInputs, temperature],
  outputs: [viscosity, { key: 'sucrose_equivalent', unit: '1', meaning: 'sucrose of equal thickness, mass fraction' }],
  sources: ['genotelle-bubnik', 'crc-102-solutions', 'corn-syrup-77-density', 'corn-syrup-viscosities'],
  standing: 'secondhand',
  run: (x) => {
    const solution = mixtureOf(x);
    const equivalent = sucroseEquivalent(solution);
    return {
      viscosity_pa_s: around(syrupViscosity(solution, x.temperature_c), syrupSpread(solution, equivalent, x.temperature_c)),
      sucrose_equivalent: equivalent,
    };
  },
  remarks: (x) => {
    const equivalent = sucroseEquivalent(mixtureOf(x));
    if (equivalent <= 0.78) return [];
    if (equivalent <= 0.86) {
      return [{ code: 'THICK_SYRUP', message: 'a syrup as thick as this is followed more closely by viscosity.concentrated_syrup' }];
    }
    return [
      {
        code: 'OUTSIDE_FITTED_RANGE',
        message: `as thick as ${(100 * equivalent).toFixed(1)} % sucrose; the sources cover up to 86 %. Try viscosity.concentrated_syrup`,
      },
    ];
  },
});

export const cornSyrupViscosityModel = defineModel({
  id: 'glucose_syrup.viscosity_77',
  title: 'Viscosity of a glucose syrup of 77 % solids',
  about: 'η = 15603 t^-2.44, as its authors fitted it.',
  inputs: [{ ...temperature, possible: [10, 80], fitted: cornSyrup77.valid.temperature_c, default: 25 }],
  outputs: [viscosity],
  sources: ['corn-syrup-77-density'],
  standing: 'found',
  run: ({ temperature_c }) => ({ viscosity_pa_s: around(cornSyrup77.values.a * temperature_c ** cornSyrup77.values.b, 1.2) }),
});
