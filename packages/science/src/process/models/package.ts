import { defineModel, type Model } from '../../model.js';
import { ediblePermeability, filmTransmission, permeationEnergy } from '../data/films.js';
import {
  channelConductance,
  packActivity,
  packGain,
  packLife,
  packLifeSimple,
  permeabilityUnits,
  permeance,
  permeanceAt,
  secondsPerDay,
  transmission,
  type PermeabilityUnit,
} from '../package/film.js';
import { fraction, nonNegative, positive, temperature } from './inputs.js';

const testTemperature = temperature('test_temperature_c', 'temperature of the transmission test', { default: 38, possible: [0, 60] });
const testHumidity = fraction('test_relative_humidity', 'humidity difference of the test', { default: 0.9 });
const wvtr = nonNegative('wvtr_g_m2_d', 'g/(m² d)', 'water vapour transmission rate in the test');
const energy = nonNegative('activation_energy_kj_mol', 'kJ/mol', 'activation energy of permeation; 0 leaves the permeance as tested', {
  default: permeationEnergy.values.opp / 1000,
  fitted: [0, 60],
});
const storage = temperature('temperature_c', 'storage temperature', { default: 20, possible: [-20, 60] });

export const packageModels: readonly Model[] = [
  defineModel({
    id: 'package.wvtr',
    title: 'Water vapour transmission of a film in another climate than the test',
    about: 'Permeance = WVTR/(psat Δh) of the test, Arrhenius to the storage temperature, times the pressure difference there.',
    inputs: [
      wvtr,
      testTemperature,
      testHumidity,
      storage,
      fraction('relative_humidity', 'humidity outside', { default: 0.75 }),
      fraction('water_activity', 'water activity inside', { default: 0.5 }),
      energy,
    ],
    outputs: [
      { key: 'permeance_kg_m2_s_pa', unit: 'kg/(m² s Pa)', meaning: 'permeance at storage temperature' },
      { key: 'wvtr_g_m2_d', unit: 'g/(m² d)', meaning: 'transmission in storage; negative outwards' },
      { key: 'driving_force_ratio', unit: '1', meaning: 'pressure difference over that of the test' },
      { key: 'driving_force_pa', unit: 'Pa', meaning: 'pressure difference in storage' },
    ],
    sources: ['iso-15106', 'iapws-if97', 'film-maker-table'],
    standing: 'memory',
    run: (x) => {
      const tested = permeance(x.wvtr_g_m2_d, { temperature: x.test_temperature_c, humidityDifference: x.test_relative_humidity });
      const stored = permeanceAt(tested, x.test_temperature_c, x.temperature_c, x.activation_energy_kj_mol * 1000);
      const one = (value: number) => transmission(value, x.temperature_c, x.relative_humidity, x.water_activity);
      const force = one(1) / 1000 / secondsPerDay;
      const testForce =
        1 / (permeance(1, { temperature: x.test_temperature_c, humidityDifference: x.test_relative_humidity }) * 1000 * secondsPerDay);
      return {
        permeance_kg_m2_s_pa: stored,
        wvtr_g_m2_d: one(stored),
        driving_force_ratio: force / testForce,
        driving_force_pa: force,
      };
    },
  }),
  defineModel({
    id: 'package.permeance',
    title: 'Permeance of a film from its water vapour transmission rate',
    about: 'WVTR by the vapour pressure difference of the test.',
    inputs: [wvtr, testTemperature, testHumidity],
    outputs: [{ key: 'permeance_kg_m2_s_pa', unit: 'kg/(m² s Pa)', meaning: 'permeance' }],
    sources: ['iso-15106', 'iapws-if97'],
    standing: 'memory',
    run: (x) => ({
      permeance_kg_m2_s_pa: permeance(x.wvtr_g_m2_d, { temperature: x.test_temperature_c, humidityDifference: x.test_relative_humidity }),
    }),
  }),
  defineModel({
    id: 'package.film_wvtr',
    title: 'Usual water vapour transmission of a plastic film',
    about: 'Film makers’ table at 38 °C and 90 %, in inverse proportion to thickness (foil as tabled).',
    inputs: [
      { key: 'film', unit: '1', meaning: 'film', kind: 'choice', choices: Object.keys(filmTransmission.values), default: 'opp' },
      positive('thickness_um', 'µm', 'thickness', { default: 25, fitted: [9, 60] }),
    ],
    outputs: [{ key: 'wvtr_g_m2_d', unit: 'g/(m² d)', meaning: 'transmission at 38 °C and 90 % relative humidity' }],
    sources: ['film-maker-table'],
    standing: 'found',
    run: (x) => {
      const [rate, thickness] = filmTransmission.values[x.film as keyof typeof filmTransmission.values];
      const value = x.film === 'foil' ? rate : (rate * thickness) / x.thickness_um;
      return { wvtr_g_m2_d: { value, low: value / 2, high: value * 2 } };
    },
  }),
  defineModel({
    id: 'package.permeability_units',
    title: 'Permeability in SI units',
    about: 'Conversion of the units in which water vapour permeability is printed.',
    inputs: [
      nonNegative('permeability', '1', 'value as printed'),
      { key: 'printed_unit', unit: '1', meaning: 'unit as printed', kind: 'choice', choices: Object.keys(permeabilityUnits) },
    ],
    outputs: [{ key: 'permeability_kg_m_s_pa', unit: 'kg m/(m² s Pa)', meaning: 'the same in SI' }],
    sources: ['iso-15106'],
    standing: 'memory',
    run: (x) => ({ permeability_kg_m_s_pa: x.permeability * permeabilityUnits[x.printed_unit as PermeabilityUnit] }),
  }),
  defineModel({
    id: 'package.chocolate_barrier',
    title: 'Permeance of a chocolate coat as a water barrier',
    about: 'Permeability by thickness. The permeability is a placeholder between published bounds: measure it.',
    inputs: [
      positive('thickness_m', 'm', 'thickness of the coat', { default: 0.0014 }),
      positive('permeability_kg_m_s_pa', 'kg m/(m² s Pa)', 'permeability of the chocolate', {
        default: ediblePermeability.values.chocolate,
        fitted: [ediblePermeability.values.chocolate_low, ediblePermeability.values.chocolate_high],
      }),
    ],
    outputs: [
      { key: 'permeance_kg_m2_s_pa', unit: 'kg/(m² s Pa)', meaning: 'permeance of the coat' },
      {
        key: 'wvtr_38_90_g_m2_d',
        unit: 'g/(m² d)',
        meaning: 'the transmission that would be measured at 38 °C and 90 %, were it solid there',
      },
    ],
    sources: ['biquet-labuza-1988'],
    standing: 'placeholder',
    run: (x) => {
      const value = x.permeability_kg_m_s_pa / x.thickness_m;
      const { chocolate, chocolate_low, chocolate_high } = ediblePermeability.values;
      const own = x.permeability_kg_m_s_pa !== chocolate;
      return {
        permeance_kg_m2_s_pa: own ? value : { value, low: chocolate_low / x.thickness_m, high: chocolate_high / x.thickness_m },
        wvtr_38_90_g_m2_d: transmission(value, 38, 0.9, 0),
      };
    },
  }),
  defineModel({
    id: 'package.water_gain',
    title: 'Water gain of a packed food and time to a critical water activity',
    about:
      'Even food with a straight isotherm: exponential approach to the outside; film and seal leak in parallel. Also by the mean driving force.',
    inputs: [
      nonNegative('permeance_kg_m2_s_pa', 'kg/(m² s Pa)', 'permeance of the film at storage temperature'),
      positive('film_area_m2', 'm²', 'area of the film'),
      nonNegative('leak_kg_s_pa', 'kg/(s Pa)', 'conductance of seal leaks, see package.seal_leak', { default: 0 }),
      positive('dry_mass_kg', 'kg', 'dry mass of the food'),
      positive('isotherm_slope', 'kg/kg', 'slope of its isotherm, water per dry mass and unit of activity'),
      fraction('start_water_activity', 'water activity at the start'),
      fraction('critical_water_activity', 'water activity at which it ends'),
      fraction('relative_humidity', 'humidity outside', { default: 0.75 }),
      storage,
      nonNegative('time_d', 'd', 'time', { default: 0 }),
    ],
    outputs: [
      { key: 'water_activity', unit: '1', meaning: 'water activity after the time' },
      { key: 'water_gain_g', unit: 'g', meaning: 'water gained; negative when lost' },
      { key: 'life_d', unit: 'd', meaning: 'time to the critical activity; no value where it never comes' },
      { key: 'life_simple_d', unit: 'd', meaning: 'the same by the mean driving force' },
      { key: 'leak_share', unit: '1', meaning: 'share of the water that comes by the leaks' },
    ],
    sources: ['labuza-packaging', 'iapws-if97'],
    standing: 'found',
    run: (x) => {
      const pack = {
        film: x.permeance_kg_m2_s_pa * x.film_area_m2,
        leak: x.leak_kg_s_pa,
        capacity: x.dry_mass_kg * x.isotherm_slope,
        temperature: x.temperature_c,
        start: x.start_water_activity,
        outside: x.relative_humidity,
      };
      const life = packLife(pack, x.critical_water_activity);
      return {
        water_activity: packActivity(pack, x.time_d * secondsPerDay),
        water_gain_g: 1000 * packGain(pack, x.time_d * secondsPerDay),
        life_d: { value: life < Infinity ? life / secondsPerDay : null },
        ...(life < Infinity && life > 0 ? { life_simple_d: packLifeSimple(pack, x.critical_water_activity) / secondsPerDay } : {}),
        leak_share: pack.film + pack.leak > 0 ? pack.leak / (pack.film + pack.leak) : 0,
      };
    },
  }),
  defineModel({
    id: 'package.seal_leak',
    title: 'Water vapour through a channel in a seal',
    about: 'Diffusion in still air: D M A/(R T L). A seal leak runs beside the film, it is no property of it.',
    inputs: [
      positive('channel_diameter_m', 'm', 'diameter of the channel'),
      positive('channel_length_m', 'm', 'length, as a rule the width of the seal', { default: 0.005 }),
      nonNegative('channels', '1', 'channels in a pack', { default: 1 }),
      storage,
    ],
    outputs: [
      { key: 'leak_kg_s_pa', unit: 'kg/(s Pa)', meaning: 'conductance' },
      { key: 'equivalent_area_m2', unit: 'm²', meaning: 'area of film of 0.5 g/(m² d) at 38 °C and 90 % that passes as much' },
    ],
    sources: ['fick'],
    standing: 'memory',
    run: (x) => {
      const leak = x.channels * channelConductance((Math.PI / 4) * x.channel_diameter_m ** 2, x.channel_length_m, x.temperature_c);
      return { leak_kg_s_pa: leak, equivalent_area_m2: leak / permeance(0.5, { temperature: 38, humidityDifference: 0.9 }) };
    },
  }),
];
