import { BadInput } from '../../errors.js';
import { arrheniusFactor } from '../flow/temperature.js';
import type { Celsius } from '../../units.js';

/** Nodes and weights of four-point Gauss quadrature on 0 to 1. */
const nodes = [0.06943184420297371, 0.33000947820757187, 0.6699905217924281, 0.9305681557970263];
const weights = [0.17392742256872692, 0.32607257743127307, 0.32607257743127307, 0.17392742256872692];

/**
 * Time at a reference temperature that does as much as a whole temperature history, in the unit of `times`. Temperature runs straight
 * between the readings.
 *
 * @param times - rising, at least two
 * @param temperatures - °C, one for each time
 * @param energy - activation energy, J/mol
 * @throws BadInput when the lists differ in length, are too short, or time runs backwards
 * @example equivalentTime([0, 10], [118, 118], 101_800, 118) // 10
 */
export function equivalentTime(times: readonly number[], temperatures: readonly number[], energy: number, reference: Celsius): number {
  if (times.length !== temperatures.length || times.length < 2) {
    throw new BadInput(`A history needs as many temperatures as times, at least two; came ${times.length} and ${temperatures.length}`);
  }
  let sum = 0;
  for (let i = 1; i < times.length; i++) {
    const length = times[i]! - times[i - 1]!;
    if (!(length >= 0)) throw new BadInput(`Times must rise; came ${times[i - 1]} and then ${times[i]}`);
    const from = temperatures[i - 1]!;
    const rise = temperatures[i]! - from;
    const pieces = Math.max(1, Math.ceil(Math.abs(rise) / 25));
    for (let piece = 0; piece < pieces; piece++) {
      for (let n = 0; n < 4; n++) {
        const share = (piece + nodes[n]!) / pieces;
        sum += (length / pieces) * weights[n]! * arrheniusFactor(energy, reference, from + share * rise);
      }
    }
  }
  return sum;
}
