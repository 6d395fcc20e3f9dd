import type { FlowEffects, Table } from '@barwright/science';
import { percent, type Look } from './builder.js';

/** What enrobing chocolate usually shows, for plants that entered nothing, and the recipes for which its shifts are known. */
export const usualFlow = {
  source: 'chocolate-flow-trends',
  standing: 'memory',
  note: 'Common practice, no source: Casson yield value 5 to 15 Pa and plastic viscosity 1.5 to 3 Pa·s at 40 °C, d90 22 to 26 µm, temper crystals 0.5 to 3 % of the fat. Ranges: those of the trends.',
  valid: { fat: [0.24, 0.45], lecithin: [0, 0.012], pgpr: [0, 0.01], moisture: [0.003, 0.02], d90: [15, 60] },
  values: { yieldValue: 10, plasticViscosity: 2.2, fineness: 25e-6, temperCrystals: 0.015 },
} as const satisfies Table;

const plain: Look = { unit: '1', decimals: 2 };

/** The plant's own ladder: one root for each effect. Changing one replaces the published middle and drops its range. */
export const ladder: readonly { readonly key: keyof FlowEffects; readonly id: string; readonly meaning: string; readonly look: Look }[] = [
  {
    key: 'packingLimit',
    id: 'packing_limit',
    meaning: 'packing limit of its particles, share of volume',
    look: { unit: '1', decimals: 3 },
  },
  { key: 'yieldPower', id: 'yield_power', meaning: 'exponent of the packing in the yield value', look: plain },
  { key: 'lecithinButter', id: 'lecithin_butter', meaning: 'parts of cocoa butter that one part of lecithin replaces', look: plain },
  { key: 'lecithinOptimum', id: 'lecithin_optimum', meaning: 'lecithin beyond which the yield value rises', look: percent },
  {
    key: 'lecithinYieldBelow',
    id: 'lecithin_yield_below',
    meaning: 'change of the yield value per 0.1 % lecithin below the optimum',
    look: percent,
  },
  {
    key: 'lecithinYieldAbove',
    id: 'lecithin_yield_above',
    meaning: 'change of the yield value per 0.1 % lecithin above the optimum',
    look: percent,
  },
  { key: 'pgprFloor', id: 'e476_floor', meaning: 'share of the yield value that no E476 takes away', look: percent },
  {
    key: 'pgprScale',
    id: 'e476_scale',
    meaning: 'E476 at which the rest of the yield value has fallen to 1/e',
    look: { ...percent, decimals: 3 },
  },
  { key: 'pgprPlastic', id: 'e476_plastic', meaning: 'change of the plastic viscosity per 0.1 % E476', look: percent },
  { key: 'waterPerFat', id: 'water_per_fat', meaning: 'water above 1 % that undoes one point of fat', look: percent },
  { key: 'dryWaterShare', id: 'dry_water_share', meaning: 'how much water below 1 % counts against water above it', look: percent },
  { key: 'finenessYield', id: 'fineness_yield', meaning: 'exponent of 1/d90 in the yield value', look: plain },
  { key: 'finenessPlastic', id: 'fineness_plastic', meaning: 'exponent of 1/d90 in the plastic viscosity', look: plain },
];
