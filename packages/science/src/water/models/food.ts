import { at, composition, type CompositionKey } from '../../composition.js';
import { saturationTemperature } from '../../core/saturation.js';
import { BadInput } from '../../errors.js';
import { defineModel } from '../../model.js';
import type { InputSpec } from '../../model.js';
import { boilingPressures } from '../boiling.js';
import { boilingPointOf, equilibriumMoisture, waterActivityOf } from '../food.js';
import { glucoseSyrup } from '../glucoseSyrup.js';

const mass = { unit: 'kg', possible: [0, 1e9], default: 0 } as const;
const water = { key: 'water', unit: 'kg', meaning: 'water', possible: [0, 1e9] } as const;
const dry = [
  { ...mass, key: 'sucrose', meaning: 'sucrose' },
  { ...mass, key: 'glucose', meaning: 'glucose' },
  { ...mass, key: 'fructose', meaning: 'fructose' },
  { ...mass, key: 'maltose', meaning: 'maltose' },
  { ...mass, key: 'lactose', meaning: 'lactose' },
  {
    ...mass,
    key: 'higher_saccharides',
    meaning: 'chains of three glucose units and more, as long as in a glucose syrup of that dextrose equivalent',
  },
  { ...mass, key: 'glucose_syrup_solids', meaning: 'dry substance of a glucose syrup' },
  { key: 'dextrose_equivalent', unit: '1', meaning: 'of the glucose syrup', possible: [3, 100], fitted: [20, 70], default: 42 },
  { ...mass, key: 'polyols', meaning: 'polyols, as sorbitol' },
  { ...mass, key: 'salt', meaning: 'sodium chloride' },
  { ...mass, key: 'ash', meaning: 'milk salts' },
  { ...mass, key: 'organic_acids', meaning: 'organic acids, as citric' },
  { ...mass, key: 'fat', meaning: 'fat of any kind: holds no water' },
  { ...mass, key: 'milk_protein', meaning: 'casein and whey protein' },
  { ...mass, key: 'egg_protein', meaning: 'egg white protein' },
  { ...mass, key: 'nut_protein', meaning: 'nut protein' },
  { ...mass, key: 'cereal_protein', meaning: 'cereal protein' },
  { ...mass, key: 'starch', meaning: 'starch' },
  { ...mass, key: 'fibre', meaning: 'fibre' },
  { ...mass, key: 'other', meaning: 'other dry matter that holds no water' },
] as const satisfies readonly InputSpec[];
const crystalline = {
  key: 'crystalline_sucrose',
  unit: '1',
  meaning: 'share of the sucrose that is crystal and holds no water',
  possible: [0, 1],
  default: 0,
} as const;
const temperature = {
  key: 'temperature_c',
  unit: '°C',
  meaning: 'temperature',
  possible: [-20, 150],
  fitted: [5, 60],
  default: 25,
} as const;

type Dry = { readonly [K in (typeof dry)[number]['key']]: number };

/** Masses to a composition that sums to 1. */
function foodOf(x: Dry & { readonly water?: number }) {
  const spectrum = glucoseSyrup(1, x.dextrose_equivalent);
  const share = spectrum.higher_saccharides!;
  const chains = x.higher_saccharides + x.glucose_syrup_solids * share;
  const masses: Partial<Record<CompositionKey, number>> = {
    water: x.water ?? 0,
    sucrose: x.sucrose,
    glucose: x.glucose + x.glucose_syrup_solids * spectrum.glucose!,
    fructose: x.fructose,
    maltose: x.maltose + x.glucose_syrup_solids * spectrum.maltose!,
    lactose: x.lactose,
    higher_saccharides: chains,
    polyols: x.polyols,
    salt: x.salt,
    ash: x.ash,
    organic_acids: x.organic_acids,
    vegetable_fat: x.fat,
    milk_protein: x.milk_protein,
    egg_protein: x.egg_protein,
    nut_protein: x.nut_protein,
    cereal_protein: x.cereal_protein,
    starch: x.starch,
    fibre: x.fibre,
    other: x.other,
  };
  const total = Object.values(masses).reduce((sum, value) => sum + value, 0);
  if (total === 0) throw new BadInput('every mass is 0; give the water and the dry matter');
  const parts = Object.fromEntries(Object.entries(masses).map(([key, value]) => [key, value / total]));
  return composition({ ...parts, higher_saccharides_mol: share > 0 ? ((chains / total) * spectrum.higher_saccharides_mol!) / share : 0 });
}

const sources = ['zsr', 'starzak-peacock-1997', 'norrish-1966', 'bull-1944', 'gab'] as const;
const spreadOf = (aw: number): number => 0.005 + 0.08 * (1 - aw);

export const foodActivityModel = defineModel({
  id: 'food.water_activity',
  title: 'Water activity of a food',
  about:
    'Sugars and salts hold water as a solution, proteins, starch and fibre by sorption (GAB), all at one activity; fat and crystals hold none. Nougat, ' +
    'caramel, milk crumb, filling.',
  inputs: [water, ...dry, crystalline, temperature],
  outputs: [
    { key: 'water_activity', unit: '1', meaning: 'vapour pressure over the food by that of water' },
    { key: 'moisture', unit: '1', meaning: 'water, mass fraction of the whole, fat included' },
  ],
  sources: [...sources],
  standing: 'memory',
  run: (x) => {
    const food = foodOf(x);
    const value = waterActivityOf(food, x.temperature_c, x.crystalline_sucrose);
    const spread = spreadOf(value);
    return { water_activity: { value, low: Math.max(0, value - spread), high: Math.min(1, value + spread) }, moisture: food[at.water]! };
  },
});

export const foodMoistureModel = defineModel({
  id: 'food.equilibrium_moisture',
  title: 'Moisture of a food in equilibrium with a water activity',
  about: 'The inverse of food.water_activity: what the dry matter takes up or keeps in air of that relative humidity.',
  inputs: [
    {
      key: 'water_activity',
      unit: '1',
      meaning: 'water activity, or relative humidity as a fraction',
      possible: [0.01, 0.995],
      fitted: [0.1, 0.9],
    },
    ...dry,
    crystalline,
    temperature,
  ],
  outputs: [
    { key: 'moisture', unit: '1', meaning: 'water, mass fraction of the whole, fat included' },
    { key: 'moisture_dry_basis', unit: 'kg/kg', meaning: 'water per kg of dry matter' },
  ],
  sources: [...sources],
  standing: 'memory',
  run: (x) => {
    const food = foodOf(x);
    const moistAt = (aw: number): number =>
      equilibriumMoisture(food, Math.min(0.995, Math.max(0.005, aw)), x.temperature_c, x.crystalline_sucrose);
    const value = moistAt(x.water_activity);
    const spread = spreadOf(x.water_activity);
    return {
      moisture: { value, low: moistAt(x.water_activity - spread), high: moistAt(x.water_activity + spread) },
      moisture_dry_basis: value / (1 - value),
    };
  },
});

export const foodBoilingModel = defineModel({
  id: 'food.boiling_point',
  title: 'Boiling point of a food with the water its proteins and starch hold',
  about: 'As syrup.boiling_point, with the water held by protein, starch and fibre counted in. Sugars taken as dissolved.',
  inputs: [
    water,
    ...dry,
    { key: 'pressure_pa', unit: 'Pa', meaning: 'absolute pressure above it', possible: boilingPressures, default: 101_325 },
  ],
  outputs: [
    { key: 'boiling_point_c', unit: '°C', meaning: 'boiling point' },
    { key: 'elevation_k', unit: 'K', meaning: 'boiling point less that of water at the same pressure' },
  ],
  sources: [...sources, 'iapws-if97'],
  standing: 'memory',
  run: (x) => {
    const t = boilingPointOf(foodOf(x), x.pressure_pa);
    const rise = t - saturationTemperature(x.pressure_pa);
    const spread = 0.6 + 0.2 * rise;
    return {
      boiling_point_c: { value: t, low: t - spread, high: t + spread },
      elevation_k: { value: rise, low: rise - spread, high: rise + spread },
    };
  },
});
