import { at, fats, proteins, share, sugars, type Composition } from '../composition.js';
import { requireRange } from '../errors.js';
import { roundHalfUp, type Declared } from './nutrition-rounding.js';

export const nutrientsUs = [
  'calories',
  'total_fat',
  'saturated_fat',
  'trans_fat',
  'cholesterol',
  'sodium',
  'potassium',
  'total_carbohydrate',
  'dietary_fibre',
  'total_sugars',
  'added_sugars',
  'protein',
] as const;
export type NutrientUs = (typeof nutrientsUs)[number];

/** Daily values of 21 CFR 101.9(c)(9), read in public source text; g, cholesterol, sodium and potassium in mg. */
export const dailyValuesUs: Partial<Record<NutrientUs, number>> = {
  total_fat: 78,
  saturated_fat: 20,
  cholesterol: 300,
  sodium: 2300,
  potassium: 4700,
  total_carbohydrate: 275,
  dietary_fibre: 28,
  added_sugars: 50,
  protein: 50,
};

/**
 * Rounds an amount per serving by 21 CFR 101.9(c) (summary: FDA Food Labeling Guide, appendix H).
 * @param amount - g; mg for cholesterol, sodium and potassium; kcal for calories
 */
export function roundUs(nutrient: NutrientUs, amount: number): Declared {
  requireRange(nutrient, amount, [0, Infinity], 'physics');
  switch (nutrient) {
    case 'calories':
      return number(amount < 5 ? 0 : roundHalfUp(amount, amount <= 50 ? 5 : 10));
    case 'total_fat':
    case 'saturated_fat':
    case 'trans_fat':
      return number(amount < 0.5 ? 0 : roundHalfUp(amount, amount < 5 ? 0.5 : 1));
    case 'cholesterol':
      if (amount >= 2 && amount <= 5) return { value: 5, label: 'less than 5 mg' };
      return number(amount < 2 ? 0 : roundHalfUp(amount, 5));
    case 'sodium':
    case 'potassium':
      return number(amount < 5 ? 0 : roundHalfUp(amount, amount <= 140 ? 5 : 10));
    default:
      if (amount >= 0.5 && amount < 1) return { value: 1, label: 'less than 1 g' };
      return number(amount < 0.5 ? 0 : roundHalfUp(amount, 1));
  }
}

function number(value: number): Declared {
  return { value, label: String(value) };
}

/** Percent of the daily value, nearest 1 %; undefined where none is set. */
export function percentDailyValue(nutrient: NutrientUs, amount: number): number | undefined {
  const daily = dailyValuesUs[nutrient];
  return daily === undefined ? undefined : roundHalfUp((100 * amount) / daily, 1);
}

/**
 * Amounts per serving for a US label, unrounded: carbohydrate by difference (fibre and polyols in it), energy 4 kcal/g protein and
 * digestible carbohydrate, 9 fat, 2.4 polyols, nothing for fibre (21 CFR 101.9(c)(1)(i)(C), from memory; insoluble fibre assumed).
 * @param serving - g
 */
export function nutritionUs(of: Composition, serving: number): Readonly<Partial<Record<NutrientUs, number>>> {
  requireRange('serving', serving, [0, Infinity], 'physics');
  const fat = serving * share(of, fats);
  const protein = serving * share(of, proteins);
  const carbohydrate = serving * (1 - of[at.water]! - share(of, fats) - share(of, proteins) - share(of, ['salt', 'ash']));
  const fibre = serving * of[at.fibre]!;
  const polyols = serving * of[at.polyols]!;
  return {
    calories: 4 * protein + 4 * (carbohydrate - fibre - polyols) + 9 * fat + 2.4 * polyols,
    total_fat: fat,
    saturated_fat: serving * of[at.saturates]!,
    sodium: 1000 * serving * of[at.sodium]!,
    total_carbohydrate: carbohydrate,
    dietary_fibre: fibre,
    total_sugars: serving * share(of, sugars),
    protein,
  };
}
