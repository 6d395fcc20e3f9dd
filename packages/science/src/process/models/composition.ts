import { composition, type Composition } from '../../composition.js';
import { BadInput } from '../../errors.js';
import type { ModelFinding } from '../../model.js';
import { glucoseSyrup } from '../../water/glucoseSyrup.js';
import { fraction, massShare } from './inputs.js';

/** A confectionery mass by constituents: mass fractions, or masses in any one unit, scaled to 1. */
export const compositionInputs = [
  massShare('water', 'water', { default: 0 }),
  massShare('sucrose', 'sucrose, dissolved and crystal', { default: 0 }),
  massShare('glucose', 'glucose (dextrose)', { default: 0 }),
  massShare('fructose', 'fructose', { default: 0 }),
  massShare('maltose', 'maltose', { default: 0 }),
  massShare('glucose_syrup_solids', 'dry substance of a glucose syrup, spread by its dextrose equivalent', { default: 0 }),
  massShare('higher_saccharides', 'saccharides of three and more units, as long as in a syrup of that dextrose equivalent', { default: 0 }),
  {
    key: 'dextrose_equivalent',
    unit: '1',
    meaning: 'dextrose equivalent of the glucose syrup, per cent of dry substance',
    possible: [3, 100],
    fitted: [20, 70],
    default: 42,
  },
  massShare('lactose', 'lactose, anhydrous', { default: 0 }),
  massShare('polyols', 'polyols', { default: 0 }),
  massShare('starch', 'starch', { default: 0 }),
  massShare('fibre', 'fibre', { default: 0 }),
  massShare('fat', 'fat of every kind', { default: 0 }),
  massShare('protein', 'protein', { default: 0 }),
  massShare('salt', 'salt', { default: 0 }),
  massShare('ash', 'ash without salt', { default: 0 }),
  fraction('crystalline_sucrose_share', 'share of the sucrose that is crystal', { default: 0 }),
] as const;

export type CompositionInput = { readonly [K in (typeof compositionInputs)[number]['key']]: number };

const masses = [
  'water',
  'sucrose',
  'glucose',
  'fructose',
  'maltose',
  'glucose_syrup_solids',
  'higher_saccharides',
  'lactose',
  'polyols',
  'starch',
  'fibre',
  'fat',
  'protein',
  'salt',
  'ash',
] as const;

function total(x: CompositionInput): number {
  let sum = 0;
  for (const key of masses) sum += x[key];
  return sum;
}

/** The vector of the inputs, scaled to 1. @throws BadInput when everything is 0 */
export function compositionOf(x: CompositionInput): Composition {
  const sum = total(x);
  if (!(sum > 0)) throw new BadInput('every constituent is 0; give the mass of at least one');
  const spectrum = glucoseSyrup(1, x.dextrose_equivalent);
  const share = spectrum.higher_saccharides ?? 0;
  const chains = x.higher_saccharides + x.glucose_syrup_solids * share;
  return composition({
    water: x.water / sum,
    sucrose: x.sucrose / sum,
    glucose: (x.glucose + x.glucose_syrup_solids * (spectrum.glucose ?? 0)) / sum,
    fructose: x.fructose / sum,
    maltose: (x.maltose + x.glucose_syrup_solids * (spectrum.maltose ?? 0)) / sum,
    higher_saccharides: chains / sum,
    higher_saccharides_mol: share > 0 ? ((chains / sum) * spectrum.higher_saccharides_mol!) / share : 0,
    lactose: x.lactose / sum,
    polyols: x.polyols / sum,
    starch: x.starch / sum,
    fibre: x.fibre / sum,
    vegetable_fat: x.fat / sum,
    milk_protein: x.protein / sum,
    salt: x.salt / sum,
    ash: x.ash / sum,
  });
}

/** Tells when the constituents did not sum to 1. */
export function scaled(x: CompositionInput): ModelFinding[] {
  const sum = total(x);
  if (Math.abs(sum - 1) <= 0.005) return [];
  return [{ code: 'NORMALISED', message: `The constituents sum to ${sum.toFixed(4)}; they were scaled to 1` }];
}

export const stateOf = (x: CompositionInput) => ({ crystallineSucrose: x.crystalline_sucrose_share });
