import { BadInput, NoSolution } from '../../errors.js';
import { intervalOf, requireCurve } from '../interpolate.js';

/** trapezoid: the rate is straight between readings; exact: the temperature is; rectangle: each reading holds until the next. */
export type Rule = 'trapezoid' | 'exact' | 'rectangle';

/**
 * Equivalent minutes at a reference temperature, F = ∫ 10^((T - Tref)/z) dt, over a logged curve.
 *
 * @param minutes - times, rising
 * @param temperatures - °C at the coldest point of the product
 * @param above - no credit where T is below this, °C
 * @throws BadInput for lists of different length, times that do not rise, or a value that is not a number
 */
export function equivalentMinutes(
  minutes: ArrayLike<number>,
  temperatures: ArrayLike<number>,
  reference: number,
  z: number,
  rule: Rule = 'trapezoid',
  above = -Infinity,
): number {
  if (!(z > 0)) throw new NoSolution(`z is ${z} K, but a value above 0 is expected`);
  const perKelvin = Math.LN10 / z;
  return integrate(minutes, temperatures, (t) => (t < above ? 0 : Math.exp((t - reference) * perKelvin)), rule);
}

/**
 * Rate 1/D from a table: log D straight between its rows. Below the first row either none or the first piece continued;
 * above the last row the last D is held ('no credit') or the last piece continued ('extrapolate').
 */
export function tableRate(
  temperatures: readonly number[],
  d: readonly number[],
  outside: 'no credit' | 'extrapolate',
): (t: number) => number {
  requireCurve('The table of D', temperatures, d);
  if (d.some((value) => !(value > 0))) throw new BadInput('Every D of the table must be above 0');
  const n = temperatures.length;
  const logs = Float64Array.from(d, Math.log);
  const slopes = Float64Array.from({ length: n - 1 }, (_, i) => (logs[i + 1]! - logs[i]!) / (temperatures[i + 1]! - temperatures[i]!));
  const first = temperatures[0]!;
  const last = temperatures[n - 1]!;
  return (t) => {
    if (outside === 'no credit') {
      if (t < first) return 0;
      if (t > last) return 1 / d[n - 1]!;
    }
    const i = intervalOf(temperatures, t);
    return Math.exp(-(logs[i]! + slopes[i]! * (t - temperatures[i]!)));
  };
}

/** Log10 reduction ∫ dt / D(T) over a logged curve, by a rate 1/D in 1/min. */
export function logReduction(
  minutes: ArrayLike<number>,
  temperatures: ArrayLike<number>,
  rate: (temperature: number) => number,
  rule: Rule = 'trapezoid',
): number {
  return integrate(minutes, temperatures, rate, rule);
}

function integrate(minutes: ArrayLike<number>, temperatures: ArrayLike<number>, rate: (t: number) => number, rule: Rule): number {
  const n = minutes.length;
  if (n !== temperatures.length) throw new BadInput(`The log has ${n} times but ${temperatures.length} temperatures`);
  if (n < 2) throw new BadInput(`The log has ${n} reading; at least two are expected`);
  let sum = 0;
  let before = 0;
  for (let i = 0; i < n; i++) {
    const t = temperatures[i]!;
    const now = rate(t);
    if (!Number.isFinite(now)) throw new BadInput(`Reading ${i + 1} is ${t} °C, from which no rate follows`);
    if (i > 0) {
      const dt = minutes[i]! - minutes[i - 1]!;
      if (!(dt >= 0))
        throw new BadInput(`The clock goes from ${minutes[i - 1]} to ${minutes[i]} min at reading ${i + 1}; times must not run back`);
      sum += dt * meanRate(before, now, rule);
    }
    before = now;
  }
  return sum;
}

/** Mean of a rate between readings; where its logarithm is straight (temperature straight), the logarithmic mean is exact. */
function meanRate(before: number, now: number, rule: Rule): number {
  if (rule === 'rectangle') return before;
  if (rule === 'trapezoid' || before <= 0 || now <= 0) return 0.5 * (before + now);
  const ratio = now / before;
  return Math.abs(ratio - 1) < 1e-6 ? 0.5 * (before + now) : (now - before) / Math.log(ratio);
}
