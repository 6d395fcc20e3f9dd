import { OutOfRange, requireRange } from '../../errors.js';
import type { Kelvin } from '../../units.js';

/**
 * Logarithmic mean of two temperature differences, K; their value where they are equal.
 *
 * @throws OutOfRange when a difference is not positive: the streams would cross
 * @example logMeanDifference(70, 19.8) // 39.75
 */
export function logMeanDifference(first: Kelvin, second: Kelvin): Kelvin {
  requireRange('first temperature difference', first, [1e-300, Infinity], 'cengel-11');
  requireRange('second temperature difference', second, [1e-300, Infinity], 'cengel-11');
  const ratio = first / second;
  // Near 1 the quotient loses its digits; the series of x / ln(1 + x) does not.
  const x = ratio - 1;
  return Math.abs(x) < 1e-4 ? second * (1 + x / 2 - (x * x) / 12) : (first - second) / Math.log(ratio);
}

export type Arrangement = 'counterflow' | 'parallel';

/**
 * Effectiveness of a heat exchanger: heat passed over the most it could pass.
 *
 * @param transferUnits - U A by the smaller heat capacity rate, 0 up
 * @param capacityRatio - smaller by larger heat capacity rate, 0 (condensing or boiling) to 1
 */
export function effectiveness(arrangement: Arrangement, transferUnits: number, capacityRatio: number): number {
  requireRange('transfer units', transferUnits, [0, Infinity], 'cengel-11');
  requireRange('capacity ratio', capacityRatio, [0, 1], 'cengel-11');
  if (arrangement === 'parallel') return -Math.expm1(-transferUnits * (1 + capacityRatio)) / (1 + capacityRatio);
  if (transferUnits === Infinity) return 1;
  if (1 - capacityRatio < 1e-9) return transferUnits / (1 + transferUnits);
  const decay = Math.exp(-transferUnits * (1 - capacityRatio));
  return (1 - decay) / (1 - capacityRatio * decay);
}

/** Temperature of a mix of streams or batches, °C: each weighs by mass times specific heat; no heat of solution or melting. */
export function mixedTemperature(
  parts: readonly { readonly mass: number; readonly specificHeat: number; readonly temperature: number }[],
): number {
  let capacity = 0;
  let heat = 0;
  for (const { mass, specificHeat, temperature } of parts) {
    capacity += mass * specificHeat;
    heat += mass * specificHeat * temperature;
  }
  if (!(capacity > 0)) throw new OutOfRange('heat capacity', capacity, [1e-300, Infinity], 'heat balance');
  return heat / capacity;
}
