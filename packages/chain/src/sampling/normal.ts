/** Coefficients of PPND16, lowest power first: M. J. Wichura, Algorithm AS 241, Appl. Statist. 37 (1988) 477. From memory; tested. */
const A = [
  3.387132872796366608, 133.14166789178437745, 1971.5909503065514427, 13731.693765509461125, 45921.953931549871457, 67265.770927008700853,
  33430.575583588128105, 2509.0809287301226727,
] as const;
const B = [
  1, 42.313330701600911252, 687.1870074920579083, 5394.1960214247511077, 21213.794301586595867, 39307.89580009271061, 28729.085735721942674,
  5226.495278852854561,
] as const;
const C = [
  1.42343711074968357734, 4.6303378461565452959, 5.7694972214606914055, 3.64784832476320460504, 1.27045825245236838258,
  0.24178072517745061177, 0.0227238449892691845833, 7.7454501427834140764e-4,
] as const;
const D = [
  1, 2.05319162663775882187, 1.6763848301838038494, 0.68976733498510000455, 0.14810397642748007459, 0.0151986665636164571966,
  5.475938084995344946e-4, 1.05075007164441684324e-9,
] as const;
const E = [
  6.6579046435011037772, 5.4637849111641143699, 1.7848265399172913358, 0.29656057182850489123, 0.026532189526576123093,
  0.0012426609473880784386, 2.71155556874348757815e-5, 2.01033439929228813265e-7,
] as const;
const F = [
  1, 0.59983220655588793769, 0.13692988092273580531, 0.0148753612908506148525, 7.868691311456132591e-4, 1.8463183175100546818e-5,
  1.4215117583164458887e-7, 2.04426310338993978564e-15,
] as const;

type Eight = readonly [number, number, number, number, number, number, number, number];

function ratio(n: Eight, d: Eight, x: number): number {
  const above = ((((((n[7] * x + n[6]) * x + n[5]) * x + n[4]) * x + n[3]) * x + n[2]) * x + n[1]) * x + n[0];
  const below = ((((((d[7] * x + d[6]) * x + d[5]) * x + d[4]) * x + d[3]) * x + d[2]) * x + d[1]) * x + d[0];
  return above / below;
}

/**
 * The number below which a share p of the standard normal distribution lies, to about 1e-15.
 * @param p - strictly between 0 and 1; NaN outside
 * @example normalQuantile(0.975) // 1.959964
 */
export function normalQuantile(p: number): number {
  const q = p - 0.5;
  if (Math.abs(q) <= 0.425) return q * ratio(A, B, 0.180625 - q * q);
  const r = Math.sqrt(-Math.log(q < 0 ? p : 1 - p));
  const x = r <= 5 ? ratio(C, D, r - 1.6) : ratio(E, F, r - 5);
  return q < 0 ? -x : x;
}

/** Cells of the table; it reaches over the middle 95 % of the shares. */
const CELLS = 2048;
const REACH = 0.475;
let table: Float64Array | undefined;

/** Value, and slope times the width of a cell, at the ends of all cells. */
function quantileTable(): Float64Array {
  const width = (2 * REACH) / CELLS;
  const result = new Float64Array(2 * CELLS + 2);
  for (let k = 0; k <= CELLS; k++) {
    const z = normalQuantile(0.5 - REACH + k * width);
    result[2 * k] = z;
    result[2 * k + 1] = width * Math.sqrt(2 * Math.PI) * Math.exp((z * z) / 2);
  }
  return result;
}

/**
 * Turns even draws into normal ones, in place: by cubic interpolation between exact values and slopes in the middle, and by
 * `normalQuantile` in the tails. Interpolation errs by at most h⁴/384 times the fourth derivative, (7z + 6z³)/φ⁴: 7e-10 of a
 * standard deviation at the ends of the table, less than the spacing of 32-bit draws there.
 */
export function shapeNormal(u: Float64Array, count: number, mean: number, sd: number): void {
  const nodes = (table ??= quantileTable());
  for (let i = 0; i < count; i++) {
    const place = (u[i]! - (0.5 - REACH)) * (CELLS / (2 * REACH));
    if (place >= 0 && place < CELLS) {
      const k = place | 0;
      const t = place - k;
      const z = nodes[2 * k]!;
      const m = nodes[2 * k + 1]!;
      const rise = nodes[2 * k + 2]! - z;
      const bend = m + nodes[2 * k + 3]! - 2 * rise;
      u[i] = mean + sd * (z + t * (m + t * (rise - m - bend + t * bend)));
    } else u[i] = mean + sd * normalQuantile(u[i]!);
  }
}
