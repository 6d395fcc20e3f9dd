import type { Check } from '../../check.js';
import { coolingCurve } from '../temper-simulation.js';

const made = (crystals: number): Record<string, number> => ({ crystals, milk_fat_share: 0.2 });
const state = (id: string, crystals: number, expected: readonly [number, number], note: string): Check => ({
  id: `temper.cooling_curve/${id}`,
  model: 'temper.cooling_curve',
  inputs: made(crystals),
  output: 'slope_k_min',
  expected,
  tolerance: 0,
  kind: 'published',
  source: 'temper-slope',
  standing: 'secondhand',
  note,
});

/** A curve made of known pieces: T = a + b(t - t0) + c(t - t0)³ has its inflection at t0 with slope b. */
const time = Array.from({ length: 61 }, (_, i) => 5 * i);
const cubic = (slopePerMinute: number, t0: number) => time.map((t) => 22 + (slopePerMinute / 60) * (t - t0) - 3e-7 * (t - t0) ** 3);
const read = (id: string, slope: number, t0: number, output: string, expected: number | string, tolerance: number): Check => ({
  id: `temper.curve/${id}-${output}`,
  model: 'temper.curve',
  inputs: { time_s: time, temperature_c: cubic(slope, t0) },
  output,
  expected,
  tolerance,
  kind: 'code',
  source: 'temper-slope',
  standing: 'secondhand',
  note: 'Curve with a known inflection; the reading of signs is published.',
});

const load = { throughput_kg_h: 1600, inlet_c: 45, coldest_c: 27, fat: 0.32 };
const cause = (id: string, now: Record<string, number>, expected: string, note: string): Check => ({
  id: `temperer.cause/${id}`,
  model: 'temperer.cause',
  inputs: { ...load, now_throughput_kg_h: 1600, now_coolant_in_c: 12, now_inlet_c: 45, ...now },
  output: 'cause',
  expected,
  tolerance: 0,
  kind: 'code',
  source: 'enrober-practice',
  standing: 'memory',
  note,
});

/** A curve made with a growth rate of 0.05 1/s, to be found again. */
const sample = {
  start: 30,
  coolant: 8,
  coolingRate: 0.4 / 60,
  crystals: 0.015,
  fat: 0.32,
  blend: { milkFat: 0.2, oil: 0 },
  specificHeat: 1590,
  growthRate: 0.05,
};
const grown = coolingCurve(sample, 400, 8);

export const temperChecks: readonly Check[] = [
  {
    id: 'temper.growth_fit/round-trip',
    model: 'temper.growth_fit',
    inputs: { time_s: grown.time, temperature_c: grown.temperature, cooling_rate_min: 0.4, milk_fat_share: 0.2 },
    output: 'growth_rate_s',
    expected: 0.05,
    tolerance: 0.001,
    kind: 'code',
    source: 'franke-1998',
    standing: 'placeholder',
    note: 'Round trip; no digitised temper curve could be found.',
  },
  read('well', 0, 150, 'slope_k_min', 0, 0.02),
  read('well', 0, 150, 'state', 'well', 0),
  read('under', 0.9, 160, 'slope_k_min', 0.9, 0.02),
  read('under', 0.9, 160, 'state', 'under', 0),
  read('over', -0.8, 120, 'slope_k_min', -0.8, 0.02),
  read('over', -0.8, 120, 'state', 'over', 0),
  read('over', -0.8, 120, 'inflection_temperature_c', 22, 0.05),
  state('few-crystals', 0.003, [0.05, 5], 'Few crystals: the slope at the inflection is positive (under-tempered).'),
  state('many-crystals', 0.04, [-5, -0.05], 'Many crystals: the slope is negative (over-tempered).'),
  {
    id: 'temperer.heat_balance/sensible-and-crystals',
    model: 'temperer.heat_balance',
    inputs: { ...load, crystals: 0.015 },
    output: 'duty_kj_kg',
    expected: 29.37,
    tolerance: 0.05,
    kind: 'code',
    source: 'beckett-constants-2009',
    standing: 'found',
    note: '1.59 × 18 + 0.32 × 0.015 × 157, constants as printed.',
  },
  cause('warm-coolant', { now_coolant_in_c: 16.4 }, 'coolant', 'Coolant from 12.0 to 16.4 °C at constant throughput.'),
  cause('more-throughput', { now_throughput_kg_h: 1800 }, 'throughput', 'Throughput up at constant coolant.'),
  cause('nothing', { now_coolant_in_c: 12.005 }, 'none', 'No change worth naming.'),
  {
    id: 'trend.minutes_to_limit/straight',
    model: 'trend.minutes_to_limit',
    inputs: { time_min: [0, 30, 60, 90], value: [0, 0.1, 0.2, 0.3], limit: 0.4 },
    output: 'minutes_to_limit',
    expected: 30,
    tolerance: 1e-6,
    kind: 'code',
    source: 'fieller-1954',
    standing: 'memory',
    note: 'A straight line.',
  },
];
