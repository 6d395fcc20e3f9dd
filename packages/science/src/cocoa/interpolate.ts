/** Monotone cubic (Fritsch and Carlson) through rising abscissae; beyond the ends the end value. Made once, then cheap. */
export function monotoneCurve(x: readonly number[], y: readonly number[]): (at: number) => number {
  const n = x.length;
  const h = new Float64Array(n - 1);
  const d = new Float64Array(n - 1);
  for (let i = 0; i < n - 1; i++) {
    h[i] = x[i + 1]! - x[i]!;
    d[i] = (y[i + 1]! - y[i]!) / h[i]!;
  }
  const m = new Float64Array(n);
  m[0] = d[0]!;
  m[n - 1] = d[n - 2]!;
  for (let i = 1; i < n - 1; i++) {
    const a = d[i - 1]!;
    const b = d[i]!;
    if (a * b <= 0) continue;
    const w1 = 2 * h[i]! + h[i - 1]!;
    const w2 = h[i]! + 2 * h[i - 1]!;
    m[i] = (w1 + w2) / (w1 / a + w2 / b);
  }
  return (at) => {
    if (at <= x[0]!) return y[0]!;
    if (at >= x[n - 1]!) return y[n - 1]!;
    let i = 0;
    while (at > x[i + 1]!) i++;
    const t = (at - x[i]!) / h[i]!;
    const u = 1 - t;
    return y[i]! * (1 + 2 * t) * u * u + h[i]! * m[i]! * t * u * u + y[i + 1]! * t * t * (3 - 2 * t) - h[i]! * m[i + 1]! * t * t * u;
  };
}
