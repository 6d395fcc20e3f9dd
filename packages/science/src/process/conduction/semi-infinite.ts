import { requireRange } from '../../errors.js';
import { erf, erfc } from '../../statistics/normal.js';
import { scaledErfc } from './special.js';
import type { Kelvin, Metre, Second, SquareMetrePerSecond, WattPerMetreKelvin } from '../../units.js';

/**
 * Half-space whose surface jumps to a temperature and stays there: (T - Ts)/(T0 - Ts) = erf(x / 2√(αt)).
 *
 * @param depth - m below the surface, 0 or more
 * @returns 1 deep inside or at the start, 0 at the surface
 * @throws OutOfRange for a negative depth, time or a diffusivity that is not positive
 * @see carslaw-jaeger-1959
 */
export function semiInfiniteStep(depth: Metre, diffusivity: SquareMetrePerSecond, time: Second): number {
  checkHalfSpace(depth, diffusivity, time);
  if (time === 0) return depth === 0 ? 0 : 1;
  return erf(depth / (2 * Math.sqrt(diffusivity * time)));
}

/**
 * Half-space against a medium through a surface coefficient: (T - T∞)/(T0 - T∞).
 * Dimensionless so that it serves heat and moisture: depth x/L, Fourier α t/L², Biot h L/k with any one length L.
 *
 * @see incropera-5 eq. 5.63
 */
export function semiInfiniteConvection(depth: number, fourier: number, biot: number): number {
  requireRange('depth', depth, [0, Infinity], 'carslaw-jaeger-1959');
  requireRange('Fourier number', fourier, [0, Infinity], 'carslaw-jaeger-1959');
  if (fourier === 0) return 1;
  const root = Math.sqrt(fourier);
  const eta = depth / (2 * root);
  if (biot === Infinity) return erf(eta);
  // exp(Bi x + Bi² Fo) erfc(eta + Bi √Fo) in scaled form: the exponents cancel to -eta².
  return erf(eta) + Math.exp(-eta * eta) * scaledErfc(eta + biot * root);
}

/**
 * Temperature rise of a half-space under a constant heat flux, K (negative flux cools).
 *
 * @param flux - W/m² into the surface
 * @see incropera-5 eq. 5.62
 */
export function semiInfiniteFlux(
  depth: Metre,
  diffusivity: SquareMetrePerSecond,
  time: Second,
  flux: number,
  conductivity: WattPerMetreKelvin,
): Kelvin {
  checkHalfSpace(depth, diffusivity, time);
  if (time === 0) return 0;
  const reach = Math.sqrt(diffusivity * time);
  const eta = depth / (2 * reach);
  return (flux / conductivity) * (2 * reach * (Math.exp(-eta * eta) / Math.sqrt(Math.PI)) - depth * erfc(eta));
}

function checkHalfSpace(depth: number, diffusivity: number, time: number): void {
  requireRange('depth', depth, [0, Infinity], 'carslaw-jaeger-1959');
  requireRange('time', time, [0, Infinity], 'carslaw-jaeger-1959');
  requireRange('diffusivity', diffusivity, [1e-300, Infinity], 'carslaw-jaeger-1959');
}
