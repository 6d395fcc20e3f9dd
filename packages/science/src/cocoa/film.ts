import { requireRange } from '../errors.js';
import type { KilogramPerCubicMetre, Metre, MetrePerSecond, Pascal, PascalSecond, Second } from '../units.js';

/** Standard gravity, m/s². */
export const gravity = 9.80665;

/**
 * Films of a Casson fluid pulled along a wall by a body force G (Pa/m): ρ g sin a on an inclined wall, or the pressure gradient of an air jet.
 * Stress at depth y below the surface is G y; the part of the film with less than the yield value moves as a plug.
 */

/** Thickness below which the film stands still, m: τ0/G. */
export function staticThickness(yieldValue: Pascal, bodyForce: number): Metre {
  requireRange('body_force_pa_m', bodyForce, [Number.MIN_VALUE, Infinity], 'physics');
  return yieldValue / bodyForce;
}

/** Wall shear rate of a Casson film, 1/s. */
export function wallRate(h: Metre, yieldValue: Pascal, plasticViscosity: PascalSecond, bodyForce: number): number {
  const wall = bodyForce * h;
  if (wall <= yieldValue) return 0;
  const root = Math.sqrt(wall) - Math.sqrt(yieldValue);
  return (root * root) / plasticViscosity;
}

/** Flow of a Casson film per width, m²/s: the law integrated over the film. */
export function filmFlow(h: Metre, yieldValue: Pascal, plasticViscosity: PascalSecond, bodyForce: number): number {
  const wall = bodyForce * h;
  if (wall <= yieldValue) return 0;
  const primitive = (t: number) => t ** 3 / 3 - 0.8 * Math.sqrt(yieldValue) * t ** 2.5 + (yieldValue * t * t) / 2;
  return (primitive(wall) - primitive(yieldValue)) / (plasticViscosity * bodyForce * bodyForce);
}

/** Flow of a Bingham film per width, m²/s: G (h - hy)² (2h + hy)/(6 μ). */
export function binghamFilmFlow(h: Metre, yieldValue: Pascal, viscosity: PascalSecond, bodyForce: number): number {
  const still = yieldValue / bodyForce;
  return h <= still ? 0 : (bodyForce * (h - still) ** 2 * (2 * h + still)) / (6 * viscosity);
}

/**
 * Thickness of a draining film at a distance from its upper edge after a time, m. Kinematic drainage: x/t = dq/dh = h · wall rate.
 * Without yield value this is Jeffreys' h = √(μ x/(ρ g t)); after long it ends at the static thickness.
 */
export function drainedThickness(x: Metre, t: Second, yieldValue: Pascal, plasticViscosity: PascalSecond, bodyForce: number): Metre {
  requireRange('distance_m', x, [0, Infinity], 'physics');
  requireRange('time_s', t, [Number.MIN_VALUE, Infinity], 'physics');
  const speed = x / t;
  const still = staticThickness(yieldValue, bodyForce);
  if (speed === 0) return still;
  return solveWave(speed, yieldValue, plasticViscosity, bodyForce, still);
}

/** h with h · wallRate(h) = speed; Newton from above on a convex function, so it never overshoots. */
function solveWave(speed: number, yieldValue: number, eta: number, force: number, still: number): number {
  let h = still + Math.sqrt((eta * speed) / force) + Math.sqrt(still * Math.sqrt((eta * speed) / force));
  while (h * wallRate(h, yieldValue, eta, force) < speed) h *= 1.5;
  for (let i = 0; i < 60; i++) {
    const a = Math.sqrt(force * h);
    const root = a - Math.sqrt(yieldValue);
    const f = (h * root * root) / eta - speed;
    const slope = (root * root + root * a) / eta; // d/dh of h root²/η, with d root/dh = a/(2h)
    const next = h - f / slope;
    if (Math.abs(next - h) < 1e-13 * h) return next;
    h = next;
  }
  return h;
}

/**
 * Mean thickness of a film that drained over a height, m, having started with a thickness. Upstream of the wave the film follows
 * drainedThickness, below it still has its first thickness. Exact integral: the flow that left is what is missing.
 */
export function meanDrainedThickness(
  height: Metre,
  t: Second,
  start: Metre,
  yieldValue: Pascal,
  plasticViscosity: PascalSecond,
  bodyForce: number,
): Metre {
  requireRange('height_m', height, [Number.MIN_VALUE, Infinity], 'physics');
  const still = staticThickness(yieldValue, bodyForce);
  if (start <= still || t <= 0) return start;
  const front = t * start * wallRate(start, yieldValue, plasticViscosity, bodyForce); // where the wave of the first thickness is now
  const end = Math.min(height, front);
  const h = front <= height ? start : drainedThickness(height, t, yieldValue, plasticViscosity, bodyForce);
  // ∫0^end h dx = end h(end) - ∫ x dh, and x = t dq/dh along the wave, so ∫ x dh = t q(h(end)).
  const inWave = end * h - t * filmFlow(h, yieldValue, plasticViscosity, bodyForce);
  return (inWave + (height - end) * start) / height;
}

/**
 * Thickness that a body force against the motion leaves on a wall moving at a speed, m: largest flow that V h - q(h) allows, over V.
 * Newtonian: (2/3)√(μ V/G) (jet wiping; with G = ρ g the largest film a withdrawn plate carries up). At rest: the static thickness.
 */
export function wipedThickness(speed: MetrePerSecond, yieldValue: Pascal, plasticViscosity: PascalSecond, bodyForce: number): Metre {
  requireRange('speed_m_s', speed, [0, 100], 'physics');
  const still = staticThickness(yieldValue, bodyForce);
  if (speed === 0) return still;
  const h = solveWave(speed, yieldValue, plasticViscosity, bodyForce, still);
  return h - filmFlow(h, yieldValue, plasticViscosity, bodyForce) / speed;
}

/** Film of a fluid that sets while it drains, m: √(μ R/(ρ g t)), the order of a shell on a sphere of radius R. @see lee-2016 */
export function settingLimitedThickness(viscosity: PascalSecond, radius: Metre, density: KilogramPerCubicMetre, setTime: Second): Metre {
  requireRange('set_time_s', setTime, [Number.MIN_VALUE, Infinity], 'physics');
  return Math.sqrt((viscosity * radius) / (density * gravity * setTime));
}

/** Mass flow per width of a Newtonian film on a wall, kg/(s m): ρ G h³/(3μ). */
export function newtonianFilmMassFlow(h: Metre, density: KilogramPerCubicMetre, viscosity: PascalSecond, angle = 90): number {
  return (density * density * gravity * Math.sin((angle * Math.PI) / 180) * h ** 3) / (3 * viscosity);
}

/** Smallest flow per width of a curtain that stays closed, m²/s: Weber number ρ q u/σ of at least 2, u after free fall. */
export function leastCurtainFlow(
  density: KilogramPerCubicMetre,
  surfaceTension: number,
  drop: Metre,
  startSpeed: MetrePerSecond = 0,
): number {
  const u = curtainSpeed(drop, startSpeed);
  requireRange('curtain_speed_m_s', u, [1e-6, 100], 'curtain-weber');
  return (2 * surfaceTension) / (density * u);
}

/** Speed of a freely falling curtain, m/s; a thick fluid falls more slowly. */
export function curtainSpeed(drop: Metre, startSpeed: MetrePerSecond = 0): MetrePerSecond {
  requireRange('drop_m', drop, [0, 5], 'physics');
  return Math.sqrt(startSpeed * startSpeed + 2 * gravity * drop);
}
