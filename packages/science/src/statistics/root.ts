/**
 * Root of a rising function in [low, high]: Newton's step while it stays inside the bracket, else the middle.
 * Ends when the bracket or the step is at the last digits.
 */
export function rootOf(value: (x: number) => number, slope: (x: number) => number, low: number, high: number, start: number): number {
  let lo = low;
  let hi = high;
  let x = start > low && start < high ? start : (low + high) / 2;
  for (let n = 0; n < 200; n++) {
    const f = value(x);
    if (f === 0) return x;
    if (f < 0) lo = x;
    else hi = x;
    const newton = x - f / slope(x);
    const middle = middleOf(lo, hi);
    const next = newton > lo && newton < hi ? newton : middle;
    if (Math.abs(next - x) <= 2e-16 * Math.abs(x) || next === lo || next === hi) return next;
    x = next;
  }
  return x;
}

/** The middle of the logarithms where the bracket spans decades: quantiles near 0 need relative precision. */
function middleOf(lo: number, hi: number): number {
  if (lo === 0) return hi > 0.1 ? hi / 2 : hi * hi;
  return lo > 0 && hi / lo > 16 ? Math.sqrt(lo) * Math.sqrt(hi) : (lo + hi) / 2;
}
