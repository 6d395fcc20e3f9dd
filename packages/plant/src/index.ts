export type * from './types.js';
export { loadPlant, plantLoader } from './load.js';
export { slugOf } from './load/book.js';
export { problemCodes, type ProblemCode } from './codes.js';
export { jsonSchemas, kindOf, markets, type FileKind } from './schema/files.js';
export {
  convert,
  currencies,
  dimensionNames,
  dimensions,
  displayUnit,
  formatNumber,
  fromInside,
  parseQuantity,
  showQuantity,
  inwardFrom,
  toInside,
  UnitError,
  unitsOf,
  type Dimension,
  type DimensionSpec,
  type Fault,
  type Form,
  type Measure,
  type ParseContext,
  type Parsed,
  type UnitSystem,
} from './units.js';
export { editPlant, EditError, locate, type Edit, type Located } from './edit.js';
