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
export {
  condensationRate,
  dewMargin,
  dewPoint,
  humidityRatio,
  humidityRatioFromWetBulb,
  mixAir,
  moistAirEnthalpy,
  moistAirVolume,
  surfaceHumidity,
  surfaceTemperatureFor,
  vapourPressure,
  wetBulb,
} from './air.js';
export { apparentViscosity, cassonRate, cassonStress, stressOf, type FlowLaw, type ShearRate } from './flow-laws.js';
export { fitBingham, fitCasson, flowPoints, flowTableFault, type Fitted, type FlowFit, type FlowPoint } from './flow-fit.js';
export { fitHerschelBulkley, fitWindhab } from './flow-fit-nonlinear.js';
export { flowReport, stressAt, type FlowReport } from './flow-report.js';
export { flowRatio, flowShift, packingFactor, usualEffects, type Factor, type FlowEffects, type FlowRecipe } from './flow-shift.js';
export { cheapestCorrection, pgprLimit, withAdditions, type Correction, type CorrectionTask } from './flow-correction.js';
export { cassonPipeDrop, cassonPipeFlow, powerLawPipeDrop, powerLawReynolds } from './pipe.js';
export {
  butterLatentHeat,
  chocolateConductivity,
  chocolateDensity,
  chocolateSpecificHeat,
  fatBlend,
  forms,
  latentHeatAt,
  origins,
  polymorph,
  solidFat,
  solidFatSpread,
  temperatureOfSolidFat,
  type ButterOrigin,
  type FatBlend,
  type Form,
} from './fat.js';
export { avrami, foubert } from './kinetics.js';
export { growthOf, type Growth, type GrowthMode } from './growth.js';
export { temperCurve, temperState, type TemperCurve, type TemperState } from './temper-curve.js';
export { coolingCurve, fitGrowthRate, type TemperSample } from './temper-simulation.js';
export {
  coolantDuty,
  crystalsFromCurve,
  crystalsFromDuty,
  logMeanDifference,
  tempererCause,
  tempererDuty,
  type TempererCause,
  type TempererLoad,
  type TempererPoint,
} from './temperer.js';
export { minutesToLimit, type TimeToLimit } from './trend.js';
export {
  binghamFilmFlow,
  curtainSpeed,
  drainedThickness,
  filmFlow,
  leastCurtainFlow,
  meanDrainedThickness,
  newtonianFilmMassFlow,
  settingLimitedThickness,
  staticThickness,
  wallRate,
  wipedThickness,
} from './film.js';
export { coatCalibration, coatOfBar, enroberFlows, footWidth, lateDrainage, tailLength, type Coat, type CoatTask } from './coat.js';
export { laneMap, type LaneMap, type LaneStep } from './lanes.js';
export { airProperties, flatPlateCoefficient, radiationCoefficient, sphereCoefficient, type AirProperties } from './convection.js';
export { coolBar } from './tunnel.js';
export type { CentreLayer, CoatLayer, TunnelHistory, TunnelTask, TunnelZone } from './tunnel-task.js';
export { oilDiffusivity, penetrationDepth, storageResult, uptakeShare, type StorageLog, type StorageResult } from './migration.js';
export {
  concheLoad,
  endPoint,
  heatUpTime,
  hoursToMoisture,
  shaftPower,
  usualConcheRates,
  viscosityAfter,
  type ConcheLoad,
  type ConcheRates,
  type ConcheResult,
} from './conche.js';
