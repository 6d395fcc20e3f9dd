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
