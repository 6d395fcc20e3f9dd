import { requireRange } from '../errors.js';
import { partialVolumeRatio } from '../process/data/sugar-solution.js';
import { sucroseApparentVolume, sucroseSolutionDensity, waterDensity } from '../process/sugar-solution.js';
import type { Celsius, KilogramPerCubicMetre, MassFraction } from '../units.js';
import { volumeRatio } from './data/refraction.js';
import { dissolvedSolids, type Solution } from './solution.js';

const sugars = partialVolumeRatio.values;
const others = volumeRatio.values;

/** Apparent specific volume over that of sucrose, by key of a solution. */
export const volumeRatios = {
  sucrose: sugars.sucrose,
  glucose: sugars.glucose,
  fructose: sugars.fructose,
  maltose: sugars.maltose,
  lactose: sugars.lactose,
  higherSaccharides: sugars.higher_saccharides,
  polyols: sugars.polyols,
  glycerol: others.glycerol,
  erythritol: others.erythritol,
  xylitol: others.xylitol,
  mannitol: others.mannitol,
  maltitol: others.maltitol,
  organicAcids: others.organicAcids,
  salt: others.salt,
  potassiumChloride: others.potassiumChloride,
  calciumChloride: others.calciumChloride,
  ash: others.ash,
} as const;
export type DissolvedKey = keyof typeof volumeRatios;
export const dissolvedKeys = Object.keys(volumeRatios) as DissolvedKey[];

/** What sodium chloride takes up beyond its ratio, in masses of sucrose of that volume: more, the stronger its brine. */
export function crowdedVolume(salt: number, water: number): number {
  return (others.saltCrowded * salt * salt) / (salt + water);
}

export const densityTemperatures = [0, 130] as const;

/**
 * Density of a mixed syrup without air: the volumes of water and of each solute add, every solute at its share of the apparent volume
 * that sucrose has in a solution of the same concentration.
 *
 * @param t - °C, 0 to 130; fitted 0 to 100
 * @returns kg/m³
 * @throws OutOfRange
 * @see icumsa-sucrose-density, crc-102-solutions
 */
export function solutionDensity(solution: Solution, t: Celsius): KilogramPerCubicMetre {
  requireRange('temperature_c', t, densityTemperatures, 'icumsa-sucrose-density');
  const solids = dissolvedSolids(solution);
  const total = solids + solution.water;
  let equivalent = 0;
  for (const key of dissolvedKeys) equivalent += (solution[key] ?? 0) * volumeRatios[key];
  const salt = solution.salt ?? 0;
  if (salt > 0) equivalent += crowdedVolume(salt, solution.water);
  return total / (solution.water / waterDensity(t) + (solids > 0 ? equivalent * sucroseApparentVolume(solids / total, t) : 0));
}

/** Specific gravity: density over that of water, both at 20 °C. */
export function specificGravity(brix: MassFraction): number {
  return sucroseSolutionDensity(brix, 20) / waterDensity(20);
}

/**
 * Degrees Brix (as a fraction) of the sucrose solution that has a density: the inverse of the ICUMSA polynomial.
 *
 * @param density - kg/m³
 * @param t - °C, 0 to 100
 * @throws OutOfRange where no solution of 0 to 95 % has that density
 */
export function brixOfDensity(density: KilogramPerCubicMetre, t: Celsius): MassFraction {
  requireRange('temperature_c', t, [0, 100], 'icumsa-sucrose-density');
  let low = 0;
  let high = 0.95;
  requireRange(
    'density_kg_m3',
    density,
    [sucroseSolutionDensity(low, t) - 0.05, sucroseSolutionDensity(high, t)],
    'icumsa-sucrose-density',
  );
  for (let step = 0; step < 50; step++) {
    const middle = (low + high) / 2;
    if (sucroseSolutionDensity(middle, t) < density) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Degrees Baumé, modulus 145, of a specific gravity (20/20 °C for sugar, 60/60 °F for the trade in syrups). */
export function baume(gravity: number): number {
  requireRange('specific_gravity', gravity, [0.9, 2], 'baume-145');
  return 145 - 145 / gravity;
}

/** Specific gravity of a degree Baumé. */
export function gravityOfBaume(degrees: number): number {
  requireRange('baume', degrees, [-16, 72], 'baume-145');
  return 145 / (145 - degrees);
}
