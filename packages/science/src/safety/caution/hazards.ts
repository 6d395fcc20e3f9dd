import { NoSolution, requireRange } from '../../errors.js';
import { burns, dustClasses, pushThrough, referenceDoses, surfaceThresholds, type Allergen } from '../data/hazards.js';
import { logLinearAt } from '../interpolate.js';

/** Kst in bar m/s from the steepest pressure rise in bar/s in a vessel of a volume in m³: the cubic law. */
export function kst(rise: number, volume: number): number {
  requireRange('volume_m3', volume, [1e-6, 1e6], 'the cubic law');
  return rise * Math.cbrt(volume);
}

/** Dust explosion class by Kst in bar m/s. */
export function dustClass(value: number): 'St 0' | 'St 1' | 'St 2' | 'St 3' {
  requireRange('kst_bar_m_s', value, [0, 5000], dustClasses.source);
  if (value === 0) return 'St 0';
  if (value <= dustClasses.values.st1) return 'St 1';
  return value <= dustClasses.values.st2 ? 'St 2' : 'St 3';
}

/** A screening guess of Kst from Pmax in bar: 2.13 P² - 5.96 P - 4.75. Never for design. */
export function kstGuess(pmax: number): number {
  requireRange('pmax_bar', pmax, [3.5, 12], 'kst-screening-page');
  return 2.13 * pmax * pmax - 5.96 * pmax - 4.75;
}

/** Height of a settled layer that fills a room with a cloud of a concentration: layer = C × room height / bulk density, m. */
export function layerOfCloud(concentration: number, roomHeight: number, bulkDensity: number): number {
  return (concentration * roomHeight) / bulkDensity;
}

/**
 * Seconds of contact to irreversible skin injury at a temperature of the skin's surface: log time straight between the points.
 *
 * @returns s; 0 from 70 °C on, where it is below about a second
 * @throws OutOfRange below 43 °C, where the table means nothing
 */
export function burnTime(temperature: number): number {
  requireRange('temperature_c', temperature, [43, 500], burns.source);
  const { temperature: ts, seconds, instant } = burns.values;
  return temperature >= instant ? 0 : logLinearAt(ts, seconds, temperature);
}

export const surfaceMaterials = ['bare metal', 'coated metal', 'ceramic, glass, stone', 'plastic', 'wood'] as const;
export type SurfaceMaterial = (typeof surfaceMaterials)[number];

/**
 * Burn threshold of a touchable surface: °C from which skin burns after a contact, straight over log time between the tabled times.
 *
 * @param contact - s, 0.5 to 28 800 (8 h); longer contacts keep the last value
 * @returns °C; falls with contact, lowest on metal
 */
export function surfaceThreshold(material: SurfaceMaterial, contact: number): number {
  requireRange('contact_s', contact, [0.5, 1e6], surfaceThresholds.source);
  const { contact: times } = surfaceThresholds.values;
  const limits = surfaceThresholds.values[material];
  const last = times.length - 1;
  if (contact >= times[last]!) return limits[last]!;
  const i = Math.max(
    0,
    times.findLastIndex((t) => t <= contact),
  );
  const part = Math.log(contact / times[i]!) / Math.log(times[i + 1]! / times[i]!);
  return limits[i]! + part * (limits[i + 1]! - limits[i]!);
}

/** Action level of an allergen's protein in a portion, mg/kg: reference dose over portion. */
export function actionLevel(dose: number, portion: number): number {
  requireRange('portion_g', portion, [0.1, 5000], 'a portion');
  return (dose / portion) * 1000;
}

/** Reference dose of an allergen, mg protein. */
export function referenceDose(allergen: Allergen): number {
  return referenceDoses.values[allergen];
}

export interface Flush {
  /** Concentration after the mass, same unit as the start. */ readonly after: number;
  /** kg until the target. */ readonly massToTarget: number;
  /** kg per e-fold. */ readonly efold: number;
}

/**
 * Allergen pushed out by clean mass: C = C0 exp(-m / mr). The e-fold mass is several times the hold-up of the pipe, because
 * what clings to the wall does not mix; the one published measurement gives at least 5.6 times.
 *
 * @param start - in the first mass
 * @param target - wanted
 * @param mass - kg pushed through
 * @param holdup - kg in the section
 */
export function flush(start: number, target: number, mass: number, holdup: number, ratio: number = pushThrough.values.ratio): Flush {
  requireRange('holdup_kg', holdup, [1e-9, 1e9], 'a flush');
  if (!(target > 0))
    throw new NoSolution('A flush never reaches 0; give a target above 0, such as the least that the laboratory quantifies');
  const efold = ratio * holdup;
  return { after: start * Math.exp(-mass / efold), massToTarget: start <= target ? 0 : efold * Math.log(start / target), efold };
}

/** Mass in a full pipe, kg. */
export function pipeHoldup(length: number, bore: number, density: number): number {
  return (Math.PI / 4) * bore * bore * length * density;
}

/** e-fold mass from concentrations before and after a mass. */
export function efoldMass(start: number, after: number, mass: number): number {
  if (!(start > after && after > 0)) throw new NoSolution(`A concentration that goes from ${start} to ${after} shows no wash-out`);
  return mass / Math.log(start / after);
}
