import { clipByTest, inside, type Point } from './geometry/polygon.js';
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
 * @param side - only the parts outside the other outline, which is closed for this test, or all
 */
export function apartFrom(points: readonly Point[], other: readonly Point[], by: number, side: 'outside' | 'any' = 'any'): string {
  const near = nearTo(other, by);
  const dense: Point[] = [];
  points.forEach((q, i) => {
    const p = points[i - 1];
    const count = p === undefined ? 1 : Math.max(1, Math.ceil(Math.hypot(q[0] - p[0], q[1] - p[1]) / 9));
    for (let k = 1; k < count; k += 1) dense.push([p![0] + ((q[0] - p![0]) * k) / count, p![1] + ((q[1] - p![1]) * k) / count]);
    dense.push(q);
  });
  const pen = new Pen();
  for (const part of clipByTest(dense, (x, y) => !near(x, y) && (side === 'any' || !inside(other, x, y)))) pen.through(part);
  return pen.d;
}

/** What one outline holds more than another with matching points: a polygon for every stretch where the two differ. */
export function between(outer: readonly Point[], inner: readonly Point[]): Point[][] {
  const out: Point[][] = [];
  let run: number[] = [];
  const finish = (): void => {
    if (run.length > 0) {
      const from = Math.max(0, run[0]! - 1);
      const to = Math.min(outer.length, run[run.length - 1]! + 2);
      out.push([...outer.slice(from, to), ...inner.slice(from, to).reverse()]);
    }
    run = [];
  };
  outer.forEach(([x, y], i) => {
    if (Math.hypot(x - inner[i]![0], y - inner[i]![1]) > 0.01) run.push(i);
    else finish();
  });
  finish();
  return out;
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
