import { reach, type Cell } from '../geometry/cell.js';
import { clipByTest, type Point } from '../geometry/polygon.js';
import { seeded } from '../geometry/random.js';
import { Pen } from '../pen.js';
import { inKernel, shapes, type Kernel } from './kernel.js';

/** A round hole: an inclusion of air. */
export interface Hole {
  readonly x: number;
  readonly y: number;
  readonly r: number;
}

/**
 * Level lines of a stretched, flowing mass: gently waved, drawn aside by what lies in it, never crossing, stopped a hair
 * before every kernel and hole.
 * @param pitch - distance between lines, mm
 * @param still - 1 for calm level lines (jelly), 0 for the waves of caramel
 */
export function flowLines(
  cell: Cell,
  kernels: readonly Kernel[],
  holes: readonly Hole[],
  pitch: number,
  seed: number,
  scale: number,
  still = 0,
): string {
  const count = Math.max(1, Math.round(cell.h / pitch));
  const step = 0.42;
  const columns = Math.max(2, Math.ceil(cell.w / step) + 1);
  const random = seeded(seed);
  const phase = [random() * 6.28, random() * 6.28, random() * 6.28, random() * 6.28] as const;
  const bodies = bend(kernels, holes);
  const least = Math.min(0.1, pitch * 0.3);
  const lines: Point[][] = Array.from({ length: count }, () => []);
  for (let c = 0; c < columns; c += 1) {
    const x = Math.min(cell.w, c * step);
    let above = 0;
    for (let k = 0; k < count; k += 1) {
      const level = ((k + 0.5) / count) * cell.h;
      const wave =
        (1 - still) *
        0.12 *
        (Math.sin(x * 0.71 + phase[0] + k * 0.19) +
          0.7 * Math.sin(x * 1.37 + phase[1] - k * 0.31) +
          0.5 * Math.sin(x * 0.27 + phase[2] + k * 0.53));
      let y = level + wave;
      let aside = 0;
      for (const b of bodies) {
        const dx = (x - b.x) / b.a;
        if (dx > 2.2 || dx < -2.2) continue;
        const dy = (y - b.y) / b.b;
        if (dy > 3 || dy < -3) continue;
        aside += b.b * 0.62 * Math.tanh(dy * 4) * Math.exp(-(dx * dx * 1.4 + dy * dy * 0.9));
      }
      // lines close up towards a wall, they do not pile up on it
      y += Math.min(Math.max(aside, -0.6 * level), 0.6 * (cell.h - level));
      // never above the line before, never pressed out of the layer
      y = Math.min(Math.max(y, above + least), cell.h - least * (count - k));
      above = y;
      lines[k]!.push([x, y]);
    }
  }
  const open = (x: number, y: number): boolean => {
    const [x0, x1] = reach(cell, y);
    if (x < x0 || x > x1) return false;
    for (const kernel of kernels) if (inKernel(kernel, x, y, 0.1)) return false;
    for (const hole of holes) if (Math.hypot(x - hole.x, y - hole.y) < hole.r + 0.06) return false;
    return true;
  };
  const pen = new Pen();
  for (const points of lines) {
    for (const part of clipByTest(points, open)) {
      if (Math.abs(part[part.length - 1]![0] - part[0]![0]) < 0.12) continue;
      pen.smooth(thin(part).map(([x, y]): Point => [x * scale, y * scale]));
    }
  }
  return pen.d;
}

/** Where each body pushes the lines: its middle and half sizes along and across the flow. */
function bend(kernels: readonly Kernel[], holes: readonly Hole[]): { x: number; y: number; a: number; b: number }[] {
  const out = kernels.map((kernel) => {
    const wide = shapes[kernel.kind].wide;
    const cos = Math.cos(kernel.turn);
    const sin = Math.sin(kernel.turn);
    return {
      x: kernel.x,
      y: kernel.y,
      a: (kernel.length / 2) * Math.hypot(cos, wide * sin),
      b: (kernel.length / 2) * Math.hypot(sin, wide * cos),
    };
  });
  for (const hole of holes) out.push({ x: hole.x, y: hole.y, a: hole.r, b: hole.r });
  return out;
}

/** Drops points that a smooth line does not need. */
function thin(points: readonly Point[]): Point[] {
  const out: Point[] = [points[0]!];
  for (let i = 1; i + 1 < points.length; i += 1) {
    const last = out[out.length - 1]!;
    const p = points[i]!;
    const q = points[i + 1]!;
    const off =
      Math.abs((q[0] - last[0]) * (p[1] - last[1]) - (q[1] - last[1]) * (p[0] - last[0])) /
      (Math.hypot(q[0] - last[0], q[1] - last[1]) || 1);
    if (off > 0.02 || p[0] - last[0] > 1.5) out.push(p);
  }
  if (points.length > 1) out.push(points[points.length - 1]!);
  return out;
}
