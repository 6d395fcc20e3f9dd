import { NoSolution, requireRange } from '../errors.js';
import type { Celsius, WaterActivity } from '../units.js';
import {
  amorphousLactose,
  biopolymerIsotherms,
  biscuitIsotherm,
  cocoaIsotherms,
  flourIsotherms,
  oilySeedIsotherm,
  peanutIsotherm,
  wheatIsotherm,
} from './data/sorption.js';
import { rootOfIncreasing } from './interpolate.js';
import { chungPfostMoisture, gabMoisture, hendersonMoisture, oswinMoisture, type Gab } from './isotherm.js';

const polymers = biopolymerIsotherms.values;
export type Biopolymer = Exclude<keyof typeof polymers, 'perKelvin'>;
export const biopolymers = Object.keys(polymers).filter((key) => key !== 'perKelvin') as Biopolymer[];

/** Share of the water held at 25 °C that a biopolymer holds at t. */
export function heldAt(t: Celsius): number {
  return Math.exp(-polymers.perKelvin * (t - 25));
}

/** GAB constants of a biopolymer at t. */
export function biopolymerGab(of: Biopolymer, t: Celsius): Gab {
  const [m0, C, K] = polymers[of];
  return [m0 * heldAt(t), C, K];
}

function withTemperature([m0, dm, C0, dC, K0, dK]: readonly [number, number, number, number, number, number], t: Celsius): Gab {
  const T = t + 273.15;
  return [m0 * Math.exp(dm / T), C0 * Math.exp(dC / T), K0 * Math.exp(dK / T)];
}

/** Isotherms by material: kg of water per kg dry at a water activity and temperature; oil of the dry matter for seeds. */
type Isotherm = (aw: WaterActivity, t: Celsius, oil: number) => number;
const gab =
  (constants: Gab): Isotherm =>
  (aw) =>
    gabMoisture(constants, aw);
const polymer =
  (of: Biopolymer): Isotherm =>
  (aw, t) =>
    gabMoisture(biopolymerGab(of, t), aw);

const isotherms = {
  cocoa_bean: gab(cocoaIsotherms.values.cocoa_bean),
  cocoa_shell: gab(cocoaIsotherms.values.cocoa_shell),
  egg_white_powder: polymer('egg_protein'),
  milk_protein: polymer('milk_protein'),
  cereal_protein: polymer('cereal_protein'),
  starch: polymer('starch'),
  fibre: polymer('fibre'),
  amorphous_lactose: gab(amorphousLactose.values.amorphous_lactose),
  // Dry matter of the powders: protein, lactose, the rest holds none.
  whole_milk_powder: (aw, t) =>
    0.27 * gabMoisture(biopolymerGab('milk_protein', t), aw) + 0.39 * gabMoisture(amorphousLactose.values.amorphous_lactose, aw),
  skim_milk_powder: (aw, t) =>
    0.37 * gabMoisture(biopolymerGab('milk_protein', t), aw) + 0.53 * gabMoisture(amorphousLactose.values.amorphous_lactose, aw),
  wafer: (aw, t) => 0.82 * gabMoisture(biopolymerGab('starch', t), aw) + 0.12 * gabMoisture(biopolymerGab('cereal_protein', t), aw),
  biscuit: gab([...biscuitIsotherm.values.biscuit, 1]),
  pasta: (aw, t) => gabMoisture(withTemperature(flourIsotherms.values.pasta, t), aw),
  semolina: (aw, t) => gabMoisture(withTemperature(flourIsotherms.values.semolina, t), aw),
  pasta_oswin: (aw, t) => {
    const [k0, k1, n0, n1] = flourIsotherms.values.pastaOswin;
    return oswinMoisture(k0 + k1 * t, n0 + n1 * t, aw);
  },
  wheat_flour: (aw, t) => chungPfostMoisture(wheatIsotherm.values.A, wheatIsotherm.values.B, wheatIsotherm.values.C, aw, t),
  peanut_kernel: (aw, t) => hendersonMoisture(peanutIsotherm.values.A, peanutIsotherm.values.B, peanutIsotherm.values.C, aw, t),
  oily_seed: oilySeedMoisture,
} as const satisfies Record<string, Isotherm>;
export type SorptionMaterial = keyof typeof isotherms;
export const sorptionMaterials = Object.keys(isotherms) as SorptionMaterial[];

/** Activities over which an isotherm was fitted. */
export const sorptionRange: Readonly<Partial<Record<SorptionMaterial, readonly [number, number]>>> = {
  amorphous_lactose: amorphousLactose.valid.water_activity,
  whole_milk_powder: amorphousLactose.valid.water_activity,
  skim_milk_powder: amorphousLactose.valid.water_activity,
  biscuit: biscuitIsotherm.valid.water_activity,
};

/**
 * Equilibrium moisture of an oily seed such as peanut, almond or hazelnut, kg/kg dry (Cromarty, Ellis and Roberts).
 *
 * @param oil - mass fraction of the dry matter, 0 to 0.8 (peanut 0.48, almond 0.52, hazelnut 0.62)
 * @throws OutOfRange
 */
export function oilySeedMoisture(aw: WaterActivity, t: Celsius, oil: number): number {
  requireRange('water_activity', aw, [0, 0.9999], 'cromarty-1982');
  requireRange('temperature_c', t, [-50, 100], 'cromarty-1982');
  requireRange('oil', oil, [0, 0.8], 'cromarty-1982');
  const { offset, scale, denominator } = oilySeedIsotherm.values;
  return (Math.sqrt(-denominator * Math.log1p(-aw)) * (1 - oil)) / (offset + t / scale) / 100;
}

/** Equilibrium moisture of a material, kg per kg dry. @throws OutOfRange where its isotherm has no value */
export function sorbedMoisture(material: SorptionMaterial, aw: WaterActivity, t: Celsius, oil = 0.48): number {
  return (isotherms[material] as Isotherm)(aw, t, oil);
}

/** Water activity of a material at a moisture, kg per kg dry. @throws NoSolution beyond the isotherm */
export function sorptionActivity(material: SorptionMaterial, moisture: number, t: Celsius, oil = 0.48): WaterActivity {
  requireRange('moisture_dry_basis', moisture, [0, 5], 'gab');
  const excess = (aw: number): number => {
    try {
      return sorbedMoisture(material, aw, t, oil) - moisture;
    } catch {
      // Below the first or above the last activity that the isotherm knows.
      return aw < 0.5 ? -1 : 1;
    }
  };
  if (moisture === 0) return 0;
  const aw = rootOfIncreasing(excess, 0, 0.9999);
  if (Math.abs(excess(aw)) > 1e-6 * (1 + moisture))
    throw new NoSolution(`${material} holds no ${moisture} kg/kg dry at any water activity`);
  return aw;
}
