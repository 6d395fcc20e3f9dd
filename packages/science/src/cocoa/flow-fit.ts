import { BadInput } from '../errors.js';
import { studentQuantile } from '../statistics/index.js';
import { stressOf, type FlowLaw, type ShearRate } from './flow-laws.js';
import type { Pascal } from '../units.js';

/** A fitted parameter with its 95 % confidence limits. */
export interface Fitted {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

export interface FlowFit {
  readonly law: FlowLaw;
  /** In the order of the law: yield first. */
  readonly parameters: Readonly<Record<string, Fitted>>;
  /** Root mean square of the stress residuals, Pa, over the degrees of freedom. */
  readonly residual: Pascal;
  /** Coefficient of determination of the stresses. */
  readonly r2: number;
  readonly points: number;
}

export interface FlowPoint {
  readonly rate: ShearRate;
  readonly stress: Pascal;
}

const level = 0.975;

/** Table of a viscometer, checked. @throws BadInput for lists of unlike length, too few points, or points that are not above 0 */
export function flowPoints(rates: readonly number[], stresses: readonly number[], least: number): readonly FlowPoint[] {
  if (rates.length !== stresses.length) {
    throw new BadInput(`shear rates (${rates.length}) and stresses (${stresses.length}) differ in number; one stress is due per rate`);
  }
  if (rates.length < least) throw new BadInput(`${rates.length} points, but at least ${least} are needed for this law`);
  return rates.map((rate, i) => {
    const stress = stresses[i]!;
    if (!(rate > 0 && stress > 0 && Number.isFinite(rate) && Number.isFinite(stress))) {
      throw new BadInput(`point ${i + 1} is ${rate} 1/s and ${stress} Pa; both must be above 0`);
    }
    return { rate, stress };
  });
}

/** What no flow curve does, as a code and a sentence. */
export interface FlowTableFault {
  readonly code: 'NOT_A_FLOW_CURVE' | 'STRESS_FALLS';
  readonly message: string;
}

/**
 * What no flow curve of chocolate does: a stress that falls or stands still while the rate rises, over all or by a tenth in between.
 * @param points - of one ramp, in any order, at least two
 */
export function flowTableFault(points: readonly FlowPoint[]): FlowTableFault | undefined {
  const sorted = points.toSorted((a, b) => a.rate - b.rate);
  const first = sorted[0]!;
  const last = sorted.at(-1)!;
  const shown = ({ rate, stress }: FlowPoint) => `${+stress.toPrecision(4)} Pa at ${+rate.toPrecision(4)} 1/s`;
  if (!(last.stress > first.stress)) {
    return {
      code: 'NOT_A_FLOW_CURVE',
      message: `The stress goes from ${shown(first)} to ${shown(last)}; in a flow curve it rises, so the fitted values mean nothing: check columns, gap and spindle.`,
    };
  }
  const fall = sorted.findIndex((p, i) => i > 0 && p.rate > sorted[i - 1]!.rate && p.stress < 0.9 * sorted[i - 1]!.stress);
  return fall < 0
    ? undefined
    : {
        code: 'STRESS_FALLS',
        message: `The stress falls from ${shown(sorted[fall - 1]!)} to ${shown(sorted[fall]!)}; one of the readings is off, and the limits of the fit carry it.`,
      };
}

interface Line {
  readonly intercept: number;
  readonly slope: number;
  readonly interceptError: number;
  readonly slopeError: number;
  readonly freedom: number;
}

/** Least squares line with standard errors. */
function line(x: readonly number[], y: readonly number[]): Line {
  const n = x.length;
  const meanX = x.reduce((a, b) => a + b, 0) / n;
  const meanY = y.reduce((a, b) => a + b, 0) / n;
  let sxx = 0;
  let sxy = 0;
  for (let i = 0; i < n; i++) {
    sxx += (x[i]! - meanX) ** 2;
    sxy += (x[i]! - meanX) * (y[i]! - meanY);
  }
  if (!(sxx > 0)) throw new BadInput('all shear rates are the same; a flow curve needs at least two different rates');
  const slope = sxy / sxx;
  const intercept = meanY - slope * meanX;
  let sse = 0;
  for (let i = 0; i < n; i++) sse += (y[i]! - intercept - slope * x[i]!) ** 2;
  const freedom = n - 2;
  const s = Math.sqrt(sse / freedom);
  return { intercept, slope, freedom, slopeError: s / Math.sqrt(sxx), interceptError: s * Math.sqrt(1 / n + (meanX * meanX) / sxx) };
}

/** Limits of a value that is the square of a fitted root. */
function squared(root: number, error: number, freedom: number): Fitted {
  const half = studentQuantile(level, freedom) * error;
  const low = Math.max(0, root - half);
  return { value: Math.max(0, root) ** 2, low: low * low, high: Math.max(0, root + half) ** 2 };
}

/** Residual and determination of a law against points. */
export function quality(law: FlowLaw, points: readonly FlowPoint[], parameters: number): Pick<FlowFit, 'residual' | 'r2' | 'points'> {
  const mean = points.reduce((sum, p) => sum + p.stress, 0) / points.length;
  let sse = 0;
  let total = 0;
  for (const p of points) {
    sse += (p.stress - stressOf(law, p.rate)) ** 2;
    total += (p.stress - mean) ** 2;
  }
  return { residual: Math.sqrt(sse / (points.length - parameters)), r2: 1 - sse / total, points: points.length };
}

/**
 * Casson fit: √τ against √γ by least squares.
 * A negative intercept gives a yield value of 0. Ring tests found a 7-fold range of Casson yield values between laboratories
 * (aeschlimann-beckett-2000): compare with the same instrument only.
 * @throws BadInput
 */
export function fitCasson(points: readonly FlowPoint[]): FlowFit {
  const fit = line(
    points.map((p) => Math.sqrt(p.rate)),
    points.map((p) => Math.sqrt(p.stress)),
  );
  const yieldValue = squared(fit.intercept, fit.interceptError, fit.freedom);
  const plastic = squared(fit.slope, fit.slopeError, fit.freedom);
  const law: FlowLaw = { law: 'casson', yieldValue: yieldValue.value, plasticViscosity: plastic.value };
  return { law, parameters: { yield_value_pa: yieldValue, plastic_viscosity_pa_s: plastic }, ...quality(law, points, 2) };
}

/** Bingham fit: τ against γ by least squares. A negative intercept gives a yield value of 0. @throws BadInput */
export function fitBingham(points: readonly FlowPoint[]): FlowFit {
  const fit = line(
    points.map((p) => p.rate),
    points.map((p) => p.stress),
  );
  const t = studentQuantile(level, fit.freedom);
  const limits = (value: number, error: number): Fitted => ({
    value: Math.max(0, value),
    low: Math.max(0, value - t * error),
    high: Math.max(0, value + t * error),
  });
  const yieldValue = limits(fit.intercept, fit.interceptError);
  const plastic = limits(fit.slope, fit.slopeError);
  const law: FlowLaw = { law: 'bingham', yieldValue: yieldValue.value, plasticViscosity: plastic.value };
  return { law, parameters: { yield_value_pa: yieldValue, plastic_viscosity_pa_s: plastic }, ...quality(law, points, 2) };
}
