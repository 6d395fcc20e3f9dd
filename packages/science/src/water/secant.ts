/**
 * Root of a smooth rising function from two guesses: secants, kept inside a bracket that is halved where a secant would leave it.
 *
 * @param low - where the function is below 0, or the answer itself
 * @param high - where it is above 0, or the answer itself
 * @param tolerance - last step of x, absolute; a secant's error after it is far smaller
 */
export function secantRoot(of: (x: number) => number, guess: number, next: number, low: number, high: number, tolerance: number): number {
  let [a, b] = [Math.min(Math.max(guess, low), high), Math.min(Math.max(next, low), high)];
  let fa = of(a);
  if (fa === 0) return a;
  if (fa < 0) low = a;
  else high = a;
  if (b <= low || b >= high) b = (low + high) / 2;
  for (let step = 0; step < 200; step++) {
    const fb = of(b);
    if (fb === 0) return b;
    if (fb < 0) low = b;
    else high = b;
    let c = b - (fb * (b - a)) / (fb - fa);
    if (!(c > low && c < high)) c = (low + high) / 2;
    if (Math.abs(c - b) <= tolerance || high - low <= tolerance) return c;
    [a, fa, b] = [b, fb, c];
  }
  return b;
}

/**
 * Root of a smooth rising function with its slope: Newton's steps, kept inside a bracket that is halved where one would leave it.
 *
 * @param of - the function; `slope` gives its slope where it was last asked
 * @param low - where the function is below 0
 * @param high - where it is above 0
 * @param tolerance - step of x after which the answer counts as reached; its error is of the order of its square
 */
export function newtonRoot(
  of: (x: number) => number,
  slope: () => number,
  guess: number,
  low: number,
  high: number,
  tolerance: number,
): number {
  let x = Math.min(Math.max(guess, low), high);
  for (let step = 0; step < 200; step++) {
    const value = of(x);
    if (value === 0) return x;
    if (value < 0) low = x;
    else high = x;
    const newton = x - value / slope();
    const next = newton > low && newton < high ? newton : (low + high) / 2;
    if (Math.abs(next - x) <= tolerance || high - low <= tolerance) return next;
    x = next;
  }
  return x;
}
