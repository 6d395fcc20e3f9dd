import { axis, levelAxis, niceTicks, type Axis } from './axes.js';
import { DrawingError, requireBetween, requireFinite } from './errors.js';
import { contours, hatchWhere, valueAt, type Field } from './geometry/field.js';
import type { Point } from './geometry/polygon.js';
import { spread } from './leaders.js';
import { circle, group, line, path, rect, text, type Box, type Drawing, type Mark } from './mark.js';
import { Pen } from './pen.js';
import { textWidth } from './text-width.js';
import { boxTexture, type Material } from './textures/strip.js';

/** A slab cut through its thickness, as it changes along a belt. Minutes along, mm above the belt up. */
export interface ThroughSpec {
  readonly width: number;
  /** True scale through the thickness. */
  readonly pxPerMm: number;
  /** Room for names at the left, px; default 150. */
  readonly left?: number;
  /** Width of the picture of the cut at the right, px; default 220. */
  readonly cutWidth?: number;
  /** Temperatures: `rows[i][j]` at minute `x[i]`, `y[j]` mm above the belt, in the unit shown. */
  readonly field: Field;
  readonly layers: readonly { readonly name: string; readonly from: number; readonly to: number; readonly material?: Material }[];
  /** Levels drawn as lines, each with its words; bold ones are ends of the window. */
  readonly levels: readonly { readonly at: number; readonly text: string; readonly bold?: boolean }[];
  /** The window in which it can be cut, in the unit shown. */
  readonly window?: { readonly lo: number; readonly hi: number; readonly text: string };
  /** What the bold upper level may be off by: it lies between the same level of these two. */
  readonly doubt?: { readonly cooler: Field['rows']; readonly warmer: Field['rows'] };
  /** What happens to a face, at its minute. */
  readonly top?: { readonly at: number; readonly text: string };
  readonly bottom?: { readonly at: number; readonly text: string };
  /** What may be done with it, from minute to minute. */
  readonly spans: readonly { readonly from: number; readonly to: number; readonly text: string }[];
  /** Minutes between which the first span may end. */
  readonly spansBetween?: readonly [number, number];
  /** The clock at either end, as words. */
  readonly ends: readonly [string, string];
  readonly xLabel: string;
  readonly unit: string;
  /** Where on the drawing above this stretch begins and ends, px: two hairs open from there. */
  readonly opensFrom?: readonly [number, number];
}
export interface ThroughDrawing extends Drawing {
  readonly field: Field;
  /** The strip itself, px. */
  readonly plot: Box;
  readonly x: (minute: number) => number;
  /** The minute under a place, held within the strip. */
  readonly minuteAt: (px: number) => number;
  readonly y: (mm: number) => number;
  /** Place of a temperature in the picture of the cut. */
  readonly atValue: (value: number) => number;
  readonly timesLifeSize: number;
  readonly pxPerMinute: number;
}

const cssPxPerMm = 96 / 25.4;

/** The strip: layers, lines of equal temperature, what the model cannot tell as slanted lines, and when it can be cut. */
export function through(spec: ThroughSpec): ThroughDrawing {
  check(spec);
  const { field, pxPerMm } = spec;
  const left = spec.left ?? 150;
  const cutWidth = spec.cutWidth ?? 220;
  const cutGap = 76;
  const right = spec.width - cutWidth - cutGap;
  requireBetween('width left for the strip', right - left, 120, Infinity, 'px');
  const top = (spec.opensFrom ? 26 : 4) + 20;
  const thick = field.y.at(-1)! - field.y[0]!;
  const bottom = top + thick * pxPerMm;
  const sx = axis('field.x', [field.x[0]!, field.x.at(-1)!], left, right);
  const sy = axis('field.y', [field.y[0]!, field.y.at(-1)!], bottom, top);
  const values = field.rows.flat();
  const [low, high] = [Math.min(...values, spec.window?.lo ?? Infinity), Math.max(...values, spec.window?.hi ?? -Infinity)];
  const room = Math.max(0.5, (high - low) * 0.05);
  const st = axis('temperature', [low - room, high + room], right + cutGap, spec.width - 4);
  const rail = bottom + 46;
  const foot = rail + 26;
  const box = { x0: left, y0: top, x1: right, y1: bottom };
  const marks: Mark[] = [
    ...(spec.opensFrom ? opening(spec.opensFrom, left, right, top - 22) : []),
    rect(left, top, right - left, bottom - top, { fill: 'paper' }),
    group(doubted(spec, sx, sy, box), { id: 'doubt' }),
    ...layersOf(spec, sy, left, right),
    group(levelsOf(spec, sx, sy, box), { id: 'levels' }),
    rect(left, top, right - left, bottom - top, { stroke: 'ink', width: 1.2 }),
    ...facesOf(spec, sx, left, right, top, bottom),
    group(railOf(spec, sx, rail, right), { id: 'spans' }),
    ...levelAxis(sx, foot, left, right, niceTicks(sx.from, sx.to, Math.min((right - left) / 70, Math.max(4, sx.to - sx.from)))),
    text(left, foot + 36, spec.ends[0], 14, { weight: 560 }),
    text(right, foot + 36, spec.ends[1], 14, { weight: 560, anchor: 'end' }),
    ...(textWidth(spec.ends.join(''), 14, 560) + textWidth(spec.xLabel, 13) + 40 < right - left
      ? [text((left + right) / 2, foot + 36, spec.xLabel, 13, { anchor: 'middle', fill: 'ink-2' })]
      : []),
    group(cutFrame(spec, st, top, bottom), { id: 'cut-frame' }),
  ];
  return {
    marks,
    width: spec.width,
    height: foot + 44,
    field,
    plot: { x: left, y: top, w: right - left, h: bottom - top },
    x: sx.at,
    minuteAt: (px) => sx.from + Math.min(1, Math.max(0, (px - left) / (right - left))) * (sx.to - sx.from),
    y: sy.at,
    atValue: st.at,
    timesLifeSize: pxPerMm / cssPxPerMm,
    pxPerMinute: (right - left) / (sx.to - sx.from),
  };
}

/** The cut at a minute: the plumb through the strip, and the temperatures along it beside the strip. */
export function throughCut(drawn: ThroughDrawing, minute: number): readonly Mark[] {
  const { field, plot, x, y, atValue } = drawn;
  requireBetween('minute', minute, field.x[0]!, field.x.at(-1)!);
  const px = x(minute);
  const points = field.y.map((height): Point => [atValue(valueAt(field, minute, height)), y(height)]);
  const [first, last] = [points[0]!, points.at(-1)!];
  const foot = plot.y + plot.h;
  return [
    line(px, plot.y - 16, px, foot + 66, { stroke: 'ink', width: 2, id: 'plumb' }),
    circle(px, plot.y - 16, 5, { fill: 'ink', stroke: 'paper', width: 1.6 }),
    path(new Pen().through(points).d, { stroke: 'ink', width: 2.2, id: 'along-the-cut' }),
    circle(last[0], last[1], 4, { fill: 'ink', stroke: 'paper', width: 1.6 }),
    circle(first[0], first[1], 4, { fill: 'ink', stroke: 'paper', width: 1.6 }),
  ];
}

function check({ field, layers, levels, doubt, pxPerMm, window }: ThroughSpec): void {
  requireBetween('pxPerMm', pxPerMm, 0.1, 1000);
  const rows = [field.rows, ...(doubt ? [doubt.cooler, doubt.warmer] : [])];
  for (const [name, list] of [['field.x', field.x], ['field.y', field.y]] as const) {
    if (list.length < 2) throw new DrawingError(name, list.length, 'two places or more');
    list.forEach((value, at) => {
      requireFinite(`${name}[${at}]`, value);
      if (at > 0 && !(value > list[at - 1]!)) throw new DrawingError(`${name}[${at}]`, value, `a value above ${list[at - 1]}`);
    });
  } // prettier-ignore
  for (const each of rows) {
    if (each.length !== field.x.length) throw new DrawingError('rows', each.length, `${field.x.length}, one for each minute`);
    each.forEach((row, i) => {
      if (row.length !== field.y.length) throw new DrawingError(`rows[${i}]`, row.length, `${field.y.length}, one for each height`);
      row.forEach((value, j) => requireFinite(`rows[${i}][${j}]`, value));
    });
  }
  if (layers.length === 0) throw new DrawingError('layers', 'empty', 'at least one layer');
  if (doubt && !levels.some(({ bold }) => bold)) throw new DrawingError('doubt', 'given', 'a bold level that it is about');
  if (window && !(window.hi > window.lo))
    throw new DrawingError('window', `${window.lo} to ${window.hi}`, 'a lower end below the upper end');
}

/** Two hairs from the stretch on the drawing above to the ends of the strip. */
function opening([a, b]: readonly [number, number], left: number, right: number, y: number): Mark[] {
  return [
    path(new Pen().move(a, 0).to(a, 4).to(left, y).to(left, y + 22).move(b, 0).to(b, 4).to(right, y).to(right, y + 22).d, { stroke: 'rule', width: 0.9, id: 'opens-from' }), // prettier-ignore
    path(new Pen().segment(a, 1, b, 1).d, { stroke: 'ink', width: 2 }),
  ];
}

function doubted(
  { doubt, field, levels }: ThroughSpec,
  sx: Axis,
  sy: Axis,
  box: { x0: number; y0: number; x1: number; y1: number },
): Mark[] {
  if (!doubt) return [];
  const upper = Math.max(...levels.filter(({ bold }) => bold).map(({ at }) => at));
  const back = (scale: Axis, a: number, b: number) => (px: number) => scale.from + ((px - a) / (b - a)) * (scale.to - scale.from);
  const [minute, height] = [back(sx, box.x0, box.x1), back(sy, box.y1, box.y0)];
  const [cooler, warmer] = [doubt.cooler, doubt.warmer].map((rows) => ({ ...field, rows })) as [Field, Field];
  const inside = (px: number, py: number): boolean => {
    const [t, h] = [minute(px), height(py)];
    return valueAt(cooler, t, h) <= upper && valueAt(warmer, t, h) >= upper;
  };
  const d = hatchWhere(box, inside);
  return d === '' ? [] : [path(d, { stroke: 'rule', width: 0.9 })];
}

/** Names and textures at the left, boundaries as hairs through the strip. */
function layersOf({ layers }: ThroughSpec, sy: Axis, left: number, right: number): Mark[] {
  const marks: Mark[] = [];
  const middles = layers.map(({ from, to }) => sy.at((from + to) / 2));
  const ys = spread(middles, 17);
  layers.forEach(({ name, from, to, material }, k) => {
    const [y0, y1] = [sy.at(to), sy.at(from)];
    const swatch = { x: left - 30, w: 24 };
    if (material !== undefined && y1 - y0 > 2) marks.push(...boxTexture(material, swatch.x, y0, swatch.w, y1 - y0));
    marks.push(rect(swatch.x, y0, swatch.w, y1 - y0, { stroke: 'ink', width: 0.9 }));
    marks.push(text(swatch.x - 8, ys[k]! + 4.5, name, 14, { anchor: 'end' }));
    if (k > 0) marks.push(line(left, y1, right, y1, { stroke: 'rule', width: 1, dash: [6, 3] }));
  });
  return marks;
}

/** Lines of equal temperature, each named where it reaches farthest along the belt. */
function levelsOf({ field, levels }: ThroughSpec, sx: Axis, sy: Axis, box: { x0: number; y0: number; x1: number; y1: number }): Mark[] {
  const marks: Mark[] = [];
  const labels: { x: number; y: number; words: string; bold: boolean }[] = [];
  const out: { y: number; words: string; bold: boolean }[] = [];
  for (const { at, text: words, bold = false } of levels.slice().sort((a, b) => Number(b.bold ?? false) - Number(a.bold ?? false))) {
    const found = contours(field, at).map((points) => points.map(([t, h]): Point => [sx.at(t), sy.at(h)]));
    if (found.length === 0) continue;
    const pen = new Pen();
    for (const points of found) pen.through(points);
    marks.push(path(pen.d, { stroke: bold ? 'ink' : 'ink-2', width: bold ? 2 : 0.9 }));
    const tip = found
      .flat()
      .reduce((best, point) => (point[0] > best[0] + 1e-6 || (point[0] > best[0] - 1e-6 && point[1] < best[1]) ? point : best));
    if (tip[0] > box.x1 - 2) out.push({ y: tip[1], words, bold });
    else labels.push({ x: Math.min(tip[0], box.x1 - textWidth(words, 13) / 2 - 4), y: tip[1], words, bold });
  }
  const placed: typeof labels = [];
  for (const label of labels) {
    const wide = textWidth(label.words, 13) + 12;
    if (placed.some((other) => Math.abs(other.x - label.x) < wide && Math.abs(other.y - label.y) < 17)) continue;
    if (label.x - wide / 2 < box.x0) continue;
    placed.push(label);
    const y = Math.min(box.y1 - 9, Math.max(box.y0 + 9, label.y));
    marks.push(rect(label.x - wide / 2 + 3, y - 8, wide - 6, 16, { fill: 'paper' }));
    marks.push(
      text(label.x, y + 4.5, label.words, 13, { anchor: 'middle', ...(label.bold ? { weight: 640 } : { fill: 'ink-2' as const }) }),
    );
  }
  const ys = spread(out.map(({ y }) => y), 15, box.y0 + 2, box.y1 - 2); // prettier-ignore
  out.forEach(({ y, words, bold }, k) => {
    marks.push(line(box.x1 + 1, y, box.x1 + 8, ys[k]!, { stroke: 'rule', width: 0.9 }));
    marks.push(text(box.x1 + 11, ys[k]! + 4.5, words, 13, bold ? { weight: 640 } : { fill: 'ink-2' }));
  });
  return marks;
}

function facesOf(spec: ThroughSpec, sx: Axis, left: number, right: number, top: number, bottom: number): Mark[] {
  const note = (face: { readonly at: number; readonly text: string } | undefined, edge: number, away: -1 | 1): Mark[] => {
    if (!face) return [];
    const x = sx.at(face.at);
    const wide = textWidth(face.text, 13);
    const start = Math.max(left, Math.min(x + 5, right - wide));
    return [
      line(x, edge, x, edge + away * 12, { stroke: 'ink', width: 1.6 }),
      text(start, edge + away * (away < 0 ? 6 : 15), face.text, 13, { fill: 'ink-2' }),
    ];
  };
  return [...note(spec.top, top, -1), ...note(spec.bottom, bottom, 1)];
}

/** What may be done with it, as stretches of one rail with stops between; where the first may end, slanted. */
function railOf({ spans, spansBetween }: ThroughSpec, sx: Axis, y: number, right: number): Mark[] {
  const marks: Mark[] = [];
  if (spansBetween) {
    const [a, b] = spansBetween.map((minute) => sx.at(Math.min(sx.to, Math.max(sx.from, minute)))) as [number, number];
    if (b - a > 1) {
      const d = hatchWhere({ x0: a, y0: y - 5, x1: b, y1: y + 5 }, () => true, 4);
      marks.push(path(d, { stroke: 'rule', width: 0.9 }));
    }
  }
  let free = -Infinity;
  spans.forEach(({ from, to, text: words }, k) => {
    const [a, b] = [sx.at(from), sx.at(to)];
    marks.push(line(a, y, b, y, { stroke: 'ink', width: 2 }), line(a, y - 6, a, y + 6, { stroke: 'ink', width: 1.6 }));
    if (k === spans.length - 1) marks.push(line(b, y - 6, b, y + 6, { stroke: 'ink', width: 1.6 }));
    const wide = textWidth(words, 14, 560);
    const x = Math.max(a, Math.min(a + 6, right - wide), free);
    if (x + wide > right + 40) return; // no room: the table has it
    free = x + wide + 14;
    marks.push(text(x, y - 8, words, 14, { weight: 560 }));
  });
  return marks;
}

/** The still part of the picture of the cut: its temperatures, the window, the thickness at the scale of the strip. */
function cutFrame({ window, unit, layers }: ThroughSpec, st: Axis, top: number, bottom: number): Mark[] {
  const [a, b] = [st.at(st.from), st.at(st.to)];
  const sy = axis('layers', [layers[0]!.from, layers.at(-1)!.to], bottom, top);
  return [
    ...(window
      ? [
          rect(st.at(window.lo), top, st.at(window.hi) - st.at(window.lo), bottom - top, { fill: 'shade', id: 'window' }),
          line(st.at(window.lo), top - 5, st.at(window.lo), bottom, { stroke: 'ink', width: 1.2 }),
          line(st.at(window.hi), top - 5, st.at(window.hi), bottom, { stroke: 'ink', width: 1.2 }),
          text(Math.min(b - textWidth(window.text, 13), Math.max(a, st.at(window.lo))), top - 8, window.text, 13, { fill: 'ink-2' }),
        ]
      : []),
    line(a, top, b, top, { stroke: 'rule', width: 1 }),
    ...layers.slice(1).map(({ from }) => line(a, sy.at(from), b, sy.at(from), { stroke: 'rule', width: 1, dash: [6, 3] })),
    ...levelAxis(st, bottom, a, b, niceTicks(st.from, st.to, 4)),
    text(b, bottom + 35, `${unit} at the cut`, 13, { anchor: 'end', fill: 'ink-2' }),
  ];
}
