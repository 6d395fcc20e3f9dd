import { requireRange } from '../../errors.js';
import type { Kelvin, Pascal } from '../../units.js';

/** Warming of a mass by mechanical work without loss, K: energy (J) by mass (kg) and specific heat. */
export function workWarming(energy: number, mass: number, specificHeat: number): Kelvin {
  requireRange('mass', mass, [1e-300, Infinity], 'heat balance');
  requireRange('specific heat', specificHeat, [1e-300, Infinity], 'heat balance');
  return energy / (mass * specificHeat);
}

/** Warming of a mass that is pumped through a pressure drop, K: Δp / (ρ cp). */
export function pumpWarming(drop: Pascal, density: number, specificHeat: number): Kelvin {
  return workWarming(drop / density, 1, specificHeat);
}

/**
 * Pressure drop of a Newtonian liquid in laminar pipe flow (Hagen and Poiseuille), Pa.
 *
 * @param flow - m³/s
 * @param diameter - inner, m
 * @param length - m
 */
export function laminarPipeDrop(viscosity: number, flow: number, diameter: number, length: number): Pascal {
  requireRange('diameter', diameter, [1e-300, Infinity], 'hagen-poiseuille');
  return (128 * viscosity * length * flow) / (Math.PI * diameter ** 4);
}
