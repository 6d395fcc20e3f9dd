import type { Check } from '../check.js';
import type { Model } from '../model.js';
import { activityChecks } from './checks/activity.js';
import { boilingChecks } from './checks/boiling.js';
import { glucoseSyrupChecks } from './checks/glucoseSyrup.js';
import { handbookChecks } from './checks/handbook.js';
import { kineticsChecks } from './checks/kinetics.js';
import { physicalChecks } from './checks/physical.js';
import { solubilityChecks } from './checks/solubility.js';
import { sorptionChecks } from './checks/sorption.js';
import * as activity from './models/activity.js';
import * as boiling from './models/boiling.js';
import * as cooking from './models/cooking.js';
import * as density from './models/density.js';
import * as diffusivity from './models/diffusivity.js';
import * as food from './models/food.js';
import { glucoseSyrupModel } from './models/glucoseSyrup.js';
import { ingredientModel, invertSyrupModel, saltModel } from './models/ingredients.js';
import * as inversion from './models/inversion.js';
import * as refraction from './models/refraction.js';
import * as solubility from './models/solubility.js';
import * as sorption from './models/sorption.js';
import * as viscosity from './models/viscosity.js';

export const waterModels: readonly Model[] = [
  activity.sucroseActivityModel,
  activity.soluteActivityModel,
  activity.syrupActivityModel,
  activity.syrupWaterModel,
  activity.firstEstimatesModel,
  boiling.sucroseBoilingModel,
  boiling.soluteBoilingModel,
  boiling.syrupBoilingModel,
  boiling.syrupSolidsModel,
  boiling.freezingModel,
  boiling.syrupFreezingModel,
  cooking.flashModel,
  cooking.pressureShiftModel,
  cooking.cookHeatModel,
  cooking.stageModel,
  cooking.stageTemperaturesModel,
  food.foodActivityModel,
  food.foodMoistureModel,
  food.foodBoilingModel,
  glucoseSyrupModel,
  invertSyrupModel,
  ingredientModel,
  inversion.inversionRateModel,
  inversion.inversionModel,
  refraction.sucroseRefractionModel,
  refraction.syrupRefractionModel,
  refraction.refractometerModel,
  density.sucroseDensityModel,
  density.syrupDensityModel,
  density.brixModel,
  density.baumeModel,
  density.syrupBaumeModel,
  viscosity.sucroseViscosityModel,
  viscosity.syrupViscosityModel,
  viscosity.cornSyrupViscosityModel,
  solubility.sucroseSolubilityModel,
  solubility.sugarSolubilityModel,
  solubility.lactoseSolubilityModel,
  solubility.supersaturationModel,
  solubility.grainModel,
  solubility.kelvinModel,
  solubility.saturationFunctionModel,
  sorption.gabModel,
  sorption.gabInverseModel,
  sorption.gabFitModel,
  sorption.betModel,
  sorption.sorptionModel,
  sorption.sorptionActivityModel,
  sorption.oilySeedModel,
  diffusivity.waterDiffusivityModel,
  diffusivity.zobristModel,
  diffusivity.lienhardModel,
  diffusivity.sucroseDiffusivityModel,
  diffusivity.sugarDiffusivityModel,
  saltModel,
];
export const waterChecks: readonly Check[] = [
  ...activityChecks,
  ...boilingChecks,
  ...glucoseSyrupChecks,
  ...handbookChecks,
  ...kineticsChecks,
  ...physicalChecks,
  ...solubilityChecks,
  ...sorptionChecks,
];
