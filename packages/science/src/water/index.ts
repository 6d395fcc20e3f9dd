export { waterActivity, waterForActivity } from './activity.js';
export { boilingPoint, boilingPointElevation, boilingSensitivity, boilingSensitivityAt, waterForBoiling } from './boiling.js';
export { cookingHeat, flash, sameSolidsTemperature, solutionSpecificHeat, type Flash } from './cooking.js';
export { baume, brixOfDensity, gravityOfBaume, solutionDensity, specificGravity } from './density.js';
export {
  lienhardWaterDiffusivity,
  sugarDiffusivityInWater,
  waterDiffusivity,
  zobristWaterDiffusivity,
  type DiffusingSugar,
  type DiffusivityFit,
} from './diffusivity.js';
export { groverActivity, moneyBornActivity, norrishActivity, rossActivity } from './firstEstimates.js';
export { boilingPointOf, equilibriumMoisture, waterActivityOf } from './food.js';
export { sharedActivity, type LayerTogether, type Together } from './together.js';
export { freezingPoint } from './freezing.js';
export { conversions, dextroseEquivalentOf, glucoseSyrup, numberAverageMolarMass, type Conversion } from './glucoseSyrup.js';
export { invertSyrup, typicalIngredient, typicalIngredientNames, withMoisture, type TypicalIngredient } from './ingredients.js';
export { inverted, invertedShare, inversionRate, waterConcentration } from './inversion.js';
export {
  betFromLine,
  fitGab,
  gabActivity,
  gabMoisture,
  gabSlope,
  hendersonMoisture,
  oswinMoisture,
  wetBasis,
  type Gab,
} from './isotherm.js';
export { oilySeedMoisture, sorbedMoisture, sorptionActivity, sorptionMaterials, type SorptionMaterial } from './materials.js';
export { refractiveIndex, refractometerReading, solidsOfReading, solidsOfRefractiveIndex, waterRefractiveIndex } from './refraction.js';
export { calibrationSalts, saltWaterActivity, type CalibrationSalt } from './salts.js';
export {
  grainAtEquilibrium,
  pureSolubility,
  saturationCoefficient,
  supersaturation,
  type GrainingSugar,
  type GrainState,
} from './saturation.js';
export {
  kelvinSolubilityRatio,
  lactoseAnomerRatio,
  lactoseFinalSolubility,
  lactoseInitialSolubility,
  solubility,
  sucroseSolubility,
  type SolubleSugar,
} from './solubility.js';
export { dissolvedSolids, solutionOf, withWater, type Solution } from './solution.js';
export { boilingStage, boilingStages, stageTemperatures, type BoilingStage } from './stages.js';
export { sucroseEquivalent, sucroseViscosity, syrupViscosity } from './viscosity.js';
export { activityEstimate, boilingEstimate } from './spread.js';
