export {
  circle,
  countMarks,
  group,
  line,
  lines,
  path,
  rect,
  text,
  type Box,
  type CircleMark,
  type Drawing,
  type GroupMark,
  type Ink,
  type LineMark,
  type Mark,
  type Paint,
  type PathMark,
  type RectMark,
  type Span,
  type TextMark,
} from './mark.js';
export { DrawingError } from './errors.js';
export { colour, family, type Theme } from './theme.js';
export { attributes, spanAttributes, svgElements, toSvg, type Attributes, type SvgOptions } from './svg.js';
export { flatten, type Flat, type FlatPath, type FlatText } from './flatten.js';
export { section, sideView, type LayerPlace, type SectionDrawing } from './section.js';
export type { SectionCoat, SectionExcess, SectionLayer, SectionSpec } from './section-spec.js';
export type { Drawn, Filling, LayerTexture } from './textures/face.js';
export type { Pieces } from './textures/placing.js';
export type { PieceKind } from './textures/kernel.js';
export type { Chocolate } from './textures/contours.js';
export { sill, type NumberStanding, type SillDrawing, type SillSpec } from './sill.js';
export { waterSteps, type WaterLevel, type WaterStep, type WaterStepsDrawing, type WaterStepsSpec } from './water-steps.js';
export { knob, type KnobDrawing, type KnobPost, type KnobSpec } from './knob.js';
export { bead, heldStraps, missing, replaced, seen, slanted, tick, tie, wedge } from './signs.js';
export { textWidth, wrap } from './text-width.js';
export { band, type BandDrawing } from './band.js';
export type { BandCoat, BandLeaving, BandNote, BandPart, BandSpec, BandStation, BandStream, BandVapour } from './band-spec.js';
export type { ClockPiece, ClockTick } from './clock-axis.js';
export { boxTexture, type Material } from './textures/strip.js';
export { placeNotes, sideLabels, spread, type Note, type SideLabel } from './leaders.js';
export { stack, type StackDrawing, type StackPart, type StackSpec } from './stack.js';
export { curve, type CurveDrawing, type CurveSpec } from './curve.js';
export { windowMap, type MapBorder, type WindowMapDrawing, type WindowMapSpec } from './window-map.js';
export { shares, type Share, type SharesDrawing, type SharesSpec } from './shares.js';
export {
  evidenceStrip,
  scatter,
  type EvidenceDrawing,
  type EvidenceRow,
  type EvidenceSpec,
  type ScatterPoint,
  type ScatterSpec,
} from './evidence.js';
export { dayLine, type DayLineDrawing, type DayLineSpec } from './day-line.js';
export { lanes, type LanesDrawing, type LanesSpec } from './lanes.js';
export { traces, type Trace, type TracesDrawing, type TracesSpec } from './traces.js';
export { followed, type FollowedDrawing, type FollowedPallet, type FollowedRow, type FollowedSpan, type FollowedSpec } from './followed.js';
export { reach, type ReachDrawing, type ReachSpec } from './reach.js';
export { belt, type BeltDrawing, type BeltSpec } from './belt.js';
export { through, throughCut, type ThroughDrawing, type ThroughSpec } from './through.js';
export { valueAt, type Field } from './geometry/field.js';
export { whiskers, type Whisker, type WhiskersDrawing, type WhiskersSpec } from './whiskers.js';
export { aim, type AimDrawing, type AimSpec, type Way } from './aim.js';
export type { Point } from './geometry/polygon.js';
export { niceTicks, tickText } from './axes.js';
export { sagging, type SaggedHalf, type SaggingSpec } from './sagging.js';
