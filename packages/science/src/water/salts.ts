import { requireRange } from '../errors.js';
import { polynomial } from '../process/polynomial.js';
import type { Celsius, WaterActivity } from '../units.js';
import { saltRanges, saturatedSalts } from './data/salts.js';

export type CalibrationSalt = keyof typeof saltRanges;
export const calibrationSalts = Object.keys(saltRanges) as CalibrationSalt[];

/**
 * Water activity over a saturated salt solution: the standard for a meter.
 *
 * @param t - °C; 0 to 80, some salts 0 to 30 or 50
 * @returns 0 to 1
 * @throws OutOfRange
 * @example saltWaterActivity('sodium_chloride', 25) // 0.7529
 */
export function saltWaterActivity(salt: CalibrationSalt, t: Celsius): WaterActivity {
  requireRange('temperature_c', t, saltRanges[salt], 'greenspan-1977');
  return polynomial(saturatedSalts.values[salt], t) / 100;
}
