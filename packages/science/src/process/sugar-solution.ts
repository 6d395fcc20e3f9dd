import { icumsaDensity, kellDensity } from './data/sugar-solution.js';
import { polynomial } from './polynomial.js';
import type { Celsius, KilogramPerCubicMetre, MassFraction } from '../units.js';

const { t0, t1, t2, t3, t4 } = icumsaDensity.values;
const { numerator, denominator } = kellDensity.values;

/** Density of liquid water at 1 atm, kg/m³; 0 to 150 °C (Kell). */
export function waterDensity(t: Celsius): KilogramPerCubicMetre {
  return polynomial(numerator, t) / (1 + denominator * t);
}

/**
 * Density of a pure sucrose solution, kg/m³ (ICUMSA polynomial).
 *
 * @param sucrose - mass fraction, fitted 0 to 0.95; runs on smoothly to 1 (amorphous sugar then about 2 % too dense)
 * @param t - °C, fitted 0 to 100; smooth to 130
 * @example sucroseSolutionDensity(0.6, 20) // 1286.5
 */
export function sucroseSolutionDensity(sucrose: MassFraction, t: Celsius): KilogramPerCubicMetre {
  const x = (t - 20) / 100;
  const b = sucrose;
  const rise = polynomial(t0, b) + x * (polynomial(t1, b) + x * (polynomial(t2, b) + x * (polynomial(t3, b) + x * polynomial(t4, b))));
  return waterDensity(t) + b * rise;
}

/**
 * Volume that 1 kg of sucrose takes up in a solution of the given concentration, m³/kg (apparent specific volume).
 * Volumes of water and sugar then add exactly to the ICUMSA density.
 */
export function sucroseApparentVolume(sucrose: MassFraction, t: Celsius): number {
  const b = Math.max(sucrose, 1e-3); // the limit at infinite dilution, free of 0/0
  return (1 / sucroseSolutionDensity(b, t) - (1 - b) / waterDensity(t)) / b;
}
