import { requireRange } from '../../errors.js';
import type { Kilogram, KilogramPerCubicMetre } from '../../units.js';

/** Reading of a density cup with its standard uncertainty. */
export interface CupReading {
  readonly density: KilogramPerCubicMetre;
  readonly uncertainty: KilogramPerCubicMetre;
}

/**
 * Density from a cup filled level.
 *
 * @param gross - cup with mass, kg
 * @param tare - cup alone, kg
 * @param volume - of the cup, m³
 * @param fillUncertainty - relative standard uncertainty of filling and levelling; 0.01 is usual (common practice, no source)
 * @param balance - standard uncertainty of a weighing, kg
 * @throws OutOfRange when gross is not above tare or the volume not positive
 */
export function cupDensity(gross: Kilogram, tare: Kilogram, volume: number, fillUncertainty = 0.01, balance = 1e-4): CupReading {
  requireRange('volume of the cup', volume, [1e-300, 1], 'foam-volume-balance');
  requireRange('tare', tare, [0, 1e30], 'foam-volume-balance');
  requireRange('net mass', gross - tare, [1e-30, 1e30], 'foam-volume-balance');
  const density = (gross - tare) / volume;
  return { density, uncertainty: Math.hypot(density * fillUncertainty, (Math.SQRT2 * balance) / volume) };
}

/** Density of an aerated mass with pieces stirred in: volumes add. Shares of mass; densities in one unit. */
export function densityWithInclusions(
  foamDensity: KilogramPerCubicMetre,
  inclusionDensity: KilogramPerCubicMetre,
  inclusionShare: number,
): KilogramPerCubicMetre {
  requireRange('share of inclusions', inclusionShare, [0, 1], 'foam-volume-balance');
  return 1 / ((1 - inclusionShare) / foamDensity + inclusionShare / inclusionDensity);
}
