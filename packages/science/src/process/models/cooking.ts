import { saturationTemperature } from '../../core/saturation.js';
import { defineModel, type Model } from '../../model.js';
import { batchCook, evaporate, filmConductance, filmCook } from '../cooking/evaporate.js';
import { cookMoisture, levelSensitivity } from '../cooking/moisture.js';
import { cookRelation } from '../cooking/relation.js';
import { compositionInputs, compositionOf, scaled } from './composition.js';
import { fraction, nonNegative, positive, temperature } from './inputs.js';

const pressure = positive('pressure_pa', 'Pa', 'absolute pressure above the mass', { default: 101_325, possible: [700, 1e6] });
const offset = {
  key: 'offset_k',
  unit: 'K',
  meaning: 'what the plant reads above the boiling model, from its own moisture analyses',
  possible: [-20, 20],
  default: 0,
} as const;
const steamPressure = positive('steam_pressure_pa', 'Pa', 'absolute pressure of the heating steam', {
  possible: [1e4, 3e6],
  default: 700_000,
});
const conductance = positive('conductance_w_k', 'W/K', 'heat transfer coefficient times area');
const loss = nonNegative('heat_loss_w', 'W', 'heat lost to the room', { default: 0 });
const feedTemperature = temperature('feed_temperature_c', 'temperature of the feed', { default: 70, possible: [0, 150] });
const endMoisture = fraction('end_moisture', 'moisture to reach, wet basis; 0 to take the end temperature instead', { default: 0 });
const endTemperature = temperature('end_temperature_c', 'end temperature, where no end moisture is given', {
  default: 118,
  possible: [40, 199],
});

/** The boiling models carry a kelvin or two on the syrups of real recipes; so do these. */
const kelvins = 2;

export const cookingModels: readonly Model[] = [
  defineModel({
    id: 'cooker.end_moisture',
    title: 'Moisture of a cook by its end temperature, and what probe error and spread do to it',
    about: 'The syrup phase boils where aw psat = P; fat, protein and starch go along. Slope times spread gives the spread of moisture.',
    inputs: [
      ...compositionInputs,
      temperature('temperature_c', 'end temperature as read', { possible: [40, 199] }),
      pressure,
      nonNegative('temperature_sd_k', 'K', 'spread (standard deviation) of the true end temperature', { default: 0.3 }),
      { key: 'probe_error_k', unit: 'K', meaning: 'reading less truth', possible: [-20, 20], default: 1 },
      offset,
    ],
    outputs: [
      { key: 'moisture', unit: '1', meaning: 'moisture, wet basis on everything in the cooker' },
      { key: 'moisture_per_k', unit: '1/K', meaning: 'change of moisture per kelvin' },
      { key: 'moisture_sd', unit: '1', meaning: 'standard deviation of moisture' },
      { key: 'moisture_with_probe_error', unit: '1', meaning: 'moisture when that probe ends the cook' },
    ],
    sources: ['boiling-relation'],
    standing: 'memory',
    run: (x) => {
      const relation = cookRelation(compositionOf(x), x.pressure_pa, x.offset_k);
      const cook = cookMoisture(relation, x.temperature_c, x.temperature_sd_k, x.probe_error_k);
      return {
        moisture: {
          value: cook.moisture,
          low: relation.moisture(Math.min(199, x.temperature_c + kelvins)),
          high: relation.moisture(x.temperature_c - kelvins),
        },
        moisture_per_k: cook.perKelvin,
        moisture_sd: cook.standardDeviation,
        moisture_with_probe_error: cook.withProbeError,
      };
    },
    remarks: scaled,
  }),
  defineModel({
    id: 'cooker.batch',
    title: 'Batch kettle: evaporation, heat, steam and time',
    about: 'Solids in = solids out; heat through the wall is conductance times (steam - mass), which shrinks as the boiling point rises.',
    inputs: [
      ...compositionInputs,
      positive('feed_mass_kg', 'kg', 'mass of the batch as fed, with the water of the composition'),
      feedTemperature,
      endMoisture,
      endTemperature,
      pressure,
      steamPressure,
      conductance,
      loss,
      offset,
    ],
    outputs: [
      { key: 'end_moisture', unit: '1', meaning: 'moisture at the end, wet basis' },
      { key: 'end_temperature_c', unit: '°C', meaning: 'temperature at the end' },
      { key: 'evaporated_kg', unit: 'kg', meaning: 'water driven off' },
      { key: 'product_kg', unit: 'kg', meaning: 'finished mass' },
      { key: 'heat_up_mj', unit: 'MJ', meaning: 'heat to the boiling point' },
      { key: 'boil_off_mj', unit: 'MJ', meaning: 'heat of evaporation and of the rising boiling point' },
      { key: 'heat_up_time_min', unit: 'min', meaning: 'time to the boiling point' },
      { key: 'boil_time_min', unit: 'min', meaning: 'time of boiling' },
      { key: 'steam_kg', unit: 'kg', meaning: 'steam condensed' },
      { key: 'start_evaporation_kg_h', unit: 'kg/h', meaning: 'evaporation when boiling begins' },
      { key: 'end_evaporation_kg_h', unit: 'kg/h', meaning: 'evaporation at the end' },
      { key: 'mean_duty_kw', unit: 'kW', meaning: 'mean heat flow over the cook' },
    ],
    sources: ['boiling-relation', 'iapws-if97', 'sugar-liquor-thermal'],
    standing: 'memory',
    run: (x) => {
      const of = compositionOf(x);
      const relation = cookRelation(of, x.pressure_pa, x.offset_k);
      const end = x.end_moisture > 0 ? x.end_moisture : relation.moisture(x.end_temperature_c);
      const feed = { mass: x.feed_mass_kg, moisture: of[0]!, temperature: x.feed_temperature_c };
      const medium = saturationTemperature(x.steam_pressure_pa);
      const cook = batchCook(feed, end, relation, { medium, conductance: x.conductance_w_k, loss: x.heat_loss_w });
      return {
        end_moisture: end,
        end_temperature_c: cook.endTemperature,
        evaporated_kg: cook.evaporated,
        product_kg: cook.product,
        heat_up_mj: cook.heatUp / 1e6,
        boil_off_mj: cook.boilOff / 1e6,
        heat_up_time_min: cook.heatUpTime / 60,
        boil_time_min: cook.boilTime / 60,
        steam_kg: cook.steam,
        start_evaporation_kg_h: cook.startRate * 3600,
        end_evaporation_kg_h: cook.endRate * 3600,
        mean_duty_kw: (cook.heatUp + cook.boilOff) / (cook.heatUpTime + cook.boilTime) / 1000,
      };
    },
    remarks: scaled,
  }),
  defineModel({
    id: 'cooker.thin_film',
    title: 'Continuous thin-film cooker: end moisture, its spread, heat and steam',
    about: 'Plug flow along the heated wall; the spread of moisture comes from the spread of temperature and of the film level.',
    inputs: [
      ...compositionInputs,
      positive('feed_kg_h', 'kg/h', 'feed, with the water of the composition'),
      feedTemperature,
      pressure,
      steamPressure,
      conductance,
      loss,
      nonNegative('temperature_sd_k', 'K', 'spread of the end temperature by its control', { default: 0.3 }),
      nonNegative('level_cv', '1', 'relative spread of film level or residence', { default: 0.02, fitted: [0, 0.1] }),
      { key: 'probe_error_k', unit: 'K', meaning: 'reading less truth', possible: [-20, 20], default: 1 },
      offset,
    ],
    outputs: [
      { key: 'end_moisture', unit: '1', meaning: 'mean moisture, wet basis' },
      { key: 'end_temperature_c', unit: '°C', meaning: 'mean end temperature' },
      { key: 'moisture_sd', unit: '1', meaning: 'standard deviation of moisture from both spreads' },
      { key: 'moisture_per_k', unit: '1/K', meaning: 'change of moisture per kelvin' },
      { key: 'moisture_with_probe_error', unit: '1', meaning: 'moisture when that probe holds the same reading' },
      { key: 'kelvin_per_level', unit: 'K', meaning: 'change of end temperature per unit of relative level' },
      { key: 'evaporated_kg_h', unit: 'kg/h', meaning: 'vapour' },
      { key: 'product_kg_h', unit: 'kg/h', meaning: 'product' },
      { key: 'heat_kw', unit: 'kW', meaning: 'heat to the mass' },
      { key: 'steam_kg_h', unit: 'kg/h', meaning: 'steam condensed' },
    ],
    sources: ['boiling-relation', 'iapws-if97', 'sugar-liquor-thermal'],
    standing: 'memory',
    run: (x) => {
      const of = compositionOf(x);
      const relation = cookRelation(of, x.pressure_pa, x.offset_k);
      const feed = { mass: x.feed_kg_h / 3600, moisture: of[0]!, temperature: x.feed_temperature_c };
      const heating = { medium: saturationTemperature(x.steam_pressure_pa), conductance: x.conductance_w_k, loss: x.heat_loss_w };
      const film = filmCook(feed, relation, heating);
      const level = levelSensitivity(feed, relation, heating);
      const cook = cookMoisture(relation, film.endTemperature, x.temperature_sd_k, x.probe_error_k);
      return {
        end_moisture: film.endMoisture,
        end_temperature_c: film.endTemperature,
        moisture_sd: Math.hypot(cook.standardDeviation, level.moisture * x.level_cv),
        moisture_per_k: cook.perKelvin,
        moisture_with_probe_error: cook.withProbeError,
        kelvin_per_level: level.kelvin,
        evaporated_kg_h: film.evaporated * 3600,
        product_kg_h: film.product * 3600,
        heat_kw: (film.heatUp + film.boilOff) / 1000,
        steam_kg_h: film.steam * 3600,
      };
    },
    remarks: scaled,
  }),
  defineModel({
    id: 'cooker.conductance',
    title: 'Conductance a continuous cooker needs, or has',
    about: 'The heat balance of the film turned round: from a measured feed and end moisture to U times A.',
    inputs: [
      ...compositionInputs,
      positive('feed_kg_h', 'kg/h', 'feed, with the water of the composition'),
      feedTemperature,
      endMoisture,
      endTemperature,
      pressure,
      steamPressure,
      offset,
    ],
    outputs: [
      { key: 'conductance_w_k', unit: 'W/K', meaning: 'heat transfer coefficient times area' },
      { key: 'end_moisture', unit: '1', meaning: 'end moisture' },
      { key: 'steam_kg_h', unit: 'kg/h', meaning: 'steam condensed, no loss' },
    ],
    sources: ['boiling-relation', 'iapws-if97'],
    standing: 'memory',
    run: (x) => {
      const of = compositionOf(x);
      const relation = cookRelation(of, x.pressure_pa, x.offset_k);
      const end = x.end_moisture > 0 ? x.end_moisture : relation.moisture(x.end_temperature_c);
      const feed = { mass: x.feed_kg_h / 3600, moisture: of[0]!, temperature: x.feed_temperature_c };
      const film = filmConductance(feed, end, relation, saturationTemperature(x.steam_pressure_pa));
      return { conductance_w_k: film.conductance, end_moisture: end, steam_kg_h: film.steam * 3600 };
    },
    remarks: scaled,
  }),
  defineModel({
    id: 'cooker.evaporation',
    title: 'Water and heat from one moisture to another',
    about: 'Solids in = solids out; latent heat at the boiling point of the moment.',
    inputs: [
      ...compositionInputs,
      positive('feed_mass_kg', 'kg', 'mass as fed, with the water of the composition'),
      feedTemperature,
      fraction('end_moisture', 'moisture at the end, wet basis'),
      pressure,
    ],
    outputs: [
      { key: 'evaporated_kg', unit: 'kg', meaning: 'water driven off' },
      { key: 'product_kg', unit: 'kg', meaning: 'mass left' },
      { key: 'heat_mj', unit: 'MJ', meaning: 'heat to the mass' },
      { key: 'end_temperature_c', unit: '°C', meaning: 'boiling point at the end' },
    ],
    sources: ['boiling-relation', 'iapws-if97'],
    standing: 'memory',
    run: (x) => {
      const of = compositionOf(x);
      const feed = { mass: x.feed_mass_kg, moisture: of[0]!, temperature: x.feed_temperature_c };
      const result = evaporate(feed, x.end_moisture, cookRelation(of, x.pressure_pa));
      return {
        evaporated_kg: result.evaporated,
        product_kg: result.product,
        heat_mj: (result.heatUp + result.boilOff) / 1e6,
        end_temperature_c: result.endTemperature,
      };
    },
    remarks: scaled,
  }),
];
