import { requireRange } from '../errors.js';
import type { Celsius, JoulePerKilogram, KilogramPerCubicMetre } from '../units.js';
import { saturatedWater } from './data/saturation.js';

const { criticalTemperature, criticalPressure, criticalDensity, pressure, liquid, vapour } = saturatedWater.values;
const possible = saturatedWater.valid.temperature_c;

/** Density of liquid water at its own vapour pressure, kg/m³; 0 to 373.9 °C. Source: iapws-sr1-86, equation 2. */
export function saturatedWaterDensity(t: Celsius): KilogramPerCubicMetre {
  requireRange('temperature_c', t, possible, 'iapws-sr1-86');
  const x = Math.cbrt(1 - (t + 273.15) / criticalTemperature);
  const [b1, b2, b3, b4, b5, b6] = liquid;
  return criticalDensity * (1 + b1 * x + b2 * x ** 2 + b3 * x ** 5 + b4 * x ** 16 + b5 * x ** 43 + b6 * x ** 110);
}

/** Density of saturated steam, kg/m³; 0 to 373.9 °C. Source: iapws-sr1-86, equation 3. */
export function saturatedSteamDensity(t: Celsius): KilogramPerCubicMetre {
  requireRange('temperature_c', t, possible, 'iapws-sr1-86');
  const x = (1 - (t + 273.15) / criticalTemperature) ** (1 / 6);
  const [c1, c2, c3, c4, c5, c6] = vapour;
  return criticalDensity * Math.exp(c1 * x ** 2 + c2 * x ** 4 + c3 * x ** 8 + c4 * x ** 18 + c5 * x ** 37 + c6 * x ** 71);
}

/** Slope of the vapour pressure curve, Pa/K. Source: iapws-sr1-86, equation 1, differentiated. */
export function saturationSlope(t: Celsius): number {
  requireRange('temperature_c', t, possible, 'iapws-sr1-86');
  const T = t + 273.15;
  const x = 1 - T / criticalTemperature;
  const root = Math.sqrt(x);
  const [a1, a2, a3, a4, a5, a6] = pressure;
  const sum = a1 * x + a2 * x * root + a3 * x ** 3 + a4 * x ** 3 * root + a5 * x ** 4 + a6 * x ** 7 * root;
  const slope = a1 + 1.5 * a2 * root + 3 * a3 * x ** 2 + 3.5 * a4 * x ** 2 * root + 4 * a5 * x ** 3 + 7.5 * a6 * x ** 6 * root;
  const p = criticalPressure * Math.exp((criticalTemperature / T) * sum);
  return -(p / T) * (slope + (criticalTemperature / T) * sum);
}

/**
 * Heat that turns a kilogram of water into steam at its saturation temperature: Clapeyron, L = T (dp/dT)(1/ρ″ − 1/ρ′).
 *
 * @param t - temperature, °C, 0 to 373.9
 * @returns J/kg; falls with temperature to 0 at the critical point
 * @throws OutOfRange
 * @example latentHeatOfVaporisation(100) // 2.2564e6
 */
export function latentHeatOfVaporisation(t: Celsius): JoulePerKilogram {
  return (t + 273.15) * saturationSlope(t) * (1 / saturatedSteamDensity(t) - 1 / saturatedWaterDensity(t));
}
