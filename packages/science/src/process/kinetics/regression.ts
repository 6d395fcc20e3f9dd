import { BadInput } from '../../errors.js';
import { studentQuantile } from '../../statistics/student.js';
import { gasConstant } from '../flow/temperature.js';

export interface Line {
  readonly slope: number;
  readonly intercept: number;
  /** Half width of the 95 % interval of the slope; Infinity with two points. */
  readonly slopeHalfWidth: number;
}

/**
 * Straight line through points by least squares.
 *
 * @throws BadInput when the lists differ in length, hold fewer than two points, or all x are equal
 */
export function fitLine(x: readonly number[], y: readonly number[]): Line {
  const n = x.length;
  if (n !== y.length || n < 2) throw new BadInput(`A line needs as many y as x, at least two; came ${n} and ${y.length}`);
  const meanX = x.reduce((a, b) => a + b, 0) / n;
  const meanY = y.reduce((a, b) => a + b, 0) / n;
  let xx = 0;
  let xy = 0;
  for (let i = 0; i < n; i++) {
    xx += (x[i]! - meanX) ** 2;
    xy += (x[i]! - meanX) * (y[i]! - meanY);
  }
  if (!(xx > 0)) throw new BadInput('All x are equal: no slope');
  const slope = xy / xx;
  const intercept = meanY - slope * meanX;
  if (n === 2) return { slope, intercept, slopeHalfWidth: Infinity };
  let rest = 0;
  for (let i = 0; i < n; i++) rest += (y[i]! - intercept - slope * x[i]!) ** 2;
  return { slope, intercept, slopeHalfWidth: studentQuantile(0.975, n - 2) * Math.sqrt(rest / (n - 2) / xx) };
}

export interface ArrheniusFit {
  /** Activation energy and half width of its 95 % interval, J/mol. */
  readonly energy: number;
  readonly energyHalfWidth: number;
  /** Slope of ln k against 1/T, K. */
  readonly slope: number;
  /** Rate that the line gives at 25 °C. */
  readonly rateAt25: number;
}

/**
 * Activation energy from rates at several temperatures: the slope of ln k against 1/T.
 *
 * @param temperatures - °C
 * @param rates - above 0
 * @throws BadInput for a rate that is not positive, and as `fitLine`
 */
export function fitArrhenius(temperatures: readonly number[], rates: readonly number[]): ArrheniusFit {
  for (const rate of rates) if (!(rate > 0)) throw new BadInput(`A rate is ${rate}, but a number above 0 is expected`);
  const line = fitLine(
    temperatures.map((t) => 1 / (t + 273.15)),
    rates.map(Math.log),
  );
  return {
    energy: -line.slope * gasConstant,
    energyHalfWidth: line.slopeHalfWidth * gasConstant,
    slope: line.slope,
    rateAt25: Math.exp(line.intercept + line.slope / 298.15),
  };
}
