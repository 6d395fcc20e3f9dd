import { constituents, type CompositionKey } from '../../composition.js';
import { defineModel } from '../../model.js';
import { invertSyrup, typicalIngredient, typicalIngredientNames, withMoisture, type TypicalIngredient } from '../ingredients.js';
import { calibrationSalts, saltWaterActivity, type CalibrationSalt } from '../salts.js';

const parts = constituents.map((key) => ({ key, unit: '1', meaning: `${key.replaceAll('_', ' ')}, mass fraction of the whole` }));
const filled = (of: Partial<Record<CompositionKey, number>>) => Object.fromEntries(constituents.map((key) => [key, of[key] ?? 0]));

export const ingredientModel = defineModel({
  id: 'sweet_ingredient.composition',
  title: 'Typical composition of a sweet or milk ingredient',
  about:
    'Typical values to start from; a plant enters its own from the specification. At another moisture the dry matter keeps its make-up.',
  inputs: [
    { key: 'ingredient', unit: '1', kind: 'choice', meaning: 'which', choices: typicalIngredientNames },
    { key: 'moisture', unit: '1', meaning: 'water, mass fraction; 0 keeps the typical one', possible: [0, 0.95], default: 0 },
  ],
  outputs: parts,
  sources: ['food-composition-tables'],
  standing: 'memory',
  run: ({ ingredient, moisture }) => {
    const typical = typicalIngredient(ingredient as TypicalIngredient);
    return filled(moisture > 0 ? withMoisture(typical, moisture) : typical);
  },
});

export const invertSyrupModel = defineModel({
  id: 'invert_syrup.composition',
  title: 'Composition of an invert syrup',
  about: 'Sucrose of which a share has been split; 100 g of sucrose give 105.3 g of invert sugar.',
  inputs: [
    { key: 'solids', unit: '1', meaning: 'dry substance, mass fraction', possible: [0, 1], default: 0.72 },
    { key: 'degree_of_inversion', unit: '1', meaning: 'share of the original sucrose that is split', possible: [0, 1], default: 1 },
  ],
  outputs: parts,
  sources: ['iupac-atomic-weights'],
  standing: 'memory',
  run: ({ solids, degree_of_inversion }) => filled(invertSyrup(solids, degree_of_inversion)),
});

export const saltModel = defineModel({
  id: 'calibration_salt.water_activity',
  title: 'Water activity over a saturated salt solution',
  about: 'Polynomials of the fixed points of humidity: to verify a water activity meter.',
  inputs: [
    { key: 'salt', unit: '1', kind: 'choice', meaning: 'which salt', choices: calibrationSalts },
    { key: 'temperature_c', unit: '°C', meaning: 'temperature', possible: [0, 80], fitted: [5, 50], default: 25 },
  ],
  outputs: [{ key: 'water_activity', unit: '1', meaning: 'water activity' }],
  sources: ['greenspan-1977'],
  standing: 'found',
  run: ({ salt, temperature_c }) => {
    const value = saltWaterActivity(salt as CalibrationSalt, temperature_c);
    return { water_activity: { value, low: value - 0.005, high: value + 0.005 } };
  },
});
