import { BadInput, OutOfRange, requireRange } from '../errors.js';
import type { Celsius, MassFraction, WaterActivity } from '../units.js';

/** Constants of Guggenheim, Anderson and de Boer: monolayer (kg/kg dry), C, K. K = 1 is BET. */
export type Gab = readonly [monolayer: number, C: number, K: number];

/**
 * GAB isotherm: m = m0 C K a/((1 - K a)(1 - K a + C K a)).
 *
 * @param aw - 0 to below 1/K
 * @returns kg of water per kg dry
 * @throws OutOfRange where K a reaches 1
 */
export function gabMoisture([m0, C, K]: Gab, aw: WaterActivity): number {
  const x = K * aw;
  if (!(aw >= 0 && x < 1)) throw new OutOfRange('water_activity', aw, [0, 1 / K], 'gab');
  return (m0 * C * x) / ((1 - x) * (1 - x + C * x));
}

/** Its slope, kg/kg per unit of water activity. */
export function gabSlope([m0, C, K]: Gab, aw: WaterActivity): number {
  const x = K * aw;
  const free = (1 - x) * (1 - x + C * x);
  const freeSlope = -(1 - x + C * x) + (1 - x) * (C - 1);
  return (m0 * C * K * (free - x * freeSlope)) / (free * free);
}

/** Water activity at a moisture (kg/kg dry): the isotherm turned round, a quadratic in K a. */
export function gabActivity([m0, C, K]: Gab, moisture: number): WaterActivity {
  if (!(moisture >= 0 && moisture < Infinity)) throw new OutOfRange('moisture_dry_basis', moisture, [0, Infinity], 'gab');
  if (moisture === 0) return 0;
  // (C - 1) x² + (2 - C + C m0/m) x - 1 = 0, x = K a.
  const a = C - 1;
  const b = 2 - C + (C * m0) / moisture;
  const x = Math.abs(a) < 1e-12 ? 1 / b : (-b + Math.sqrt(b * b + 4 * a)) / (2 * a);
  return x / K;
}

/** Oswin: m = k (a/(1 - a))^n. */
export function oswinMoisture(k: number, n: number, aw: WaterActivity): number {
  requireRange('water_activity', aw, [0, 0.9999], 'oswin');
  return k * (aw / (1 - aw)) ** n;
}

/** Henderson, modified: 1 - a = exp(-A (t + B) M^C), M per cent dry basis; returns kg/kg dry. */
export function hendersonMoisture(A: number, B: number, C: number, aw: WaterActivity, t: Celsius): number {
  requireRange('water_activity', aw, [0, 0.9999], 'asae-d245');
  return (-Math.log1p(-aw) / (A * (t + B))) ** (1 / C) / 100;
}

/** Chung and Pfost, modified: M per cent dry basis = -ln(-(t + C) ln a/A)/B; returns kg/kg dry, from 0. */
export function chungPfostMoisture(A: number, B: number, C: number, aw: WaterActivity, t: Celsius): number {
  requireRange('water_activity', aw, [1e-6, 0.9999], 'cereal-grains-storage');
  const percent = -Math.log((-(t + C) * Math.log(aw)) / A) / B;
  if (percent < 0) throw new OutOfRange('water_activity', aw, [Math.exp(-A / (t + C)), 1], 'cereal-grains-storage');
  return percent / 100;
}

/** BET constants from the straight line a/((1 - a) m) = intercept + slope a. */
export function betFromLine(slope: number, intercept: number): { monolayer: number; C: number } {
  requireRange('intercept', intercept, [Number.MIN_VALUE, Number.MAX_VALUE], 'bet-1938');
  requireRange('slope', slope, [0, Number.MAX_VALUE], 'bet-1938');
  return { monolayer: 1 / (slope + intercept), C: slope / intercept + 1 };
}

/**
 * Fits GAB constants to measured points: a/m is a parabola in a (least squares).
 *
 * @param aw - at least three different activities
 * @param moisture - kg/kg dry, above 0
 * @throws BadInput for too few points or a parabola that no GAB isotherm has
 */
export function fitGab(aw: readonly number[], moisture: readonly number[]): Gab {
  if (aw.length !== moisture.length || aw.length < 3) {
    throw new BadInput(
      `water_activity has ${aw.length} points and moisture_dry_basis ${moisture.length}; three or more of each are expected`,
    );
  }
  const sums = [0, 0, 0, 0, 0];
  const right = [0, 0, 0];
  aw.forEach((x, i) => {
    const y = x / moisture[i]!;
    for (let power = 0; power <= 4; power++) sums[power]! += x ** power;
    for (let power = 0; power <= 2; power++) right[power]! += y * x ** power;
  });
  const [c, b, a] = solve3(
    [
      [sums[0]!, sums[1]!, sums[2]!],
      [sums[1]!, sums[2]!, sums[3]!],
      [sums[2]!, sums[3]!, sums[4]!],
    ],
    right,
  );
  // c = 1/(m0 C K), b = (C - 2)/(m0 C), a = K (1 - C)/(m0 C).
  const root = Math.sqrt(b! * b! - 4 * a! * c!);
  const K = (root - b!) / (2 * c!);
  const C = b! / (c! * K) + 2;
  const m0 = 1 / (c! * C * K);
  if (!(m0 > 0 && C > 0 && K > 0)) throw new BadInput('these points have no GAB isotherm: a/m against a must be a parabola open downwards');
  return [m0, C, K];
}

/** Gauss elimination with the largest pivot, three unknowns. */
function solve3(matrix: number[][], right: number[]): number[] {
  const rows = matrix.map((row, i) => [...row, right[i]!]);
  for (let i = 0; i < 3; i++) {
    let best = i;
    for (let k = i + 1; k < 3; k++) if (Math.abs(rows[k]![i]!) > Math.abs(rows[best]![i]!)) best = k;
    [rows[i], rows[best]] = [rows[best]!, rows[i]!];
    if (Math.abs(rows[i]![i]!) < 1e-300) throw new BadInput('three different water activities are expected');
    for (let k = i + 1; k < 3; k++) {
      const factor = rows[k]![i]! / rows[i]![i]!;
      for (let j = i; j < 4; j++) rows[k]![j]! -= factor * rows[i]![j]!;
    }
  }
  const x = [0, 0, 0];
  for (let i = 2; i >= 0; i--) {
    let sum = rows[i]![3]!;
    for (let j = i + 1; j < 3; j++) sum -= rows[i]![j]! * x[j]!;
    x[i] = sum / rows[i]![i]!;
  }
  return x;
}

/** Moisture on the whole (wet basis) of a moisture on dry matter. */
export function wetBasis(dry: number): MassFraction {
  return dry / (1 + dry);
}
