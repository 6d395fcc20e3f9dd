import { BadInput } from '../errors.js';
import type { InputSpec, ModelFinding } from '../model.js';
import { glucoseSyrup } from './glucoseSyrup.js';
import { dissolvedSolids, type Solution } from './solution.js';

const mass = { unit: 'kg', possible: [0, 1e9], default: 0 } as const;

/** What is dissolved, as masses in any one unit; only their ratio counts. */
export const dissolvedInputs = [
  { ...mass, key: 'sucrose', meaning: 'dissolved sucrose' },
  { ...mass, key: 'glucose', meaning: 'glucose (dextrose), anhydrous' },
  { ...mass, key: 'fructose', meaning: 'fructose' },
  { ...mass, key: 'maltose', meaning: 'maltose, anhydrous' },
  { ...mass, key: 'lactose', meaning: 'dissolved lactose, anhydrous' },
  {
    ...mass,
    key: 'glucose_syrup_solids',
    meaning: 'dry substance of a glucose syrup, spread over its saccharides by its dextrose equivalent',
  },
  {
    ...mass,
    key: 'higher_saccharides',
    meaning: 'chains of three glucose units and more, as long as in a glucose syrup of that dextrose equivalent',
  },
  {
    key: 'dextrose_equivalent',
    unit: '1',
    meaning: 'dextrose equivalent of the glucose syrup, per cent of dry substance',
    possible: [3, 100],
    fitted: [20, 70],
    default: 42,
  },
  { ...mass, key: 'glycerol', meaning: 'glycerol' },
  { ...mass, key: 'sorbitol', meaning: 'sorbitol' },
  { ...mass, key: 'xylitol', meaning: 'xylitol' },
  { ...mass, key: 'erythritol', meaning: 'erythritol' },
  { ...mass, key: 'mannitol', meaning: 'mannitol' },
  { ...mass, key: 'maltitol', meaning: 'maltitol' },
  { ...mass, key: 'salt', meaning: 'sodium chloride' },
  { ...mass, key: 'potassium_chloride', meaning: 'potassium chloride' },
  { ...mass, key: 'calcium_chloride', meaning: 'calcium chloride, anhydrous' },
  { ...mass, key: 'ash', meaning: 'milk salts' },
  { ...mass, key: 'organic_acids', meaning: 'organic acids, as citric' },
] as const satisfies readonly InputSpec[];

export const waterInput = { key: 'water', unit: 'kg', meaning: 'water', possible: [0, 1e9] } as const satisfies InputSpec;

type Dissolved = { readonly [K in (typeof dissolvedInputs)[number]['key']]: number };

/** Reads the inputs above. @throws BadInput when everything is 0 */
export function mixtureOf(x: Dissolved & { readonly water?: number }): Solution {
  const spectrum = glucoseSyrup(1, x.dextrose_equivalent);
  const share = spectrum.higher_saccharides!;
  const perKilogram = share > 0 ? spectrum.higher_saccharides_mol! / share : 0;
  const chains = x.higher_saccharides + x.glucose_syrup_solids * share;
  const solution: Solution = {
    water: x.water ?? 0,
    sucrose: x.sucrose,
    glucose: x.glucose + x.glucose_syrup_solids * spectrum.glucose!,
    fructose: x.fructose,
    maltose: x.maltose + x.glucose_syrup_solids * spectrum.maltose!,
    lactose: x.lactose,
    higherSaccharides: chains,
    higherSaccharidesMol: chains * perKilogram,
    glycerol: x.glycerol,
    polyols: x.sorbitol,
    xylitol: x.xylitol,
    erythritol: x.erythritol,
    mannitol: x.mannitol,
    maltitol: x.maltitol,
    salt: x.salt,
    potassiumChloride: x.potassium_chloride,
    calciumChloride: x.calcium_chloride,
    ash: x.ash,
    organicAcids: x.organic_acids,
  };
  if (dissolvedSolids(solution) + solution.water === 0) throw new BadInput('every mass is 0; give the water and at least one solute');
  return solution;
}

/** Choices of the single-solute models, and where each goes in a solution: trehalose as maltose, isomalt and lactitol as maltitol. */
export const soluteKeys = {
  sucrose: 'sucrose',
  glucose: 'glucose',
  fructose: 'fructose',
  maltose: 'maltose',
  lactose: 'lactose',
  glycerol: 'glycerol',
  sorbitol: 'polyols',
  xylitol: 'xylitol',
  erythritol: 'erythritol',
  mannitol: 'mannitol',
  maltitol: 'maltitol',
  salt: 'salt',
  potassium_chloride: 'potassiumChloride',
  calcium_chloride: 'calciumChloride',
  citric_acid: 'organicAcids',
  trehalose: 'maltose',
  isomalt: 'maltitol',
  lactitol: 'maltitol',
} as const;

export const soluteInput = {
  key: 'solute',
  unit: '1',
  kind: 'choice',
  meaning: 'what is dissolved; trehalose is taken as maltose, isomalt and lactitol as maltitol',
  choices: Object.keys(soluteKeys),
  default: 'sucrose',
} as const satisfies InputSpec;

/** One solute at a mass fraction of solids. */
export function singleSolution(solute: string, solids: number): Solution {
  return { water: 1 - solids, [soluteKeys[solute as keyof typeof soluteKeys]]: solids };
}

/** The finding that a syrup is drier than what the equations were fitted to; a mixture has no input of its own for its solids. */
export function driedBeyond(solution: Solution, limit: number): ModelFinding[] {
  const dry = dissolvedSolids(solution);
  const solids = dry / (dry + solution.water);
  if (!(solids > limit)) return [];
  return [{ code: 'OUTSIDE_FITTED_RANGE', message: `the syrup has ${solids.toFixed(4)} solids; the sources cover 0 to ${limit}` }];
}

/** Where the equations of the salts end: their saturated solutions at 25 °C, and a little more. */
const saturatedSalts: Readonly<Record<string, number>> = { salt: 0.3, potassium_chloride: 0.3, calcium_chloride: 0.47 };

/** The finding that a brine is stronger than any that was measured. */
export function brineBeyond(solute: string, solids: number): ModelFinding[] {
  const limit = saturatedSalts[solute];
  if (limit === undefined || solids <= limit) return [];
  return [{ code: 'OUTSIDE_FITTED_RANGE', message: `solids is ${solids}; ${solute.replace('_', ' ')} is saturated below ${limit}` }];
}
