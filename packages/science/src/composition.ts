/**
 * What a food is made of, as one vector: constituents that sum to 1, then properties that mix by mass as the constituents do.
 * All are mass fractions of the whole (water included) unless said otherwise.
 */
export const constituents = [
  'water',
  'sucrose',
  'glucose',
  'fructose',
  'maltose',
  'higher_saccharides',
  'lactose',
  'polyols',
  'starch',
  'fibre',
  'milk_fat',
  'cocoa_butter',
  'vegetable_fat',
  'nut_oil',
  'emulsifier',
  'milk_protein',
  'egg_protein',
  'nut_protein',
  'cocoa_protein',
  'cereal_protein',
  'organic_acids',
  'salt',
  'ash',
  'other',
] as const;
export type Constituent = (typeof constituents)[number];

/** saturates, sodium: mass per mass. Higher saccharides (DP 3 and more) as mol per kg of the whole, so that their mean molar mass mixes rightly. */
export const mixingProperties = ['saturates', 'sodium', 'nonfat_cocoa_solids', 'nonfat_milk_solids', 'higher_saccharides_mol'] as const;
export type MixingProperty = (typeof mixingProperties)[number];

export const compositionKeys = [...constituents, ...mixingProperties] as const;
export type CompositionKey = (typeof compositionKeys)[number];

/** Place of each key in the vector. */
export const at = Object.fromEntries(compositionKeys.map((key, index) => [key, index])) as Readonly<Record<CompositionKey, number>>;

/** Length 29: 24 constituents that sum to 1, then 5 mixing properties. */
export type Composition = Float64Array;

export const sugars = ['sucrose', 'glucose', 'fructose', 'maltose', 'lactose'] as const satisfies readonly Constituent[];
export const fats = ['milk_fat', 'cocoa_butter', 'vegetable_fat', 'nut_oil', 'emulsifier'] as const satisfies readonly Constituent[];
export const proteins = [
  'milk_protein',
  'egg_protein',
  'nut_protein',
  'cocoa_protein',
  'cereal_protein',
] as const satisfies readonly Constituent[];

/** A composition from named parts; what is left out is 0. Does not normalise. */
export function composition(parts: Partial<Record<CompositionKey, number>>): Composition {
  const vector = new Float64Array(compositionKeys.length);
  for (const key of compositionKeys) vector[at[key]] = parts[key] ?? 0;
  return vector;
}

/** Sum of some constituents. */
export function share(of: Composition, keys: readonly CompositionKey[]): number {
  let sum = 0;
  for (const key of keys) sum += of[at[key]]!;
  return sum;
}

/** Mass-weighted mean of compositions: masses in any one unit, at least one above 0. */
export function mix(parts: readonly (readonly [mass: number, of: Composition])[]): Composition {
  const vector = new Float64Array(compositionKeys.length);
  let total = 0;
  for (const [mass] of parts) total += mass;
  for (const [mass, of] of parts) {
    const weight = mass / total;
    for (let i = 0; i < vector.length; i++) vector[i]! += weight * of[i]!;
  }
  return vector;
}

/** The same dry matter at another water content (wet basis, 0 to below 1). */
export function atMoisture(of: Composition, moisture: number): Composition {
  const factor = (1 - moisture) / (1 - of[at.water]!);
  const vector = of.map((value) => value * factor);
  vector[at.water] = moisture;
  return vector;
}
