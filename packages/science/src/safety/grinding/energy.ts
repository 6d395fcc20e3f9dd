import { NoSolution, requireRange } from '../../errors.js';

/** Exponent n of dE/dx = -C x^-n: kick 1, bond 1.5, rittinger 2. */
export type SizeLaw = 'rittinger' | 'bond' | 'kick';

/**
 * Size function whose difference times a constant is the energy: 1/x (Rittinger), 1/√x (Bond), -ln x (Kick).
 * Sizes in any one unit.
 */
function drive(law: SizeLaw, size: number): number {
  requireRange('size', size, [Number.MIN_VALUE, 1e12], 'a size');
  if (law === 'rittinger') return 1 / size;
  return law === 'bond' ? 1 / Math.sqrt(size) : -Math.log(size);
}

/** Constant of a law from a known energy; energy per mass in any unit. */
export function sizeConstant(law: SizeLaw, energy: number, from: number, to: number): number {
  const change = drive(law, to) - drive(law, from);
  if (!(change > 0)) throw new NoSolution(`Grinding must make ${from} smaller, not ${to}`);
  return energy / change;
}

/** No size reduction takes no energy; a growth in size is no grinding. */
function requireSmaller(from: number, to: number): void {
  if (to > from) throw new NoSolution(`Grinding cannot turn a size of ${from} into ${to}; the product is the smaller one`);
}

/** Energy per mass for another size reduction by the same constant. */
export function sizeEnergy(law: SizeLaw, constant: number, from: number, to: number): number {
  requireSmaller(from, to);
  return constant * (drive(law, to) - drive(law, from));
}

/** Bond: energy in kWh/t from a work index in kWh/t and 80 % passing sizes in µm. */
export function bondEnergy(workIndex: number, feed80: number, product80: number): number {
  requireSmaller(feed80, product80);
  return 10 * workIndex * (drive('bond', product80) - drive('bond', feed80));
}

/** Rittinger's energy per new surface: J per m² from J/kg and the specific surfaces in m²/kg. */
export function surfaceEnergy(energy: number, before: number, after: number): number {
  if (!(after > before)) throw new NoSolution(`Grinding must raise the surface, from ${before} to ${after} m²/kg it does not`);
  return energy / (after - before);
}

/**
 * Largest sphere that a pair of rolls nips: cos(angle/2) = (r + gap/2) / (r + x/2), with r the roll radius.
 *
 * @param diameter - of the roll, same unit as the gap
 * @param gap - between the rolls
 * @param nipAngle - degrees, the full angle
 * @returns diameter of the largest feed, same unit
 */
export function largestFeed(diameter: number, gap: number, nipAngle: number): number {
  requireRange('nip_angle_deg', nipAngle, [0, 120], 'a pair of rolls');
  return (diameter + gap) / Math.cos((nipAngle * Math.PI) / 360) - diameter;
}
