import { axis, levelAxis, niceTicks, uprightAxis } from './axes.js';
import { DrawingError, requireFinite } from './errors.js';
import { hatch } from './geometry/hatch.js';
import { clipPolyline, type Point } from './geometry/polygon.js';
import { circle, line, path, rect, text, type Drawing, type Mark } from './mark.js';
import { Pen } from './pen.js';
import { wedge } from './signs.js';
import { textWidth } from './text-width.js';

export interface CurveSpec {
  readonly width: number;
  readonly height: number;
  readonly x: readonly [number, number];
  readonly y: readonly [number, number];
  /** The curve, x rising. */
  readonly points: readonly Point[];
  /** Uncertainty about the curve: lower and upper y at the same x. */
  readonly band?: readonly { readonly x: number; readonly lo: number; readonly hi: number }[];
  /** Range of x the model was fitted in: solid inside, dashed outside. */
  readonly fitted?: readonly [number, number];
  /** Permitted y: level rule lines with their words. */
  readonly limits?: { readonly lo?: number; readonly hi?: number; readonly loText?: string; readonly hiText?: string };
  /** Where things stand now. */
  readonly now?: Point;
  /** Where they would have to stand. */
  readonly wanted?: Point;
  /** A house-shaped pointer on the x axis. */
  readonly knob?: number;
  readonly xLabel?: string;
  readonly yLabel?: string;
  readonly xTicks?: readonly number[];
  readonly yTicks?: readonly number[];
  readonly logY?: boolean;
}
export interface CurveDrawing extends Drawing {
  readonly atX: (x: number) => number;
  readonly atY: (y: number) => number;
  /** Box of the plot, px: left, top, right, bottom. */
  readonly plot: readonly [number, number, number, number];
}

/** A small what-if chart: one curve, how far it may be off, the permitted band, now and wanted. */
export function curve(spec: CurveSpec): CurveDrawing {
  if (spec.points.length < 2) throw new DrawingError('points', spec.points.length, 'two points or more');
  spec.points.forEach(([x, y], at) => {
    requireFinite(`points[${at}] x`, x);
    requireFinite(`points[${at}] y`, y);
    const before = spec.points[at - 1];
    if (before !== undefined && !(x > before[0])) throw new DrawingError(`points[${at}] x`, x, `a value above ${before[0]}`);
  });
  const yTicks = spec.yTicks ?? [];
  const limitWords = [spec.limits?.loText, spec.limits?.hiText].filter((words) => words !== undefined);
  const left = yTicks.length > 0 ? 46 : 6;
  const right = Math.max(8, ...limitWords.map((words) => textWidth(words, 13) + 14), spec.xLabel === undefined ? 0 : 8);
  const top = spec.yLabel === undefined ? 8 : 26;
  const bottom = spec.height - (spec.xLabel === undefined ? 24 : 42);
  const x1 = spec.width - right;
  const sx = axis('x', spec.x, left, x1);
  const sy = axis('y', spec.y, bottom, top, spec.logY === true);
  const plot: Point[] = [
    [left, top],
    [x1, top],
    [x1, bottom],
    [left, bottom],
  ];
  const on = ([x, y]: Point): Point => [sx.at(x), sy.at(y)];
  const marks: Mark[] = [];
  if (spec.band !== undefined && spec.band.length > 1) marks.push(...bandMarks(spec.band, on, plot));
  const { lo, hi, loText, hiText } = spec.limits ?? {};
  if (lo !== undefined && hi !== undefined) {
    const [y0, y1] = [Math.max(top, sy.at(hi)), Math.min(bottom, sy.at(lo))];
    if (y1 > y0) marks.unshift(rect(left, y0, x1 - left, y1 - y0, { fill: 'shade-2', id: 'window' }));
  }
  for (const [limit, words] of [
    [lo, loText],
    [hi, hiText],
  ] as const) {
    if (limit === undefined || sy.at(limit) < top - 0.5 || sy.at(limit) > bottom + 0.5) continue;
    marks.push(line(left, sy.at(limit), x1, sy.at(limit), { stroke: 'ink', width: 1.2 }));
    if (words !== undefined) marks.push(text(x1 + 8, sy.at(limit) + 4.5, words, 13, { fill: 'ink-2' }));
  }
  marks.push(...lineMarks(spec, on, plot));
  marks.push(...levelAxis(sx, bottom, left, x1, spec.xTicks ?? niceTicks(spec.x[0], spec.x[1], 4)), ...uprightAxis(sy, left, yTicks));
  if (spec.xLabel !== undefined) marks.push(text(x1, bottom + 35, spec.xLabel, 13, { anchor: 'end', fill: 'ink-2' }));
  if (spec.yLabel !== undefined) marks.push(text(Math.max(0, left - 40), 13, spec.yLabel, 13, { fill: 'ink-2' }));
  if (spec.wanted !== undefined) marks.push(circle(...on(spec.wanted), 5, { stroke: 'ink', fill: 'paper', width: 1.8, id: 'wanted' }));
  if (spec.knob !== undefined) {
    const kx = sx.at(spec.knob);
    marks.push(
      path(
        new Pen()
          .move(kx - 9, bottom - 2)
          .to(kx + 9, bottom - 2)
          .to(kx + 9, bottom - 17)
          .to(kx, bottom - 26)
          .to(kx - 9, bottom - 17)
          .close().d,
        { fill: 'ink', id: 'knob' },
      ),
    );
  }
  if (spec.now !== undefined) marks.push(nowMark(spec, on));
  return { marks, width: spec.width, height: spec.height, atX: sx.at, atY: sy.at, plot: [left, top, x1, bottom] };
}

function nowMark(spec: CurveSpec, on: (point: Point) => Point): Mark {
  const [x, y] = on(spec.now!);
  const value = spec.now![1];
  const { lo, hi } = spec.limits ?? {};
  const out = (hi !== undefined && value > hi) || (lo !== undefined && value < lo);
  return out ? wedge(x, y - 1, 11) : circle(x, y, 4.6, { fill: 'ink', stroke: 'paper', width: 1.6 });
}

/** How far the curve may be off, as an estimate: slanted lines between its edges. */
function bandMarks(band: NonNullable<CurveSpec['band']>, on: (point: Point) => Point, plot: readonly Point[]): Mark[] {
  const upper = band.map(({ x, hi }) => on([x, hi]));
  const lower = band.map(({ x, lo }) => on([x, lo]));
  const region = [...upper, ...lower.slice().reverse()];
  // hatch lines are cut to the band first, then to the plot
  const pen = new Pen();
  for (const segment of hatch(region, { pitch: 6.5 })
    .split('M')
    .filter((each) => each !== '')) {
    const points = segment.split('L').map((pair) => pair.split(' ').map(Number) as unknown as Point);
    for (const part of clipPolyline(points, plot)) pen.through(part);
  }
  return pen.empty ? [] : [path(pen.d, { stroke: 'rule', width: 0.8, id: 'band' })];
}

function lineMarks(spec: CurveSpec, on: (point: Point) => Point, plot: readonly Point[]): Mark[] {
  const [from, to] = spec.fitted ?? [-Infinity, Infinity];
  const inside = new Pen();
  const outside = new Pen();
  for (const part of split(spec.points, from, to)) {
    const pen = part.fitted ? inside : outside;
    for (const piece of clipPolyline(part.points.map(on), plot)) pen.smooth(piece);
  }
  const marks: Mark[] = [];
  if (!outside.empty) marks.push(path(outside.d, { stroke: 'ink', width: 1.4, dash: [3, 4], id: 'beyond' }));
  if (!inside.empty) marks.push(path(inside.d, { stroke: 'ink', width: 2.2, id: 'fitted' }));
  return marks;
}

/** The curve in pieces inside and outside the fitted range, cut exactly at its ends. */
function split(points: readonly Point[], from: number, to: number): { points: Point[]; fitted: boolean }[] {
  const out: { points: Point[]; fitted: boolean }[] = [];
  const fittedAt = (x: number): boolean => x >= from && x <= to;
  let run: Point[] = [points[0]!];
  for (let i = 0; i + 1 < points.length; i += 1) {
    const p = points[i]!;
    const q = points[i + 1]!;
    const cuts = [from, to].filter((x) => x > p[0] && x < q[0]).sort((a, b) => a - b);
    let start = p[0];
    for (const cut of cuts) {
      const at: Point = [cut, p[1] + ((q[1] - p[1]) * (cut - p[0])) / (q[0] - p[0])];
      run.push(at);
      out.push({ points: run, fitted: fittedAt((start + cut) / 2) });
      run = [at];
      start = cut;
    }
    run.push(q);
    const next = points[i + 2];
    const here = fittedAt((start + q[0]) / 2);
    if (next === undefined || here !== fittedAt((q[0] + Math.min(next[0], ...[from, to].filter((x) => x > q[0]))) / 2)) {
      out.push({ points: run, fitted: here });
      run = [q];
    }
  }
  return out;
}
