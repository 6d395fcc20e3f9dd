import { requireRange } from '../errors.js';
import type { Celsius, MassFraction, PascalSecond } from '../units.js';
import { sucroseViscosityEquation, thickeningPower } from './data/viscosity.js';
import { dissolvedKeys } from './density.js';
import { dissolvedSolids, higherSaccharides, type Solution } from './solution.js';

const { a, b, c, d, e } = sucroseViscosityEquation.values;
const power = thickeningPower.values;
export const viscosityTemperatures = [0, 130] as const;
/** Share of sucrose at which the equation has become a guess. */
export const thickest = 0.92;

/**
 * Viscosity of a sucrose solution (Génotelle, Bubník).
 *
 * @param solids - mass fraction, 0 to 0.92; fitted to 0.8
 * @param t - °C, 0 to 130; fitted to 100
 * @returns Pa s; rises with solids, falls with temperature
 * @throws OutOfRange
 * @example sucroseViscosity(0.6, 20) // 0.0597
 */
export function sucroseViscosity(solids: MassFraction, t: Celsius): PascalSecond {
  requireRange('solids', solids, [0, thickest], 'genotelle-bubnik');
  requireRange('temperature_c', t, viscosityTemperatures, 'genotelle-bubnik');
  return sucroseViscosityBeyond(solids, t);
}

/** The same equation without its range: for a mix with another law that takes over there. Pole at -91 °C. */
export function sucroseViscosityBeyond(solids: MassFraction, t: Celsius): PascalSecond {
  const x = (100 * solids) / (1900 - 1800 * solids);
  const phi = (30 - t) / (91 + t);
  return 10 ** (a * x - b + phi * (c + d * x ** e) - 3);
}

/** Share of sucrose whose solution is as thick as this syrup. */
export function sucroseEquivalent(solution: Solution): MassFraction {
  const total = dissolvedSolids(solution) + solution.water;
  const { units } = higherSaccharides(solution);
  let sum = 0;
  for (const key of dissolvedKeys) {
    const factor = key === 'higherSaccharides' ? power.chainOfTwo + power.perFurtherUnit * (units - 2) : power[key];
    sum += factor * (solution[key] ?? 0);
  }
  return sum / total;
}

/**
 * Viscosity of a mixed syrup: that of the sucrose solution equal to it in thickening. Newtonian, without air, crystals, fat or protein.
 * Near and below 100 K above its glass transition a syrup thickens more steeply: use the glass models there.
 *
 * @throws OutOfRange above 92 % sucrose equivalent or outside 0 to 130 °C
 */
export function syrupViscosity(solution: Solution, t: Celsius): PascalSecond {
  return sucroseViscosity(sucroseEquivalent(solution), t);
}
