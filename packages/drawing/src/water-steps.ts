import { DrawingError, requireBetween, requireFinite } from './errors.js';
import { line, path, text, type Drawing, type Mark } from './mark.js';
import { Pen } from './pen.js';
import { wedge } from './signs.js';
import type { NumberStanding } from './sill.js';

/** A layer's level: a vertical stroke as high as the layer, at its water activity. */
export interface WaterLevel {
  readonly id: string;
  /** Upper and lower end on the sheet, px. */
  readonly y0: number;
  readonly y1: number;
  /** Water activity, 0 to 1; absent when missing. */
  readonly level?: number;
  readonly standing: NumberStanding;
  /** The number as words, drawn beside the stroke. */
  readonly text?: string;
}
/** The step between two levels that touch. */
export interface WaterStep {
  readonly from: string;
  readonly to: string;
  /** Largest permitted difference. */
  readonly limit?: number;
  readonly text?: string;
  readonly limitText?: string;
}
export interface WaterStepsSpec {
  readonly levels: readonly WaterLevel[];
  readonly steps: readonly WaterStep[];
  /** Water activity at the left and right end. */
  readonly scale: readonly [number, number];
  readonly width: number;
  readonly height: number;
  /** Values with an upright hair and a number at the foot. */
  readonly ticks?: readonly number[];
  /** Strokes and numbers one size up. */
  readonly tablet?: boolean;
}
export interface WaterStepsDrawing extends Drawing {
  readonly at: (level: number) => number;
  /** Where numbers may stand, px. */
  readonly anchors: readonly { readonly id: string; readonly x: number; readonly y: number }[];
  /** Steps over their limit, as `from/to`. */
  readonly over: readonly string[];
}

/** Water activity of the layers as upright strokes, joined by the steps that drive water across; a limit is a stop on the step. */
export function waterSteps(spec: WaterStepsSpec): WaterStepsDrawing {
  const [lo, hi] = spec.scale;
  requireFinite('scale[0]', lo);
  if (!(hi > lo)) throw new DrawingError('scale', `${lo} to ${hi}`, 'a lower end below the upper end');
  const at = (level: number): number => ((level - lo) / (hi - lo)) * spec.width;
  const size = spec.tablet === true ? 18 : 15;
  const marks: Mark[] = [];
  const anchors: { id: string; x: number; y: number }[] = [];
  const over: string[] = [];
  const foot = spec.height - 18;
  for (const tick of spec.ticks ?? []) {
    marks.push(line(at(tick), 0, at(tick), foot, { stroke: 'hair', width: 1 }));
    marks.push(text(at(tick), spec.height - 3, decimal(tick), 13, { anchor: 'middle', fill: 'ink-2' }));
  }
  const byId = new Map(spec.levels.map((level) => [level.id, level]));
  for (const level of spec.levels) {
    if (!(level.y1 > level.y0)) throw new DrawingError(`levels (${level.id}).y0`, level.y0, 'a value above y1 on the sheet');
    const x = level.level === undefined ? spec.width / 2 : at(requireLevel(level));
    marks.push(...stroke(level.standing, x, level.y0 + 2, level.y1 - 2));
    const y = (level.y0 + level.y1) / 2;
    anchors.push({ id: level.id, x: x + 12, y });
    if (level.text !== undefined) marks.push(text(x + 12, y + size * 0.33, level.text, size, { weight: 560, id: `${level.id}.text` }));
  }
  for (const step of spec.steps) {
    const from = find(byId, step.from);
    const to = find(byId, step.to);
    if (from.level === undefined || to.level === undefined) continue;
    const upper = from.y0 < to.y0 ? from : to;
    const lower = upper === from ? to : from;
    const y = (upper.y1 + lower.y0) / 2;
    const x0 = Math.min(at(from.level), at(to.level));
    const x1 = Math.max(at(from.level), at(to.level));
    const difference = Math.abs(from.level - to.level);
    const beyond = step.limit !== undefined && difference > step.limit;
    if (beyond) over.push(`${step.from}/${step.to}`);
    marks.push(line(x0, y, x1, y, { stroke: beyond ? 'act' : 'ink', width: 5, id: `${step.from}/${step.to}` }));
    const stop = step.limit === undefined ? undefined : x0 + (step.limit / (hi - lo)) * spec.width;
    if (stop !== undefined) {
      marks.push(line(stop, y - 8, stop, y + 8, { stroke: 'ink', width: 1.6 }));
      if (step.limitText !== undefined) marks.push(text(stop + 8, y + 22, step.limitText, 13, { fill: 'ink-2' }));
    }
    if (beyond) marks.push(wedge(x1, y - 3, 11));
    anchors.push({ id: `${step.from}/${step.to}`, x: x0 - 10, y });
    if (step.text !== undefined)
      marks.push(text(x0 - 10, y + size * 0.33, step.text, size, { weight: 560, anchor: 'end', fill: beyond ? 'act' : 'ink' }));
  }
  return { marks, width: spec.width, height: spec.height, at, anchors, over };
}

function requireLevel(level: WaterLevel): number {
  requireBetween(`levels (${level.id}).level`, level.level!, 0, 1);
  return level.level!;
}

function find(levels: ReadonlyMap<string, WaterLevel>, id: string): WaterLevel {
  const found = levels.get(id);
  if (found === undefined) throw new DrawingError('steps', id, `one of ${[...levels.keys()].join(', ')}`);
  return found;
}

const decimal = (value: number): string => String(Math.round(value * 100) / 100);

function stroke(standing: NumberStanding, x: number, y0: number, y1: number): Mark[] {
  switch (standing) {
    case 'measured':
      return [line(x, y0, x, y1, { stroke: 'ink', width: 2.6 })];
    case 'computed': {
      // the same strokes as under a computed number, climbing
      const pen = new Pen();
      for (let y = y0 + 5; y <= y1; y += 4.6) pen.segment(x - 3.5, y, x + 3.5, y - 5);
      return [path(pen.d, { stroke: 'ink', width: 1.2 })];
    }
    case 'assumed':
      return [line(x, y0 + 1.5, x, y1, { stroke: 'ink', width: 2.6, dash: [0.1, 5.4], cap: 'round' })];
    case 'default':
      return [line(x - 1.7, y0, x - 1.7, y1, { stroke: 'ink', width: 0.9 }), line(x + 1.7, y0, x + 1.7, y1, { stroke: 'ink', width: 0.9 })];
    case 'missing':
      return [line(x, y0, x, y1, { stroke: 'ink-2', width: 1.3, dash: [4, 3] })];
  }
}
