import { at, constituents, type Composition, type Constituent } from '../composition.js';
import { requireRange } from '../errors.js';
import { choiOkosConductivity, choiOkosDensity, choiOkosSpecificHeat } from './data/choi-okos.js';
import { crystallineSucrose, liquorConductivity, liquorSpecificHeat, partialVolumeRatio } from './data/sugar-solution.js';
import { polynomial } from './polynomial.js';
import { sucroseApparentVolume, waterDensity } from './sugar-solution.js';
import type { Celsius, JoulePerKilogramKelvin, KilogramPerCubicMetre, SquareMetrePerSecond, WattPerMetreKelvin } from '../units.js';

/** What the composition alone does not tell. */
export interface PhaseState {
  /** Share of the sucrose that is crystal, 0 to 1 (default 0: all dissolved or glassy). Chocolate, fondant: near 1. */
  readonly crystallineSucrose?: number;
  /** Fat is the phase that everything else lies in, as in chocolate and fat fillings (default false: syrup is). */
  readonly fatContinuous?: boolean;
}

/** Range in which the equations mean something, °C. */
export const thermalRange = [-40, 200] as const;

/** Lines of the tables, each the sum of constituents that behave alike. */
interface Lines {
  water: number;
  sugar: number;
  crystal: number;
  fat: number;
  protein: number;
  carbohydrate: number;
  fibre: number;
  ash: number;
}
const dryLines = ['fat', 'protein', 'carbohydrate', 'fibre', 'ash'] as const;

const lineOf: Readonly<Record<Constituent, keyof Lines>> = {
  water: 'water',
  sucrose: 'sugar',
  glucose: 'sugar',
  fructose: 'sugar',
  maltose: 'sugar',
  higher_saccharides: 'sugar',
  lactose: 'sugar',
  polyols: 'sugar',
  starch: 'carbohydrate',
  fibre: 'fibre',
  milk_fat: 'fat',
  cocoa_butter: 'fat',
  vegetable_fat: 'fat',
  nut_oil: 'fat',
  emulsifier: 'fat',
  milk_protein: 'protein',
  egg_protein: 'protein',
  nut_protein: 'protein',
  cocoa_protein: 'protein',
  cereal_protein: 'protein',
  organic_acids: 'carbohydrate',
  salt: 'ash',
  ash: 'ash',
  other: 'carbohydrate',
};
const lines = constituents.map((key) => lineOf[key]);
const dissolved = Object.entries(partialVolumeRatio.values).map(([key, ratio]) => [at[key as Constituent], ratio] as const);

function massesOf(of: Composition, t: Celsius, state: PhaseState | undefined): Lines {
  requireRange('temperature', t, thermalRange, 'choi-okos-1986');
  const mass: Lines = { water: 0, sugar: 0, crystal: 0, fat: 0, protein: 0, carbohydrate: 0, fibre: 0, ash: 0 };
  for (let i = 0; i < lines.length; i++) mass[lines[i]!] += of[i]!;
  mass.crystal = of[at.sucrose]! * (state?.crystallineSucrose ?? 0);
  mass.sugar -= mass.crystal;
  return mass;
}

function volumesOf(of: Composition, mass: Lines, t: Celsius): Lines {
  let sucroseEquivalent = -mass.crystal;
  for (const [place, ratio] of dissolved) sucroseEquivalent += of[place]! * ratio;
  const solution = mass.water + mass.sugar;
  const volume: Lines = {
    water: mass.water / waterDensity(t),
    sugar: solution > 0 ? sucroseEquivalent * sucroseApparentVolume(mass.sugar / solution, t) : 0,
    crystal: mass.crystal / crystallineSucrose.values.density,
    fat: 0,
    protein: 0,
    carbohydrate: 0,
    fibre: 0,
    ash: 0,
  };
  for (const line of dryLines) volume[line] = mass[line] / polynomial(choiOkosDensity.values[line], t);
  return volume;
}

function sum(of: Lines): number {
  return of.water + of.sugar + of.crystal + of.fat + of.protein + of.carbohydrate + of.fibre + of.ash;
}

/**
 * Density without gas, kg/m³: volumes add. Water after Kell, dissolved sugars at their apparent volume in a solution of the same
 * concentration (ICUMSA sucrose polynomial times a ratio per sugar), the rest on the Choi-Okos lines.
 *
 * @param of - composition, sums to 1
 * @param t - °C, -40 to 200; fitted 0 to 100
 * @throws OutOfRange for a temperature outside -40 to 200 °C or NaN
 * @see icumsa-sucrose-density, crc-102-solutions, choi-okos-1986
 */
export function density(of: Composition, t: Celsius, state?: PhaseState): KilogramPerCubicMetre {
  const mass = massesOf(of, t, state);
  return sum(mass) / sum(volumesOf(of, mass, t));
}

/**
 * Specific heat, J/(kg K): mass-weighted. Dissolved sugars after the sugar-liquor correlation (1673 + 7.5 T), which is 10 to 50 %
 * above the Choi-Okos carbohydrate line, as a liquid is above a glass; crystal on its own line; no heat of melting.
 *
 * @throws OutOfRange for a temperature outside -40 to 200 °C or NaN
 * @see sugar-liquor-thermal, choi-okos-1986, mohos-2010-app
 */
export function specificHeat(of: Composition, t: Celsius, state?: PhaseState): JoulePerKilogramKelvin {
  const mass = massesOf(of, t, state);
  let cp =
    mass.water * polynomial(choiOkosSpecificHeat.values.water, t) +
    mass.sugar * polynomial(liquorSpecificHeat.values.sugar, t) +
    mass.crystal * polynomial(crystallineSucrose.values.specific_heat, t);
  for (const line of dryLines) cp += mass[line] * polynomial(choiOkosSpecificHeat.values[line], t);
  return cp / sum(mass);
}

/**
 * Thermal conductivity without gas, W/(m K): syrup (or fat, where that is continuous) with everything else dispersed in it as spheres
 * (Maxwell-Eucken for several phases). Syrup after the sugar-liquor correlation, the rest on the Choi-Okos lines. Air goes on top
 * with `foamConductivity`.
 *
 * @throws OutOfRange for a temperature outside -40 to 200 °C or NaN
 * @see sugar-liquor-thermal, choi-okos-1986, maxwell-eucken
 */
export function thermalConductivity(of: Composition, t: Celsius, state?: PhaseState): WattPerMetreKelvin {
  const mass = massesOf(of, t, state);
  const volume = volumesOf(of, mass, t);
  const solution = mass.water + mass.sugar;
  const sugarShare = solution > 0 ? mass.sugar / solution : 0;
  const syrup = polynomial(liquorConductivity.values.water, t) + sugarShare * polynomial(liquorConductivity.values.sugar, t);
  const continuous = state?.fatContinuous ? polynomial(choiOkosConductivity.values.fat, t) : syrup;
  // k = sum(k_i w_i) / sum(w_i), w_i = phi_i 3 kc / (2 kc + k_i); the continuous phase itself has w = phi.
  let weights = 0;
  let sum = 0;
  const add = (k: number, v: number) => {
    const weight = (3 * continuous * v) / (2 * continuous + k);
    weights += weight;
    sum += weight * k;
  };
  add(syrup, volume.water + volume.sugar);
  add(crystallineSucrose.values.conductivity, volume.crystal);
  for (const line of dryLines) add(polynomial(choiOkosConductivity.values[line], t), volume[line]);
  return sum / weights;
}

/** Thermal diffusivity k / (rho cp), m²/s, without gas. Errors as above. */
export function thermalDiffusivity(of: Composition, t: Celsius, state?: PhaseState): SquareMetrePerSecond {
  return thermalConductivity(of, t, state) / (density(of, t, state) * specificHeat(of, t, state));
}
