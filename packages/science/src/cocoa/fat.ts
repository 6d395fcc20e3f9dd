import { OutOfRange, requireRange } from '../errors.js';
import {
  cocoaButterOrigins,
  cocoaButterSolids,
  conductivities,
  milkFatSolids,
  polymorphs,
  softening,
  sugarHeat,
  thermal,
} from './data/fat.js';
import { monotoneCurve } from './interpolate.js';
import { at, fats, share, type Composition } from '../composition.js';
import type {
  Celsius,
  JoulePerKilogram,
  JoulePerKilogramKelvin,
  KilogramPerCubicMetre,
  MassFraction,
  WattPerMetreKelvin,
} from '../units.js';

export const origins = ['west-africa', 'brazil', 'ivory-coast', 'ghana', 'malaysia'] as const;
export type ButterOrigin = (typeof origins)[number];

const base = monotoneCurve(cocoaButterSolids.values.temperature, cocoaButterSolids.values.solids);

const milk = monotoneCurve(milkFatSolids.values.temperature, milkFatSolids.values.solids);

/** An origin has four points: between them its ratio to the West African curve runs straight, beyond them it stays. */
function originCurve(solids: readonly number[]): (t: number) => number {
  const { temperature } = cocoaButterOrigins.values;
  const ratio = solids.map((value, i) => value / base(temperature[i]!));
  return (t) => {
    const place = Math.min(Math.max((t - temperature[0]) / 5, 0), 3);
    const i = Math.min(2, Math.floor(place));
    return Math.min(0.97, base(t) * (ratio[i]! + (place - i) * (ratio[i + 1]! - ratio[i]!)));
  };
}
const curves: Readonly<Record<ButterOrigin, (t: number) => number>> = {
  'west-africa': base,
  brazil: originCurve(cocoaButterOrigins.values.brazil),
  'ivory-coast': originCurve(cocoaButterOrigins.values['ivory-coast']),
  ghana: originCurve(cocoaButterOrigins.values.ghana),
  malaysia: originCurve(cocoaButterOrigins.values.malaysia),
};

/** What the fat of a chocolate is made of, as shares of its total fat; the rest is cocoa butter. */
export interface FatBlend {
  readonly milkFat: MassFraction;
  /** Nut oil or other oil that is liquid at room temperature. */
  readonly oil: MassFraction;
  readonly origin?: ButterOrigin;
}

/**
 * Solid fat of well-tempered fat in equilibrium (form V), share of the fat: cocoa butter and milk fat soften each other.
 * (1 - m - o) of cocoa butter read at T + 15 m + 20 o, and m of milk fat read at T + 15 (1 - m - o) + 20 o, with m milk fat and o
 * liquid oil as shares of the fat.
 *
 * @param t - °C, -20 to 80; data 5 to 36
 * @returns 0 to 1; falls with temperature, milk fat and oil
 * @throws OutOfRange
 * @example solidFat(20, { milkFat: 0, oil: 0 }) // 0.76
 */
export function solidFat(t: Celsius, blend: FatBlend): MassFraction {
  requireRange('temperature_c', t, [-40, 120], 'cocoa-butter-sfc');
  requireRange('milk_fat_share', blend.milkFat, [0, 1], 'physics');
  if (!(blend.oil <= 1 - blend.milkFat + 1e-9))
    throw new OutOfRange('oil_share', blend.oil, [0, +(1 - blend.milkFat).toFixed(9)], 'the rest of the fat');
  requireRange('oil_share', blend.oil, [0, 1], 'physics');
  return solidFatUnchecked(t, blend);
}

/**
 * Half-width of about 95 % of the solid fat of butters of one origin, over lots and ways of tempering and measuring: 9 points at
 * three quarters solid, 12 at a half, closing where the fat is all solid or all liquid. Between origins it is more: choose the origin.
 */
export function solidFatSpread(solids: MassFraction): MassFraction {
  return Math.min(0.12, 0.4 * solids * (1 - solids) + 0.02);
}

/** {@link solidFat} without checks, for inner loops. */
export function solidFatUnchecked(t: Celsius, blend: FatBlend): MassFraction {
  const { milkFat, oil } = softening.values;
  const butter = Math.max(0, 1 - blend.milkFat - blend.oil);
  const solid = butter * curves[blend.origin ?? 'west-africa'](t + milkFat * blend.milkFat + oil * blend.oil);
  return blend.milkFat > 0 ? solid + blend.milkFat * milk(t + milkFat * butter + oil * blend.oil) : solid;
}

/** Fat blend of a composition; emulsifier counts as oil, vegetable fat as cocoa butter (an equivalent fat). */
export function fatBlend(of: Composition, origin?: ButterOrigin): FatBlend {
  const total = share(of, fats);
  requireRange('fat', total, [Number.MIN_VALUE, 1], 'physics');
  const blend = { milkFat: of[at.milk_fat]! / total, oil: (of[at.nut_oil]! + of[at.emulsifier]!) / total };
  return origin ? { ...blend, origin } : blend;
}

/** Temperature at which the solid fat falls to a share, °C; the end of melting for 0.01. @throws OutOfRange for a share never reached */
export function temperatureOfSolidFat(solids: MassFraction, blend: FatBlend): Celsius {
  requireRange('solid_fat', solids, [1e-4, solidFat(-20, blend)], 'cocoa-butter-sfc');
  let low = -20;
  let high = 45;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (solidFatUnchecked(middle, blend) > solids) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

export const forms = ['I', 'II', 'III', 'IV', 'V', 'VI'] as const;
export type Form = (typeof forms)[number];

/** Melting point of a crystal form of cocoa butter with the range over laboratories, and heat of melting with its relative spread. */
export interface PolymorphProperties {
  readonly meltingPoint: Celsius;
  readonly lowest: Celsius;
  readonly highest: Celsius;
  readonly heat: JoulePerKilogram;
  readonly heatSpread: number;
}

/** Melting point and heat of melting of a crystal form of cocoa butter. Heats from memory, ±10 %, form I ±20 %. */
export function polymorph(form: Form): PolymorphProperties {
  const i = forms.indexOf(form);
  requireRange('form', i, [0, 5], 'wille-lutton-1966');
  const { melting, lowest, highest, heat, heatSpread } = polymorphs.values;
  return { meltingPoint: melting[i]!, lowest: lowest[i]!, highest: highest[i]!, heat: heat[i]!, heatSpread: heatSpread[i]! };
}

/** Heat of melting of solid cocoa butter as chocolate makers count it, J per kg of solid fat. */
export const butterLatentHeat: JoulePerKilogram = thermal.values.butterLatent;

/**
 * Specific heat of chocolate without heat of melting, J/(kg K): mass mean of fat (by its solid share), crystalline sugar and the rest.
 * @param fat - total fat; @param sugar - crystalline sugar; the rest are cocoa and milk solids
 * @example chocolateSpecificHeat(0.31, 0.46, 40, 0) // 1620
 */
export function chocolateSpecificHeat(fat: MassFraction, sugar: MassFraction, t: Celsius, solids: MassFraction): JoulePerKilogramKelvin {
  requireRange('fat', fat, [0, 1], 'physics');
  requireRange('sugar', sugar, [0, 1 - fat + 1e-9], 'physics');
  requireRange('temperature_c', t, [-40, 120], 'beckett-constants-2009');
  const { butterSolidHeat, butterLiquidHeat } = thermal.values;
  const fatHeat = solids * butterSolidHeat + (1 - solids) * butterLiquidHeat;
  return fat * fatHeat + sugar * (sugarHeat.values.a + sugarHeat.values.b * t) + Math.max(0, 1 - fat - sugar) * sugarHeat.values.rest;
}

/** Volumes of a kg of chocolate, m³: fat by its solid share, crystalline sugar, the rest. Butter 890 kg/m³ at 40 °C, 980 as crystal (memory). */
function volumes(fat: MassFraction, sugar: MassFraction, t: Celsius, solids: MassFraction) {
  const liquid = 890 - 0.75 * (t - 40);
  return { fat: fat * (solids / 980 + (1 - solids) / liquid), sugar: sugar / 1587, rest: Math.max(0, 1 - fat - sugar) / 1450 };
}

/** Density of chocolate, kg/m³: volumes of fat, crystalline sugar and the rest add. @param solids - solid share of the fat */
export function chocolateDensity(fat: MassFraction, sugar: MassFraction, t: Celsius, solids: MassFraction): KilogramPerCubicMetre {
  requireRange('fat', fat, [0, 1], 'physics');
  requireRange('sugar', sugar, [0, 1 - fat + 1e-9], 'physics');
  requireRange('temperature_c', t, [-40, 120], 'beckett-constants-2009');
  const v = volumes(fat, sugar, t, solids);
  return 1 / (v.fat + v.sugar + v.rest);
}

/**
 * Thermal conductivity of chocolate, W/(m K): particles of sugar and of the rest as spheres in the fat around them (Maxwell-Eucken for
 * several phases). It rises as the fat crystallises, as that of any fat does.
 *
 * @param fat - total fat, above 0; @param sugar - crystalline sugar; @param solids - solid share of the fat
 * @returns lowest for pure liquid fat (about 0.17), more with sugar
 * @throws OutOfRange
 * @see maxwell-eucken, choi-okos-1986
 */
export function chocolateConductivity(fat: MassFraction, sugar: MassFraction, t: Celsius, solids: MassFraction): WattPerMetreKelvin {
  requireRange('fat', fat, [0, 1], 'physics');
  requireRange('sugar', sugar, [0, 1 - fat + 1e-9], 'physics');
  requireRange('temperature_c', t, [-40, 120], 'choi-okos-1986');
  const k = conductivities.values;
  const around = solids * k.solidFat + (1 - solids) * (k.liquidFat[0] + k.liquidFat[1] * t);
  const v = volumes(fat, sugar, t, solids);
  // k = Σ kᵢ wᵢ / Σ wᵢ, wᵢ = volume × 3 kc / (2 kc + kᵢ); the fat itself has w = volume.
  const sugarWeight = (v.sugar * 3 * around) / (2 * around + k.sugar);
  const restWeight = (v.rest * 3 * around) / (2 * around + k.rest);
  return (v.fat * around + sugarWeight * k.sugar + restWeight * k.rest) / (v.fat + sugarWeight + restWeight);
}

/** Heat that melts the solid fat of a chocolate at a temperature, J per kg chocolate. */
export function latentHeatAt(fat: MassFraction, t: Celsius, blend: FatBlend): JoulePerKilogram {
  requireRange('fat', fat, [0, 1], 'physics');
  return fat * solidFat(t, blend) * butterLatentHeat;
}
