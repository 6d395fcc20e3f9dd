import { latentHeatOfVaporisation } from '../../core/latentHeat.js';
import { NoSolution, OutOfRange, requireRange } from '../../errors.js';
import type { CookRelation } from './relation.js';
import type { Celsius, Kilogram, MassFraction, Second, Watt } from '../../units.js';

export interface Feed {
  /** kg of a batch, or kg/s of a stream. */
  readonly mass: Kilogram;
  readonly moisture: MassFraction;
  readonly temperature: Celsius;
}

export interface Heating {
  /** Temperature of the condensing steam or other heating medium, °C. */
  readonly medium: Celsius;
  /** Heat transfer coefficient times area, W/K. */
  readonly conductance: number;
  /** Heat lost to the room while cooking, W. */
  readonly loss?: Watt;
}

/** Per kg of feed or kg/s, as the feed was given: then heats are J or W, and time or its place is `area` below. */
export interface Evaporation {
  readonly product: Kilogram;
  readonly evaporated: Kilogram;
  /** Heat to bring the feed to its boiling point, J (or W). */
  readonly heatUp: number;
  /** Heat of evaporation and of the rise of the boiling point, J (or W). */
  readonly boilOff: number;
  /** Boiling point of feed and of product, °C. */
  readonly startBoiling: Celsius;
  readonly endTemperature: Celsius;
}

const steps = 60;

/**
 * Heat balance from feed to an end moisture, no kinetics: solids in = solids out; steam leaves at the boiling point of the moment.
 *
 * @throws OutOfRange when the end moisture is not below that of the feed
 */
export function evaporate(feed: Feed, endMoisture: MassFraction, relation: CookRelation): Evaporation {
  let boilOff = 0;
  const walked = walk(feed, endMoisture, relation, (heat) => {
    boilOff += heat;
    return true;
  });
  return { ...walked, boilOff };
}

/** Goes from feed to end in steps of equal log moisture; calls `visit` with the heat of each step and the boiling point in its middle. */
function walk(
  feed: Feed,
  endMoisture: MassFraction,
  relation: CookRelation,
  visit: (heat: number, t: Celsius, evaporated: Kilogram, rise: number) => boolean,
): Omit<Evaporation, 'boilOff'> {
  requireRange('mass of the feed', feed.mass, [1e-300, Infinity], 'mass balance');
  requireRange('moisture of the feed', feed.moisture, [0, 0.999], 'mass balance');
  if (!(endMoisture > 0 && endMoisture < feed.moisture))
    throw new OutOfRange('end moisture', endMoisture, [0, feed.moisture], 'mass balance');
  const solids = feed.mass * (1 - feed.moisture);
  const startBoiling = relation.boiling(feed.moisture);
  const middle = (feed.temperature + startBoiling) / 2;
  const heatUp = feed.mass * relation.specificHeat(feed.moisture, middle) * (startBoiling - feed.temperature);
  let water = solids * (feed.moisture / (1 - feed.moisture));
  let t = startBoiling;
  const endWater = solids * (endMoisture / (1 - endMoisture));
  const ratio = (endWater / water) ** (1 / steps);
  for (let i = 0; i < steps; i++) {
    const next = i === steps - 1 ? endWater : water * ratio;
    const mass = solids + (water + next) / 2;
    const nextT = relation.boiling(next / (next + solids));
    const tMean = (t + nextT) / 2;
    const rise = mass * relation.specificHeat((water + next) / 2 / mass, tMean) * (nextT - t);
    const heat = rise + (water - next) * latentHeatOfVaporisation(tMean);
    const before = water;
    water = next;
    t = nextT;
    if (!visit(heat, tMean, before - next, rise)) break;
  }
  return { product: solids + water, evaporated: feed.mass - solids - water, heatUp, startBoiling, endTemperature: t };
}

export interface BatchCook extends Evaporation {
  readonly heatUpTime: Second;
  readonly boilTime: Second;
  /** Steam condensed at the medium's temperature, kg, losses included. */
  readonly steam: Kilogram;
  /** Evaporation at the start and at the end of boiling, kg/s. */
  readonly startRate: number;
  readonly endRate: number;
}

/**
 * A kettle: time and steam to bring a batch from feed to an end moisture. The heat through the wall is conductance times the
 * difference to the mass, which shrinks as the boiling point rises.
 *
 * @throws NoSolution when the medium is too cold to reach the end, OutOfRange for impossible feed or end
 */
export function batchCook(feed: Feed, endMoisture: MassFraction, relation: CookRelation, heating: Heating): BatchCook {
  const { medium, conductance, loss = 0 } = heating;
  requireRange('conductance', conductance, [1e-300, Infinity], 'heat balance');
  let boilTime = 0;
  let boilOff = 0;
  let startRate = 0;
  let endRate = 0;
  const walked = walk(feed, endMoisture, relation, (heat, t, evaporated) => {
    const time = heat / netHeat(t);
    startRate ||= evaporated / time;
    endRate = evaporated / time;
    boilTime += time;
    boilOff += heat;
    return true;
  });
  // Heating up: exponential approach to the temperature at which wall heat and loss balance.
  const settle = medium - loss / conductance;
  const capacity = walked.heatUp / (walked.startBoiling - feed.temperature || 1);
  const heatUpTime =
    walked.heatUp > 0 ? (capacity / conductance) * Math.log((settle - feed.temperature) / (settle - walked.startBoiling)) : 0;
  const heat = walked.heatUp + boilOff + loss * (heatUpTime + boilTime);
  return { ...walked, boilOff, heatUpTime, boilTime, steam: heat / latentHeatOfVaporisation(medium), startRate, endRate };

  function netHeat(t: Celsius): Watt {
    const net = conductance * (medium - t) - loss;
    if (!(net > 0)) {
      throw new NoSolution(
        `Heating at ${medium.toFixed(1)} °C does not carry the mass past ${t.toFixed(1)} °C: more steam pressure, less loss or a wetter end`,
      );
    }
    return net;
  }
}

export interface FilmCook extends Evaporation {
  readonly endMoisture: MassFraction;
  /** Conductance (W/K) that the film used, or needs. */
  readonly conductance: number;
  /** Steam condensed, kg/s. */
  readonly steam: number;
}

/** Conductance a continuous film needs to reach an end moisture, W/K; feed in kg/s. */
export function filmConductance(feed: Feed, endMoisture: MassFraction, relation: CookRelation, medium: Celsius, loss: Watt = 0): FilmCook {
  let needed = 0;
  let boilOff = 0;
  const walked = walk(feed, endMoisture, relation, (heat, t) => {
    if (!(medium > t)) throw new NoSolution(`Heating at ${medium.toFixed(1)} °C does not carry the film past ${t.toFixed(1)} °C`);
    needed += heat / (medium - t);
    boilOff += heat;
    return true;
  });
  if (!(medium > walked.endTemperature)) {
    throw new NoSolution(`Heating at ${medium.toFixed(1)} °C does not carry the film to ${walked.endTemperature.toFixed(1)} °C`);
  }
  const warm = (medium - feed.temperature) / (medium - walked.startBoiling);
  if (walked.heatUp > 0) needed += (walked.heatUp / (walked.startBoiling - feed.temperature)) * Math.log(warm);
  const steam = (walked.heatUp + boilOff + loss) / latentHeatOfVaporisation(medium);
  return { ...walked, boilOff, endMoisture, conductance: needed, steam };
}

/**
 * Moisture at which a continuous film of given conductance leaves: `filmConductance` turned round.
 *
 * @throws NoSolution when the film does not even boil, or would dry out beyond 0.5 % moisture
 */
export function filmCook(feed: Feed, relation: CookRelation, heating: Heating): FilmCook {
  const need = (moisture: number): number => {
    try {
      return filmConductance(feed, moisture, relation, heating.medium).conductance;
    } catch (error) {
      if (error instanceof NoSolution) return Infinity;
      throw error;
    }
  };
  let wet = feed.moisture * (1 - 1e-9);
  let dry = 0.005;
  if (need(wet) > heating.conductance) throw new NoSolution('The film leaves before it boils: more area, more steam or less feed');
  if (need(dry) < heating.conductance) throw new NoSolution('The film would dry below 0.5 % moisture: less area, less steam or more feed');
  // The need grows about as the logarithm of the moisture falls: false position there, with the middle where it stalls.
  let needWet = need(wet) - heating.conductance;
  let needDry = need(dry) - heating.conductance;
  for (let i = 0; i < 60 && wet / dry > 1 + 1e-9; i++) {
    const share = i % 3 < 2 && needDry < Infinity ? needWet / (needWet - needDry) : 0.5;
    const middle = wet * (dry / wet) ** Math.min(0.98, Math.max(0.02, share));
    const value = need(middle) - heating.conductance;
    if (Math.abs(value) < 1e-9 * heating.conductance) wet = dry = middle;
    else if (value > 0) [dry, needDry] = [middle, value];
    else [wet, needWet] = [middle, value];
  }
  const end = wet; // the side that the medium can reach
  return filmConductance(feed, end, relation, heating.medium, heating.loss);
}
