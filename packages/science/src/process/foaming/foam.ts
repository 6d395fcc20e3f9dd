import { OutOfRange, requireRange } from '../../errors.js';
import type { KilogramPerCubicMetre, VolumeFraction, WattPerMetreKelvin } from '../../units.js';

/** Conductivity of still air near room temperature, W/(m K). */
const airConductivity = 0.026;

/**
 * Share of the volume that is gas: 1 - rho / rho0. Gas weighs nothing beside the rest.
 *
 * @param density - of the foam, kg/m³, above 0 and not above the gas-free density
 * @throws OutOfRange when the foam is denser than its own gas-free mass, or a density is not positive
 */
export function airFraction(density: KilogramPerCubicMetre, gasFreeDensity: KilogramPerCubicMetre): VolumeFraction {
  requireRange('gas-free density', gasFreeDensity, [1e-300, 1e5], 'volume balance');
  if (!(density > 0 && density <= gasFreeDensity)) throw new OutOfRange('density', density, [0, gasFreeDensity], 'volume balance');
  return 1 - density / gasFreeDensity;
}

/** Density of a foam from its air fraction, kg/m³; undoes `airFraction`. */
export function foamDensity(air: VolumeFraction, gasFreeDensity: KilogramPerCubicMetre): KilogramPerCubicMetre {
  requireRange('air fraction', air, [0, 1], 'volume balance');
  return (1 - air) * gasFreeDensity;
}

/** Overrun: gas volume by gas-free volume, rho0 / rho - 1, as a fraction (0.946 is 94.6 %). Same conditions as `airFraction`. */
export function overrun(density: KilogramPerCubicMetre, gasFreeDensity: KilogramPerCubicMetre): number {
  airFraction(density, gasFreeDensity);
  return gasFreeDensity / density - 1;
}

/** Maxwell-Eucken: spheres of conductivity `dispersed` at a volume share in a continuous medium, W/(m K). */
export function dispersedConductivity(
  continuous: WattPerMetreKelvin,
  dispersed: WattPerMetreKelvin,
  volumeShare: VolumeFraction,
): WattPerMetreKelvin {
  const difference = continuous - dispersed;
  const sum = 2 * continuous + dispersed;
  return (continuous * (sum - 2 * volumeShare * difference)) / (sum + volumeShare * difference);
}

/**
 * Conductivity of a foam with closed bubbles (Maxwell-Eucken with air at 0.026 W/(m K)), W/(m K).
 *
 * @param gasFree - conductivity of the mass without gas
 * @param air - volume share of gas, 0 to 1; the spheres touch near 0.64
 */
export function foamConductivity(gasFree: WattPerMetreKelvin, air: VolumeFraction): WattPerMetreKelvin {
  requireRange('air fraction', air, [0, 1], 'maxwell-eucken');
  return dispersedConductivity(gasFree, airConductivity, air);
}
