import { defineModel, type Model } from '../../model.js';
import { cheapestCorrection, pgprLimit } from '../flow-correction.js';
import { flowShift, type FlowEffects } from '../flow-shift.js';
import { nonNegative, positive, share } from './inputs.js';

const fatRange = { possible: [0.2, 0.6], fitted: [0.24, 0.45] } as const;
const lecithinRange = { possible: [0, 0.03], fitted: [0, 0.012], default: 0.0045 } as const;
const pgprRange = { possible: [0, 0.02], fitted: [0, 0.01], default: 0 } as const;
const moistureRange = { possible: [0, 0.03], fitted: [0.003, 0.02], default: 0.007 } as const;
const recipe = [
  share('fat', 'total fat', fatRange),
  share('lecithin', 'lecithin', lecithinRange),
  share('pgpr', 'E476', pgprRange),
  share('moisture', 'water, wet basis', moistureRange),
  { key: 'd90_um', unit: 'µm', possible: [5, 200], fitted: [15, 60], default: 25, meaning: '90 % of the particle volume is finer' },
] as const;

/** The sizes a plant measures first; 0 leaves the published middle. */
const ladder = [
  nonNegative('plant_yield_factor_per_point_pgpr', '1', "plant ladder: factor on the yield value at +0.1 % E476; 0 for the trade's value", {
    possible: [0, 1],
    default: 0,
  }),
  nonNegative('plant_fineness_exponent_yield', '1', 'plant ladder: exponent of 1/d90 in the yield value; 0 for the published range', {
    possible: [0, 5],
    fitted: [0, 1.7],
    default: 0,
  }),
  nonNegative('plant_lecithin_butter', '1', 'plant ladder: parts of butter that one part of lecithin replaces; 0 for 10', {
    possible: [0, 30],
    fitted: [0, 15],
    default: 0,
  }),
] as const;

function effectsFrom(x: {
  readonly plant_yield_factor_per_point_pgpr: number;
  readonly plant_fineness_exponent_yield: number;
  readonly plant_lecithin_butter: number;
}): Partial<FlowEffects> {
  const effects: { -readonly [K in keyof FlowEffects]?: FlowEffects[K] } = {};
  if (x.plant_yield_factor_per_point_pgpr > 0) {
    effects.pgprFloor = 0;
    effects.pgprScale = 0.001 / Math.max(1e-9, -Math.log(x.plant_yield_factor_per_point_pgpr));
  }
  if (x.plant_fineness_exponent_yield > 0) effects.finenessYield = x.plant_fineness_exponent_yield;
  if (x.plant_lecithin_butter > 0) effects.lecithinButter = x.plant_lecithin_butter;
  return effects;
}

export const shiftModel: Model = defineModel({
  id: 'rheology.composition_shift',
  title: 'Yield value and plastic viscosity after a change of recipe',
  about:
    'Factors on the present values: fat and water through the packing of particles (Krieger-Dougherty), lecithin as 10 parts butter up to its optimum and a rising yield value beyond, E476 on the yield value, fineness as a power of d90. Directions are published; sizes are ranges until the plant enters its own ladder.',
  inputs: [
    ...recipe,
    share('new_fat', 'total fat after the change', fatRange),
    share('new_lecithin', 'lecithin after', lecithinRange),
    share('new_pgpr', 'E476 after', pgprRange),
    share('new_moisture', 'water after', moistureRange),
    { key: 'new_d90_um', unit: 'µm', possible: [5, 200], fitted: [15, 60], default: 25, meaning: 'fineness after' },
    nonNegative('yield_value_pa', 'Pa', 'present Casson yield value', { default: 9.5 }),
    nonNegative('plastic_viscosity_pa_s', 'Pa·s', 'present Casson plastic viscosity', { default: 2.3 }),
    ...ladder,
  ],
  outputs: [
    { key: 'new_yield_value_pa', unit: 'Pa', meaning: 'yield value after the change' },
    { key: 'new_plastic_viscosity_pa_s', unit: 'Pa·s', meaning: 'plastic viscosity after the change' },
    { key: 'yield_factor', unit: '1', meaning: 'after over before' },
    { key: 'plastic_factor', unit: '1', meaning: 'after over before' },
  ],
  sources: ['krieger-dougherty-1959', 'chocolate-flow-trends', 'afoakwa-2008', 'schantz-rohm-2005', 'pombal-2024'],
  standing: 'memory',
  run: (x) => {
    const shift = flowShift(
      { fat: x.fat, lecithin: x.lecithin, pgpr: x.pgpr, moisture: x.moisture, d90: x.d90_um },
      { fat: x.new_fat, lecithin: x.new_lecithin, pgpr: x.new_pgpr, moisture: x.new_moisture, d90: x.new_d90_um },
      effectsFrom(x),
    );
    const times = (base: number, f: { value: number; low: number; high: number }) => ({
      value: base * f.value,
      low: base * f.low,
      high: base * f.high,
    });
    return {
      new_yield_value_pa: times(x.yield_value_pa, shift.yieldValue),
      new_plastic_viscosity_pa_s: times(x.plastic_viscosity_pa_s, shift.plastic),
      yield_factor: shift.yieldValue,
      plastic_factor: shift.plastic,
    };
  },
});

export const correctionModel: Model = defineModel({
  id: 'rheology.cheapest_correction',
  title: 'Cheapest way to a target yield value and plastic viscosity',
  about:
    'Tries every combination of cocoa butter (0.1 % steps), lecithin (0.02 %) and E476 (0.01 %) within the limits given and the legal 0.5 % E476, and takes the cheapest to buy that meets both targets (within a thousandth per kg: the fewest kinds), else the nearest. Nothing is added where nothing is needed.',
  inputs: [
    ...recipe,
    positive('yield_value_pa', 'Pa', 'present Casson yield value'),
    positive('plastic_viscosity_pa_s', 'Pa·s', 'present Casson plastic viscosity'),
    positive('target_yield_pa', 'Pa', 'wanted yield value'),
    positive('target_plastic_pa_s', 'Pa·s', 'wanted plastic viscosity'),
    share('yield_tolerance', 'relative half-width that counts as met', { default: 0.05 }),
    share('plastic_tolerance', 'relative half-width that counts as met', { default: 0.1 }),
    nonNegative('cocoa_butter_price_kg', '1/kg', 'price of cocoa butter'),
    nonNegative('lecithin_price_kg', '1/kg', 'price of lecithin'),
    nonNegative('pgpr_price_kg', '1/kg', 'price of E476'),
    nonNegative('chocolate_price_kg', '1/kg', 'value of the chocolate that is displaced'),
    share('most_cocoa_butter', 'largest addition of cocoa butter', { default: 0.03, possible: [0, 0.1] }),
    share('most_lecithin', 'largest lecithin in the end', { default: 0.005, possible: [0, 0.02] }),
    share('most_pgpr', 'largest E476 in the end; never above the legal limit', { default: 0.005, possible: [0, 0.02] }),
    ...ladder,
  ],
  outputs: [
    { key: 'add_cocoa_butter', unit: 'kg/kg', meaning: 'to add per kg of present chocolate' },
    { key: 'add_lecithin', unit: 'kg/kg', meaning: 'to add' },
    { key: 'add_pgpr', unit: 'kg/kg', meaning: 'to add' },
    { key: 'new_yield_value_pa', unit: 'Pa', meaning: 'yield value expected' },
    { key: 'new_plastic_viscosity_pa_s', unit: 'Pa·s', meaning: 'plastic viscosity expected' },
    { key: 'bought_cost_kg', unit: '1/kg', meaning: 'price of what is added, per kg' },
    { key: 'extra_cost_kg', unit: '1/kg', meaning: 'the same less the chocolate it displaces, per kg of corrected chocolate' },
    { key: 'meets_target', unit: '-', meaning: 'whether both targets are met' },
  ],
  sources: ['chocolate-flow-trends', 'krieger-dougherty-1959', 'eu-1333-2008'],
  standing: 'memory',
  run: (x) => {
    const c = cheapestCorrection(
      {
        recipe: { fat: x.fat, lecithin: x.lecithin, pgpr: x.pgpr, moisture: x.moisture, d90: x.d90_um },
        yieldValue: x.yield_value_pa,
        plasticViscosity: x.plastic_viscosity_pa_s,
        targetYield: x.target_yield_pa,
        targetPlastic: x.target_plastic_pa_s,
        yieldTolerance: x.yield_tolerance,
        plasticTolerance: x.plastic_tolerance,
        price: {
          cocoaButter: x.cocoa_butter_price_kg,
          lecithin: x.lecithin_price_kg,
          pgpr: x.pgpr_price_kg,
          chocolate: x.chocolate_price_kg,
        },
        most: { cocoaButter: x.most_cocoa_butter, lecithin: x.most_lecithin, pgpr: x.most_pgpr },
      },
      effectsFrom(x),
    );
    const band = (base: number, f: { value: number; low: number; high: number }) => ({
      value: base * f.value,
      low: base * f.low,
      high: base * f.high,
    });
    return {
      add_cocoa_butter: c.cocoaButter,
      add_lecithin: c.lecithin,
      add_pgpr: c.pgpr,
      new_yield_value_pa: band(x.yield_value_pa, c.yieldFactor),
      new_plastic_viscosity_pa_s: band(x.plastic_viscosity_pa_s, c.plasticFactor),
      bought_cost_kg: c.bought,
      extra_cost_kg: c.cost,
      meets_target: { value: c.meets },
    };
  },
  remarks: (x) => [
    ...(x.pgpr > pgprLimit
      ? [{ code: 'E476_OVER_LIMIT', message: `E476 is ${(x.pgpr * 100).toFixed(2)} %, above 0.5 % (EU 1333/2008)` }]
      : []),
    {
      code: 'CHECK_THE_NAME',
      message: 'added butter dilutes milk solids and non-fat cocoa: run law.chocolate_names on the corrected chocolate',
    },
  ],
});
