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
