import { saturationPressure } from '../../core/saturation.js';
import { NoSolution, OutOfRange, requireRange } from '../../errors.js';
import type { Celsius, KilogramPerCubicMetre, Pascal, VolumeFraction, WaterActivity } from '../../units.js';

/** A place where gas sits in the mass: pressure, temperature, and the water activity that sets the vapour in the bubble. */
export interface GasState {
  /** Absolute pressure, Pa. */
  readonly pressure: Pascal;
  readonly temperature: Celsius;
  readonly waterActivity: WaterActivity;
}

/** Dry gas in a bubble, mol/m³ times the gas constant: (P - aw psat) / T. */
function dryGas(at: GasState): number {
  requireRange('pressure', at.pressure, [1, 1e8], 'ideal-gas');
  requireRange('water activity', at.waterActivity, [0, 1], 'ideal-gas');
  const vapour = at.waterActivity * saturationPressure(at.temperature);
  if (!(at.pressure > vapour)) {
    throw new NoSolution(
      `At ${at.temperature.toFixed(1)} °C the vapour of the mass (${Math.round(vapour)} Pa) exceeds the pressure: it boils`,
    );
  }
  return (at.pressure - vapour) / (at.temperature + 273.15);
}

/** Volume of the same dry gas in another place over that in the first: Boyle and Gay-Lussac, less the water vapour in the bubbles. */
export function gasExpansion(from: GasState, to: GasState): number {
  return dryGas(from) / dryGas(to);
}

export interface WhippedFoam {
  readonly density: KilogramPerCubicMetre;
  readonly airFraction: VolumeFraction;
  readonly overrun: number;
}

/**
 * Density of a mass whipped under pressure after it is let out and cooled.
 *
 * @param holdUp - gas by volume of foam inside the whip, 0 to 1
 * @param gasFreeDensity - of the mass at the second place, kg/m³
 * @param kept - share of the gas that survives release, fat and shear, 0 to 1
 * @throws NoSolution where the mass would boil, OutOfRange for impossible shares
 */
export function whippedDensity(
  holdUp: VolumeFraction,
  gasFreeDensity: KilogramPerCubicMetre,
  whip: GasState,
  after: GasState,
  kept = 1,
): WhippedFoam {
  requireRange('hold-up', holdUp, [0, 0.95], 'ideal-gas');
  requireRange('share of gas kept', kept, [0, 1], 'ideal-gas');
  const gas = (holdUp / (1 - holdUp)) * gasExpansion(whip, after) * kept; // by volume of liquid
  return { density: gasFreeDensity / (1 + gas), airFraction: gas / (1 + gas), overrun: gas };
}

/**
 * Whipping pressure that gives a density, all else as in `whippedDensity`, Pa absolute.
 *
 * @throws OutOfRange when the wanted density is not below the gas-free one
 */
export function whippingPressure(
  wanted: KilogramPerCubicMetre,
  holdUp: VolumeFraction,
  gasFreeDensity: KilogramPerCubicMetre,
  whip: Omit<GasState, 'pressure'>,
  after: GasState,
  kept = 1,
): Pascal {
  if (!(wanted > 0 && wanted < gasFreeDensity)) throw new OutOfRange('density', wanted, [0, gasFreeDensity], 'ideal-gas');
  const overrun = gasFreeDensity / wanted - 1;
  const expansion = (overrun * (1 - holdUp)) / (holdUp * kept);
  const vapour = whip.waterActivity * saturationPressure(whip.temperature);
  return vapour + expansion * dryGas(after) * (whip.temperature + 273.15);
}

/**
 * Gas that the whip must hold for a density outside: `whippedDensity` turned round.
 *
 * @param wanted - density after the whip, kg/m³, above 0 and not above the gas-free one
 * @returns gas by volume of foam inside the whip, 0 to 1
 * @throws OutOfRange, NoSolution where the mass would boil
 */
export function holdUpFor(
  wanted: KilogramPerCubicMetre,
  gasFreeDensity: KilogramPerCubicMetre,
  whip: GasState,
  after: GasState,
  kept = 1,
): VolumeFraction {
  if (!(wanted > 0 && wanted <= gasFreeDensity)) throw new OutOfRange('density', wanted, [0, gasFreeDensity], 'ideal-gas');
  requireRange('share of gas kept', kept, [Number.MIN_VALUE, 1], 'ideal-gas');
  const inside = (gasFreeDensity / wanted - 1) / (gasExpansion(whip, after) * kept);
  return inside / (1 + inside);
}
