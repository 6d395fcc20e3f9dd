import { NoSolution, requireRange } from '../errors.js';
import { saturationPressure } from '../core/index.js';
import { humidityRatio } from './air.js';
import type { Table } from '../sources.js';
import type { Celsius, JoulePerKilogramKelvin, Kilogram, MassFraction, Second, Watt } from '../units.js';

/** First-order drying and loss of acid in a conche. */
export const conching = {
  source: 'conche-practice',
  standing: 'memory',
  note: 'Per hour in the dry phase at 60 °C; water doubles per 11 K; acid at 0.3 to 0.6 of the rate of water; five times slower once liquid. Fit to the plant: no published curve could be found.',
  valid: { temperature_c: [45, 85], hours: [0, 24] },
  values: { waterRate: 0.35, waterRateRange: [0.2, 0.5], doubling: 11, acidShare: 0.45, acidShareRange: [0.3, 0.6], liquidFactor: 0.2 },
} as const satisfies Table;

/** Constants that a plant fits to its own loads. */
export interface ConcheRates {
  /** Drying rate in the dry phase at 60 °C, 1/h. */
  readonly water: number;
  /** Rate of acid over that of water. */
  readonly acidShare: number;
  /** Rates in the liquid phase over those in the dry phase. */
  readonly liquidFactor: number;
}
export const usualConcheRates: ConcheRates = {
  water: conching.values.waterRate,
  acidShare: conching.values.acidShare,
  liquidFactor: conching.values.liquidFactor,
};

export interface ConcheLoad {
  readonly mass: Kilogram;
  readonly moisture: MassFraction;
  /** Moisture that the mass would keep in the air over it. */
  readonly moistureEnd: MassFraction;
  /** Volatile acid, any unit. */
  readonly acid: number;
  readonly temperature: Celsius;
  readonly dryHours: number;
  readonly liquidHours: number;
  /** Air through the conche, kg/h dry; Infinity: not limiting. */
  readonly airFlow: number;
  readonly airTemperature: Celsius;
  readonly airHumidity: number;
}

export interface ConcheResult {
  readonly moisture: MassFraction;
  readonly acid: number;
  /** Water driven off, kg. */
  readonly evaporated: Kilogram;
  /** Hours during which the air, saturated to what the mass gives, was the limit. */
  readonly airLimitedHours: number;
}

/**
 * Moisture and volatile acid through the dry and liquid phase: dw/dt = -k(T)(w - w∞), acid at a share of that rate, both held back where
 * the air cannot carry the water away (leaving air at most at the vapour pressure over the mass, water activity (w/w100), 0.4 at 0.5 %).
 * @throws OutOfRange
 */
export function concheLoad(load: ConcheLoad, rates: ConcheRates = usualConcheRates): ConcheResult {
  requireRange('mass_kg', load.mass, [Number.MIN_VALUE, 1e6], 'physics');
  requireRange('moisture', load.moisture, [0, 0.1], 'conche-practice');
  requireRange('moisture_end', load.moistureEnd, [0, 0.1], 'conche-practice');
  requireRange('temperature_c', load.temperature, [20, 120], 'conche-practice');
  requireRange('dry_hours', load.dryHours, [0, 200], 'conche-practice');
  requireRange('liquid_hours', load.liquidHours, [0, 200], 'conche-practice');
  requireRange('air_flow_kg_h', load.airFlow, [0, Infinity], 'physics');
  const arrhenius = 2 ** ((load.temperature - 60) / conching.values.doubling);
  let { moisture, acid } = load;
  let limited = 0;
  const dt = 1 / 60;
  for (const [hours, factor] of [
    [load.dryHours, 1],
    [load.liquidHours, rates.liquidFactor],
  ] as const) {
    const rate = rates.water * arrhenius * factor;
    for (let now = 0; now < hours - 1e-9; now += dt) {
      const step = Math.min(dt, hours - now);
      const wanted = (moisture - load.moistureEnd) * -Math.expm1(-rate * step);
      const carried = airCapacity(load, moisture) * step;
      const share = wanted > carried ? Math.max(0, carried / wanted) : 1;
      if (share < 1) limited += step;
      moisture -= wanted * share;
      acid *= Math.exp(-rate * rates.acidShare * step * share);
    }
  }
  return { moisture, acid, evaporated: load.mass * (load.moisture - moisture), airLimitedHours: limited };
}

/** Water that the air can take, per kg mass and hour. */
function airCapacity(load: ConcheLoad, moisture: number): number {
  if (load.airFlow === Infinity) return Infinity;
  const activity = Math.min(1, 0.4 * Math.sqrt(moisture / 0.005)); // chocolate: 0.4 at 0.5 % water
  const vapour = Math.min(90_000, activity * saturationPressure(load.temperature));
  const incoming = humidityRatio(load.airHumidity * saturationPressure(load.airTemperature));
  return (load.airFlow * Math.max(0, humidityRatio(vapour) - incoming)) / load.mass;
}

/** Hours until the moisture reaches a target in the dry phase; Infinity where the target is not above the end moisture. */
export function hoursToMoisture(moisture: MassFraction, end: MassFraction, target: MassFraction, ratePerHour: number): number {
  requireRange('rate_per_h', ratePerHour, [Number.MIN_VALUE, 100], 'conche-practice');
  if (target >= moisture) return 0;
  return target > end ? Math.log((moisture - end) / (target - end)) / ratePerHour : Infinity;
}

/** First order: end + (start - end) e^(-k t). */
export function firstOrder(start: number, end: number, rate: number, time: number): number {
  return end + (start - end) * Math.exp(-rate * time);
}

/** Time to heat a load, s: m cp ΔT/(P - loss). @throws OutOfRange where the power does not beat the loss */
export function heatUpTime(mass: Kilogram, specificHeat: JoulePerKilogramKelvin, rise: number, power: Watt, loss: Watt): Second {
  requireRange('temperature_rise_k', rise, [0, 200], 'physics');
  requireRange('power_over_loss_w', power - loss, [Number.MIN_VALUE, Infinity], 'physics');
  return (mass * specificHeat * rise) / (power - loss);
}

/** Power at a shaft, W: 2π n M. */
export function shaftPower(revolutionsPerMinute: number, torque: number): Watt {
  return (2 * Math.PI * revolutionsPerMinute * torque) / 60;
}

/** Viscosity on its way to the end value in the liquid phase: η∞ + (η0 - η∞) e^(-t/τ). */
export function viscosityAfter(start: number, end: number, timeConstantHours: number, hours: number): number {
  requireRange('time_constant_h', timeConstantHours, [Number.MIN_VALUE, 1000], 'physics');
  return firstOrder(start, end, 1 / timeConstantHours, hours);
}

/**
 * Hours until torque (or viscosity) is within a share of its end value: the end point, from a logged decay.
 * Fits ln(value - end) against time; end is the level it settles at, given or taken a little below the last reading.
 */
export function endPoint(
  hours: readonly number[],
  value: readonly number[],
  end: number,
  share: number,
): { readonly rate: number; readonly hours: number } {
  const points = hours.flatMap((t, i) => (value[i]! > end ? [[t, Math.log(value[i]! - end)] as const] : []));
  if (points.length < 3)
    throw new NoSolution(`${points.length} readings lie above the end value of ${end}; at least 3 are needed to see how it is approached`);
  const n = points.length;
  const meanT = points.reduce((sum, [t]) => sum + t, 0) / n;
  const meanY = points.reduce((sum, [, y]) => sum + y, 0) / n;
  const stt = points.reduce((sum, [t]) => sum + (t - meanT) ** 2, 0);
  const slope = points.reduce((sum, [t, y]) => sum + (t - meanT) * (y - meanY), 0) / stt;
  const rate = -slope;
  return { rate, hours: rate > 0 ? meanT + (meanY - Math.log(share * end)) / rate : Infinity };
}
