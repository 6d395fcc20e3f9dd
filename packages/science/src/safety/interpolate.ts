import { BadInput } from '../errors.js';

/** Place i of the interval [xs[i], xs[i + 1]] to use for x: its own, else the nearest end. xs rise; at least two. */
export function intervalOf(xs: ArrayLike<number>, x: number): number {
  let lo = 0;
  let hi = xs.length - 1;
  while (hi - lo > 1) {
    const mid = (lo + hi) >> 1;
    if (xs[mid]! <= x) lo = mid;
    else hi = mid;
  }
  return lo;
}

/** Straight line between neighbouring points; beyond the ends the end piece is continued. */
export function linearAt(xs: ArrayLike<number>, ys: ArrayLike<number>, x: number): number {
  const i = intervalOf(xs, x);
  const x0 = xs[i]!;
  const y0 = ys[i]!;
  return y0 + ((x - x0) / (xs[i + 1]! - x0)) * (ys[i + 1]! - y0);
}

/** As `linearAt` on the logarithm of y: all ys above 0. */
export function logLinearAt(xs: ArrayLike<number>, ys: ArrayLike<number>, x: number): number {
  const i = intervalOf(xs, x);
  const share = (x - xs[i]!) / (xs[i + 1]! - xs[i]!);
  return ys[i]! * (ys[i + 1]! / ys[i]!) ** share;
}

/** Slope and intercept of the least-squares line y = intercept + slope x. */
export function lineThrough(xs: ArrayLike<number>, ys: ArrayLike<number>): { slope: number; intercept: number } {
  const n = xs.length;
  let meanX = 0;
  let meanY = 0;
  for (let i = 0; i < n; i++) {
    meanX += xs[i]! / n;
    meanY += ys[i]! / n;
  }
  let xy = 0;
  let xx = 0;
  for (let i = 0; i < n; i++) {
    xy += (xs[i]! - meanX) * (ys[i]! - meanY);
    xx += (xs[i]! - meanX) ** 2;
  }
  const slope = xy / xx;
  return { slope, intercept: meanY - slope * meanX };
}

/** Throws BadInput unless there are at least two points, the xs rise strictly and both lists are of one length. */
export function requireCurve(place: string, xs: ArrayLike<number>, ys: ArrayLike<number>): void {
  if (xs.length !== ys.length)
    throw new BadInput(`${place} has ${xs.length} places but ${ys.length} values; both lists must be of one length`);
  if (xs.length < 2) throw new BadInput(`${place} has ${xs.length} point; at least two are expected`);
  for (let i = 1; i < xs.length; i++) {
    if (!(xs[i]! > xs[i - 1]!)) throw new BadInput(`${place}: value ${i + 1} is ${xs[i]}, but more than ${xs[i - 1]} is expected`);
  }
}
