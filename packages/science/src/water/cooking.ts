import { latentHeatOfVaporisation } from '../core/latentHeat.js';
import { requireRange } from '../errors.js';
import type { Celsius, JoulePerKilogram, JoulePerKilogramKelvin, Pascal } from '../units.js';
import { boilingPoint, waterForBoiling } from './boiling.js';
import { syrupSpecificHeat } from './data/cooking.js';
import { rootOfIncreasing } from './interpolate.js';
import { dissolvedSolids, withWater, type Solution } from './solution.js';

/** J/(kg K): water 4186, dissolved sugar 1673 + 7.5 t. */
export function solutionSpecificHeat(of: Solution, t: Celsius): JoulePerKilogramKelvin {
  const solids = dissolvedSolids(of);
  const { water, sugar } = syrupSpecificHeat.values;
  return (of.water * water + solids * (sugar[0] + sugar[1] * t)) / (of.water + solids);
}

export interface Flash {
  /** The syrup after its steam has left. */
  readonly syrup: Solution;
  readonly temperature: Celsius;
  /** Water driven off, in the unit of the syrup. */
  readonly steam: number;
}

/**
 * Flashing: a hot syrup enters a lower pressure, boils by its own heat and cools to its boiling point there. Fat and protein may ride
 * along as `passengers` (mass and specific heat) that give heat but no water.
 *
 * @param t - temperature before, °C
 * @param pressure - in the chamber, absolute, Pa
 * @returns the same syrup where it does not boil there
 * @throws OutOfRange, NoSolution
 */
export function flash(syrup: Solution, t: Celsius, pressure: Pascal, passengers = { mass: 0, specificHeat: 2000 }): Flash {
  const at = boilingPoint(syrup, pressure);
  if (at >= t) return { syrup, temperature: t, steam: 0 };
  const solids = dissolvedSolids(syrup);
  const short = (steam: number): number => {
    const left = withWater(syrup, syrup.water - steam);
    const end = boilingPoint(left, pressure);
    const middle = (t + end) / 2;
    const mass = solids + syrup.water - steam / 2;
    const heat = mass * solutionSpecificHeat(withWater(syrup, syrup.water - steam / 2), middle) + passengers.mass * passengers.specificHeat;
    return steam * latentHeatOfVaporisation(middle) - heat * (t - end);
  };
  // Boiling at t at the chamber pressure would leave the least water there can be.
  const most = syrup.water - waterForBoiling(syrup, t, pressure);
  const steam = rootOfIncreasing(short, 0, most);
  const left = withWater(syrup, syrup.water - steam);
  return { syrup: left, temperature: boilingPoint(left, pressure), steam };
}

/**
 * End temperature that gives the same solids at another pressure: the set point on a day of low pressure, or under vacuum.
 *
 * @param t - end temperature at `from`, °C
 */
export function sameSolidsTemperature(solids: Solution, t: Celsius, from: Pascal, to: Pascal): Celsius {
  return boilingPoint(withWater(solids, waterForBoiling(solids, t, from)), to);
}

/**
 * Heat to cook a syrup: warm it to the end temperature and drive off the water, per kg of feed; heat of dilution left out (below 1 %).
 *
 * @param feed - the syrup fed
 * @param water - mass left in the same solids
 */
export function cookingHeat(feed: Solution, water: number, from: Celsius, to: Celsius): JoulePerKilogram {
  requireRange('water', water, [0, feed.water], 'a mass');
  const mass = dissolvedSolids(feed) + feed.water;
  const middle = (from + to) / 2;
  return solutionSpecificHeat(feed, middle) * (to - from) + ((feed.water - water) / mass) * latentHeatOfVaporisation(Math.max(0, to));
}
