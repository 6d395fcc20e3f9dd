import { OutOfRange, requireRange } from '../errors.js';
import { packing, trends } from './data/rheology.js';
import type { MassFraction } from '../units.js';

/** Recipe and fineness that set the flow of a chocolate. */
export interface FlowRecipe {
  readonly fat: MassFraction;
  readonly lecithin: MassFraction;
  /** E476, polyglycerol polyricinoleate. */
  readonly pgpr: MassFraction;
  readonly moisture: MassFraction;
  /** 90 % of the particle volume is finer, µm. */
  readonly d90: number;
}

/** Sizes of the effects. Every field can be replaced by what the plant's own ladder gave. */
export interface FlowEffects {
  /** Packing limit φm of the particles; sets what a point of fat does. */
  readonly packingLimit: number;
  readonly yieldPower: number;
  readonly lecithinButter: number;
  readonly lecithinOptimum: MassFraction;
  /** Relative change of the yield value per 0.1 % lecithin, below and above the optimum. */
  readonly lecithinYieldBelow: number;
  readonly lecithinYieldAbove: number;
  readonly pgprFloor: number;
  readonly pgprScale: MassFraction;
  /** Relative change of the plastic viscosity per 0.1 % E476. */
  readonly pgprPlastic: number;
  /** Water above 1 % that undoes one point (0.01) of fat. */
  readonly waterPerFat: MassFraction;
  /** How strongly water below 1 % counts against water above it. */
  readonly dryWaterShare: number;
  readonly finenessYield: number;
  readonly finenessPlastic: number;
}

const middle = 0;
function effectsOf(place: 0 | 1 | 2): FlowEffects {
  const v = trends.values;
  return {
    packingLimit: place === middle ? packing.values.maximum : packing.values.maximumRange[place - 1]!,
    yieldPower: v.yieldPower[place],
    lecithinButter: v.lecithinButter[place],
    lecithinOptimum: v.lecithinOptimum[place],
    lecithinYieldBelow: v.lecithinYieldBelow[place],
    lecithinYieldAbove: v.lecithinYieldAbove[place],
    pgprFloor: v.pgprFloor[place],
    pgprScale: v.pgprScale[place],
    pgprPlastic: v.pgprPlastic[place],
    waterPerFat: v.waterPerFat[place],
    dryWaterShare: v.dryWaterShare[place],
    finenessYield: v.finenessYield[place],
    finenessPlastic: v.finenessPlastic[place],
  };
}
/** Middle of the published and trade values; the ends of their ranges. */
export const usualEffects = effectsOf(0);
const lowEffects = effectsOf(1);
const highEffects = effectsOf(2);

/** Relative viscosity of particles in fat, Krieger and Dougherty. @throws OutOfRange where the particles would not fit (φ at or above φm) */
export function packingFactor(fat: MassFraction, limit: number = packing.values.maximum): number {
  const { fatDensity, solidsDensity, intrinsic } = packing.values;
  const solids = (1 - fat) / solidsDensity;
  const phi = solids / (solids + fat / fatDensity);
  requireRange('solids volume over packing limit', phi / limit, [0, 0.995], 'krieger-dougherty-1959');
  return (1 - phi / limit) ** (-intrinsic * limit);
}

/** Fat that counts for packing: fat, lecithin at its butter equivalent up to the optimum, less what water undoes. */
function effectiveFat(r: FlowRecipe, e: FlowEffects): number {
  const lecithin = (e.lecithinButter - 1) * Math.min(r.lecithin, e.lecithinOptimum);
  const wet = Math.max(0, r.moisture - 0.01) + e.dryWaterShare * Math.min(r.moisture, 0.01);
  return r.fat + lecithin - (0.01 * wet) / e.waterPerFat;
}

function logs(r: FlowRecipe, e: FlowEffects): { plastic: number; yieldValue: number } {
  const withoutLecithin = { ...r, lecithin: 0 };
  const packed = Math.log(packingFactor(effectiveFat(r, e), e.packingLimit));
  const packedForYield = Math.log(packingFactor(effectiveFat(withoutLecithin, e), e.packingLimit));
  const below = Math.min(r.lecithin, e.lecithinOptimum) / 0.001;
  const above = Math.max(0, r.lecithin - e.lecithinOptimum) / 0.001;
  const pgpr = Math.log(e.pgprFloor + (1 - e.pgprFloor) * Math.exp(-r.pgpr / e.pgprScale));
  const fine = Math.log(r.d90);
  return {
    plastic: packed + (r.pgpr / 0.001) * Math.log1p(e.pgprPlastic) - e.finenessPlastic * fine,
    yieldValue:
      e.yieldPower * packedForYield +
      below * Math.log1p(e.lecithinYieldBelow) +
      above * Math.log1p(e.lecithinYieldAbove) +
      pgpr -
      e.finenessYield * fine,
  };
}

export interface Factor {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/** Factors alone, with one set of effects and without their range. Errors as flowShift. */
export function flowRatio(from: FlowRecipe, to: FlowRecipe, e: FlowEffects): { plastic: number; yieldValue: number } {
  const a = logs(from, e);
  const b = logs(to, e);
  return { plastic: Math.exp(b.plastic - a.plastic), yieldValue: Math.exp(b.yieldValue - a.yieldValue) };
}

/** An end of a range at which the particles of a chocolate that exists would not fit is no possible end. */
function possibleRatio(from: FlowRecipe, to: FlowRecipe, e: FlowEffects): { plastic: number; yieldValue: number } | undefined {
  try {
    return flowRatio(from, to, e);
  } catch (error) {
    if (error instanceof OutOfRange) return undefined;
    throw error;
  }
}

/**
 * Factors on yield value and plastic viscosity when the recipe changes, with the range that the published trends leave open.
 * More fat or E476 never raises the yield value; more water or finer particles raise both; lecithin lowers the plastic viscosity up to
 * its optimum and raises the yield value beyond it.
 *
 * @param effects - a plant's own ladder in place of the usual values; then the range is left out for what it replaces
 * @throws OutOfRange for a recipe outside physics
 */
export function flowShift(
  from: FlowRecipe,
  to: FlowRecipe,
  effects: Partial<FlowEffects> = {},
): { readonly plastic: Factor; readonly yieldValue: Factor } {
  for (const r of [from, to]) {
    requireRange('fat', r.fat, [0.2, 0.6], 'krieger-dougherty-1959');
    requireRange('lecithin', r.lecithin, [0, 0.03], 'physics');
    requireRange('pgpr', r.pgpr, [0, 0.02], 'physics');
    requireRange('moisture', r.moisture, [0, 0.03], 'physics');
    requireRange('d90_um', r.d90, [5, 200], 'physics');
  }
  const base = { ...usualEffects, ...effects };
  const at = flowRatio(from, to, base);
  const plastic: [number, number] = [at.plastic, at.plastic];
  const yieldValue: [number, number] = [at.yieldValue, at.yieldValue];
  // One effect at a time to its ends; deviations of unlike effects add up as squares of logarithms.
  const spread = { plastic: [0, 0], yieldValue: [0, 0] } as Record<'plastic' | 'yieldValue', [number, number]>;
  for (const key of Object.keys(usualEffects) as (keyof FlowEffects)[]) {
    if (key in effects) continue;
    for (const end of [lowEffects, highEffects]) {
      const moved = possibleRatio(from, to, { ...base, [key]: end[key] });
      if (!moved) continue;
      for (const which of ['plastic', 'yieldValue'] as const) {
        const change = Math.log(moved[which] / at[which]);
        spread[which][change < 0 ? 0 : 1] += change * change;
      }
    }
  }
  plastic[0] *= Math.exp(-Math.sqrt(spread.plastic[0]));
  plastic[1] *= Math.exp(Math.sqrt(spread.plastic[1]));
  yieldValue[0] *= Math.exp(-Math.sqrt(spread.yieldValue[0]));
  yieldValue[1] *= Math.exp(Math.sqrt(spread.yieldValue[1]));
  return {
    plastic: { value: at.plastic, low: plastic[0], high: plastic[1] },
    yieldValue: { value: at.yieldValue, low: yieldValue[0], high: yieldValue[1] },
  };
}
