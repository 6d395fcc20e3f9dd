import { NoSolution, requireRange } from '../../errors.js';
import { browning } from '../data/roasting.js';
import { requireCurve } from '../interpolate.js';
import { arrhenius } from './drying.js';

/**
 * Roast degree from a logged product temperature: minutes at the reference temperature that would brown as much,
 * ∫ exp(-E/R (1/T - 1/Tref)) dt, trapezoid.
 *
 * @param minutes - rising
 * @param temperatures - of the product, °C
 * @param reference - °C
 * @param energy - activation energy, J/mol; browning of nuts and cocoa about 60 000 to 125 000
 */
export function roastDegree(
  minutes: ArrayLike<number>,
  temperatures: ArrayLike<number>,
  reference: number,
  energy: number = browning.values.middle,
): number {
  requireCurve('The roast curve', minutes, temperatures);
  let sum = 0;
  let before = arrhenius(temperatures[0]!, reference, energy);
  for (let i = 1; i < minutes.length; i++) {
    const now = arrhenius(temperatures[i]!, reference, energy);
    sum += 0.5 * (before + now) * (minutes[i]! - minutes[i - 1]!);
    before = now;
  }
  return sum;
}

/** Hunter L or CIELAB L* that falls in proportion to the roast degree (zero order); rate in units per minute at the reference. */
export function lightness(start: number, rate: number, degree: number): number {
  requireRange('lightness_start', start, [0, 100], 'a lightness');
  return start - rate * degree;
}

/**
 * Rate of the plant's own roaster from one roast: lightness before and after, and the roast degree of its curve.
 *
 * @throws NoSolution where nothing was roasted
 */
export function lightnessRate(start: number, end: number, degree: number): number {
  if (!(degree > 0)) throw new NoSolution('The roast degree is 0, so no rate of colour can be told');
  return (start - end) / degree;
}

/** Minutes at a constant product temperature to come from one lightness to another. */
export function timeToLightness(start: number, end: number, rate: number, temperature: number, reference: number, energy: number): number {
  if (!(rate > 0 && end < start)) throw new NoSolution(`Lightness cannot go from ${start} to ${end} at a rate of ${rate}`);
  return (start - end) / (rate * arrhenius(temperature, reference, energy));
}
