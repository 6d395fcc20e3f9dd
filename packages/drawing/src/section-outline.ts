import { inside, type Point } from './geometry/polygon.js';
import { Pen } from './pen.js';

/** A rounded face: its box, the radii of its corners, and whether the line leaves the underside open. Px. */
export interface Rounded {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
  readonly top: number;
  readonly bottom: number;
  readonly open: boolean;
}

const steps = 9;

/**
 * Points of the outline, clockwise from the middle of the underside (closed) or from the left foot (open). Two outlines of
 * the same kind have matching points, so lines between them can be drawn.
 */
export function outlinePoints({ x0, y0, x1, y1, top, bottom, open }: Rounded): Point[] {
  const out: Point[] = [];
  const corner = (cx: number, cy: number, r: number, from: number): void => {
    for (let i = 0; i <= steps; i += 1) {
      const a = from + (Math.PI / 2) * (i / steps);
      out.push([cx + r * Math.cos(a), cy + r * Math.sin(a)]);
    }
  };
  if (open) out.push([x0, y1]);
  else {
    out.push([(x0 + x1) / 2, y1]);
    corner(x0 + bottom, y1 - bottom, bottom, Math.PI / 2);
  }
  corner(x0 + top, y0 + top, top, Math.PI);
  corner(x1 - top, y0 + top, top, -Math.PI / 2);
  if (open) out.push([x1, y1]);
  else {
    corner(x1 - bottom, y1 - bottom, bottom, 0);
    out.push([(x0 + x1) / 2, y1]);
  }
  return out;
}

/** The outline as path data with true arcs; an open one is closed only if asked. */
export function outlinePath({ x0, y0, x1, y1, top, bottom, open }: Rounded, close = !open): string {
  const pen = new Pen();
  if (open) pen.move(x0, y1);
  else
    pen
      .move(x1 - bottom, y1)
      .to(x0 + bottom, y1)
      .arc(bottom, x0, y1 - bottom);
  pen
    .to(x0, y0 + top)
    .arc(top, x0 + top, y0)
    .to(x1 - top, y0)
    .arc(top, x1, y0 + top);
  if (open) pen.to(x1, y1);
  else pen.to(x1, y1 - bottom).arc(bottom, x1 - bottom, y1);
  return close ? pen.close().d : pen.d;
}

/**
 * The parts of one outline that lie more than `by` px away from another, as path data; where the two agree nothing is drawn.
 * @param side - only the parts outside or inside the other outline, which is closed for this test
 */
export function apartFrom(points: readonly Point[], other: readonly Point[], by: number, side: 'outside' | 'any' = 'any'): string {
  const pen = new Pen();
  const near = nearTo(other, by);
  let down = false;
  for (let i = 0; i + 1 < points.length; i += 1) {
    const p = points[i]!;
    const q = points[i + 1]!;
    const count = Math.max(1, Math.ceil(Math.hypot(q[0] - p[0], q[1] - p[1]) / 3));
    for (let k = i === 0 ? 0 : 1; k <= count; k += 1) {
      const x = p[0] + ((q[0] - p[0]) * k) / count;
      const y = p[1] + ((q[1] - p[1]) * k) / count;
      const apart = !near(x, y) && (side === 'any' || !inside(other, x, y));
      if (apart && !down) pen.move(x, y);
      else if (apart && k === count) pen.to(x, y);
      else if (!apart && down) pen.to(x, y);
      down = apart;
    }
  }
  return pen.d;
}

/** A test for "within `by` px of these lines" that starts where it last succeeded, since neighbours ask alike. */
function nearTo(points: readonly Point[], by: number): (x: number, y: number) => boolean {
  const count = points.length - 1;
  let last = 0;
  return (x, y) => {
    for (let k = 0; k < count; k += 1) {
      const at = (last + k) % count;
      const [ax, ay] = points[at]!;
      const [bx, by2] = points[at + 1]!;
      const dx = bx - ax;
      const dy = by2 - ay;
      const t = Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy || 1)));
      const ex = ax + dx * t - x;
      const ey = ay + dy * t - y;
      if (ex * ex + ey * ey > by * by) continue;
      last = at;
      return true;
    }
    return false;
  };
}
