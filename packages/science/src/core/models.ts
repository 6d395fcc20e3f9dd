import { defineModel } from '../model.js';
import { altitudes, standardAltitude, stationPressure } from './atmosphere.js';
import { activityOfIce } from './ice.js';
import { latentHeatOfVaporisation } from './latentHeat.js';
import { saturationPressure, saturationPressures, saturationTemperature, saturationTemperatures } from './saturation.js';

const temperature = { key: 'temperature_c', unit: '°C', meaning: 'temperature' } as const;

export const saturationPressureModel = defineModel({
  id: 'water.saturation_pressure',
  title: 'Vapour pressure of pure water',
  about: 'Saturation line of liquid water from 0.01 °C, sublimation line of ice below.',
  inputs: [{ ...temperature, possible: saturationTemperatures }],
  outputs: [{ key: 'pressure_pa', unit: 'Pa', meaning: 'absolute pressure of the vapour' }],
  sources: ['iapws-if97', 'iapws-r14-08'],
  standing: 'memory',
  run: ({ temperature_c }) => {
    const value = saturationPressure(temperature_c);
    const spread = temperature_c < 0.01 ? 0.001 : 0.00025;
    return { pressure_pa: { value, low: value * (1 - spread), high: value * (1 + spread) } };
  },
});

export const saturationTemperatureModel = defineModel({
  id: 'water.saturation_temperature',
  title: 'Boiling point of pure water',
  about: 'Saturation line of liquid water solved for the temperature; below 611.657 Pa the frost point over ice.',
  inputs: [{ key: 'pressure_pa', unit: 'Pa', meaning: 'absolute pressure', possible: saturationPressures }],
  outputs: [{ key: 'temperature_c', unit: '°C', meaning: 'temperature of saturation' }],
  sources: ['iapws-if97', 'iapws-r14-08'],
  standing: 'memory',
  run: ({ pressure_pa }) => ({ temperature_c: saturationTemperature(pressure_pa) }),
});

export const latentHeatModel = defineModel({
  id: 'water.latent_heat',
  title: 'Latent heat of vaporisation of water',
  about: 'Clapeyron equation on the vapour pressure and the densities of saturated water and steam.',
  inputs: [{ ...temperature, possible: [0, 373.9] }],
  outputs: [{ key: 'latent_heat_j_kg', unit: 'J/kg', meaning: 'heat taken up by a kilogram of water as it boils' }],
  sources: ['iapws-sr1-86'],
  standing: 'memory',
  run: ({ temperature_c }) => {
    const value = latentHeatOfVaporisation(temperature_c);
    return { latent_heat_j_kg: { value, low: value * 0.9985, high: value * 1.0015 } };
  },
});

export const atmosphereModel = defineModel({
  id: 'atmosphere.pressure',
  title: 'Air pressure at an altitude',
  about: 'Standard atmosphere up to 11 km; with the sea-level pressure of a weather report the pressure at the plant that day.',
  inputs: [
    { key: 'altitude_m', unit: 'm', meaning: 'height above sea level', possible: altitudes },
    {
      key: 'sea_level_pressure_pa',
      unit: 'Pa',
      meaning: 'pressure reduced to sea level, as a weather report gives it',
      possible: [87_000, 108_500],
      default: 101_325,
    },
  ],
  outputs: [{ key: 'pressure_pa', unit: 'Pa', meaning: 'absolute pressure at that altitude' }],
  sources: ['iso-2533-1975'],
  standing: 'memory',
  run: ({ altitude_m, sea_level_pressure_pa }) => {
    const value = stationPressure(altitude_m, sea_level_pressure_pa);
    // Left at the standard value the weather is unknown: some ±3 kPa at sea level.
    const weather = sea_level_pressure_pa === 101_325 ? 0.03 * value : 0.002 * value;
    return { pressure_pa: { value, low: value - weather, high: value + weather } };
  },
});

export const altitudeModel = defineModel({
  id: 'atmosphere.altitude',
  title: 'Altitude of the standard atmosphere at a pressure',
  about: 'The inverse of atmosphere.pressure without weather.',
  inputs: [{ key: 'pressure_pa', unit: 'Pa', meaning: 'absolute pressure', possible: [22_632, 127_774] }],
  outputs: [{ key: 'altitude_m', unit: 'm', meaning: 'height above sea level' }],
  sources: ['iso-2533-1975'],
  standing: 'memory',
  run: ({ pressure_pa }) => ({ altitude_m: standardAltitude(pressure_pa) }),
});

export const iceActivityModel = defineModel({
  id: 'water.activity_of_ice',
  title: 'Water activity at the freezing point',
  about: 'Vapour pressure of ice by that of supercooled water: the activity of any solution that stands with ice.',
  inputs: [{ ...temperature, possible: [-100, 0.01] }],
  outputs: [{ key: 'water_activity', unit: '1', meaning: 'water activity of ice' }],
  sources: ['murphy-koop-2005', 'iapws-r14-08'],
  standing: 'memory',
  run: ({ temperature_c }) => ({ water_activity: activityOfIce(temperature_c) }),
});
