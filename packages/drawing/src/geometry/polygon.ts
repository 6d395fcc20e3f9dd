/** x, y. */
export type Point = readonly [number, number];

/** Signed area, positive when the points run clockwise on the page (y down). */
export function area(polygon: readonly Point[]): number {
  let sum = 0;
  for (let i = 0; i < polygon.length; i += 1) {
    const [x1, y1] = polygon[i]!;
    const [x2, y2] = polygon[(i + 1) % polygon.length]!;
    sum += x1 * y2 - x2 * y1;
  }
  return sum / 2;
}

/** Whether a point lies inside; on the edge either answer may come. */
export function inside(polygon: readonly Point[], x: number, y: number): boolean {
  let within = false;
  for (let i = 0, j = polygon.length - 1; i < polygon.length; j = i, i += 1) {
    const [xi, yi] = polygon[i]!;
    const [xj, yj] = polygon[j]!;
    if (yi > y !== yj > y && x < ((xj - xi) * (y - yi)) / (yj - yi) + xi) within = !within;
  }
  return within;
}

/** Parts of the segment p–q inside the polygon, as pairs of positions 0 to 1 along it. */
export function spans(p: Point, q: Point, polygon: readonly Point[]): [number, number][] {
  const dx = q[0] - p[0];
  const dy = q[1] - p[1];
  const cuts: number[] = [0, 1];
  for (let i = 0; i < polygon.length; i += 1) {
    const [ax, ay] = polygon[i]!;
    const [bx, by] = polygon[(i + 1) % polygon.length]!;
    const ex = bx - ax;
    const ey = by - ay;
    const den = dx * ey - dy * ex;
    if (den === 0) continue;
    const t = ((ax - p[0]) * ey - (ay - p[1]) * ex) / den;
    const u = ((ax - p[0]) * dy - (ay - p[1]) * dx) / den;
    if (t > 0 && t < 1 && u >= 0 && u <= 1) cuts.push(t);
  }
  cuts.sort((one, other) => one - other);
  const out: [number, number][] = [];
  for (let i = 0; i + 1 < cuts.length; i += 1) {
    const from = cuts[i]!;
    const to = cuts[i + 1]!;
    if (to - from < 1e-9) continue;
    const mid = (from + to) / 2;
    if (!inside(polygon, p[0] + dx * mid, p[1] + dy * mid)) continue;
    const last = out[out.length - 1];
    if (last !== undefined && from - last[1] < 1e-9) last[1] = to;
    else out.push([from, to]);
  }
  return out;
}

/** Pieces of a polyline that lie inside the polygon. */
export function clipPolyline(points: readonly Point[], polygon: readonly Point[]): Point[][] {
  const out: Point[][] = [];
  let run: Point[] = [];
  for (let i = 0; i + 1 < points.length; i += 1) {
    const p = points[i]!;
    const q = points[i + 1]!;
    const parts = spans(p, q, polygon);
    if (parts.length === 0 && run.length > 0) {
      out.push(run);
      run = [];
    }
    for (const [from, to] of parts) {
      const a: Point = [p[0] + (q[0] - p[0]) * from, p[1] + (q[1] - p[1]) * from];
      const b: Point = [p[0] + (q[0] - p[0]) * to, p[1] + (q[1] - p[1]) * to];
      if (from > 0 || run.length === 0) {
        if (run.length > 1) out.push(run);
        run = [a];
      }
      run.push(b);
      if (to < 1) {
        out.push(run);
        run = [];
      }
    }
  }
  if (run.length > 1) out.push(run);
  return out;
}

/** Pieces of a polyline where a test holds; ends found by halving, so segments should be shorter than what is tested for. */
export function clipByTest(points: readonly Point[], holds: (x: number, y: number) => boolean): Point[][] {
  const out: Point[][] = [];
  let run: Point[] = [];
  let was = false;
  for (let i = 0; i < points.length; i += 1) {
    const p = points[i]!;
    const now = holds(p[0], p[1]);
    if (i > 0 && now !== was) {
      const edge = boundary(points[i - 1]!, p, holds, was);
      run.push(edge);
      if (!now) {
        if (run.length > 1) out.push(run);
        run = [];
      }
    }
    if (now) run.push(p);
    was = now;
  }
  if (run.length > 1) out.push(run);
  return out;
}

function boundary(p: Point, q: Point, holds: (x: number, y: number) => boolean, atP: boolean): Point {
  let from = 0;
  let to = 1;
  for (let i = 0; i < 10; i += 1) {
    const mid = (from + to) / 2;
    if (holds(p[0] + (q[0] - p[0]) * mid, p[1] + (q[1] - p[1]) * mid) === atP) from = mid;
    else to = mid;
  }
  const t = atP ? from : to; // stay on the side where the test holds
  return [p[0] + (q[0] - p[0]) * t, p[1] + (q[1] - p[1]) * t];
}

/** Box around points. */
export function bounds(points: readonly Point[]): { x0: number; y0: number; x1: number; y1: number } {
  let x0 = Infinity;
  let y0 = Infinity;
  let x1 = -Infinity;
  let y1 = -Infinity;
  for (const [x, y] of points) {
    if (x < x0) x0 = x;
    if (x > x1) x1 = x;
    if (y < y0) y0 = y;
    if (y > y1) y1 = y;
  }
  return { x0, y0, x1, y1 };
}
