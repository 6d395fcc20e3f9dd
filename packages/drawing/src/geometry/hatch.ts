import { Pen } from '../pen.js';
import { bounds, spans, type Point } from './polygon.js';

export interface Hatch {
  /** Distance between lines, measured across them, px. */
  readonly pitch: number;
  /** Slope of the lines, degrees; 45 rises to the right. */
  readonly angle?: number;
}

/** Straight hatch lines cut to a polygon. Lines of one pitch and angle align across shapes. */
export function hatch(polygon: readonly Point[], { pitch, angle = 45 }: Hatch): string {
  const pen = new Pen();
  const { x0, y0, x1, y1 } = bounds(polygon);
  if (!(x1 > x0) || !(y1 > y0)) return '';
  const turn = (-angle * Math.PI) / 180;
  const ux = Math.cos(turn);
  const uy = Math.sin(turn);
  const corners: Point[] = [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ];
  const across = corners.map(([x, y]) => -uy * x + ux * y);
  const along = corners.map(([x, y]) => ux * x + uy * y);
  const from = Math.ceil(Math.min(...across) / pitch);
  const to = Math.floor(Math.max(...across) / pitch);
  const start = Math.min(...along) - 1;
  const end = Math.max(...along) + 1;
  for (let k = from; k <= to; k += 1) {
    const v = k * pitch;
    const p: Point = [ux * start - uy * v, uy * start + ux * v];
    const q: Point = [ux * end - uy * v, uy * end + ux * v];
    for (const [a, b] of spans(p, q, polygon)) {
      if ((b - a) * (end - start) < 0.4) continue;
      pen.segment(p[0] + (q[0] - p[0]) * a, p[1] + (q[1] - p[1]) * a, p[0] + (q[0] - p[0]) * b, p[1] + (q[1] - p[1]) * b);
    }
  }
  return pen.d;
}
