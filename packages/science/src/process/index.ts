export { airFraction, dispersedConductivity, foamConductivity, foamDensity, overrun } from './foaming/foam.js';
export { foodConductivity, foodDensity, foodSpecificHeat, proximateKeys, type Proximate } from './choi-okos.js';
export { lumpedTemperature, lumpedTimeConstant } from './conduction/lumped.js';
export { semiInfiniteConvection, semiInfiniteFlux, semiInfiniteStep } from './conduction/semi-infinite.js';
export { eigenvalue, fourierAtRatio, meanTemperatureRatio, seriesCoefficient, temperatureRatio, type Shape } from './conduction/solid.js';
export { sucroseApparentVolume, sucroseSolutionDensity, waterDensity } from './sugar-solution.js';
export { density, specificHeat, thermalConductivity, thermalDiffusivity, thermalRange, type PhaseState } from './thermal.js';
export { caramelPlantFactor, caramelViscosity, dispersedVolume, suspensionFactor, type CaramelReference } from './flow/caramel.js';
export { extensionalViscosity, gravityStrainRate, strandBreakTime, strandForce } from './flow/extension.js';
export { restingFront, similarityFront, slump, type SlumpShape, type SlumpSlab } from './flow/slump.js';
export { concentratedSyrupViscosity, syrupWater } from './flow/syrup.js';
export { arrheniusFactor, vftViscosity, wlfShift, wlfViscosity } from './flow/temperature.js';
export { chainGlass, glassTransition, waterAtGlassTransition, type GlassRule } from './glass/mixture.js';
export { couchmanKarasz, fox, gordonTaylor, gordonTaylorMixture, type GlassPart } from './glass/rules.js';
export { cookRelation, type CookRelation } from './cooking/relation.js';
export {
  batchCook,
  evaporate,
  filmConductance,
  filmCook,
  type BatchCook,
  type Evaporation,
  type Feed,
  type FilmCook,
  type Heating,
} from './cooking/evaporate.js';
export { cookMoisture, levelSensitivity, type CookMoisture } from './cooking/moisture.js';
export {
  densityAtFoamingPower,
  densityConsequence,
  sheetThickness,
  stiffnessRatio,
  type DensityConsequence,
} from './foaming/consequence.js';
export { cupDensity, densityWithInclusions, type CupReading } from './foaming/cup.js';
export { gasExpansion, holdUpFor, whippedDensity, whippingPressure, type GasState, type WhippedFoam } from './foaming/whipping.js';
export { nusseltCylinder, nusseltFlatPlate, nusseltHorizontalCylinder, nusseltVerticalPlate } from './heat/convection.js';
export { effectiveness, mixedTemperature, type Arrangement } from './heat/exchange.js';
export { laminarPipeDrop, pumpWarming, workWarming } from './heat/mechanical.js';
export { browningEnergy } from './data/kinetics.js';
export { filmCoefficient, kettleCoefficient } from './data/cookers.js';
export { gasLosses } from './data/foam.js';
export { equivalentTime } from './kinetics/history.js';
export { activationEnergy, q10, timeToLimit, valueAfter, type Order } from './kinetics/rate.js';
export { fitArrhenius, fitLine, type ArrheniusFit, type Line } from './kinetics/regression.js';
export { firstBelow, slabRun, slitWindow, type CoolingSection, type SlabLayer, type SlabRun, type SlitWindow } from './slab/cooling.js';
export {
  commonActivity,
  contactActivity,
  gabIsotherm,
  linearIsotherm,
  tableIsotherm,
  type Isotherm,
  type SealedPart,
} from './migration/isotherm.js';
export { migrate, type Migration, type MoistureLayer, type OuterFace } from './migration/layers.js';
export {
  channelConductance,
  packActivity,
  packGain,
  packLife,
  packLifeSimple,
  packTimeConstant,
  permeabilityUnits,
  permeance,
  permeanceAt,
  transmission,
  type Pack,
  type PermeabilityUnit,
  type TestClimate,
} from './package/film.js';
