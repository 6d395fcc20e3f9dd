import { axis, levelAxis, niceTicks, uprightAxis } from './axes.js';
import { DrawingError, requireBetween } from './errors.js';
import { hatch } from './geometry/hatch.js';
import type { Point } from './geometry/polygon.js';
import { line, path, rect, text, type Drawing, type Mark } from './mark.js';
import { Pen } from './pen.js';
import { spread } from './leaders.js';
import { wedge } from './signs.js';

export interface BeltSpec {
  readonly width: number;
  readonly height: number;
  /** Zones along the belt with their air. */
  readonly zones: readonly {
    readonly name: string;
    readonly from: number;
    readonly to: number;
    readonly air: number;
    readonly airText: string;
  }[];
  /** Temperatures along the belt, named at their end. */
  readonly lines: readonly { readonly name: string; readonly points: readonly Point[]; readonly bold?: boolean }[];
  /** What the first line may be off by at the end: lowest and highest. */
  readonly endRange?: readonly [number, number];
  /** Window of the first line at its end. */
  readonly endWindow?: { readonly lo?: number; readonly hi?: number };
  /** Nobody can tell whether the end is inside its window: it gets no wedge. */
  readonly endUnjudged?: boolean;
  /** A level below which water settles. */
  readonly dew?: { readonly at: number; readonly text: string };
  /** A share, 0 to 1, along the belt, in a strip of its own. */
  readonly share?: { readonly name: string; readonly points: readonly Point[] };
  readonly xLabel: string;
  readonly yLabel: string;
}
export interface BeltDrawing extends Drawing {
  readonly atX: (x: number) => number;
  readonly atY: (y: number) => number;
}

/** Temperatures along a belt through zones of air: zones as pale steps, lines named at their end, a share in a strip below. */
export function belt(spec: BeltSpec): BeltDrawing {
  requireBetween('zones, number', spec.zones.length, 1, 20);
  if (spec.lines.some(({ points }) => points.length < 2)) throw new DrawingError('lines', 'one point', 'two points or more in each');
  const narrow = spec.width < 620;
  const [left, right] = [46, spec.width - (narrow ? 92 : 150)];
  const [x0, x1] = [spec.zones[0]!.from, spec.zones.at(-1)!.to];
  const values = [
    ...spec.lines.flatMap(({ points }) => points.map(([, value]) => value)),
    ...spec.zones.map(({ air }) => air),
    ...(spec.dew ? [spec.dew.at] : []),
    ...(spec.endRange ?? []),
  ];
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const room = Math.max(0.5, (high - low) * 0.06);
  const stripHeight = spec.share ? 62 : 0;
  const top = 28;
  const bottom = spec.height - 44 - (spec.share ? stripHeight + 26 : 0);
  const sx = axis('x', [x0, x1], left, right);
  const sy = axis('y', [low - room, high + room], bottom, top);
  const marks: Mark[] = [text(0, 13, spec.yLabel, 13, { fill: 'ink-2' })];
  for (const zone of spec.zones) {
    const [a, b] = [sx.at(zone.from), sx.at(zone.to)];
    marks.push(rect(a, sy.at(zone.air), b - a, bottom - sy.at(zone.air), { fill: 'shade-2' }));
    marks.push(line(a, sy.at(zone.air), b, sy.at(zone.air), { stroke: 'rule', width: 1.6 }));
    marks.push(line(a, top, a, bottom, { stroke: 'hair', width: 1 }));
    marks.push(text((a + b) / 2, sy.at(zone.air) - 7, narrow ? zone.airText : `${zone.name}, ${zone.airText}`, 14, { anchor: 'middle', fill: 'ink-2' })); // prettier-ignore
  }
  if (spec.dew) {
    marks.push(line(left, sy.at(spec.dew.at), right, sy.at(spec.dew.at), { stroke: 'ink-2', width: 1.3, dash: [1.5, 4.5], cap: 'round' }));
    marks.push(text(left + 6, sy.at(spec.dew.at) - 6, spec.dew.text, 13, { fill: 'ink-2' }));
  }
  for (const { points, bold } of spec.lines) {
    const pen = new Pen();
    points.forEach(([x, y], at) => (at === 0 ? pen.move(sx.at(x), sy.at(y)) : pen.to(sx.at(x), sy.at(y))));
    marks.push(path(pen.d, { stroke: 'ink', width: bold ? 2.4 : 1.2 }));
  }
  marks.push(...endMarks(spec, sy, right));
  const placed = spread(
    spec.lines.map(({ points }) => sy.at(points.at(-1)![1])),
    17,
    top + 6,
    bottom,
  );
  spec.lines.forEach(({ name, bold }, at) => {
    const y = sy.at(spec.lines[at]!.points.at(-1)![1]);
    marks.push(line(right + 22, y, right + 32, placed[at]!, { stroke: 'hair', width: 1 }));
    marks.push(text(right + 36, placed[at]! + 4.5, name, narrow ? 13 : 14, { ...(bold ? { weight: 560 } : { fill: 'ink-2' as const }) }));
  });
  marks.push(...uprightAxis(sy, left - 4, niceTicks(sy.from, sy.to, 5)));
  let foot = bottom;
  if (spec.share) {
    foot = bottom + 26 + stripHeight;
    marks.push(...shareStrip(spec.share, sx.at, bottom + 26, foot, left, right));
  }
  marks.push(...levelAxis(sx, foot, left, right, niceTicks(x0, x1, narrow ? 4 : 9)));
  marks.push(text(right, foot + 35, spec.xLabel, 13, { anchor: 'end', fill: 'ink-2' }));
  return { marks, width: spec.width, height: spec.height, atX: sx.at, atY: sy.at };
}

/** The window of the end as two stops, and what the first line may be off by as slanted lines between. */
function endMarks(
  { endRange, endWindow, endUnjudged, lines }: BeltSpec,
  sy: { readonly at: (y: number) => number },
  right: number,
): Mark[] {
  const marks: Mark[] = [];
  const x = right + 10;
  if (endRange) {
    const [y0, y1] = [sy.at(endRange[1]), sy.at(endRange[0])];
    marks.push(path(hatch([[x - 4, y0], [x + 4, y0], [x + 4, y1], [x - 4, y1]], { pitch: 4 }), { stroke: 'rule', width: 0.9 })); // prettier-ignore
  }
  const { lo, hi } = endWindow ?? {};
  for (const limit of [lo, hi])
    if (limit !== undefined) marks.push(line(x - 7, sy.at(limit), x + 7, sy.at(limit), { stroke: 'ink', width: 2 }));
  if (lo !== undefined && hi !== undefined) marks.push(line(x, sy.at(lo), x, sy.at(hi), { stroke: 'ink', width: 1 }));
  const end = lines[0]?.points.at(-1)?.[1];
  if (end !== undefined && endUnjudged !== true && ((lo !== undefined && end < lo) || (hi !== undefined && end > hi)))
    marks.push(wedge(x, sy.at(end) + 4, 10));
  return marks;
}

function shareStrip(
  { name, points }: NonNullable<BeltSpec['share']>,
  atX: (x: number) => number,
  y0: number,
  y1: number,
  left: number,
  right: number,
): Mark[] {
  const at = (share: number) => y1 - share * (y1 - y0);
  const region: Point[] = [
    ...points.map(([x, share]): Point => [atX(x), at(share)]),
    [atX(points.at(-1)![0]), y1],
    [atX(points[0]![0]), y1],
  ];
  const pen = new Pen();
  points.forEach(([x, share], i) => (i === 0 ? pen.move(atX(x), at(share)) : pen.to(atX(x), at(share))));
  return [
    path(hatch(region, { pitch: 6.5 }), { stroke: 'rule', width: 0.8 }),
    path(pen.d, { stroke: 'ink', width: 1.6 }),
    line(left, y0, right, y0, { stroke: 'hair', width: 1 }),
    text(left - 10, y0 + 5, '100 %', 13, { anchor: 'end', fill: 'ink-2' }),
    text(right + 8, at(points.at(-1)![1]) + 4.5, name, 13, { fill: 'ink-2' }),
  ];
}
