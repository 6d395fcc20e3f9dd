import { NoSolution, requireRange } from '../../errors.js';
import type { Celsius, MassFraction } from '../../units.js';

const temperatures = [-273.15, 1000] as const;

/** One component of a glass: share of mass, its own glass transition, and its weight in the rule. */
export interface GlassPart {
  /** Mass, any unit. */
  readonly mass: number;
  readonly tg: Celsius;
  /** Gordon-Taylor k against the common plasticiser (1 for the plasticiser itself). */
  readonly k: number;
}

/**
 * Gordon-Taylor rule for one solid and water, °C: (w1 Tg1 + k w2 Tg2)/(w1 + k w2).
 *
 * @param solidTg - °C of the dry solid
 * @param k - Gordon-Taylor constant of that solid
 * @param water - mass fraction of water, 0 to 1
 * @param waterTg - °C of water as a glass; -135 in most tables, and k belongs to it
 * @throws OutOfRange for a fraction outside 0 to 1 or a k that is not positive
 * @example gordonTaylor(62, 5.42, 0.05) // 18.3
 */
export function gordonTaylor(solidTg: Celsius, k: number, water: MassFraction, waterTg: Celsius = -135): Celsius {
  requireRange('water', water, [0, 1], 'gordon-taylor');
  requireRange('k', k, [1e-300, 1e6], 'gordon-taylor');
  requireRange('glass transition of the solid', solidTg, temperatures, 'gordon-taylor');
  return ((1 - water) * solidTg + k * water * waterTg) / (1 - water + k * water);
}

/**
 * Gordon-Taylor rule for many components, °C: sum(w Tg / k) / sum(w / k). With one solid it is the rule above; k stands for the ratio
 * of heat capacity steps (Couchman and Karasz), so a solid that softens less counts less.
 */
export function gordonTaylorMixture(parts: readonly GlassPart[]): Celsius {
  let weights = 0;
  let sum = 0;
  for (const { mass, tg, k } of parts) {
    weights += mass / k;
    sum += (mass / k) * tg;
  }
  if (!(weights > 0)) throw new NoSolution('There is neither water nor sugar, so nothing that could turn to glass');
  return sum / weights;
}

/** Fox rule, °C: 1/T = sum(w_i / T_i), kelvin. No constants; a first guess. */
export function fox(parts: readonly Pick<GlassPart, 'mass' | 'tg'>[]): Celsius {
  let mass = 0;
  let sum = 0;
  for (const part of parts) {
    mass += part.mass;
    sum += part.mass / (part.tg + 273.15);
  }
  if (!(mass > 0)) throw new NoSolution('There is neither water nor sugar, so nothing that could turn to glass');
  return mass / sum - 273.15;
}

/**
 * Couchman-Karasz rule, °C: ln T = sum(w ΔCp ln T_i) / sum(w ΔCp), kelvin.
 *
 * @param parts - mass, glass transition (°C) and heat capacity step at it, J/(g K)
 */
export function couchmanKarasz(parts: readonly { readonly mass: number; readonly tg: Celsius; readonly step: number }[]): Celsius {
  let weights = 0;
  let sum = 0;
  for (const { mass, tg, step } of parts) {
    weights += mass * step;
    sum += mass * step * Math.log(tg + 273.15);
  }
  if (!(weights > 0)) throw new NoSolution('There is neither water nor sugar, so nothing that could turn to glass');
  return Math.exp(sum / weights) - 273.15;
}
