import type { State } from '@barwright/chain';
import { flowRecipeOf, isChocolate, ladderOf } from '@barwright/bar';
import type { Component, Material } from '@barwright/plant';
import {
  cheapestCorrection,
  flowShift,
  mix,
  pgprLimit,
  withAdditions,
  type Composition,
  type Correction,
  type CorrectionTask,
  type FlowRecipe,
} from '@barwright/science';
import { namesOf } from './chocolate-law.js';
import { correctorsOf, type Correctors } from './correctors.js';
import { coatModel, type CoatExpected, type CoatModel } from './enrober-what-if.js';
import type { PlantChain } from './plant-chain.js';

/** There is no chocolate to correct, or nothing to correct it with; the sentence says what is missing. */
export class NoChocolate extends RangeError {
  readonly code = 'NO_CHOCOLATE';
}

/** One way to the wanted flow. */
export interface FlowOption {
  /** 'E476', 'cocoa butter', 'E476 and cocoa butter' … 'nothing' where nothing is needed. */
  readonly name: string;
  /** kg for each kg of present chocolate. */
  readonly add: { readonly cocoaButter: number; readonly lecithin: number; readonly e476: number };
  readonly yieldValue: { readonly value: number; readonly low: number; readonly high: number };
  readonly plasticViscosity: { readonly value: number; readonly low: number; readonly high: number };
  /** Whether both targets are met, by the middle of the published trends. */
  readonly meets: boolean;
  /** Money for what is added to a kg, and the same less the chocolate it displaces, for a kg of corrected chocolate. */
  readonly bought: number;
  readonly cost: number;
  /** The name in law after the addition, and E476 against its limit; sentences where it does not hold. */
  readonly lawful: boolean;
  readonly law: readonly string[];
  /** Coat at the new flow with the enrober as it is set; nothing without an enrober. */
  readonly coat?: CoatExpected;
}

/** One step of one corrector, alone. */
export interface FlowStep {
  readonly name: string;
  readonly share: number;
  /** Factors on the present values with the range of the trends. */
  readonly yieldFactor: { readonly value: number; readonly low: number; readonly high: number };
  readonly plasticFactor: { readonly value: number; readonly low: number; readonly high: number };
  /** Money for a kg of corrected chocolate, less what is displaced. */
  readonly cost: number;
}

export interface FlowTarget {
  /** Pa */
  readonly yieldValue: number;
  /** Pa·s; left out: as it is now. */
  readonly plasticViscosity?: number;
  /** Measured now; left out: what the chain has. */
  readonly measured?: { readonly yieldValue?: number; readonly plasticViscosity?: number };
  /** Relative half-widths that count as met; 0.05 and 0.1. */
  readonly yieldTolerance?: number;
  readonly plasticTolerance?: number;
}

export interface FlowAnswer {
  readonly component: string;
  readonly currency: string;
  readonly now: { readonly yieldValue: number; readonly plasticViscosity: number };
  readonly target: { readonly yieldValue: number; readonly plasticViscosity: number };
  readonly coatNow?: CoatExpected;
  /** Lawful ways that meet the target first, cheapest first. */
  readonly options: readonly FlowOption[];
  readonly best?: FlowOption;
  /** What one usual step of each alone does and costs: 1 % cocoa butter, 0.1 % lecithin, 0.1 % E476. */
  readonly steps: readonly FlowStep[];
  /** Ids of the plant's own ladder that are still defaults. */
  readonly assumed: readonly string[];
  readonly notes: readonly string[];
}

/** The chocolate of the coat, or the one named. @throws NoChocolate */
export function chocolateOf(from: PlantChain, name?: string): Component {
  const { plant, bar } = from;
  if (name !== undefined) {
    const wanted = name.toLowerCase();
    const found = [...plant.components.values()].find((other) => other.name.toLowerCase() === wanted || other.slug === wanted);
    if (!found) throw new NoChocolate(`${plant.name} makes no "${name}"; it makes ${[...plant.components.keys()].join(', ')}`);
    if (!from.chain.index.has(`${found.slug}.yield_value`)) throw new NoChocolate(`${found.name} is no chocolate of ${bar.name}`);
    return found;
  }
  const coat = bar.coat && plant.components.get(bar.coat.component)!;
  if (!coat || !isChocolate(coat)) throw new NoChocolate(`${bar.name} has no chocolate coat`);
  return coat;
}

/**
 * Ways to a wanted yield value with the plastic viscosity kept: each correction alone and the cheapest of all together.
 * Sizes of the effects are the plant's own ladder where it has one, else ranges of published trends.
 * @throws NoChocolate; OutOfRange for a target or recipe outside physics
 */
export function flowOptions(from: PlantChain, state: State, component: Component, target: FlowTarget): FlowAnswer {
  const c = component.slug;
  const number = (id: string) => state.number(id);
  const now = {
    yieldValue: target.measured?.yieldValue ?? number(`${c}.yield_value`),
    plasticViscosity: target.measured?.plasticViscosity ?? number(`${c}.plastic_viscosity`),
  };
  const wanted = { yieldValue: target.yieldValue, plasticViscosity: target.plasticViscosity ?? now.plasticViscosity };
  const recipe = flowRecipeOf(c, number);
  const correctors = correctorsOf(from, state, component);
  const price = {
    cocoaButter: correctors.cocoaButter?.price ?? 0,
    lecithin: correctors.lecithin?.price ?? 0,
    pgpr: correctors.e476?.price ?? 0,
    chocolate: from.chain.index.has(`${c}.cost`) && state.status(`${c}.cost`).ok ? number(`${c}.cost`) : 0,
  };
  const most = {
    cocoaButter: correctors.cocoaButter ? 0.03 : 0,
    lecithin: correctors.lecithin ? Math.max(recipe.lecithin, number(`${c}.flow.lecithin_optimum`)) : recipe.lecithin,
    pgpr: correctors.e476 ? pgprLimit : recipe.pgpr,
  };
  const task: CorrectionTask = {
    recipe,
    ...now,
    targetYield: wanted.yieldValue,
    targetPlastic: wanted.plasticViscosity,
    yieldTolerance: target.yieldTolerance ?? 0.05,
    plasticTolerance: target.plasticTolerance ?? 0.1,
    price,
    most,
  };
  const effects = ladderOf(c, number);
  const none = { cocoaButter: 0, lecithin: recipe.lecithin, pgpr: recipe.pgpr };
  const tries = [
    most,
    { ...none, pgpr: most.pgpr },
    { ...none, cocoaButter: most.cocoaButter },
    { ...none, lecithin: most.lecithin },
    { ...none, cocoaButter: most.cocoaButter, pgpr: most.pgpr },
  ];
  const coats = coatModel(from, state);
  const seen = new Set<string>();
  const options = tries
    .map((limits) => cheapestCorrection({ ...task, most: limits }, effects))
    .filter((found) => {
      const key = [found.cocoaButter, found.lecithin, found.pgpr].map((x) => x.toFixed(5)).join(' ');
      return !seen.has(key) && seen.add(key);
    })
    .map((found) => optionOf(from, state, component, correctors, now, found, task, coats))
    .filter((option) => option.name !== 'nothing' || option.meets)
    .sort((a, b) => Number(b.meets && b.lawful) - Number(a.meets && a.lawful) || a.cost - b.cost);
  const coatNow = coats?.at(now);
  const best = options.find((option) => option.meets && option.lawful);
  return {
    component: component.name,
    currency: from.plant.currency,
    now,
    target: wanted,
    ...(coatNow ? { coatNow } : {}),
    options,
    ...(best ? { best } : {}),
    steps: stepsOf(recipe, correctors, price.chocolate, effects),
    assumed: from.chain.quantities
      .map((quantity) => quantity.id)
      .filter((id) => id.startsWith(`${c}.flow.`) && state.origin(id) === 'default'),
    notes: notesOn(component, now, wanted, correctors, Boolean(best)),
  };
}

function stepsOf(recipe: FlowRecipe, correctors: Correctors, chocolate: number, effects: ReturnType<typeof ladderOf>): readonly FlowStep[] {
  const steps = [
    ['cocoaButter', 0.01],
    ['lecithin', 0.001],
    ['e476', 0.001],
  ] as const;
  return steps.flatMap(([key, share]) => {
    const corrector = correctors[key];
    if (!corrector) return [];
    const add = { cocoaButter: 0, lecithin: 0, e476: 0, [key]: share };
    const { yieldValue, plastic } = flowShift(recipe, withAdditions(recipe, add.cocoaButter, add.lecithin, add.e476), effects);
    const cost = (share * ((corrector.price ?? 0) - chocolate)) / (1 + share);
    return [{ name: corrector.material.name, share, yieldFactor: yieldValue, plasticFactor: plastic, cost }];
  });
}

function optionOf(
  from: PlantChain,
  state: State,
  component: Component,
  correctors: Correctors,
  now: FlowAnswer['now'],
  found: Correction,
  task: CorrectionTask,
  coats: CoatModel | undefined,
): FlowOption {
  const add = { cocoaButter: found.cocoaButter, lecithin: found.lecithin, e476: found.pgpr };
  const times = (base: number, factor: Correction['yieldFactor']) => ({
    value: base * factor.value,
    low: base * factor.low,
    high: base * factor.high,
  });
  const parts = (['cocoaButter', 'lecithin', 'e476'] as const).filter((key) => add[key] > 0);
  const words = parts.map((key) => correctors[key]!.material.name);
  const composition = mix([
    [1, state.value(`${component.slug}.composition`) as Composition],
    ...parts.map((key) => [add[key], correctors[key]!.composition] as const),
  ]);
  const law = lawAfter(from, component, composition, (task.recipe.pgpr + add.e476) / (1 + add.cocoaButter + add.lecithin + add.e476));
  const coat = coats?.at({ yieldValue: found.yieldValue, plasticViscosity: found.plasticViscosity });
  return {
    name: words.length > 0 ? words.join(' and ') : 'nothing',
    add,
    yieldValue: times(now.yieldValue, found.yieldFactor),
    plasticViscosity: times(now.plasticViscosity, found.plasticFactor),
    meets: found.meets,
    bought: found.bought,
    cost: found.cost,
    lawful: law.lawful,
    law: [...law.sentences, ...parts.map((key) => onLabel(component, correctors[key]!.material))],
    ...(coat ? { coat } : {}),
  };
}

function lawAfter(
  from: PlantChain,
  component: Component,
  composition: Composition,
  e476: number,
): { lawful: boolean; sentences: readonly string[] } {
  const sentences: string[] = [];
  let lawful = true;
  if (e476 > pgprLimit + 1e-9) {
    lawful = false;
    sentences.push(`E476 would be ${(100 * e476).toFixed(2)} %, above ${100 * pgprLimit} % (EU 1333/2008).`);
  }
  const { wanted } = namesOf(component, from.plant.market, composition);
  if (wanted?.result) {
    const { result } = wanted;
    const { tightest } = result;
    if (!result.allowed) lawful = false;
    sentences.push(
      `${result.allowed ? 'Stays' : 'Is no longer'} "${result.name}" (${wanted.market.toUpperCase()}): ${tightest.quantity.replaceAll('_', ' ')} ${(100 * tightest.actual).toFixed(2)} %, ${tightest.bound} ${+(100 * tightest.limit).toFixed(2)} %.`,
    );
  } else if (component.legalName)
    sentences.push(`Cannot tell whether it may be called "${component.legalName}": we hold no rule for that name.`);
  return { lawful, sentences };
}

/** Whether an addition changes the list of ingredients. */
function onLabel(component: Component, material: Material): string {
  const already = component.stages.some((stage) => stage.adds.some((addition) => addition.name === material.name));
  if (already) return `${material.name} is in the recipe already: the list of ingredients keeps its names.`;
  const allergens = material.allergens.length > 0 ? ` and brings ${material.allergens.join(', ')}` : '';
  return `${material.name} is new in ${component.name}: it comes onto the label${allergens}.`;
}

function notesOn(
  component: Component,
  now: FlowAnswer['now'],
  target: FlowAnswer['target'],
  correctors: Correctors,
  met: boolean,
): readonly string[] {
  const notes: string[] = [];
  if (!met && target.yieldValue < now.yieldValue)
    notes.push('No lawful addition meets both targets; the nearest is shown. Look for water, fines or over-conching before more is added.');
  if (target.yieldValue > now.yieldValue)
    notes.push('Nothing can be taken out of a chocolate that is too thin: blend it with a thicker load.');
  for (const [key, words] of [
    ['cocoaButter', 'cocoa butter'],
    ['lecithin', 'lecithin'],
    ['e476', 'E476'],
  ] as const)
    if (!correctors[key]) notes.push(`The plant buys no ${words}; it is left out.`);
    else if (correctors[key].price === undefined) notes.push(`${correctors[key].material.name} has no price; its cost is counted as 0.`);
  notes.push(
    `Yield and plastic viscosity belong to melted ${component.name} at 40 °C. Add in steps, mix, measure again: sizes are published trends until the plant's own ladder is entered. Barwright advises only.`,
  );
  return notes;
}
