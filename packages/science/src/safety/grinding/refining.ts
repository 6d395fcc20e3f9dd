import { NoSolution, requireRange } from '../../errors.js';
import { normalCdf, normalQuantile } from '../../statistics/normal.js';
import { ballMill, fatFilm, grit } from '../data/grinding.js';

export interface BallMillRun {
  readonly energy: number;
  /** µm */ readonly d90: number;
  /** Pa·s, Casson */ readonly viscosity: number;
  /** Pa, Casson */ readonly yieldValue: number;
}

/** Outcome of a ball-mill refiner after some minutes at an agitator speed, by quadratic regression. */
export function ballMillRun(minutes: number, speed: number): BallMillRun {
  requireRange('time_min', minutes, [0, 1e4], ballMill.source);
  requireRange('agitator_rpm', speed, [0, 1e4], ballMill.source);
  const at = (b: readonly number[]): number =>
    b[0]! + b[1]! * minutes + b[2]! * speed + b[3]! * minutes ** 2 + b[4]! * speed ** 2 + b[5]! * minutes * speed;
  const v = ballMill.values;
  return { energy: at(v.energy), d90: at(v.d90), viscosity: at(v.viscosity), yieldValue: at(v.yieldValue) };
}

/** Throughput of a batch refiner, kg/h: inverse to the time, from a known rate. */
export function millRate(
  minutes: number,
  knownMinutes: number = ballMill.values.rateTime,
  knownRate: number = ballMill.values.rate,
): number {
  requireRange('time_min', minutes, [0.01, 1e6], ballMill.source);
  return (knownRate * knownMinutes) / minutes;
}

/**
 * Probability that a taster tells two sizes apart in a choice of two, by a normal psychometric curve: at the just noticeable
 * difference 75 % answer rightly.
 *
 * @param a - size, µm
 * @param b - size, µm
 * @param difference - just noticeable, µm; above 0
 */
export function tellsApart(a: number, b: number, difference: number = grit.values.difference): number {
  requireRange('just_noticeable_um', difference, [1e-6, 1e6], grit.source);
  return normalCdf((normalQuantile(0.75) * Math.abs(a - b)) / difference);
}

/**
 * Fat that a suspension needs so that its particles, each clothed in a film of bound fat, stay at a given share of the packing
 * limit: φ (1 + h S) = load × packing.
 *
 * @param surface - of the particles, m² per m³ of particles (specific surface × density)
 * @param load - 0 to 1: 0 all fat, 1 jammed; a flowing mass lies near 0.8 to 0.95
 * @param film - thickness of bound fat, m
 * @returns mass fraction of fat; rises with surface
 */
export function fatDemand(
  surface: number,
  load: number,
  film: number = fatFilm.values.film,
  particleDensity: number = fatFilm.values.particleDensity,
): number {
  requireRange('packing_load', load, [0.01, 1], 'a suspension');
  requireRange('surface', surface, [0, 1e9], 'a suspension');
  const volume = (load * fatFilm.values.packing) / (1 + film * surface);
  if (!(volume > 0)) throw new NoSolution('No particles fit');
  const fat = (1 - volume) * fatFilm.values.fatDensity;
  return fat / (fat + volume * particleDensity);
}

/** Mass flow of a refiner roll, kg/h: film thickness × width × surface speed × density × share of the width covered. */
export function rollThroughput(film: number, width: number, speed: number, density: number, covered: number): number {
  requireRange('covered', covered, [0, 1], 'a roll');
  return film * width * speed * density * covered * 3600;
}
