import type { Quantity, Value } from '@barwright/chain';
import { slugOf, type Addition, type Component, type Material, type Plant, type Stage } from '@barwright/plant';
import { at, atMoisture, composition, compositionKeys, glucoseSyrup, mix, type Composition } from '@barwright/science';
import { percent, vector, windowOf, type Builder } from './builder.js';
import { cookSteps } from './cook.js';
import { additionsOf, perKilogramCharge, withoutWater, type Drive, type Part } from './parts.js';
import { propertySteps } from './properties.js';

/** Adds every quantity of one component: charge, stages, yield, composition, cost, properties. Components inside it come first. */
export function componentSteps(b: Builder, plant: Plant, component: Component, drive: Drive): void {
  const c = component.slug;
  if (b.has(`${c}.composition`)) return;
  const additions = additionsOf(component);
  for (const { addition } of additions) {
    const inner = plant.components.get(addition.name);
    if (inner) componentSteps(b, plant, inner, drive);
  }
  const parts = additions.map(({ addition, id }) => {
    const share = b.entered(id, `${addition.name} in the charge of ${component.name}`, addition.share, percent);
    return { ...ingredient(b, plant, component, addition), share };
  });
  const shares = parts.map((part) => part.share);
  b.step({
    title: `Charge of ${component.name}`,
    inputs: [...shares, ...parts.map((part) => part.composition)],
    outputs: [
      { id: `${c}.charge_composition`, meaning: `composition of the raw charge of ${component.name}`, ...vector, labels: compositionKeys },
      { id: `${c}.charge_dry`, meaning: `dry matter in the charge of ${component.name}`, ...percent },
    ],
    equation: 'composition = Σ share · composition of the ingredient / Σ share',
    run: (...values: Value[]) => {
      const composition = mix(shares.map((_, i) => [values[i] as number, values[shares.length + i] as Composition] as const));
      return [composition, 1 - composition[at.water]!];
    },
  });
  b.step({
    title: `Weight charged of ${component.name}`,
    inputs: shares,
    outputs: [{ id: `${c}.charge_sum`, meaning: `sum of the shares charged of ${component.name}`, ...percent }],
    equation: 'Σ share',
    run: sum,
  });
  stageSteps(b, component, parts, drive);
  costSteps(b, plant, component, parts);
  propertySteps(b, plant, component, parts);
}

function ingredient(b: Builder, plant: Plant, component: Component, addition: Addition): Omit<Part, 'share'> {
  const stage = component.stages.find((s) => s.adds.includes(addition))!;
  const inner = plant.components.get(addition.name);
  if (inner) {
    return { addition, stage, composition: `${inner.slug}.composition`, price: `${inner.slug}.cost` };
  }
  const material = plant.materials.get(addition.name)!;
  const own = materialRoots(b, plant, material);
  if (!addition.solids) return { addition, stage, ...own };
  const id = `${component.slug}.solids.${material.slug}`;
  if (!b.has(id)) {
    b.entered(id, `solids of the ${material.name} used in ${component.name}`, addition.solids, percent);
    b.step({
      title: `${material.name} at the solids delivered`,
      inputs: [own.composition, id],
      outputs: [{ id: `${id}.composition`, meaning: `composition of ${material.name} as delivered`, ...vector, labels: compositionKeys }],
      equation: 'the same dry matter at water = 1 − solids',
      run: (of: Composition, solids: number) => atMoisture(of, 1 - solids),
    });
  }
  return { addition, stage, composition: `${id}.composition`, price: own.price };
}

/** Price and composition of a bought material. */
export function materialRoots(b: Builder, plant: Plant, material: Material): { composition: string; price: string | undefined } {
  const m = `material.${material.slug}`;
  const composition = material.syrup ? syrupStep(b, material, material.syrup) : compositionRoot(b, material);
  const money = `${plant.currency}/kg`;
  const price = material.price && b.entered(`${m}.price`, `price of ${material.name}`, material.price, { unit: money, decimals: 3 });
  return { composition, price };
}

function compositionRoot(b: Builder, material: Material): string {
  return b.root({
    id: `material.${material.slug}.composition`,
    meaning: `composition of ${material.name}`,
    ...vector,
    labels: compositionKeys,
    value: material.composition,
    origin: material.compositionStanding === 'placeholder' ? 'assumed' : 'entered',
    place: material.place,
    ...(material.compositionSource ? { source: material.compositionSource } : {}),
    ...(material.compositionStanding ? { standing: material.compositionStanding } : {}),
  });
}

/** A glucose syrup by its solids and dextrose equivalent: both are knobs of their own. */
function syrupStep(b: Builder, material: Material, syrup: NonNullable<Material['syrup']>): string {
  const m = `material.${material.slug}`;
  const id = `${m}.composition`;
  if (b.has(id)) return id;
  const solids = b.entered(`${m}.solids`, `dry solids of ${material.name}`, syrup.solids, percent, windowOf(syrup.solids).window);
  const equivalent = b.entered(
    `${m}.dextrose_equivalent`,
    `dextrose equivalent of ${material.name}`,
    syrup.dextroseEquivalent,
    { unit: '1', show: 'DE', decimals: 1 },
    windowOf(syrup.dextroseEquivalent).window,
  );
  return b.step({
    title: `Composition of ${material.name}`,
    inputs: [solids, equivalent],
    outputs: [{ id, meaning: `composition of ${material.name}`, ...vector, labels: compositionKeys }],
    equation: 'sugars by the dextrose equivalent and the way the starch was broken down; water = 1 − solids',
    sources: ['pancoast-junk-1980', 'dextrose-equivalent'],
    run: (dry: number, de: number) => composition(glucoseSyrup(dry, de, syrup.conversion)),
  });
}

/** Mass and composition leaving each stage, per kg charged. */
function stageSteps(b: Builder, component: Component, parts: readonly Part[], drive: Drive): void {
  const c = component.slug;
  component.stages.forEach((stage) => {
    const s = `${c}.stage.${stage.slug}`;
    const own = parts.filter((part) => part.stage === stage);
    const before = stage.takes.map((name) => `${c}.stage.${component.stages.find((other) => other.name === name)!.slug}`);
    const masses = [...before.map((id) => `${id}.mass`), ...own.map((part) => part.share)];
    const compositions = [...before.map((id) => `${id}.composition`), ...own.map((part) => part.composition)];
    const inMass: Quantity = {
      id: `${s}.in_mass`,
      meaning: `mass in ${stage.name} of ${component.name}, per kg charged`,
      ...perKilogramCharge,
    };
    const inside: Quantity = {
      id: `${s}.in_composition`,
      meaning: `composition of what is in ${stage.name} of ${component.name}`,
      ...vector,
      labels: compositionKeys,
    };
    b.step({
      title: `${stage.name}: what comes together`,
      inputs: [...masses, ...compositions],
      outputs: [inMass, inside],
      equation: 'mass = Σ masses; composition = Σ mass · composition / Σ mass',
      run: (...values: Value[]) => {
        const n = masses.length;
        let total = 0;
        for (let i = 0; i < n; i++) total += values[i] as number;
        return [total, mix(masses.map((_, i) => [values[i] as number, values[n + i] as Composition] as const))];
      },
    });
    const removed = waterRemoval(b, component, parts, stage, s, drive);
    const losses = stage.losses.map((loss) =>
      b.entered(`${s}.loss.${slugOf(loss.name)}`, `${loss.name} at ${stage.name} of ${component.name}`, loss.share, percent),
    );
    b.step({
      title: `${stage.name}: what leaves it`,
      inputs: [inMass.id, inside.id, ...(removed ? [removed] : []), ...losses],
      outputs: [
        { id: `${s}.mass`, meaning: `mass leaving ${stage.name} of ${component.name}, per kg charged`, ...perKilogramCharge },
        { id: `${s}.composition`, meaning: `composition leaving ${stage.name} of ${component.name}`, ...vector, labels: compositionKeys },
      ],
      equation: removed
        ? 'mass = (in − water driven off) · Π(1 − loss)'
        : losses.length
          ? 'mass = in · Π(1 − loss)'
          : 'what comes in goes out',
      run: (mass: number, composition: Composition, ...rest: number[]) => {
        const water = removed ? rest[0]! : 0;
        let out = mass - water;
        for (let i = removed ? 1 : 0; i < rest.length; i++) out *= 1 - rest[i]!;
        return [out, water === 0 ? composition : withoutWater(composition, water / mass)];
      },
    });
  });
  const last = `${c}.stage.${component.stages.at(-1)!.slug}`;
  b.step({
    title: `Yield of ${component.name}`,
    inputs: [`${last}.mass`, `${c}.charge_sum`],
    outputs: [{ id: `${c}.yield`, meaning: `${component.name} made per kg charged`, ...perKilogramCharge }],
    equation: 'yield = mass leaving the last stage / mass charged',
    run: (mass: number, charged: number) => mass / charged,
  });
  finishedComposition(b, component, `${last}.composition`);
}

/** The quantity that says how much water leaves at this stage, per kg charged; nothing where none does. */
function waterRemoval(b: Builder, component: Component, parts: readonly Part[], stage: Stage, s: string, drive: Drive): string | undefined {
  if (stage.cook) return cookSteps(b, component, parts, stage, s, drive);
  if (!stage.toMoisture) return undefined;
  const to = b.entered(`${s}.to_moisture`, `moisture at the end of ${stage.name} of ${component.name}`, stage.toMoisture, percent);
  return b.step({
    title: `${stage.name}: water driven off`,
    inputs: [`${s}.in_mass`, `${s}.in_composition`, to],
    outputs: [
      { id: `${s}.evaporated`, meaning: `water driven off at ${stage.name} of ${component.name}, per kg charged`, ...perKilogramCharge },
    ],
    equation: 'water = mass · (w₀ − w₁) / (1 − w₁)',
    run: (mass: number, composition: Composition, moisture: number) => {
      const water = composition[at.water]!;
      if (water < moisture) {
        throw new RangeError(
          `${component.name} comes to ${stage.name} at ${(100 * water).toFixed(2)} % water, drier than the ${(100 * moisture).toFixed(2)} % it is to end at`,
        );
      }
      return (mass * (water - moisture)) / (1 - moisture);
    },
  });
}

function finishedComposition(b: Builder, component: Component, computed: string): void {
  const c = component.slug;
  const output: Quantity = { id: `${c}.composition`, meaning: `composition of ${component.name}`, ...vector, labels: compositionKeys };
  if (component.composition) {
    const { value, source, standing, place } = component.composition;
    b.root({ ...output, value, origin: 'entered', place, ...(source ? { source } : {}), ...(standing ? { standing } : {}) });
  } else {
    b.step({
      title: `Composition of ${component.name}`,
      inputs: [computed],
      outputs: [output],
      equation: 'as it leaves the last stage',
      run: (x: Composition) => x,
    });
  }
  if (b.has(`${c}.moisture`)) return;
  b.step({
    title: `Moisture of ${component.name}`,
    inputs: [output.id],
    outputs: [{ id: `${c}.moisture`, meaning: `water in ${component.name}, wet basis`, ...percent, ...finishedWindow(component) }],
    equation: 'water share of the whole, fat included',
    run: (x: Composition) => x[at.water]!,
  });
}

/** The window of the finished moisture stays when the cook is held by its temperature for a trial. */
function finishedWindow(component: Component): ReturnType<typeof windowOf> {
  const end = component.stages.find((stage) => stage.cook)?.cook?.end;
  return end?.by === 'finished moisture' ? windowOf(end.moisture) : {};
}

function costSteps(b: Builder, plant: Plant, component: Component, parts: readonly Part[]): void {
  const c = component.slug;
  const priced = parts.filter((part) => part.price !== undefined);
  if (priced.length < parts.length) return;
  const money = `${plant.currency}/kg`;
  const conversion = component.conversionCost
    ? b.entered(`${c}.conversion_cost`, `cost of making ${component.name}, per kg made`, component.conversionCost, {
        unit: money,
        decimals: 3,
      })
    : undefined;
  b.step({
    title: `Cost of ${component.name}`,
    inputs: [
      ...priced.map((part) => part.share),
      ...priced.map((part) => part.price!),
      `${c}.yield`,
      `${c}.charge_sum`,
      ...(conversion ? [conversion] : []),
    ],
    outputs: [{ id: `${c}.cost`, meaning: `cost of ${component.name}, per kg made`, unit: money, decimals: 3 }],
    equation: conversion ? 'cost = Σ share · price / yield + conversion' : 'cost = Σ share · price / yield',
    run: (...values: number[]) => {
      const n = priced.length;
      let cost = 0;
      for (let i = 0; i < n; i++) cost += values[i]! * values[n + i]!;
      return cost / values[2 * n + 1]! / values[2 * n]! + (values[2 * n + 2] ?? 0);
    },
  });
}

function sum(...values: number[]): number {
  let total = 0;
  for (const value of values) total += value;
  return total;
}
