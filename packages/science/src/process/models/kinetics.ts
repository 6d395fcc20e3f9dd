import { defineModel, type Model } from '../../model.js';
import { browningEnergy, crispness, lardPeroxide, roastedPeanutty } from '../data/kinetics.js';
import { arrheniusFactor } from '../flow/temperature.js';
import { equivalentTime } from '../kinetics/history.js';
import { activationEnergy, q10, timeToLimit, valueAfter, type Order } from '../kinetics/rate.js';
import { fitArrhenius, fitLine } from '../kinetics/regression.js';
import { fraction, nonNegative, positive, series, temperature } from './inputs.js';

const energy = positive('activation_energy_kj_mol', 'kJ/mol', 'activation energy');
const order = {
  key: 'order',
  unit: '1',
  meaning: 'zero (straight line) or first (in proportion)',
  kind: 'choice',
  choices: ['zero', 'first'],
  default: 'zero',
} as const;
const orderOf = (word: string): Order => (word === 'first' ? 1 : 0);

export const kineticsModels: readonly Model[] = [
  defineModel({
    id: 'kinetics.arrhenius',
    title: 'How much faster a reaction runs at another temperature',
    about: 'exp(Ea/R (1/T1 - 1/T2)).',
    inputs: [energy, temperature('from_temperature_c', 'first temperature'), temperature('to_temperature_c', 'second temperature')],
    outputs: [{ key: 'rate_ratio', unit: '1', meaning: 'rate at the second over that at the first temperature' }],
    sources: ['arrhenius'],
    standing: 'memory',
    run: (x) => ({ rate_ratio: arrheniusFactor(x.activation_energy_kj_mol * 1000, x.from_temperature_c, x.to_temperature_c) }),
  }),
  defineModel({
    id: 'kinetics.q10',
    title: 'Q10 from an activation energy',
    about: 'Rate ratio over ten kelvin; it falls as the temperature rises.',
    inputs: [energy, temperature('temperature_c', 'lower of the two temperatures')],
    outputs: [{ key: 'q10', unit: '1', meaning: 'rate 10 K higher over rate here' }],
    sources: ['arrhenius'],
    standing: 'memory',
    run: (x) => ({ q10: q10(x.activation_energy_kj_mol * 1000, x.temperature_c) }),
  }),
  defineModel({
    id: 'kinetics.activation_energy',
    title: 'Activation energy from rates at several temperatures',
    about: 'Slope of ln k against 1/T by least squares, with its 95 % interval.',
    inputs: [
      series('temperatures_c', '°C', 'temperatures', { possible: [-273.14, 3000] }),
      series('rates', '1', 'rates, any one unit', { possible: [1e-30, 1e30] }),
    ],
    outputs: [
      { key: 'activation_energy_kj_mol', unit: 'kJ/mol', meaning: 'activation energy' },
      { key: 'slope_k', unit: 'K', meaning: 'slope of ln k against 1/T' },
      { key: 'rate_at_25c', unit: '1', meaning: 'rate of the line at 25 °C' },
    ],
    sources: ['arrhenius'],
    standing: 'memory',
    run: (x) => {
      const fit = fitArrhenius(x.temperatures_c, x.rates);
      const [value, half] = [fit.energy / 1000, fit.energyHalfWidth / 1000];
      return {
        activation_energy_kj_mol: half < Infinity ? { value, low: value - half, high: value + half } : value,
        slope_k: fit.slope,
        rate_at_25c: fit.rateAt25,
      };
    },
  }),
  defineModel({
    id: 'kinetics.rate_from_data',
    title: 'Rate of change from a series of measurements',
    about: 'Straight line through the values (zero order) or their logarithms (first order), with the 95 % interval of the slope.',
    inputs: [series('times', '1', 'times, any unit'), series('values', '1', 'measured values'), order],
    outputs: [
      { key: 'rate', unit: '1', meaning: 'change per unit of time; of ln value for first order' },
      { key: 'start', unit: '1', meaning: 'value of the line at time 0' },
    ],
    sources: ['arrhenius'],
    standing: 'memory',
    run: (x) => {
      const first = x.order === 'first';
      const line = fitLine(x.times, first ? x.values.map(Math.log) : x.values);
      const { slope, slopeHalfWidth: half } = line;
      return {
        rate: half < Infinity ? { value: slope, low: slope - half, high: slope + half } : slope,
        start: first ? Math.exp(line.intercept) : line.intercept,
      };
    },
  }),
  defineModel({
    id: 'kinetics.time_to_limit',
    title: 'Time until a property reaches its limit',
    about: 'Zero order (limit - start)/k, first order ln(limit/start)/k, with the rate carried to the storage temperature by Arrhenius.',
    inputs: [
      { key: 'start', unit: '1', meaning: 'value at the start' },
      { key: 'limit', unit: '1', meaning: 'value at which it ends' },
      { key: 'rate', unit: '1/time', meaning: 'change per unit of time at the reference temperature; negative for a loss' },
      order,
      temperature('reference_temperature_c', 'temperature of the rate', { default: 20 }),
      temperature('temperature_c', 'storage temperature', { default: 20 }),
      nonNegative('activation_energy_kj_mol', 'kJ/mol', 'activation energy', { default: 0 }),
    ],
    outputs: [
      { key: 'time', unit: 'time', meaning: 'time, in the unit of the rate; no value where it never comes' },
      { key: 'rate_here', unit: '1/time', meaning: 'rate at the storage temperature' },
    ],
    sources: ['arrhenius'],
    standing: 'memory',
    run: (x) => {
      const rate = x.rate * arrheniusFactor(x.activation_energy_kj_mol * 1000, x.reference_temperature_c, x.temperature_c);
      const time = timeToLimit(orderOf(x.order), x.start, x.limit, rate);
      return { time: { value: time < Infinity ? time : null }, rate_here: rate };
    },
  }),
  defineModel({
    id: 'browning.history',
    title: 'Browning over a time-temperature history',
    about:
      'Arrhenius along the logged temperature, straight between readings: time at the reference that browns as much, and the change it makes. ' +
      'Anchor the rate to one cook of the plant.',
    inputs: [
      series('times_min', 'min', 'times of the readings, rising', { possible: [0, 1e9] }),
      series('temperatures_c', '°C', 'temperatures', { possible: [-50, 250], fitted: [90, 140] }),
      {
        ...energy,
        default: browningEnergy.values.milk / 1000,
        possible: [1, 500],
        fitted: [81, 159],
      },
      temperature('reference_temperature_c', 'reference', { default: 118 }),
      nonNegative('rate_per_min', '1/min', 'rate at the reference: colour units per minute, or 1/min for first order', { default: 1 }),
      order,
      { key: 'start', unit: '1', meaning: 'colour at the start (first order: above 0)', default: 0 },
    ],
    outputs: [
      { key: 'equivalent_time_min', unit: 'min', meaning: 'time at the reference that does as much' },
      { key: 'colour', unit: '1', meaning: 'colour at the end, in the unit of the rate' },
      { key: 'q10', unit: '1', meaning: 'rate 10 K above the reference over that at it' },
    ],
    sources: ['pagliarini-milk-colour', 'rozycki-2007'],
    standing: 'found',
    run: (x) => {
      const at = (kj: number) => equivalentTime(x.times_min, x.temperatures_c, kj * 1000, x.reference_temperature_c);
      const value = at(x.activation_energy_kj_mol);
      const [low, high] = [at(81), at(159)].sort((a, b) => a - b) as [number, number];
      return {
        equivalent_time_min: { value, low: Math.min(low, value), high: Math.max(high, value) },
        colour: valueAfter(orderOf(x.order), x.start, x.rate_per_min, value),
        q10: q10(x.activation_energy_kj_mol * 1000, x.reference_temperature_c),
      };
    },
  }),
  defineModel({
    id: 'shelf_life.q10',
    title: 'Shelf life at another temperature from Q10',
    about: 'life2 = life1 / Q10^((T2 - T1)/10).',
    inputs: [
      positive('known_life_d', 'd', 'shelf life at the first temperature'),
      temperature('known_temperature_c', 'first temperature'),
      temperature('temperature_c', 'second temperature'),
      positive('q10', '1', 'Q10'),
    ],
    outputs: [
      { key: 'life_d', unit: 'd', meaning: 'shelf life at the second temperature' },
      { key: 'activation_energy_kj_mol', unit: 'kJ/mol', meaning: 'activation energy that this Q10 stands for at the first temperature' },
    ],
    sources: ['arrhenius'],
    standing: 'memory',
    run: (x) => ({
      life_d: x.known_life_d / x.q10 ** ((x.temperature_c - x.known_temperature_c) / 10),
      activation_energy_kj_mol: activationEnergy(x.q10, x.known_temperature_c, x.known_temperature_c + 10) / 1000,
    }),
  }),
  defineModel({
    id: 'shelf_life.peroxide_value',
    title: 'Peroxide value in storage and time to its limit',
    about: 'Zero order with Arrhenius. Default rate and activation energy are those of lard at 10 to 35 °C: replace by the plant’s nuts.',
    inputs: [
      temperature('temperature_c', 'storage temperature', { default: 20, possible: [-30, 80], fitted: [10, 35] }),
      nonNegative('time_d', 'd', 'time', { default: 0 }),
      nonNegative('start_value', 'meq/kg', 'peroxide value at the start', { default: 0 }),
      positive('limit_value', 'meq/kg', 'limit', { default: 10 }),
      positive('reference_rate_per_day', '1/d', 'rise per day at the reference', { default: lardPeroxide.values.rate_per_day[1] }),
      temperature('reference_temperature_c', 'temperature of that rate', { default: lardPeroxide.values.temperature_c[1] }),
      { ...energy, default: lardPeroxide.values.energy / 1000 },
    ],
    outputs: [
      { key: 'rate_per_day', unit: '1/d', meaning: 'rise per day' },
      { key: 'peroxide_value', unit: 'meq/kg', meaning: 'value after the time' },
      { key: 'time_to_limit_d', unit: 'd', meaning: 'time from the start to the limit' },
    ],
    sources: ['lard-peroxide-2018', 'arrhenius'],
    standing: 'found',
    run: (x) => {
      const rate =
        x.reference_rate_per_day * arrheniusFactor(x.activation_energy_kj_mol * 1000, x.reference_temperature_c, x.temperature_c);
      return {
        rate_per_day: rate,
        peroxide_value: x.start_value + rate * x.time_d,
        time_to_limit_d: timeToLimit(0, x.start_value, x.limit_value, rate),
      };
    },
  }),
  defineModel({
    id: 'shelf_life.roasted_flavour',
    title: 'Loss of roasted-peanutty flavour in storage',
    about: 'First order; the rate of one lot at 30 °C, other temperatures by an activation energy that must be given.',
    inputs: [
      positive('start_intensity', '1', 'sensory intensity at the start', { default: 5.5 }),
      nonNegative('time_d', 'd', 'time'),
      temperature('temperature_c', 'temperature', { default: 30, possible: [-30, 60], fitted: [29, 31] }),
      nonNegative('activation_energy_kj_mol', 'kJ/mol', 'activation energy; 0 keeps the rate of 30 °C', { default: 0 }),
      positive('rate_per_day', '1/d', 'rate at 30 °C', { default: roastedPeanutty.values.rate_per_day }),
    ],
    outputs: [{ key: 'intensity', unit: '1', meaning: 'sensory intensity' }],
    sources: ['sanders-ars-91039'],
    standing: 'found',
    run: (x) => {
      const rate =
        x.rate_per_day * arrheniusFactor(x.activation_energy_kj_mol * 1000, roastedPeanutty.values.temperature_c, x.temperature_c);
      return { intensity: valueAfter(1, x.start_intensity, -rate, x.time_d) };
    },
  }),
  defineModel({
    id: 'shelf_life.crispness',
    title: 'Crispness against water activity',
    about: 'Fermi curve 1/(1 + exp((aw - awc)/b)); middle and width are defaults to replace by the plant’s own panel.',
    inputs: [
      fraction('water_activity', 'water activity of the crisp part'),
      fraction('critical_water_activity', 'activity at which half the crispness is gone', { default: crispness.values.critical }),
      positive('width', '1', 'width of the fall', { default: crispness.values.width }),
    ],
    outputs: [{ key: 'crispness', unit: '1', meaning: 'crispness over that when dry' }],
    sources: ['katz-labuza-1981'],
    standing: 'secondhand',
    run: (x) => ({ crispness: 1 / (1 + Math.exp((x.water_activity - x.critical_water_activity) / x.width)) }),
  }),
];
