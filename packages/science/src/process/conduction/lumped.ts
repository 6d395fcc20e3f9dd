import { requireRange } from '../../errors.js';
import type { Celsius, Second } from '../../units.js';

/**
 * Time constant of a body of even temperature, s: rho cp (V/A) / h. Good while h (V/A) / k stays below 0.1.
 *
 * @param length - volume by surface, m
 * @throws OutOfRange when an argument is not positive
 */
export function lumpedTimeConstant(density: number, specificHeat: number, length: number, coefficient: number): Second {
  for (const [name, value] of Object.entries({ density, specificHeat, length, coefficient })) {
    requireRange(name, value, [1e-300, Infinity], 'incropera-5');
  }
  return (density * specificHeat * length) / coefficient;
}

/** Temperature of a body of even temperature after a time in a medium, °C. */
export function lumpedTemperature(start: Celsius, medium: Celsius, timeConstant: Second, time: Second): Celsius {
  return medium + (start - medium) * Math.exp(-time / timeConstant);
}
