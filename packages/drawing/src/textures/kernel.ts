import type { Point } from '../geometry/polygon.js';

/** Things a layer may hold whole or chopped. */
export type PieceKind = 'peanut' | 'almond' | 'hazelnut' | 'raisin' | 'crisp';

/** The outline of a piece of unit length: two cubics from the blunt end (-.5, 0) to the tip (.5, tip). */
export interface Shape {
  /** Width over length. */
  readonly wide: number;
  readonly upper: readonly [Point, Point];
  readonly lower: readonly [Point, Point];
  /** Height of the tip, in widths. */
  readonly tip: number;
  /** Usual length in the cut, mm. */
  readonly length: readonly [number, number];
  /** Half width above and below the long axis at 33 places from end to end, in lengths. */
  readonly above: Float64Array;
  readonly below: Float64Array;
  /** Area over length². */
  readonly area: number;
}

const stations = 33;

function shape(
  wide: number,
  tip: number,
  length: readonly [number, number],
  upper: readonly [Point, Point],
  lower: readonly [Point, Point],
): Shape {
  const above = new Float64Array(stations);
  const below = new Float64Array(stations);
  const scaled = (pair: readonly [Point, Point]): readonly [Point, Point] => [
    [pair[0][0], pair[0][1] * wide],
    [pair[1][0], pair[1][1] * wide],
  ];
  const up = scaled(upper);
  const low = scaled(lower);
  let area = 0;
  for (const [side, curve, sign] of [
    [above, up, -1],
    [below, low, 1],
  ] as const) {
    let last: Point = [-0.5, 0];
    const fine: Point[] = [last];
    for (let i = 1; i <= 400; i += 1) {
      const next = cubicAt([-0.5, 0], curve[0], curve[1], [0.5, tip * wide], i / 400);
      area += (sign * (last[1] + next[1]) * (next[0] - last[0])) / 2;
      fine.push(next);
      last = next;
    }
    for (let k = 0; k < stations; k += 1) {
      const x = -0.5 + k / (stations - 1);
      let at = fine.findIndex((p) => p[0] >= x);
      if (at < 0) at = fine.length - 1;
      side[k] = sign * fine[at]![1];
    }
  }
  return { wide, upper: up, lower: low, tip: tip * wide, length, above, below, area };
}

/** Control points are in lengths along and widths across. */
export const shapes: Readonly<Record<PieceKind, Shape>> = {
  peanut: shape(
    0.62,
    -0.05,
    [3.2, 8],
    [
      [-0.55, -0.58],
      [0.42, -0.75],
    ],
    [
      [-0.51, 0.68],
      [0.43, 0.63],
    ],
  ),
  almond: shape(
    0.5,
    0,
    [6, 11],
    [
      [-0.52, -0.55],
      [0.1, -0.72],
    ],
    [
      [-0.52, 0.55],
      [0.1, 0.72],
    ],
  ),
  hazelnut: shape(
    0.93,
    0,
    [4.5, 8.5],
    [
      [-0.5, -0.64],
      [0.42, -0.7],
    ],
    [
      [-0.5, 0.64],
      [0.42, 0.7],
    ],
  ),
  raisin: shape(
    0.66,
    0.05,
    [4, 7.5],
    [
      [-0.6, -0.62],
      [0.44, -0.74],
    ],
    [
      [-0.46, 0.74],
      [0.5, 0.56],
    ],
  ),
  crisp: shape(
    0.82,
    0,
    [2.2, 4],
    [
      [-0.52, -0.66],
      [0.5, -0.66],
    ],
    [
      [-0.5, 0.7],
      [0.52, 0.62],
    ],
  ),
};

/** A piece in its place: centre of its long axis, length and turn; lengths mm, turn in radians, `flip` mirrors it end to end. */
export interface Kernel {
  readonly kind: PieceKind;
  x: number;
  y: number;
  turn: number;
  length: number;
  readonly flip: boolean;
  /** A number of its own for the fine lines. */
  readonly mark: number;
}

/** Whether (x, y) lies within `margin` of the kernel. */
export function inKernel(kernel: Kernel, x: number, y: number, margin = 0): boolean {
  const form = shapes[kernel.kind];
  const dx = x - kernel.x;
  const dy = y - kernel.y;
  const far = kernel.length * 0.62 + margin;
  if (dx * dx + dy * dy > far * far) return false;
  const cos = Math.cos(kernel.turn);
  const sin = Math.sin(kernel.turn);
  const reachX = kernel.length + 2 * margin;
  let u = (dx * cos + dy * sin) / reachX;
  const v = -dx * sin + dy * cos;
  if (kernel.flip) u = -u;
  const at = (u + 0.5) * (stations - 1);
  if (at <= 0 || at >= stations - 1) return false;
  const low = Math.floor(at);
  const part = at - low;
  const side = v < 0 ? form.above : form.below;
  const half = (side[low]! * (1 - part) + side[low + 1]! * part) * kernel.length;
  return v < 0 ? -v < half + margin : v < half + margin;
}

/** A point of the kernel's own frame (in lengths, tip at +.5) on the page, mm. */
export function onPage(kernel: Kernel, u: number, v: number): Point {
  const cos = Math.cos(kernel.turn);
  const sin = Math.sin(kernel.turn);
  const a = (kernel.flip ? -u : u) * kernel.length;
  const b = v * kernel.length;
  return [kernel.x + a * cos - b * sin, kernel.y + a * sin + b * cos];
}

/** Area of the kernel, mm². */
export function kernelArea(kernel: Kernel): number {
  return shapes[kernel.kind].area * kernel.length * kernel.length;
}

export function cubicAt(p0: Point, p1: Point, p2: Point, p3: Point, t: number): Point {
  const s = 1 - t;
  const a = s * s * s;
  const b = 3 * s * s * t;
  const c = 3 * s * t * t;
  const d = t * t * t;
  return [a * p0[0] + b * p1[0] + c * p2[0] + d * p3[0], a * p0[1] + b * p1[1] + c * p2[1] + d * p3[1]];
}
