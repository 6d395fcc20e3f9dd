export { checkQuantity } from './checks.js';
export { findBar, plantChain, UnknownBar, type PlantChain } from './plant-chain.js';
export { inWords, presentation, shownWindow, tidy, windowInWords, type Presentation, type ShownWindow, type Units } from './present.js';
export {
  allergens,
  costMoves,
  ingredientList,
  sheetEntry,
  sheetSections,
  stationsByUse,
  wholeSheet,
  type CostMove,
  type SheetEntry,
  type SheetSection,
  type WholeSheet,
} from './sheet.js';
export { sectionSpec } from './picture.js';
export { enroberTask } from './enrober.js';
export { coatModel, type CoatChange, type CoatExpected, type CoatModel } from './enrober-what-if.js';
export { enroberAnswer, type EnroberAnswer, type Moved } from './enrober-answer.js';
export { tunnelHistory, NoTunnel, type Ranged, type TunnelRun } from './tunnel.js';
export { atSpeed, type BufferAtSpeed, type SpeedAnswer, type StationAtSpeed } from './speed.js';
export { chocolateNames, type ChocolateNames, type MarketNames } from './chocolate-law.js';
export { chocolateOf, flowOptions, NoChocolate, type FlowAnswer, type FlowOption, type FlowStep, type FlowTarget } from './viscosity.js';
export { NotOnLine } from './not-on-line.js';
export { tunnelOffset, type TunnelFit } from './tunnel-log.js';
export type { OpenSpan } from './temper-window.js';
export { judgeTemper, type BesideTemper, type TemperAnswer, type TemperIncident, type TemperTrend } from './temper-log.js';
export { judgeRoast, roasterNamed, withRawMoisture, type RoastAnswer, type RoastStretch } from './roast-log.js';
export { judgeLanes, type LanesAnswer, type LanesRound } from './lanes-log.js';
export { carryValidation, validationsOf } from './kill-steps.js';
export { lotAnswer, type LotAnswer, type LotOptions } from './lot.js';
export { UnknownLot } from './lot-results.js';
export {
  BadTable,
  cellText,
  cookTable,
  countsTable,
  fileKind,
  flowTable,
  headerOf,
  lanesTable,
  readClock,
  readNumbers,
  roastTable,
  rowsOfText,
  stopsTable,
  tableKind,
  tableOf,
  temperTable,
  textColumn,
  textOfFile,
  timeCells,
  tunnelTable,
  type CookTable,
  type Clock,
  type CountsTable,
  type FlowTable,
  type LanesHour,
  type RoastTable,
  type Stop,
  type TableKind,
  type TemperTable,
  type TunnelTable,
} from './tables/index.js';
export { drivenByTemperature, type Driven } from './drive.js';
export { cookChoices, NoCook } from './cook-curve.js';
export { batchAnswer, type BatchAnswer, type BatchReadings, type Change, type Neighbours } from './cook-batch.js';
export { judgeCooks, type LaidSpan, type CookLogAnswer, type JudgedBatch, type LearnedOffset } from './cook-log.js';
export { foamAnswer, NoFoam, whippedComponents, type FoamAnswer, type FoamAsked } from './foam.js';
export { judgeFoam, type FoamLogAnswer, type MeanOf, type WhippedBatch } from './foam-log.js';
export { cookerAnswers, type CookerAnswer, type CookerAsked, type CookSpread, type ProbeError } from './cooker.js';
export { cookerCautions } from './cooker-words.js';
export { layerSlump, type LayerSlump } from './slump.js';
export { cookElsewhere, type CookThere, type Elsewhere, type ElsewhereAnswer } from './cook-elsewhere.js';
export { deliveryAnswer, NoSyrup, type Delivered, type DeliveryAnswer, type DeliveryEffect } from './delivery.js';
export { NoSlab, slabHistory, type SlabAnswer, type SlabOptions, type SlitState } from './slab.js';
export { blendTask, NoBlend, type BlendLimit, type BlendOptions, type BlendProperty, type BlendTask } from './blend.js';
export { cheapestBlend, loadOptimiser, type BindingLimit, type BlendAnswer, type Optimiser } from './blend-solve.js';
export { flowLawNames, flowParameterNames } from './flow-words.js';
