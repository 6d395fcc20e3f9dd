export type { Finding, Level, Observation, Origin, Quantity, Root, Step, Value, Window } from './types.js';
export { ChainError, type ChainErrorCode } from './errors.js';
export { buildChain, requireUnit, rootOf, type Chain } from './build.js';
export { evaluate, type Overrides, type State, type Status } from './state.js';
export { Session, type Changes } from './session.js';
export { explain, uses, type Explanation } from './explain.js';
export { compare, type Comparison, type Difference } from './compare.js';
export { brokenWindows, marginOf, type BrokenWindow } from './windows.js';
export { solve, type SideEffect, type Solution, type Solved, type SolveRequest, type Unsolved } from './solve.js';
export { remedies, type Knob, type Remedy } from './remedies.js';
export { vary, varyAsync, varyWithDraws, type DrawsRequest, type Variation, type VaryRequest } from './vary.js';
export { Scratch } from './sampling/scratch.js';
export type { VaryInput } from './sampling/inputs.js';
export type { Share, Shares } from './sampling/shares.js';
export type { Spread } from './sampling/summary.js';
export { map, type MapAxis, type MappedWindow, type MapRequest, type WindowMap } from './map.js';
export {
  calibrate,
  type Calibrated,
  type CalibrateParameter,
  type CalibrateRequest,
  type Datum,
  type Estimated,
  type NotCalibrated,
  type Residual,
} from './calibrate.js';
