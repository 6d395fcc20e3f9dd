import type { Bar, Component, Plant } from '@barwright/plant';
import type { Builder } from './builder.js';
import { chocolateSteps, isChocolate } from './chocolate.js';
import { componentSteps } from './component.js';
import { costSteps } from './cost.js';
import { fatSteps } from './fat.js';
import { labelSteps } from './label.js';
import { barParts, layerSteps } from './layers.js';
import { lawSteps } from './law.js';
import { massSteps } from './mass.js';
import type { Drive } from './parts.js';
import { plantSteps } from './plant.js';
import { stepSteps } from './step.js';
import { togetherSteps } from './together.js';

/** Everything about one bar that does not need its line: components, layers, mass, cost, label, law. */
export function barSteps(b: Builder, plant: Plant, bar: Bar, drive: Drive = {}): void {
  plantSteps(b, plant);
  for (const component of componentsOf(plant, bar)) {
    componentSteps(b, plant, component, drive);
    lawSteps(b, plant, component);
    if (!isChocolate(component)) continue;
    fatSteps(b, component);
    chocolateSteps(b, plant, component);
  }
  layerSteps(b, plant, bar);
  massSteps(b, plant, bar);
  costSteps(b, plant, bar);
  labelSteps(b, plant, bar);
  stepSteps(b, plant, bar);
  togetherSteps(b, plant, bar);
}

/** Every component in the bar, inner ones before those that contain them. */
export function componentsOf(plant: Plant, bar: Bar): readonly Component[] {
  const order: Component[] = [];
  const visit = (component: Component) => {
    if (order.includes(component)) return;
    for (const stage of component.stages) {
      for (const addition of stage.adds) {
        const inner = plant.components.get(addition.name);
        if (inner) visit(inner);
      }
    }
    order.push(component);
  };
  for (const part of barParts(plant, bar)) visit([...plant.components.values()].find((other) => other.slug === part.component)!);
  return order;
}
