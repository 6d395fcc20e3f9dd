import type { Point } from '../geometry/polygon.js';
import { seeded } from '../geometry/random.js';
import { Pen } from '../pen.js';

export type Chocolate = 'milk' | 'dark' | 'white';

/** How a chocolate is lined: distance between lines, two widths in turn, lengths between breaks and the break, px. */
export interface Lining {
  readonly pitch: number;
  readonly widths: readonly [number, number];
  readonly run: readonly [number, number];
  readonly gap: number;
}
export const linings: Readonly<Record<Chocolate, Lining>> = {
  dark: { pitch: 2.75, widths: [1.75, 1.35], run: [90, 420], gap: 1.9 },
  milk: { pitch: 3.1, widths: [1, 1.45], run: [31, 140], gap: 1.9 },
  white: { pitch: 4.6, widths: [0.75, 0.75], run: [10, 46], gap: 4.2 },
};

export interface ContourLines {
  readonly thin: string;
  readonly thick: string;
}

/**
 * Lines parallel to a surface, from the outer to the inner outline, broken at irregular lengths. Where the coat is thin the
 * lines crowd, so an uneven coat shows by itself.
 * @param outer - outline of the surface; `inner` has the same number of points, matched one to one, px
 * @param count - number of lines, 1 or more
 */
export function contours(outer: readonly Point[], inner: readonly Point[], count: number, kind: Chocolate, seed: number): ContourLines {
  const lining = linings[kind];
  const random = seeded(seed);
  const pens = [new Pen(), new Pen()] as const;
  for (let k = 0; k < count; k += 1) {
    const t = (k + 0.75) / (count + 0.5);
    const points = outer.map(([x, y], i): Point => [x + (inner[i]![0] - x) * t, y + (inner[i]![1] - y) * t]);
    broken(points, lining, random, pens[k % 2 === 0 ? 0 : 1]);
  }
  return { thin: pens[0].d, thick: pens[1].d };
}

/** Straight lines of a slab of chocolate inside a bar, each from x0 to x1 at its height y, px. */
export function slabLines(
  rows: readonly { readonly x0: number; readonly x1: number; readonly y: number }[],
  kind: Chocolate,
  seed: number,
): ContourLines {
  const random = seeded(seed);
  const pens = [new Pen(), new Pen()] as const;
  rows.forEach(({ x0, x1, y }, k) =>
    broken(
      [
        [x0, y],
        [x1, y],
      ],
      linings[kind],
      random,
      pens[k % 2 === 0 ? 0 : 1],
    ),
  );
  return { thin: pens[0].d, thick: pens[1].d };
}

/** Writes a polyline in pieces of irregular length with a gap after each. */
function broken(points: readonly Point[], { run, gap }: Lining, random: () => number, pen: Pen): void {
  let drawing = true;
  let left = (run[0] + (run[1] - run[0]) * random()) * random();
  const first = points[0]!;
  pen.move(first[0], first[1]);
  for (let i = 0; i + 1 < points.length; i += 1) {
    const p = points[i]!;
    const q = points[i + 1]!;
    const length = Math.hypot(q[0] - p[0], q[1] - p[1]);
    if (length < 1e-6) continue;
    let at = 0;
    while (length - at > left) {
      at += left;
      const x = p[0] + ((q[0] - p[0]) * at) / length;
      const y = p[1] + ((q[1] - p[1]) * at) / length;
      if (drawing) {
        pen.to(x, y);
        left = gap * (0.85 + 0.3 * random());
      } else {
        pen.move(x, y);
        left = run[0] + (run[1] - run[0]) * random();
      }
      drawing = !drawing;
    }
    left -= length - at;
    if (drawing) pen.to(q[0], q[1]);
  }
}
