import { defineModel, type Model } from '../../model.js';
import { concheLoad, endPoint, heatUpTime, hoursToMoisture, shaftPower, usualConcheRates, viscosityAfter } from '../conche.js';
import { celsius, nonNegative, positive, relativeHumidity, series, share } from './inputs.js';

const moisture = share('moisture', 'water at the start, wet basis', { default: 0.016, possible: [0, 0.1], fitted: [0.005, 0.03] });
const rate = positive('drying_rate_h', '1/h', 'drying rate in the dry phase at 60 °C, fitted by the plant; default from memory', {
  default: usualConcheRates.water,
  fitted: [0.2, 0.5],
});

export const concheModel: Model = defineModel({
  id: 'conche.drying',
  title: 'Moisture and volatile acid through a conche',
  about:
    'First order in the dry and liquid phase: water towards an end moisture, acid at a share of that rate, both doubling per 11 K and five times slower once liquid; held back where the air cannot carry the water. Rates are from memory and to be fitted: no published curve could be found.',
  inputs: [
    positive('mass_kg', 'kg', 'load', { default: 3000 }),
    moisture,
    share('moisture_end', 'moisture it would keep', { default: 0.005, possible: [0, 0.1] }),
    positive('acid', '1', 'volatile acid at the start, any unit', { default: 1 }),
    celsius('temperature_c', 'mass', { default: 60, possible: [20, 120], fitted: [49, 82] }),
    nonNegative('dry_hours', 'h', 'dry phase', { default: 4, possible: [0, 200], fitted: [0, 12] }),
    nonNegative('liquid_hours', 'h', 'liquid phase', { default: 2, possible: [0, 200], fitted: [0, 12] }),
    nonNegative('air_kg_h', 'kg/h', 'dry air through the conche; 0: not limiting', { default: 0 }),
    celsius('air_temperature_c', 'air drawn in', { default: 25 }),
    { ...relativeHumidity, default: 0.5 },
    rate,
    share('acid_share', 'rate of acid over that of water', { default: usualConcheRates.acidShare, fitted: [0.3, 0.6] }),
    share('liquid_factor', 'rates in the liquid phase over those in the dry phase', { default: usualConcheRates.liquidFactor }),
  ],
  outputs: [
    { key: 'moisture_out', unit: '1', meaning: 'water at the end' },
    { key: 'acid_out', unit: '1', meaning: 'acid at the end, unit of the input' },
    { key: 'acid_loss', unit: '1', meaning: 'share of the acid driven off' },
    { key: 'evaporated_kg', unit: 'kg', meaning: 'water driven off' },
    { key: 'air_limited_h', unit: 'h', meaning: 'hours in which the air was the limit' },
  ],
  sources: ['conche-practice', 'conche-encyclopaedia'],
  standing: 'memory',
  run: (x) => {
    const load = {
      mass: x.mass_kg,
      moisture: x.moisture,
      moistureEnd: x.moisture_end,
      acid: x.acid,
      temperature: x.temperature_c,
      dryHours: x.dry_hours,
      liquidHours: x.liquid_hours,
      airFlow: x.air_kg_h > 0 ? x.air_kg_h : Infinity,
      airTemperature: x.air_temperature_c,
      airHumidity: x.relative_humidity,
    };
    const rates = { water: x.drying_rate_h, acidShare: x.acid_share, liquidFactor: x.liquid_factor };
    const r = concheLoad(load, rates);
    // Ends of the rates of the trade: 0.57 to 1.43 of the middle.
    const slow = concheLoad(load, { ...rates, water: 0.57 * rates.water });
    const fast = concheLoad(load, { ...rates, water: 1.43 * rates.water });
    return {
      moisture_out: { value: r.moisture, low: Math.min(fast.moisture, slow.moisture), high: Math.max(fast.moisture, slow.moisture) },
      acid_out: { value: r.acid, low: fast.acid, high: slow.acid },
      acid_loss: { value: 1 - r.acid / x.acid, low: 1 - slow.acid / x.acid, high: 1 - fast.acid / x.acid },
      evaporated_kg: r.evaporated,
      air_limited_h: r.airLimitedHours,
    };
  },
  remarks: (x) =>
    x.temperature_c > 60 ? [{ code: 'MILK_MASS_WARM', message: 'milk mass above 60 °C grits and browns; dark mass may go to 82 °C' }] : [],
});

export const concheTimeModel: Model = defineModel({
  id: 'conche.time_to_moisture',
  title: 'Hours of conching to a moisture',
  about: 'First-order drying at a fitted rate: t = ln((w0 - w∞)/(w - w∞))/k, and the moisture after a time.',
  inputs: [
    moisture,
    share('moisture_end', 'moisture it would keep', { default: 0.005, possible: [0, 0.1] }),
    share('target_moisture', 'wanted', { default: 0.008, possible: [0, 0.1] }),
    positive('drying_rate_h', '1/h', 'rate at conche temperature', { default: 0.35 }),
    nonNegative('time_h', 'h', 'time for the moisture below', { default: 4 }),
  ],
  outputs: [
    { key: 'hours_to_target', unit: 'h', meaning: 'left out where it is never reached' },
    { key: 'moisture_after', unit: '1', meaning: 'after the time' },
  ],
  sources: ['conche-practice'],
  standing: 'memory',
  run: (x) => {
    const hours = hoursToMoisture(x.moisture, x.moisture_end, x.target_moisture, x.drying_rate_h);
    return {
      ...(Number.isFinite(hours) && { hours_to_target: hours }),
      moisture_after: x.moisture_end + (x.moisture - x.moisture_end) * Math.exp(-x.drying_rate_h * x.time_h),
    };
  },
});

export const conchePowerModel: Model = defineModel({
  id: 'conche.power',
  title: 'Heat-up time and shaft power of a conche',
  about: 'Power 2πnM; time m cp ΔT/(P - loss); energy per mass over a cycle.',
  inputs: [
    positive('mass_kg', 'kg', 'load'),
    positive('specific_heat_j_kg_k', 'J/(kg K)', 'mass', { default: 1590 }),
    nonNegative('temperature_rise_k', 'K', 'rise', { default: 25, possible: [0, 200] }),
    nonNegative('power_w', 'W', 'power into the mass; 0: from speed and torque', { default: 0 }),
    nonNegative('speed_rpm', '1/min', 'shaft', { default: 0 }),
    nonNegative('torque_n_m', 'N m', 'shaft', { default: 0 }),
    nonNegative('loss_w', 'W', 'to jacket and air', { default: 0 }),
    nonNegative('cycle_h', 'h', 'cycle at that power', { default: 6 }),
  ],
  outputs: [
    { key: 'power_w', unit: 'W', meaning: 'power into the mass' },
    { key: 'heat_up_min', unit: 'min', meaning: 'time for the rise' },
    { key: 'energy_kwh_kg', unit: 'kWh/kg', meaning: 'over the cycle; 0.05 to 0.1 in practice' },
    { key: 'specific_power_w_kg', unit: 'W/kg', meaning: 'power over load; 20 to 60 in the dry phase in practice' },
  ],
  sources: ['beckett-constants-2009', 'conche-practice'],
  standing: 'found',
  run: (x) => {
    const power = x.power_w > 0 ? x.power_w : shaftPower(x.speed_rpm, x.torque_n_m);
    return {
      power_w: power,
      heat_up_min: heatUpTime(x.mass_kg, x.specific_heat_j_kg_k, x.temperature_rise_k, power, x.loss_w) / 60,
      energy_kwh_kg: (power * x.cycle_h) / 1000 / x.mass_kg,
      specific_power_w_kg: power / x.mass_kg,
    };
  },
});

export const concheEndModel: Model = defineModel({
  id: 'conche.end_point',
  title: 'End point of conching from a logged torque or viscosity',
  about: 'Fits value = end + A e^(-t/τ) with a given end level and gives the time at which a share above it is left.',
  inputs: [
    series('time_h', 'h', 'times', { possible: [0, 1000] }),
    series('value', '1', 'torque, power or viscosity', { possible: [0, 1e12] }),
    positive('end_value', '1', 'level it settles at, same unit'),
    share('share_above_end', 'counts as the end', { default: 0.05, possible: [1e-6, 1] }),
    nonNegative('time_h_for_value', 'h', 'time for the value below', { default: 4 }),
  ],
  outputs: [
    { key: 'time_constant_h', unit: 'h', meaning: 'τ' },
    { key: 'end_point_h', unit: 'h', meaning: 'time at which the share is left' },
    { key: 'value_then', unit: '1', meaning: 'value at the given time' },
  ],
  sources: ['conche-practice'],
  standing: 'memory',
  run: (x) => {
    const fit = endPoint(x.time_h, x.value, x.end_value, x.share_above_end);
    if (!(fit.rate > 0)) return { value_then: x.value.at(-1) ?? 0 };
    const start = x.end_value + x.share_above_end * x.end_value * Math.exp(fit.rate * fit.hours);
    return {
      time_constant_h: 1 / fit.rate,
      end_point_h: fit.hours,
      value_then: viscosityAfter(start, x.end_value, 1 / fit.rate, x.time_h_for_value),
    };
  },
});
