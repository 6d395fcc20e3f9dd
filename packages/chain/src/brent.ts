/** One point of a function searched: where, and its value there (NaN where it has none). */
export interface Point {
  readonly x: number;
  readonly f: number;
}

/**
 * The zero of a function between two points of opposite sign (R. P. Brent, Algorithms for Minimization without Derivatives,
 * 1973, ch. 4: bisection, secant and inverse quadratic interpolation). Ends when |f| is at most `tolerance` or the interval
 * cannot be halved any more, as at a jump; the caller looks at f to tell which.
 *
 * @returns the better end of the last interval, and how often f was asked; NaN from f ends the search there
 */
export function brent(
  f: (x: number) => number,
  one: Point,
  other: Point,
  tolerance: number,
  limit = 200,
): Point & { readonly iterations: number } {
  let [a, fa, b, fb] = [one.x, one.f, other.x, other.f];
  let [c, fc] = [a, fa];
  let step = b - a;
  let previous = step;
  const width = Math.abs(step);
  for (let iterations = 0; ; iterations++) {
    if (fb > 0 === fc > 0) {
      [c, fc] = [a, fa];
      step = previous = b - a;
    }
    if (Math.abs(fc) < Math.abs(fb)) {
      [a, fa, b, fb, c, fc] = [b, fb, c, fc, b, fb];
    }
    const least = Number.EPSILON * Math.max(2 * Math.abs(b), width);
    const half = (c - b) / 2;
    if (Math.abs(fb) <= tolerance || Math.abs(half) <= least || iterations >= limit) return { x: b, f: fb, iterations };
    if (Math.abs(previous) >= least && Math.abs(fa) > Math.abs(fb)) {
      const s = fb / fa;
      let p: number;
      let q: number;
      if (a === c) {
        p = 2 * half * s;
        q = 1 - s;
      } else {
        const r = fb / fc;
        const t = fa / fc;
        p = s * (2 * half * t * (t - r) - (b - a) * (r - 1));
        q = (t - 1) * (r - 1) * (s - 1);
      }
      if (p > 0) q = -q;
      else p = -p;
      const interpolates = 2 * p < Math.min(3 * half * q - Math.abs(least * q), Math.abs(previous * q));
      previous = interpolates ? step : half;
      step = interpolates ? p / q : half;
    } else {
      step = previous = half;
    }
    [a, fa] = [b, fb];
    b += Math.abs(step) > least ? step : half > 0 ? least : -least;
    fb = f(b);
    if (Number.isNaN(fb)) return { x: a, f: fa, iterations: iterations + 1 };
  }
}
