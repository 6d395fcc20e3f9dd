import { requireRange } from '../errors.js';
import type { Celsius, Pascal } from '../units.js';
import { saturationLine, sublimationLine } from './data/saturation.js';

const n = saturationLine.values.n;
const ice = sublimationLine.values;

/** From a cold store to the critical point. */
export const saturationTemperatures = [-60, 373.946] as const;
export const saturationPressures = [1.08, 22_064_000] as const;

/**
 * Pressure of water vapour in equilibrium with liquid water (IAPWS-IF97 region 4), below 0.01 °C with ice (IAPWS R14-08).
 *
 * @param t - temperature, °C, -60 to 373.946
 * @returns pressure, Pa; rises with temperature
 * @throws OutOfRange
 * @example saturationPressure(25) // 3169.9
 */
export function saturationPressure(t: Celsius): Pascal {
  requireRange('temperature_c', t, saturationTemperatures, 'iapws-if97');
  return t < 0.01 ? pressureOverIce(t) : pressureOverLiquid(t);
}

/** Region 4, equation 30, solved for the pressure; °C in, Pa out. */
function pressureOverLiquid(t: Celsius): Pascal {
  const T = t + 273.15;
  const theta = T + n[8] / (T - n[9]);
  const A = (theta + n[0]) * theta + n[1];
  const B = (n[2] * theta + n[3]) * theta + n[4];
  const C = (n[5] * theta + n[6]) * theta + n[7];
  const root = (2 * C) / (-B + Math.sqrt(B * B - 4 * A * C));
  return 1e6 * root ** 4;
}

/** Vapour pressure of ice Ih, Pa; °C, unchecked. Source: iapws-r14-08, equation 6. */
export function pressureOverIce(t: Celsius): Pascal {
  const theta = (t + 273.15) / ice.tripleTemperature;
  let sum = 0;
  for (let i = 0; i < ice.a.length; i++) sum += ice.a[i]! * theta ** ice.b[i]!;
  return ice.triplePressure * Math.exp(sum / theta);
}

/**
 * Temperature at which pure water (below 611.657 Pa: ice) has this vapour pressure: its boiling point.
 *
 * @param p - absolute pressure, Pa, 1.08 to 22 064 000
 * @throws OutOfRange
 * @example saturationTemperature(101_325) // 99.97
 */
export function saturationTemperature(p: Pascal): Celsius {
  requireRange('pressure_pa', p, saturationPressures, 'iapws-if97');
  if (p < ice.triplePressure) return frostPoint(p);
  // Region 4, equation 31.
  const beta = (p / 1e6) ** 0.25;
  const E = (beta + n[2]) * beta + n[5];
  const F = (n[0] * beta + n[3]) * beta + n[6];
  const G = (n[1] * beta + n[4]) * beta + n[7];
  const D = (2 * G) / (-F - Math.sqrt(F * F - 4 * E * G));
  const sum = n[9] + D;
  return (sum - Math.sqrt(sum * sum - 4 * (n[8] + n[9] * D))) / 2 - 273.15;
}

/** Newton on ln p against 1/T, which is nearly straight: four steps reach the last digit. */
function frostPoint(p: Pascal): Celsius {
  let T = ice.tripleTemperature;
  for (let step = 0; step < 6; step++) {
    const slope = 6139; // heat of sublimation over the gas constant, K
    T = 1 / (1 / T - Math.log(p / pressureOverIce(T - 273.15)) / slope);
  }
  return T - 273.15;
}
