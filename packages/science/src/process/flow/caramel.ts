import { at, fats, proteins, share, type Composition } from '../../composition.js';
import { requireRange } from '../../errors.js';
import { choiOkosDensity } from '../data/choi-okos.js';
import { crystallineSucrose } from '../data/sugar-solution.js';
import { caramelSuspension } from '../data/syrup-viscosity.js';
import { polynomial } from '../polynomial.js';
import { density, type PhaseState } from '../thermal.js';
import { concentratedSyrupViscosity } from './syrup.js';
import type { Celsius, PascalSecond, VolumeFraction } from '../../units.js';

/**
 * Viscosity of a suspension over that of its liquid (Krieger and Dougherty): (1 - φ/φm)^(-2.5 φm).
 *
 * @param volumeFraction - 0 to below the packing limit
 * @throws OutOfRange at or above the packing limit: it no longer flows
 * @example suspensionFactor(0.2) // 1.80
 */
export function suspensionFactor(volumeFraction: VolumeFraction, packing = caramelSuspension.values.packing as number): number {
  requireRange('volume fraction', volumeFraction, [0, packing * 0.999], 'krieger-dougherty-1959');
  return (1 - volumeFraction / packing) ** (-caramelSuspension.values.intrinsic * packing);
}

/** Volume share of what lies in the syrup of a caramel: fat, swollen protein, sugar crystals. */
export function dispersedVolume(of: Composition, t: Celsius, state?: PhaseState): VolumeFraction {
  const fat = share(of, fats) / polynomial(choiOkosDensity.values.fat, t);
  const protein = share(of, proteins) * caramelSuspension.values.protein_volume;
  const crystal = (of[at.sucrose]! * (state?.crystallineSucrose ?? 0)) / crystallineSucrose.values.density;
  return (fat + protein + crystal) * density(of, t, state);
}

/**
 * Viscosity of a caramel, Pa s: syrup phase, times fat, protein and crystals as a suspension, times the plant's own factor.
 *
 * @param plantFactor - measured over computed viscosity of the plant's own caramel; 1 until measured
 * @returns Pa s; a factor 5 to 20 too low without a plant factor where milk protein has formed a network
 * @throws OutOfRange as `concentratedSyrupViscosity` and `suspensionFactor`
 */
export function caramelViscosity(of: Composition, t: Celsius, plantFactor = 1, state?: PhaseState): PascalSecond {
  return plantFactor * suspensionFactor(dispersedVolume(of, t, state)) * concentratedSyrupViscosity(of, t, state);
}

/** One measurement of the plant's caramel. */
export interface CaramelReference {
  readonly composition: Composition;
  readonly temperature: Celsius;
  readonly viscosity: PascalSecond;
}

/** The plant factor that makes the model meet one measurement. */
export function caramelPlantFactor(reference: CaramelReference): number {
  return reference.viscosity / caramelViscosity(reference.composition, reference.temperature);
}
