import type { CompositionKey } from '../composition.js';
import { requireRange } from '../errors.js';
import type { MassFraction } from '../units.js';
import { typicalIngredients } from './data/ingredients.js';
import { invertYield } from './data/inversion.js';

export type TypicalIngredient = keyof typeof typicalIngredients.values;
export const typicalIngredientNames = Object.keys(typicalIngredients.values) as TypicalIngredient[];

/** Typical composition of a sweet or milk ingredient: mass fractions that sum to 1. */
export function typicalIngredient(name: TypicalIngredient): Partial<Record<CompositionKey, number>> {
  return typicalIngredients.values[name];
}

/** The same dry matter at another water content (wet basis). Works on named parts. */
export function withMoisture(
  parts: Partial<Record<CompositionKey, number>>,
  moisture: MassFraction,
): Partial<Record<CompositionKey, number>> {
  requireRange('moisture', moisture, [0, 1], 'a share');
  const factor = (1 - moisture) / (1 - (parts.water ?? 0));
  const scaled = Object.fromEntries(Object.entries(parts).map(([key, value]) => [key, value * factor]));
  return { ...scaled, water: moisture };
}

/**
 * Invert syrup: sucrose of which a share has been split.
 *
 * @param solids - mass fraction of dry substance
 * @param degree - share of the original sucrose that is inverted, 0 to 1 (medium invert 0.5)
 * @returns mass fractions that sum to 1
 * @throws OutOfRange
 */
export function invertSyrup(solids: MassFraction, degree: MassFraction): Partial<Record<CompositionKey, number>> {
  requireRange('solids', solids, [0, 1], 'vukov-1965');
  requireRange('degree_of_inversion', degree, [0, 1], 'vukov-1965');
  const invert = degree * invertYield.values.perSucrose;
  const dry = invert + 1 - degree;
  return {
    water: 1 - solids,
    sucrose: (solids * (1 - degree)) / dry,
    glucose: (solids * invert) / dry / 2,
    fructose: (solids * invert) / dry / 2,
  };
}
