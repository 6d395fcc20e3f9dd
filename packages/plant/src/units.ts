/** Units at the edge: read as people write them, kept inside in one unit per dimension, shown as people like them. */
export { dimensionNames, dimensions, type Dimension, type DimensionSpec } from './units/table.js';
export { formatNumber } from './units/numbers.js';
export { parseQuantity, type Fault, type Form, type Measure, type ParseContext, type Parsed } from './units/quantity.js';
export {
  convert,
  displayUnit,
  fromInside,
  showQuantity,
  inwardFrom,
  toInside,
  UnitError,
  unitsOf,
  type UnitSystem,
} from './units/display.js';
export { currencies } from './units/currencies.js';
