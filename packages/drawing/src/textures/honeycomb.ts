import { cellArea, cellOutline, type Cell } from '../geometry/cell.js';
import { area as areaOf, type Point } from '../geometry/polygon.js';
import { seeded } from '../geometry/random.js';
import { Pen } from '../pen.js';
import type { FoamDrawing } from './foam.js';

/**
 * Many-sided cells for a light foam such as marshmallow: the face is divided among jittered centres and each part is
 * shrunk towards its middle until the cells cover the share of air.
 */
export function honeycomb(
  cell: Cell,
  air: number,
  seed: number,
  grain: number,
  scale: number,
  taken: { area: number; hit: (x: number, y: number, r: number) => boolean },
): FoamDrawing {
  const pitch = 0.92 * grain;
  const random = seeded(seed);
  const row = pitch * 0.866;
  const columns = Math.ceil(cell.w / pitch) + 2;
  const rows = Math.ceil(cell.h / row) + 2;
  const centres: Point[] = [];
  for (let j = 0; j < rows; j += 1) {
    for (let i = 0; i < columns; i += 1) {
      const x = (i - 0.5 + (j % 2) * 0.5 + (random() - 0.5) * 0.72) * pitch;
      const y = cell.h - (j - 0.5 + (random() - 0.5) * 0.72) * row;
      centres.push([x, y]);
    }
  }
  const outline = cellOutline(cell, 4);
  const parts: Point[][] = [];
  let whole = 0;
  centres.forEach(([x, y], at) => {
    let part: Point[] = outline;
    for (let j = -2; j <= 2; j += 1) {
      for (let i = -2; i <= 2; i += 1) {
        const other = centres[at + j * columns + i];
        if ((i === 0 && j === 0) || other === undefined || part.length < 3) continue;
        part = nearer(part, x, y, other[0], other[1]);
      }
    }
    // a part that meets a kernel is left to the kernel; the others grow to make up for it
    if (part.length < 3 || part.some(([px, py]) => taken.hit(px, py, 0.03)) || taken.hit(x, y, 0.2)) return;
    parts.push(part);
    whole += Math.abs(areaOf(part));
  });
  const side = Math.min(0.985, Math.sqrt((air * (cellArea(cell) - taken.area)) / whole));
  const pen = new Pen();
  for (const part of parts) {
    const [mx, my] = middle(part);
    const shrunk = part.map(([px, py]): Point => [(mx + (px - mx) * side) * scale, (my + (py - my) * side) * scale]);
    pen.through(shrunk, true);
  }
  return { d: pen.d, area: whole * side * side, count: pen.pieces };
}

/** The part of a convex polygon that is nearer to (x, y) than to (ox, oy). */
function nearer(polygon: readonly Point[], x: number, y: number, ox: number, oy: number): Point[] {
  const nx = ox - x;
  const ny = oy - y;
  const limit = (ox * ox + oy * oy - x * x - y * y) / 2;
  const out: Point[] = [];
  for (let i = 0; i < polygon.length; i += 1) {
    const p = polygon[i]!;
    const q = polygon[(i + 1) % polygon.length]!;
    const dp = p[0] * nx + p[1] * ny - limit;
    const dq = q[0] * nx + q[1] * ny - limit;
    if (dp <= 0) out.push(p);
    if (dp < 0 !== dq < 0 && dp !== dq) {
      const t = dp / (dp - dq);
      out.push([p[0] + (q[0] - p[0]) * t, p[1] + (q[1] - p[1]) * t]);
    }
  }
  return out;
}

function middle(polygon: readonly Point[]): Point {
  let x = 0;
  let y = 0;
  let sum = 0;
  for (let i = 0; i < polygon.length; i += 1) {
    const [x1, y1] = polygon[i]!;
    const [x2, y2] = polygon[(i + 1) % polygon.length]!;
    const cross = x1 * y2 - x2 * y1;
    sum += cross;
    x += (x1 + x2) * cross;
    y += (y1 + y2) * cross;
  }
  return sum === 0 ? (polygon[0] ?? [0, 0]) : [x / (3 * sum), y / (3 * sum)];
}
