import { additionsOf, barParts, componentsOf, kilogramPerHour, type Builder } from '@barwright/bar';
import type { Bar, Component, Plant } from '@barwright/plant';

/** Where a component goes: onto the bar as a part, or into another component. */
type Use = { readonly gross: string } | { readonly into: string; readonly share: string };

/**
 * Need of every component and bought material for one bar, its losses included; with the flows at rated speed.
 * ids: need.<component>, need.material.<material> (kg per bar cut); flow.<component>.out, .in, .vapour (kg/h).
 */
export function demandSteps(b: Builder, plant: Plant, bar: Bar): readonly string[] {
  const components = componentsOf(plant, bar);
  const uses = new Map<string, Use[]>(components.map((component) => [component.slug, []]));
  for (const part of barParts(plant, bar)) uses.get(part.component)!.push({ gross: `${part.id}.gross` });
  const materials = new Map<string, Use[]>();
  for (const component of components) {
    for (const { addition, id, slug } of additionsOf(component)) {
      const inner = plant.components.get(addition.name);
      const use = { into: component.slug, share: id };
      if (inner) uses.get(inner.slug)!.push(use);
      else materials.set(slug, [...(materials.get(slug) ?? []), use]);
    }
  }
  // Outer components first: what goes into them decides the inner ones.
  for (const component of [...components].reverse()) {
    needStep(b, `need.${component.slug}`, `${component.name} to be made for a bar cut`, uses.get(component.slug)!);
    flowSteps(b, component);
  }
  const names: string[] = [];
  for (const [slug, list] of materials) {
    const name = [...plant.materials.values()].find((material) => material.slug === slug)!.name;
    needStep(b, `need.material.${slug}`, `${name} for a bar cut`, list);
    b.step({
      title: `Flow of ${name}`,
      inputs: [`need.material.${slug}`, 'line.rate'],
      outputs: [{ id: `flow.material.${slug}`, meaning: `${name} used at rated speed`, ...kilogramPerHour }],
      equation: 'need per bar · rate',
      run: (need: number, rate: number) => 60 * need * rate,
    });
    names.push(slug);
  }
  return names;
}

function needStep(b: Builder, id: string, meaning: string, uses: readonly Use[]): void {
  const inputs = uses.flatMap((use) =>
    'gross' in use ? [use.gross] : [`need.${use.into}`, use.share, `${use.into}.yield`, `${use.into}.charge_sum`],
  );
  b.step({
    title: meaning,
    inputs,
    outputs: [{ id, meaning, unit: 'kg', show: 'g', decimals: 3 }],
    equation: 'Σ gross on the bar + Σ need of what it goes into · share / yield',
    run: (...values: number[]) => {
      let total = 0;
      let i = 0;
      for (const use of uses) {
        if ('gross' in use) total += values[i++]!;
        else total += (values[i++]! * values[i++]!) / values[i++]! / values[i++]!;
      }
      return total;
    },
  });
}

function flowSteps(b: Builder, component: Component): void {
  const c = component.slug;
  const evaporations = component.stages.map((stage) => `${c}.stage.${stage.slug}.evaporated`).filter((id) => b.has(id));
  b.step({
    title: `Flow of ${component.name}`,
    inputs: [`need.${c}`, 'line.rate', `${c}.yield`],
    outputs: [
      { id: `flow.${c}.out`, meaning: `${component.name} made at rated speed`, ...kilogramPerHour },
      { id: `flow.${c}.in`, meaning: `charged for ${component.name} at rated speed`, ...kilogramPerHour },
    ],
    equation: 'out = need per bar · rate; in = out / yield',
    run: (need: number, rate: number, made: number) => [60 * need * rate, (60 * need * rate) / made],
  });
  if (evaporations.length === 0) return;
  b.step({
    title: `Water driven off for ${component.name}`,
    inputs: [`flow.${c}.in`, `${c}.charge_sum`, ...evaporations],
    outputs: [{ id: `flow.${c}.vapour`, meaning: `water driven off making ${component.name}, at rated speed`, ...kilogramPerHour }],
    equation: 'charged · Σ water driven off per kg charged',
    run: (flow: number, charge: number, ...water: number[]) => {
      let total = 0;
      for (const w of water) total += w;
      return (flow * total) / charge;
    },
  });
}
