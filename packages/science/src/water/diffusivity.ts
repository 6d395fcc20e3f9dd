import { requireRange } from '../errors.js';
import { polynomial } from '../process/polynomial.js';
import type { Celsius, SquareMetrePerSecond, WaterActivity } from '../units.js';
import { diffusivityPolynomials, lienhardDiffusivity, sugarDiffusivity, zobristDiffusivity } from './data/diffusivity.js';
import { interpolate } from './interpolate.js';
import { sucroseViscosity } from './viscosity.js';

export type DiffusivityFit = 'sucrose' | 'raffinose' | 'sucroseQuintic' | 'sucroseSelf';

/**
 * Diffusivity of water (or of the sugar itself) in an amorphous sugar near 23 °C. The argument is the water ACTIVITY.
 *
 * @param aw - 0 to 1; measured from about 0.2
 * @returns m²/s; rises by decades with water
 * @throws OutOfRange
 * @example waterDiffusivity('sucrose', 0.6) // 6.9e-13
 */
export function waterDiffusivity(fit: DiffusivityFit, aw: WaterActivity): SquareMetrePerSecond {
  requireRange('water_activity', aw, [0, 1], 'price-2014');
  return 10 ** polynomial(diffusivityPolynomials.values[fit], aw);
}

/**
 * Diffusivity of water in sucrose by water ACTIVITY and temperature (Zobrist).
 *
 * @param aw - 0 to 1
 * @param t - °C, -110 to 60
 * @throws OutOfRange; also where the temperature has fallen to the ideal glass
 */
export function zobristWaterDiffusivity(aw: WaterActivity, t: Celsius): SquareMetrePerSecond {
  requireRange('water_activity', aw, [0, 1], 'zobrist-2011');
  const u = 1 - aw;
  const { a, b, T0 } = zobristDiffusivity.values;
  const ideal = T0[0] * (1 + T0[1] * u + T0[2] * u ** T0[3]);
  requireRange('temperature_c', t, [Math.max(-110, ideal - 272), 60], 'zobrist-2011');
  const exponent = a[0] + a[1] * (1 - a[2] * u) + (b[0] * (1 + b[1] * u + b[2] * u * u)) / (t + 273.15 - ideal);
  return 10 ** -exponent;
}

/**
 * Diffusivity of water in sucrose by water MOLE fraction and temperature (Lienhard): ln D = (1 - x α) ln D(dry) + x α ln D(water).
 * A water activity fed in here is wrong by decades.
 *
 * @param x - mole fraction of water, 0 to 1
 * @param t - °C, -100 to 60
 * @param weighting - 1: as written above, and in line with the fits by water activity; 2: x α squared, as a public code has it
 * @throws OutOfRange
 * @example lienhardWaterDiffusivity(0.85, 25) // 1.7e-11
 */
export function lienhardWaterDiffusivity(x: number, t: Celsius, weighting: 1 | 2 = 1): SquareMetrePerSecond {
  requireRange('water_mole_fraction', x, [0, 1], 'lienhard-2015');
  requireRange('temperature_c', t, [-100, 60], 'lienhard-2015');
  const v = lienhardDiffusivity.values;
  const T = t + 273.15;
  const dry = v.lnAtGlass + (v.activation / v.R) * (1 / v.glass - 1 / T);
  const a = v.a[0] + v.a[1] * Math.min(T, v.a[2]);
  const b = v.b[0] + v.b[1] * Math.min(T, v.b[2]);
  const u = 1 - x;
  const weight = (x * Math.exp(u * u * (a + 3 * b - 4 * b * u))) ** weighting;
  const wet = Math.log(v.water[0]) - v.water[1] / (T - v.water[2]);
  return Math.exp(dry + weight * (wet - dry)) * 1e-4;
}

const dilute = sugarDiffusivity.values;
export const diffusingSugars = ['sucrose', 'glucose', 'fructose', 'lactose'] as const;
export type DiffusingSugar = (typeof diffusingSugars)[number];

/**
 * Diffusivity of a sugar in water at infinite dilution: the measured limit, carried to other temperatures by D η/T (Stokes and Einstein).
 *
 * @param t - °C, 0 to 100; measured 25 to 39 °C, sucrose to 45, lactose to 55
 * @returns m²/s; rises with temperature
 * @throws OutOfRange
 * @example sugarDiffusivityInWater('sucrose', 25) // 5.23e-10
 */
export function sugarDiffusivityInWater(sugar: DiffusingSugar, t: Celsius): SquareMetrePerSecond {
  requireRange('temperature_c', t, [0, 100], sugarDiffusivity.source);
  const kelvins = dilute[`${sugar}_k`];
  const first = kelvins[0];
  const last = kelvins[kelvins.length - 1]!;
  const T = t + 273.15;
  const near = Math.min(last, Math.max(first, T));
  const measured = 1e-9 * Math.exp(interpolate(near, kelvins, dilute[sugar].map(Math.log)));
  return ((measured * T) / near) * (sucroseViscosity(0, near - 273.15) / sucroseViscosity(0, t));
}
