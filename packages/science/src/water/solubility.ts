import { requireRange } from '../errors.js';
import { polynomial } from '../process/polynomial.js';
import type { Celsius, MassFraction, Metre } from '../units.js';
import {
  lactoseAnomers,
  lactoseSolubility,
  maltoseSolubility,
  otherSolubilities,
  polyolSolubilities,
  sucroseCrystal,
  sucroseSolubilityPolynomial,
  sucroseSolubilityTable,
} from './data/solubility.js';
import { interpolate } from './interpolate.js';

const perWater = (percent: number): number => percent / (100 - percent);
const join = 80;
const hot = sucroseSolubilityTable.values;
const hotTemperatures = [join, ...hot.temperature_c];
const hotLogs = [
  Math.log(perWater(polynomial(sucroseSolubilityPolynomial.values.percent, join))),
  ...hot.kilogramPerKilogram.map(Math.log),
];

/**
 * Solubility of sucrose in water.
 *
 * @param t - °C, 0 to 140 (above 102 °C under pressure, or as a limit for a boiling syrup)
 * @returns kg per kg of water; rises with temperature
 * @throws OutOfRange
 * @see vavrinecz-1962 to 80 °C, sucrose-properties-page above
 * @example sucroseSolubility(20) // 2.005
 */
export function sucroseSolubility(t: Celsius): number {
  requireRange('temperature_c', t, [0, 140], 'vavrinecz-1962');
  if (t <= join) return perWater(polynomial(sucroseSolubilityPolynomial.values.percent, t));
  return Math.exp(interpolate(t, hotTemperatures, hotLogs));
}

/** Final solubility of lactose (both anomers), kg per kg of water; 0 to 100 °C, measured to 89 °C. */
export function lactoseFinalSolubility(t: Celsius): number {
  requireRange('temperature_c', t, [0, 100], 'hudson-1908');
  const { temperature_c, grams } = lactoseSolubility.values;
  return Math.exp(interpolate(t, temperature_c, grams.map(Math.log))) / 100;
}

/** Beta by alpha lactose at equilibrium in solution. */
export function lactoseAnomerRatio(t: Celsius): number {
  requireRange('temperature_c', t, [0, 100], 'walstra-2006');
  return lactoseAnomers.values.atZero + lactoseAnomers.values.perKelvin * t;
}

/** Alpha lactose that dissolves at once, before it turns to beta: final/(1 + beta/alpha), kg per kg of water. */
export function lactoseInitialSolubility(t: Celsius): number {
  return lactoseFinalSolubility(t) / (1 + lactoseAnomerRatio(t));
}

const polyol = polyolSolubilities.values;
export type SolubleSugar =
  | 'sucrose'
  | 'glucose'
  | 'fructose'
  | 'maltose'
  | 'lactose'
  | 'sorbitol'
  | 'xylitol'
  | 'erythritol'
  | 'mannitol'
  | 'maltitol'
  | 'isomalt'
  | 'lactitol'
  | 'trehalose';
const other = otherSolubilities.values;
const tables = {
  glucose: [other.glucose_t, other.glucose],
  fructose: [other.fructose_t, other.fructose],
  sorbitol: [other.sorbitol_t, other.sorbitol],
  maltose: [maltoseSolubility.values.temperature_c, maltoseSolubility.values.percent],
  xylitol: [polyol.xylitol_t, polyol.xylitol],
  erythritol: [polyol.erythritol_t, polyol.erythritol],
  mannitol: [polyol.mannitol_t, polyol.mannitol],
  maltitol: [polyol.maltitol_t, polyol.maltitol],
  isomalt: [polyol.isomalt_t, polyol.isomalt],
  lactitol: [polyol.lactitol_t, polyol.lactitol],
  trehalose: [polyol.trehalose_t, polyol.trehalose],
} as const;

/** Temperatures over which the table of a sugar runs, °C. */
export const solubilityRanges: Readonly<Record<SolubleSugar, readonly [number, number]>> = {
  sucrose: [0, 140],
  lactose: [0, 100],
  glucose: [0, 90],
  fructose: [20, 55],
  maltose: [0.6, 96.5],
  sorbitol: [20, 50],
  xylitol: [10, 60],
  erythritol: [20, 80],
  mannitol: [0, 80],
  maltitol: [20, 80],
  isomalt: [10, 80],
  lactitol: [20, 60],
  trehalose: [10, 90],
};

/** Solubility of one sugar in water as mass fraction of the solution; beyond its table by 20 K the last slope of ln(kg/kg) runs on. */
export function solubility(sugar: SolubleSugar, t: Celsius): MassFraction {
  if (sugar === 'sucrose') return sucroseSolubility(t) / (1 + sucroseSolubility(t));
  if (sugar === 'lactose') return lactoseFinalSolubility(t) / (1 + lactoseFinalSolubility(t));
  const [low, high] = solubilityRanges[sugar];
  requireRange('temperature_c', t, [Math.max(0, low - 20), high + 20], `the table of ${sugar}`);
  const [temperatures, percents] = tables[sugar];
  const ratio = Math.exp(
    interpolate(
      t,
      temperatures,
      percents.map((p) => Math.log(perWater(p))),
    ),
  );
  return ratio / (1 + ratio);
}

/**
 * Kelvin effect: how much more soluble a small sucrose crystal is, S = exp(4 σ M/(ρ R T d)).
 *
 * @param diameter - m
 * @returns solubility over that of a large crystal
 */
export function kelvinSolubilityRatio(diameter: Metre, t: Celsius): number {
  requireRange('diameter_m', diameter, [1e-9, 1], 'coulson-richardson-2');
  requireRange('temperature_c', t, [0, 140], 'coulson-richardson-2');
  const { surfaceTension, density, molarMass } = sucroseCrystal.values;
  return Math.exp((4 * surfaceTension * molarMass) / (density * 8.314462618 * (t + 273.15) * diameter));
}
