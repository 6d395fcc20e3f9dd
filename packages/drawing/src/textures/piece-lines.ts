import type { Point } from '../geometry/polygon.js';
import { seeded } from '../geometry/random.js';
import { Pen } from '../pen.js';
import { onPage, shapes, type Kernel } from './kernel.js';

/** Outlines, inner lines and grain of pieces, each as one path, px. */
export interface PieceLines {
  readonly outline: string;
  readonly inner: string;
  readonly dots: string;
}

/** Draws pieces already laid out, `scale` px per mm; `fine` adds the small inner lines. */
export function pieceLines(kernels: readonly Kernel[], scale: number, fine: boolean): PieceLines {
  const outline = new Pen();
  const inner = new Pen();
  const dots = new Pen();
  for (const kernel of kernels) {
    const form = shapes[kernel.kind];
    const at = (u: number, v: number): Point => {
      const [x, y] = onPage(kernel, u, v);
      return [x * scale, y * scale];
    };
    const blunt = at(-0.5, 0);
    const tip = at(0.5, form.tip);
    const [u1, u2] = form.upper.map(([u, v]) => at(u, v)) as [Point, Point];
    const [l1, l2] = form.lower.map(([u, v]) => at(u, v)) as [Point, Point];
    outline.move(blunt[0], blunt[1]);
    outline.cubic(u1[0], u1[1], u2[0], u2[1], tip[0], tip[1]);
    outline.cubic(l2[0], l2[1], l1[0], l1[1], blunt[0], blunt[1]).close();
    if (kernel.length * scale < 9) continue;
    inside[kernel.kind](kernel, at, inner, dots, fine);
  }
  return { outline: outline.d, inner: inner.d, dots: dots.d };
}

type Place = (u: number, v: number) => Point;
type Inside = (kernel: Kernel, at: Place, lines: Pen, dots: Pen, fine: boolean) => void;

const curve = (at: Place, lines: Pen, points: readonly Point[]): void => {
  lines.smooth(points.map(([u, v]) => at(u, v)));
};

/** Grain along the shaded side, between two depths below the axis. */
function grain(kernel: Kernel, at: Place, dots: Pen, count: number, low: number, high: number): void {
  const random = seeded(kernel.mark);
  const form = shapes[kernel.kind];
  for (let i = 0; i < count; i += 1) {
    const u = -0.36 + 0.7 * random();
    const depth = form.below[Math.round((u + 0.5) * 32)]!;
    const v = depth * (low + (high - low) * Math.sqrt(random()));
    const [x, y] = at(u, v);
    dots.segment(x, y, x + 0.01, y);
  }
}

const inside: Readonly<Record<Kernel['kind'], Inside>> = {
  peanut: (kernel, at, lines, dots, fine) => {
    const w = shapes.peanut.wide;
    const lean = ((kernel.mark % 7) / 7 - 0.5) * 0.1 * w;
    // the cleft between the halves, from end to germ
    curve(at, lines, [
      [-0.5, 0],
      [-0.3, -0.17 * w + lean],
      [-0.05, -0.2 * w + lean],
      [0.22, -0.12 * w + lean],
      [0.5, shapes.peanut.tip],
    ]);
    if (!fine) return;
    curve(at, lines, [
      [-0.2, 0.14 * w],
      [0.0, 0.2 * w],
      [0.2, 0.17 * w],
    ]);
    curve(at, lines, [
      [-0.28, 0.22 * w],
      [-0.02, 0.3 * w],
      [0.26, 0.22 * w],
    ]);
    curve(at, lines, [
      [-0.14, 0.36 * w],
      [0.06, 0.375 * w],
      [0.27, 0.3 * w],
    ]);
    grain(kernel, at, dots, Math.round(5 + kernel.length * 3), 0.3, 0.93);
  },
  almond: (kernel, at, lines, dots, fine) => {
    const w = shapes.almond.wide;
    for (const v of fine ? [-0.26, -0.12, 0.03, 0.18, 0.31] : [-0.12, 0.14]) {
      const from = -0.34 + 0.06 * ((kernel.mark >> 2) % 3);
      curve(at, lines, [
        [from, v * w * 0.8],
        [-0.05, v * w * 1.08],
        [0.2, v * w * 0.86],
        [0.43 - Math.abs(v) * 0.3, v * w * 0.2],
      ]);
    }
    if (fine) grain(kernel, at, dots, Math.round(6 + kernel.length * 2), 0.5, 0.94);
  },
  hazelnut: (kernel, at, lines, dots, fine) => {
    const w = shapes.hazelnut.wide;
    // the pale scar where the cup sat, and the hollow in the middle
    curve(at, lines, [
      [-0.36, -0.3 * w],
      [-0.27, 0],
      [-0.36, 0.3 * w],
    ]);
    if (!fine) return;
    curve(at, lines, [
      [-0.1, 0.3 * w],
      [0.12, 0.31 * w],
      [0.3, 0.2 * w],
    ]);
    grain(kernel, at, dots, Math.round(6 + kernel.length * 3), 0.45, 0.94);
  },
  raisin: (kernel, at, lines, _dots, fine) => {
    const w = shapes.raisin.wide;
    const steps = fine ? 6 : 3;
    for (let i = 1; i < steps; i += 1) {
      const v = (-0.4 + (0.8 * i) / steps) * w;
      const wave = 0.045 * w * (kernel.mark % 2 === 0 ? 1 : -1);
      const reach = 0.4 * Math.sqrt(Math.max(0.1, 1 - Math.pow((2 * v) / w, 2)));
      curve(at, lines, [
        [-reach, v * 0.8],
        [-reach * 0.3, v + wave],
        [reach * 0.25, v - wave],
        [reach, v * 0.85],
      ]);
    }
  },
  crisp: (kernel, at, lines, _dots, fine) => {
    const random = seeded(kernel.mark);
    const holes = fine ? 5 : 2;
    for (let i = 0; i < holes; i += 1) {
      const a = ((i + 0.4 * random()) / holes) * 6.283;
      const [x, y] = at(0.25 * Math.cos(a), 0.21 * Math.sin(a));
      lines.ring(x, y, Math.abs(x - at(0.25 * Math.cos(a) + 0.05 + 0.04 * random(), 0.21 * Math.sin(a))[0]) + 0.6);
    }
  },
};
