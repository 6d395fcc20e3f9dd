import { requireRange } from '../../errors.js';
import type { KilogramPerCubicMetre, Metre, PascalSecond, Second } from '../../units.js';

const positive = [1e-300, Infinity] as const;
const gravity = 9.80665;

/** Extensional viscosity, Pa s: Trouton ratio times shear viscosity; 3 for a Newtonian liquid, 10 to 40 reported for caramel. */
export function extensionalViscosity(viscosity: PascalSecond, troutonRatio = 3): PascalSecond {
  requireRange('Trouton ratio', troutonRatio, [3, 1e4], 'barra-2004');
  return troutonRatio * viscosity;
}

/** Pull needed to draw a strand, N: extensional viscosity times strain rate (1/s) times section (m²). */
export function strandForce(viscosity: PascalSecond, strainRate: number, section: number, troutonRatio = 3): number {
  return extensionalViscosity(viscosity, troutonRatio) * strainRate * section;
}

/**
 * Time until a strand of a Newtonian liquid is pinched off by surface tension, s: radius η / (0.0709 σ).
 *
 * @param radius - of the strand at the start, m
 * @param tension - surface tension, N/m; about 0.05 for a syrup with fat (memory)
 * @see mckinley-tripathi-2000
 */
export function strandBreakTime(radius: Metre, viscosity: PascalSecond, tension = 0.05): Second {
  for (const [name, value] of Object.entries({ radius, viscosity, tension })) requireRange(name, value, positive, 'mckinley-tripathi-2000');
  return (radius * viscosity) / (0.0709 * tension);
}

/**
 * Rate at which the foot of a free-standing column spreads under its own weight, 1/s: ρ g H / (Tr η). An upper bound for a bar
 * that stands on a surface.
 *
 * @example gravityStrainRate(1300, 0.015, 1e4) // 0.0064
 */
export function gravityStrainRate(density: KilogramPerCubicMetre, height: Metre, viscosity: PascalSecond, troutonRatio = 3): number {
  for (const [name, value] of Object.entries({ density, height, viscosity })) requireRange(name, value, positive, 'barra-2004');
  return (density * gravity * height) / extensionalViscosity(viscosity, troutonRatio);
}
