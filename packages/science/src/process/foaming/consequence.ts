import { requireRange } from '../../errors.js';
import { foamStiffness } from '../data/foam.js';
import { airFraction } from './foam.js';
import type { KilogramPerCubicMetre, Metre } from '../../units.js';

/** What a layer that is not as dense as planned does to the bar. */
export interface DensityConsequence {
  /** Layer mass over plan when its thickness is held. */
  readonly massRatio: number;
  /** Layer thickness over plan when its mass is held. */
  readonly thicknessRatio: number;
}

/** Consequence of an off-plan density (a weak albumen, say) for a layer sheeted to thickness, or dosed by mass. */
export function densityConsequence(planned: KilogramPerCubicMetre, actual: KilogramPerCubicMetre): DensityConsequence {
  requireRange('planned density', planned, [1e-300, 1e5], 'foam-volume-balance');
  requireRange('actual density', actual, [1e-300, 1e5], 'foam-volume-balance');
  return { massRatio: actual / planned, thicknessRatio: planned / actual };
}

/**
 * Density when the foaming agent holds only a share of the gas it should.
 *
 * @param power - gas held over gas held by a good lot, 0 up
 */
export function densityAtFoamingPower(
  planned: KilogramPerCubicMetre,
  gasFree: KilogramPerCubicMetre,
  power: number,
): KilogramPerCubicMetre {
  requireRange('foaming power', power, [0, 10], 'foam-volume-balance');
  const overrun = (airFraction(planned, gasFree) * gasFree) / planned;
  return gasFree / (1 + overrun * power);
}

/** Thickness of a sheet of given mass per area. */
export function sheetThickness(massPerArea: number, density: KilogramPerCubicMetre): Metre {
  return massPerArea / density;
}

/**
 * Stiffness of an aerated mass over that at another density, ((ρ - ρc)/(ρ' - ρc))³ with ρc at an air fraction of 0.6.
 *
 * @throws OutOfRange at or below the critical density: the foam holds no shape there
 */
export function stiffnessRatio(density: KilogramPerCubicMetre, reference: KilogramPerCubicMetre, gasFree: KilogramPerCubicMetre): number {
  const critical = (1 - foamStiffness.values.critical_air_fraction) * gasFree;
  requireRange('density', density, [critical * (1 + 1e-12), gasFree], foamStiffness.source);
  requireRange('reference density', reference, [critical * (1 + 1e-12), gasFree], foamStiffness.source);
  return ((density - critical) / (reference - critical)) ** foamStiffness.values.exponent;
}
