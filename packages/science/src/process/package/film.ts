import { saturationPressure } from '../../core/saturation.js';
import { OutOfRange, requireRange } from '../../errors.js';
import { arrheniusFactor } from '../flow/temperature.js';
import type { Celsius, Kilogram, Second, WaterActivity } from '../../units.js';

export const secondsPerDay = 86_400;

/** Climate of a transmission test: as a rule 38 °C and 90 % relative humidity on one side, dry on the other. */
export interface TestClimate {
  readonly temperature: Celsius;
  readonly humidityDifference: number;
}

/**
 * Permeance of a film from its water vapour transmission rate, kg/(m² s Pa).
 *
 * @param transmission - g/(m² d) in the test climate
 * @example permeance(0.5, { temperature: 38, humidityDifference: 0.9 }) // 9.69e-13
 */
export function permeance(transmission: number, test: TestClimate): number {
  requireRange('transmission rate', transmission, [0, Infinity], 'iso-15106');
  requireRange('humidity difference of the test', test.humidityDifference, [1e-300, 1], 'iso-15106');
  return transmission / 1000 / secondsPerDay / (saturationPressure(test.temperature) * test.humidityDifference);
}

/** Permeance at another temperature (Arrhenius); energy in J/mol. */
export function permeanceAt(value: number, from: Celsius, to: Celsius, energy: number): number {
  return value * arrheniusFactor(energy, from, to);
}

/** Water that passes a film, g/(m² d), from one humidity or activity to another at one temperature; negative outwards. */
export function transmission(value: number, t: Celsius, outside: WaterActivity, inside: WaterActivity): number {
  return value * saturationPressure(t) * (outside - inside) * 1000 * secondsPerDay;
}

/** What a pack is: barrier, food, climate. */
export interface Pack {
  /** Permeance times area of the film, kg/(s Pa). */
  readonly film: number;
  /** Conductance of leaks beside it (cold-seal channels), kg/(s Pa). */
  readonly leak: number;
  /** Dry mass times the slope of its isotherm, kg of water per unit of activity. */
  readonly capacity: number;
  readonly temperature: Celsius;
  readonly start: WaterActivity;
  readonly outside: WaterActivity;
}

/** Time constant of a pack, s: capacity by (film + leak) times saturation pressure. Good while the food is even in itself. */
export function packTimeConstant(pack: Pack): Second {
  const total = (pack.film + pack.leak) * saturationPressure(pack.temperature);
  requireRange('capacity of the food', pack.capacity, [1e-300, Infinity], 'labuza-packaging');
  requireRange('permeance of the pack', total, [0, Infinity], 'labuza-packaging');
  return total > 0 ? pack.capacity / total : Infinity;
}

/** Water activity of the food in a pack after a time: exponential towards the outside. */
export function packActivity(pack: Pack, time: Second): WaterActivity {
  return pack.outside + (pack.start - pack.outside) * Math.exp(-time / packTimeConstant(pack));
}

/** Water gained (kg, negative when lost) after a time. */
export function packGain(pack: Pack, time: Second): Kilogram {
  return pack.capacity * (packActivity(pack, time) - pack.start);
}

/**
 * Time until the food reaches a critical activity, s.
 *
 * @returns Infinity when the outside never takes it there
 * @throws OutOfRange when it starts beyond the critical activity
 */
export function packLife(pack: Pack, critical: WaterActivity): Second {
  const way = critical - pack.start;
  const pull = pack.outside - pack.start;
  if (way === 0) return 0;
  if (way * pull <= 0 || Math.abs(way) >= Math.abs(pull)) return Infinity;
  return -packTimeConstant(pack) * Math.log(1 - way / pull);
}

/** The same by the mean driving force: the usual short cut, a little short. */
export function packLifeSimple(pack: Pack, critical: WaterActivity): Second {
  const drive = pack.outside - (pack.start + critical) / 2;
  const way = critical - pack.start;
  if (way * drive <= 0) throw new OutOfRange('critical activity', critical, [pack.start, pack.outside], 'labuza-packaging');
  return (packTimeConstant(pack) * way) / drive;
}

/**
 * Conductance of a channel through a seal for water vapour, kg/(s Pa): diffusion in still air, D M/(R T) times section by length.
 *
 * @param section - m²
 * @param length - m
 */
export function channelConductance(section: number, length: number, t: Celsius): number {
  requireRange('length of the channel', length, [1e-300, Infinity], 'fick');
  requireRange('section of the channel', section, [0, Infinity], 'fick');
  const kelvin = t + 273.15;
  const diffusivity = 2.5e-5 * (kelvin / 298.15) ** 1.81; // of water vapour in air, memory
  return (diffusivity * 0.018015 * section) / (8.314462618 * kelvin * length);
}

/** Units in which permeability is printed, in kg m/(m² s Pa) each. */
export const permeabilityUnits = {
  'g mil/(m2 d mmHg)': (1e-3 * 25.4e-6) / (secondsPerDay * 133.322387415),
  'g mm/(m2 d kPa)': (1e-3 * 1e-3) / (secondsPerDay * 1000),
  'g cm/(cm2 s cmHg)': (1e-3 * 1e-2) / (1e-4 * 1333.22387415),
  'g/(m s Pa)': 1e-3,
  'kg m/(m2 s Pa)': 1,
} as const;
export type PermeabilityUnit = keyof typeof permeabilityUnits;
