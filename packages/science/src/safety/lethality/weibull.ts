import { NoSolution, requireRange } from '../../errors.js';
import { cereusNibs } from '../data/d-values.js';
import { logLinearAt } from '../interpolate.js';

/** Log10 reduction after t: (t/δ)^p. p below 1 tails, above 1 shoulders; δ is the time of the first log. */
export function weibullReduction(t: number, delta: number, p: number): number {
  requireRange('time_min', t, [0, 1e9], 'a Weibull curve');
  if (!(delta > 0 && p > 0)) throw new NoSolution(`A Weibull curve needs δ and p above 0, not ${delta} and ${p}`);
  return (t / delta) ** p;
}

/** Time of a number of log reductions: δ n^(1/p). */
export function weibullTime(logs: number, delta: number, p: number): number {
  return delta * logs ** (1 / p);
}

/** Shape p from δ and the time of n log: p = ln n / ln(t/δ). */
export function weibullShape(delta: number, logs: number, time: number): number {
  if (!(time > delta && logs > 1)) throw new NoSolution('A Weibull shape needs more than 1 log at a time longer than δ');
  return Math.log(logs) / Math.log(time / delta);
}

/**
 * Weibull reduction along a changing temperature, by equivalent time: from the reduction reached, the time that would have led
 * there at the present temperature, one step further.
 *
 * @param minutes - rising
 * @param parameters - δ (min) and p at a temperature
 */
export function weibullAlong(
  minutes: ArrayLike<number>,
  temperatures: ArrayLike<number>,
  parameters: (temperature: number) => { readonly delta: number; readonly p: number },
): number {
  let reached = 0;
  for (let i = 1; i < minutes.length; i++) {
    const { delta, p } = parameters(0.5 * (temperatures[i]! + temperatures[i - 1]!));
    const equivalent = delta * reached ** (1 / p);
    reached = ((equivalent + minutes[i]! - minutes[i - 1]!) / delta) ** p;
  }
  return reached;
}

/** δ and p of Bacillus cereus spores on cocoa nibs. */
export function cereusOnNibs(temperature: number): { readonly delta: number; readonly four: number; readonly p: number } {
  requireRange('temperature_c', temperature, [60, 180], cereusNibs.source);
  const v = cereusNibs.values;
  const delta = logLinearAt(v.deltaTemperature, v.delta, temperature);
  const four = logLinearAt(v.fourTemperature, v.four, temperature);
  return { delta, four, p: four > delta ? weibullShape(delta, 4, four) : NaN };
}
