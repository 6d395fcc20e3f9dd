import { slugOf, type Addition, type Component, type Stage } from '@barwright/plant';
import { at, type Composition } from '@barwright/science';
import type { Look } from './builder.js';

export const perKilogramCharge: Look = { unit: 'kg/kg', show: 'kg per 100 kg charge', decimals: 2 };

/** How a chain is driven: the cook temperature (°C) of components, by slug, that are set by temperature instead of by final moisture. */
export interface Drive {
  readonly cookTemperature?: Readonly<Record<string, number>>;
}

/** One ingredient of a component with the ids of its share, its composition and its price. */
export interface Part {
  readonly addition: Addition;
  readonly stage: Stage;
  readonly share: string;
  readonly composition: string;
  readonly price: string | undefined;
}

/** The ids of the additions: '<component>.charge.<ingredient>', with the stage behind it where one ingredient enters twice. */
export function additionsOf(component: Component): readonly { addition: Addition; stage: Stage; id: string; slug: string }[] {
  const all = component.stages.flatMap((stage) => stage.adds.map((addition) => ({ addition, stage })));
  const count = new Map<string, number>();
  for (const { addition } of all) count.set(addition.name, (count.get(addition.name) ?? 0) + 1);
  return all.map(({ addition, stage }) => {
    const slug = slugOf(addition.name);
    const id = `${component.slug}.charge.${slug}`;
    return { addition, stage, slug, id: count.get(addition.name)! > 1 ? `${id}.${stage.slug}` : id };
  });
}

/** Takes a share of the mass away as water: what is left, renormalised. */
export function withoutWater(of: Composition, removed: number): Composition {
  const left = 1 - removed;
  const out = of.map((value) => value / left);
  out[at.water] = (of[at.water]! - removed) / left;
  return out;
}
