import type { Value } from '@barwright/chain';
import type { Component, Plant } from '@barwright/plant';
import {
  activityEstimate,
  airFraction,
  at,
  compositionKeys,
  density as densityOf,
  fats,
  groverActivity,
  proteins,
  share,
  solutionOf,
  specificHeat,
  sugars,
  waterActivity,
  type Composition,
  type CompositionKey,
} from '@barwright/science';
import { density, fraction, lookOfWritten, percent, vector, windowOf, type Builder } from './builder.js';
import type { Part } from './parts.js';

/** Temperature at which activity, density and specific heat of a finished component are stated. */
const statedAt = 20;
const activityAt = 25;

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
  densitySteps(b, component);
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

/** Where a component is a syrup that was cooked, its activity follows from what is dissolved; otherwise it is what the plant enters. */
function activitySteps(b: Builder, plant: Plant, component: Component, parts: readonly Part[]): void {
  const c = component.slug;
  const id = `${c}.water_activity`;
  const meaning = `water activity of ${component.name}`;
  if (component.waterActivity) {
    b.entered(id, meaning, component.waterActivity, fraction);
    return;
  }
  if (!component.stages.some((stage) => stage.cook)) return;
  const crystals = crystalsOf(plant, component, parts);
  const inputs = [
    `${c}.composition`,
    ...crystals.flatMap((part) => [part.share, part.composition]),
    ...(crystals.length ? [`${c}.yield`, `${c}.charge_sum`] : []),
  ];
  const dissolved = (values: readonly Value[]) => {
    const whole = values[0] as Composition;
    if (crystals.length === 0) return solutionOf(whole);
    const perFinished = (values.at(-2) as number) * (values.at(-1) as number);
    let crystalline = 0;
    for (let i = 0; i < crystals.length; i++)
      crystalline += ((values[1 + 2 * i] as number) * (values[2 + 2 * i] as Composition)[at.sucrose]!) / perFinished;
    const left = whole.slice();
    left[at.sucrose]! -= crystalline;
    return solutionOf(left);
  };
  b.step({
    title: 'Water activity of the dissolved phase',
    inputs,
    outputs: [{ id, meaning, ...fraction }],
    equation: 'aw of water and what is dissolved in it: no fat, no protein, no crystals',
    sources: ['starzak-peacock-1997', 'norrish-1966'],
    run: (...values: Value[]) => waterActivity(dissolved(values), activityAt),
    uncertainty: (_, [aw]) => {
      const { low, high } = activityEstimate(aw as number, 'mixture');
      return [(high! - low!) / 2];
    },
  });
  b.step({
    title: 'The classic first estimate, for comparison',
    inputs: [`${c}.composition`],
    outputs: [{ id: `${id}_first_estimate`, meaning: `${meaning} by the first-estimate equation`, ...fraction }],
    equation: 'aw = 1.04 − 0.10 Es + 0.0045 Es²',
    sources: ['grover-1947'],
    run: (x: Composition) => groverActivity(solutionOf(x), share(x, proteins)),
    uncertainty: () => [0.03],
  });
}

/** Crystalline additions that enter after the last cook: seed. They stay crystals. */
function crystalsOf(plant: Plant, component: Component, parts: readonly Part[]): readonly Part[] {
  const lastCook = component.stages.findLastIndex((stage) => stage.cook);
  return parts.filter((part) => component.stages.indexOf(part.stage) > lastCook && plant.materials.get(part.addition.name)?.crystalline);
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
