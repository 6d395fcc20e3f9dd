import { BadInput } from '../../errors.js';
import { defineModel, type Model, type ModelFinding } from '../../model.js';
import { oilDiffusivity, penetrationDepth, storageResult, uptakeShare } from '../migration.js';
import { blendOf, milkFatShare, oilShare } from './fat.js';
import { celsius, nonNegative, positive, series } from './inputs.js';

export const oilMigrationModel: Model = defineModel({
  id: 'migration.nut_oil',
  title: 'Nut oil moving into a chocolate coat',
  about:
    'Diffusion of peanut oil through the liquid fat of the coat: D measured at 30 °C, and a bound at 20 °C where no transfer was seen in 17 days, joined by the solid fat. Uptake through one face by the series of Crank. A cliff, not a slope: do not scale from 30 °C by a fixed factor per 10 K.',
  inputs: [
    celsius('temperature_c', 'store', { possible: [0, 35], fitted: [20, 30] }),
    nonNegative('time_d', 'd', 'time'),
    positive('thickness_mm', 'mm', 'coat over the nuts', { default: 1.4 }),
    { ...milkFatShare, default: 0.2 },
    oilShare,
    nonNegative('diffusivity_m2_s', 'm²/s', 'measured by the plant; 0: the model', { default: 0 }),
  ],
  outputs: [
    { key: 'diffusivity_m2_s', unit: 'm²/s', meaning: 'used; below 30 °C an upper bound' },
    { key: 'penetration_mm', unit: 'mm', meaning: 'depth √(4Dt)' },
    { key: 'uptake_share', unit: '1', meaning: 'share of the final uptake' },
    { key: 'days_through_coat', unit: 'd', meaning: 'thickness² over D' },
  ],
  sources: ['mccarthy-2008', 'crank-1975', 'cocoa-butter-sfc'],
  standing: 'secondhand',
  run: (x) => {
    const d = x.diffusivity_m2_s > 0 ? x.diffusivity_m2_s : oilDiffusivity(x.temperature_c, blendOf(x));
    const interval = x.diffusivity_m2_s > 0 ? undefined : { low: x.temperature_c < 29 ? 0 : 0.7 * d, high: 1.8 * d };
    const seconds = x.time_d * 86_400;
    const thickness = x.thickness_mm / 1000;
    return {
      diffusivity_m2_s: { value: d, ...interval },
      penetration_mm: {
        value: 1000 * penetrationDepth(d, seconds),
        ...(interval && {
          low: 1000 * penetrationDepth(interval.low, seconds),
          high: 1000 * penetrationDepth(interval.high, seconds),
        }),
      },
      uptake_share: uptakeShare(d, seconds, thickness),
      days_through_coat: thickness ** 2 / d / 86_400,
    };
  },
  remarks: (x): ModelFinding[] =>
    x.temperature_c < 29 && x.diffusivity_m2_s === 0
      ? [{ code: 'UPPER_BOUND', message: 'below 30 °C only "no transfer seen" is known: the diffusivity is the largest that this allows' }]
      : [],
});

export const storageModel: Model = defineModel({
  id: 'storage.temperature_hours',
  title: 'Temperature history of a store or truck, for chocolate',
  about:
    "Hours above a limit, oil front that the history allows (√(4∫D dt), an upper bound below 30 °C), equal hours at 30 °C, and the largest swing. Bloom grows above about 20 to 22 °C and by cycling; the limit itself is the plant's.",
  inputs: [
    series('time_h', 'h', 'times, rising', { possible: [-1e7, 1e7] }),
    series('temperature_c', '°C', 'readings', { possible: [-60, 60] }),
    celsius('limit_c', 'count hours above this', { default: 22 }),
    { ...milkFatShare, default: 0.2 },
    oilShare,
  ],
  outputs: [
    { key: 'hours_above', unit: 'h', meaning: 'hours above the limit' },
    { key: 'highest_c', unit: '°C', meaning: 'highest reading' },
    { key: 'swing_k', unit: 'K', meaning: 'largest warming from a colder reading' },
    { key: 'oil_depth_mm', unit: 'mm', meaning: 'depth that nut oil may have reached' },
    { key: 'hours_at_30', unit: 'h', meaning: 'hours at 30 °C that would do the same to the oil' },
    { key: 'melted', unit: '-', meaning: 'whether the coat was liquid at some time (above 34 °C less its softening)' },
  ],
  sources: ['mccarthy-2008', 'bougatsos-storage', 'enrober-practice'],
  standing: 'memory',
  run: (x) => {
    if (x.time_h.length !== x.temperature_c.length || x.time_h.length < 2) {
      throw new BadInput(
        `storage log has ${x.time_h.length} times and ${x.temperature_c.length} readings; two or more of each, one each, are due`,
      );
    }
    x.time_h.forEach((t, i) => {
      if (i > 0 && !(t > x.time_h[i - 1]!)) throw new BadInput(`times of the storage log must rise, but reading ${i + 1} is at ${t} h`);
    });
    const r = storageResult({ time: x.time_h, temperature: x.temperature_c }, x.limit_c, blendOf(x));
    return {
      hours_above: r.hoursAbove,
      highest_c: r.highest,
      swing_k: r.swing,
      oil_depth_mm: 1000 * r.oilDepth,
      hours_at_30: r.hoursAt30,
      melted: { value: r.highest > 34 - 15 * x.milk_fat_share - 20 * x.oil_share },
    };
  },
});

/** Rules of stores, as dated tables are: published or common practice, each with its standing. */
const rules = {
  'milk chocolate store': { source: 'bougatsos-storage', low: -20, high: 18, humidity: 0.4, words: '6 to 12 months' },
  'chocolate store, wrapped': { source: 'chocolate-storage-page', low: 18, high: 20, humidity: 0.5, words: 'away from odours' },
  'coating room': { source: 'enrober-practice', low: 24, high: 27, humidity: 0.5, words: 'while enrobing' },
} as const;

export const storageRuleModel: Model = defineModel({
  id: 'storage.rule',
  title: 'Storage rules for chocolate',
  about: "Temperature and humidity of stores and rooms as published or practised. The plant's own rules stand above them.",
  inputs: [
    { key: 'place', unit: '-', kind: 'choice', choices: Object.keys(rules), default: 'milk chocolate store', meaning: 'store or room' },
  ],
  outputs: [
    { key: 'lowest_c', unit: '°C', meaning: 'lowest temperature' },
    { key: 'highest_c', unit: '°C', meaning: 'highest temperature' },
    { key: 'highest_humidity', unit: '1', meaning: 'highest relative humidity' },
    { key: 'words', unit: '-', meaning: 'what goes with it' },
  ],
  sources: ['bougatsos-storage', 'chocolate-storage-page', 'enrober-practice'],
  standing: 'secondhand',
  run: (x) => {
    const rule = rules[x.place as keyof typeof rules];
    return { lowest_c: rule.low, highest_c: rule.high, highest_humidity: rule.humidity, words: { value: rule.words } };
  },
});
