import { at, type Composition } from '../composition.js';
import { molarMasses } from './data/binary.js';
import type { Solute } from './binary.js';

/**
 * The dissolved phase: water and what is dissolved in it, as masses on any one basis (kg per kg of bar, g per 100 g of water …).
 * What is left out is 0.
 */
export interface Solution {
  readonly water: number;
  readonly sucrose?: number;
  readonly glucose?: number;
  readonly fructose?: number;
  readonly maltose?: number;
  readonly lactose?: number;
  /** Glucose polymers of three units and more. */
  readonly higherSaccharides?: number;
  /** Moles of them: mol per kg where the masses are kg. 0 or left out: chains of six units. */
  readonly higherSaccharidesMol?: number;
  /** Polyols not told apart, taken as sorbitol. */
  readonly polyols?: number;
  readonly glycerol?: number;
  readonly erythritol?: number;
  readonly xylitol?: number;
  readonly mannitol?: number;
  readonly maltitol?: number;
  readonly salt?: number;
  readonly potassiumChloride?: number;
  readonly calciumChloride?: number;
  /** Milk salts. */
  readonly ash?: number;
  readonly organicAcids?: number;
}

/**
 * Dissolved phase of a composition, on the basis of the whole. Fat, protein, starch, fibre and 'other' are left out: they hold water by
 * sorption. Every sugar is taken as dissolved: take crystals out of the composition first. Ash counts as milk salts.
 */
export function solutionOf(composition: Composition): Solution {
  return {
    water: composition[at.water]!,
    sucrose: composition[at.sucrose]!,
    glucose: composition[at.glucose]!,
    fructose: composition[at.fructose]!,
    maltose: composition[at.maltose]!,
    lactose: composition[at.lactose]!,
    higherSaccharides: composition[at.higher_saccharides]!,
    higherSaccharidesMol: composition[at.higher_saccharides_mol]!,
    polyols: composition[at.polyols]!,
    salt: composition[at.salt]!,
    ash: composition[at.ash]!,
    organicAcids: composition[at.organic_acids]!,
  };
}

/** Mass of what is dissolved. */
export function dissolvedSolids(of: Solution): number {
  let sum = (of.higherSaccharides ?? 0) + (of.salt ?? 0) + (of.potassiumChloride ?? 0) + (of.calciumChloride ?? 0) + (of.ash ?? 0);
  for (const [key] of molecules) sum += of[key] ?? 0;
  return sum;
}

/** The same solids with another mass of water. */
export function withWater(of: Solution, water: number): Solution {
  return { ...of, water };
}

type Molecule = Exclude<
  keyof Solution,
  'water' | 'higherSaccharides' | 'higherSaccharidesMol' | 'salt' | 'potassiumChloride' | 'calciumChloride' | 'ash'
>;

/** Keys of a solution, the equation each follows, and g/mol. */
export const molecules: readonly (readonly [key: Molecule, solute: Solute, molarMass: number])[] = (
  [
    ['sucrose', 'sucrose'],
    ['glucose', 'glucose'],
    ['fructose', 'fructose'],
    ['maltose', 'maltose'],
    ['lactose', 'lactose'],
    ['polyols', 'sorbitol'],
    ['glycerol', 'glycerol'],
    ['erythritol', 'erythritol'],
    ['xylitol', 'xylitol'],
    ['mannitol', 'mannitol'],
    ['maltitol', 'maltitol'],
    ['organicAcids', 'organic_acids'],
  ] as const
).map(([key, solute]) => [key, solute, molarMasses.values[solute]] as const);

/** Chain length taken where the moles of higher saccharides are not known. */
export const assumedChain = 6;

/** g/mol of a chain of glucose units. */
export function saccharideMolarMass(units: number): number {
  return molarMasses.values.water + units * molarMasses.values.anhydroglucose;
}

/** Moles (per 1000 g-basis: mass unit over g/mol) and mean chain length of the higher saccharides. */
export function higherSaccharides(of: Solution): { readonly moles: number; readonly units: number } {
  const mass = of.higherSaccharides ?? 0;
  if (mass <= 0) return { moles: 0, units: assumedChain };
  const given = (of.higherSaccharidesMol ?? 0) / 1000;
  const moles = given > 0 ? given : mass / saccharideMolarMass(assumedChain);
  return { moles, units: (mass / moles - molarMasses.values.water) / molarMasses.values.anhydroglucose };
}
