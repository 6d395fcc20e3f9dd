import { NoSolution, requireRange } from '../errors.js';
import { sucroseApparentVolume, waterDensity } from '../process/sugar-solution.js';
import type { Celsius, MassFraction } from '../units.js';
import { refractionRatio, specificRefraction } from './data/refraction.js';
import { crowdedVolume, dissolvedKeys, volumeRatios } from './density.js';
import { secantRoot } from './secant.js';
import { dissolvedSolids, type Solution } from './solution.js';

const { sucrose, water, perKelvin } = specificRefraction.values;
const ratios = refractionRatio.values;

export const refractionTemperatures = [5, 100] as const;

/** Lorentz and Lorenz: r = (n² - 1)/(n² + 2)/ρ, turned round. */
function indexOf(refraction: number, density: number): number {
  const L = (refraction * density) / 1000;
  return Math.sqrt((1 + 2 * L) / (1 - L));
}

function waterRefraction(t: Celsius): number {
  const d = t - 20;
  return water[0] + d * (water[1] + d * water[2]);
}

/** Refractive index of water, 589 nm. */
export function waterRefractiveIndex(t: Celsius): number {
  requireRange('temperature_c', t, refractionTemperatures, 'icumsa-sps-3');
  return indexOf(waterRefraction(t), waterDensity(t));
}

/**
 * Refractive index at 589 nm of a mixed syrup: specific refractions add by mass, and the density closes it (Lorentz and Lorenz).
 *
 * @param t - °C, 5 to 100; fitted 15 to 60
 * @returns refractive index; rises with solids, falls with temperature
 * @throws OutOfRange
 * @see icumsa-sps-3, iso-1743
 * @example refractiveIndex({ water: 40, sucrose: 60 }, 20) // 1.4419
 */
export function refractiveIndex(solution: Solution, t: Celsius): number {
  requireRange('temperature_c', t, refractionTemperatures, 'icumsa-sps-3');
  const solids = dissolvedSolids(solution);
  return indexAt(kindOf(solution, solids), solids / (solids + solution.water), t);
}

/** How the solids of a solution differ from sucrose: specific refraction and apparent volume over its own. */
interface Kind {
  readonly refraction: number;
  readonly volume: number;
  /** Share of sodium chloride, whose volume depends on how strong its brine is. */
  readonly salt: number;
}

function kindOf(solution: Solution, solids: number): Kind {
  let refraction = 0;
  let volume = 0;
  for (const key of dissolvedKeys) {
    const share = solids > 0 ? (solution[key] ?? 0) / solids : 0;
    refraction += share * ratios[key];
    volume += share * volumeRatios[key];
  }
  return { refraction, volume, salt: solids > 0 ? (solution.salt ?? 0) / solids : 0 };
}

/** Refractive index at a mass fraction of solids of one kind. */
function indexAt(of: Kind, w: MassFraction, t: Celsius): number {
  const pure = (sucrose[0] + w * (sucrose[1] + w * sucrose[2])) * (1 + perKelvin * (t - 20));
  const specific = (1 - w) * waterRefraction(t) + w * of.refraction * pure;
  const salt = w * of.salt;
  const ratio = w * of.volume + (salt > 0 ? crowdedVolume(salt, 1 - w) : 0);
  const volume = (1 - w) / waterDensity(t) + (w > 0 ? ratio * sucroseApparentVolume(w, t) : 0);
  return indexOf(specific, 1 / volume);
}

/**
 * True solids of a syrup from its refractive index, for the solids at hand. `solution.water` is not read.
 *
 * @param index - measured at t
 * @returns mass fraction of solids
 * @throws NoSolution where no concentration of these solids has that index; OutOfRange
 */
export function solidsOfRefractiveIndex(solution: Solution, index: number, t: Celsius): MassFraction {
  requireRange('refractive_index', index, [1.3, 1.6], 'icumsa-sps-3');
  const bottom = waterRefractiveIndex(t);
  if (index <= bottom) {
    if (index < bottom - 0.0005) throw new NoSolution(`refractive index ${index} is below that of water at ${t} °C, ${bottom.toFixed(5)}`);
    return 0;
  }
  const kind = kindOf(solution, dissolvedSolids(solution));
  const top = indexAt(kind, 1, t);
  if (index > top) throw new NoSolution(`refractive index ${index} is above that of these solids without water, ${top.toFixed(4)}`);
  // The index of these solids rises nearly straight from that of water to their own.
  const guess = Math.min(0.999, (1.3 * (index - bottom)) / (1.3 * (index - bottom) + (top - index)));
  return secantRoot((solids) => indexAt(kind, solids, t) - index, guess, guess + 0.005, 1e-6, 1, 1e-7);
}

const pureSucrose: Solution = { water: 0, sucrose: 1 };

/**
 * What a refractometer with a sucrose scale shows for a syrup.
 *
 * @param compensated - true: the instrument corrects to 20 °C as for sucrose; false: the scale of 20 °C is read at t
 * @returns reading as a fraction (0.8 for 80 °Brix)
 */
export function refractometerReading(solution: Solution, t: Celsius, compensated: boolean): MassFraction {
  return solidsOfRefractiveIndex(pureSucrose, refractiveIndex(solution, t), compensated ? t : 20);
}

/**
 * True solids of a syrup from the reading of a refractometer with a sucrose scale.
 *
 * @param reading - fraction, 0 to 0.95
 * @throws OutOfRange, NoSolution
 */
export function solidsOfReading(solution: Solution, reading: MassFraction, t: Celsius, compensated: boolean): MassFraction {
  requireRange('reading', reading, [0, 0.95], 'icumsa-sps-3');
  if (reading === 0) return 0;
  const index = refractiveIndex({ water: 1 - reading, sucrose: reading }, compensated ? t : 20);
  return solidsOfRefractiveIndex(solution, index, t);
}
