import type { Value } from '@barwright/chain';
import { slugOf, type Bar, type Component, type Plant } from '@barwright/plant';
import { compositionKeys, mix, nutritionPer100g, type Composition } from '@barwright/science';
import { gram, percent, vector, type Builder } from './builder.js';
import { additionsOf } from './parts.js';
import { barParts } from './layers.js';

/** The nutrition declaration, in the order of the label. */
export const nutrients = [
  ['energy_kj', 'energyKj', 'energy', 'kJ', 0],
  ['energy_kcal', 'energyKcal', 'energy', 'kcal', 0],
  ['fat', 'fat', 'fat', 'g', 1],
  ['saturates', 'saturates', 'saturates', 'g', 1],
  ['carbohydrate', 'carbohydrate', 'carbohydrate', 'g', 1],
  ['sugars', 'sugars', 'sugars', 'g', 1],
  ['fibre', 'fibre', 'fibre', 'g', 1],
  ['protein', 'protein', 'protein', 'g', 1],
  ['salt', 'salt', 'salt', 'g', 2],
] as const;

/** Composition of the whole bar, nutrition per 100 g and per bar, what goes in by label name. */
export function labelSteps(b: Builder, plant: Plant, bar: Bar): void {
  const parts = barParts(plant, bar);
  b.step({
    title: 'Composition of the bar',
    inputs: [...parts.map((part) => `${part.id}.mass`), ...parts.map((part) => `${part.component}.composition`)],
    outputs: [{ id: 'bar.composition', meaning: 'composition of the bar', ...vector, labels: compositionKeys }],
    equation: 'Σ mass · composition / Σ mass',
    run: (...values: Value[]) => mix(parts.map((_, i) => [values[i] as number, values[parts.length + i] as Composition] as const)),
  });
  b.step({
    title: 'Nutrition declaration',
    inputs: ['bar.composition'],
    outputs: nutrients.map(([id, , words, unit, decimals]) => ({
      id: `label.${id}`,
      meaning: `${words} per 100 g`,
      unit: `${unit}/100g`,
      show: `${unit}/100 g`,
      decimals,
    })),
    equation: 'energy = 37 fat + 17 carbohydrate + 17 protein + 8 fibre kJ/g, and 9, 4, 4, 2 kcal/g; salt = 2.5 sodium',
    sources: ['eu-1169-2011'],
    run: (x: Composition) => {
      const declared = nutritionPer100g(x);
      return nutrients.map(([, key]) => declared[key]);
    },
  });
  for (const [id, , words, unit, decimals] of nutrients) {
    b.step({
      title: `${words} of a bar`,
      inputs: [`label.${id}`, 'bar.mass'],
      outputs: [{ id: `label.${id}_per_bar`, meaning: `${words} per bar`, unit: `${unit}/bar`, decimals }],
      equation: 'per 100 g · mass of the bar / 100 g',
      run: (per100: number, mass: number) => per100 * mass * 10,
    });
  }
  ingredientSteps(b, plant, bar);
}

interface Use {
  /** Ids whose product is the mass of this use for a bar; those after `over` divide. */
  readonly times: readonly string[];
  readonly over: readonly string[];
}

/** Mass of each named ingredient as it goes in, for a bar: through components of several ingredients down to what the label names. */
function ingredientSteps(b: Builder, plant: Plant, bar: Bar): void {
  const uses = new Map<string, Use[]>();
  const note = (label: string, use: Use) => uses.set(label, [...(uses.get(label) ?? []), use]);
  const walk = (component: Component, use: Use) => {
    if (additionsOf(component).length === 1) return note(component.label, use);
    for (const { addition, id } of additionsOf(component)) {
      const inside: Use = { times: [...use.times, id], over: [...use.over, `${component.slug}.yield`, `${component.slug}.charge_sum`] };
      const inner = plant.components.get(addition.name);
      if (inner) walk(inner, inside);
      else note(plant.materials.get(addition.name)!.label, inside);
    }
  };
  for (const part of barParts(plant, bar)) {
    const component = [...plant.components.values()].find((other) => other.slug === part.component)!;
    walk(component, { times: [`${part.id}.mass`], over: [] });
  }
  for (const [label, list] of uses) {
    const slug = slugOf(label);
    const inputs = list.flatMap((use) => [...use.times, ...use.over]);
    const mass = b.step({
      title: `${label} going into a bar`,
      inputs: [...inputs],
      outputs: [{ id: `label.input.${slug}`, meaning: `${label} going into a bar, as weighed in`, ...gram }],
      equation: 'Σ mass of the part · share of the charge / yield',
      run: (...values: number[]) => {
        let total = 0;
        let i = 0;
        for (const use of list) {
          let product = 1;
          for (let k = 0; k < use.times.length; k++) product *= values[i++]!;
          for (let k = 0; k < use.over.length; k++) product /= values[i++]!;
          total += product;
        }
        return total;
      },
    });
    b.step({
      title: `Quantity of ${label} to be declared`,
      inputs: [mass, 'bar.mass'],
      outputs: [{ id: `label.share.${slug}`, meaning: `${label} as weighed in, share of the bar`, ...percent, decimals: 1 }],
      equation: 'weighed in / finished mass',
      sources: ['eu-1169-2011'],
      run: (going: number, whole: number) => going / whole,
    });
  }
}

/** Names on the label of everything in the bar, longest share first once the masses are known. */
export function ingredientNames(plant: Plant, bar: Bar): readonly { readonly label: string; readonly quantity: string }[] {
  const labels = new Set<string>();
  const walk = (component: Component) => {
    if (additionsOf(component).length === 1) return void labels.add(component.label);
    for (const { addition } of additionsOf(component)) {
      const inner = plant.components.get(addition.name);
      if (inner) walk(inner);
      else labels.add(plant.materials.get(addition.name)!.label);
    }
  };
  for (const layer of bar.layers) walk(plant.components.get(layer.component)!);
  if (bar.coat) walk(plant.components.get(bar.coat.component)!);
  return [...labels].map((label) => ({ label, quantity: `label.input.${slugOf(label)}` }));
}

/** Allergens of everything in the bar, each with the ingredients that bring it. */
export function allergensOf(plant: Plant, bar: Bar): ReadonlyMap<string, readonly string[]> {
  const found = new Map<string, Set<string>>();
  const walk = (name: string) => {
    const component = plant.components.get(name);
    if (component) return component.stages.forEach((stage) => stage.adds.forEach((addition) => walk(addition.name)));
    const material = plant.materials.get(name)!;
    for (const allergen of material.allergens) found.set(allergen, (found.get(allergen) ?? new Set()).add(material.name));
  };
  for (const layer of bar.layers) walk(layer.component);
  if (bar.coat) walk(bar.coat.component);
  return new Map([...found].sort(([a], [z]) => (a < z ? -1 : 1)).map(([allergen, names]) => [allergen, [...names]]));
}
