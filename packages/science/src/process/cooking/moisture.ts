import type { CookRelation } from './relation.js';
import { filmCook, type Feed, type Heating } from './evaporate.js';
import type { Celsius, Kelvin, MassFraction } from '../../units.js';

/** Moisture of a cook by its thermometer, and what an error of it does. */
export interface CookMoisture {
  readonly moisture: MassFraction;
  /** Change of moisture per kelvin of temperature, 1/K; negative. */
  readonly perKelvin: number;
  /** Standard deviation from the spread of temperature and of level. */
  readonly standardDeviation: MassFraction;
  /** Moisture when the probe reads `probeError` too high and the set point is held by it. */
  readonly withProbeError: MassFraction;
}

/**
 * Final moisture of a cook held at a temperature.
 *
 * @param t - end temperature as read, °C
 * @param temperatureSd - spread of the true end temperature within the batch or along the stream, K
 * @param probeError - reading less truth, K: a probe that reads 1 K high ends the cook 1 K too early
 */
export function cookMoisture(relation: CookRelation, t: Celsius, temperatureSd: Kelvin = 0, probeError: Kelvin = 0): CookMoisture {
  const step = 0.25;
  const perKelvin = (relation.moisture(t + step) - relation.moisture(t - step)) / (2 * step);
  return {
    moisture: relation.moisture(t),
    perKelvin,
    standardDeviation: Math.abs(perKelvin) * temperatureSd,
    withProbeError: relation.moisture(t - probeError),
  };
}

/**
 * How much the end temperature and moisture of a film answer to its level: a film that holds 10 % more stays 10 % longer, as if the
 * area were 10 % larger.
 *
 * @returns K and moisture per unit of relative level
 */
export function levelSensitivity(
  feed: Feed,
  relation: CookRelation,
  heating: Heating,
): { readonly kelvin: Kelvin; readonly moisture: number } {
  const change = 0.02;
  const low = filmCook(feed, relation, { ...heating, conductance: heating.conductance * (1 - change) });
  const high = filmCook(feed, relation, { ...heating, conductance: heating.conductance * (1 + change) });
  return {
    kelvin: (high.endTemperature - low.endTemperature) / (2 * change),
    moisture: (high.endMoisture - low.endMoisture) / (2 * change),
  };
}
