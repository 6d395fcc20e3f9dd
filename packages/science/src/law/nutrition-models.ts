import { composition, constituents, type CompositionKey } from '../composition.js';
import { defineModel, type Model } from '../model.js';
import { energyEu, nutritionPer100g, saltPerSodium } from './nutrition.js';
import { nutrientsEu, roundEu, toleranceEu, type NutrientEu } from './nutrition-rounding.js';
import { nutrientsUs, nutritionUs, percentDailyValue, roundUs, type NutrientUs } from './nutrition-us.js';

const grams = { unit: 'g/100 g', possible: [0, 100] as const };

export const energyModel: Model = defineModel({
  id: 'nutrition.energy',
  title: 'Energy of a food for the EU declaration',
  about:
    'Sum of nutrients times the factors of Annex XIV, kJ and kcal from their own columns. Carbohydrate includes polyols and excludes fibre; salt = 2.5 sodium.',
  inputs: [
    { key: 'fat_g', meaning: 'total lipids, emulsifier included', ...grams },
    { key: 'carbohydrate_g', meaning: 'carbohydrate with polyols, without fibre', ...grams },
    { key: 'protein_g', meaning: 'nitrogen x 6.25', ...grams },
    { key: 'fibre_g', meaning: 'fibre', default: 0, ...grams },
    { key: 'polyols_g', meaning: 'polyols, part of the carbohydrate', default: 0, ...grams },
    { key: 'erythritol_g', meaning: 'erythritol, part of the polyols', default: 0, ...grams },
    { key: 'organic_acids_g', meaning: 'organic acids', default: 0, ...grams },
    { key: 'alcohol_g', meaning: 'ethanol', default: 0, ...grams },
    { key: 'salatrim_g', meaning: 'salatrim, part of the fat', default: 0, ...grams },
    { key: 'sodium_g', meaning: 'sodium', default: 0, ...grams },
  ],
  outputs: [
    { key: 'energy_kj', unit: 'kJ/100 g', meaning: 'energy' },
    { key: 'energy_kcal', unit: 'kcal/100 g', meaning: 'energy' },
    { key: 'salt_g', unit: 'g/100 g', meaning: 'salt equivalent of the sodium' },
  ],
  sources: ['eu-1169-2011'],
  standing: 'secondhand',
  run: (x) => {
    const energy = energyEu({
      fat: x.fat_g,
      carbohydrate: x.carbohydrate_g,
      protein: x.protein_g,
      fibre: x.fibre_g,
      polyols: x.polyols_g,
      erythritol: x.erythritol_g,
      organicAcids: x.organic_acids_g,
      alcohol: x.alcohol_g,
      salatrim: x.salatrim_g,
    });
    return { energy_kj: energy.energyKj, energy_kcal: energy.energyKcal, salt_g: saltPerSodium * x.sodium_g };
  },
  remarks: (x) => {
    const sum = x.fat_g + x.carbohydrate_g + x.protein_g + x.fibre_g + x.organic_acids_g + x.alcohol_g;
    if (sum > 100.5) return [{ code: 'MORE_THAN_WHOLE', message: `the nutrients add up to ${sum.toFixed(1)} g in 100 g` }];
    return sum > 0 && sum <= 1
      ? [{ code: 'LOOKS_LIKE_SHARES', message: `the nutrients add up to ${+sum.toFixed(3)} g; grams in 100 g are due, not shares of 1` }]
      : [];
  },
});

export const roundingEuModel: Model = defineModel({
  id: 'nutrition.rounding_eu',
  title: 'Rounding of the EU nutrition declaration',
  about: 'Guidance of the Commission services: step by size of the amount, halves up, one rounding only.',
  inputs: [
    { key: 'nutrient', unit: '-', kind: 'choice', choices: nutrientsEu, meaning: 'energy in kJ or kcal, others in g' },
    { key: 'amount', unit: 'g/100 g', possible: [0, 10_000], meaning: 'unrounded amount per 100 g (energy: kJ or kcal)' },
  ],
  outputs: [
    { key: 'declared', unit: 'g/100 g', meaning: 'rounded amount; 0 where negligible' },
    { key: 'label', unit: '-', meaning: 'words of the label' },
  ],
  sources: ['eu-tolerance-guidance-2012'],
  standing: 'secondhand',
  run: (x) => {
    const declared = roundEu(x.nutrient as NutrientEu, x.amount);
    return { declared: declared.value, label: { value: declared.label } };
  },
});

export const toleranceEuModel: Model = defineModel({
  id: 'nutrition.tolerance_eu',
  title: 'Control tolerance of an EU nutrition declaration',
  about: 'Range in which an official sample may lie, measurement uncertainty included. Guidance, not law; not for claims.',
  inputs: [
    { key: 'nutrient', unit: '-', kind: 'choice', choices: nutrientsEu.filter((n) => n !== 'energy'), meaning: 'nutrient' },
    { key: 'declared_g', meaning: 'declared amount', ...grams },
  ],
  outputs: [
    { key: 'low_g', unit: 'g/100 g', meaning: 'lower end' },
    { key: 'high_g', unit: 'g/100 g', meaning: 'upper end' },
  ],
  sources: ['eu-tolerance-guidance-2012'],
  standing: 'memory',
  run: (x) => {
    const { low, high } = toleranceEu(x.nutrient as Exclude<NutrientEu, 'energy'>, x.declared_g);
    return { low_g: low, high_g: high };
  },
});

export const roundingUsModel: Model = defineModel({
  id: 'nutrition.rounding_us',
  title: 'Rounding and daily value of a US nutrition label',
  about: 'Steps of 21 CFR 101.9(c) per serving; percent daily value from the unrounded amount.',
  inputs: [
    {
      key: 'nutrient',
      unit: '-',
      kind: 'choice',
      choices: nutrientsUs,
      meaning: 'calories in kcal; cholesterol, sodium, potassium in mg; others in g',
    },
    { key: 'amount', unit: 'g', possible: [0, 100_000], meaning: 'unrounded amount per serving (mg or kcal as the nutrient says)' },
  ],
  outputs: [
    { key: 'declared', unit: 'g', meaning: 'rounded amount' },
    { key: 'label', unit: '-', meaning: 'words of the label' },
    { key: 'daily_value_percent', unit: '%', meaning: 'percent of the daily value, nearest 1 %' },
  ],
  sources: ['us-21cfr101-9'],
  standing: 'found',
  run: (x) => {
    const declared = roundUs(x.nutrient as NutrientUs, x.amount);
    const percent = percentDailyValue(x.nutrient as NutrientUs, x.amount);
    return { declared: declared.value, label: { value: declared.label }, ...(percent !== undefined && { daily_value_percent: percent }) };
  },
});

const parts = [...constituents, 'saturates', 'sodium'] as const satisfies readonly CompositionKey[];

export const declarationModel: Model = defineModel({
  id: 'nutrition.declaration',
  title: 'Nutrition declaration of a composition',
  about:
    'Mass fractions of constituents to the EU table per 100 g and the US table per serving. Salt comes from sodium alone: give added salt its sodium (0.393 of its mass).',
  inputs: [
    ...parts.map((key) => ({
      key,
      unit: '1',
      possible: [0, 1] as const,
      default: 0,
      meaning: `${key.replaceAll('_', ' ')}, mass fraction`,
    })),
    { key: 'serving_g', unit: 'g', possible: [0.1, 10_000], default: 50, meaning: 'serving for the US table' },
  ],
  outputs: [
    { key: 'energy_kj', unit: 'kJ/100 g', meaning: 'energy, EU factors' },
    { key: 'energy_kcal', unit: 'kcal/100 g', meaning: 'energy, EU factors' },
    ...(['fat', 'saturates', 'carbohydrate', 'sugars', 'polyols', 'fibre', 'protein', 'salt'] as const).map((n) => ({
      key: `${n}_g`,
      unit: 'g/100 g',
      meaning: `${n}, unrounded`,
    })),
    { key: 'calories_us', unit: 'kcal', meaning: 'calories per serving, 4-4-9' },
    { key: 'total_carbohydrate_us', unit: 'g', meaning: 'carbohydrate by difference per serving, fibre in it' },
  ],
  sources: ['eu-1169-2011', 'us-21cfr101-9'],
  standing: 'secondhand',
  run: (x) => {
    const given = x as unknown as Record<CompositionKey, number>;
    const of = composition(Object.fromEntries(parts.map((key) => [key, given[key]])));
    const n = nutritionPer100g(of);
    const us = nutritionUs(of, x.serving_g);
    return {
      energy_kj: n.energyKj,
      energy_kcal: n.energyKcal,
      fat_g: n.fat,
      saturates_g: n.saturates,
      carbohydrate_g: n.carbohydrate,
      sugars_g: n.sugars,
      polyols_g: n.polyols,
      fibre_g: n.fibre,
      protein_g: n.protein,
      salt_g: n.salt,
      calories_us: us.calories ?? 0,
      total_carbohydrate_us: us.total_carbohydrate ?? 0,
    };
  },
  remarks: (x) => {
    const given = x as unknown as Record<CompositionKey, number>;
    const sum = constituents.reduce((total, key) => total + given[key], 0);
    return Math.abs(sum - 1) > 0.005
      ? [{ code: 'DOES_NOT_SUM_TO_ONE', message: `the constituents add up to ${sum.toFixed(4)}, not to 1; taken as given` }]
      : [];
  },
});
