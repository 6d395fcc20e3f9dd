export {
  energyEu,
  energyFactorsEu,
  nutritionPer100g,
  proteinPerNitrogen,
  saltPerSodium,
  type EnergyAmounts,
  type Nutrition,
} from '../law/nutrition.js';
export { nutrientsEu, roundEu, roundHalfUp, toleranceEu, type Declared, type NutrientEu } from '../law/nutrition-rounding.js';
export { dailyValuesUs, nutrientsUs, nutritionUs, percentDailyValue, roundUs, type NutrientUs } from '../law/nutrition-us.js';
export {
  chocolateContents,
  chocolateLaw,
  chocolatePart,
  liquorUs,
  whatToChange,
  type ChocolateContents,
  type NameResult,
  type RequirementResult,
} from '../law/chocolate.js';
export {
  chocolateLaws,
  type ChocolateLaw,
  type ChocolateMarket,
  type ChocolateName,
  type ChocolateQuantity,
} from '../law/chocolate-rules.js';
