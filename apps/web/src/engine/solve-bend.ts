/**
 * Turns a root until a number that rests on it takes the value asked for. The number is nearly straight in the root over the
 * little way a hand pulls it, so the secant finds it in a few tries.
 *
 * @param ask - the number with the root at x; NaN where there is none
 * @returns the root, or undefined where no way was found
 */
export function turnUntil(
  ask: (x: number) => number,
  start: number,
  wanted: number,
  [low, high]: readonly [number, number],
): number | undefined {
  const tolerance = 1e-9 * Math.max(Math.abs(wanted), 1e-12);
  let x0 = start;
  let f0 = ask(x0) - wanted;
  if (Math.abs(f0) <= tolerance) return x0;
  let x1 = start + Math.max(Math.abs(start) * 1e-4, 1e-7);
  if (x1 > high) x1 = start - Math.max(Math.abs(start) * 1e-4, 1e-7);
  for (let i = 0; i < 12; i++) {
    const f1 = ask(x1) - wanted;
    if (Number.isNaN(f1)) return undefined;
    if (Math.abs(f1) <= tolerance) return x1;
    const slope = (f1 - f0) / (x1 - x0);
    if (slope === 0 || !Number.isFinite(slope)) return undefined;
    [x0, f0] = [x1, f1];
    const next = Math.min(high, Math.max(low, x1 - f1 / slope));
    if (next === x1) return x1;
    x1 = next;
  }
  return Math.abs(f0) <= 1e-4 * Math.abs(wanted) ? x0 : undefined;
}
