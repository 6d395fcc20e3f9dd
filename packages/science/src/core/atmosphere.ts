import { requireRange } from '../errors.js';
import type { Table } from '../sources.js';
import type { Metre, Pascal } from '../units.js';

/** Troposphere of the standard atmosphere: p = p0 (1 - L H / T0)^(g/(R L)). */
const troposphere = {
  source: 'iso-2533-1975',
  standing: 'memory',
  note: 'Table of defining constants; geopotential altitude, which a map height equals within 0.2 % below 11 km.',
  valid: { altitude_m: [-2000, 11_000] },
  values: { p0: 101_325, T0: 288.15, lapse: 0.0065, gravity: 9.80665, gas: 287.05287 },
} as const satisfies Table;

const { p0, T0, lapse, gravity, gas } = troposphere.values;
const exponent = gravity / (gas * lapse);

export const altitudes = troposphere.valid.altitude_m;

/**
 * Air pressure of the standard atmosphere. The weather moves the real one by some ±3 kPa: read the barometer where it matters.
 *
 * @param altitude - above sea level, m, -2000 to 11 000
 * @returns pressure, Pa
 * @throws OutOfRange
 * @example standardPressure(0) // 101325
 */
export function standardPressure(altitude: Metre): Pascal {
  requireRange('altitude_m', altitude, altitudes, 'iso-2533-1975');
  return p0 * (1 - (lapse * altitude) / T0) ** exponent;
}

/** Altitude at which the standard atmosphere has this pressure, m; the inverse of standardPressure. */
export function standardAltitude(pressure: Pascal): Metre {
  requireRange('pressure_pa', pressure, [22_632, 127_774], 'iso-2533-1975');
  return (T0 / lapse) * (1 - (pressure / p0) ** (1 / exponent));
}

/**
 * Pressure at the plant from a weather report, which gives the pressure reduced to sea level.
 *
 * @param altitude - of the plant, m
 * @param seaLevelPressure - of the weather report, Pa, 87 000 to 108 500
 * @returns station pressure, Pa; the report is taken as reduced with the standard lapse rate
 */
export function stationPressure(altitude: Metre, seaLevelPressure: Pascal): Pascal {
  requireRange('sea_level_pressure_pa', seaLevelPressure, [87_000, 108_500], 'iso-2533-1975');
  return (standardPressure(altitude) * seaLevelPressure) / p0;
}
