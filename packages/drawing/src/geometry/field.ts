import { Pen } from '../pen.js';
import type { Point } from './polygon.js';

/** Numbers on a grid: `rows[i][j]` stands at (x[i], y[j]); x and y rise. */
export interface Field {
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly rows: readonly (readonly number[])[];
}

/** Where a value lies in a rising list: the place before it and how far on, 0 to 1; ends hold. */
export function placeIn(list: readonly number[], value: number): readonly [number, number] {
  let lo = 0;
  let hi = list.length - 1;
  if (!(value > list[0]!)) return [0, 0];
  if (value >= list[hi]!) return [Math.max(0, hi - 1), hi > 0 ? 1 : 0];
  while (hi - lo > 1) {
    const middle = (lo + hi) >> 1;
    if (list[middle]! <= value) lo = middle;
    else hi = middle;
  }
  return [lo, (value - list[lo]!) / (list[hi]! - list[lo]!)];
}

/** Value between the grid points, linear along each axis. */
export function valueAt(field: Field, x: number, y: number): number {
  const [i, p] = placeIn(field.x, x);
  const [j, q] = placeIn(field.y, y);
  const at = (row: readonly number[]): number => row[j]! + q * ((row[j + 1] ?? row[j]!) - row[j]!);
  const [before, after] = [field.rows[i]!, field.rows[i + 1] ?? field.rows[i]!];
  return at(before) + p * (at(after) - at(before));
}

/** Lines on which the field has a level, joined from cell to cell (marching squares); closed ones end where they begin. */
export function contours(field: Field, level: number): Point[][] {
  const { x, y, rows } = field;
  const [nx, ny] = [x.length, y.length];
  const above = (i: number, j: number): boolean => rows[i]![j]! > level;
  const between = (a: number, b: number): number => (level - a) / (b - a);
  // an edge is known by its lower grid point and its direction
  const key = (i: number, j: number, upright: 0 | 1): number => 2 * (i * ny + j) + upright;
  const points = new Map<number, Point>();
  const next = new Map<number, number[]>();
  const crossing = (i: number, j: number, upright: 0 | 1): number => {
    const id = key(i, j, upright);
    if (!points.has(id)) {
      const [k, l] = upright ? [i, j + 1] : [i + 1, j];
      const share = between(rows[i]![j]!, rows[k]![l]!);
      points.set(id, [x[i]! + share * (x[k]! - x[i]!), y[j]! + share * (y[l]! - y[j]!)]);
    }
    return id;
  };
  const join = (a: number, b: number): void => {
    next.set(a, [...(next.get(a) ?? []), b]);
    next.set(b, [...(next.get(b) ?? []), a]);
  };
  for (let i = 0; i + 1 < nx; i += 1)
    for (let j = 0; j + 1 < ny; j += 1) {
      const corner = [above(i, j), above(i + 1, j), above(i + 1, j + 1), above(i, j + 1)] as const;
      const cuts: number[] = [];
      if (corner[0] !== corner[1]) cuts.push(crossing(i, j, 0));
      if (corner[1] !== corner[2]) cuts.push(crossing(i + 1, j, 1));
      if (corner[2] !== corner[3]) cuts.push(crossing(i, j + 1, 0));
      if (corner[3] !== corner[0]) cuts.push(crossing(i, j, 1));
      if (cuts.length === 2) join(cuts[0]!, cuts[1]!);
      else if (cuts.length === 4) {
        // a saddle: the mean of the corners says which two belong together
        const middle = (rows[i]![j]! + rows[i + 1]![j]! + rows[i + 1]![j + 1]! + rows[i]![j + 1]!) / 4 > level;
        const [a, b, c, d] = cuts as [number, number, number, number];
        if (middle === corner[0]) {
          join(a, b);
          join(c, d);
        } else {
          join(a, d);
          join(b, c);
        }
      }
    }
  const out: Point[][] = [];
  const walk = (start: number): void => {
    const line = [points.get(start)!];
    let at = start;
    for (;;) {
      const onward = next.get(at)?.pop();
      if (onward === undefined) break;
      const back = next.get(onward)!;
      back.splice(back.indexOf(at), 1);
      line.push(points.get(onward)!);
      at = onward;
    }
    if (line.length > 1) out.push(line);
  };
  // open lines from their ends first, then what is left: closed ones
  for (const [id, ways] of next) if (ways.length === 1) walk(id);
  for (const [id, ways] of next) if (ways.length > 0) walk(id);
  return out;
}

/** Hatch lines of a box, kept where `inside` holds, looked at every 2 px. Lines of one pitch align with those of `hatch`. */
export function hatchWhere(
  box: { readonly x0: number; readonly y0: number; readonly x1: number; readonly y1: number },
  inside: (x: number, y: number) => boolean,
  pitch = 6.5,
): string {
  const pen = new Pen();
  const apart = pitch * Math.SQRT2; // along an axis
  const { x0, y0, x1, y1 } = box;
  for (let k = Math.ceil((x0 + y0) / apart); k * apart <= x1 + y1; k += 1) {
    const sum = k * apart; // x + y along a line that rises to the right
    const [from, to] = [Math.max(x0, sum - y1), Math.min(x1, sum - y0)];
    let start: number | undefined;
    for (let x = from; ; x = Math.min(to, x + 1.4)) {
      const holds = inside(x, sum - x);
      if (holds && start === undefined) start = x;
      if (start !== undefined && (!holds || x >= to)) {
        if (x - start > 1) pen.segment(start, sum - start, x, sum - x);
        start = undefined;
      }
      if (x >= to) break;
    }
  }
  return pen.d;
}
