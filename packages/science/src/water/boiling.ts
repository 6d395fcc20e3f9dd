import { saturationPressure, saturationTemperature } from '../core/saturation.js';
import { NoSolution, OutOfRange, requireRange } from '../errors.js';
import type { Celsius, Kelvin, Pascal } from '../units.js';
import { activityTemperatures, solidsAt, waterHeld, type Solids } from './activity.js';
import { molarMasses } from './data/binary.js';
import type { Solution } from './solution.js';

/** Pressures at which a syrup is boiled: from a deep vacuum to a pressure dissolver. */
export const boilingPressures = [700, 1_000_000] as const;
const hottest = activityTemperatures[1];

/**
 * Boiling point of a syrup: the temperature at which its water activity times the vapour pressure of pure water equals the pressure.
 *
 * @param solution - the dissolved phase, any common unit of mass
 * @param pressure - absolute pressure above it, Pa, 700 to 1 000 000
 * @returns °C; rises with solids and with pressure
 * @throws OutOfRange; NoSolution where it would boil above 200 °C (nearly dry)
 * @example boilingPoint({ water: 15, sucrose: 85 }, 101_325) // 114.0
 */
export function boilingPoint(solution: Solution, pressure: Pascal): Celsius {
  requireRange('pressure_pa', pressure, boilingPressures, 'iapws-if97');
  const { water } = solution;
  if (!(water >= 0 && water < Infinity)) throw new OutOfRange('water', water, [0, Infinity], 'a mass');
  const pure = saturationTemperature(pressure);
  const solids = solidsAt(solution, pure);
  if (solids.moles === 0) return pure;
  // Solids boiling at t hold waterHeld(P / psat(t)); 1/water is nearly straight against t, and 0 at the boiling point of water.
  const held = { water: 0, gain: 0 };
  let near = solids;
  const missing = (t: Celsius): number => {
    near = solidsAt(solution, t, near);
    waterHeld(near, pressure / saturationPressure(t), held);
    return 1 / held.water - 1 / water;
  };
  let low = pure;
  let high: number = hottest;
  let reached = false;
  const requireReach = (): void => {
    if (reached) return;
    reached = true;
    if (missing(hottest) >= 0) return;
    throw new NoSolution(`this syrup does not boil below ${hottest} °C at ${Math.round(pressure)} Pa: it holds too little water`);
  };
  // A first guess: -ln aw by the ideal law, bent as sugars bend it, and the rise at which water has that much more pressure.
  const ideal = (molarMasses.values.water * solids.moles) / water;
  const lowering = ideal * (1 + 0.6 * (1 - Math.exp(-6 * ideal)));
  let t = Math.min(pure + 27 * ((pure + 273.15) / 373.15) ** 2 * lowering * (1 + 0.11 * lowering), hottest - 5);
  if (!(t < 170)) requireReach();
  let before = pure;
  let atBefore = -1 / water;
  for (let step = 0; step < 100; step++) {
    const value = missing(t);
    if (value < 0) low = t;
    else high = t;
    const secant = t - (value * (t - before)) / (value - atBefore);
    before = t;
    atBefore = value;
    if (!(secant < high) && high === hottest) requireReach();
    t = secant > low && secant < high ? secant : (low + high) / 2;
    if (Math.abs(t - before) < 1e-5 || value === 0) return value === 0 ? before : t;
  }
  return t;
}

/** Boiling point less that of pure water at the same pressure, K. Errors as boilingPoint. */
export function boilingPointElevation(solution: Solution, pressure: Pascal): Kelvin {
  return boilingPoint(solution, pressure) - saturationTemperature(pressure);
}

/** How far the boiling point moves with the pressure, K per kPa: by the weather, a vacuum that drifts, a higher plant. */
export function boilingSensitivity(solution: Solution, pressure: Pascal): number {
  const step = Math.min(0.002 * pressure, 0.5 * (pressure - boilingPressures[0]), 0.5 * (boilingPressures[1] - pressure));
  if (!(step > 0)) throw new OutOfRange('pressure_pa', pressure, boilingPressures, 'iapws-if97');
  return ((boilingPoint(solution, pressure + step) - boilingPoint(solution, pressure - step)) / (2 * step)) * 1000;
}

/**
 * The same where the boiling point is known already: one look at the water held on either side in place of two solves.
 *
 * @param t - boiling point of the solution at that pressure, °C
 * @returns K per kPa
 */
export function boilingSensitivityAt(solution: Solution, t: Celsius, pressure: Pascal): number {
  requireRange('pressure_pa', pressure, boilingPressures, 'iapws-if97');
  const out = { water: 0, gain: 0 };
  let near: Solids | undefined;
  const heldAt = (temperature: Celsius): number => {
    near = solidsAt(solution, temperature, near);
    waterHeld(near, pressure / saturationPressure(temperature), out);
    return out.water;
  };
  const step = 0.003;
  const warmer = heldAt(t + step);
  const perKelvin = (warmer - heldAt(t)) / step;
  // Water held stays: gain · dp / psat + (dw/dT) · dT = 0.
  return (-out.gain / saturationPressure(t) / perKelvin) * 1000;
}

/**
 * Water left in the solids when they boil at a temperature: the cook by the thermometer. `solution.water` is not read.
 *
 * @param t - end temperature, °C; above the boiling point of pure water at that pressure
 * @returns mass of water, in the unit of the solids; falls with temperature
 * @throws OutOfRange; NoSolution where pure water boils hotter than t, so that no amount of water boils at t
 * @example waterForBoiling({ water: 0, sucrose: 85 }, 114, 101_325) // 15.0
 */
export function waterForBoiling(solution: Solution, t: Celsius, pressure: Pascal): number {
  requireRange('pressure_pa', pressure, boilingPressures, 'iapws-if97');
  requireRange('temperature_c', t, activityTemperatures, 'starzak-peacock-1997');
  const aw = pressure / saturationPressure(t);
  if (!(aw < 1)) {
    throw new NoSolution(
      `at ${Math.round(pressure)} Pa pure water boils at ${saturationTemperature(pressure).toFixed(2)} °C, hotter than ${t} °C`,
    );
  }
  const out = { water: 0, gain: 0 };
  waterHeld(solidsAt(solution, t), aw, out);
  return out.water;
}
