import { defineModel, type Model, type ModelFinding } from '../../model.js';
import { dStudies, targets, type DStudyKey } from '../data/d-values.js';
import { dOnLine, declinePerDay, milkChocolateDValue, studyD, zValue } from './d-value.js';
import { clockFaults, stuckRuns } from './log-faults.js';
import { equivalentMinutes, logReduction, tableRate, type Rule } from './integrate.js';
import { killStep } from './kill-step-model.js';
import { cereusOnNibs, weibullReduction, weibullShape, weibullTime } from './weibull.js';

const noProof: ModelFinding = {
  code: 'PLAUSIBILITY_ONLY',
  message:
    'A computed log reduction proves no kill step; only a validation of this roaster does. Have it set up and judged by HACCP-qualified people.',
};
/** What in a log of product temperature weakens the sum: holes over which the mean of both ends was credited, and a probe that stands still. */
function logRemarks(x: { readonly time_min: readonly number[]; readonly temperature_c: readonly number[] }): ModelFinding[] {
  const log = { roaster: '', time: x.time_min.map((t) => 60 * t), productTemperature: x.temperature_c };
  const { gaps, allowed } = clockFaults(log);
  const findings: ModelFinding[] = [noProof];
  for (const gap of gaps.slice(0, 3)) {
    findings.push({
      code: 'GAP_IN_LOG',
      message: `no reading for ${+(gap.length / 60).toFixed(1)} min after ${x.time_min[gap.before]} min (usual interval at most ${+(allowed / 60).toFixed(1)} min); its lethality is a guess from both ends, leave it out of any claim`,
    });
  }
  for (const run of stuckRuns(Float64Array.from(x.temperature_c)).slice(0, 3)) {
    findings.push({
      code: 'STUCK_SENSOR',
      message: `${x.temperature_c[run.from]} °C stands still from ${x.time_min[run.from]} to ${x.time_min[run.to]} min; a probe in product moves, so check it before this stretch counts`,
    });
  }
  return findings;
}
const logInputs = [
  { key: 'time_min', unit: 'min', meaning: 'Times of the log, not running back', kind: 'series', possible: [-1e9, 1e9] },
  { key: 'temperature_c', unit: '°C', meaning: 'At the coldest point of the product', kind: 'series', possible: [-100, 500] },
] as const;
const rules = ['trapezoid', 'exact', 'rectangle'] as const;

export const roastLethality = defineModel({
  id: 'roasting.lethality',
  title: 'Log reduction of Salmonella over a roast log of cocoa beans',
  about:
    '∫ dt/D(T), log D straight between the six temperatures tested. No credit below 100 °C, D of 140 °C held above it, credit ends at 5 log: the survivors tail.',
  inputs: [...logInputs, { key: 'rule', unit: '', meaning: 'How to integrate', kind: 'choice', choices: rules, default: 'trapezoid' }],
  outputs: [
    { key: 'log_reduction', unit: 'log10', meaning: 'By log-linear D; optimistic beyond what was tested' },
    { key: 'credited_log_reduction', unit: 'log10', meaning: 'The same, at most the 5 log tested' },
    { key: 'hottest_c', unit: '°C', meaning: 'Highest reading' },
    { key: 'minutes_above_100', unit: 'min', meaning: 'Time between readings that are both at 100 °C or more' },
  ],
  sources: ['yan-2021'],
  standing: 'found',
  run: (x) => {
    const { temperature, d } = dStudies['salmonella cocoa bean'].values;
    const logs = logReduction(x.time_min, x.temperature_c, tableRate(temperature, d, 'no credit'), x.rule as Rule);
    let hottest = -Infinity;
    let above = 0;
    x.temperature_c.forEach((t, i) => {
      if (t > hottest) hottest = t;
      if (i > 0 && t >= 100 && x.temperature_c[i - 1]! >= 100) above += x.time_min[i]! - x.time_min[i - 1]!;
    });
    return { log_reduction: logs, credited_log_reduction: Math.min(5, logs), hottest_c: hottest, minutes_above_100: above };
  },
  remarks: (x) => {
    const hottest = x.temperature_c.reduce((a, b) => Math.max(a, b), -Infinity);
    return hottest <= 200
      ? logRemarks(x)
      : [
          ...logRemarks(x),
          {
            code: 'NOT_A_PRODUCT_TEMPERATURE',
            message: `the hottest reading is ${hottest} °C; cocoa in a roaster stays below about 160 °C, so check unit (kelvin, °F) and channel`,
          },
        ];
  },
});

export const fromTable = defineModel({
  id: 'lethality.from_table',
  title: 'Log reduction over a log by a table of D values',
  about: '∫ dt/D(T), log D straight between the rows of the table.',
  inputs: [
    ...logInputs,
    { key: 'table_temperature_c', unit: '°C', meaning: 'Temperatures of the table, rising', kind: 'series', possible: [-50, 400] },
    { key: 'table_d_min', unit: 'min', meaning: 'D at each', kind: 'series', possible: [1e-9, 1e9] },
    { key: 'outside', unit: '', meaning: 'Beyond the table', kind: 'choice', choices: ['no credit', 'extrapolate'], default: 'no credit' },
    { key: 'rule', unit: '', meaning: 'How to integrate', kind: 'choice', choices: rules, default: 'trapezoid' },
  ],
  outputs: [{ key: 'log_reduction', unit: 'log10', meaning: 'Sum over the log' }],
  sources: ['bigelow-1921'],
  standing: 'memory',
  run: (x) => ({
    log_reduction: logReduction(
      x.time_min,
      x.temperature_c,
      tableRate(x.table_temperature_c, x.table_d_min, x.outside as 'no credit' | 'extrapolate'),
      x.rule as Rule,
    ),
  }),
  remarks: logRemarks,
});

export const integral = defineModel({
  id: 'lethality.integral',
  title: 'Equivalent minutes at a reference temperature, and log reduction by D and z',
  about: 'F = ∫ 10^((T - Tref)/z) dt; log reduction = F / D(Tref).',
  inputs: [
    ...logInputs,
    { key: 'reference_temperature_c', unit: '°C', meaning: 'Reference', possible: [-50, 400] },
    { key: 'z_k', unit: 'K', meaning: 'Kelvins per decade', possible: [0.1, 500] },
    { key: 'd_reference_min', unit: 'min', meaning: 'D at the reference', possible: [1e-9, 1e9], default: 1 },
    { key: 'no_credit_below_c', unit: '°C', meaning: 'Readings below give nothing', possible: [-273.15, 500], default: -273.15 },
    { key: 'rule', unit: '', meaning: 'How to integrate', kind: 'choice', choices: rules, default: 'trapezoid' },
  ],
  outputs: [
    { key: 'equivalent_min', unit: 'min', meaning: 'F at the reference' },
    { key: 'log_reduction', unit: 'log10', meaning: 'F over D' },
  ],
  sources: ['bigelow-1921'],
  standing: 'memory',
  run: (x) => {
    const f = equivalentMinutes(x.time_min, x.temperature_c, x.reference_temperature_c, x.z_k, x.rule as Rule, x.no_credit_below_c);
    return { equivalent_min: f, log_reduction: f / x.d_reference_min };
  },
  remarks: logRemarks,
});

export const dValue = defineModel({
  id: 'lethality.d_value',
  title: 'Decimal reduction time of a published study at a temperature',
  about: 'log D straight between the temperatures tested; beyond them continued and told. One-temperature studies answer only there.',
  inputs: [
    {
      key: 'study',
      unit: '',
      meaning: 'Organism and food',
      kind: 'choice',
      choices: Object.keys(dStudies),
      default: 'salmonella cocoa bean',
    },
    { key: 'temperature_c', unit: '°C', meaning: 'Temperature', possible: [-50, 400] },
  ],
  outputs: [
    { key: 'd_min', unit: 'min', meaning: 'Decimal reduction time' },
    { key: 'z_k', unit: 'K', meaning: 'Kelvins per decade of the piece used' },
    { key: 'organism', unit: '', meaning: 'What was tested' },
    { key: 'matrix', unit: '', meaning: 'In what' },
    { key: 'tested', unit: '', meaning: 'True inside the temperatures of the study' },
  ],
  sources: [
    'yan-2021',
    'tsai-2019',
    'iafp-2017-cocoa-powder',
    'pelaez-2020',
    'cookie-dough-stec',
    'krapf-2010',
    'iafp-2017-peanut-butter',
    'milk-powder-storage',
  ],
  standing: 'found',
  run: (x) => {
    const study = dStudies[x.study as DStudyKey];
    const r = studyD(x.study as DStudyKey, x.temperature_c);
    return {
      d_min: r.low === undefined ? { value: r.d } : { value: r.d, low: r.low, high: r.high! },
      z_k: { value: Number.isFinite(r.z) ? r.z : null },
      organism: { value: study.organism },
      matrix: { value: study.matrix },
      tested: { value: r.tested },
    };
  },
  remarks: (x) => {
    const study = dStudies[x.study as DStudyKey];
    const findings: ModelFinding[] = [{ code: 'STUDY_NOTE', message: study.note }];
    const ts: readonly number[] = study.values.temperature;
    if (x.temperature_c < ts[0]! || x.temperature_c > ts.at(-1)!) {
      findings.push({
        code: 'OUTSIDE_FITTED_RANGE',
        message: `temperature_c is ${x.temperature_c}; ${study.source} tested ${ts[0]} to ${ts.at(-1)} °C`,
      });
    }
    return findings;
  },
});

export const dLine = defineModel({
  id: 'lethality.z_value',
  title: 'z and D from a series of D values',
  about: 'Straight line of log10 D over temperature by least squares.',
  inputs: [
    { key: 'temperature_series_c', unit: '°C', meaning: 'Temperatures, rising', kind: 'series', possible: [-50, 400] },
    { key: 'd_series_min', unit: 'min', meaning: 'D at each', kind: 'series', possible: [1e-9, 1e9] },
    { key: 'temperature_c', unit: '°C', meaning: 'Where D is wanted', possible: [-50, 400], default: 120 },
  ],
  outputs: [
    { key: 'z_k', unit: 'K', meaning: 'Kelvins per decade' },
    { key: 'd_min', unit: 'min', meaning: 'D on the line at the temperature' },
    { key: 'd_interpolated_min', unit: 'min', meaning: 'D by straight pieces of log D' },
  ],
  sources: ['bigelow-1921'],
  standing: 'memory',
  run: (x) => {
    const z = zValue(x.temperature_series_c, x.d_series_min);
    return {
      z_k: { value: Number.isFinite(z) ? z : null },
      d_min: dOnLine(x.temperature_series_c, x.d_series_min, x.temperature_c),
      d_interpolated_min: 1 / tableRate(x.temperature_series_c, x.d_series_min, 'extrapolate')(x.temperature_c),
    };
  },
});

export const milkChocolate = defineModel({
  id: 'milk_chocolate.salmonella_d',
  title: 'Decimal reduction time of Salmonella in milk chocolate',
  about: 'log10 D = log10 47.4 - (T - 70)/18.5 - (aw - 0.23)/0.44; beside it the slowest historic value, which counts for safety.',
  inputs: [
    { key: 'temperature_c', unit: '°C', meaning: 'Of the chocolate', possible: [0, 150], fitted: [70, 80] },
    { key: 'water_activity', unit: '1', meaning: 'At 21 °C', possible: [0, 1], fitted: [0.23, 0.43], default: 0.23 },
  ],
  outputs: [
    { key: 'd_min', unit: 'min', meaning: 'Recent work' },
    { key: 'd_slowest_min', unit: 'min', meaning: 'Slowest published, carried by the same z' },
    { key: 'time_5_log_h', unit: 'h', meaning: 'Five decimal reductions by the slowest' },
  ],
  sources: ['sun-2022', 'barrile-cone-1970', 'iafp-2017-cocoa-powder'],
  standing: 'secondhand',
  run: (x) => {
    const { d, slowest } = milkChocolateDValue(x.temperature_c, x.water_activity);
    return { d_min: { value: d, low: d * 0.7, high: slowest }, d_slowest_min: slowest, time_5_log_h: (5 * slowest) / 60 };
  },
  remarks: () => [{ code: 'NOT_A_KILL_STEP', message: 'Conching, storage and tempering are never a kill step.' }],
});

export const storage = defineModel({
  id: 'storage.salmonella_decline',
  title: 'Decline of Salmonella in dry storage',
  about: '0.0069 × 10^((T - 36)/12.4 + 1.92 (aw - 0.33)) log10 per day, a dry protein powder.',
  inputs: [
    { key: 'temperature_c', unit: '°C', meaning: 'Of the store', possible: [-30, 80], fitted: [36, 50] },
    { key: 'water_activity', unit: '1', meaning: 'Of the food', possible: [0, 0.9], fitted: [0.17, 0.58] },
  ],
  outputs: [{ key: 'log_reduction_per_day', unit: '1/d', meaning: 'Decline' }],
  sources: ['farakos-2013'],
  standing: 'secondhand',
  run: (x) => {
    const value = declinePerDay(x.temperature_c, x.water_activity);
    // About a factor of 1.6 among the rates the plane was laid through; below 36 °C the temperature step itself is known to a third.
    const factor = 1.6 * 10 ** (Math.max(0, 36 - x.temperature_c, x.temperature_c - 50) / 37);
    return { log_reduction_per_day: { value, low: value / factor, high: value * factor } };
  },
  remarks: () => [{ code: 'NOT_A_KILL_STEP', message: 'Storage controls nothing: at 20 °C a log takes years.' }],
});

export const weibull = defineModel({
  id: 'lethality.weibull',
  title: 'Weibull survival: log reduction, time of n log, shape',
  about: 'log reduction = (t/δ)^p; p below 1 is a tail.',
  inputs: [
    { key: 'time_min', unit: 'min', meaning: 'Time', possible: [0, 1e9] },
    { key: 'delta_min', unit: 'min', meaning: 'Time of the first log', possible: [1e-9, 1e9] },
    { key: 'shape', unit: '1', meaning: 'p', possible: [0.01, 20], default: 1 },
    { key: 'logs', unit: 'log10', meaning: 'Reductions for which a time is wanted', possible: [1e-6, 20], default: 5 },
  ],
  outputs: [
    { key: 'log_reduction', unit: 'log10', meaning: 'After the time' },
    { key: 'time_of_logs_min', unit: 'min', meaning: 'Time of that many reductions' },
  ],
  sources: ['iafp-2016-bacillus'],
  standing: 'found',
  run: (x) => ({
    log_reduction: weibullReduction(x.time_min, x.delta_min, x.shape),
    time_of_logs_min: weibullTime(x.logs, x.delta_min, x.shape),
  }),
});

export const weibullShapeModel = defineModel({
  id: 'lethality.weibull_shape',
  title: 'Weibull shape from the first log and the time of n log',
  about: 'p = ln n / ln(t/δ).',
  inputs: [
    { key: 'delta_min', unit: 'min', meaning: 'Time of the first log', possible: [1e-9, 1e9] },
    { key: 'logs', unit: 'log10', meaning: 'n', possible: [1.0001, 20], default: 4 },
    { key: 'time_of_logs_min', unit: 'min', meaning: 'Time of n log', possible: [1e-9, 1e9] },
  ],
  outputs: [{ key: 'shape', unit: '1', meaning: 'p' }],
  sources: ['iafp-2016-bacillus'],
  standing: 'found',
  run: (x) => ({ shape: weibullShape(x.delta_min, x.logs, x.time_of_logs_min) }),
});

export const spores = defineModel({
  id: 'cocoa_nib.bacillus_spores',
  title: 'Spores of Bacillus cereus on roasting cocoa nibs',
  about: 'Weibull with δ and 4-log time log-straight in temperature between the printed points.',
  inputs: [{ key: 'temperature_c', unit: '°C', meaning: 'Of the nib', possible: [60, 180], fitted: [110, 140] }],
  outputs: [
    { key: 'delta_min', unit: 'min', meaning: 'Time of the first log' },
    { key: 'time_4_log_min', unit: 'min', meaning: 'Time of four log; above 125 °C continued from 110 and 125' },
    { key: 'shape', unit: '1', meaning: 'p from both' },
  ],
  sources: ['iafp-2016-bacillus'],
  standing: 'found',
  run: (x) => {
    const r = cereusOnNibs(x.temperature_c);
    return { delta_min: r.delta, time_4_log_min: r.four, shape: { value: Number.isFinite(r.p) ? r.p : null } };
  },
  remarks: () => [{ code: 'SPORES_SURVIVE', message: 'No usual roast kills spores.' }],
});

export const logTargets = defineModel({
  id: 'lethality.target',
  title: 'Log reductions of Salmonella that are asked for',
  about: 'Published targets by product; the plant’s own hazard analysis and its law set what it must reach.',
  inputs: [{ key: 'product', unit: '', meaning: 'Product', kind: 'choice', choices: ['almond', 'cocoa', 'peanut'] }],
  outputs: [{ key: 'log_reduction', unit: 'log10', meaning: 'Target' }],
  sources: ['fr-74-50681', 'common-practice'],
  standing: 'secondhand',
  run: (x) => ({ log_reduction: targets.values[x.product as 'almond' | 'cocoa' | 'peanut'] }),
});

export const lethalityModels: readonly Model[] = [
  roastLethality,
  killStep,
  fromTable,
  integral,
  dValue,
  dLine,
  milkChocolate,
  storage,
  weibull,
  weibullShapeModel,
  spores,
  logTargets,
];
