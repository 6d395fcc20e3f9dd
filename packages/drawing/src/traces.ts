import { axis, type Axis } from './axes.js';
import { DrawingError, requireBetween } from './errors.js';
import { hatch } from './geometry/hatch.js';
import type { Point } from './geometry/polygon.js';
import { circle, line, path, rect, text, type Box, type Drawing, type Mark } from './mark.js';
import { Pen } from './pen.js';
import { wedge } from './signs.js';
import { textWidth } from './text-width.js';

/** One quantity along the common axis, between the rails of its window. */
export interface Trace {
  readonly id: string;
  readonly name: string;
  readonly unit?: string;
  /** x never falling; a y that is no number leaves a gap. */
  readonly points: readonly Point[];
  /** Permitted y: the rails, and what beyond them is drawn as a wedge. */
  readonly lo?: number;
  readonly hi?: number;
  /** Words of the rails; left out: their numbers. */
  readonly loText?: string;
  readonly hiText?: string;
  /** Joined from reading to reading; false: dots alone. */
  readonly joined?: boolean;
  /** px; default 66. */
  readonly height?: number;
  /** Stretches named under the trace. */
  readonly brackets?: readonly { readonly from: number; readonly to: number; readonly text: string }[];
  /** A curve that is computed beside it, dashed, on a scale of its own from 0 to its greatest. */
  readonly beside?: readonly Point[];
}

export interface TracesSpec {
  readonly width: number;
  readonly x: readonly [number, number];
  readonly ticks: readonly { readonly at: number; readonly text: string }[];
  readonly rows: readonly Trace[];
  /** Stretches of the axis that a person should look at. */
  readonly spans?: readonly { readonly from: number; readonly to: number; readonly text?: string }[];
  readonly xLabel?: string;
}

export interface TracesDrawing extends Drawing {
  readonly atX: (x: number) => number;
  readonly hits: readonly { readonly id: string; readonly box: Box }[];
}

const usualHeight = 66;
/** From this many readings on dots are left out. */
const crowded = 160;

/** Readings along one axis, one strip for each quantity; its window is a pale band with rails, what is outside a wedge. */
export function traces(spec: TracesSpec): TracesDrawing {
  requireBetween('rows, number of traces', spec.rows.length, 1, 40);
  const narrow = spec.width < 620;
  const left = narrow ? 92 : 178;
  const right = spec.width - 54;
  const sx = axis('x', spec.x, left, right);
  const marks: Mark[] = [];
  const hits: { id: string; box: Box }[] = [];
  const top = spec.spans?.some((span) => span.text !== undefined) === true ? 30 : 10;
  let y = top;
  const strips: Mark[] = [];
  for (const row of spec.rows) {
    const height = row.height ?? usualHeight;
    strips.push(...strip(row, sx, y, height, left, right, narrow));
    hits.push({ id: row.id, box: { x: 0, y, w: spec.width, h: height } });
    y += height + 14 + (row.brackets && row.brackets.length > 0 ? 24 : 0);
  }
  for (const { from, to, text: words } of spec.spans ?? []) {
    const [x0, x1] = [Math.max(left, sx.at(from)), Math.min(right, sx.at(to))];
    if (!(x1 > x0)) continue;
    marks.push(path(hatch([[x0, top - 4], [x1, top - 4], [x1, y - 6], [x0, y - 6]], { pitch: 9 }), { stroke: 'hair', width: 0.8 })); // prettier-ignore
    marks.push(line(x0, top - 4, x1, top - 4, { stroke: 'act', width: 3 }));
    if (words === undefined) continue;
    const wide = textWidth(words, 13);
    const middle = Math.min(right - wide / 2, Math.max(left + wide / 2, (x0 + x1) / 2));
    marks.push(text(middle, top - 10, words, 13, { anchor: 'middle', fill: 'act', weight: 560 }));
  }
  marks.push(...strips, line(left, y, right, y, { stroke: 'ink-2', width: 1.2 }));
  for (const tick of spec.ticks) {
    marks.push(line(sx.at(tick.at), y, sx.at(tick.at), y - 5, { stroke: 'ink-2', width: 1 }));
    marks.push(text(sx.at(tick.at), y + 17, tick.text, 13, { anchor: 'middle', fill: 'ink-2' }));
  }
  if (spec.xLabel !== undefined) marks.push(text(left - 10, y + 17, spec.xLabel, 13, { anchor: 'end', fill: 'ink-2' }));
  return { marks, width: spec.width, height: y + 24, atX: sx.at, hits };
}

function strip(row: Trace, sx: Axis, y: number, height: number, left: number, right: number, narrow: boolean): Mark[] {
  const { lo, hi } = row;
  const values = row.points.map(([, value]) => value).filter(Number.isFinite);
  const range = rangeOf(values, lo, hi);
  const sy = axis(`${row.id}, y`, range, y + height, y);
  const name = text(0, y + height / 2 - (row.unit ? 2 : -4), row.name, narrow ? 13 : 15, { weight: 560 });
  const marks: Mark[] = [name];
  if (row.unit) marks.push(text(0, y + height / 2 + 15, row.unit, 13, { fill: 'ink-2' }));
  const [railLow, railHigh] = [lo === undefined ? y + height : sy.at(lo), hi === undefined ? y : sy.at(hi)];
  if (lo !== undefined || hi !== undefined) marks.push(rect(left, railHigh, right - left, railLow - railHigh, { fill: 'shade-2' }));
  for (const [limit, words] of [
    [lo, row.loText],
    [hi, row.hiText],
  ] as const) {
    if (limit === undefined) continue;
    marks.push(line(left, sy.at(limit), right, sy.at(limit), { stroke: 'rule', width: 1 }));
    marks.push(text(right + 6, sy.at(limit) + 4.5, words ?? numberText(limit), 13, { fill: 'ink-2' }));
  }
  if (lo === undefined && hi === undefined) marks.push(...endsOf(values, sy, right));
  const outside = (value: number) => (lo !== undefined && value < lo) || (hi !== undefined && value > hi);
  const points = thinned(row.points, sx);
  if (row.joined !== false) marks.push(...joined(points, sx, sy));
  const few = points.length <= crowded;
  const outs: Mark[] = [];
  let lastOut = -Infinity;
  for (const [x, value] of points) {
    if (!Number.isFinite(value)) continue;
    if (outside(value)) {
      if (!few && sx.at(x) - lastOut < 7) continue;
      lastOut = sx.at(x);
      outs.push(wedge(sx.at(x), sy.at(value) + 3, 9));
    } else if (few) marks.push(circle(sx.at(x), sy.at(value), 2.6, { fill: 'ink' }));
  }
  if (values.length === 0) marks.push(text((left + right) / 2, y + height / 2 + 5, 'no reading', 13, { anchor: 'middle', fill: 'ink-2' }));
  marks.push(...extreme(row, sx, sy, outside), ...outs, ...besideMarks(row, sx, y, height), ...bracketMarks(row, sx, y + height + 6));
  return marks;
}

/** Without rails, the lowest and the highest reading are the scale. */
function endsOf(values: readonly number[], sy: Axis, right: number): Mark[] {
  if (values.length === 0) return [];
  let [low, high] = [Infinity, -Infinity];
  for (const value of values) {
    if (value < low) low = value;
    if (value > high) high = value;
  }
  const ends = high > low ? [low, high] : [low];
  return ends.flatMap((end): Mark[] => [
    line(right, sy.at(end), right + 4, sy.at(end), { stroke: 'ink-2', width: 1 }),
    text(right + 6, sy.at(end) + 4.5, numberText(end), 13, { fill: 'ink-2' }),
  ]);
}

/** The reading that lies furthest outside is written beside it. */
function extreme({ points, lo, hi }: Trace, sx: Axis, sy: Axis, outside: (value: number) => boolean): Mark[] {
  let worst = -1;
  let most = 0;
  points.forEach((point, i) => {
    if (!outside(point[1])) return;
    const by = Math.max(point[1] - (hi ?? Infinity), (lo ?? -Infinity) - point[1]);
    if (by > most) [worst, most] = [i, by];
  });
  if (worst < 0) return [];
  // Behind the last of its neighbours that are outside too, so that no wedge lies on the number.
  let last = worst;
  while (last + 1 < points.length && outside(points[last + 1]![1])) last++;
  const words = numberText(points[worst]![1]);
  const x = Math.min(sx.at(points[last]![0]) + 9, sx.at(sx.to) - textWidth(words, 13));
  return [text(x, sy.at(points[worst]![1]) + 4, words, 13, { fill: 'act', weight: 560 })];
}

const numberText = (value: number): string => String(+value.toPrecision(4)).replace('-', '\u2212');

function rangeOf(values: readonly number[], lo: number | undefined, hi: number | undefined): readonly [number, number] {
  let low = Math.min(lo ?? Infinity, hi ?? Infinity);
  let high = Math.max(hi ?? -Infinity, lo ?? -Infinity);
  for (const value of values) {
    if (value < low) low = value;
    if (value > high) high = value;
  }
  if (!Number.isFinite(low) || !Number.isFinite(high)) return [0, 1];
  const size = Math.max(Math.abs(low), Math.abs(high));
  // Readings that are all alike get a range about them.
  const span = high - low > 1e-9 * size && high - low > 1e-12 ? high - low : size > 1e-9 ? size : 1;
  const room = span * 0.12;
  return [low - room, high + room];
}

/** At most a lowest and a highest reading for each px: what is outside stays visible. */
function thinned(points: readonly Point[], sx: Axis): readonly Point[] {
  const px = Math.abs(sx.at(sx.to) - sx.at(sx.from));
  if (points.length <= 2 * px) return points;
  const out: Point[] = [];
  let at = 0;
  while (at < points.length) {
    const column = Math.floor(sx.at(points[at]![0]));
    let [low, high] = [points[at]!, points[at]!];
    let gap = false;
    while (at < points.length && Math.floor(sx.at(points[at]![0])) === column) {
      const point = points[at]!;
      if (!Number.isFinite(point[1])) gap = true;
      if (!(point[1] >= low[1])) low = point;
      if (!(point[1] <= high[1])) high = point;
      at++;
    }
    if (gap) out.push([low[0], NaN]);
    out.push(...(low[0] <= high[0] ? [low, high] : [high, low]));
  }
  return out;
}

function joined(points: readonly Point[], sx: Axis, sy: Axis): Mark[] {
  const pen = new Pen();
  let open = false;
  for (const [x, value] of points) {
    if (!Number.isFinite(value) || !Number.isFinite(x)) open = false;
    else if (open) pen.to(sx.at(x), sy.at(value));
    else {
      pen.move(sx.at(x), sy.at(value));
      open = true;
    }
  }
  return pen.empty ? [] : [path(pen.d, { stroke: 'ink', width: 1.3 })];
}

function besideMarks({ beside, id }: Trace, sx: Axis, y: number, height: number): Mark[] {
  const most = Math.max(0, ...(beside ?? []).map(([, value]) => value));
  if (!beside || !(most > 0)) return [];
  const sy = axis(`${id}, beside`, [0, most], y + height, y + 12);
  const pen = new Pen();
  beside.forEach(([x, value], at) => (at === 0 ? pen.move(sx.at(x), sy.at(value)) : pen.to(sx.at(x), sy.at(value))));
  return [path(pen.d, { stroke: 'ink-2', width: 1.3, dash: [3, 4] })];
}

function bracketMarks({ brackets, id }: Trace, sx: Axis, y: number): Mark[] {
  return (brackets ?? []).flatMap(({ from, to, text: words }): Mark[] => {
    if (!(to >= from)) throw new DrawingError(`${id}, bracket`, `${from} to ${to}`, 'an end after the beginning');
    const [x0, x1] = [sx.at(from) + 1, sx.at(to) - 1];
    const d = new Pen().move(x0, y).to(x0, y + 5).to(x1, y + 5).to(x1, y).d; // prettier-ignore
    const fits = textWidth(words, 13) < x1 - x0 + 30;
    return [
      path(d, { stroke: 'rule', width: 1.2 }),
      ...(fits ? [text((x0 + x1) / 2, y + 20, words, 13, { anchor: 'middle', fill: 'ink-2' })] : []),
    ];
  });
}
