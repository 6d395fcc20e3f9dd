import { requireRange } from '../errors.js';
import type { WaterActivity } from '../units.js';
import { molarMasses } from './data/binary.js';
import { groverFactors, moneyBorn, norrishConstants } from './data/firstEstimates.js';
import { higherSaccharides, molecules, type Solution } from './solution.js';

const waterMass = molarMasses.values.water;

function moles(of: Solution): { list: (readonly [moles: number, k: number])[]; total: number } {
  requireRange('water', of.water, [Number.MIN_VALUE, Number.MAX_VALUE], 'a mass');
  const list: (readonly [number, number])[] = [];
  for (const [key, solute, mass] of molecules) if (of[key]) list.push([of[key] / mass, norrishConstants.values[solute]]);
  const chains = higherSaccharides(of).moles;
  if (chains > 0) list.push([chains, norrishConstants.values.higherSaccharides]);
  return { list, total: list.reduce((sum, [n]) => sum + n, 0) };
}

/** Multi-solute Norrish: aw = xw exp(-(Σ √k x)²), 25 °C, without salt; dependable above 0.75. */
export function norrishActivity(of: Solution): WaterActivity {
  const { list, total } = moles(of);
  const all = total + of.water / waterMass;
  const sum = list.reduce((s, [n, k]) => s + Math.sqrt(k) * (n / all), 0);
  return (1 - total / all) * Math.exp(-sum * sum);
}

/** Ross: product of what each solute would give alone in all the water (Norrish binaries); dependable above 0.8. */
export function rossActivity(of: Solution): WaterActivity {
  let product = 1;
  for (const [n, k] of moles(of).list) {
    const x = n / (n + of.water / waterMass);
    product *= (1 - x) * Math.exp(-k * x * x);
  }
  return product;
}

/** Money and Born: aw = 1/(1 + 0.27 n), n mol of sugars per 100 g of water; the jam range. */
export function moneyBornActivity(of: Solution): WaterActivity {
  return 1 / (1 + (moneyBorn.values.factor * moles(of).total * 100) / of.water);
}

/**
 * Grover: aw = 1.04 - 0.10 E + 0.0045 E², E = Σ factor × mass per mass of water; meant for 0.65 to 0.9.
 * The parabola turns at E = 11; beyond that the equation has no answer.
 * @throws OutOfRange for E above 11.1 or no water
 */
export function groverActivity(of: Solution, protein = 0): WaterActivity {
  requireRange('water', of.water, [Number.MIN_VALUE, Number.MAX_VALUE], 'a mass');
  const factor = groverFactors.values;
  let E = factor.protein * protein + factor.higherSaccharides * (of.higherSaccharides ?? 0) + factor.salt * (of.salt ?? 0);
  for (const [key, solute] of molecules) E += factor[solute] * (of[key] ?? 0);
  E /= of.water;
  requireRange('grover_sum', E, [0, 1 / 0.09], 'grover-1947');
  return 1.04 - 0.1 * E + 0.0045 * E * E;
}
