import type { Check } from '../check.js';

type Row = readonly [id: string, model: string, input: readonly [string, number], output: string, expected: number, tolerance: number];

function rows(common: Pick<Check, 'kind' | 'source' | 'standing' | 'note'>, list: readonly Row[]): Check[] {
  return list.map(([id, model, [key, value], output, expected, tolerance]) => ({
    ...common,
    id,
    model,
    inputs: { [key]: value },
    output,
    expected,
    tolerance,
  }));
}

const vapour = 'water.saturation_pressure';
const boiling = 'water.saturation_temperature';
const kelvin = 273.15;

/** Values printed in the release so that a program can be verified. */
const verification = rows({ kind: 'code', source: 'iapws-if97', standing: 'memory', note: 'verification values of the same equation' }, [
  ['water.saturation_pressure.300k', vapour, ['temperature_c', 300 - kelvin], 'pressure_pa', 3536.58941, 1e-3],
  ['water.saturation_pressure.500k', vapour, ['temperature_c', 500 - kelvin], 'pressure_pa', 2638897.76, 0.5],
  ['water.saturation_pressure.600k', vapour, ['temperature_c', 600 - kelvin], 'pressure_pa', 12344314.6, 5],
  ['water.saturation_temperature.1bar', boiling, ['pressure_pa', 1e5], 'temperature_c', 372.755919 - kelvin, 1e-5],
  ['water.saturation_temperature.10bar', boiling, ['pressure_pa', 1e6], 'temperature_c', 453.035632 - kelvin, 1e-5],
  ['water.saturation_temperature.100bar', boiling, ['pressure_pa', 1e7], 'temperature_c', 584.149488 - kelvin, 1e-5],
]);

/** The handbook uses other equations (Hyland and Wexler): agreement within 3 parts in 10 000. */
const handbook = rows({ kind: 'published', source: 'ashrae-2017-ch1', standing: 'found', note: 'table 3, from other equations' }, [
  ['water.saturation_pressure.minus20', vapour, ['temperature_c', -20], 'pressure_pa', 103.24, 0.031],
  ['water.saturation_pressure.5', vapour, ['temperature_c', 5], 'pressure_pa', 872.6, 0.262],
  ['water.saturation_pressure.25', vapour, ['temperature_c', 25], 'pressure_pa', 3169.7, 0.951],
  ['water.saturation_pressure.100', vapour, ['temperature_c', 100], 'pressure_pa', 101418, 30.4],
  ['water.saturation_pressure.150', vapour, ['temperature_c', 150], 'pressure_pa', 476101.4, 143],
  ['atmosphere.pressure.minus500', 'atmosphere.pressure', ['altitude_m', -500], 'pressure_pa', 107478, 1],
  ['atmosphere.pressure.0', 'atmosphere.pressure', ['altitude_m', 0], 'pressure_pa', 101325, 1],
  ['atmosphere.pressure.1000', 'atmosphere.pressure', ['altitude_m', 1000], 'pressure_pa', 89875, 1],
  ['atmosphere.pressure.4000', 'atmosphere.pressure', ['altitude_m', 4000], 'pressure_pa', 61640, 1],
  ['atmosphere.altitude.1000', 'atmosphere.altitude', ['pressure_pa', 89875], 'altitude_m', 1000, 0.2],
]);

/** Rounded as steam tables print them. */
const steam = rows({ kind: 'published', source: 'steam-tables', standing: 'memory', note: 'rounding of the print' }, [
  ['water.saturation_temperature.atmosphere', boiling, ['pressure_pa', 101325], 'temperature_c', 99.974, 0.001],
  ['water.saturation_temperature.20kpa', boiling, ['pressure_pa', 20000], 'temperature_c', 60.06, 0.01],
  ['water.saturation_temperature.5kpa', boiling, ['pressure_pa', 5000], 'temperature_c', 32.87, 0.01],
  ['water.saturation_temperature.10kpa', boiling, ['pressure_pa', 10000], 'temperature_c', 45.81, 0.01],
  ['water.saturation_temperature.50kpa', boiling, ['pressure_pa', 50000], 'temperature_c', 81.32, 0.01],
  ['water.saturation_pressure.80', vapour, ['temperature_c', 80], 'pressure_pa', 47415, 20],
  ['water.saturation_pressure.120', vapour, ['temperature_c', 120], 'pressure_pa', 198670, 100],
  ['water.latent_heat.0', 'water.latent_heat', ['temperature_c', 0.01], 'latent_heat_j_kg', 2500.9e3, 1000],
  ['water.latent_heat.25', 'water.latent_heat', ['temperature_c', 25], 'latent_heat_j_kg', 2441.7e3, 1000],
  ['water.latent_heat.50', 'water.latent_heat', ['temperature_c', 50], 'latent_heat_j_kg', 2381.9e3, 1000],
  ['water.latent_heat.100', 'water.latent_heat', ['temperature_c', 100], 'latent_heat_j_kg', 2256.4e3, 1000],
  ['water.latent_heat.150', 'water.latent_heat', ['temperature_c', 150], 'latent_heat_j_kg', 2113.7e3, 1000],
  ['water.latent_heat.200', 'water.latent_heat', ['temperature_c', 200], 'latent_heat_j_kg', 1939.7e3, 1000],
]);

/** Ratio of vapour pressures over ice and over supercooled water, meteorological tables. */
const frost = rows({ kind: 'published', source: 'wmo-8', standing: 'memory', note: 'ratio of the two printed vapour pressures' }, [
  ['water.activity_of_ice.5', 'water.activity_of_ice', ['temperature_c', -5], 'water_activity', 401.78 / 421.84, 0.001],
  ['water.activity_of_ice.10', 'water.activity_of_ice', ['temperature_c', -10], 'water_activity', 259.92 / 286.57, 0.001],
  ['water.activity_of_ice.15', 'water.activity_of_ice', ['temperature_c', -15], 'water_activity', 165.32 / 191.44, 0.001],
  ['water.activity_of_ice.20', 'water.activity_of_ice', ['temperature_c', -20], 'water_activity', 103.28 / 125.63, 0.0015],
  ['water.saturation_pressure.minus40', vapour, ['temperature_c', -40], 'pressure_pa', 12.84, 0.02],
]);

/** Tables of the standard atmosphere. */
const altitudes = rows({ kind: 'published', source: 'iso-2533-1975', standing: 'memory', note: 'rounding of the print' }, [
  ['atmosphere.pressure.500', 'atmosphere.pressure', ['altitude_m', 500], 'pressure_pa', 95461, 2],
  ['atmosphere.pressure.1500', 'atmosphere.pressure', ['altitude_m', 1500], 'pressure_pa', 84556, 2],
  ['atmosphere.pressure.3000', 'atmosphere.pressure', ['altitude_m', 3000], 'pressure_pa', 70109, 2],
]);

export const checks: readonly Check[] = [...verification, ...handbook, ...steam, ...altitudes, ...frost];
