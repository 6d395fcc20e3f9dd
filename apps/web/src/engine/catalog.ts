import { additionsOf, componentsOf } from '@barwright/bar';
import type { Quantity } from '@barwright/chain';
import { presentation, sheetSections, shownWindow, type PlantChain } from '@barwright/line';
import { materialOf } from './materials.js';
import type { Knobs } from './knobs.js';
import type { Catalog, ComponentInfo, Meta, PartInfo, StepInfo, Units } from './protocol.js';

/** What a page must know of a version before it shows a number of it. */
export function catalogOf(from: PlantChain, knobs: Knobs, version: number, units: Units): Catalog {
  const { plant, bar, line, chain } = from;
  return {
    plant: plant.name,
    bar: { name: bar.name, slug: bar.slug, format: bar.format },
    bars: [...plant.bars.values()].map(({ name, slug }) => ({ name, slug })),
    ...(line ? { line: line.name } : {}),
    currency: plant.currency,
    version,
    metas: chain.quantities.map((quantity, at) => metaOf(quantity, at < chain.roots.length, knobs.of(quantity.id), units)),
    sections: sheetSections(from),
    parts: partsOf(from),
    steps: stepsOf(from),
    components: componentsOf(plant, bar).map((component) => componentInfo(from, component)),
    cautions: (line?.stations ?? [])
      .filter((station) => station.cautions.length > 0)
      .map((station) => ({ station: station.name, texts: station.cautions })),
  };
}

function metaOf(quantity: Quantity, root: boolean, bend: string | undefined, units: Units): Meta {
  const { unit, decimals } = presentation(quantity, units);
  const window = shownWindow(quantity, units);
  return {
    id: quantity.id,
    meaning: quantity.meaning,
    unit,
    decimals,
    root,
    ...(window ? { window } : {}),
    ...(bend ? { bend } : {}),
    ...(quantity.labels || quantity.axis ? { vector: true as const } : {}),
  };
}

/** The coat, then the layers from the top; what has sunk into a layer stands above it. */
function partsOf({ plant, bar }: PlantChain): PartInfo[] {
  const slugOf = (component: string) => plant.components.get(component)!.slug;
  const hosts = bar.layers.filter((layer) => layer.sunkInto === undefined).reverse();
  const layers = hosts.flatMap((host) => {
    const guests = bar.layers.filter((layer) => layer.sunkInto === host.name);
    return [
      ...guests.map((guest) => ({
        id: `layer.${guest.slug}`,
        slug: guest.slug,
        name: guest.name,
        component: slugOf(guest.component),
        within: host.slug,
      })),
      { id: `layer.${host.slug}`, slug: host.slug, name: host.name, component: slugOf(host.component) },
    ];
  });
  if (!bar.coat) return layers;
  const coat = plant.components.get(bar.coat.component)!;
  return [{ id: 'coat', slug: 'coat', name: coat.name, component: coat.slug }, ...layers];
}

function stepsOf({ bar, chain }: PlantChain): StepInfo[] {
  const hosts = bar.layers.filter((layer) => layer.sunkInto === undefined);
  return hosts.slice(1).flatMap((above, i) => {
    const below = hosts[i]!;
    const id = `step.${above.slug}_${below.slug}`;
    return chain.index.has(id) ? [{ id, above: above.slug, below: below.slug }] : [];
  });
}

function componentInfo({ plant, chain }: PlantChain, component: ReturnType<typeof componentsOf>[number]): ComponentInfo {
  const c = component.slug;
  const has = (id: string) => chain.index.has(id);
  const ingredients = additionsOf(component).map(({ addition, id }) => {
    const inner = plant.components.get(addition.name);
    const material = plant.materials.get(addition.name);
    const price = inner ? `${inner.slug}.cost` : `material.${material!.slug}.price`;
    return {
      id,
      name: addition.name,
      material: materialOf(addition.name, inner?.texture ?? material?.texture),
      ...(has(price) ? { price } : {}),
    };
  });
  return {
    slug: c,
    name: component.name,
    material: materialOf(component.name, component.texture),
    ingredients,
    ...(has(`${c}.cook_temperature`) ? { cook: { knob: `${c}.cook_temperature`, shown: `${c}.cook_indicated` } } : {}),
    ...(has(`${c}.moisture`) ? { moisture: `${c}.moisture` } : {}),
    evaporated: component.stages.map((stage) => `${c}.stage.${stage.slug}.evaporated`).filter(has),
    law: chain.quantities.map(({ id }) => id).filter((id) => id.startsWith(`${c}.law.`)),
  };
}
