import { axis, levelAxis, niceTicks, uprightAxis } from './axes.js';
import { requireBetween } from './errors.js';
import { spread } from './leaders.js';
import { circle, line, rect, text, type Box, type Drawing, type Mark } from './mark.js';

/** A way from where things are to somewhere else, with what it may be off by in both directions. */
export interface Way {
  readonly id: string;
  readonly name: string;
  readonly x: number;
  readonly y: number;
  readonly xRange?: readonly [number, number];
  readonly yRange?: readonly [number, number];
  /** Gets there; else it stands back. */
  readonly meets: boolean;
}

export interface AimSpec {
  readonly width: number;
  readonly height: number;
  readonly now: { readonly x: number; readonly y: number; readonly text: string };
  /** What counts as there: a box of both. */
  readonly target: { readonly x: readonly [number, number]; readonly y: readonly [number, number]; readonly text: string };
  readonly ways: readonly Way[];
  readonly xLabel: string;
  readonly yLabel: string;
}
export interface AimDrawing extends Drawing {
  readonly hits: readonly { readonly id: string; readonly box: Box }[];
}

/** Two numbers at once: a ring where things are, a pale box where they should be, and each way with the cross of what it may be off by. */
export function aim(spec: AimSpec): AimDrawing {
  requireBetween('ways, number', spec.ways.length, 0, 20);
  const { now, target, ways } = spec;
  const xs = [now.x, ...target.x, ...ways.flatMap(({ x, xRange }) => [x, ...(xRange ?? [])])];
  const ys = [now.y, ...target.y, ...ways.flatMap(({ y, yRange }) => [y, ...(yRange ?? [])])];
  const narrow = spec.width < 620;
  const [left, right, top, bottom] = [50, spec.width - (narrow ? 104 : 170), 26, spec.height - 44];
  const sx = axis('x', roomy(xs), left, right);
  const sy = axis('y', roomy(ys), bottom, top);
  const marks: Mark[] = [text(0, 13, spec.yLabel, 13, { fill: 'ink-2' })];
  const [bx, by] = [sx.at(target.x[0]), sy.at(target.y[1])];
  const [bw, bh] = [Math.max(3, sx.at(target.x[1]) - bx), Math.max(3, sy.at(target.y[0]) - by)];
  marks.push(rect(bx, by, bw, bh, { fill: 'shade' }), rect(bx, by, bw, bh, { stroke: 'ink', width: 1.2 }));
  marks.push(text(bx + bw / 2, by - 7, target.text, 13, { anchor: 'middle', fill: 'ink-2' }));
  const at = (x: number, y: number): readonly [number, number] => [sx.at(x), sy.at(y)];
  const [nx, ny] = at(now.x, now.y);
  const places = spread(ways.map(({ y }) => sy.at(y)), 18, top + 8, bottom); // prettier-ignore
  const hits: { id: string; box: Box }[] = [];
  ways.forEach((way, k) => {
    const [x, y] = at(way.x, way.y);
    const ink = way.meets ? 'ink' : 'ink-2';
    marks.push(line(nx, ny, x, y, { stroke: ink, width: 1.2, dash: [5, 4] }));
    if (way.xRange) marks.push(line(sx.at(way.xRange[0]), y, sx.at(way.xRange[1]), y, { stroke: ink, width: way.meets ? 1.6 : 0.8 }));
    if (way.yRange) marks.push(line(x, sy.at(way.yRange[0]), x, sy.at(way.yRange[1]), { stroke: ink, width: way.meets ? 1.6 : 0.8 }));
    marks.push(circle(x, y, 5, way.meets ? { fill: 'ink', stroke: 'paper', width: 1.4 } : { fill: 'paper', stroke: 'ink-2', width: 1.4 }));
    marks.push(line(Math.max(x, sx.at(way.xRange?.[1] ?? way.x)) + 6, y, right + 8, places[k]!, { stroke: 'hair', width: 1 }));
    marks.push(text(right + 12, places[k]! + 4.5, way.name, narrow ? 13 : 14, way.meets ? { weight: 560 } : { fill: 'ink-2' }));
    hits.push({ id: way.id, box: { x: x - 10, y: y - 10, w: 20, h: 20 } });
  });
  marks.push(circle(nx, ny, 6, { stroke: 'ink', fill: 'paper', width: 1.8 }), text(nx, ny - 12, now.text, 13, { anchor: 'middle' }));
  marks.push(
    ...uprightAxis(sy, left - 4, niceTicks(sy.from, sy.to, 5)),
    ...levelAxis(sx, bottom, left, right, niceTicks(sx.from, sx.to, narrow ? 3 : 6)),
  );
  marks.push(text(right, bottom + 35, spec.xLabel, 13, { anchor: 'end', fill: 'ink-2' }));
  return { marks, width: spec.width, height: spec.height, hits };
}

function roomy(values: readonly number[]): readonly [number, number] {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const room = (high - low || Math.abs(high) || 1) * 0.1;
  return [low - room, high + room];
}
