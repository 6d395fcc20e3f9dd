export type * from './units.js';
export { sources, type Source, type SourceKey, type Standing, type Table } from './sources.js';
export { BadInput, NoSolution, OutOfRange, requireRange } from './errors.js';
export {
  defineModel,
  runModel,
  type Estimate,
  type InputSpec,
  type Model,
  type ModelAnswer,
  type ModelFinding,
  type ModelValue,
  type OutputSpec,
} from './model.js';
export {
  at,
  atMoisture,
  composition,
  compositionKeys,
  constituents,
  fats,
  mix,
  mixingProperties,
  proteins,
  share,
  sugars,
  type Composition,
  type CompositionKey,
  type Constituent,
  type MixingProperty,
} from './composition.js';
export { runCheck, type Check, type CheckResult } from './check.js';
export { checks, modelById, models, topics } from './registry.js';
export * from './core/index.js';
export * from './water/index.js';
export * from './process/index.js';
export * from './cocoa/index.js';
export * from './safety/index.js';
export * from './statistics/index.js';
