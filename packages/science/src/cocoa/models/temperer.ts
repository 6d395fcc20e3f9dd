import { defineModel, type Model } from '../../model.js';
import { coolantDuty, crystalsFromDuty, logMeanDifference, tempererCause, tempererDuty } from '../temperer.js';
import { minutesToLimit } from '../trend.js';
import { celsius, nonNegative, positive, series, share } from './inputs.js';
import { fat, specificHeat } from './temper.js';

const chocolate = [
  positive('throughput_kg_h', 'kg/h', 'chocolate through the temperer'),
  celsius('inlet_c', 'chocolate into the temperer', { default: 45, possible: [20, 80] }),
  celsius('coldest_c', 'coldest chocolate, before the warming zone', { default: 27, possible: [5, 45] }),
  fat,
  specificHeat,
] as const;

export const heatBalanceModel: Model = defineModel({
  id: 'temperer.heat_balance',
  title: 'Heat balance and crystal content of a temperer',
  about:
    'Duty = flow (cp ΔT + fat × crystals × 157 kJ/kg) + shaft work. With coolant flow and both its temperatures the crystals that close the balance are given; else the coolant outlet for the crystals assumed.',
  inputs: [
    ...chocolate,
    share('crystals', 'crystals at the outlet, share of the fat', { default: 0.015, fitted: [0.001, 0.05] }),
    nonNegative('shaft_power_w', 'W', 'scrapers and pump, as heat', { default: 0 }),
    nonNegative('coolant_kg_h', 'kg/h', 'coolant flow', { default: 0 }),
    celsius('coolant_in_c', 'coolant in', { default: 12, possible: [-20, 40] }),
    celsius('coolant_out_c', 'coolant out, measured; equal to coolant in: not measured', { default: 12, possible: [-20, 60] }),
  ],
  outputs: [
    { key: 'duty_w', unit: 'W', meaning: 'heat to take for the crystals assumed' },
    { key: 'duty_kj_kg', unit: 'kJ/kg', meaning: 'per kg chocolate' },
    { key: 'coolant_out_expected_c', unit: '°C', meaning: 'coolant outlet for that duty' },
    { key: 'conductance_w_k', unit: 'W/K', meaning: 'UA over the mean logarithmic difference' },
    { key: 'coolant_duty_w', unit: 'W', meaning: 'what the coolant took, measured' },
    { key: 'crystals_by_balance', unit: '1', meaning: 'crystals that close the measured balance' },
  ],
  sources: ['beckett-constants-2009'],
  standing: 'secondhand',
  run: (x) => {
    const load = {
      throughput: x.throughput_kg_h,
      inlet: x.inlet_c,
      coldest: x.coldest_c,
      fat: x.fat,
      crystals: x.crystals,
      specificHeat: x.specific_heat_j_kg_k,
      shaftPower: x.shaft_power_w,
    };
    const duty = tempererDuty(load);
    const result: Record<string, number | { value: number; low: number; high: number }> = {
      duty_w: duty,
      duty_kj_kg: (3.6 * duty) / x.throughput_kg_h,
    };
    if (x.coolant_kg_h > 0) {
      const out = x.coolant_in_c + duty / ((x.coolant_kg_h / 3600) * 4190);
      result['coolant_out_expected_c'] = out;
      if (x.coldest_c > x.coolant_in_c && x.inlet_c > out) {
        result['conductance_w_k'] = duty / logMeanDifference(x.inlet_c, x.coldest_c, x.coolant_in_c, out);
      }
      if (x.coolant_out_c > x.coolant_in_c) {
        const taken = coolantDuty(x.coolant_kg_h, x.coolant_in_c, x.coolant_out_c);
        const crystals = crystalsFromDuty(taken, load);
        // 0.1 K on each coolant thermometer and 2 % of the flow.
        const error = Math.hypot(coolantDuty(x.coolant_kg_h, 0, 0.1) * Math.SQRT2, 0.02 * taken);
        const half = crystalsFromDuty(taken + 1.96 * error, load) - crystals;
        result['coolant_duty_w'] = taken;
        result['crystals_by_balance'] = { value: crystals, low: crystals - half, high: crystals + half };
      }
    }
    return result;
  },
  remarks: (x) =>
    x.coolant_out_c > x.coolant_in_c && x.coolant_kg_h > 0
      ? [
          {
            code: 'SMALL_DIFFERENCE',
            message:
              'heat of crystals is a small part of the duty: the crystal content by balance is only as good as the two thermometers and the flow meter',
          },
        ]
      : [],
});

export const causeModel: Model = defineModel({
  id: 'temperer.cause',
  title: 'Coolant, throughput or inlet: why the temper moved',
  about:
    'UA is taken from a good state and held; the heat left for crystals is worked out for the present coolant, throughput and inlet, together and one by one. The largest lone effect is named; below a tenth of the good crystal content none is.',
  inputs: [
    ...chocolate,
    share('crystals', 'crystals in the good state, share of the fat', { default: 0.015, possible: [1e-4, 1] }),
    nonNegative('shaft_power_w', 'W', 'scrapers and pump, as heat', { default: 0 }),
    positive('coolant_kg_h', 'kg/h', 'coolant flow', { default: 6000 }),
    celsius('coolant_in_c', 'coolant in, good state', { default: 12, possible: [-20, 40] }),
    positive('now_throughput_kg_h', 'kg/h', 'throughput now'),
    celsius('now_coolant_in_c', 'coolant in, now', { possible: [-20, 40] }),
    celsius('now_inlet_c', 'chocolate inlet, now', { default: 45, possible: [20, 80] }),
  ],
  outputs: [
    { key: 'cause', unit: '-', meaning: 'coolant, throughput, inlet temperature or none' },
    { key: 'crystals_now', unit: '1', meaning: 'crystals the heat balance leaves now; below 0: none, and warmer than set' },
    { key: 'crystals_coolant_alone', unit: '1', meaning: 'with only the coolant changed' },
    { key: 'crystals_throughput_alone', unit: '1', meaning: 'with only the throughput changed' },
    { key: 'crystals_inlet_alone', unit: '1', meaning: 'with only the inlet changed' },
  ],
  sources: ['beckett-constants-2009', 'enrober-practice'],
  standing: 'memory',
  run: (x) => {
    const cause = tempererCause(
      {
        throughput: x.throughput_kg_h,
        inlet: x.inlet_c,
        coldest: x.coldest_c,
        fat: x.fat,
        crystals: x.crystals,
        specificHeat: x.specific_heat_j_kg_k,
        shaftPower: x.shaft_power_w,
        coolantIn: x.coolant_in_c,
      },
      { throughput: x.now_throughput_kg_h, coolantIn: x.now_coolant_in_c, inlet: x.now_inlet_c },
      x.coolant_kg_h,
    );
    return {
      cause: { value: cause.cause },
      crystals_now: cause.now,
      crystals_coolant_alone: cause.coolantAlone,
      crystals_throughput_alone: cause.throughputAlone,
      crystals_inlet_alone: cause.inletAlone,
    };
  },
});

export const trendModel: Model = defineModel({
  id: 'trend.minutes_to_limit',
  title: 'Minutes until a trend reaches its limit',
  about:
    'Least squares line through the last readings; crossing with the limit and its 95 % interval after Fieller. Without a trend the later end is open.',
  inputs: [
    series('time_min', 'min', 'times of the readings', { possible: [-1e9, 1e9] }),
    series('value', '1', 'readings, any unit', { possible: [-1e12, 1e12] }),
    { key: 'limit', unit: '1', possible: [-1e12, 1e12], meaning: 'limit, same unit' },
    {
      key: 'side',
      unit: '-',
      kind: 'choice',
      choices: ['above', 'below'],
      default: 'above',
      meaning: 'on which side of the limit it is out',
    },
  ],
  outputs: [
    { key: 'minutes_to_limit', unit: 'min', meaning: 'from the last reading; left out where the line runs away from the limit' },
    { key: 'slope_per_min', unit: '1/min', meaning: 'change per minute' },
    { key: 'level', unit: '1', meaning: 'level of the line at the last reading' },
    { key: 'trend', unit: '-', meaning: 'whether the slope differs from 0 at 95 %' },
    { key: 'passed', unit: '-', meaning: 'whether the line is past the limit already' },
  ],
  sources: ['fieller-1954'],
  standing: 'memory',
  run: (x) => {
    const r = minutesToLimit(x.time_min, x.value, x.limit, x.side as 'above' | 'below');
    const interval = { ...(r.earliest !== undefined && { low: r.earliest }), ...(r.latest !== undefined && { high: r.latest }) };
    return {
      ...(r.minutes !== undefined && { minutes_to_limit: { value: r.minutes, ...interval } }),
      ...(r.passed && { minutes_to_limit: 0 }),
      slope_per_min: { value: r.slope, low: r.slopeLow, high: r.slopeHigh },
      level: r.level,
      trend: { value: r.trend },
      passed: { value: r.passed },
    };
  },
});
