import type { CompositionKey } from '../../composition.js';
import type { Table } from '../../sources.js';

type Typical = Omit<Table, 'values'> & { readonly values: Readonly<Record<string, Partial<Record<CompositionKey, number>>>> };

/** Typical compositions of sweet and milk ingredients, mass fractions of the whole; a plant enters its own from the specification. */
export const typicalIngredients = {
  source: 'food-composition-tables',
  standing: 'memory',
  note:
    'Typical values of food composition tables and dairy texts, rounded; honey by the usual survey (38 % fructose, 31 % glucose, 17 % water); higher ' +
    'saccharides counted as 1.6 mol per kg where they are few.',
  valid: {},
  values: {
    honey: {
      water: 0.172,
      fructose: 0.382,
      glucose: 0.313,
      maltose: 0.073,
      sucrose: 0.013,
      higher_saccharides: 0.015,
      higher_saccharides_mol: 0.024,
      organic_acids: 0.006,
      ash: 0.002,
      other: 0.024,
    },
    sweetened_condensed_whole_milk: { water: 0.27, milk_fat: 0.08, milk_protein: 0.076, lactose: 0.112, sucrose: 0.445, ash: 0.017 },
    sweetened_condensed_skim_milk: { water: 0.285, milk_fat: 0.003, milk_protein: 0.1, lactose: 0.145, sucrose: 0.445, ash: 0.022 },
    whole_milk: { water: 0.877, milk_fat: 0.036, milk_protein: 0.033, lactose: 0.047, ash: 0.007 },
    whole_milk_powder: { water: 0.03, milk_fat: 0.265, milk_protein: 0.26, lactose: 0.385, ash: 0.06 },
    skim_milk_powder: { water: 0.035, milk_fat: 0.008, milk_protein: 0.36, lactose: 0.517, ash: 0.08 },
    cream_35: { water: 0.59, milk_fat: 0.35, milk_protein: 0.023, lactose: 0.032, ash: 0.005 },
    butter: { water: 0.158, milk_fat: 0.825, milk_protein: 0.007, lactose: 0.008, ash: 0.002 },
    light_brown_sugar: { water: 0.015, sucrose: 0.935, glucose: 0.017, fructose: 0.017, ash: 0.008, other: 0.008 },
    dark_brown_sugar: { water: 0.025, sucrose: 0.895, glucose: 0.025, fructose: 0.025, ash: 0.016, other: 0.014 },
    fructose_syrup_42: {
      water: 0.29,
      fructose: 0.298,
      glucose: 0.376,
      maltose: 0.021,
      higher_saccharides: 0.015,
      higher_saccharides_mol: 0.024,
    },
    fructose_syrup_55: {
      water: 0.23,
      fructose: 0.424,
      glucose: 0.316,
      maltose: 0.018,
      higher_saccharides: 0.012,
      higher_saccharides_mol: 0.019,
    },
  },
} as const satisfies Typical;
