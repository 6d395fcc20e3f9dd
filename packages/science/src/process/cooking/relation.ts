import { atMoisture, type Composition } from '../../composition.js';
import { saturationTemperature } from '../../core/saturation.js';
import { requireRange } from '../../errors.js';
import { activityTemperatures } from '../../water/activity.js';
import { boilingPoint, waterForBoiling } from '../../water/boiling.js';
import { dissolvedSolids, solutionOf, type Solution } from '../../water/solution.js';
import { choiOkosSpecificHeat } from '../data/choi-okos.js';
import { polynomial } from '../polynomial.js';
import { specificHeat } from '../thermal.js';
import type { Celsius, JoulePerKilogramKelvin, Kelvin, MassFraction, Pascal } from '../../units.js';

/** What a cooker needs to know of a mass at its pressure; moisture is wet basis on everything in the cooker. */
export interface CookRelation {
  /** Temperature at which the mass of this moisture boils, °C. */
  readonly boiling: (moisture: MassFraction) => Celsius;
  /** Moisture of the mass that boils at this temperature. */
  readonly moisture: (t: Celsius) => MassFraction;
  readonly specificHeat: (moisture: MassFraction, t: Celsius) => JoulePerKilogramKelvin;
}

/**
 * Boiling of a mass by its composition: its syrup phase boils; fat, protein and starch go along.
 *
 * @param of - composition of what is in the cooker; its own water does not matter
 * @param pressure - absolute, Pa
 * @param offset - what the plant reads above the model, K; 0 until calibrated
 * @throws OutOfRange when nothing is dissolved, or for a pressure outside that of `boilingPoint`
 */
export function cookRelation(of: Composition, pressure: Pascal, offset: Kelvin = 0): CookRelation {
  const dry = atMoisture(of, 0);
  const solution = solutionOf(dry);
  requireRange('dissolved solids', dissolvedSolids(solution), [1e-6, 1], 'mass balance');
  const boiling = boilingTable(solution, pressure);
  return {
    boiling: (moisture) => boiling(moisture / (1 - moisture)) + offset,
    moisture: (t) => {
      const water = waterForBoiling(solution, t - offset, pressure);
      return water / (1 + water);
    },
    specificHeat: (moisture, t) => (1 - moisture) * specificHeat(dry, t) + moisture * polynomial(choiOkosSpecificHeat.values.water, t),
  };
}

const nodes = 120;
const firstElevation = 0.05;

/**
 * Boiling point against water per dry mass, from a table that is laid once: the logarithm of the elevation is a smooth curve over the
 * logarithm of the water, so cubic pieces follow it within a millikelvin.
 */
function boilingTable(solution: Solution, pressure: Pascal): (water: number) => Celsius {
  const pure = saturationTemperature(pressure);
  const lastElevation = activityTemperatures[1] - 1 - pure;
  const x = new Float64Array(nodes);
  const y = new Float64Array(nodes);
  for (let i = 0; i < nodes; i++) {
    y[i] = Math.log(firstElevation) + (i / (nodes - 1)) * Math.log(lastElevation / firstElevation);
    x[i] = Math.log(waterForBoiling(solution, pure + Math.exp(y[i]!), pressure));
  }
  return (water) => {
    const at = Math.log(water);
    if (!(at <= x[0]! && at >= x[nodes - 1]!)) return boilingPoint({ ...solution, water }, pressure);
    let low = 0;
    let high = nodes - 1;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (x[middle]! >= at) low = middle;
      else high = middle;
    }
    return pure + Math.exp(hermite(x, y, low, at));
  };
}

/** Cubic through points i and i + 1; slopes are the harmonic means of the neighbouring secants, so that it never overshoots. */
function hermite(x: Float64Array, y: Float64Array, i: number, at: number): number {
  const h = x[i + 1]! - x[i]!;
  const s = (at - x[i]!) / h;
  const here = (y[i + 1]! - y[i]!) / h;
  const slope = (j: number): number => {
    if (j <= 0 || j >= nodes - 1) return here;
    const before = (y[j]! - y[j - 1]!) / (x[j]! - x[j - 1]!);
    const after = (y[j + 1]! - y[j]!) / (x[j + 1]! - x[j]!);
    return (2 * before * after) / (before + after);
  };
  const m0 = slope(i) * h;
  const m1 = slope(i + 1) * h;
  const s2 = s * s;
  const s3 = s2 * s;
  return (2 * s3 - 3 * s2 + 1) * y[i]! + (s3 - 2 * s2 + s) * m0 + (3 * s2 - 2 * s3) * y[i + 1]! + (s3 - s2) * m1;
}
