import { saturationPressure, saturationTemperature } from '../../core/index.js';
import { defineModel, type Model } from '../../model.js';
import {
  condensationRate,
  dewPoint,
  humidityRatio,
  humidityRatioFromWetBulb,
  mixAir,
  moistAirEnthalpy,
  moistAirVolume,
  surfaceHumidity,
  surfaceTemperatureFor,
  vapourPressure,
  wetBulb,
} from '../air.js';
import { heatTransfer, pressure, relativeHumidity } from './inputs.js';

const temperature = { key: 'temperature_c', unit: '°C', possible: [-60, 95], fitted: [-20, 60], meaning: 'air temperature' } as const;
const sources = ['ashrae-2017-ch1'] as const;
const state = [
  { key: 'dew_point_c', unit: '°C', meaning: 'dew point, frost point below 0 °C' },
  { key: 'wet_bulb_c', unit: '°C', meaning: 'thermodynamic wet bulb' },
  { key: 'relative_humidity', unit: '1', meaning: 'vapour pressure over saturation' },
  { key: 'humidity_ratio', unit: 'kg/kg', meaning: 'water per dry air' },
  { key: 'vapour_pressure_pa', unit: 'Pa', meaning: 'partial pressure of water vapour' },
  { key: 'enthalpy_j_kg', unit: 'J/kg', meaning: 'enthalpy per kg dry air, 0 at 0 °C dry' },
  { key: 'specific_volume_m3_kg', unit: 'm³/kg', meaning: 'volume per kg dry air' },
] as const;

function stateOf(t: number, ratio: number, p: number) {
  const vapour = vapourPressure(ratio, p);
  return {
    ...(vapour > 1.09 && { dew_point_c: saturationTemperature(vapour) }),
    wet_bulb_c: wetBulb(t, ratio, p),
    relative_humidity: vapour / saturationPressure(t),
    humidity_ratio: ratio,
    vapour_pressure_pa: vapour,
    enthalpy_j_kg: moistAirEnthalpy(t, ratio),
    specific_volume_m3_kg: moistAirVolume(t, ratio, p),
  };
}

const about =
  'Ideal mixture of air and vapour; saturation after the core water line, over ice below 0 °C. Real air holds about 0.5 % more vapour (no enhancement factor).';

export const dewPointModel: Model = defineModel({
  id: 'air.dew_point',
  title: 'Dew point and state of moist air',
  about,
  inputs: [temperature, relativeHumidity, pressure],
  outputs: state,
  sources,
  standing: 'secondhand',
  run: (x) => {
    const vapour = x.relative_humidity * saturationPressure(x.temperature_c);
    const known = stateOf(x.temperature_c, humidityRatio(vapour, x.pressure_pa), x.pressure_pa);
    return {
      ...known,
      relative_humidity: x.relative_humidity,
      vapour_pressure_pa: vapour,
      dew_point_c: dewPoint(x.temperature_c, x.relative_humidity),
    };
  },
});

export const wetBulbModel: Model = defineModel({
  id: 'air.from_wet_bulb',
  title: 'State of moist air from dry and wet bulb',
  about,
  inputs: [
    temperature,
    { key: 'wet_bulb_c', unit: '°C', possible: [-60, 95], fitted: [-20, 60], meaning: 'wet bulb reading, at or below the air' },
    pressure,
  ],
  outputs: state,
  sources,
  standing: 'secondhand',
  run: (x) => stateOf(x.temperature_c, humidityRatioFromWetBulb(x.temperature_c, x.wet_bulb_c, x.pressure_pa), x.pressure_pa),
});

export const humidityModel: Model = defineModel({
  id: 'air.from_humidity_ratio',
  title: 'State of moist air from its humidity ratio',
  about,
  inputs: [
    temperature,
    { key: 'humidity_ratio', unit: 'kg/kg', possible: [0, 20], fitted: [0, 0.1], meaning: 'water per dry air' },
    pressure,
  ],
  outputs: state,
  sources,
  standing: 'secondhand',
  run: (x) => stateOf(x.temperature_c, x.humidity_ratio, x.pressure_pa),
});

export const mixingModel: Model = defineModel({
  id: 'air.mixing',
  title: 'Two air streams mixed',
  about: 'Water and enthalpy are kept; no heat to the walls, no fog.',
  inputs: [
    { key: 'dry_air_1_kg_s', unit: 'kg/s', possible: [0, 1e6], meaning: 'first stream, dry air' },
    { key: 'temperature_1_c', unit: '°C', possible: [-60, 95], meaning: 'its temperature' },
    { key: 'humidity_ratio_1', unit: 'kg/kg', possible: [0, 20], meaning: 'its humidity ratio' },
    { key: 'dry_air_2_kg_s', unit: 'kg/s', possible: [0, 1e6], meaning: 'second stream, dry air' },
    { key: 'temperature_2_c', unit: '°C', possible: [-60, 95], meaning: 'its temperature' },
    { key: 'humidity_ratio_2', unit: 'kg/kg', possible: [0, 20], meaning: 'its humidity ratio' },
  ],
  outputs: [
    { key: 'temperature_c', unit: '°C', meaning: 'of the mixture' },
    { key: 'humidity_ratio', unit: 'kg/kg', meaning: 'of the mixture' },
  ],
  sources,
  standing: 'secondhand',
  run: (x) => {
    const mixed = mixAir(
      { dryAir: x.dry_air_1_kg_s, temperature: x.temperature_1_c, ratio: x.humidity_ratio_1 },
      { dryAir: x.dry_air_2_kg_s, temperature: x.temperature_2_c, ratio: x.humidity_ratio_2 },
    );
    return { temperature_c: mixed.temperature, humidity_ratio: mixed.ratio };
  },
});

export const dewMarginModel: Model = defineModel({
  id: 'air.dew_margin',
  title: 'Dew margin of a surface in a room',
  about:
    'Surface temperature less the dew point of the room air. Milk chocolate takes up water from about 78 % relative humidity at its surface, so a margin of about 4 K is needed where it stays cold for more than minutes.',
  inputs: [
    { key: 'surface_temperature_c', unit: '°C', possible: [-60, 95], fitted: [-20, 40], meaning: 'coldest point of the product surface' },
    { key: 'room_temperature_c', unit: '°C', possible: [-60, 95], fitted: [-20, 60], meaning: 'room air' },
    relativeHumidity,
    {
      key: 'surface_humidity_limit',
      unit: '1',
      possible: [0.05, 1],
      default: 0.78,
      meaning: 'relative humidity at the surface not to be passed',
    },
    heatTransfer,
    pressure,
  ],
  outputs: [
    { key: 'dew_margin_k', unit: 'K', meaning: 'surface less dew point; negative: water condenses' },
    { key: 'dew_point_c', unit: '°C', meaning: 'dew point of the room' },
    { key: 'surface_humidity', unit: '1', meaning: 'relative humidity of room air at the surface; above 1 it condenses' },
    { key: 'condenses', unit: '-', meaning: 'whether water condenses' },
    { key: 'lowest_surface_c', unit: '°C', meaning: 'surface temperature at which the limit is just kept' },
    { key: 'condensation_g_m2_min', unit: 'g/(m² min)', meaning: 'rate at which water condenses' },
    { key: 'humidity_ratio_difference', unit: 'kg/kg', meaning: 'room less saturation at the surface' },
  ],
  sources: ['ashrae-2017-ch1', 'chocolate-storage-page'],
  standing: 'secondhand',
  run: (x) => {
    const dew = dewPoint(x.room_temperature_c, x.relative_humidity);
    const ratio = (t: number, rh: number) => humidityRatio(rh * saturationPressure(t), x.pressure_pa);
    return {
      dew_margin_k: x.surface_temperature_c - dew,
      dew_point_c: dew,
      surface_humidity: surfaceHumidity(x.room_temperature_c, x.relative_humidity, x.surface_temperature_c),
      condenses: { value: x.surface_temperature_c < dew },
      lowest_surface_c: surfaceTemperatureFor(x.surface_humidity_limit, x.room_temperature_c, x.relative_humidity),
      condensation_g_m2_min:
        60_000 *
        condensationRate(
          x.surface_temperature_c,
          x.room_temperature_c,
          x.relative_humidity,
          x.heat_transfer_coefficient_w_m2_k,
          x.pressure_pa,
        ),
      humidity_ratio_difference: ratio(x.room_temperature_c, x.relative_humidity) - ratio(x.surface_temperature_c, 1),
    };
  },
});
