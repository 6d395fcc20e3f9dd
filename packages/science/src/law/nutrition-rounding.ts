import { requireRange } from '../errors.js';
import type { Table } from '../sources.js';

/** A declared value: the number, and the words of the label (without unit where a number stands). */
export interface Declared {
  readonly value: number;
  readonly label: string;
}

/** Nearest multiple of a step, halves up. Works in whole steps, so 0.1 steps do not drift. */
export function roundHalfUp(value: number, step: number): number {
  const steps = Math.floor(value / step + 0.5 + 1e-9);
  return +(steps * step).toFixed(6);
}

export const nutrientsEu = [
  'energy',
  'fat',
  'saturates',
  'carbohydrate',
  'sugars',
  'polyols',
  'starch',
  'fibre',
  'protein',
  'salt',
] as const;
export type NutrientEu = (typeof nutrientsEu)[number];

/** EU guidance of December 2012: grams per 100 g (or 100 ml). */
export const roundingEu = {
  source: 'eu-tolerance-guidance-2012',
  standing: 'secondhand',
  note: 'Rounding table as reprinted by a food law page: coarse step from `coarse_from` up, fine step between, "0" or "<x" up to `negligible`.',
  valid: { amount: [0, 100] },
  values: { macro_negligible: 0.5, saturates_negligible: 0.1, macro_coarse_from: 10, salt_negligible: 0.0125, salt_coarse_from: 1 },
} as const satisfies Table;

/**
 * Rounds an amount for the EU declaration. Energy to 1 kJ or kcal; salt to 0.1 g from 1 g and 0.01 g below; other nutrients to 1 g from 10 g
 * and 0.1 g below. Negligible amounts are declared "0" (or with the words given here).
 * @param amount - g per 100 g (energy: kJ or kcal), at least 0
 */
export function roundEu(nutrient: NutrientEu, amount: number): Declared {
  requireRange(nutrient, amount, [0, Infinity], 'physics');
  const v = roundingEu.values;
  if (nutrient === 'energy') return plain(roundHalfUp(amount, 1), 0);
  if (nutrient === 'salt') {
    if (amount <= v.salt_negligible) return { value: 0, label: amount === 0 ? '0' : '<0.01' };
    return amount >= v.salt_coarse_from ? plain(roundHalfUp(amount, 0.1), 1) : plain(roundHalfUp(amount, 0.01), 2);
  }
  const negligible = nutrient === 'saturates' ? v.saturates_negligible : v.macro_negligible;
  if (amount <= negligible) return { value: 0, label: amount === 0 ? '0' : `<${negligible}` };
  if (amount >= v.macro_coarse_from) return plain(roundHalfUp(amount, 1), 0);
  const value = roundHalfUp(amount, 0.1);
  return plain(value, value >= v.macro_coarse_from ? 0 : 1);
}

function plain(value: number, digits: number): Declared {
  return { value, label: value.toFixed(digits) };
}

/** EU control tolerances around a declared value, measurement uncertainty included, before rounding. */
export const toleranceTableEu = {
  source: 'eu-tolerance-guidance-2012',
  standing: 'memory',
  note: 'Table 1. macro: carbohydrate, sugars, protein, fibre below 10, 10 to 40, above 40 g; fat the same with 1.5 g; saturates below 4 g; salt below 1.25 g.',
  valid: { declared: [0, 100] },
  values: { relative: 0.2, macro: [2, 8], fat: [1.5, 8], saturates: 0.8, saturates_from: 4, salt: 0.375, salt_from: 1.25 },
} as const satisfies Table;

/**
 * Range in which a control sample may lie for a declared amount, g per 100 g. Energy has no tolerance of its own in the guidance.
 * @returns low (not below 0) and high
 */
export function toleranceEu(nutrient: Exclude<NutrientEu, 'energy'>, declared: number): { readonly low: number; readonly high: number } {
  requireRange('declared', declared, [0, 100], 'physics');
  const half = halfWidth(nutrient, declared);
  return { low: Math.max(0, declared - half), high: declared + half };
}

function halfWidth(nutrient: Exclude<NutrientEu, 'energy'>, declared: number): number {
  const t = toleranceTableEu.values;
  if (nutrient === 'saturates') return declared < t.saturates_from ? t.saturates : t.relative * declared;
  if (nutrient === 'salt') return declared < t.salt_from ? t.salt : t.relative * declared;
  const [small, large] = nutrient === 'fat' ? t.fat : t.macro;
  return declared < 10 ? small : declared <= 40 ? t.relative * declared : large;
}
