/** Straight line between the rows of a table; beyond its ends the last slope runs on. xs ascending. */
export function interpolate(x: number, xs: readonly number[], ys: readonly number[]): number {
  let i = 1;
  while (i < xs.length - 1 && x > xs[i]!) i++;
  const share = (x - xs[i - 1]!) / (xs[i]! - xs[i - 1]!);
  return ys[i - 1]! + share * (ys[i]! - ys[i - 1]!);
}

/**
 * Root of an increasing function on [low, high]: false position with the stale end halved, and the middle every third step. Ends at 1e-12 of
 * the span; where the function has one sign throughout, the end nearer to its root.
 */
export function rootOfIncreasing(of: (x: number) => number, low: number, high: number): number {
  const small = 1e-12 * (high - low);
  let atLow = of(low);
  if (atLow >= 0) return low;
  let atHigh = of(high);
  if (atHigh <= 0) return high;
  let x = low;
  for (let step = 0; step < 120 && high - low > small; step++) {
    const secant = (low * atHigh - high * atLow) / (atHigh - atLow);
    const next = step % 3 === 2 || !(secant > low && secant < high) ? (low + high) / 2 : secant;
    if (step > 2 && Math.abs(next - x) <= small) return next;
    x = next;
    const value = of(x);
    if (value === 0) return x;
    if (value < 0) {
      low = x;
      atLow = value;
      atHigh /= 2;
    } else {
      high = x;
      atHigh = value;
      atLow /= 2;
    }
  }
  return (low + high) / 2;
}
