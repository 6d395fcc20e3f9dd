import { at, fats, proteins, share, sugars, type Composition } from '../composition.js';
import type { Table } from '../sources.js';

/** Energy of nutrients for the declaration, kJ/g and kcal/g: each from its own column, never one from the other. */
export const energyFactorsEu = {
  source: 'eu-1169-2011',
  standing: 'secondhand',
  note: 'Annex XIV, read in a French site that reprints the consolidated text of 13 March 2024. Carbohydrate without polyols.',
  valid: { amount: [0, 100] },
  values: {
    // kJ/g, kcal/g
    carbohydrate: [17, 4],
    polyols: [10, 2.4],
    protein: [17, 4],
    fat: [37, 9],
    salatrim: [25, 6],
    alcohol: [29, 7],
    organic_acids: [13, 3],
    fibre: [8, 2],
    erythritol: [0, 0],
  },
} as const satisfies Table;

/** Salt = sodium x 2.5: Regulation (EU) 1169/2011 Annex I 11. */
export const saltPerSodium = 2.5;
/** Protein = nitrogen x 6.25, of milk too: Regulation (EU) 1169/2011 Annex I 10. */
export const proteinPerNitrogen = 6.25;

/** Grams per 100 g, carbohydrate with polyols and without fibre. */
export interface EnergyAmounts {
  readonly fat: number;
  readonly carbohydrate: number;
  readonly protein: number;
  readonly polyols?: number;
  readonly fibre?: number;
  readonly organicAcids?: number;
  readonly alcohol?: number;
  readonly salatrim?: number;
  /** Part of the polyols that is erythritol. */
  readonly erythritol?: number;
}

/**
 * Energy by the EU factors, kJ and kcal per 100 g, each from its own factors.
 * @example energyEu({ fat: 24.3, carbohydrate: 58.9, protein: 9.1, fibre: 2.4 }) // { energyKj: 2074.3, energyKcal: 495.5 }
 */
export function energyEu(g: EnergyAmounts): { readonly energyKj: number; readonly energyKcal: number } {
  const f = energyFactorsEu.values;
  const { polyols = 0, erythritol = 0, fibre = 0, organicAcids = 0, alcohol = 0, salatrim = 0 } = g;
  const sum = (column: 0 | 1) =>
    f.fat[column] * (g.fat - salatrim) +
    f.salatrim[column] * salatrim +
    f.carbohydrate[column] * (g.carbohydrate - polyols) +
    f.polyols[column] * (polyols - erythritol) +
    f.protein[column] * g.protein +
    f.fibre[column] * fibre +
    f.organic_acids[column] * organicAcids +
    f.alcohol[column] * alcohol;
  return { energyKj: sum(0), energyKcal: sum(1) };
}

/** The declaration per 100 g: energy in kJ and kcal, the rest in g, unrounded. */
export interface Nutrition {
  readonly energyKj: number;
  readonly energyKcal: number;
  readonly fat: number;
  readonly saturates: number;
  /** With polyols, without fibre. */
  readonly carbohydrate: number;
  readonly sugars: number;
  readonly polyols: number;
  readonly fibre: number;
  readonly protein: number;
  readonly salt: number;
}

/**
 * Nutrition declaration of a composition, per 100 g and unrounded.
 * Fat is all lipids with emulsifier (phospholipids count, Annex I 2). Carbohydrate: sugars, higher saccharides, starch and polyols.
 * Salt is 2.5 times the property `sodium` alone: added salt must carry its sodium there (0.393 of its mass), or it would count twice.
 * Organic acids give energy; `ash`, `salt` and `other` give none. Polyols count as other than erythritol.
 */
export function nutritionPer100g(composition: Composition): Nutrition {
  const polyols = 100 * composition[at.polyols]!;
  const fat = 100 * share(composition, fats);
  const sugar = 100 * share(composition, sugars);
  const carbohydrate = sugar + polyols + 100 * (composition[at.higher_saccharides]! + composition[at.starch]!);
  const fibre = 100 * composition[at.fibre]!;
  const protein = 100 * share(composition, proteins);
  const organicAcids = 100 * composition[at.organic_acids]!;
  const { energyKj, energyKcal } = energyEu({ fat, carbohydrate, protein, polyols, fibre, organicAcids });
  return {
    energyKj,
    energyKcal,
    fat,
    saturates: 100 * composition[at.saturates]!,
    carbohydrate,
    sugars: sugar,
    polyols,
    fibre,
    protein,
    salt: 100 * saltPerSodium * composition[at.sodium]!,
  };
}
