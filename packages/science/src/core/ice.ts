import { requireRange } from '../errors.js';
import type { Celsius, Pascal, WaterActivity } from '../units.js';
import { supercooledWater } from './data/saturation.js';
import { pressureOverIce } from './saturation.js';

const { a, b, k, middle } = supercooledWater.values;

/** Vapour pressure of liquid water below its freezing point, Pa; -100 to 0.01 °C. Source: murphy-koop-2005, equation 10. */
export function supercooledPressure(t: Celsius): Pascal {
  requireRange('temperature_c', t, [-100, 0.01], 'murphy-koop-2005');
  const T = t + 273.15;
  const ln = Math.log(T);
  const low = b[0] + b[1] / T + b[2] * ln + b[3] * T;
  return Math.exp(a[0] + a[1] / T + a[2] * ln + a[3] * T + Math.tanh(k * (T - middle)) * low);
}

/**
 * Water activity of a solution in equilibrium with ice: the vapour pressure of ice by that of supercooled water.
 *
 * @param t - temperature, °C, -100 to 0.01
 * @returns 0 to 1; 1 at the triple point
 * @throws OutOfRange
 * @example activityOfIce(-5) // 0.9525
 */
export function activityOfIce(t: Celsius): WaterActivity {
  return pressureOverIce(t) / supercooledPressure(t);
}
