import { NoSolution, requireRange } from '../errors.js';
import { saturationPressure, saturationTemperature } from '../core/index.js';
import type { Celsius, Kelvin, Pascal } from '../units.js';

/** Moist air as an ideal mixture; energies per kg of dry air. Source: ashrae-2017-ch1, equations 20 to 36. */
const massRatio = 0.621945; // molar mass of water over that of air
const cpAir = 1006; // J/(kg K)
const cpVapour = 1860;
const heatAtZero = 2_501_000; // J/kg, evaporation at 0 °C

/** Air in a room or tunnel that the equations are meant for, °C. */
export const airTemperatures = [-60, 95] as const;

/** Humidity ratio, kg water per kg dry air, from the partial pressure of vapour. @throws OutOfRange unless 0 <= vapour < pressure */
export function humidityRatio(vapourPressure: Pascal, pressure: Pascal = 101_325): number {
  requireRange('pressure_pa', pressure, [10_000, 1_000_000], 'ashrae-2017-ch1');
  requireRange('vapour_pressure_pa', vapourPressure, [0, 0.98 * pressure], 'ashrae-2017-ch1');
  return (massRatio * vapourPressure) / (pressure - vapourPressure);
}

/** Partial pressure of vapour, Pa, of a humidity ratio; inverse of humidityRatio. */
export function vapourPressure(ratio: number, pressure: Pascal = 101_325): Pascal {
  requireRange('humidity_ratio', ratio, [0, 20], 'ashrae-2017-ch1');
  return (pressure * ratio) / (massRatio + ratio);
}

/** Enthalpy of moist air, J per kg dry air, 0 at 0 °C dry. */
export function moistAirEnthalpy(t: Celsius, ratio: number): number {
  return cpAir * t + ratio * (heatAtZero + cpVapour * t);
}

/** Volume of moist air, m³ per kg dry air. */
export function moistAirVolume(t: Celsius, ratio: number, pressure: Pascal = 101_325): number {
  return (287.042 * (t + 273.15) * (1 + ratio / massRatio)) / pressure;
}

/**
 * Dew point (below 0 °C: frost point) of air of a relative humidity, °C.
 *
 * @param relativeHumidity - vapour pressure over saturation at the same temperature, above 0 to 1; over ice below 0 °C
 * @throws OutOfRange
 * @example dewPoint(25, 0.8) // 21.31
 */
export function dewPoint(t: Celsius, relativeHumidity: number): Celsius {
  requireRange('temperature_c', t, airTemperatures, 'ashrae-2017-ch1');
  requireRange('relative_humidity', relativeHumidity, [1e-6, 1], 'ashrae-2017-ch1');
  const pressure = relativeHumidity * saturationPressure(t);
  requireRange('vapour_pressure_pa', pressure, [1.09, Infinity], 'iapws-r14-08');
  return saturationTemperature(pressure);
}

/** Humidity ratio from a wet bulb reading, kg per kg dry air. @throws NoSolution where the pair of readings is impossible */
export function humidityRatioFromWetBulb(t: Celsius, wetBulb: Celsius, pressure: Pascal = 101_325): number {
  requireRange('temperature_c', t, airTemperatures, 'ashrae-2017-ch1');
  requireRange('wet_bulb_c', wetBulb, [-60, t], 'ashrae-2017-ch1');
  const ratio = ratioAtWetBulb(t, wetBulb, pressure);
  if (ratio < 0)
    throw new NoSolution(`a wet bulb of ${wetBulb} °C in air of ${t} °C would need less than no vapour; the lowest is that of dry air`);
  return ratio;
}

/** Equations 33 (water on the bulb) and 35 (ice on the bulb); may be negative. */
function ratioAtWetBulb(t: number, wetBulb: number, pressure: number): number {
  const saturated = humidityRatio(saturationPressure(wetBulb), pressure);
  return wetBulb >= 0
    ? ((2_501_000 - 2326 * wetBulb) * saturated - cpAir * (t - wetBulb)) / (2_501_000 + cpVapour * t - 4186 * wetBulb)
    : ((2_830_000 - 240 * wetBulb) * saturated - cpAir * (t - wetBulb)) / (2_830_000 + cpVapour * t - 2100 * wetBulb);
}

/** Thermodynamic wet bulb, °C, between the dew point and the air temperature. @throws OutOfRange for air wetter than saturated */
export function wetBulb(t: Celsius, ratio: number, pressure: Pascal = 101_325): Celsius {
  requireRange('temperature_c', t, airTemperatures, 'ashrae-2017-ch1');
  const saturated = humidityRatio(saturationPressure(t), pressure);
  requireRange('humidity_ratio', ratio, [0, saturated * (1 + 1e-9)], 'ashrae-2017-ch1');
  let low = Math.max(-60, t - 60);
  let high: number = t;
  for (let i = 0; i < 60 && high - low > 1e-9; i++) {
    const middle = (low + high) / 2;
    if (ratioAtWetBulb(t, middle, pressure) > ratio) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}

/** Relative humidity that room air takes on at a surface of another temperature; above 1 it condenses there. */
export function surfaceHumidity(room: Celsius, relativeHumidity: number, surface: Celsius): number {
  requireRange('relative_humidity', relativeHumidity, [0, 1], 'ashrae-2017-ch1');
  return (relativeHumidity * saturationPressure(room)) / saturationPressure(surface);
}

/** Surface temperature less the dew point of the room, K; below 0 water condenses. */
export function dewMargin(surface: Celsius, room: Celsius, relativeHumidity: number): Kelvin {
  return surface - dewPoint(room, relativeHumidity);
}

/** Lowest surface temperature, °C, at which room air stays at or below a relative humidity at the surface (0.78: milk chocolate takes up water). */
export function surfaceTemperatureFor(limit: number, room: Celsius, relativeHumidity: number): Celsius {
  requireRange('limit', limit, [0.05, 1], 'ashrae-2017-ch1');
  return saturationTemperature((relativeHumidity * saturationPressure(room)) / limit);
}

/**
 * Water that condenses on a cold surface, kg/(m² s): heat and mass transfer alike (Lewis factor 1 for water in air).
 * @param heatTransfer - W/(m² K)
 */
export function condensationRate(
  surface: Celsius,
  room: Celsius,
  relativeHumidity: number,
  heatTransfer: number,
  pressure: Pascal = 101_325,
): number {
  requireRange('heat_transfer_coefficient_w_m2_k', heatTransfer, [0, 10_000], 'ashrae-2017-ch1');
  const there = humidityRatio(relativeHumidity * saturationPressure(room), pressure);
  const here = humidityRatio(saturationPressure(surface), pressure);
  return Math.max(0, (heatTransfer / (cpAir + there * cpVapour)) * (there - here));
}

/** Two streams mixed without heat: dry-air masses, temperatures, ratios. Enthalpy and water are kept. */
export function mixAir(
  a: { readonly dryAir: number; readonly temperature: Celsius; readonly ratio: number },
  b: { readonly dryAir: number; readonly temperature: Celsius; readonly ratio: number },
): { readonly temperature: Celsius; readonly ratio: number } {
  requireRange('dry_air', a.dryAir, [0, Infinity], 'physics');
  requireRange('dry_air', b.dryAir, [0, Infinity], 'physics');
  const total = a.dryAir + b.dryAir;
  requireRange('dry_air', total, [Number.MIN_VALUE, Infinity], 'physics');
  const ratio = (a.dryAir * a.ratio + b.dryAir * b.ratio) / total;
  const enthalpy = (a.dryAir * moistAirEnthalpy(a.temperature, a.ratio) + b.dryAir * moistAirEnthalpy(b.temperature, b.ratio)) / total;
  return { ratio, temperature: (enthalpy - ratio * heatAtZero) / (cpAir + ratio * cpVapour) };
}
