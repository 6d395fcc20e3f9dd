import { NoSolution, requireRange } from '../../errors.js';
import { normalCdf } from '../../statistics/normal.js';
import { dragOfShapes } from '../data/cocoa-beans.js';

const GRAVITY = 9.80665;

export interface Medium {
  /** kg/m³ */ readonly density: number;
  /** Pa·s */ readonly viscosity: number;
}
/** Dry air at 20 °C and 101 325 Pa. */
export const airAt20: Medium = { density: 1.204, viscosity: 1.82e-5 };

/** Drag coefficient at a Reynolds number (on the sphere of equal volume) and a sphericity. */
export function dragCoefficient(reynolds: number, sphericity = 1): number {
  const { b1, b2, b3, b4 } = dragOfShapes.values;
  const s = sphericity;
  const B1 = Math.exp(b1[0] + b1[1] * s + b1[2] * s * s);
  const B2 = b2[0] + b2[1] * s;
  const B3 = Math.exp(b3[0] + b3[1] * s + b3[2] * s * s + b3[3] * s ** 3);
  const B4 = Math.exp(b4[0] + b4[1] * s + b4[2] * s * s + b4[3] * s ** 3);
  return (24 / reynolds) * (1 + B1 * reynolds ** B2) + (B3 * reynolds) / (B4 + reynolds);
}

/**
 * Terminal velocity of a particle: drag equals weight less buoyancy.
 *
 * @param diameter - of the sphere of equal volume, m
 * @param density - of the particle, kg/m³; below that of the medium the particle rises and the velocity is negative
 * @param sphericity - 0.2 to 1; fitted 0.5 to 1
 * @returns m/s; rises with diameter and density
 * @throws OutOfRange outside what is possible
 * @see haider-levenspiel-1989
 */
export function terminalVelocity(diameter: number, density: number, medium: Medium = airAt20, sphericity = 1): number {
  requireRange('diameter_m', diameter, [1e-9, 1], dragOfShapes.source);
  requireRange('density_kg_m3', density, [1, 25_000], dragOfShapes.source);
  requireRange('sphericity', sphericity, [0.2, 1], dragOfShapes.source);
  const difference = density - medium.density;
  if (difference === 0) return 0;
  // Solve C_D(Re) Re² = Ar for Re, which rises with Re, by halving the logarithm.
  const archimedes = ((4 / 3) * GRAVITY * diameter ** 3 * medium.density * Math.abs(difference)) / medium.viscosity ** 2;
  let low = 1e-14;
  let high = 1e9;
  for (let n = 0; n < 100; n++) {
    const middle = Math.sqrt(low) * Math.sqrt(high);
    if (dragCoefficient(middle, sphericity) * middle * middle < archimedes) low = middle;
    else high = middle;
  }
  const reynolds = Math.sqrt(low * high);
  return (Math.sign(difference) * reynolds * medium.viscosity) / (medium.density * diameter);
}

/** Largest sphere carried by an upward stream of `velocity` m/s, by Stokes' law, m. Holds for Reynolds numbers below about 0.3. */
export function carriedSizeStokes(velocity: number, density: number, medium: Medium): number {
  if (!(density > medium.density))
    throw new NoSolution(`A particle of ${density} kg/m³ does not settle in a medium of ${medium.density} kg/m³`);
  return Math.sqrt((18 * medium.viscosity * velocity) / (GRAVITY * (density - medium.density)));
}

/**
 * Settling of a crowd of equal spheres in Stokes' range: the suspension's density drives, and ε²/10^(1.82 (1 - ε)) hinders.
 *
 * @param massFraction - of solids in the suspension, 0 to below 1
 * @returns velocity relative to the vessel, m/s
 * @see geankoplis, equations 14.3-15 to 14.3-17
 */
export function hinderedSettling(diameter: number, density: number, medium: Medium, massFraction: number): number {
  requireRange('solids', massFraction, [0, 0.95], 'geankoplis');
  const liquid = (1 - massFraction) / medium.density;
  const voidage = liquid / (liquid + massFraction / density);
  const psi = 10 ** (-1.82 * (1 - voidage));
  return (GRAVITY * diameter * diameter * (density - medium.density) * voidage * voidage * psi) / (18 * medium.viscosity);
}

/**
 * Share of particles lifted by an air stream when their terminal velocities spread log-normally.
 *
 * @param air - velocity of the stream, m/s
 * @param median - median terminal velocity, m/s
 * @param spread - standard deviation of ln(velocity), above 0
 */
export function liftedShare(air: number, median: number, spread: number): number {
  requireRange('velocity_spread', spread, [1e-6, 5], 'a log-normal spread');
  return normalCdf(Math.log(air / median) / spread);
}

/** How many times larger the light particle must be to fall as fast as the dense one in Newton's range (constant drag). */
export function equalSettlingRatio(dense: number, light: number, medium: Medium = airAt20): number {
  return (dense - medium.density) / (light - medium.density);
}
