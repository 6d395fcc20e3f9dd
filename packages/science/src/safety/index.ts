export { cautions, cautionsOn, type Caution } from './caution/cautions.js';
export {
  actionLevel,
  burnTime,
  dustClass,
  efoldMass,
  flush,
  kst,
  layerOfCloud,
  pipeHoldup,
  referenceDose,
  type Flush,
} from './caution/hazards.js';
export { bondEnergy, largestFeed, sizeConstant, sizeEnergy, surfaceEnergy, type SizeLaw } from './grinding/energy.js';
export { ballMillRun, fatDemand, millRate, rollThroughput, tellsApart, type BallMillRun } from './grinding/refining.js';
export {
  fitLogNormal,
  fitRosinRammler,
  logNormal,
  rosinRammler,
  specificSurface,
  type FittedSizes,
  type SizeDistribution,
} from './grinding/sizes.js';
export {
  beanClass,
  beanCount,
  beanProperties,
  blendMean,
  brokenMassLimits,
  ellipsoidSphericity,
  massLimits,
  type BeanProperties,
  type MassLimit,
  type MassTest,
} from './intake/bean-lot.js';
export { chanceAbove, gradeCutTest, type CutTest, type CutTestClass, type CutTestResult } from './intake/cut-test.js';
export { liquorYield, lotValue, nibStream, type BeanRoute, type LotValue } from './intake/nib-yield.js';
export {
  airAt20,
  carriedSizeStokes,
  dragCoefficient,
  equalSettlingRatio,
  hinderedSettling,
  liftedShare,
  terminalVelocity,
  type Medium,
} from './intake/settling.js';
export { type StudyBeside } from './lethality/beside.js';
export { declinePerDay, dFromZ, dOnLine, milkChocolateDValue, studyD, zValue, type DValue } from './lethality/d-value.js';
export { equivalentMinutes, logReduction, tableRate, type Rule } from './lethality/integrate.js';
export {
  judgeKillStep,
  missingLimits,
  type JudgeOptions,
  type KillStepJudgement,
  type KillStepStretch,
  type KillStepVerdict,
} from './lethality/kill-step.js';
export {
  killStepQuantities,
  type Column,
  type KillStepQuantity,
  type KillStepValidation,
  type Limit,
  type RoastLog,
} from './lethality/roast-record.js';
export { weibullAlong, weibullReduction, weibullShape, weibullTime } from './lethality/weibull.js';
export {
  chanceLotExceeds,
  planAcceptance,
  resultBelow,
  testVariance,
  type AflatoxinCommodity,
  type AflatoxinTest,
  type VarianceParts,
} from './peanut/aflatoxin.js';
export { kernelFaults, piecesVariation, type KernelTest } from './peanut/quality.js';
export { afterBlanchAndSort, aflatoxinSortedOut, concentrationAfter } from './peanut/sorting.js';
export { cocoaBed, endMoisture, peanutBed, roastBed, type BedHistory, type BedRoast, type RoastProduct } from './roasting/bed.js';
export { lightness, lightnessRate, roastDegree, timeToLightness } from './roasting/colour.js';
export { cocoaAcid, cocoaMoisture, cocoaMoistureStep, dryBasis, peanutMoisture, slabDryingTime } from './roasting/drying.js';
export { energyPerKilogram, roastDrum, type DrumResult, type DrumRoast } from './roasting/drum.js';
export {
  airBalance,
  cooledTo,
  coolingTime,
  heatDemand,
  pieceRate,
  type AirBalance,
  type HeatDemand,
  type RoastCharge,
} from './roasting/heat.js';
export { roastCurve, type RoastCurve, type Stage, type StageName } from './roasting/log.js';
export { codeLetter, singlePlan, type InspectionLevel, type SinglePlan } from './sampling/attribute-plan.js';
export {
  acceptance,
  allNegative,
  averageInspection,
  averageOutgoing,
  qualityAt,
  variablesShare,
  type AttributeLaw,
  type AttributePlan,
} from './sampling/operating-characteristic.js';
export { contaminantLimits } from '../law/contaminants-index.js';
export { contaminantMarkets, limitOn, type ContaminantLimit, type ContaminantMarket } from '../law/contaminants-limit.js';
