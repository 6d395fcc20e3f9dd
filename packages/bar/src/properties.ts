import type { Component, Plant } from '@barwright/plant';
import {
  airFraction,
  at,
  compositionKeys,
  density as densityOf,
  fats,
  proteins,
  share,
  specificHeat,
  sugars,
  type Composition,
  type CompositionKey,
} from '@barwright/science';
import { activitySteps } from './activity.js';
import { density, lookOfWritten, percent, vector, windowOf, type Builder } from './builder.js';
import { flowSteps } from './flow.js';
import { foamSteps } from './foam.js';
import type { Part } from './parts.js';
import { sugarStateSteps } from './sugar-state.js';

/** Temperature at which density and specific heat of a finished component are stated, °C. */
const statedAt = 20;

/** Shares that people ask for, and how they add up. */
const shares: readonly (readonly [name: string, words: string, keys: readonly CompositionKey[]])[] = [
  ['fat', 'fat, emulsifiers included', fats],
  ['milk_fat', 'milk fat', ['milk_fat']],
  ['sugars', 'sugars', sugars],
  ['protein', 'protein', proteins],
  ['cocoa_solids', 'dry cocoa solids', ['cocoa_butter', 'nonfat_cocoa_solids']],
  ['nonfat_cocoa_solids', 'fat-free dry cocoa solids', ['nonfat_cocoa_solids']],
  ['milk_solids', 'dry milk solids', ['milk_fat', 'nonfat_milk_solids']],
];

/** Water activity, density, air, heat and the shares of a finished component. */
export function propertySteps(b: Builder, plant: Plant, component: Component, parts: readonly Part[]): void {
  const c = component.slug;
  const inside = `${c}.composition`;
  b.step({
    title: 'Composition on dry matter',
    inputs: [inside],
    outputs: [
      { id: `${c}.dry_composition`, meaning: `composition of ${component.name} on dry matter`, ...vector, labels: compositionKeys },
    ],
    equation: 'share / (1 − water), water 0',
    run: (x: Composition) => dryBasis(x),
  });
  for (const [name, words, keys] of shares) {
    b.step({
      title: `${words} of ${component.name}`,
      inputs: [inside],
      outputs: [{ id: `${c}.${name}`, meaning: `${words} in ${component.name}`, ...percent }],
      equation: `Σ ${keys.join(' + ').replaceAll('_', ' ')}`,
      run: (x: Composition) => share(x, keys),
    });
  }
  activitySteps(b, plant, component, parts);
  sugarStateSteps(b, component);
  flowSteps(b, component);
  densitySteps(b, component);
  foamSteps(b, component);
  b.step({
    title: 'Specific heat by composition',
    inputs: [inside],
    outputs: [
      {
        id: `${c}.specific_heat`,
        meaning: `specific heat of ${component.name} at ${statedAt} °C, no melting`,
        unit: 'J/(kg·K)',
        decimals: 0,
      },
    ],
    equation: 'cp = Σ share · cp of the constituent',
    sources: ['choi-okos-1986'],
    run: (x: Composition) => specificHeat(x, statedAt),
  });
  for (const target of component.targets) {
    b.entered(
      `${c}.target.${target.slug}`,
      `${target.name} of ${component.name}`,
      target.value,
      lookOfWritten(target.value),
      windowOf(target.value).window,
    );
  }
}

function densitySteps(b: Builder, component: Component): void {
  const c = component.slug;
  const gasFree = { id: `${c}.gas_free_density`, meaning: `density of ${component.name} without air`, ...density };
  b.step({
    title: 'Gas-free density: volumes add',
    inputs: [`${c}.composition`],
    outputs: [gasFree],
    equation: '1 / ρ = Σ share / ρ of the constituent',
    sources: ['choi-okos-1986'],
    run: (x: Composition) => densityOf(x, statedAt),
    uncertainty: (_, [rho]) => [0.02 * (rho as number)],
  });
  const own = { id: `${c}.density`, meaning: `density of ${component.name}`, ...density };
  if (component.density) b.entered(own.id, own.meaning, component.density, density, windowOf(component.density).window);
  else
    b.step({
      title: `Density of ${component.name}`,
      inputs: [gasFree.id],
      outputs: [own],
      equation: 'no air: the gas-free density',
      run: (x: number) => x,
    });
  if (!component.stages.some((stage) => stage.does === 'whip')) return;
  b.step({
    title: `Air in ${component.name}`,
    inputs: [own.id, gasFree.id],
    outputs: [{ id: `${c}.air`, meaning: `air in ${component.name}, share of volume`, ...percent, decimals: 1 }],
    equation: 'air = 1 − ρ / ρ gas-free',
    run: (rho: number, free: number) => airFraction(rho, free),
  });
}

function dryBasis(x: Composition): Composition {
  const out = x.map((value) => value / (1 - x[at.water]!));
  out[at.water] = 0;
  return out;
}
