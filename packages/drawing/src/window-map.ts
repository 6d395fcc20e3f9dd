import { axis, levelAxis, niceTicks, uprightAxis, type Axis } from './axes.js';
import { DrawingError } from './errors.js';
import { clipByTest, type Point } from './geometry/polygon.js';
import { circle, group, line, path, rect, text, type Drawing, type Mark } from './mark.js';
import { Pen } from './pen.js';
import { wedge } from './signs.js';
import { textWidth, wrap } from './text-width.js';

/** One rule over the map: where its margin is 0 or more it is kept. */
export interface MapBorder {
  readonly id: string;
  readonly text: string;
  /** Margin at every grid point, rows by y, columns by x. */
  readonly margin: readonly (readonly number[])[];
}
export interface WindowMapSpec {
  readonly width: number;
  readonly height: number;
  /** Grid, rising. */
  readonly xs: readonly number[];
  readonly ys: readonly number[];
  readonly borders: readonly MapBorder[];
  /** Today. */
  readonly now?: Point;
  /** A trial. */
  readonly trial?: Point;
  readonly xLabel: string;
  readonly yLabel: string;
  /** What to say when no place is permitted. */
  readonly emptyText?: string;
}
export interface WindowMapDrawing extends Drawing {
  readonly atX: (x: number) => number;
  readonly atY: (y: number) => number;
  /** Share of the map that is permitted. */
  readonly open: number;
  /** Rules broken today. */
  readonly broken: readonly string[];
}

/** Two set points against all rules at once: the permitted part stays clear, the rest is hatched, every border has its name. */
export function windowMap(spec: WindowMapSpec): WindowMapDrawing {
  checkMap(spec);
  const left = 50;
  const top = 26;
  const right = spec.width - 18;
  const bottom = spec.height - 42;
  const { xs, ys } = spec;
  const sx = axis('xs', [xs[0]!, xs[xs.length - 1]!], left, right);
  const sy = axis('ys', [ys[0]!, ys[ys.length - 1]!], bottom, top);
  const margins = spec.borders.map((border) => bilinear(xs, ys, border.margin));
  const value = (px: number, inverse: Axis, from: number, to: number): number =>
    inverse.from + ((px - from) / (to - from)) * (inverse.to - inverse.from);
  const shut = (px: number, py: number): boolean => {
    const x = value(px, sx, left, right);
    const y = value(py, sy, bottom, top);
    return margins.some((margin) => !(margin(x, y) >= 0));
  };
  const marks: Mark[] = [];
  const hatching = new Pen();
  const pitch = 7;
  for (let k = left + top; k < right + bottom; k += pitch * Math.SQRT2) {
    // along x + y = k, rising to the right
    const from = Math.max(left, k - bottom);
    const to = Math.min(right, k - top);
    const points: Point[] = [];
    for (let x = from; x < to; x += 3) points.push([x, k - x]);
    points.push([to, k - to]);
    for (const part of clipByTest(points, shut)) hatching.segment(...part[0]!, ...part[part.length - 1]!);
  }
  if (!hatching.empty) marks.push(path(hatching.d, { stroke: 'rule', width: 0.8, id: 'forbidden' }));
  const names: Mark[] = [];
  const taken: { x: number; y: number; w: number; h: number }[] = [];
  spec.borders.forEach((border, at) => {
    const others = margins.filter((_, index) => index !== at);
    const open = (x: number, y: number): boolean => others.every((margin) => margin(x, y) >= -1e-9);
    const kept = contour(xs, ys, border.margin).flatMap(([p, q]) =>
      clipByTest(
        [0, 1, 2, 3, 4].map((k): Point => [p[0] + ((q[0] - p[0]) * k) / 4, p[1] + ((q[1] - p[1]) * k) / 4]),
        open,
      ).map((part) => [part[0]!, part[part.length - 1]!] as const),
    );
    if (kept.length === 0) return;
    const pen = new Pen();
    for (const [p, q] of kept) pen.segment(sx.at(p[0]), sy.at(p[1]), sx.at(q[0]), sy.at(q[1]));
    marks.push(path(pen.d, { stroke: 'ink', width: 1.8, cap: 'round', id: border.id }));
    names.push(
      ...borderName(
        border.text,
        kept.map(([p, q]): Point => [sx.at((p[0] + q[0]) / 2), sy.at((p[1] + q[1]) / 2)]),
        shut,
        { left, right, top, bottom },
        taken,
      ),
    );
  });
  let openCells = 0;
  for (let j = 0; j < 40; j += 1)
    for (let i = 0; i < 40; i += 1)
      if (!shut(left + ((i + 0.5) / 40) * (right - left), top + ((j + 0.5) / 40) * (bottom - top))) openCells += 1;
  marks.push(group(names, { id: 'names' }));
  marks.push(line(left, top, left, bottom, { stroke: 'ink-2', width: 1.2 }));
  marks.push(...levelAxis(sx, bottom, left, right, niceTicks(sx.from, sx.to, 5)), ...uprightAxis(sy, left, niceTicks(sy.from, sy.to, 5)));
  marks.push(text(right, bottom + 35, spec.xLabel, 13, { anchor: 'end', fill: 'ink-2' }), text(4, 13, spec.yLabel, 13, { fill: 'ink-2' }));
  if (openCells === 0 && spec.emptyText !== undefined)
    marks.push(...said(spec.emptyText, (left + right) / 2, (top + bottom) / 2, right - left - 40));
  if (spec.trial !== undefined && spec.now !== undefined)
    marks.push(
      line(sx.at(spec.now[0]), sy.at(spec.now[1]), sx.at(spec.trial[0]), sy.at(spec.trial[1]), {
        stroke: 'ink',
        width: 1.4,
        dash: [2.5, 2.8],
      }),
    );
  if (spec.trial !== undefined)
    marks.push(circle(sx.at(spec.trial[0]), sy.at(spec.trial[1]), 5.4, { fill: 'ink', stroke: 'paper', width: 2, id: 'trial' }));
  const broken =
    spec.now === undefined
      ? []
      : spec.borders.filter((_, at) => !(margins[at]!(spec.now![0], spec.now![1]) >= 0)).map((border) => border.id);
  if (spec.now !== undefined) {
    const [x, y] = [sx.at(spec.now[0]), sy.at(spec.now[1])];
    if (broken.length > 0) marks.push(circle(x, y, 9, { fill: 'paper' }), wedge(x, y + 4, 12));
    else if (spec.trial !== undefined) marks.push(circle(x, y, 5.4, { stroke: 'ink', fill: 'paper', width: 2, id: 'now' }));
    else marks.push(circle(x, y, 5.4, { fill: 'ink', stroke: 'paper', width: 2, id: 'now' }));
  }
  return { marks, width: spec.width, height: spec.height, atX: sx.at, atY: sy.at, open: openCells / 1600, broken };
}

function checkMap(spec: WindowMapSpec): void {
  for (const [place, values] of [
    ['xs', spec.xs],
    ['ys', spec.ys],
  ] as const) {
    if (values.length < 2) throw new DrawingError(place, `${values.length} values`, 'two values or more');
    values.forEach((value, at) => {
      if (at > 0 && !(value > values[at - 1]!)) throw new DrawingError(`${place}[${at}]`, value, `a value above ${values[at - 1]}`);
    });
  }
  for (const border of spec.borders) {
    if (border.margin.length !== spec.ys.length || border.margin.some((row) => row.length !== spec.xs.length))
      throw new DrawingError(
        `borders (${border.id}).margin`,
        `${border.margin.length} rows`,
        `${spec.ys.length} rows of ${spec.xs.length}`,
      );
  }
}

/** Margin between grid points, linear in both directions; outside the grid that of its edge. */
function bilinear(xs: readonly number[], ys: readonly number[], margin: MapBorder['margin']): (x: number, y: number) => number {
  const find = (values: readonly number[], v: number): [number, number] => {
    let at = 0;
    while (at + 2 < values.length && values[at + 1]! <= v) at += 1;
    return [at, Math.min(1, Math.max(0, (v - values[at]!) / (values[at + 1]! - values[at]!)))];
  };
  return (x, y) => {
    const [i, u] = find(xs, x);
    const [j, v] = find(ys, y);
    const low = margin[j]![i]! * (1 - u) + margin[j]![i + 1]! * u;
    const high = margin[j + 1]![i]! * (1 - u) + margin[j + 1]![i + 1]! * u;
    return low * (1 - v) + high * v;
  };
}

/** Zero line of a field in short segments (marching squares, linear between grid points). */
function contour(xs: readonly number[], ys: readonly number[], field: MapBorder['margin']): [Point, Point][] {
  const out: [Point, Point][] = [];
  for (let j = 0; j + 1 < ys.length; j += 1) {
    for (let i = 0; i + 1 < xs.length; i += 1) {
      const corners: readonly (readonly [number, number, number])[] = [
        [xs[i]!, ys[j]!, field[j]![i]!],
        [xs[i + 1]!, ys[j]!, field[j]![i + 1]!],
        [xs[i + 1]!, ys[j + 1]!, field[j + 1]![i + 1]!],
        [xs[i]!, ys[j + 1]!, field[j + 1]![i]!],
      ];
      const cuts: Point[] = [];
      corners.forEach((a, k) => {
        const b = corners[(k + 1) % 4]!;
        if (a[2] >= 0 === b[2] >= 0) return;
        const t = a[2] / (a[2] - b[2]);
        cuts.push([a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t]);
      });
      if (cuts.length >= 2) out.push([cuts[0]!, cuts[1]!]);
      if (cuts.length === 4) out.push([cuts[2]!, cuts[3]!]);
    }
  }
  return out;
}

/** The name of a border on paper, on its forbidden side where it fits. */
function borderName(
  words: string,
  middles: readonly Point[],
  shut: (x: number, y: number) => boolean,
  plot: { left: number; right: number; top: number; bottom: number },
  taken: { x: number; y: number; w: number; h: number }[],
): Mark[] {
  const cx = mean(middles, 0);
  const cy = mean(middles, 1);
  const order = middles.slice().sort((a, b) => Math.hypot(a[0] - cx, a[1] - cy) - Math.hypot(b[0] - cx, b[1] - cy));
  let best: { x: number; y: number; w: number; h: number; score: number; lines: string[] } | undefined;
  for (const part of [order.slice(0, Math.ceil(order.length / 3)), order]) {
    for (const width of [150, 84]) {
      const lines = wrap(words, width, 13);
      const w = Math.max(...lines.map((each) => textWidth(each, 13, 560))) + 10;
      const h = lines.length * 16 + 4;
      for (const [x, y] of part) {
        for (const [dx, dy] of [
          [6, -h / 2],
          [-w - 6, -h / 2],
          [-w / 2, -h - 6],
          [-w / 2, 6],
          [6, 4],
          [-w - 6, 4],
          [6, -h - 4],
          [-w - 6, -h - 4],
        ] as const) {
          const box = { x: x + dx, y: y + dy, w, h };
          if (box.x < plot.left + 2 || box.x + w > plot.right || box.y < plot.top || box.y + h > plot.bottom - 2) continue;
          if (taken.some((other) => box.x < other.x + other.w && other.x < box.x + w && box.y < other.y + other.h && other.y < box.y + h))
            continue;
          let score = 0;
          for (const [u, v] of [
            [0, 0],
            [1, 0],
            [0, 1],
            [1, 1],
            [0.5, 0.5],
            [0.5, 0],
            [0.5, 1],
          ] as const)
            if (shut(box.x + u * w, box.y + v * h)) score += 1;
          if (best === undefined || score > best.score) best = { ...box, score, lines };
        }
        if (best?.score === 7) break;
      }
      if (best?.score === 7) break;
    }
    if (best?.score === 7) break;
  }
  if (best === undefined) return [];
  const { x, y, w, h, lines } = best;
  taken.push(best);
  return [
    rect(x, y, w, h, { fill: 'paper' }),
    ...lines.map((each, at) => text(x + 5, y + 14 + at * 16, each, 13, { fill: 'ink', weight: 560 })),
  ];
}

const mean = (points: readonly Point[], axisAt: 0 | 1): number => points.reduce((sum, point) => sum + point[axisAt], 0) / points.length;

function said(words: string, cx: number, cy: number, width: number): Mark[] {
  const lines = wrap(words, width, 17, 430, 'say');
  const h = lines.length * 23 + 12;
  const w = Math.max(...lines.map((each) => textWidth(each, 17, 430, 'say'))) + 24;
  return [
    rect(cx - w / 2, cy - h / 2, w, h, { fill: 'paper' }),
    ...lines.map((each, at) => text(cx, cy - h / 2 + 22 + at * 23, each, 17, { font: 'say', weight: 450, anchor: 'middle' })),
  ];
}
