import { defineModel, type Model } from '../../model.js';
import { cocoaDiffusivity, peanutRoastEnd } from '../data/roasting.js';
import { cocoaBed, endMoisture, peanutBed, roastBed, type RoastProduct } from './bed.js';
import { activationEnergy, beanDiffusivity, cocoaAcid, cocoaMoisture, peanutMoisture, slabDryingTime, wetBasis } from './drying.js';
import { energyPerKilogram, roastDrum } from './drum.js';
import { cooling, degree, roastLog } from './curve-models.js';
import { airBalance, heatDemand } from './heat.js';

export const cocoaRoastMoisture = defineModel({
  id: 'cocoa_roast.moisture',
  title: 'Moisture and acid of cocoa beans after roasting',
  about: 'Page: X = X0 exp(-K t^n), K Arrhenius; titratable acid falls by first order to a level.',
  inputs: [
    { key: 'temperature_c', unit: '°C', meaning: 'Of the roaster', possible: [0, 400], fitted: [110, 170] },
    { key: 'time_min', unit: 'min', meaning: 'In the roaster', possible: [0, 1e6], fitted: [5, 65] },
    {
      key: 'raw_moisture_dry',
      unit: 'kg/kg',
      meaning: 'Water per dry matter at the start',
      possible: [0, 1],
      fitted: [0.03, 0.06],
      default: 0.044,
    },
    { key: 'raw_acid_ml_g', unit: 'mL/g', meaning: 'Titratable acid at the start', possible: [0, 50], default: 6.24 },
  ],
  outputs: [
    { key: 'moisture_dry', unit: 'kg/kg', meaning: 'Water per dry matter' },
    { key: 'moisture', unit: '1', meaning: 'Wet basis' },
    { key: 'acid_ml_g', unit: 'mL/g', meaning: 'Titratable acid, mL NaOH per g' },
  ],
  sources: ['garcia-alamilla-2017'],
  standing: 'secondhand',
  run: (x) => {
    const dry = cocoaMoisture(x.raw_moisture_dry, x.temperature_c, x.time_min);
    return {
      moisture_dry: { value: dry, low: Math.max(0, dry - 0.012), high: dry + 0.012 },
      moisture: { value: wetBasis(dry), low: wetBasis(Math.max(0, dry - 0.012)), high: wetBasis(dry + 0.012) },
      acid_ml_g: {
        value: cocoaAcid(x.time_min, x.raw_acid_ml_g),
        low: cocoaAcid(x.time_min, x.raw_acid_ml_g) - 0.5,
        high: cocoaAcid(x.time_min, x.raw_acid_ml_g) + 0.5,
      },
    };
  },
  remarks: () => [
    {
      code: 'CENTRE_RUNS_MISSED',
      message: 'The five centre runs of the source (140 °C, 35 min) lie 0.008 below or 0.011 above this curve; fit your own roaster.',
    },
  ],
});

export const peanutRoastMoisture = defineModel({
  id: 'peanut_roast.moisture',
  title: 'Moisture of peanuts during roasting',
  about:
    'First order above and below the critical moisture of 2.41 % (dry basis). The roaster temperature of the source is not known: 163 °C is assumed.',
  inputs: [
    {
      key: 'raw_moisture_dry',
      unit: 'kg/kg',
      meaning: 'Water per dry matter at the start',
      possible: [0, 1],
      fitted: [0.05, 0.1],
      default: 0.065,
    },
    { key: 'time_min', unit: 'min', meaning: 'In the roaster', possible: [0, 1e6], fitted: [0, 24] },
    { key: 'temperature_c', unit: '°C', meaning: 'Of the roaster', possible: [0, 400], fitted: [155, 170], default: 163 },
  ],
  outputs: [
    { key: 'moisture_dry', unit: 'kg/kg', meaning: 'Water per dry matter' },
    { key: 'moisture', unit: '1', meaning: 'Wet basis' },
    { key: 'usual_end_moisture_low', unit: '1', meaning: 'Measured at Hunter L 49 to 51, 163 °C' },
    { key: 'usual_end_moisture_high', unit: '1', meaning: 'Measured at Hunter L 49 to 51, 163 °C' },
  ],
  sources: ['weissburg-2024', 'sanders-1998', 'common-practice'],
  standing: 'found',
  run: (x) => {
    const dry = peanutMoisture(x.raw_moisture_dry, x.temperature_c, x.time_min);
    // Roaster temperature of the source unknown and three points only: a factor of 1.6 each way (ours).
    const around = (value: number) => ({ value, low: value / 1.6, high: Math.min(wetBasis(x.raw_moisture_dry), 1.6 * value) });
    return {
      moisture_dry: { ...around(dry), high: Math.min(x.raw_moisture_dry, 1.6 * dry) },
      moisture: around(wetBasis(dry)),
      usual_end_moisture_low: peanutRoastEnd.values.moisture[0],
      usual_end_moisture_high: peanutRoastEnd.values.moisture[1],
    };
  },
});

export const cocoaDiffusion = defineModel({
  id: 'cocoa_drying.diffusivity',
  title: 'Moisture diffusivity of cocoa beans, and drying time of a slab',
  about: 'Arrhenius through the printed end points; slab time by the first term of Fick’s series.',
  inputs: [{ key: 'temperature_c', unit: '°C', meaning: 'Of the bean', possible: [0, 200], fitted: [55, 81] }],
  outputs: [
    { key: 'diffusivity_m2_s', unit: 'm²/s', meaning: 'Effective; other laboratories print values ten times lower' },
    { key: 'activation_energy_kj_mol', unit: 'kJ/mol', meaning: 'Through the end points' },
  ],
  sources: ['ndukwu-2010', 'hii-2009'],
  standing: 'found',
  run: (x) => {
    const d = beanDiffusivity(x.temperature_c);
    const { temperatures: t, diffusivity } = cocoaDiffusivity.values;
    return {
      diffusivity_m2_s: { value: d, low: d / 12, high: d * 1.25 },
      activation_energy_kj_mol: activationEnergy(t[0], diffusivity[0], t[1], diffusivity[1]) / 1000,
    };
  },
});

export const slabDrying = defineModel({
  id: 'drying.slab_time',
  title: 'Drying time of a slab by diffusion, both faces',
  about: 't = 4 L²/(π² D) ln(8 X1/(π² X)), moistures above equilibrium, L half the thickness.',
  inputs: [
    { key: 'diffusivity_m2_s', unit: 'm²/s', meaning: 'Moisture diffusivity', possible: [1e-16, 1e-4] },
    { key: 'thickness_mm', unit: 'mm', meaning: 'Whole thickness', possible: [0.001, 10000] },
    { key: 'moisture_start', unit: 'kg/kg', meaning: 'Dry basis', possible: [0, 10] },
    { key: 'moisture_end', unit: 'kg/kg', meaning: 'Dry basis', possible: [0, 10] },
    { key: 'moisture_equilibrium', unit: 'kg/kg', meaning: 'Dry basis', possible: [0, 10], default: 0 },
  ],
  outputs: [{ key: 'time_h', unit: 'h', meaning: 'Drying time' }],
  sources: ['geankoplis'],
  standing: 'secondhand',
  run: (x) => ({
    time_h: slabDryingTime(x.moisture_start, x.moisture_end, x.moisture_equilibrium, x.thickness_mm / 2000, x.diffusivity_m2_s) / 3600,
  }),
});

export const heatDemandModel = defineModel({
  id: 'roasting.heat_demand',
  title: 'Heat, water and energy of a roast',
  about:
    'Solids to the end temperature, all water to 100 °C, the evaporated part leaves there, the rest to the end. Energy by an efficiency.',
  inputs: [
    { key: 'mass_kg', unit: 'kg', meaning: 'Charge, wet', possible: [0, 1e9], default: 1000 },
    { key: 'moisture', unit: '1', meaning: 'In, wet basis', possible: [0, 0.99] },
    { key: 'moisture_out', unit: '1', meaning: 'Out, wet basis', possible: [0, 0.99] },
    { key: 'temperature_in_c', unit: '°C', meaning: 'Of the charge', possible: [-40, 100], default: 25 },
    { key: 'temperature_out_c', unit: '°C', meaning: 'Of the product', possible: [100, 300] },
    {
      key: 'dry_heat_capacity_j_kg_k',
      unit: 'J/(kg K)',
      meaning: 'Of dry matter',
      possible: [500, 4200],
      fitted: [1700, 2300],
      default: 1900,
    },
    {
      key: 'efficiency',
      unit: '1',
      meaning: 'Heat into the product over heat of the fuel',
      possible: [0.01, 1],
      fitted: [0.35, 0.6],
      default: 0.5,
    },
  ],
  outputs: [
    { key: 'heat_mj', unit: 'MJ', meaning: 'Into the product' },
    { key: 'evaporated_kg', unit: 'kg', meaning: 'Water' },
    { key: 'product_kg', unit: 'kg', meaning: 'Roasted product' },
    { key: 'energy_kwh_per_kg', unit: 'kWh/kg', meaning: 'Fuel energy per kg of roasted product' },
  ],
  sources: ['common-practice'],
  standing: 'memory',
  run: (x) => {
    const d = heatDemand({
      mass: x.mass_kg,
      moistureIn: x.moisture,
      moistureOut: x.moisture_out,
      temperatureIn: x.temperature_in_c,
      temperatureOut: x.temperature_out_c,
      dryHeatCapacity: x.dry_heat_capacity_j_kg_k,
    });
    // Heat capacities of beans and kernels spread by 10 %, the bound water needs a few percent more than free water.
    const heat = d.heat / 1e6;
    const energy = d.product > 0 ? energyPerKilogram(d.heat, d.product, x.efficiency) : undefined;
    return {
      heat_mj: { value: heat, low: 0.92 * heat, high: 1.1 * heat },
      evaporated_kg: d.evaporated,
      product_kg: d.product,
      energy_kwh_per_kg: energy === undefined ? { value: null } : { value: energy, low: 0.92 * energy, high: 1.1 * energy },
    };
  },
});

export const beltRoaster = defineModel({
  id: 'roasting.belt_bed',
  title: 'Bed of a belt roaster: temperatures through the depth, moisture, energy',
  about:
    'Air quasi-steady through twelve layers (Wakao), pieces lumped, drying with its heat of evaporation. The layer the air leaves is the coldest.',
  inputs: [
    { key: 'product', unit: '', meaning: 'Kinetics and sizes', kind: 'choice', choices: ['peanut', 'cocoa bean'], default: 'peanut' },
    { key: 'air_temperature_c', unit: '°C', meaning: 'Entering the bed', possible: [0, 400], fitted: [110, 180] },
    { key: 'air_velocity_m_s', unit: 'm/s', meaning: 'Superficial', possible: [0.01, 20], fitted: [0.3, 3], default: 1.3 },
    { key: 'bed_depth_mm', unit: 'mm', meaning: 'Depth', possible: [1, 2000], fitted: [20, 150], default: 75 },
    { key: 'residence_min', unit: 'min', meaning: 'On the belt', possible: [0.1, 600], fitted: [5, 60], default: 16 },
    { key: 'moisture', unit: '1', meaning: 'Raw, wet basis', possible: [0, 0.5], fitted: [0.04, 0.1], default: 0.06 },
    { key: 'start_temperature_c', unit: '°C', meaning: 'Of the product', possible: [-20, 100], default: 20 },
  ],
  outputs: [
    { key: 'time_min', unit: 'min', meaning: 'Times of the series' },
    { key: 'coldest_temperature_series_c', unit: '°C', meaning: 'Layer the air leaves' },
    { key: 'coldest_temperature_c', unit: '°C', meaning: 'That layer at the end' },
    { key: 'mean_temperature_c', unit: '°C', meaning: 'Mean of the bed at the end' },
    { key: 'air_out_temperature_c', unit: '°C', meaning: 'Leaving air at the end' },
    { key: 'moisture_out', unit: '1', meaning: 'Wet basis, mean of the bed' },
    { key: 'heat_kj_per_kg', unit: 'kJ/kg', meaning: 'Given up by the air, per kg fed' },
    { key: 'time_coldest_near_air_min', unit: 'min', meaning: 'Until the coldest layer is within 10 K of the air' },
  ],
  sources: ['wakao-1979', 'weissburg-2024', 'garcia-alamilla-2017'],
  standing: 'memory',
  run: (x) => {
    const base = x.product === 'peanut' ? peanutBed : cocoaBed;
    const h = roastBed({
      ...base,
      product: x.product as RoastProduct,
      air: x.air_temperature_c,
      velocity: x.air_velocity_m_s,
      depth: x.bed_depth_mm / 1000,
      residence: x.residence_min * 60,
      moisture: x.moisture,
      start: x.start_temperature_c,
    });
    const near = h.last.findIndex((t) => t >= x.air_temperature_c - 10);
    return {
      time_min: { value: Array.from(h.time, (s) => s / 60) },
      coldest_temperature_series_c: { value: Array.from(h.last) },
      coldest_temperature_c: h.last.at(-1)!,
      mean_temperature_c: h.mean.at(-1)!,
      air_out_temperature_c: h.airOut.at(-1)!,
      moisture_out: endMoisture(h),
      heat_kj_per_kg: h.heat / 1000,
      time_coldest_near_air_min: { value: near < 0 ? null : h.time[near]! / 60 },
    };
  },
  remarks: () => [
    {
      code: 'NO_KILL_STEP_CREDIT',
      message: 'A computed bed temperature proves no kill step: an even bed and an even air flow are assumed, and no roaster has them.',
    },
  ],
});

export const drumRoaster = defineModel({
  id: 'roasting.drum',
  title: 'Drum roaster: temperature, moisture and energy of a charge',
  about:
    'A mixed charge heated by transfer × difference, drying by the kinetics of the product. The transfer is fitted to the plant’s log.',
  inputs: [
    { key: 'product', unit: '', meaning: 'Kinetics', kind: 'choice', choices: ['peanut', 'cocoa bean'], default: 'cocoa bean' },
    { key: 'mass_kg', unit: 'kg', meaning: 'Charge', possible: [1e-6, 1e6], default: 400 },
    { key: 'moisture', unit: '1', meaning: 'Raw, wet basis', possible: [0, 0.5], default: 0.07 },
    { key: 'start_temperature_c', unit: '°C', meaning: 'Of the charge', possible: [-20, 100], default: 25 },
    { key: 'drum_temperature_c', unit: '°C', meaning: 'Of drum and air', possible: [20, 500] },
    { key: 'heat_transfer_w_k', unit: 'W/K', meaning: 'Drum and air to charge', possible: [0, 1e7], default: 1000 },
    { key: 'time_min', unit: 'min', meaning: 'In the drum', possible: [0.1, 1440], default: 30 },
    { key: 'efficiency', unit: '1', meaning: 'Heat into the product over heat of the fuel', possible: [0.01, 1], default: 0.5 },
  ],
  outputs: [
    { key: 'temperature_c', unit: '°C', meaning: 'Of the charge at the end' },
    { key: 'moisture_out', unit: '1', meaning: 'Wet basis' },
    { key: 'product_kg', unit: 'kg', meaning: 'Out' },
    { key: 'evaporated_kg', unit: 'kg', meaning: 'Water' },
    { key: 'energy_kwh_per_kg', unit: 'kWh/kg', meaning: 'Fuel per kg of product' },
    { key: 'time_series_min', unit: 'min', meaning: 'Times of the curve' },
    { key: 'temperature_series_c', unit: '°C', meaning: 'Curve' },
  ],
  sources: ['garcia-alamilla-2017', 'weissburg-2024', 'common-practice'],
  standing: 'memory',
  run: (x) => {
    const r = roastDrum({
      product: x.product as RoastProduct,
      mass: x.mass_kg,
      moisture: x.moisture,
      start: x.start_temperature_c,
      drum: x.drum_temperature_c,
      transfer: x.heat_transfer_w_k,
      time: x.time_min * 60,
      dryHeatCapacity: 1900,
    });
    return {
      temperature_c: r.temperature,
      moisture_out: r.moisture,
      product_kg: r.product,
      evaporated_kg: r.evaporated,
      energy_kwh_per_kg: energyPerKilogram(Math.max(0, r.heat), r.product, x.efficiency),
      time_series_min: { value: r.curve.time.map((s) => s / 60) },
      temperature_series_c: { value: r.curve.temperature },
    };
  },
});

export const airBalanceModel = defineModel({
  id: 'roasting.air_balance',
  title: 'Air of a continuous roaster: outlet temperature and efficiency',
  about: 'Energy balance: what the product and the walls take, the air gives up.',
  inputs: [
    { key: 'flow_kg_h', unit: 'kg/h', meaning: 'Product fed', possible: [0, 1e6] },
    { key: 'moisture', unit: '1', meaning: 'In, wet basis', possible: [0, 0.99], default: 0.06 },
    { key: 'moisture_out', unit: '1', meaning: 'Out, wet basis', possible: [0, 0.99], default: 0.015 },
    { key: 'product_temperature_c', unit: '°C', meaning: 'Out', possible: [100, 300], default: 150 },
    { key: 'air_flow_kg_h', unit: 'kg/h', meaning: 'Dry air through the bed', possible: [1e-3, 1e9] },
    { key: 'air_temperature_c', unit: '°C', meaning: 'Entering', possible: [0, 400] },
    { key: 'ambient_temperature_c', unit: '°C', meaning: 'Of product fed and fresh air', possible: [-40, 60], default: 20 },
    { key: 'wall_loss_w', unit: 'W', meaning: 'Through walls', possible: [0, 1e9], default: 0 },
  ],
  outputs: [
    { key: 'air_out_temperature_c', unit: '°C', meaning: 'Leaving' },
    { key: 'efficiency', unit: '1', meaning: 'Heat taken over heat in the air' },
    { key: 'power_kw', unit: 'kW', meaning: 'Into the product' },
  ],
  sources: ['common-practice'],
  standing: 'memory',
  run: (x) => {
    const d = heatDemand({
      mass: x.flow_kg_h / 3600,
      moistureIn: x.moisture,
      moistureOut: x.moisture_out,
      temperatureIn: x.ambient_temperature_c,
      temperatureOut: x.product_temperature_c,
    });
    const balance = airBalance(d.heat + x.wall_loss_w, x.air_flow_kg_h / 3600, x.air_temperature_c, x.ambient_temperature_c);
    return { air_out_temperature_c: balance.outlet, efficiency: balance.efficiency, power_kw: d.heat / 1000 };
  },
});

export const roastingModels: readonly Model[] = [
  cocoaRoastMoisture,
  peanutRoastMoisture,
  cocoaDiffusion,
  slabDrying,
  heatDemandModel,
  beltRoaster,
  drumRoaster,
  airBalanceModel,
  cooling,
  degree,
  roastLog,
];
