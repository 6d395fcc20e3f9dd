import { BadInput } from '../errors.js';
import { studentQuantile } from '../statistics/index.js';
import type { Celsius, Second } from '../units.js';

/** Reading of a temper curve: a sample of chocolate cooled at constant conditions, temperature logged against time. */
export interface TemperCurve {
  /** Time and temperature of the inflection, where the cooling is slowest. */
  readonly time: Second;
  readonly temperature: Celsius;
  /** Slope there, K/min; above 0 the heat of crystallisation warms the sample. */
  readonly slope: number;
  /** 95 % limits of the slope from the scatter of the readings. */
  readonly slopeLow: number;
  readonly slopeHigh: number;
  /** Whether the cooling rate has an inner extreme; without it the reading is the flattest place and means little. */
  readonly inflection: boolean;
  /** Rise between the lowest point before the inflection and the highest after it, K; 0 where it never warms. */
  readonly rise: number;
  /** Steepest cooling before the inflection, K/min (below 0). */
  readonly steepest: number;
}

/** A sample of chocolate in a cold jacket falls by some 10 K; one that spans less than this was not cooled or not measured, K. Common practice, no source. */
const leastCooling = 1;

interface Fit {
  readonly level: number;
  readonly slope: number;
  readonly error: number;
  readonly freedom: number;
}

/**
 * Inflection of a temper curve: the place after the steepest cooling where the cooling rate is smallest (second derivative 0, slope highest).
 * The derivative comes from a cubic fitted to the readings within a window around each of them, so uneven and noisy logs will do.
 *
 * @param time - s, rising; @param temperature - °C
 * @param window - half-width of the fit, s; left out: an eighth of the curve, at least three readings each side
 * @throws BadInput for unlike or short lists, or times that do not rise
 * @see temper-slope: well tempered has a slope near 0 at the inflection, under-tempered a positive, over-tempered a negative one
 */
export function temperCurve(time: readonly Second[], temperature: readonly Celsius[], window?: Second): TemperCurve {
  if (time.length !== temperature.length) {
    throw new BadInput(`temper curve has ${time.length} times but ${temperature.length} temperatures; one each is due`);
  }
  if (time.length < 9) throw new BadInput(`temper curve has ${time.length} readings; at least 9 are needed to find an inflection`);
  for (let i = 0; i < time.length; i++) {
    if (!Number.isFinite(time[i]!) || !Number.isFinite(temperature[i]!))
      throw new BadInput(`reading ${i + 1} of the temper curve is not a number`);
    if (i > 0 && !(time[i]! > time[i - 1]!))
      throw new BadInput(`times must rise, but reading ${i + 1} is at ${time[i]} s after ${time[i - 1]} s`);
  }
  const n = time.length;
  const cooled = Math.max(...temperature) - Math.min(...temperature);
  if (cooled < leastCooling) {
    throw new BadInput(
      `the temper curve spans ${+cooled.toFixed(2)} K from first to last reading; a sample that cools spans at least ${leastCooling} K: a stuck probe or no cooling, nothing can be read`,
    );
  }
  const span = time[n - 1]! - time[0]!;
  const half = window ?? span / 8;
  const fits = time.map((t) => localCubic(time, temperature, t, half));
  // Ends lean on one side only: the extreme is looked for inside.
  const first = Math.max(
    1,
    time.findIndex((t) => t >= time[0]! + half / 2),
  );
  const last =
    n -
    1 -
    Math.max(
      1,
      [...time].reverse().findIndex((t) => t <= time[n - 1]! - half / 2),
    );
  const found = slowest(fits, first, last);
  const place = found.index;
  const before = temperature.slice(0, place + 1);
  const lowest = Math.min(...before);
  const after = temperature.slice(before.indexOf(lowest));
  const t = studentQuantile(0.975, Math.max(1, fits[place]!.freedom));
  const slope = 60 * fits[place]!.slope;
  return {
    time: time[place]!,
    temperature: fits[place]!.level,
    slope,
    slopeLow: slope - 60 * t * fits[place]!.error,
    slopeHigh: slope + 60 * t * fits[place]!.error,
    inflection: found.inner,
    rise: Math.max(0, Math.max(...after) - lowest),
    steepest: 60 * Math.min(...fits.slice(first, place + 1).map((f) => f.slope)),
  };
}

/** Index of the highest slope after the steepest fall; inner where the cooling quickens again behind it. */
function slowest(fits: readonly Fit[], first: number, last: number): { index: number; inner: boolean } {
  let best = { index: first, rise: -Infinity };
  let fall = first;
  for (let i = first + 1; i <= last; i++) {
    if (fits[i]!.slope < fits[fall]!.slope && best.rise <= 0) fall = i;
    // Height of this maximum above the steepest fall before it and the steepest fall behind it, whichever is nearer.
    if (i > fall && i < last && fits[i]!.slope >= fits[i - 1]!.slope && fits[i]!.slope >= fits[i + 1]!.slope) {
      const ahead = fits[i]!.slope - Math.min(...fits.slice(first, i).map((f) => f.slope));
      const behind = fits[i]!.slope - Math.min(...fits.slice(i + 1, last + 1).map((f) => f.slope));
      const rise = Math.min(ahead, behind);
      if (rise > best.rise) best = { index: i, rise };
    }
  }
  const noise = 2 * Math.max(...fits.slice(first, last + 1).map((f) => f.error));
  if (best.rise > noise || best.rise > 1e-5) return { index: best.index, inner: best.rise > noise };
  let flattest = first;
  for (let i = first; i <= last; i++) if (Math.abs(fits[i]!.slope) < Math.abs(fits[flattest]!.slope)) flattest = i;
  return { index: flattest, inner: false };
}

/** Least squares cubic around a time, tricube weights; at least seven readings. */
function localCubic(time: readonly number[], value: readonly number[], at: number, half: number): Fit {
  // At least the seven nearest readings, and all within the window.
  const distances = time.map((t) => Math.abs(t - at));
  const width = Math.max(half, distances.toSorted((a, b) => a - b)[6]!);
  const used = distances.flatMap((d, i) => (d <= width ? [i] : []));
  const scale = Math.max(...used.map((i) => Math.abs(time[i]! - at))) * 1.001;
  const a = Array.from({ length: 4 }, () => new Float64Array(5));
  for (const i of used) {
    const x = (time[i]! - at) / scale;
    const w = (1 - Math.abs(x) ** 3) ** 3;
    const powers = [1, x, x * x, x * x * x];
    for (let r = 0; r < 4; r++) {
      for (let c = 0; c < 4; c++) a[r]![c]! += w * powers[r]! * powers[c]!;
      a[r]![4]! += w * powers[r]! * value[i]!;
    }
  }
  const inverseRow = solve(
    a.map((row) => [...row.slice(0, 4)]),
    [0, 1, 0, 0],
  );
  const p = solve(
    a.map((row) => [...row.slice(0, 4)]),
    a.map((row) => row[4]!),
  );
  let sse = 0;
  let spread = 0; // squared weights of the readings in the slope
  for (const i of used) {
    const x = (time[i]! - at) / scale;
    const w = (1 - Math.abs(x) ** 3) ** 3;
    sse += w * (value[i]! - (p[0]! + p[1]! * x + p[2]! * x * x + p[3]! * x ** 3)) ** 2;
    spread += (w * (inverseRow[0]! + inverseRow[1]! * x + inverseRow[2]! * x * x + inverseRow[3]! * x ** 3)) ** 2;
  }
  const weight = used.reduce((sum, i) => sum + (1 - Math.abs((time[i]! - at) / scale) ** 3) ** 3, 0);
  const freedom = Math.max(1, Math.round(used.length - 4));
  const variance = sse / Math.max(1e-9, weight * (freedom / used.length));
  return { level: p[0]!, slope: p[1]! / scale, error: Math.sqrt(variance * spread) / scale, freedom };
}

/** Gauss with partial pivots for four unknowns. */
function solve(matrix: number[][], right: readonly number[]): number[] {
  const n = right.length;
  const a = matrix.map((row, i) => [...row, right[i]!]);
  for (let k = 0; k < n; k++) {
    let pivot = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(a[i]![k]!) > Math.abs(a[pivot]![k]!)) pivot = i;
    [a[k], a[pivot]] = [a[pivot]!, a[k]!];
    for (let i = k + 1; i < n; i++) {
      const f = a[i]![k]! / a[k]![k]!;
      for (let j = k; j <= n; j++) a[i]![j]! -= f * a[k]![j]!;
    }
  }
  const x = new Array<number>(n).fill(0);
  for (let k = n - 1; k >= 0; k--) {
    let sum = a[k]![n]!;
    for (let j = k + 1; j < n; j++) sum -= a[k]![j]! * x[j]!;
    x[k] = sum / a[k]![k]!;
  }
  return x;
}

export type TemperState = 'under' | 'well' | 'over';

/** Reads a slope against the plant's band, K/min: above it under-tempered, below it over-tempered. */
export function temperState(slope: number, bandLow: number, bandHigh: number): TemperState {
  if (!(bandLow <= bandHigh)) throw new BadInput(`temper band runs from ${bandLow} to ${bandHigh} K/min; low must not be above high`);
  return slope > bandHigh ? 'under' : slope < bandLow ? 'over' : 'well';
}
