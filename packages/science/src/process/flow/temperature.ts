import { OutOfRange, requireRange } from '../../errors.js';
import type { Celsius, Kelvin, PascalSecond } from '../../units.js';

/** Molar gas constant, J/(mol K). */
export const gasConstant = 8.314462618;

/**
 * log10 of viscosity over that at the reference temperature: -C1 x / (C2 + x), x = T - Tref (Williams, Landel, Ferry).
 *
 * @param above - T - Tref, K, above -C2
 * @throws OutOfRange where C2 + x is not positive: the equation has its pole there
 * @example wlfShift(20, 17.44, 51.6) // -4.872
 */
export function wlfShift(above: Kelvin, c1: number, c2: number): number {
  if (!(c2 + above > 0)) throw new OutOfRange('temperature above the reference', above, [-c2, Infinity], 'wlf-1955');
  return (-c1 * above) / (c2 + above);
}

/** Viscosity by WLF, Pa s; `reference` is the viscosity at `tReference`. */
export function wlfViscosity(t: Celsius, tReference: Celsius, c1: number, c2: number, reference: PascalSecond): PascalSecond {
  return reference * 10 ** wlfShift(t - tReference, c1, c2);
}

/** Viscosity by Vogel, Fulcher and Tammann, Pa s: a exp(b / (T - T0)); T above T0, °C both, b in K. */
export function vftViscosity(t: Celsius, a: PascalSecond, b: Kelvin, t0: Celsius): PascalSecond {
  if (!(t > t0)) throw new OutOfRange('temperature', t, [t0, Infinity], 'vft');
  return a * Math.exp(b / (t - t0));
}

/**
 * Factor by which a rate (or a fluidity) rises from one temperature to another after Arrhenius.
 *
 * @param energy - activation energy, J/mol
 * @throws OutOfRange at or below absolute zero
 * @example arrheniusFactor(90_000, 20, 30) // 3.381
 */
export function arrheniusFactor(energy: number, from: Celsius, to: Celsius): number {
  requireRange('temperature', from, [-273.14, 1e4], 'arrhenius');
  requireRange('temperature', to, [-273.14, 1e4], 'arrhenius');
  return Math.exp((energy / gasConstant) * (1 / (from + 273.15) - 1 / (to + 273.15)));
}
