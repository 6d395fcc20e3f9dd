import type { Check } from '../check.js';
import type { Model } from '../model.js';
import { chocolateLimitModel, chocolateNamesModel, chocolatePartModel } from './chocolate-models.js';
import { chocolateChecks } from './chocolate-checks.js';
import { nutritionChecks } from './nutrition-checks.js';
import { declarationModel, energyModel, roundingEuModel, roundingUsModel, toleranceEuModel } from './nutrition-models.js';

export const lawModels: readonly Model[] = [
  energyModel,
  declarationModel,
  roundingEuModel,
  toleranceEuModel,
  roundingUsModel,
  chocolateNamesModel,
  chocolateLimitModel,
  chocolatePartModel,
];
export const lawChecks: readonly Check[] = [...nutritionChecks, ...chocolateChecks];
