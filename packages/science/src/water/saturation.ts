import { OutOfRange, requireRange } from '../errors.js';
import type { Celsius } from '../units.js';
import { solidsAt, waterHeld } from './activity.js';
import { binaryAt, waterPerSolute, type Binary } from './binary.js';
import { molarMasses } from './data/binary.js';
import { saturationFunction } from './data/solubility.js';
import { rootOfIncreasing } from './interpolate.js';
import { newtonRoot } from './secant.js';
import { lactoseFinalSolubility, sucroseSolubility } from './solubility.js';
import { dissolvedSolids, type Solution } from './solution.js';

/** Sugars that grain from a confectionery syrup. */
export type GrainingSugar = 'sucrose' | 'lactose';
const { water: waterMass, sucrose: sugarMass } = molarMasses.values;

/** ln of the solute's activity coefficient against infinite dilution: Gibbs and Duhem on ln γw = -k x² (1 + a x + b x²). */
function lnSoluteCoefficient(of: Binary, x: number): number {
  return of.k * x * (2 + x * ((3 * of.a - 2) / 2 + x * ((4 * of.b - 3 * of.a) / 3 - x * of.b)));
}

/** Activity of a sugar at mole fraction x of its own solution, against infinite dilution. */
function ownActivity(binary: Binary, x: number): number {
  return x * Math.exp(lnSoluteCoefficient(binary, Math.min(x, binary.end)));
}

/** Slope of the logarithm of `ownActivity` against x. */
function ownSlope(binary: Binary, x: number): number {
  const { k, a, b } = binary;
  return 1 / x + (x < binary.end ? k * (2 + x * (3 * a - 2 + x * (4 * b - 3 * a - 4 * x * b))) : 0);
}

/** Solubility in water alone, kg per kg. */
export function pureSolubility(sugar: GrainingSugar, t: Celsius): number {
  return sugar === 'sucrose' ? sucroseSolubility(t) : lactoseFinalSolubility(t);
}

/**
 * How other dissolved solids lower the solubility of a sugar per kg of water: y = (kg/kg beside them)/(kg/kg alone).
 * `activity`: as the activity model has it. `expected`: 0.61 of that in ln y, which meets sucrose beside invert sugar.
 *
 * @throws OutOfRange outside 0 to 140 °C (lactose 100 °C), or without water
 */
export function saturationCoefficient(
  others: Solution,
  sugar: GrainingSugar,
  t: Celsius,
): { readonly activity: number; readonly expected: number } {
  requireRange('water', others.water, [Number.MIN_VALUE, Number.MAX_VALUE], 'zsr');
  const alone = pureSolubility(sugar, t);
  const rest: Solution = { ...others, [sugar]: 0 };
  if (dissolvedSolids(rest) === 0) return { activity: 1, expected: 1 };
  const binary = binaryAt(sugar, t);
  const { water } = others;
  const target = ownActivity(binary, 1 / (1 + sugarMass / waterMass / alone));
  const beside = solidsAt(rest, t);
  const own = { water: 0, gain: 0 };
  const held = { water: 0, gain: 0 };
  // Solutes hold their water side by side: at a water activity the sugar has what the others leave, and its activity is that in its own
  // solution, times that share of the water. So the mixture is followed along its water activity, and needs no solve of its own.
  let rise = 0;
  const excess = (dryness: number): number => {
    const aw = Math.exp(-dryness);
    waterHeld(beside, aw, held, -dryness);
    waterPerSolute(binary, aw, own, -dryness);
    const left = 1 - held.water / water;
    const x = 1 / (1 + own.water);
    const activity = ownActivity(binary, x);
    rise = activity * aw * (held.gain / water + left * ownSlope(binary, x) * own.gain * x * x);
    return left * activity - target;
  };
  // A first guess: so much of the sugar as dissolves alone beside the others, by the ideal law bent as sugars bend it.
  const ideal = (beside.moles * waterMass) / water + (0.8 * alone * waterMass) / sugarMass;
  const alike = ideal * (1 + 0.6 * (1 - Math.exp(-6 * ideal)));
  const dryness = newtonRoot(excess, () => rise, alike, 0, 40, 1e-7);
  // There the sugar's share of the water is its activity when saturated over that in its own solution.
  waterPerSolute(binary, Math.exp(-dryness), own, -dryness);
  const share = target / ownActivity(binary, 1 / (1 + own.water));
  const ratio = (share * sugarMass) / (waterMass * own.water * alone);
  return { activity: ratio, expected: Math.exp(saturationFunction.values.share * Math.log(ratio)) };
}

/** Where a sugar stands in a syrup. */
export interface GrainState {
  /** kg of the sugar per kg of water, over what saturates beside the other solids. Above 1 it can grain. */
  readonly supersaturation: number;
  /** kg per kg of water that stay dissolved at equilibrium. */
  readonly saturated: number;
  /** Mass of crystal at equilibrium, in the unit of the syrup (lactose as anhydrous). */
  readonly crystal: number;
  /** The syrup that is left. */
  readonly syrup: Solution;
}

/** kg of a sugar per kg of water over what saturates beside the other solids; above 1 it can grain. Errors as `grainAtEquilibrium`. */
export function supersaturation(total: Solution, sugar: GrainingSugar, t: Celsius): number {
  const mass = total[sugar] ?? 0;
  if (!(mass >= 0)) throw new OutOfRange(sugar, mass, [0, Infinity], 'a mass');
  return mass / (total.water * pureSolubility(sugar, t) * saturationCoefficient(total, sugar, t).expected);
}

/**
 * Grain of one sugar at equilibrium: what lies above its solubility beside the other solids crystallises. Lactose takes its water of
 * crystallisation with it (1 mol).
 *
 * @param total - the dissolved phase with all of the sugar in it
 * @throws OutOfRange outside the temperature of the solubility table, or without water
 */
export function grainAtEquilibrium(total: Solution, sugar: GrainingSugar, t: Celsius): GrainState {
  const mass = total[sugar] ?? 0;
  if (!(mass >= 0)) throw new OutOfRange(sugar, mass, [0, Infinity], 'a mass');
  const limit = (water: number): number => pureSolubility(sugar, t) * saturationCoefficient({ ...total, water }, sugar, t).expected;
  const saturated = limit(total.water);
  const supersaturation = mass / (total.water * saturated);
  if (supersaturation <= 1) return { supersaturation, saturated, crystal: 0, syrup: total };
  const hydrate = sugar === 'lactose' ? waterMass / sugarMass : 0;
  // Sucrose takes no water along, so its limit stays where it is.
  if (hydrate === 0) {
    const crystal = mass - saturated * total.water;
    return { supersaturation, saturated, crystal, syrup: { ...total, [sugar]: mass - crystal } };
  }
  const waterLeft = (crystal: number): number => Math.max(total.water - hydrate * crystal, 1e-9 * total.water);
  const crystal = rootOfIncreasing((c) => c - (mass - waterLeft(c) * limit(waterLeft(c))), 0, mass);
  return { supersaturation, saturated, crystal, syrup: { ...total, water: waterLeft(crystal), [sugar]: mass - crystal } };
}

/** The saturation function of the sugar works: y = m q + b + (1 - b) exp(c q), q other solids per water. */
export function saturationFunctionValue(q: number, m: number, b: number, c: number): number {
  requireRange('nonsugar_per_water', q, [0, 20], 'wiklund-vavrinecz');
  return m * q + b + (1 - b) * Math.exp(c * q);
}
