import { isE476 } from '@barwright/bar';
import type { State } from '@barwright/chain';
import type { Component, Material } from '@barwright/plant';
import { at, type Composition } from '@barwright/science';
import type { PlantChain } from './plant-chain.js';

/** A material that can be added to a chocolate. */
export interface Corrector {
  readonly material: Material;
  readonly composition: Composition;
  readonly price: number | undefined;
}
export type Correctors = { readonly [K in 'cocoaButter' | 'lecithin' | 'e476']?: Corrector };

/** Materials of the plant that can be added: those of the recipe first, then any other. */
export function correctorsOf(from: PlantChain, state: State, component: Component): Correctors {
  const inRecipe = component.stages.flatMap((stage) => stage.adds.map((addition) => addition.name));
  const all = [...from.plant.materials.values()].sort((a, b) => Number(inRecipe.includes(b.name)) - Number(inRecipe.includes(a.name)));
  const found = (test: (material: Material) => boolean): Corrector | undefined => {
    const material = all.find(test);
    if (!material) return undefined;
    const id = `material.${material.slug}.composition`;
    const composition = from.chain.index.has(id) ? (state.value(id) as Composition) : material.composition;
    const priceId = `material.${material.slug}.price`;
    return { material, composition, price: from.chain.index.has(priceId) ? state.number(priceId) : material.price?.value };
  };
  const cocoaButter = found((material) => material.composition[at.cocoa_butter]! > 0.98);
  const lecithin = found((material) => /lecithin/i.test(`${material.name} ${material.label}`) && !isE476(material.name));
  const e476 = found((material) => isE476(`${material.name} ${material.label}`));
  return { ...(cocoaButter ? { cocoaButter } : {}), ...(lecithin ? { lecithin } : {}), ...(e476 ? { e476 } : {}) };
}
