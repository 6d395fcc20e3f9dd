import { requireRange } from '../../errors.js';

/** Nusselt numbers of surfaces in air or water; properties at the mean of surface and stream. Errors: OutOfRange for numbers below 0. */

function check(first: [string, number], prandtl: number, source: string): void {
  requireRange(first[0], first[1], [0, 1e15], source);
  requireRange('Prandtl number', prandtl, [1e-4, 1e5], source);
}

/** Free convection at a vertical plate (Churchill and Chu), any Rayleigh number up to 1e12. */
export function nusseltVerticalPlate(rayleigh: number, prandtl: number): number {
  check(['Rayleigh number', rayleigh], prandtl, 'churchill-chu-1975');
  return (0.825 + (0.387 * rayleigh ** (1 / 6)) / (1 + (0.492 / prandtl) ** (9 / 16)) ** (8 / 27)) ** 2;
}

/** Free convection at a horizontal cylinder (Churchill and Chu), Rayleigh number up to 1e12. */
export function nusseltHorizontalCylinder(rayleigh: number, prandtl: number): number {
  check(['Rayleigh number', rayleigh], prandtl, 'churchill-chu-1975');
  return (0.6 + (0.387 * rayleigh ** (1 / 6)) / (1 + (0.559 / prandtl) ** (9 / 16)) ** (8 / 27)) ** 2;
}

/** Mean over a flat plate in a stream: laminar to Re 5e5, mixed beyond. */
export function nusseltFlatPlate(reynolds: number, prandtl: number): number {
  check(['Reynolds number', reynolds], prandtl, 'incropera-7');
  return reynolds <= 5e5 ? 0.664 * Math.sqrt(reynolds) * Math.cbrt(prandtl) : (0.037 * reynolds ** 0.8 - 871) * Math.cbrt(prandtl);
}

/** Cylinder across a stream (Churchill and Bernstein), Re Pr above 0.2. */
export function nusseltCylinder(reynolds: number, prandtl: number): number {
  check(['Reynolds number', reynolds], prandtl, 'churchill-bernstein-1977');
  const laminar = (0.62 * Math.sqrt(reynolds) * Math.cbrt(prandtl)) / (1 + (0.4 / prandtl) ** (2 / 3)) ** 0.25;
  return 0.3 + laminar * (1 + (reynolds / 282_000) ** (5 / 8)) ** 0.8;
}
