import { axis, levelAxis, niceTicks, uprightAxis } from './axes.js';
import { DrawingError, requireFinite } from './errors.js';
import { clipPolyline, type Point } from './geometry/polygon.js';
import { circle, line, path, text, type Box, type Drawing, type Mark } from './mark.js';
import { Pen } from './pen.js';
import { sill } from './sill.js';
import { textWidth } from './text-width.js';

export interface EvidenceRow {
  readonly id: string;
  readonly label: string;
  readonly expected: number;
  readonly computed: number;
  /** Uncertainty stated with the published value, in its unit, above 0. */
  readonly tolerance: number;
  readonly expectedText: string;
  readonly computedText: string;
  /** Where the outside value is from. */
  readonly source?: string;
}
export interface EvidenceSpec {
  readonly width: number;
  readonly rows: readonly EvidenceRow[];
  readonly heads?: readonly [expected: string, computed: string, deviation: string];
}
export interface EvidenceDrawing extends Drawing {
  readonly hits: readonly { readonly id: string; readonly box: Box }[];
  /** Rows outside their uncertainty. */
  readonly red: readonly string[];
}

/** One row per check: published, ours, and the deviation on a sill whose window is the stated uncertainty. Red rows stay. */
export function evidenceStrip(spec: EvidenceSpec): EvidenceDrawing {
  const row = 34;
  const top = spec.heads === undefined ? 0 : 26;
  const labelWide = Math.min(spec.width * 0.38, Math.max(60, ...spec.rows.map((each) => textWidth(each.label, 15))) + 16);
  const one = labelWide + 84;
  const two = one + 84;
  const sillAt = two + 26;
  const marks: Mark[] = [];
  const hits: { id: string; box: Box }[] = [];
  const red: string[] = [];
  if (spec.heads !== undefined) {
    const [expected, computed, deviation] = spec.heads;
    marks.push(
      text(one, 14, expected, 13, { anchor: 'end', fill: 'ink-2' }),
      text(two, 14, computed, 13, { anchor: 'end', fill: 'ink-2' }),
      text(sillAt + 42, 14, deviation, 13, { anchor: 'middle', fill: 'ink-2' }),
    );
  }
  spec.rows.forEach((each, at) => {
    requireFinite(`rows (${each.id}).expected`, each.expected);
    requireFinite(`rows (${each.id}).computed`, each.computed);
    if (!(each.tolerance > 0)) throw new DrawingError(`rows (${each.id}).tolerance`, each.tolerance, 'an uncertainty above 0');
    const y = top + row * at;
    const mark = sill({
      width: 84,
      standing: 'computed',
      window: { lo: -each.tolerance, hi: each.tolerance },
      aim: 0,
      value: each.computed - each.expected,
    });
    if (mark.outside) red.push(each.id);
    marks.push(
      text(0, y + 21, each.label, 15, {}),
      text(one, y + 21, each.expectedText, 15, { anchor: 'end' }),
      text(two, y + 21, each.computedText, 15, { anchor: 'end', weight: 560, fill: mark.outside ? 'act' : 'ink' }),
    );
    marks.push({ tag: 'g', at: [sillAt, y + 4], children: mark.marks, id: each.id });
    if (each.source !== undefined) marks.push(text(sillAt + 100, y + 20, each.source, 13, { fill: 'ink-2' }));
    hits.push({ id: each.id, box: { x: 0, y, w: spec.width, h: row } });
  });
  return { marks, width: spec.width, height: top + row * spec.rows.length, hits, red };
}

export interface ScatterPoint {
  readonly x: number;
  readonly y: number;
  /** Half uncertainty in y. */
  readonly off?: number;
  /** Drawn as act: outside its uncertainty. */
  readonly red?: boolean;
}
export interface ScatterSpec {
  readonly width: number;
  readonly height: number;
  readonly x: readonly [number, number];
  readonly y: readonly [number, number];
  /** Published or measured: rings. */
  readonly points: readonly ScatterPoint[];
  /** Ours: a line. */
  readonly line: readonly Point[];
  /** Range of x the model was fitted in. */
  readonly fitted?: readonly [number, number];
  readonly xLabel: string;
  readonly yLabel: string;
  readonly lineText?: string;
}

/** Model against measurement: rings for what others found, a line for what is computed, dashed beyond the fitted range. */
export function scatter(spec: ScatterSpec): Drawing & { readonly atX: (x: number) => number; readonly atY: (y: number) => number } {
  const left = 54;
  const right = spec.width - 10;
  const top = 28;
  const bottom = spec.height - 42;
  const sx = axis('x', spec.x, left, right);
  const sy = axis('y', spec.y, bottom, top);
  const plot: Point[] = [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ];
  const [from, to] = spec.fitted ?? [-Infinity, Infinity];
  const inside = new Pen();
  const outside = new Pen();
  const within = (wanted: boolean): void => {
    const clip: Point[] = [
      [sx.at(Math.max(from, spec.x[0])), top],
      [sx.at(Math.min(to, spec.x[1])), top],
      [sx.at(Math.min(to, spec.x[1])), bottom],
      [sx.at(Math.max(from, spec.x[0])), bottom],
    ];
    const pieces = clipPolyline(
      spec.line.map(([x, y]): Point => [sx.at(x), sy.at(y)]),
      wanted ? clip : plot,
    );
    for (const piece of pieces) (wanted ? inside : outside).through(piece);
  };
  within(true);
  within(false);
  const marks: Mark[] = [];
  if (!outside.empty && spec.fitted !== undefined) marks.push(path(outside.d, { stroke: 'ink', width: 1.2, dash: [3, 4] }));
  if (!inside.empty) marks.push(path(inside.d, { stroke: 'ink', width: 1.8 }));
  const bars = new Pen();
  for (const point of spec.points) {
    requireFinite('points x', point.x);
    requireFinite('points y', point.y);
    if (point.off !== undefined) bars.segment(sx.at(point.x), sy.at(point.y - point.off), sx.at(point.x), sy.at(point.y + point.off));
  }
  if (!bars.empty) marks.push(path(bars.d, { stroke: 'ink-2', width: 1 }));
  for (const point of spec.points)
    marks.push(
      circle(sx.at(point.x), sy.at(point.y), 4, {
        stroke: point.red === true ? 'act' : 'ink',
        fill: 'paper',
        width: point.red === true ? 2.2 : 1.5,
      }),
    );
  marks.push(
    line(left, top, left, bottom, { stroke: 'ink-2', width: 1.2 }),
    ...levelAxis(sx, bottom, left, right, niceTicks(spec.x[0], spec.x[1], 5)),
    ...uprightAxis(sy, left, niceTicks(spec.y[0], spec.y[1], 4)),
  );
  marks.push(text(right, bottom + 35, spec.xLabel, 13, { anchor: 'end', fill: 'ink-2' }), text(4, 14, spec.yLabel, 13, { fill: 'ink-2' }));
  return { marks, width: spec.width, height: spec.height, atX: sx.at, atY: sy.at };
}
